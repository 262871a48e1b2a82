"""Taste at the counter: choices as one works, questions, the card, and what it does to the list."""

import json
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Catalogue, Kind
from framing_palette.ranking import (
    HOUSE_RULE,
    Taste,
    fit_taste,
    read_taste_file,
    write_taste_file,
)
from framing_palette.window import building
from framing_palette.window.build_samples import BuildSamples
from framing_palette.window.choose_shelf import ChooseShelf
from framing_palette.window.keeping import keep_sample, send_away
from framing_palette.window.shell import Shell
from framing_palette.window.steps.choose import ChooseStep
from framing_palette.window.taste_book import TasteBook
from framing_palette.window.taste_question import QuestionBoard
from framing_palette.window.taste_shelf import TasteShelf
from tests.ranking.taste_by_hand import shop
from tests.window.buildable import BUILDABLE
from tests.window.conftest import BOAT, make_picture, make_sample, on_the_desk
from tests.window.settling import settle
from tests.window.test_fit import clipped, overlapping, too_small_to_hit

LEFT = Qt.MouseButton.LeftButton
MATS = Catalogue(
    samples=tuple(
        make_sample(f"mat-{number}", (18.0 + 7 * number, 3.0 * (number % 4), -2.0 * (number % 5)))
        for number in range(10)
    ),
    name="Invented mats",
)
SEA = make_picture(columns=80, rows=60, mm_per_px=4.0)
LOVES_DARK = {"vivid": 0.0, "depth": 4.0, "foil": 0.0}


def choose_of(shell: Shell) -> ChooseStep:
    shell.go("choose")
    step = shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    return step


def shelf_of(shell: Shell) -> ChooseShelf:
    shelf = choose_of(shell).shelf_widget
    assert shelf is not None
    return shelf


def idle(shell: Shell, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not shell.runner.is_busy(), timeout=20_000)


def pairs(book: TasteBook) -> set[tuple[str, str]]:
    return {(choice.better_codes[0], choice.worse_codes[0]) for choice in book.taste.choices}


def order(shell: Shell) -> list[str]:
    assert shell.session.ranked is not None
    return [line.sample.code for line in shell.session.ranked]


@pytest.fixture
def mats_shell(shell: Shell, qtbot: QtBot) -> Shell:
    """The counter with a picture and ten mats, shown, everything read."""
    with qtbot.waitSignal(shell.session.ranked_changed, timeout=20_000):
        shell.session.assign("catalogue", MATS)
        shell.errands.take_job(on_the_desk(SEA, (BOAT,)))
    shell.show()
    idle(shell, qtbot)
    return shell


@pytest.fixture
def taught_shell(preferences_file: Path, mats_shell: Shell, qtbot: QtBot) -> Shell:
    """The same, with the choices of a shop that loves dark mats already made elsewhere."""
    path = preferences_file.with_name("elsewhere.json")
    write_taste_file(path, shop(200, weights=LOVES_DARK))
    mats_shell.taste.import_from(path)
    idle(mats_shell, qtbot)
    assert len(mats_shell.taste.taste.choices) == 200
    return mats_shell


@pytest.fixture
def card(mats_shell: Shell, qtbot: QtBot) -> TasteShelf:
    shelf = shelf_of(mats_shell)
    qtbot.mouseClick(shelf.taste_button, LEFT)
    found = choose_of(mats_shell).taste_shelf
    assert found is not None
    assert found.isVisible()
    return found


@pytest.fixture
def asked(mats_shell: Shell, qtbot: QtBot) -> QuestionBoard:
    """The question, opened with the key."""
    qtbot.keyClick(shelf_of(mats_shell).view, Qt.Key.Key_Q)
    step = choose_of(mats_shell)
    qtbot.waitUntil(lambda: step.asking.question is not None)
    assert step.question_board is not None
    assert step.question_board.isVisible()
    return step.question_board


# --- choices as one works -----------------------------------------------------------------------


