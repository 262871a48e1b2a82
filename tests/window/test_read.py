import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from pytestqt.qtbot import QtBot

from framing_palette.picture import Role
from framing_palette.picture.reshaping import bounds
from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.drawing_layer import DrawingLayer, Tool
from framing_palette.window.canvas.pins import PinLayer
from framing_palette.window.region_card import RegionCard
from framing_palette.window.shell import Shell
from framing_palette.window.steps.read import ReadShelf, ReadStep
from framing_palette.window.steps.step import Standing


@pytest.fixture
def step(open_shell: Shell, qtbot: QtBot) -> ReadStep:
    open_shell.show()
    open_shell.go("read")
    found = open_shell.steps["read"]
    assert isinstance(found, ReadStep)
    return found


@pytest.fixture
def canvas(step: ReadStep) -> Canvas:
    assert step.canvas is not None
    return step.canvas


@pytest.fixture
def layer(step: ReadStep) -> DrawingLayer:
    assert step.drawing is not None
    return step.drawing


@pytest.fixture
def shelf(step: ReadStep) -> ReadShelf:
    assert step.shelf_widget is not None
    return step.shelf_widget


def at(canvas: Canvas, x: float, y: float) -> QPoint:
    return canvas.place.to_screen(x, y).toPoint()


def drag(
    qtbot: QtBot,
    canvas: Canvas,
    start: QPoint,
    end: QPoint,
    keys: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier,
) -> None:
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, keys, pos=start)
    qtbot.mouseMove(canvas, pos=(start + end) / 2)
    qtbot.mouseMove(canvas, pos=end)
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, keys, pos=end)


def test_a_rectangle_is_drawn_where_the_pointer_went(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    qtbot.keyClick(canvas, Qt.Key.Key_B)
    drag(qtbot, canvas, at(canvas, 0.1, 0.1), at(canvas, 0.3, 0.25))
    region = open_shell.session.desk.regions[-1]
    box = bounds(region)
    assert (box.left, box.top) == pytest.approx((0.1, 0.1), abs=0.01)
    assert (box.right, box.bottom) == pytest.approx((0.3, 0.25), abs=0.01)
    assert region.role is Role.SUPPORT  # the boat is the focus already
    assert region.name == "region 1"


def test_an_ellipse_has_the_bounds_of_its_drag_and_undo_takes_it_away(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    before = open_shell.session.desk
    qtbot.keyClick(canvas, Qt.Key.Key_E)
    drag(qtbot, canvas, at(canvas, 0.2, 0.2), at(canvas, 0.6, 0.5))
    region = open_shell.session.desk.regions[-1]
    assert len(region.parts[0].polygon) > 20
    assert bounds(region).right == pytest.approx(0.6, abs=0.01)
    open_shell.session.undo_stack.undo()
    assert open_shell.session.desk == before


def test_a_lasso_becomes_a_region_of_few_points(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    qtbot.keyClick(canvas, Qt.Key.Key_L)
    places = [(0.1, 0.1), (0.2, 0.1), (0.3, 0.1), (0.3, 0.3), (0.3, 0.4), (0.1, 0.4)]
    with qtbot.waitSignal(open_shell.session.regions_changed):
        qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=at(canvas, *places[0]))
        for place in places[1:]:
            qtbot.mouseMove(canvas, pos=at(canvas, *place))
        qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=at(canvas, *places[-1]))
    outline = open_shell.session.desk.regions[-1].parts[0].polygon
    assert 3 <= len(outline) <= 5


def test_a_polygon_is_closed_by_enter_and_dropped_by_escape(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    qtbot.keyClick(canvas, Qt.Key.Key_P)
    corners = [(0.1, 0.1), (0.3, 0.1), (0.2, 0.3)]
    for corner in corners:
        qtbot.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=at(canvas, *corner))
    qtbot.keyClick(canvas, Qt.Key.Key_Return)
    assert len(open_shell.session.desk.regions) == 2
    for corner in corners:
        qtbot.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=at(canvas, *corner))
    qtbot.keyClick(canvas, Qt.Key.Key_Escape)
    assert len(open_shell.session.desk.regions) == 2


