"""The slide: time of a frame while a strip is pushed over a 24-megapixel picture.

References in the same run: a bare widget of the same size that puts one ready pixmap on the screen,
which is the least that any frame costs; and one that scales the whole picture at every frame. Run: pytest tests/benchmarks/bench_slide.py -s
"""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from time import perf_counter, process_time, thread_time

import numpy as np
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QPixmap
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


@dataclass(frozen=True, slots=True)
class Frame:
    """One frame: time by the clock, the interface thread's own work, and that of all threads."""

    wall_ms: float
    own_ms: float
    all_ms: float


class Naive(QWidget):
    """Scales the whole picture down at every frame, as a view without preparation would."""

    def __init__(self, image: QImage, width: int, height: int) -> None:
        super().__init__()
        self.resize(width, height)
        self._image = image

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's own name
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(self.rect(), self._image)


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
    told(f"bare pixmap {canvas.width()} x {canvas.height()}", reference)
    naive = Naive(shell.session.pyramid.levels[0], canvas.width(), canvas.height())
    qtbot.addWidget(naive)
    naive.show()
    qtbot.waitExposed(naive)
    qtbot.wait(50)
    plain = [timed(naive.repaint) for _ in range(FRAMES // 8)]
    told("whole picture scaled each frame", plain)
    for name, degrees in rows:
        (strip,) = shell.session.desk.strips
        sliding.turn(shell.session, strip, by_deg=degrees)
        canvas.repaint()
        qtbot.wait(200)
        canvas.repaint()
        times = slide(qtbot, shell, degrees)
        told(name, times)
        # Qt scales on threads of its own, so the work of all threads is compared with the same.
        ratio = every(times) / every(plain)
        print(f"{'':32} {ratio:.2f} of the work of scaling the whole picture")
        assert ratio < 1.0
    shell.runner.close()


def slide(qtbot: QtBot, shell: Shell, _degrees: float) -> list[Frame]:
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


def timed(act: Callable[[], None]) -> Frame:
    begun, used, all_used = perf_counter(), thread_time(), process_time()
    act()
    return Frame(
        wall_ms=(perf_counter() - begun) * 1000,
        own_ms=(thread_time() - used) * 1000,
        all_ms=(process_time() - all_used) * 1000,
    )


def every(frames: list[Frame]) -> float:
    """Median of the work of all threads in a frame."""
    return float(np.median([frame.all_ms for frame in frames]))


def own(frames: list[Frame]) -> float:
    """Median of the interface thread's own work, which a busy machine does not lengthen."""
    return float(np.median([frame.own_ms for frame in frames]))


def told(name: str, frames: list[Frame]) -> None:
    middle, late = np.percentile([frame.wall_ms for frame in frames], [50, 99])
    own_late = np.percentile([frame.own_ms for frame in frames], 99)
    print(
        f"{name:32} by the clock: median {middle:6.2f} ms, 99 % {late:6.2f} ms;   "
        f"own work: median {own(frames):6.2f} ms, 99 % {own_late:6.2f} ms"
    )
