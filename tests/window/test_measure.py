"""Measure: the first card turns away, the second is filled without it, and then they are compared."""

from datetime import UTC, datetime

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from framing_palette.design.arranging import Layout
from framing_palette.units import Length
from framing_palette.window import building
from framing_palette.window.measuring_cards import MeasuringCard
from framing_palette.window.pieces_row import PiecesRow
from framing_palette.window.shell import Shell
from framing_palette.window.sizes_shelf import SizesShelf
from framing_palette.window.steps.measure import MeasureStage, MeasureStep
from framing_palette.window.steps.step import Standing
from tests.window.buildable import BUILDABLE

inch = Length.inches
LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def step(open_shell: Shell, qtbot: QtBot) -> MeasureStep:
    """Art that was told to be 320 x 240 mm, with a design round it."""
    open_shell.show()
    with qtbot.waitSignal(open_shell.session.ranked_changed, timeout=20_000):
        open_shell.session.assign("catalogue", BUILDABLE)
    building.begin_design(open_shell.session, ("pale-sky", "black-flat"))
    open_shell.go("measure")
    found = open_shell.steps["measure"]
    assert isinstance(found, MeasureStep)
    return found


def stage_of(step: MeasureStep) -> MeasureStage:
    assert step.stage_widget is not None
    return step.stage_widget


def shelf_of(step: MeasureStep) -> SizesShelf:
    assert step.shelf_widget is not None
    return step.shelf_widget


def fill(qtbot: QtBot, card: MeasuringCard, width: str, height: str, by: str) -> None:
    for edit, text in (
        (card.edits["width"], width),
        (card.edits["height"], height),
        (card.initials, by),
    ):
        edit.clear()
        qtbot.keyClicks(edit, text)
    qtbot.mouseClick(card.finish, LEFT)


def test_only_the_first_card_is_open_at_first(step: MeasureStep) -> None:
    first, second = stage_of(step).cards
    assert first.finish.isVisible()
    assert not second.finish.isVisible()
    assert step.standing_words() == "0 of 2 measurements"


def test_the_first_card_turns_away_and_shows_nothing_of_what_was_measured(
    step: MeasureStep, qtbot: QtBot
) -> None:
    first, second = stage_of(step).cards
    fill(qtbot, first, "12 5/8", "9 7/16", "AB")
    assert not first.finish.isVisible()
    assert "Taken by AB" in first.told.text()
    shown = [label.text() for label in first.findChildren(type(first.title)) if label.isVisible()]
    assert not any("5/8" in text or "7/16" in text for text in shown)
    assert first.edits["width"].text() == ""
    assert second.finish.isVisible()
    assert second.edits["width"].text() == ""


def test_two_that_agree_size_the_design_and_say_so(step: MeasureStep, qtbot: QtBot) -> None:
    first, second = stage_of(step).cards
    fill(qtbot, first, "12 1/2", "9 1/2", "AB")
    fill(qtbot, second, "12 17/32", "9 1/2", "CD")
    assert stage_of(step).verdict.text() == "They agree."
    assert "12 1/2 × 9 1/2 in" in stage_of(step).told.text()
    assert step.standing() is Standing.DONE
    design = building.design_in_hand(step.session)
    assert design is not None
    assert (design.art.width, design.art.height) == (inch("12 1/2"), inch("9 1/2"))


def test_two_that_disagree_say_where_and_can_both_be_taken_again(
    step: MeasureStep, qtbot: QtBot
) -> None:
    first, second = stage_of(step).cards
    fill(qtbot, first, "12 1/2", "9 1/2", "AB")
    fill(qtbot, second, "12 1/2", "9 5/8", "CD")
    assert stage_of(step).verdict.text() == "They do not agree."
    assert "height" in stage_of(step).told.text()
    assert step.standing() is Standing.ATTENTION
    qtbot.mouseClick(stage_of(step).again, LEFT)
    assert first.finish.isVisible()
    assert building.job_of(step.session).measurements == ()