def test_what_is_kept_is_preferred_to_what_is_sent_away_from_the_shelf(
    mats_shell: Shell, qtbot: QtBot
) -> None:
    shelf = shelf_of(mats_shell)
    for code, key in (("mat-1", Qt.Key.Key_K), ("mat-5", Qt.Key.Key_X)):
        mats_shell.session.assign("chosen_code", code)
        qtbot.keyClick(shelf.view, key)
    assert pairs(mats_shell.taste) == {("mat-1", "mat-5")}


def test_undoing_the_work_takes_its_choice_back_and_redoing_brings_it_again(
    mats_shell: Shell,
) -> None:
    session = mats_shell.session
    keep_sample(session, "mat-1")
    send_away(session, "mat-5")
    session.undo_stack.undo()
    assert pairs(mats_shell.taste) == set()
    session.undo_stack.redo()
    assert pairs(mats_shell.taste) == {("mat-1", "mat-5")}


def test_a_mat_is_never_preferred_to_a_moulding(open_shell: Shell) -> None:
    keep_sample(open_shell.session, "brick-red")
    send_away(open_shell.session, "black-flat")
    assert open_shell.taste.taste.choices == ()


def test_preferring_one_side_by_side_prefers_it_to_all_beside_it(
    mats_shell: Shell, qtbot: QtBot
) -> None:
    for code in ("mat-1", "mat-2", "mat-3"):
        keep_sample(mats_shell.session, code)
    qtbot.mouseClick(mats_shell.rail.compare, LEFT)
    board = choose_of(mats_shell).board
    assert board is not None
    qtbot.mouseClick(board.panels[1].buttons["prefer"], LEFT)
    assert pairs(mats_shell.taste) == {("mat-2", "mat-1"), ("mat-2", "mat-3")}
    assert "Preferred to Mat 1, Mat 3." in board.panels[1].told.text()
    mats_shell.session.undo_stack.undo()
    assert pairs(mats_shell.taste) == set()
    assert "Preferred" not in board.panels[1].told.text()


def test_choices_name_no_client_and_no_job(
    mats_shell: Shell, preferences_file: Path, qtbot: QtBot
) -> None:
    keep_sample(mats_shell.session, "mat-1")
    send_away(mats_shell.session, "mat-5")
    mats_shell.taste.write()
    idle(mats_shell, qtbot)
    content = preferences_file.with_name("taste.json").read_text()
    assert "TEST-1" not in content
    assert "red boat" not in content
    assert json.loads(content)["choices"][0]["better_codes"] == ["mat-1"]


def test_choices_survive_a_restart_and_are_added_to(
    mats_shell: Shell, preferences_file: Path, qtbot: QtBot
) -> None:
    keep_sample(mats_shell.session, "mat-1")
    send_away(mats_shell.session, "mat-5")
    mats_shell.close()
    later = Shell(preferences_file=preferences_file)
    qtbot.addWidget(later)
    idle(later, qtbot)
    assert pairs(later.taste) == {("mat-1", "mat-5")}
    with qtbot.waitSignal(later.session.ranked_changed, timeout=20_000):
        later.session.assign("catalogue", MATS)
        later.errands.take_job(on_the_desk(make_picture(), (BOAT,)))
    keep_sample(later.session, "mat-2")
    send_away(later.session, "mat-7")
    assert pairs(later.taste) == {("mat-1", "mat-5"), ("mat-2", "mat-7")}
    later.close()
    kept = read_taste_file(preferences_file.with_name("taste.json")).taste
    assert len(kept.choices) == 2


def test_choices_of_an_earlier_job_stay_when_another_is_opened(
    mats_shell: Shell, qtbot: QtBot
) -> None:
    keep_sample(mats_shell.session, "mat-1")
    send_away(mats_shell.session, "mat-5")
    with qtbot.waitSignal(mats_shell.session.ranked_changed, timeout=20_000):
        given = on_the_desk(make_picture(columns=120), ())
        mats_shell.errands.take_job(given)
    assert pairs(mats_shell.taste) == {("mat-1", "mat-5")}


