"""A catalogue as arrays, kept on disk, and samples made from them when looked at."""

import os
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.catalogue import Catalogue, Kind, Sample, SampleColour, read_catalogue_folder
from framing_palette.catalogue.column_files import (
    KEPT_CATALOGUES,
    content_key,
    default_cache_dir,
    open_catalogue_folder,
)
from framing_palette.catalogue.columns import (
    LazySamples,
    columns_from,
    lazy_catalogue,
)
from framing_palette.catalogue.records import read_record, record_of, record_text, sample_of
from framing_palette.catalogue.texture_numbers import texture_names, texture_numbers
from framing_palette.errors import CatalogueError, UnknownSampleError

from .folders import write_folder
from .test_catalogue_files import samples

SHIPPED = Path(__file__).parents[2] / "catalog"


@settings(max_examples=40, deadline=None)
@given(samples())
def test_a_record_gives_back_the_very_same_sample(sample: Sample) -> None:
    assert sample_of(read_record(record_text(record_of(sample)))) == sample


@settings(max_examples=30, deadline=None)
@given(st.lists(samples(), max_size=4))
def test_columns_give_back_the_very_same_samples(written: list[Sample]) -> None:
    lazy = LazySamples(columns_from(written))
    assert list(lazy) == written
    assert [lazy[place] for place in range(len(written))] == written
    assert list(lazy.codes) == [sample.code for sample in written]


def test_the_shipped_rack_survives_columns_with_its_textures() -> None:
    catalogue, _ = read_catalogue_folder(SHIPPED)
    columns = columns_from(catalogue.samples)
    lazy = lazy_catalogue(columns, textures_dir=catalogue.textures_dir, name=catalogue.name)
    assert repr(list(lazy.samples)) == repr(list(catalogue.samples))
    assert repr(lazy["M-BLACK-LINEN"]) == repr(catalogue["M-BLACK-LINEN"])
    assert "M-BLACK-LINEN" in lazy
    assert len(lazy.of_kind(Kind.MAT)) == len(catalogue.of_kind(Kind.MAT))
    assert columns_from(lazy.samples) is columns
    means = np.array([sample.mean_lab for sample in catalogue.samples])
    assert columns.mean_lab == pytest.approx(means, abs=1e-4)
    with pytest.raises(UnknownSampleError, match="M-BLACK-LINEN"):
        lazy["M-BLAK-LINEN"]


def test_a_record_keeps_a_texture_with_its_unknown_bands() -> None:
    sample = read_catalogue_folder(SHIPPED)[0]["M-BLACK-LINEN"]
    assert repr(sample_of(read_record(record_text(record_of(sample))))) == repr(sample)
    columns = columns_from([sample, *few(1)])
    assert columns.texture.shape == (2, len(texture_names()))
    assert np.isnan(columns.texture[1]).all()
    assert columns.texture[0] == pytest.approx(texture_numbers(sample.texture), nan_ok=True)


def few(count: int) -> list[Sample]:
    return [
        Sample(f"S{i}", f"s{i}", Kind.MAT, (SampleColour((50, 0, i), 1),)) for i in range(count)
    ]


def test_lazy_samples_answer_like_a_tuple(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("framing_palette.catalogue.columns._KEPT_SAMPLES", 2)
    written = few(5)
    lazy = LazySamples(columns_from(written))
    assert lazy[-1] == written[-1]
    assert lazy[1:4] == tuple(written[1:4])
    assert [lazy[i].code for i in (0, 1, 2, 3, 0)] == ["S0", "S1", "S2", "S3", "S0"]
    assert lazy[4] is lazy[4]
    for place in (5, -6):
        with pytest.raises(IndexError):
            lazy[place]


def test_a_sample_without_colours_has_no_mean() -> None:
    columns = columns_from([replace(few(1)[0], colours=())])
    assert np.isnan(columns.mean_lab).all()
    assert len(columns) == 1


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr("framing_palette.catalogue.column_files.SMALL_BYTES", 1)
    return write_folder(tmp_path / "rack")


def opened(folder: Path) -> Catalogue:
    return open_catalogue_folder(folder, cache_dir=folder.parent / "cache")[0]


def test_a_large_folder_is_kept_and_opens_the_same_from_the_cache(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plain, problems = read_catalogue_folder(folder)
    assert list(opened(folder).samples) == list(plain.samples)
    monkeypatch.setattr(
        "framing_palette.catalogue.column_files.stream_samples",
        lambda *_: pytest.fail("the kept columns are not used"),
    )
    again, told = open_catalogue_folder(folder, cache_dir=folder.parent / "cache")
    assert list(again.samples) == list(plain.samples)
    assert (again.name, again.textures_dir, told) == (plain.name, plain.textures_dir, problems)
    assert isinstance(again.samples, LazySamples)
    assert isinstance(again.samples.columns.records, np.memmap) or not (
        again.samples.columns.records.flags.owndata
    )


def test_problems_are_kept_with_the_columns(folder: Path) -> None:
    write_folder(folder, samples="code,kind,price\nA1,mat,dear\nB2,mat,2\n")
    cache = folder.parent / "cache"
    first = open_catalogue_folder(folder, cache_dir=cache)[1]
    assert first == open_catalogue_folder(folder, cache_dir=cache)[1]
    assert "not a price" in str(first[0])


def test_any_change_of_a_table_or_of_the_textures_changes_the_key(folder: Path) -> None:
    keys = {content_key(folder)}
    (folder / "colours.csv").write_text((folder / "colours.csv").read_text().replace("95", "94"))
    keys.add(content_key(folder))
    (folder / "textures").mkdir()
    (folder / "textures" / "b.png").write_text("x")
    keys.add(content_key(folder))
    (folder / "textures" / "a.png").write_text("x")
    keys.add(content_key(folder))
    assert len(keys) == 4
    assert opened(folder)["A1"].colours[0].lab[0] == 94


def test_a_damaged_or_impossible_cache_only_costs_time(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    expected = list(opened(folder).samples)
    place = folder.parent / "cache" / content_key(folder)
    (place / "lab.npy").write_bytes(b"broken")
    assert list(opened(folder).samples) == expected
    (place / "facts.json").write_text("{}")
    assert list(opened(folder).samples) == expected

    def no_room(*_: object, **__: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("framing_palette.catalogue.column_files.np.save", no_room)
    (place / "facts.json").unlink()
    assert list(opened(folder).samples) == expected
    assert [path.name for path in place.parent.iterdir()] == [place.name]


def test_old_columns_are_forgotten(folder: Path) -> None:
    for price in range(KEPT_CATALOGUES + 3):
        write_folder(folder, samples=f"code,kind,price\nA1,mat,{price}\n")
        opened(folder)
        os.utime(folder.parent / "cache" / content_key(folder), (price, price))
    assert len(list((folder.parent / "cache").iterdir())) == KEPT_CATALOGUES


def test_a_small_folder_is_read_anew_and_keeps_nothing(tmp_path: Path) -> None:
    folder = write_folder(tmp_path / "rack")
    catalogue, _ = open_catalogue_folder(folder, cache_dir=tmp_path / "cache")
    assert isinstance(catalogue.samples, tuple)
    assert not (tmp_path / "cache").exists()


def test_the_default_cache_lies_in_the_users_own_cache_folder() -> None:
    assert default_cache_dir().parts[-2:] == ("framing-palette", "catalogues")


def test_a_large_folder_without_a_good_row_is_refused(folder: Path) -> None:
    write_folder(folder, samples="code,kind\nA1,window\n")
    with pytest.raises(CatalogueError, match="holds no usable sample"):
        opened(folder)