@pytest.mark.parametrize(
    ("width", "by", "said"),
    [("", "AB", "Width, first measurement"), ("twelve", "AB", "twelve"), ("12", "", "initials")],
)
def test_a_card_that_is_not_whole_says_which_field_and_changes_nothing(
    step: MeasureStep, qtbot: QtBot, width: str, by: str, said: str
) -> None:
    before = step.session.desk
    card = stage_of(step).cards[0]
    fill(qtbot, card, width, "9", by)
    assert said in card.fault.text()
    assert step.session.desk is before


def test_diagonals_find_art_that_leans(step: MeasureStep, qtbot: QtBot) -> None:
    first, second = stage_of(step).cards
    qtbot.mouseClick(first.diagonals, LEFT)
    for name, text in (("first", "15"), ("second", "15 1/4")):
        qtbot.keyClicks(first.edits[name], text)
    fill(qtbot, first, "12", "9 1/4", "AB")
    fill(qtbot, second, "12", "9 1/4", "CD")
    assert "leans by" in stage_of(step).told.text()


def test_each_measurement_is_undone_to_the_identical_desk(step: MeasureStep, qtbot: QtBot) -> None:
    first, second = stage_of(step).cards
    desks = [step.session.desk]
    for card, by in ((first, "AB"), (second, "CD")):
        fill(qtbot, card, "12", "9", by)
        desks.append(step.session.desk)
    for desk in reversed(desks[:-1]):
        step.session.undo_stack.undo()
        assert step.session.desk == desk
    assert first.finish.isVisible()


def test_how_unfolds_the_sum_and_its_figures_add_up(step: MeasureStep, qtbot: QtBot) -> None:
    first, second = stage_of(step).cards
    fill(qtbot, first, "12", "9", "AB")
    fill(qtbot, second, "12", "9", "CD")
    row = next(row for row in shelf_of(step).rows if row.key.endswith("Pale sky: Opening"))
    assert not row.sums.isVisible()
    qtbot.waitUntil(row.how.isVisible)
    qtbot.mouseClick(row.how, LEFT)
    assert "12 in art width, less 2 x 1/8 in overlap" in row.sums.text()
    assert row.sums.isVisible()


def test_a_sum_that_was_unfolded_stays_so_when_the_design_changes(
    step: MeasureStep, qtbot: QtBot
) -> None:
    row = shelf_of(step).rows[0]
    row.how.setChecked(True)
    building.use_sample(step.session, "pale-sky", "layer 1")
    step.session.assign("preferences", step.session.preferences.changed("denominator", 64))
    assert shelf_of(step).rows[0] is not row
    assert shelf_of(step).rows[0].how.isChecked()


def test_the_clock_of_a_card_is_the_one_it_was_given(qtbot: QtBot, app: object) -> None:
    at = datetime(2026, 1, 15, 10, 0, tzinfo=UTC)
    card = MeasuringCard(1, lambda: at)
    qtbot.addWidget(card)
    with qtbot.waitSignal(card.done) as told:
        fill(qtbot, card, "12", "9", "AB")
    assert told.args[0].at == at


@pytest.fixture
def two(step: MeasureStep) -> MeasureStep:
    """The same, with two pieces of art in one mat."""
    from dataclasses import replace

    from framing_palette.design import Arrangement, Window

    job = building.job_of(step.session)
    option = job.options[0]
    windows = (Window(inch(5), inch(7)), Window(inch(8), inch(10)))
    design = replace(option.design, arrangement=Arrangement(windows, 2, inch(1)))
    step.session.edit("Two", job=replace(job, options=(replace(option, design=design),)))
    return step


def test_the_number_of_pieces_their_layout_and_gap_are_chosen_at_the_counter(
    step: MeasureStep, qtbot: QtBot
) -> None:
    row = stage_of(step).findChildren(PiecesRow)[0]
    assert not row.gap.isVisible()
    qtbot.mouseClick(row.count.chips[3], LEFT)
    design = building.options_of(step.session)[0].design
    assert design.arrangement is not None
    assert (len(design.windows), design.arrangement.columns) == (3, 3)
    assert step.standing_words() == "0 of 6 measurements"
    qtbot.mouseClick(row.layouts.chips[Layout.TWO_ROWS], LEFT)
    assert "even number" in row.fault.text()
    assert row.layouts.chips[Layout.ROW].isChecked()
    qtbot.mouseClick(row.layouts.chips[Layout.COLUMN], LEFT)
    row.gap.edit.setText("2 1/4")
    qtbot.keyClick(row.gap.edit, Qt.Key.Key_Return)
    design = building.options_of(step.session)[0].design
    assert design.arrangement is not None
    assert (design.arrangement.columns, design.arrangement.gap) == (1, inch("2 1/4"))
    assert not row.fault.isVisible()
    for _ in range(3):
        step.session.undo_stack.undo()
    assert building.options_of(step.session)[0].design.arrangement is None
    assert not row.gap.isVisible()