def test_a_damaged_file_is_kept_aside_and_said_and_the_window_works(
    app: object, preferences_file: Path, qtbot: QtBot
) -> None:
    path = preferences_file.with_name("taste.json")
    path.parent.mkdir(parents=True)
    path.write_text('{"schema": "framing-pal')
    shell = Shell(preferences_file=preferences_file)
    qtbot.addWidget(shell)
    idle(shell, qtbot)
    assert shell.taste.taste == Taste()
    assert "taste-damaged-1.json" in shell.notice.text()
    assert path.with_name("taste-damaged-1.json").read_text().startswith('{"schema"')
    shell.close()


def test_a_sample_sent_away_for_its_price_says_nothing_of_taste(
    mats_shell: Shell, qtbot: QtBot
) -> None:
    shelf = shelf_of(mats_shell)
    keep_sample(mats_shell.session, "mat-1")
    mats_shell.session.assign("chosen_code", "mat-5")
    qtbot.keyClick(shelf.view, Qt.Key.Key_X)
    assert shelf.away.isVisible()
    assert shelf.away.told.text() == "Mat 5 is sent away. Why?"
    assert len(mats_shell.taste.taste.choices) == 1
    qtbot.mouseClick(shelf.away.chips["too dear"], LEFT)
    assert mats_shell.session.desk.set_aside[0].reason == "too dear"
    assert mats_shell.taste.taste.choices == ()
    assert shelf.away.isHidden()
    mats_shell.session.undo_stack.undo()
    assert len(mats_shell.taste.taste.choices) == 1


def test_why_need_not_be_said_and_undoing_takes_the_question_away(
    mats_shell: Shell, qtbot: QtBot
) -> None:
    shelf = shelf_of(mats_shell)
    send_away(mats_shell.session, "mat-5")
    qtbot.mouseClick(shelf.away.close_button, LEFT)
    assert shelf.away.isHidden()
    send_away(mats_shell.session, "mat-6")
    assert shelf.away.isVisible()
    mats_shell.session.undo_stack.undo()
    assert shelf.away.isHidden()


# --- questions ----------------------------------------------------------------------------------


def test_a_question_shows_two_samples_linked_and_at_one_scale(asked: QuestionBoard) -> None:
    assert {len(view.codes) for view in asked.views} == {1}
    assert asked.views[0].codes != asked.views[1].codes
    before = [view.canvas.place.width for view in asked.views]
    assert before[0] == pytest.approx(before[1])
    asked.views[0].canvas.zoom_by(2.0)
    after = [view.canvas.place.width for view in asked.views]
    assert after == pytest.approx([2 * width for width in before])


@pytest.mark.parametrize(("key", "place"), [(Qt.Key.Key_1, 0), (Qt.Key.Key_2, 1)])
def test_a_number_key_answers_and_leaves_the_rail_alone(
    mats_shell: Shell, asked: QuestionBoard, qtbot: QtBot, key: Qt.Key, place: int
) -> None:
    keep_sample(mats_shell.session, "mat-9")
    question = choose_of(mats_shell).asking.question
    assert question is not None
    qtbot.keyClick(asked, key)
    assert pairs(mats_shell.taste) == {(question[place], question[1 - place])}
    assert mats_shell.session.desk.laid == ()
    assert mats_shell.session.undo_stack.undoText().startswith("Prefer")


def test_a_click_answers_and_the_next_question_is_another(
    mats_shell: Shell, asked: QuestionBoard, qtbot: QtBot
) -> None:
    asking, seen = choose_of(mats_shell).asking, set()
    for _ in range(6):
        question = asking.question
        assert question is not None
        assert frozenset(question) not in seen
        seen.add(frozenset(question))
        qtbot.mouseClick(asked.choose[0], LEFT)
        qtbot.waitUntil(lambda: asking.is_open)
    assert len(mats_shell.taste.taste.choices) == 6


def test_neither_is_no_choice_and_the_pair_is_not_asked_again(
    mats_shell: Shell, asked: QuestionBoard, qtbot: QtBot
) -> None:
    asking = choose_of(mats_shell).asking
    first = asking.question
    assert first is not None
    qtbot.keyClick(asked, Qt.Key.Key_N)
    qtbot.waitUntil(lambda: asking.is_open)
    assert mats_shell.taste.taste.choices == ()
    assert len(mats_shell.taste.taste.passed) == 1
    assert asking.question is not None
    assert set(asking.question) != set(first)


