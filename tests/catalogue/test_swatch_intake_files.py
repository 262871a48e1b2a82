"""A folder of swatch photographs, measured side by side and resumed."""

import warnings
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from framing_palette.catalogue import Finish, Kind, Sample
from framing_palette.catalogue.swatch_intake_files import (
    measure_swatch_folder,
    read_results,
    samples_from_intake,
    with_measured_swatch,
)
from framing_palette.colour import delta_e_2000, lab_d50_to_srgb_u8
from framing_palette.errors import CatalogueError, OutputError

COLOURS = {"A1": (62.0, 14.0, 30.0), "B2": (30.0, 5.0, -20.0), "C3": (85.0, 0.0, 5.0)}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "photos"
    made.mkdir()
    rng = np.random.default_rng(1)
    for code, lab in COLOURS.items():
        pixels = lab_d50_to_srgb_u8(np.array(lab) + rng.normal(0, 0.5, (90, 120, 3)))
        Image.fromarray(pixels).save(made / f"{code}.png")
    (made / "D4.jpg").write_text("a letter")
    (made / "notes.txt").write_text("not a picture")
    return made


def test_every_picture_is_measured_and_a_broken_one_gives_its_problem(folder: Path) -> None:
    steps: list[tuple[int, int]] = []
    found = measure_swatch_folder(
        folder,
        folder.parent / "results.jsonl",
        mm_per_px=0.1,
        backend="threading",
        jobs=2,
        tell=lambda done, of: steps.append((done, of)),
    )
    assert [result.file for result in found] == ["A1.png", "B2.png", "C3.png", "D4.jpg"]
    assert steps == [(0, 4), (4, 4)]
    for result, lab in zip(found, COLOURS.values(), strict=False):
        assert delta_e_2000(result.colours[0].lab, lab) < 0.5
        assert result.finish is Finish.MATT
        assert result.uncertainty_delta_e is None
    assert "D4.jpg" in found[3].problem
    assert found[3].colours == ()


def test_a_stopped_intake_goes_on_and_only_what_is_new_is_measured(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    results = folder.parent / "results.jsonl"
    first = measure_swatch_folder(folder, results, backend="threading", jobs=1)
    lines = results.read_text().splitlines()
    half = [line for line in lines if "C3" not in line]
    results.write_text("\n".join(half) + "\n" + lines[0][:40] + "\n")  # killed while writing
    measured: list[str] = []
    module = "framing_palette.catalogue.swatch_intake_files"
    real = measure_swatch_folder.__globals__["measure_swatch_file"]

    def noted(path: Path, *rest: object) -> object:
        measured.append(path.name)
        return real(path, *rest)

    monkeypatch.setattr(f"{module}.measure_swatch_file", noted)
    again = measure_swatch_folder(folder, results, backend="threading", jobs=1)
    assert measured == ["C3.png"]
    assert repr(again) == repr(first)
    measured.clear()
    Image.new("RGB", (60, 60), "red").save(folder / "A1.png")
    measure_swatch_folder(folder, results, backend="threading", jobs=1)
    assert measured == ["A1.png"]
    measured.clear()
    measure_swatch_folder(folder, results, mm_per_px=0.2, backend="threading", jobs=1)
    assert len(measured) == 4  # another scale is another measurement


def test_a_dask_cluster_gives_the_same_results(folder: Path) -> None:
    distributed = pytest.importorskip("distributed")
    plain = measure_swatch_folder(folder, folder.parent / "plain.jsonl", backend="threading")
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # the cluster warns about ports and the machine's memory
        with (
            distributed.LocalCluster(
                n_workers=1, threads_per_worker=2, processes=False, dashboard_address=None
            ) as cluster,
            distributed.Client(cluster),
        ):
            found = measure_swatch_folder(folder, folder.parent / "dask.jsonl", backend="dask")
    assert repr(found) == repr(plain)


def test_results_become_samples_and_correct_old_ones(folder: Path) -> None:
    Image.new("RGB", (60, 60), "red").save(folder / "a..b.png")
    found = measure_swatch_folder(
        folder, folder.parent / "r.jsonl", mm_per_px=0.1, backend="threading"
    )
    made = samples_from_intake(found, Kind.MAT, mm_per_px=0.1)
    assert [sample.code for sample in made] == ["A1", "B2", "C3"]
    assert made[0].texture_file == "A1.png"
    old = Sample("A1", "old", Kind.LINER, ())
    assert with_measured_swatch(old, found[0]).colours == made[0].colours
    assert with_measured_swatch(old, found[0]).kind is Kind.LINER


def test_folders_and_results_that_cannot_be_used_are_one_sentence(folder: Path) -> None:
    with pytest.raises(CatalogueError, match="cannot be read"):
        measure_swatch_folder(folder / "none", folder.parent / "r.jsonl")
    with pytest.raises(CatalogueError, match="cannot be read"):
        list(read_results(folder / "A1.png"))
    with pytest.raises(OutputError, match="cannot be written"):
        measure_swatch_folder(folder, folder / "no" / "r.jsonl", backend="threading", jobs=1)
    assert list(read_results(folder / "never.jsonl")) == []
    (folder.parent / "empty").mkdir()
    assert measure_swatch_folder(folder.parent / "empty", folder.parent / "r.jsonl") == ()