def test_several_pieces_are_each_measured_twice_one_after_the_other(
    two: MeasureStep, qtbot: QtBot
) -> None:
    stage = stage_of(two)
    first, second = stage.cards
    assert stage.pieces is not None
    assert [chip.text() for chip in stage.pieces.chips.values()] == [
        "Art 1: 0 of 2", "Art 2: 0 of 2",
    ]  # fmt: skip
    assert first.title.text() == "First measurement of art 1"
    assert two.standing_words() == "0 of 4 measurements"
    fill(qtbot, first, "5", "7", "AB")
    assert "5" not in stage.pieces.chips[0].text().removeprefix("Art 1")
    fill(qtbot, second, "5", "6 31/32", "CD")
    assert stage.piece == 1
    assert first.title.text() == "First measurement of art 2"
    assert first.finish.isVisible()
    assert two.standing() is Standing.OPEN
    fill(qtbot, first, "8", "10", "AB")
    fill(qtbot, second, "8 1/4", "10", "CD")
    assert two.standing() is Standing.ATTENTION
    assert "The width of art 2 was measured as 8 in and as 8 1/4 in" in stage.told.text()
    assert stage.pieces.chips[1].text() == "Art 2: at odds"
    qtbot.mouseClick(stage.again, LEFT)
    fill(qtbot, first, "8", "10", "AB")
    fill(qtbot, second, "8", "10 1/32", "CD")
    assert two.standing() is Standing.DONE
    design = building.options_of(two.session)[0].design
    sizes = [(window.width, window.height) for window in design.windows]
    assert sizes == [(inch(5), inch("6 31/32")), (inch(8), inch(10))]
    assert len(building.job_of(two.session).measurements) == 4


def test_another_piece_can_be_turned_to_and_undo_keeps_both(two: MeasureStep, qtbot: QtBot) -> None:
    stage = stage_of(two)
    assert stage.pieces is not None
    qtbot.mouseClick(stage.pieces.chips[1], LEFT)
    fill(qtbot, stage.cards[0], "8", "10", "AB")
    assert building.job_of(two.session).measurements[0].piece == 1
    assert stage.cards[1].finish.isVisible()
    two.session.undo_stack.undo()
    assert building.job_of(two.session).measurements == ()
    assert two.session.undo_stack.redoText() == "Measurement 1 of 2 of art 2"


def test_the_tolerance_of_the_settings_is_the_one_of_the_ticket(
    step: MeasureStep, qtbot: QtBot
) -> None:
    from framing_palette.window.paperwork import Paper
    from framing_palette.window.steps.agree import AgreeStep

    preferences = step.session.preferences.changed("tolerance", inch("1/8"))
    step.session.assign("preferences", preferences)
    first, second = stage_of(step).cards
    fill(qtbot, first, "12", "9", "AB")
    fill(qtbot, second, "12 1/8", "9", "CD")
    assert step.standing() is Standing.DONE
    agree = AgreeStep(step.counter)
    shelf = agree.shelf()
    qtbot.addWidget(shelf)
    agree.choose(0)
    agree.paperwork.make(Paper.TICKET)
    qtbot.waitUntil(lambda: not step.counter.errands.runner.is_busy(), timeout=30_000)
    assert agree.paperwork.fault(Paper.TICKET) == ""
    assert agree.paperwork.made(Paper.TICKET) is not None
    step.session.assign("preferences", preferences.changed("tolerance", inch("1/64")))
    agree.paperwork.make(Paper.TICKET)
    qtbot.waitUntil(lambda: not step.counter.errands.runner.is_busy(), timeout=30_000)
    assert "1/64 in is allowed" in agree.paperwork.fault(Paper.TICKET)