def test_an_answer_is_counted_once_while_the_next_question_is_looked_for(
    mats_shell: Shell, asked: QuestionBoard, qtbot: QtBot
) -> None:
    for _ in range(2):
        choose_of(mats_shell).asking.answer(0)
    assert len(mats_shell.session.desk.answers) == 1


def test_escape_goes_back_to_the_picture_and_keeps_what_was_answered(
    mats_shell: Shell, asked: QuestionBoard, qtbot: QtBot
) -> None:
    qtbot.keyClick(asked, Qt.Key.Key_1)
    qtbot.keyClick(asked, Qt.Key.Key_Escape)
    assert not asked.isVisible()
    idle(mats_shell, qtbot)
    assert not asked.isVisible()
    assert len(mats_shell.taste.taste.choices) == 1


def test_when_all_was_asked_it_is_said(open_shell: Shell, qtbot: QtBot) -> None:
    open_shell.show()
    step = choose_of(open_shell)
    step.asking.ask(Kind.MOULDING)
    idle(open_shell, qtbot)
    assert step.asking.question is None
    assert "Every pair" in open_shell.notice.text()


def test_without_a_picture_the_question_says_what_to_do(shell: Shell, qtbot: QtBot) -> None:
    shell.show()
    qtbot.mouseClick(shelf_of(shell).ask_button, LEFT)
    assert "Bring a picture first" in shell.notice.text()


def test_the_question_is_of_the_one_kind_that_the_shelf_shows(
    open_shell: Shell, qtbot: QtBot
) -> None:
    shelf = shelf_of(open_shell)
    assert shelf.only_kind() is None
    shelf.chips[Kind.MAT].setChecked(True)
    assert shelf.only_kind() is Kind.MAT
    shelf.chips[Kind.LINER].setChecked(True)
    assert shelf.only_kind() is None


def test_the_keys_of_the_shortlist_do_nothing_in_build(open_shell: Shell, qtbot: QtBot) -> None:
    with qtbot.waitSignal(open_shell.session.ranked_changed, timeout=20_000):
        open_shell.session.assign("catalogue", BUILDABLE)
    open_shell.show()
    open_shell.go("build")
    open_shell.session.assign("chosen_code", "deep-sea")
    samples = open_shell.findChild(BuildSamples)
    assert isinstance(samples, BuildSamples)
    for key in (Qt.Key.Key_Q, Qt.Key.Key_T, Qt.Key.Key_X):
        qtbot.keyClick(samples.view, key)
    assert building.options_of(open_shell.session) == ()
    qtbot.keyClick(samples.view, Qt.Key.Key_Return)
    assert len(building.options_of(open_shell.session)) == 1


# --- learning, and what it changes --------------------------------------------------------------


def test_one_click_alone_changes_nothing(
    mats_shell: Shell, card: TasteShelf, asked: QuestionBoard, qtbot: QtBot
) -> None:
    before = order(mats_shell)
    qtbot.mouseClick(card.switch.chips[True], LEFT)
    qtbot.keyClick(asked, Qt.Key.Key_1)
    idle(mats_shell, qtbot)
    assert mats_shell.session.rule == HOUSE_RULE
    assert order(mats_shell) == before
    assert "12 choices at least; 11 are missing" in card.learned.text()
    assert not card.buttons["learn"].isEnabled()


def test_taste_is_off_until_it_is_switched_on_and_then_learns_and_says_so(
    taught_shell: Shell, card: TasteShelf, qtbot: QtBot
) -> None:
    before = order(taught_shell)
    assert taught_shell.session.rule == HOUSE_RULE
    assert card.state.text().startswith("Off.")
    shelf = shelf_of(taught_shell)
    qtbot.mouseClick(shelf.taste_button, LEFT)
    qtbot.mouseClick(card.switch.chips[True], LEFT)
    qtbot.waitUntil(lambda: taught_shell.taste.effect is not None, timeout=20_000)
    own = fit_taste(shop(200, weights=LOVES_DARK))
    assert taught_shell.session.rule == own.rule
    assert order(taught_shell) != before
    assert card.state.text().startswith("On.")
    assert "200 choices on 8 pictures" in card.learned.text()
    assert f"{own.foretold * 100:.0f}\u00a0%" in card.learned.text()
    assert "Darkness counts" in card.changes.text()
    effect = taught_shell.taste.effect
    assert effect is not None
    assert len(card.moves.text().splitlines()) == 1 + len(effect.shift.moves)


