import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, QPointF, QSizeF, Qt
from PySide6.QtGui import QImage
from pytestqt.qtbot import QtBot

from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.outlook import Look
from framing_palette.window.canvas.place import place_of
from framing_palette.window.images import image_of, pyramid_of
from framing_palette.window.shell import Shell
from framing_palette.window.steps.choose import ChooseStep


def choose_canvas(shell: Shell) -> Canvas:
    shell.show()
    shell.go("choose")
    step = shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    assert step.canvas is not None
    return step.canvas


SIZES = st.floats(min_value=50, max_value=4000)
SHARES = st.floats(min_value=0, max_value=1)


@given(st.tuples(SIZES, SIZES), st.tuples(SIZES, SIZES), st.floats(0.5, 32), SHARES, SHARES)
def test_a_place_goes_to_the_screen_and_back(
    picture: tuple[float, float], canvas: tuple[float, float], zoom: float, x: float, y: float
) -> None:
    place = place_of(QSizeF(*picture), QSizeF(*canvas), Look(zoom, x, y), mm_per_px=0.5)
    assert place.from_screen(place.to_screen(x, y)) == pytest.approx((x, y), abs=1e-6)
    assert place.screen_to_mm(place.mm_to_screen(12.5, 40.0)) == pytest.approx(
        (12.5, 40.0), rel=1e-6
    )


@given(SIZES, SIZES, st.floats(0.1, 5), st.floats(0, 150))
def test_the_fitted_picture_lies_inside_the_canvas_with_its_border(
    columns: float, rows: float, mm_per_px: float, border_mm: float
) -> None:
    place = place_of(
        QSizeF(columns, rows),
        QSizeF(900, 600),
        Look(),
        mm_per_px=mm_per_px,
        border_mm=border_mm,
    )
    border = border_mm * place.px_per_mm
    outer = place.rect.adjusted(-border, -border, border, border)
    assert min(outer.left(), outer.top()) >= 0
    assert outer.right() <= 900.001
    assert outer.bottom() <= 600.001
    assert place.art_mm == pytest.approx((columns * mm_per_px, rows * mm_per_px), rel=1e-6)


@given(st.floats(1, 8), SHARES, SHARES)
def test_zooming_keeps_the_place_under_the_pointer(factor: float, x: float, y: float) -> None:
    before = place_of(QSizeF(400, 300), QSizeF(800, 600), Look(), mm_per_px=1.0)
    look = Look().zoomed(factor, x, y)
    after = place_of(QSizeF(400, 300), QSizeF(800, 600), look, mm_per_px=1.0)
    assert (after.to_screen(x, y) - before.to_screen(x, y)).manhattanLength() < 1e-6


def test_an_image_keeps_every_colour_of_its_array() -> None:
    pixels = np.arange(4 * 5 * 3, dtype=np.uint8).reshape(4, 5, 3)
    image = image_of(pixels)
    for row in range(4):
        for column in range(5):
            color = image.pixelColor(column, row)
            assert (color.red(), color.green(), color.blue()) == tuple(pixels[row, column])


def test_the_level_for_a_zoom_is_never_coarser_than_the_screen() -> None:
    pyramid = pyramid_of(np.zeros((3000, 4000, 3), dtype=np.uint8))
    assert len(pyramid.levels) >= 3
    for scale in (0.05, 0.2, 0.26, 0.5, 0.7, 1.0, 3.0):
        level = pyramid.level_for(scale)
        assert level.width() >= min(4000 * scale, 4000) or level is pyramid.levels[-1]


def test_a_click_on_the_picture_points_at_that_place(open_shell: Shell, qtbot: QtBot) -> None:
    canvas = choose_canvas(open_shell)
    middle = canvas.place.to_screen(0.25, 0.75)
    with qtbot.waitSignal(canvas.pointed) as blocker:
        qtbot.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=middle.toPoint())
    assert blocker.args == pytest.approx([0.25, 0.75], abs=0.01)


def test_the_surround_and_the_picture_are_drawn_in_their_own_colours(
    open_shell: Shell, qtbot: QtBot
) -> None:
    canvas = choose_canvas(open_shell)
    image = canvas.grab().toImage()
    assert image.pixelColor(3, 3).getRgb()[:3] == (145, 145, 145)
    red = image.pixelColor(canvas.place.to_screen(0.5, 0.5).toPoint())
    assert red.red() > red.green() + 60


def test_a_sample_laid_round_is_as_wide_on_the_screen_as_its_face_on_the_art(
    open_shell: Shell, qtbot: QtBot
) -> None:
    canvas = choose_canvas(open_shell)
    open_shell.session.edit("Lay", laid=("black-flat",))
    place = canvas.place
    width_px = 30.0 * place.px_per_mm
    qtbot.waitUntil(lambda: not open_shell.runner.is_busy())
    image = canvas.grab().toImage()
    middle = place.rect.center().y()
    dark = [x for x in range(int(place.left)) if is_dark(image, QPoint(x, int(middle)))]
    assert abs(len(dark) - width_px) <= 1.5


def is_dark(image: QImage, at: QPoint) -> bool:
    return image.pixelColor(at).lightness() < 90


def test_dragging_the_surround_moves_the_picture(open_shell: Shell, qtbot: QtBot) -> None:
    canvas = choose_canvas(open_shell)
    before = canvas.place.to_screen(0.0, 0.0)
    start = canvas.place.to_screen(0.2, 0.2).toPoint()
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=start)
    qtbot.mouseMove(canvas, pos=start + QPoint(30, 20))
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=start + QPoint(30, 20))
    moved = canvas.place.to_screen(0.0, 0.0) - before
    assert (moved - QPointF(30, 20)).manhattanLength() < 1.0
