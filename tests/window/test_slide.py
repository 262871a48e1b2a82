import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QDropEvent
from pytestqt.qtbot import QtBot

from framing_palette.ranking import Verdict
from framing_palette.ranking.strips import Strip
from framing_palette.window import sliding
from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.strips import StripLayer
from framing_palette.window.parcels import parcel
from framing_palette.window.shell import Shell
from framing_palette.window.steps.choose import ChooseStep


@pytest.fixture
def canvas(open_shell: Shell, qtbot: QtBot) -> Canvas:
    open_shell.go("choose")
    open_shell.show()
    qtbot.waitUntil(lambda: open_shell.session.strip_reader is not None)
    step = open_shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    assert step.canvas is not None
    return step.canvas


@pytest.fixture
def layer(canvas: Canvas) -> StripLayer:
    found = canvas.findChild(StripLayer)
    assert isinstance(found, StripLayer)
    return found


def only_strip(shell: Shell) -> Strip:
    (strip,) = shell.session.desk.strips
    return strip


def drag(qtbot: QtBot, canvas: Canvas, start: QPoint, way: QPoint) -> None:
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=start)
    qtbot.mouseMove(canvas, pos=start + way / 2)
    qtbot.mouseMove(canvas, pos=start + way)
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=start + way)


def test_a_strip_is_as_wide_on_the_screen_as_its_face_on_the_art(
    open_shell: Shell, canvas: Canvas
) -> None:
    sliding.lay_strip(open_shell.session, "black-flat")
    assert only_strip(open_shell).width_mm == 30.0
    place = canvas.place
    column = int(place.to_screen(0.5, 0.5).x())
    image = canvas.grab().toImage()
    dark = [y for y in range(canvas.height()) if image.pixelColor(column, y).lightness() < 70]
    assert abs(len(dark) - 30.0 * place.px_per_mm) <= 4.0  # the shadow adds a little


