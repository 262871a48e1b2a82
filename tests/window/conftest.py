"""A desk with an invented picture, rack and findings, small enough to be quick."""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Catalogue, Kind, Sample, SampleColour
from framing_palette.jobs import Job, PackedJob
from framing_palette.jobs.keeper_files import Keeper
from framing_palette.jobs.place_files import ShopPlace
from framing_palette.picture import ColourTrust, Part, Picture, Region, Role
from framing_palette.picture.pictures import TrustGrade
from framing_palette.units import Length
from framing_palette.window.job_files import OpenedJob
from framing_palette.window.legwork import OnTheDesk, surveyed_picture
from framing_palette.window.runner import Progress
from framing_palette.window.shell import Shell
from framing_palette.window.theme import put_on, tokens_named
from tests.network import forbidden_network

TRUST = ColourTrust(method="assumed", grade=TrustGrade.UNKNOWN, words="Nothing tells.")


def make_picture(*, columns: int = 160, rows: int = 120, mm_per_px: float | None = 2.0) -> Picture:
    """A grey-blue sea under a pale sky with a red boat."""
    lab = np.empty((rows, columns, 3), dtype=np.float32)
    lab[: rows // 2] = (78.0, -3.0, -8.0)
    lab[rows // 2 :] = (45.0, -4.0, -12.0)
    lab[rows // 2 - 15 : rows // 2 + 15, columns // 2 - 20 : columns // 2 + 20] = (42.0, 52.0, 34.0)
    lab.flags.writeable = False
    return Picture(lab, mm_per_px, TRUST, columns, rows, source="sea.png")


BOAT = Region("boat", Role.FOCUS, (Part(((0.37, 0.37), (0.63, 0.37), (0.63, 0.63), (0.37, 0.63))),))


def make_sample(code: str, lab: tuple[float, float, float], kind: Kind = Kind.MAT) -> Sample:
    is_mat = kind is Kind.MAT
    return Sample(
        code=code,
        name=code.replace("-", " ").capitalize(),
        kind=kind,
        colours=(SampleColour(lab, 1.0),),
        face=None if is_mat else Length.mm_of(30),
        thickness=Length.mm_of("1.4"),
    )


RACK = Catalogue(
    samples=(
        make_sample("brick-red", (38.0, 30.0, 20.0)),
        make_sample("deep-sea", (40.0, -4.0, -14.0)),
        make_sample("pale-sky", (80.0, -3.0, -7.0)),
        make_sample("acid-lime", (85.0, -50.0, 80.0)),
        make_sample("black-flat", (18.0, 0.0, 0.0), Kind.MOULDING),
        make_sample("warm-slip", (70.0, 5.0, 20.0), Kind.WRAPPED_FILLET),
    ),
    name="Invented test rack",
)


def on_the_desk(picture: Picture, regions: tuple[Region, ...] = ()) -> OnTheDesk:
    begun = datetime(2026, 1, 15, 10, 0, tzinfo=UTC)
    job = Job(
        number="TEST-1",
        title="A red boat",
        created=begun,
        changed=begun,
        art_size=(Length.mm_of(320), Length.mm_of(240)),
        regions=regions,
    )
    opened = OpenedJob(PackedJob(job), picture, None)
    return OnTheDesk(opened, surveyed_picture(picture, Progress(lambda _share, _words: None)))


@pytest.fixture(autouse=True)
def no_network() -> Iterator[None]:
    """Nothing that is done here may ask for the network."""
    with forbidden_network() as asked:
        yield
    assert asked == []


@pytest.fixture
def plain_picture() -> Picture:
    return make_picture()


@pytest.fixture
def rack() -> Catalogue:
    return RACK


@pytest.fixture
def boat() -> Region:
    return BOAT


@pytest.fixture
def app(qapp: QApplication) -> QApplication:
    put_on(qapp, tokens_named("light"))
    return qapp


@pytest.fixture
def preferences_file(tmp_path: Path) -> Path:
    return tmp_path / "preferences" / "window.json"


@pytest.fixture
def place(tmp_path: Path) -> ShopPlace:
    """Where the jobs of the test's shop are."""
    return ShopPlace(tmp_path / "shop" / "jobs.sqlite")


@pytest.fixture
def shell(
    app: QApplication, qtbot: QtBot, preferences_file: Path, place: ShopPlace
) -> Iterator[Shell]:
    window = Shell(preferences_file=preferences_file, keeper=lambda: Keeper(place))
    window.resize(1366, 768)
    qtbot.addWidget(window)
    yield window
    window.runner.close()
    window.job_book.close()


@pytest.fixture
def open_shell(shell: Shell, qtbot: QtBot) -> Shell:
    """A shell with the picture, the rack and the ranking in place."""
    given = on_the_desk(make_picture(), (BOAT,))
    with qtbot.waitSignal(shell.session.ranked_changed, timeout=20_000):
        shell.session.assign("catalogue", RACK)
        shell.errands.take_job(given)
    return shell