def test_the_shortlist_says_that_taste_orders_it_and_how_far_each_sample_moved(
    taught_shell: Shell, qtbot: QtBot
) -> None:
    shelf = shelf_of(taught_shell)
    assert shelf.taste_line.isHidden()
    taught_shell.taste.switch(on=True)
    qtbot.waitUntil(lambda: taught_shell.taste.effect is not None, timeout=20_000)
    assert shelf.taste_line.isVisible()
    assert "200 choices" in shelf.taste_line.text()
    effect = taught_shell.taste.effect
    assert effect is not None
    for move in effect.shift.moves:
        way = "up" if move.places > 0 else "down"
        assert shelf.model.moved_words(move.code) == f"{way} {abs(move.places)}"
    taught_shell.taste.switch(on=False)
    idle(taught_shell, qtbot)
    assert shelf.taste_line.isHidden()
    assert all(shelf.model.moved_words(code) == "" for code in order(taught_shell))


def test_newer_choices_change_nothing_until_learning_is_asked_for(
    taught_shell: Shell, card: TasteShelf, qtbot: QtBot
) -> None:
    taught_shell.taste.switch(on=True)
    idle(taught_shell, qtbot)
    rule = taught_shell.session.rule
    keep_sample(taught_shell.session, "mat-1")
    for code in ("mat-5", "mat-6", "mat-7"):
        send_away(taught_shell.session, code)
    idle(taught_shell, qtbot)
    assert taught_shell.session.rule == rule
    assert "not in it yet: 3" in card.learned.text()
    card.show()
    qtbot.mouseClick(card.buttons["learn"], LEFT)
    qtbot.waitUntil(lambda: taught_shell.taste.newer == 0, timeout=20_000)
    assert taught_shell.taste.taste.learned is not None
    assert taught_shell.taste.taste.learned.rests_on == 203
    taught_shell.session.undo_stack.undo()
    assert taught_shell.taste.newer == 3


def test_what_was_learned_is_there_after_a_restart_without_learning_again(
    taught_shell: Shell, preferences_file: Path, qtbot: QtBot
) -> None:
    taught_shell.taste.switch(on=True)
    idle(taught_shell, qtbot)
    rule = taught_shell.session.rule
    assert rule != HOUSE_RULE
    preferences = taught_shell.session.preferences
    taught_shell.close()
    later = Shell(preferences, preferences_file=preferences_file)
    qtbot.addWidget(later)
    idle(later, qtbot)
    assert later.session.rule == rule
    later.close()


def test_a_taste_that_foretells_no_better_leaves_the_house_rule_and_says_why(
    mats_shell: Shell, card: TasteShelf, preferences_file: Path, qtbot: QtBot
) -> None:
    path = preferences_file.with_name("elsewhere.json")
    write_taste_file(path, shop(60))
    mats_shell.taste.import_from(path)
    idle(mats_shell, qtbot)
    mats_shell.taste.switch(on=True)
    idle(mats_shell, qtbot)
    assert mats_shell.session.rule == HOUSE_RULE
    assert "house rule still orders" in card.state.text()
    assert "the house rule stays in use" in card.learned.text()
    assert "still decides" in shelf_of(mats_shell).taste_line.text()


def test_forgetting_brings_the_house_rule_back_and_can_be_undone(
    taught_shell: Shell, card: TasteShelf, qtbot: QtBot
) -> None:
    taught_shell.taste.switch(on=True)
    idle(taught_shell, qtbot)
    keep_sample(taught_shell.session, "mat-1")
    send_away(taught_shell.session, "mat-5")
    known, rule = taught_shell.taste.taste, taught_shell.session.rule
    card.buttons["forget"].click()
    assert taught_shell.taste.taste == Taste()
    assert taught_shell.session.rule == HOUSE_RULE
    assert taught_shell.session.undo_stack.undoText() == "Forget this shop's taste"
    taught_shell.session.undo_stack.undo()
    assert taught_shell.taste.taste == known
    assert taught_shell.session.rule == rule


