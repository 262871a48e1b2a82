from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Kind
from framing_palette.ranking import RankedSample
from framing_palette.window.choose_shelf import ChooseShelf
from framing_palette.window.shell import Shell


def shelf_of(shell: Shell) -> ChooseShelf:
    shell.go("choose")
    step = shell.steps["choose"]
    shelf = getattr(step, "shelf_widget", None)
    assert isinstance(shelf, ChooseShelf)
    return shelf


def codes_shown(shelf: ChooseShelf) -> list[str]:
    rows = [shelf.model.row_at(shelf.model.index(at)) for at in range(shelf.model.rowCount())]
    return [row.sample.code for row in rows if isinstance(row, RankedSample)]


def test_a_click_on_a_row_chooses_its_sample(open_shell: Shell, qtbot: QtBot) -> None:
    shelf = shelf_of(open_shell)
    open_shell.show()
    code = codes_shown(shelf)[0]
    rect = shelf.view.visualRect(shelf.model.index_of(code))
    qtbot.mouseClick(shelf.view.viewport(), Qt.MouseButton.LeftButton, pos=rect.center())
    assert open_shell.session.chosen_code == code


def test_enter_lays_the_chosen_sample_round_and_again_takes_it_away(
    open_shell: Shell, qtbot: QtBot
) -> None:
    shelf = shelf_of(open_shell)
    open_shell.session.assign("chosen_code", "brick-red")
    qtbot.keyClick(shelf.view, Qt.Key.Key_Return)
    assert open_shell.session.desk.laid == ("brick-red",)
    qtbot.keyClick(shelf.view, Qt.Key.Key_Return)
    assert open_shell.session.desk.laid == ()


def test_keep_puts_the_sample_on_the_rail_once(open_shell: Shell, qtbot: QtBot) -> None:
    shelf = shelf_of(open_shell)
    open_shell.session.assign("chosen_code", "brick-red")
    for _ in range(2):
        qtbot.keyClick(shelf.view, Qt.Key.Key_K)
    assert [kept.codes for kept in open_shell.session.desk.kept] == [("brick-red",)]
    assert open_shell.rail.slots[0].accessibleName() == "1: Brick red"


def test_a_full_rail_says_what_to_do_and_stays_as_it_is(open_shell: Shell, qtbot: QtBot) -> None:
    shelf = shelf_of(open_shell)
    codes = ["brick-red", "deep-sea", "pale-sky", "black-flat", "warm-slip"]
    for code in codes:
        open_shell.session.assign("chosen_code", code)
        shelf.do("keep")
    assert len(open_shell.session.desk.kept) == 4
    assert "take one of the four off it first" in open_shell.notice.text()


def test_a_sample_sent_away_leaves_the_shelf_and_undo_brings_it_back(
    open_shell: Shell, qtbot: QtBot
) -> None:
    shelf = shelf_of(open_shell)
    code = codes_shown(shelf)[0]
    open_shell.session.assign("chosen_code", code)
    qtbot.keyClick(shelf.view, Qt.Key.Key_X)
    assert code not in codes_shown(shelf)
    open_shell.session.undo_stack.undo()
    assert code in codes_shown(shelf)


def test_chips_show_only_their_kinds(open_shell: Shell, qtbot: QtBot) -> None:
    shelf = shelf_of(open_shell)
    qtbot.mouseClick(shelf.chips[Kind.MOULDING], Qt.MouseButton.LeftButton)
    assert set(codes_shown(shelf)) <= {"black-flat"}
    qtbot.mouseClick(shelf.chips[Kind.MOULDING], Qt.MouseButton.LeftButton)
    assert len(codes_shown(shelf)) > 1


def test_the_search_field_finds_a_sample_by_part_of_its_name(
    open_shell: Shell, qtbot: QtBot
) -> None:
    shelf = shelf_of(open_shell)
    qtbot.keyClicks(open_shell.job_line.search, "sky pale")
    assert codes_shown(shelf) == ["pale-sky"]


def test_number_keys_lay_what_rests_on_the_rail(open_shell: Shell, qtbot: QtBot) -> None:
    open_shell.show()
    shelf = shelf_of(open_shell)
    open_shell.session.assign("chosen_code", "deep-sea")
    shelf.do("keep")
    qtbot.mouseClick(open_shell.rail.slots[0], Qt.MouseButton.LeftButton)
    assert open_shell.session.desk.laid == ("deep-sea",)


def test_a_clash_stands_under_a_closed_heading_until_it_is_opened(
    open_shell: Shell, qtbot: QtBot
) -> None:
    from framing_palette.ranking import Verdict

    shelf = shelf_of(open_shell)
    clashes = {
        ranked.sample.code
        for ranked in open_shell.session.ranked
        if ranked.verdict is Verdict.CLASH
    }
    assert "acid-lime" in clashes
    assert not clashes & set(codes_shown(shelf))
    shelf.model.toggle(Verdict.CLASH)
    assert clashes <= set(codes_shown(shelf))


def test_a_liked_sample_that_fights_brings_the_nearest_that_works_better(
    open_shell: Shell, qtbot: QtBot
) -> None:
    from framing_palette.ranking import Verdict

    open_shell.show()
    shelf = shelf_of(open_shell)
    open_shell.session.assign("chosen_code", "acid-lime")
    qtbot.waitUntil(shelf.better.isVisible)
    assert shelf.better.text() != ""
    qtbot.mouseClick(shelf.better.button, Qt.MouseButton.LeftButton)
    chosen = open_shell.session.ranked_of(open_shell.session.chosen_code)
    assert chosen is not None
    assert chosen.verdict is not Verdict.CLASH
    assert shelf.better.isHidden()


def test_the_measures_of_the_chosen_sample_come_with_what_they_are(
    open_shell: Shell, qtbot: QtBot
) -> None:
    open_shell.show()
    shelf = shelf_of(open_shell)
    open_shell.session.assign("chosen_code", "brick-red")
    qtbot.keyClick(shelf.view, Qt.Key.Key_I)
    assert [row.told.name for row in shelf.measures.rows][:3] == [
        "Repeats",
        "Apart from the edge",
        "Pull",
    ]
    for row in shelf.measures.rows:
        assert row.told.explanation.count(".") >= 2 or "Ou and Luo" in row.told.explanation
    qtbot.keyClick(shelf.view, Qt.Key.Key_I)
    assert shelf.measures.isHidden()


def test_a_click_on_the_picture_shows_only_what_is_near_that_colour(
    open_shell: Shell, qtbot: QtBot
) -> None:
    open_shell.show()
    shelf = shelf_of(open_shell)
    everything = set(codes_shown(shelf))
    step = open_shell.steps["choose"]
    step.canvas.pointed.emit(0.5, 0.9)  # type: ignore[attr-defined]
    assert "deep-sea" in codes_shown(shelf)
    assert "brick-red" not in codes_shown(shelf)
    assert shelf.probe.text().startswith("Near ")
    qtbot.mouseClick(shelf.probe, Qt.MouseButton.LeftButton)
    assert set(codes_shown(shelf)) == everything


def test_when_nothing_passes_the_shelf_says_what_to_do(open_shell: Shell, qtbot: QtBot) -> None:
    open_shell.show()
    shelf = shelf_of(open_shell)
    qtbot.keyClicks(open_shell.job_line.search, "zebra")
    assert shelf.view.isHidden()
    assert "clear the search" in shelf._nothing.text()
    open_shell.job_line.search.clear()
    assert shelf.view.isVisible()