def test_dragging_a_strip_moves_it_by_as_many_millimetres_as_the_hand_went(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    sliding.lay_strip(open_shell.session, "brick-red")
    before = only_strip(open_shell)
    place = canvas.place
    start = place.mm_to_screen(before.x_mm, before.y_mm).toPoint()
    drag(qtbot, canvas, start, QPoint(-60, 40))
    after = only_strip(open_shell)
    assert after.x_mm - before.x_mm == pytest.approx(-60 / place.px_per_mm, abs=0.01)
    assert after.y_mm - before.y_mm == pytest.approx(40 / place.px_per_mm, abs=0.01)


def test_a_whole_drag_is_one_step_to_undo_and_restores_the_place(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    sliding.lay_strip(open_shell.session, "brick-red")
    before, steps = only_strip(open_shell), open_shell.session.undo_stack.count()
    start = canvas.place.mm_to_screen(before.x_mm, before.y_mm).toPoint()
    drag(qtbot, canvas, start, QPoint(30, 30))
    assert open_shell.session.undo_stack.count() == steps + 1
    open_shell.session.undo_stack.undo()
    assert only_strip(open_shell) == before


def test_a_strip_cannot_be_lost_outside_the_picture(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    sliding.lay_strip(open_shell.session, "brick-red")
    start = canvas.place.to_screen(0.5, 0.5).toPoint()
    drag(qtbot, canvas, start, QPoint(-5000, -5000))
    strip = only_strip(open_shell)
    assert (strip.x_mm, strip.y_mm) == (0.0, 0.0)


def test_arrows_move_one_millimetre_and_ten_with_shift_and_undo_at_once(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    sliding.lay_strip(open_shell.session, "brick-red")
    before = only_strip(open_shell)
    for _ in range(3):
        qtbot.keyClick(canvas, Qt.Key.Key_Right)
    qtbot.keyClick(canvas, Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    after = only_strip(open_shell)
    assert (after.x_mm - before.x_mm, after.y_mm - before.y_mm) == (3.0, -10.0)
    open_shell.session.undo_stack.undo()
    assert only_strip(open_shell) == before


def test_keys_turn_bend_keep_and_lay_round(open_shell: Shell, canvas: Canvas, qtbot: QtBot) -> None:
    session = open_shell.session
    sliding.lay_strip(session, "brick-red")
    qtbot.keyClick(canvas, Qt.Key.Key_R)
    assert only_strip(open_shell).turn_deg == 15.0
    qtbot.keyClick(canvas, Qt.Key.Key_R, Qt.KeyboardModifier.ShiftModifier)
    assert only_strip(open_shell).turn_deg == 105.0
    qtbot.keyClick(canvas, Qt.Key.Key_C)
    assert only_strip(open_shell).bent
    qtbot.keyClick(canvas, Qt.Key.Key_K)
    assert session.desk.kept[0].codes == ("brick-red",)
    qtbot.keyClick(canvas, Qt.Key.Key_Return)
    assert session.desk.laid == ("brick-red",)
    qtbot.keyClick(canvas, Qt.Key.Key_Space)
    assert session.desk.laid == ()
    qtbot.keyClick(canvas, Qt.Key.Key_Delete)
    assert session.desk.strips == ()


def test_the_handle_turns_the_strip_and_settles_on_even_angles(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    from framing_palette.window.canvas.strip_shape import handle_point

    sliding.lay_strip(open_shell.session, "brick-red")
    strip, place = only_strip(open_shell), canvas.place
    handle = handle_point(strip, place).toPoint()
    middle = place.mm_to_screen(strip.x_mm, strip.y_mm).toPoint()
    reach = handle.x() - middle.x()
    drag(qtbot, canvas, handle, middle + QPoint(0, reach) - handle)
    assert only_strip(open_shell).turn_deg == 90.0


def test_several_strips_lie_side_by_side_and_n_takes_the_next_in_hand(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    session = open_shell.session
    for code in ("brick-red", "deep-sea", "black-flat"):
        sliding.lay_strip(session, code)
    assert [strip.code for strip in session.desk.strips] == ["brick-red", "deep-sea", "black-flat"]
    assert session.chosen_strip == 3
    qtbot.keyClick(canvas, Qt.Key.Key_N)
    assert session.chosen_strip == 1


def test_the_reading_says_in_a_word_what_the_strip_lies_next_to(
    open_shell: Shell, canvas: Canvas, layer: StripLayer
) -> None:
    session = open_shell.session
    sliding.lay_strip(session, "deep-sea", (160.0, 210.0))
    assert layer.reading is not None
    assert layer.reading.verdict is Verdict.BLEND
    on_water = layer.reading.delta_e
    sliding.lay_strip(session, "deep-sea", (160.0, 40.0))
    assert layer.reading.delta_e > on_water + 20
    tag = layer.tag(canvas.place)
    assert tag is not None
    assert tag.word == "stands apart"
    sliding.lay_strip(session, "acid-lime", (160.0, 40.0))
    tag = layer.tag(canvas.place)
    assert tag is not None
    assert tag.word == "fights"


def test_the_reading_points_at_where_a_repeated_colour_is(
    open_shell: Shell, layer: StripLayer
) -> None:
    sliding.lay_strip(open_shell.session, "brick-red", (160.0, 40.0))
    assert layer.reading is not None
    (x, y) = layer.reading.repeats[0].spot
    assert 0.37 <= x <= 0.63
    assert 0.37 <= y <= 0.63


def test_numbers_leave_the_tag_when_they_are_switched_off(
    open_shell: Shell, canvas: Canvas, layer: StripLayer
) -> None:
    from dataclasses import replace

    sliding.lay_strip(open_shell.session, "brick-red")
    tall = layer.tag(canvas.place)
    quiet = replace(open_shell.session.preferences, show_numbers=False)
    open_shell.session.assign("preferences", quiet)
    low = layer.tag(canvas.place)
    assert tall is not None
    assert low is not None
    assert tall.box.height() > low.box.height()


def test_the_tag_stays_on_the_canvas_wherever_the_strip_lies(
    open_shell: Shell, canvas: Canvas, layer: StripLayer
) -> None:
    width_mm, height_mm = canvas.place.art_mm
    for x in (0.0, 0.5, 1.0):
        for y in (0.0, 0.5, 1.0):
            sliding.lay_strip(open_shell.session, "brick-red", (x * width_mm, y * height_mm))
            tag = layer.tag(canvas.place)
            assert tag is not None
            assert canvas.rect().toRectF().contains(tag.box)


def test_a_sample_carried_from_the_shelf_is_read_on_the_way_and_lies_where_it_is_dropped(
    open_shell: Shell, canvas: Canvas, layer: StripLayer
) -> None:
    place = canvas.place
    start, end = place.to_screen(0.5, 0.2), place.to_screen(0.6, 0.2)
    assert layer.carry("brick-red", start, place)
    assert layer.carry("brick-red", end, place)
    assert layer.reading is not None
    assert open_shell.session.desk.strips == ()
    button, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    data = parcel("brick-red")
    drop = QDropEvent(end, Qt.DropAction.CopyAction, data, button, none)
    canvas.dropEvent(drop)
    assert drop.isAccepted()
    strip = only_strip(open_shell)
    assert strip.x_mm == pytest.approx(0.6 * 320.0, abs=1.0)


def test_the_tools_come_with_a_strip_and_go_with_it(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    from framing_palette.window.canvas.strip_tools import StripTools

    tools = open_shell.findChild(StripTools)
    assert isinstance(tools, StripTools)
    assert not tools.isVisible()
    sliding.lay_strip(open_shell.session, "brick-red")
    assert tools.isVisible()
    qtbot.mouseClick(tools.buttons["bend"], Qt.MouseButton.LeftButton)
    assert only_strip(open_shell).bent
    qtbot.mouseClick(tools.buttons["up"], Qt.MouseButton.LeftButton)
    assert not tools.isVisible()


def test_a_carried_sample_that_leaves_again_leaves_nothing_behind(
    open_shell: Shell, canvas: Canvas, layer: StripLayer
) -> None:
    layer.carry("brick-red", canvas.place.to_screen(0.5, 0.5), canvas.place)
    layer.carried_away()
    assert layer.strips() == ()
    assert open_shell.session.undo_stack.count() == 0
