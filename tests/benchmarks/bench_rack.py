"""The rack map: time of a frame while ten thousand samples are pushed and zoomed.

References in the same run: a bare widget of the same size that puts one ready pixmap on the
screen, which is the least that any frame costs; and one that paints every tile at every frame, as
a view without a prepared layer would. Run: pytest tests/benchmarks/bench_rack.py -s
"""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from collections.abc import Callable
from pathlib import Path
from time import perf_counter, thread_time

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Catalogue, Kind, Sample, SampleColour
from framing_palette.catalogue.rack_map import RackPoints, distances
from framing_palette.colour import lab_d50_to_srgb_u8
from framing_palette.window.rack.layer import Order, draw_layer
from framing_palette.window.rack.plane import Plane
from framing_palette.window.shell import Shell

SAMPLES, FRAMES = 10_000, 240


class Bare(QWidget):
    """Puts one pixmap on the screen and nothing else."""

    def __init__(self, width: int, height: int) -> None:
        super().__init__()
        self.resize(width, height)
        self._pixmap = QPixmap(width, height)
        self._pixmap.fill(Qt.GlobalColor.gray)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's own name
        QPainter(self).drawPixmap(0, 0, self._pixmap)


class Naive(QWidget):
    """Paints every tile at every frame."""

    def __init__(self, points: RackPoints, plane: Plane) -> None:
        super().__init__()
        self.resize(round(plane.width), round(plane.height))
        self._places = plane.places(points.mean_lab).tolist()
        self._colors = [QColor(*row) for row in lab_d50_to_srgb_u8(points.mean_lab).tolist()]
        self._tile = plane.tile

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802 - Qt's own name
        painter = QPainter(self)
        for (x, y), color in zip(self._places, self._colors, strict=True):
            painter.fillRect(QRectF(x, y, self._tile, self._tile), color)


def big_rack() -> Catalogue:
    random, kinds = np.random.default_rng(3), tuple(Kind)
    lightness = random.uniform(15, 95, SAMPLES).tolist()
    strength, hue = np.abs(random.normal(0, 25, SAMPLES)), random.uniform(0, 2 * np.pi, SAMPLES)
    a, b = (strength * np.cos(hue)).tolist(), (strength * np.sin(hue)).tolist()
    samples = (
        Sample(
            f"S-{at}",
            f"Invented {at}",
            kinds[at % 5],
            (
                SampleColour((lightness[at], a[at], b[at]), 0.8),
                SampleColour((lightness[at] * 0.8, 0.0, 0.0), 0.2),
            ),
            in_stock=bool(at % 9),
        )
        for at in range(SAMPLES)
    )
    return Catalogue(tuple(samples), name="Invented ten thousand")


def frames(widget: QWidget, act: Callable[[int], None]) -> tuple[list[float], list[float]]:
    """Time each frame in milliseconds: by the clock, and the interface thread's own work."""
    wall, own = [], []
    for number in range(FRAMES):
        began, worked = perf_counter(), thread_time()
        act(number)
        widget.repaint()
        wall.append((perf_counter() - began) * 1e3)
        own.append((thread_time() - worked) * 1e3)
        if number % 6 == 0:
            QApplication.processEvents()
    return wall, own


def told(name: str, wall: list[float], own: list[float]) -> float:
    median = float(np.median(own))
    print(
        f"{name:<22} own work {median:6.2f} ms, 99 of 100 under {np.percentile(own, 99):6.2f} ms; "
        f"by the clock {np.median(wall):6.2f} and {np.percentile(wall, 99):6.2f} ms"
    )
    return median


def test_a_frame_of_the_map_with_ten_thousand_samples(qtbot: QtBot, tmp_path: Path) -> None:
    shell = Shell(preferences_file=tmp_path / "window.json")
    shell.rack_book.folder = tmp_path
    qtbot.addWidget(shell)
    shell.resize(1920, 1080)
    shell.show()
    shell.session.assign("catalogue", big_rack())
    shell.toggle_rack()
    assert shell.rack is not None
    view, state = shell.rack.stage.map, shell.rack.state
    qtbot.waitUntil(
        lambda: len(state.points) == SAMPLES and not shell.runner.is_busy(), timeout=60_000
    )
    bare = Bare(view.width(), view.height())
    qtbot.addWidget(bare)
    bare.show()
    naive = Naive(state.points, view.plane)
    qtbot.addWidget(naive)
    naive.show()
    there_and_back = [1 if at % 40 < 20 else -1 for at in range(FRAMES)]
    print(f"\n{SAMPLES:,} samples on {view.width()} x {view.height()} pixels")
    least = told("one pixmap", *frames(bare, lambda _at: None))
    every = told("every tile anew", *frames(naive, lambda _at: None))
    pushed = told(
        "pushed",
        *frames(view, lambda at: view.show_plane(view.plane.moved(3 * there_and_back[at], 1))),
    )
    middle = QPointF(500, 300)
    zoomed = told(
        "zoomed",
        *frames(
            view,
            lambda at: view.show_plane(view.plane.zoomed(1.02 ** there_and_back[at], middle)),
        ),
    )
    print(f"pushed {pushed / least:.1f} x one pixmap, {every / pushed:.0f} x quicker than anew")
    assert max(pushed, zoomed) < every / 3
    qtbot.waitUntil(lambda: not shell.runner.is_busy(), timeout=60_000)
    began = thread_time()
    ground = QColor(145, 145, 145)
    draw_layer(Order(state.points, state.passing, view.plane, 1.0, ground))
    layer = thread_time() - began
    began = thread_time()
    distances(state.points, [(50.0, 10.0, 10.0)])
    print(f"layer {layer * 1e3:.0f} ms, nearest of all {(thread_time() - began) * 1e3:.1f} ms")
    shell.runner.close()
