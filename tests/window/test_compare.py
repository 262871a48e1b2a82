import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from framing_palette.design import check_cuttable
from framing_palette.design.shown_widths import shown_widths
from framing_palette.jobs import job_from_text, job_text
from framing_palette.window import building
from framing_palette.window.arranging import desk_of, job_of
from framing_palette.window.compare import CompareBoard
from framing_palette.window.keeping import keep_sample
from framing_palette.window.look_view import designed_widths
from framing_palette.window.shell import Shell
from tests.window.buildable import BUILDABLE


@pytest.fixture
def board(open_shell: Shell, qtbot: QtBot) -> CompareBoard:
    open_shell.show()
    for code in ("brick-red", "deep-sea", "black-flat"):
        keep_sample(open_shell.session, code)
    qtbot.mouseClick(open_shell.rail.compare, Qt.MouseButton.LeftButton)
    found = open_shell.findChild(CompareBoard)
    assert isinstance(found, CompareBoard)
    return found


def test_kept_samples_stand_side_by_side_at_one_scale(
    open_shell: Shell, board: CompareBoard
) -> None:
    assert open_shell.session.step == "choose"
    assert [panel.kept.title for panel in board.panels] == ["Brick red", "Deep sea", "Black flat"]
    scales = {round(panel.canvas.place.px_per_mm, 6) for panel in board.panels}
    assert len(scales) == 1


def test_the_views_are_linked(board: CompareBoard) -> None:
    before = [panel.canvas.place.width for panel in board.panels]
    board.panels[0].canvas.zoom_by(2.0)
    after = [panel.canvas.place.width for panel in board.panels]
    assert after == pytest.approx([2 * width for width in before])


def test_differences_are_said_in_words_against_the_first(board: CompareBoard) -> None:
    assert "than Brick red" in board.panels[1].told.text()
    assert "than" not in board.panels[0].told.text()


def test_a_note_stays_with_its_sample_and_can_be_undone(
    open_shell: Shell, board: CompareBoard, qtbot: QtBot
) -> None:
    before = open_shell.session.desk
    qtbot.keyClicks(board.panels[1].note, "the client's mother likes it")
    qtbot.keyClick(board.panels[1].note, Qt.Key.Key_Return)
    assert open_shell.session.desk.kept[1].note == "the client's mother likes it"
    open_shell.session.undo_stack.undo()
    assert open_shell.session.desk == before
    assert board.panels[1].note.text() == ""


def test_sending_one_away_takes_it_off_rail_and_shelf(
    open_shell: Shell, board: CompareBoard, qtbot: QtBot
) -> None:
    qtbot.mouseClick(board.panels[1].buttons["away"], Qt.MouseButton.LeftButton)
    desk = open_shell.session.desk
    assert [kept.codes for kept in desk.kept] == [("brick-red",), ("black-flat",)]
    assert [aside.code for aside in desk.set_aside] == ["deep-sea"]
    assert len(board.panels) == 2


def test_one_alone_cannot_be_compared(open_shell: Shell, board: CompareBoard, qtbot: QtBot) -> None:
    for _ in range(2):
        qtbot.mouseClick(board.panels[0].buttons["off"], Qt.MouseButton.LeftButton)
    assert not open_shell.session.comparing
    assert not open_shell.rail.compare.isEnabled()


def test_laying_one_from_the_board_lays_it_round_the_picture(
    open_shell: Shell, board: CompareBoard, qtbot: QtBot
) -> None:
    qtbot.mouseClick(board.panels[2].buttons["lay"], Qt.MouseButton.LeftButton)
    assert open_shell.session.desk.laid == ("black-flat",)
    board.closed.emit()
    assert not open_shell.session.comparing


def width_of(board: CompareBoard) -> list[float]:
    return [panel.canvas.place.width for panel in board.panels if panel.isVisible()]