def test_after_forgetting_only_new_choices_count(mats_shell: Shell) -> None:
    keep_sample(mats_shell.session, "mat-1")
    send_away(mats_shell.session, "mat-5")
    mats_shell.taste.forget()
    send_away(mats_shell.session, "mat-6")
    assert pairs(mats_shell.taste) == {("mat-1", "mat-6")}


def test_a_taste_goes_out_to_a_file_and_comes_in_elsewhere(
    taught_shell: Shell,
    card: TasteShelf,
    tmp_path: Path,
    qtbot: QtBot,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    path = tmp_path / "carried.json"
    known = taught_shell.taste.taste
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_a, **_k: (str(path), ""))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_a, **_k: (str(path), ""))
    card.buttons["export"].click()
    idle(taught_shell, qtbot)
    assert card.said.text() == f"Exported to {path}."
    taught_shell.taste.forget()
    card.buttons["import"].click()
    idle(taught_shell, qtbot)
    assert taught_shell.taste.taste == known
    assert "Imported: 200 choices." in card.said.text()


def test_a_file_that_is_no_taste_changes_nothing_and_is_named_on_the_card(
    taught_shell: Shell,
    card: TasteShelf,
    tmp_path: Path,
    qtbot: QtBot,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    path = tmp_path / "other.json"
    path.write_text("[]")
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_a, **_k: (str(path), ""))
    known = taught_shell.taste.taste
    card.buttons["import"].click()
    idle(taught_shell, qtbot)
    assert str(path) in card.said.text()
    assert taught_shell.taste.taste == known


def test_the_card_tells_its_bounds_and_escape_goes_back_to_the_samples(
    mats_shell: Shell, card: TasteShelf, qtbot: QtBot
) -> None:
    texts = [label.text() for label in card.findChildren(type(card.state))]
    assert any("at most 60\u00a0% of its house value" in text for text in texts)
    assert any("No verdict changes" in text for text in texts)
    qtbot.keyClick(card, Qt.Key.Key_Escape)
    assert shelf_of(mats_shell).isVisible()


@pytest.mark.parametrize(("width", "height"), [(1920, 1080), (1366, 768), (683, 384)])
def test_nothing_of_taste_is_clipped_and_nothing_overlaps(
    taught_shell: Shell,
    card: TasteShelf,
    asked: QuestionBoard,
    qtbot: QtBot,
    width: int,
    height: int,
) -> None:
    taught_shell.resize(width, height)
    taught_shell.taste.switch(on=True)
    idle(taught_shell, qtbot)
    faults = []
    step = choose_of(taught_shell)

    def look(scene: str) -> None:
        settle(taught_shell)
        for check in (clipped, overlapping, too_small_to_hit):
            faults.extend(f"{scene}: {fault}" for fault in check(taught_shell))

    step.show_taste()
    look("question and card")
    step._show_samples()
    send_away(taught_shell.session, "mat-5")
    look("shortlist by taste, and why one was sent away")
    step.asking.stop()
    for code in ("mat-1", "mat-2", "mat-3"):
        keep_sample(taught_shell.session, code)
    taught_shell.session.show_side_by_side(shown=True)
    assert step.board is not None
    step.board.panels[0].buttons["prefer"].click()
    look("side by side, one preferred")
    step.board.blink_over()
    look("blinking")
    assert faults == []


def test_the_settings_switch_is_the_same_as_the_cards(
    taught_shell: Shell, card: TasteShelf, qtbot: QtBot
) -> None:
    taught_shell.toggle_settings()
    assert taught_shell._settings is not None
    taught_shell._settings.choices["taste_on"].chips[True].click()
    idle(taught_shell, qtbot)
    assert taught_shell.session.rule != HOUSE_RULE
    assert card.switch.chips[True].isChecked()
