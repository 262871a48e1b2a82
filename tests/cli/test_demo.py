"""``framing-palette demo``: the whole job on the shipped picture, and what it leaves behind."""

import json
from pathlib import Path

import pytest
from PIL import Image

from framing_palette.cli import main as cli_main
from framing_palette.design import sizes_of
from framing_palette.jobs import DEMO_LAYERS, read_job_file
from framing_palette.units import Length
from tests.cli.conftest import Command
from tests.cli.test_bad_input import check_one_sentence

LEFT = ("ranking.json", "preview.png", "proposal.pdf", "ticket.pdf", "demo.framejob")


@pytest.fixture(scope="module")
def left(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("demo") / "made" / "on the way"
    assert cli_main(["demo", "--no-window", "--out", str(folder)]) == 0
    return folder


def test_the_demo_leaves_all_it_promises(left: Path) -> None:
    assert {path.name for path in left.iterdir()} == set(LEFT)
    ranking = json.loads((left / "ranking.json").read_text(encoding="utf-8"))
    assert ranking["schema"] == "framing-palette/rank@1"
    assert len(ranking["samples"]) >= 360
    with Image.open(left / "preview.png") as preview:
        assert preview.width == 1600
    for paper in ("proposal.pdf", "ticket.pdf"):
        assert (left / paper).read_bytes().startswith(b"%PDF-")


def test_the_demo_job_opens_again_with_three_designs_and_says_that_it_is_invented(
    left: Path,
) -> None:
    packed = read_job_file(left / "demo.framejob")
    job = packed.job
    assert packed.picture is not None
    assert "nvented" in job.client.name
    assert len(job.options) == 3
    assert len({option.design.codes for option in job.options}) == 3
    assert job.agreed == job.options[0]
    for option in job.options:
        assert len(option.design.codes) == len(DEMO_LAYERS)
        assert sizes_of(option.design).frame is not None


def test_the_demos_size_is_the_pictures_own_to_a_sixteenth(left: Path) -> None:
    size = read_job_file(left / "demo.framejob").job.art_size
    assert size is not None
    for found, true in zip(size, (600, 420), strict=True):
        assert abs(found - Length.mm_of(true)) <= Length.inches("1/32")


def test_the_demo_opens_the_window_on_its_job_when_there_is_a_display(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from framing_palette.cli.commands import demo

    opened: list[Path | None] = []

    def open_window(job_file: Path | None) -> int:
        opened.append(job_file)
        return 0

    monkeypatch.setattr(demo, "_whole_job", lambda *_: [])
    words = ["demo", "--out", str(tmp_path), "--json"]
    monkeypatch.setenv("QT_QPA_PLATFORM", "offscreen")
    assert cli_main(words, open_window=open_window) == 0
    assert opened == [tmp_path / "demo.framejob"]
    monkeypatch.setattr(demo, "_has_display", lambda: False)
    assert cli_main(words, open_window=open_window) == 0
    assert len(opened) == 1


def test_without_a_display_linux_keeps_the_window_closed(monkeypatch: pytest.MonkeyPatch) -> None:
    from framing_palette.cli.commands import demo

    for name in ("QT_QPA_PLATFORM", "DISPLAY", "WAYLAND_DISPLAY"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(demo.sys, "platform", "linux")
    assert not demo._has_display()
    monkeypatch.setenv("WAYLAND_DISPLAY", "wayland-0")
    assert demo._has_display()
    monkeypatch.setattr(demo.sys, "platform", "win32")
    assert demo._has_display()


def test_a_folder_that_cannot_be_made_is_named(command: Command, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    check_one_sentence(command("demo", "--no-window", "--out", tmp_path / "file"), "file")