def test_space_blinks_between_two_in_the_same_place_of_the_board(
    board: CompareBoard, qtbot: QtBot
) -> None:
    qtbot.keyClick(board, Qt.Key.Key_Space)
    assert [panel.isVisible() for panel in board.panels] == [True, False, False]
    place = board.panels[0].canvas.mapTo(board, board.panels[0].canvas.rect().topLeft())
    size, picture = board.panels[0].canvas.size(), board.panels[0].canvas.place.rect
    qtbot.keyClick(board.panels[0].canvas, Qt.Key.Key_Space)
    assert [panel.isVisible() for panel in board.panels] == [False, True, False]
    qtbot.waitUntil(lambda: board.panels[1].canvas.size() == size)
    shown = board.panels[1].canvas
    assert shown.mapTo(board, shown.rect().topLeft()) == place
    assert shown.place.rect == picture
    assert "than Brick red" in board.panels[1].told.text()
    qtbot.keyClick(board, Qt.Key.Key_Space)
    assert board.panels[0].isVisible()
    assert "than Deep sea" in board.panels[0].told.text()


def test_a_number_chooses_what_blinks_and_lays_nothing(
    open_shell: Shell, board: CompareBoard, qtbot: QtBot
) -> None:
    qtbot.mouseClick(board.blink, Qt.MouseButton.LeftButton)
    qtbot.keyClick(board, Qt.Key.Key_3)
    assert board.shown == 2
    assert board.panels[2].isVisible()
    qtbot.mouseClick(board.turn, Qt.MouseButton.LeftButton)
    assert board.shown == 0
    assert open_shell.session.desk.laid == ()
    assert board.title.text() == "Blinking: 1 and 3"


def test_escape_ends_the_blinking_and_then_the_comparing(
    open_shell: Shell, board: CompareBoard, qtbot: QtBot
) -> None:
    qtbot.keyClick(board, Qt.Key.Key_Space)
    qtbot.keyClick(board, Qt.Key.Key_Escape)
    assert [panel.isVisible() for panel in board.panels] == [True, True, True]
    assert board.title.text() == "Side by side"
    qtbot.keyClick(board, Qt.Key.Key_Escape)
    assert not open_shell.session.comparing


def test_a_look_taken_off_while_it_blinks_leaves_the_others_in_sight(
    open_shell: Shell, board: CompareBoard, qtbot: QtBot
) -> None:
    qtbot.keyClick(board, Qt.Key.Key_Space)
    qtbot.keyClick(board, Qt.Key.Key_3)
    qtbot.mouseClick(board.panels[2].buttons["off"], Qt.MouseButton.LeftButton)
    assert len(board.panels) == 2
    assert sum(panel.isVisible() for panel in board.panels) == 1


def test_a_space_typed_in_a_note_stays_in_the_note(board: CompareBoard, qtbot: QtBot) -> None:
    qtbot.keyClicks(board.panels[0].note, "a b")
    assert board.panels[0].note.text() == "a b"
    assert all(panel.isVisible() for panel in board.panels)


def test_sending_one_away_is_one_step_to_undo(
    open_shell: Shell, board: CompareBoard, qtbot: QtBot
) -> None:
    before = open_shell.session.desk
    qtbot.mouseClick(board.panels[1].buttons["away"], Qt.MouseButton.LeftButton)
    open_shell.session.undo_stack.undo()
    assert open_shell.session.desk == before


