import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from framing_palette.window.compare import CompareBoard
from framing_palette.window.keeping import keep_sample
from framing_palette.window.shell import Shell


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