def test_growing_finds_the_boat_and_the_wheel_is_no_further_step_to_undo(
    open_shell: Shell, canvas: Canvas, layer: DrawingLayer, qtbot: QtBot
) -> None:
    before = open_shell.session.desk
    qtbot.keyClick(canvas, Qt.Key.Key_G)
    with qtbot.waitSignal(open_shell.session.regions_changed):
        qtbot.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=at(canvas, 0.5, 0.5))
    box = bounds(open_shell.session.desk.regions[-1])
    assert (box.left, box.right) == pytest.approx((0.375, 0.625), abs=0.03)
    with qtbot.waitSignal(open_shell.session.regions_changed):
        assert layer.wheel(28.0)
    assert len(open_shell.session.desk.regions) == 2
    open_shell.session.undo_stack.undo()
    assert open_shell.session.desk == before


def test_shift_adds_to_the_chosen_region_and_alt_cuts_from_it(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    open_shell.session.assign("chosen_region", 0)
    qtbot.keyClick(canvas, Qt.Key.Key_B)
    start, end = at(canvas, 0.1, 0.1), at(canvas, 0.3, 0.3)
    drag(qtbot, canvas, start, end, Qt.KeyboardModifier.ShiftModifier)
    drag(qtbot, canvas, start, end, Qt.KeyboardModifier.AltModifier)
    (region,) = open_shell.session.desk.regions
    assert [part.subtract for part in region.parts] == [False, False, True]


def test_a_click_without_a_drag_draws_nothing(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    qtbot.keyClick(canvas, Qt.Key.Key_B)
    qtbot.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=at(canvas, 0.2, 0.2))
    assert len(open_shell.session.desk.regions) == 1


def test_an_outline_that_encloses_nothing_is_told(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    qtbot.keyClick(canvas, Qt.Key.Key_P)
    for x in (0.1, 0.2, 0.3):
        qtbot.mouseClick(canvas, Qt.MouseButton.LeftButton, pos=at(canvas, x, 0.25))
    qtbot.keyClick(canvas, Qt.Key.Key_Return)
    assert len(open_shell.session.desk.regions) == 1
    assert "has no area" in open_shell.notice.text()


def test_the_hand_pushes_a_region_and_its_palette_follows_while_it_goes(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    session = open_shell.session
    before = bounds(session.desk.regions[0])
    start, end = at(canvas, 0.5, 0.5), at(canvas, 0.5, 0.2)
    qtbot.mousePress(canvas, Qt.MouseButton.LeftButton, pos=start)
    with qtbot.waitSignal(session.live_finding_changed):
        qtbot.mouseMove(canvas, pos=end)
    assert session.live_finding is not None
    assert session.desk.regions[0] == session.desk.regions[0]
    assert bounds(session.desk.regions[0]) == before
    qtbot.mouseRelease(canvas, Qt.MouseButton.LeftButton, pos=end)
    after = bounds(session.desk.regions[0])
    assert after.top - before.top == pytest.approx(-0.3, abs=0.01)
    session.undo_stack.undo()
    assert bounds(session.desk.regions[0]) == before


def test_a_corner_stretches_the_chosen_region(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    open_shell.session.assign("chosen_region", 0)
    drag(qtbot, canvas, at(canvas, 0.63, 0.63), at(canvas, 0.8, 0.75))
    box = bounds(open_shell.session.desk.regions[0])
    assert (box.right, box.bottom) == pytest.approx((0.8, 0.75), abs=0.02)
    assert box.left == pytest.approx(0.37)


def test_arrows_push_and_delete_takes_away_the_chosen_region(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    session = open_shell.session
    session.assign("chosen_region", 0)
    before = session.desk
    for _ in range(3):
        qtbot.keyClick(canvas, Qt.Key.Key_Right)
    assert bounds(session.desk.regions[0]).left == pytest.approx(0.376)
    session.undo_stack.undo()
    assert session.desk == before
    qtbot.keyClick(canvas, Qt.Key.Key_Delete)
    assert session.desk.regions == ()


def drawn_card(shelf: ReadShelf) -> RegionCard:
    return shelf.cards[0]


def test_the_card_renames_casts_and_deletes_its_region(
    open_shell: Shell, shelf: ReadShelf, qtbot: QtBot
) -> None:
    session = open_shell.session
    session.assign("chosen_region", 0)
    card = drawn_card(shelf)
    card.name.setText("red boat")
    card.renamed.emit("red boat")
    assert session.desk.regions[0].name == "red boat"
    qtbot.mouseClick(drawn_card(shelf).chips[Role.GROUND], Qt.MouseButton.LeftButton)
    assert session.desk.regions[0].role is Role.GROUND
    drawn_card(shelf).deleted.emit()
    assert session.desk.regions == ()


def test_two_regions_cannot_have_one_name(
    open_shell: Shell, canvas: Canvas, shelf: ReadShelf, qtbot: QtBot
) -> None:
    qtbot.keyClick(canvas, Qt.Key.Key_B)
    drag(qtbot, canvas, at(canvas, 0.1, 0.1), at(canvas, 0.3, 0.25))
    shelf.cards[1].renamed.emit("boat")
    assert [region.name for region in open_shell.session.desk.regions] == ["boat", "region 1"]
    assert '"boat" is taken by another region' in open_shell.notice.text()


def test_pointing_at_a_colour_dims_the_picture_where_it_does_not_live(
    open_shell: Shell, canvas: Canvas, shelf: ReadShelf, qtbot: QtBot
) -> None:
    session = open_shell.session
    card = drawn_card(shelf)
    qtbot.waitUntil(lambda: card.strip.accessibleName().startswith("Palette: "))
    boat, sky = at(canvas, 0.5, 0.5), at(canvas, 0.1, 0.1)
    lit = canvas.grab().toImage()
    with qtbot.waitSignal(session.lit_map_changed):
        qtbot.keyClick(card.strip, Qt.Key.Key_Right)
    dimmed = canvas.grab().toImage()
    assert dimmed.pixelColor(boat) == lit.pixelColor(boat)
    assert dimmed.pixelColor(sky).lightness() < 0.4 * lit.pixelColor(sky).lightness()
    with qtbot.waitSignal(session.lit_map_changed):
        card.strip.clearFocus()
        session.assign("lit_colour", None)
    assert canvas.grab().toImage().pixelColor(sky) == lit.pixelColor(sky)


def test_pieces_of_a_palette_are_as_long_as_their_shares(shelf: ReadShelf) -> None:
    whole = shelf.cards[-1]
    whole.strip.resize(1000, whole.strip.height())
    pieces = whole.strip._pieces()
    colours = whole.strip._colours
    assert len(pieces) == len(colours) >= 3
    for (_, width), colour in zip(pieces, colours, strict=True):
        assert width == pytest.approx(1000 * colour.share, abs=6)


def test_pins_and_their_plates_stay_on_the_canvas_without_overlap(
    step: ReadStep, canvas: Canvas
) -> None:
    layer = canvas.findChild(PinLayer)
    assert isinstance(layer, PinLayer)
    pins = layer.pins(canvas.place)
    plates = [pin.plate for pin in pins]
    for number, plate in enumerate(plates):
        assert canvas.rect().toRectF().contains(plate)
        assert not any(plate.intersects(other) for other in plates[number + 1 :])


def test_the_step_is_done_once_the_place_for_the_eye_is_drawn(
    open_shell: Shell, step: ReadStep
) -> None:
    assert step.standing() is Standing.DONE
    open_shell.session.edit("Clear", regions=())
    assert step.standing() is Standing.OPEN
    assert step.standing_words() == "where the eye should rest is a guess"


def test_the_guessed_focus_has_a_card_that_says_so(
    open_shell: Shell, shelf: ReadShelf, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(open_shell.session.findings_changed):
        open_shell.session.edit("Clear", regions=())
    titles = [card._title.text() for card in shelf.cards]
    assert titles == ["Focus, a guess", "Rim", "Whole picture"]


def test_a_tool_in_hand_is_pressed_in_the_tool_bar(
    step: ReadStep, layer: DrawingLayer, canvas: Canvas, qtbot: QtBot
) -> None:
    from framing_palette.window.canvas.drawing_tools import DrawingTools

    tools = canvas.window().findChild(DrawingTools)
    assert isinstance(tools, DrawingTools)
    qtbot.keyClick(canvas, Qt.Key.Key_L)
    assert tools.buttons[Tool.LASSO].isChecked()
    qtbot.mouseClick(tools.buttons[Tool.HAND], Qt.MouseButton.LeftButton)
    assert layer.tool is Tool.HAND
    assert canvas.place.rect.contains(QPointF(at(canvas, 0.5, 0.5)))