@pytest.fixture
def designs(open_shell: Shell, qtbot: QtBot) -> CompareBoard:
    """Two whole looks, kept from what was laid round, side by side."""
    open_shell.show()
    open_shell.go("choose")
    for laid in (("deep-sea", "black-flat"), ("warm-slip", "brick-red", "black-flat")):
        open_shell.session.edit("Lay", laid=laid)
        qtbot.mouseClick(open_shell.rail.keep, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(open_shell.rail.compare, Qt.MouseButton.LeftButton)
    found = open_shell.findChild(CompareBoard)
    assert isinstance(found, CompareBoard)
    return found


def test_whole_looks_are_kept_and_compared_part_by_part(
    open_shell: Shell, designs: CompareBoard
) -> None:
    assert [panel.kept.codes for panel in designs.panels] == [
        ("deep-sea", "black-flat"),
        ("warm-slip", "brick-red", "black-flat"),
    ]
    assert designs.panels[0].kept.title == "Deep sea + Black flat"
    said = designs.panels[1].told.text()
    assert "Mat: " in said
    assert "than Deep sea." in said
    assert "With Warm slip as wrapped fillet." in said
    assert "oulding" not in said
    scales = {round(panel.canvas.place.px_per_mm, 6) for panel in designs.panels}
    assert len(scales) == 1


def test_rejecting_a_whole_look_keeps_its_samples_on_the_shelf_and_prefers_what_stays(
    open_shell: Shell, designs: CompareBoard, qtbot: QtBot
) -> None:
    before = open_shell.session.desk
    qtbot.mouseClick(designs.panels[1].buttons["away"], Qt.MouseButton.LeftButton)
    desk = open_shell.session.desk
    assert desk.set_aside == ()
    assert [kept.codes for kept in desk.kept] == [("deep-sea", "black-flat")]
    assert [(one.better, one.worse) for one in desk.answers] == [
        (("deep-sea", "black-flat"), ("warm-slip", "brick-red", "black-flat"))
    ]
    assert len(open_shell.taste.taste.choices) == 1
    open_shell.session.undo_stack.undo()
    assert open_shell.session.desk == before
    assert open_shell.taste.taste.choices == ()


def test_with_nothing_laid_there_is_nothing_to_keep_and_it_is_said(
    open_shell: Shell, qtbot: QtBot
) -> None:
    open_shell.show()
    assert not open_shell.rail.keep.isEnabled()
    with qtbot.waitActive(open_shell):
        open_shell.activateWindow()
    qtbot.keyClick(open_shell, Qt.Key.Key_K, Qt.KeyboardModifier.ControlModifier)
    assert "Lay something round the picture first" in open_shell.notice.text()


def test_a_full_rail_refuses_a_look_and_stays_as_it_is(open_shell: Shell, qtbot: QtBot) -> None:
    open_shell.show()
    open_shell.go("choose")
    for code in ("brick-red", "deep-sea", "black-flat", "pale-sky"):
        keep_sample(open_shell.session, code)
    open_shell.session.edit("Lay", laid=("deep-sea", "black-flat"))
    qtbot.mouseClick(open_shell.rail.keep, Qt.MouseButton.LeftButton)
    assert len(open_shell.session.desk.kept) == 4
    assert "take one of the four off it first" in open_shell.notice.text()


def test_a_design_is_kept_from_build_and_seen_with_its_own_widths(
    open_shell: Shell, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(open_shell.session.ranked_changed, timeout=20_000):
        open_shell.session.assign("catalogue", BUILDABLE)
    open_shell.show()
    open_shell.go("build")
    for codes in (("deep-sea", "black-flat"), ("pale-sky", "black-flat")):
        building.begin_design(open_shell.session, codes)
        qtbot.mouseClick(open_shell.rail.keep, Qt.MouseButton.LeftButton)
    design = building.design_in_hand(open_shell.session)
    assert design is not None
    qtbot.mouseClick(open_shell.rail.compare, Qt.MouseButton.LeftButton)
    found = open_shell.findChild(CompareBoard)
    assert isinstance(found, CompareBoard)
    assert [panel.kept.codes[0] for panel in found.panels] == ["deep-sea", "pale-sky"]
    shown = shown_widths(check_cuttable(design, out_of_rabbet=True))
    assert designed_widths(open_shell.session, design.codes) == shown
    found.panels[1].border.least_border_mm = 0.0
    whole = sum(width.as_float_mm() for width in shown)
    assert found.panels[1].border.border_mm() == pytest.approx(whole)


def test_a_note_on_a_whole_look_is_kept_with_the_job(
    open_shell: Shell, designs: CompareBoard, qtbot: QtBot
) -> None:
    qtbot.keyClicks(designs.panels[1].note, "for the hall")
    qtbot.keyClick(designs.panels[1].note, Qt.Key.Key_Return)
    session = open_shell.session
    job = job_of(session.desk, session.catalogue)
    assert job is not None
    again = desk_of(job_from_text(job_text(job), "the job"), session.catalogue)
    assert [(kept.codes, kept.note) for kept in again.kept] == [
        (("deep-sea", "black-flat"), ""),
        (("warm-slip", "brick-red", "black-flat"), "for the hall"),
    ]
