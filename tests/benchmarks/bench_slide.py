"""The slide: time of a frame while a strip is pushed over a 24-megapixel picture.

Reference in the same run: a bare widget of the same size that puts one ready pixmap on the screen,
which is the least that any frame costs. Run: pytest tests/benchmarks/bench_slide.py -s
"""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from datetime import UTC, datetime
from time import perf_counter

import numpy as np
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Catalogue, Kind, Sample, SampleColour
from framing_palette.colour import lab_d50_to_srgb_u8
from framing_palette.jobs import Job, PackedJob
from framing_palette.picture import ColourTrust, Picture
from framing_palette.picture.looking import survey_picture
from framing_palette.picture.pictures import TrustGrade
from framing_palette.units import Length
from framing_palette.window import sliding
from framing_palette.window.images import pyramid_of
from framing_palette.window.job_files import OpenedJob
from framing_palette.window.legwork import OnTheDesk, Surveyed
from framing_palette.window.shell import Shell
from framing_palette.window.steps.choose import ChooseStep

ROWS, COLUMNS = 4000, 6000
FRAMES = 240
SIZE = (1920, 1080)


class Bare(QWidget):
    """Puts one pixmap on the screen and nothing else."""

    def __init__(self, width: int, height: int) -> None:
        super().__init__()
        self.resize(width, height)
        self._pixmap = QPixmap(width, height)
        self._pixmap.fill(Qt.GlobalColor.gray)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's own name
        QPainter(self).drawPixmap(0, 0, self._pixmap)


def big_picture() -> Picture:
    random = np.random.default_rng(7)
    small = random.uniform((20, -40, -40), (90, 40, 40), (40, 60, 3)).astype(np.float32)
    lab = small.repeat(ROWS // 40, axis=0).repeat(COLUMNS // 60, axis=1)
    lab[..., 0] += random.normal(0, 4, (ROWS, COLUMNS)).astype(np.float32)
    trust = ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells.")
    return Picture(lab, 600.0 / COLUMNS, trust, COLUMNS, ROWS)


def test_a_frame_of_the_slide_on_24_megapixels(qtbot: QtBot) -> None:
    shell = Shell()
    qtbot.addWidget(shell)
    shell.resize(*SIZE)
    shell.show()
    picture = big_picture()
    working = Picture(
        np.ascontiguousarray(picture.lab_d50[::4, ::4]),
        picture.mm_per_px * 4 if picture.mm_per_px else None,
        picture.colour_trust,
        COLUMNS,
        ROWS,
    )
    colour = SampleColour((40.0, 20.0, 10.0), 1.0)
    sample = Sample("R-1", "A moulding", Kind.MOULDING, (colour,), face=Length.mm_of(45))
    shell.session.assign("catalogue", Catalogue((sample,)))
    with qtbot.waitSignal(shell.session.strip_reader_changed, timeout=60_000):
        begun = datetime(2026, 1, 15, 10, 0, tzinfo=UTC)
        job = Job("BENCH-1", "Noise", begun, begun)
        surveyed = Surveyed(
            picture=working,
            survey=survey_picture(working),
            pyramid=pyramid_of(lab_d50_to_srgb_u8(picture.lab_d50)),
        )
        opened = OpenedJob(PackedJob(job), working, None)
        shell.errands.take_job(OnTheDesk(opened, surveyed))
    qtbot.waitUntil(lambda: not shell.runner.is_busy(), timeout=60_000)
    step = shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    shell.go("choose")
    canvas = step.canvas
    assert canvas is not None
    assert shell.session.pyramid is not None
    assert shell.session.pyramid.size.width() == COLUMNS
    sliding.lay_strip(shell.session, "R-1", (300.0, 200.0))
    qtbot.wait(300)
    print()
    rows = [("level strip", 0.0), ("turned 37 degrees", 37.0)]
    bare = Bare(canvas.width(), canvas.height())
    qtbot.addWidget(bare)
    bare.show()
    qtbot.waitExposed(bare)
    qtbot.wait(50)
    reference = [timed(bare.repaint) for _ in range(FRAMES)]
    told(f"bare pixmap {canvas.width()} x {canvas.height()}", reference, reference)
    for name, degrees in rows:
        (strip,) = shell.session.desk.strips
        sliding.turn(shell.session, strip, by_deg=degrees)
        canvas.repaint()
        qtbot.wait(200)
        canvas.repaint()
        times = slide(qtbot, shell, degrees)
        told(name, times, reference)
        assert np.median(times) < 30 * np.median(reference)
    shell.runner.close()


def slide(qtbot: QtBot, shell: Shell, _degrees: float) -> list[float]:
    step = shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    canvas = step.canvas
    assert canvas is not None
    (strip,) = shell.session.desk.strips
    start = canvas.place.mm_to_screen(strip.x_mm, strip.y_mm).toPoint()
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=start)
    times = []
    for frame in range(FRAMES):
        way = QPoint(round(200 * np.sin(frame / 20)), round(120 * np.cos(frame / 13) - 120))

        def one(way: QPoint = way) -> None:
            qtbot.mouseMove(canvas, pos=start + way)
            canvas.repaint()

        times.append(timed(one))
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=start)
    return times


def timed(act: object) -> float:
    begun = perf_counter()
    act()  # type: ignore[operator]
    return (perf_counter() - begun) * 1000


def told(name: str, times: list[float], reference: list[float]) -> None:
    middle, late = np.percentile(times, [50, 99])
    ratio = middle / np.median(reference)
    print(f"{name:32} median {middle:6.2f} ms   99 % {late:6.2f} ms   {ratio:5.1f} x bare")
