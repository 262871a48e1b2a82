import pytest
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Catalogue
from framing_palette.errors import FieldError
from framing_palette.jobs import OnRail
from framing_palette.picture import Region
from framing_palette.ranking.strips import Strip
from framing_palette.window.desk import Desk
from framing_palette.window.session import Session


def test_undo_and_redo_restore_the_identical_desk(
    qtbot: QtBot, rack: Catalogue, boat: Region
) -> None:
    session = Session()
    session.assign("catalogue", rack)
    desks = [session.desk]
    session.edit("Draw boat", regions=(boat,))
    desks.append(session.desk)
    session.edit("Lay brick red", laid=("brick-red",))
    desks.append(session.desk)
    session.edit("Keep it", kept=(OnRail(("brick-red",), "Brick red"),))
    desks.append(session.desk)
    for desk in reversed(desks[:-1]):
        session.undo_stack.undo()
        assert session.desk == desk
    for desk in desks[1:]:
        session.undo_stack.redo()
        assert session.desk == desk


def test_each_edit_is_undone_under_its_own_name(qtbot: QtBot, boat: Region) -> None:
    session = Session()
    session.edit("Draw boat", regions=(boat,))
    assert session.undo_stack.undoText() == "Draw boat"


def test_edits_with_one_merge_word_are_undone_at_once(qtbot: QtBot) -> None:
    session = Session()
    strip = Strip(1, "brick-red", 0.0, 0.0, 100.0, 60.0)
    session.edit("Put down", strips=(strip,))
    before = session.desk
    for step in range(1, 6):
        pushed = Strip(1, "brick-red", float(step), 0.0, 100.0, 60.0)
        session.edit("Push strip", merge="push 1", strips=(pushed,))
    assert session.undo_stack.count() == 2
    session.undo_stack.undo()
    assert session.desk == before


def test_edits_with_different_merge_words_stay_apart(qtbot: QtBot) -> None:
    session = Session()
    session.edit("Lay", merge="a", laid=("brick-red",))
    session.edit("Lay", merge="b", laid=("deep-sea",))
    assert session.undo_stack.count() == 2


def test_an_edit_that_changes_nothing_leaves_no_trace(qtbot: QtBot) -> None:
    session = Session()
    session.edit("Nothing", laid=())
    assert session.undo_stack.count() == 0


def test_a_refused_edit_leaves_desk_and_undo_as_they_were(qtbot: QtBot) -> None:
    session = Session()
    five = tuple(OnRail((code,), code) for code in "abcde")
    before = session.desk
    with pytest.raises(FieldError, match="take one of the four off it first"):
        session.edit("Keep five", kept=five)
    assert session.desk is before
    assert session.undo_stack.count() == 0


def test_only_what_changed_is_told(qtbot: QtBot) -> None:
    session = Session()
    heard: list[str] = []
    session.laid_changed.connect(lambda: heard.append("laid"))
    session.regions_changed.connect(lambda: heard.append("regions"))
    session.edit("Lay", laid=("brick-red",))
    assert heard == ["laid"]


def test_blink_goes_back_and_forth_between_the_two_last_looks(qtbot: QtBot) -> None:
    session = Session()
    session.edit("Lay", laid=("brick-red",))
    session.edit("Lay", laid=("deep-sea",))
    session.blink()
    assert session.desk.laid == ("brick-red",)
    session.blink()
    assert session.desk.laid == ("deep-sea",)


def test_an_empty_desk_holds_nothing() -> None:
    assert Desk() == Desk(None, (), (), (), (), ())
