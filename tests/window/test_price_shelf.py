"""The price book in the window: every field, its refusals, what it makes of the designs, undo."""

from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from framing_palette.design import (
    Basis,
    Part,
    example_price_book,
    example_price_book_text,
    read_price_book,
)
from framing_palette.window import building, prices_files
from framing_palette.window.charge_row import ChargeForm
from framing_palette.window.price_fields import TextField
from framing_palette.window.price_keeper import PriceKeeper
from framing_palette.window.price_shelf import PriceShelf
from framing_palette.window.shell import Shell
from framing_palette.window.steps.agree import AgreeStep
from tests.window.buildable import BUILDABLE

LEFT = Qt.MouseButton.LeftButton
EXAMPLE = example_price_book()
MOULDING = next(n for n, c in enumerate(EXAMPLE.charges) if c.title == "Moulding")
JOINING = next(n for n, c in enumerate(EXAMPLE.charges) if c.title == "Joining")


@pytest.fixture
def book_place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    path = tmp_path / "settings" / "price_book.toml"
    monkeypatch.setattr("framing_palette.window.price_keeper.price_book_place", lambda: path)
    return path


@pytest.fixture
def step(book_place: Path, open_shell: Shell, qtbot: QtBot) -> Iterator[AgreeStep]:
    """One design, and the price book laid on the shelf."""
    open_shell.show()
    session = open_shell.session
    with qtbot.waitSignal(session.ranked_changed, timeout=20_000):
        session.assign("catalogue", BUILDABLE)
    building.begin_design(session, ("pale-sky", "black-flat"))
    open_shell.go("agree")
    found = open_shell.steps["agree"]
    assert isinstance(found, AgreeStep)
    assert found.shelf_widget is not None
    qtbot.waitUntil(lambda: found.keeper.book is not None, timeout=20_000)
    qtbot.mouseClick(found.shelf_widget.prices, LEFT)
    yield found
    open_shell.close()


def shelf_of(step: AgreeStep) -> PriceShelf:
    assert step.price_shelf is not None
    return step.price_shelf


def opened(step: AgreeStep, number: int) -> ChargeForm:
    row = shelf_of(step).rows[number]
    row.edit.setChecked(True)
    assert row.form is not None
    return row.form


def put(qtbot: QtBot, field: TextField, text: str) -> None:
    field.edit.setFocus()
    field.edit.selectAll()
    qtbot.keyClicks(field.edit, text) if text else field.edit.clear()
    qtbot.keyClick(field.edit, Qt.Key.Key_Return)


def rest(step: AgreeStep, qtbot: QtBot) -> None:
    runner = step.counter.errands.runner
    qtbot.waitUntil(lambda: not runner.is_busy(), timeout=30_000)


def test_the_book_is_reached_from_agree_and_left_again_and_prices_follow_it(
    step: AgreeStep, qtbot: QtBot
) -> None:
    shelf = shelf_of(step)
    assert shelf.isVisible()
    assert [row.title.text() for row in shelf.rows] == [c.title for c in EXAMPLE.charges]
    assert "invented" in shelf.notice.text()
    qtbot.mouseClick(shelf.back, LEFT)
    assert not shelf.isVisible()
    assert step.shelf_widget is not None
    assert step.shelf_widget.isVisible()
    assert "invented" in step.shelf_widget.price_told.text()
    assert step.stage_widget is not None
    form = opened(step, MOULDING)
    qtbot.mouseClick(form.basis.chips[Basis.LENGTH], LEFT)
    qtbot.mouseClick(step.shelf_widget.price.chips["shown"], LEFT)
    before = step.stage_widget.board.cards[0].price.text()
    assert before.endswith("USD")
    put(qtbot, opened(step, MOULDING).fields["rate"], "500")
    assert step.stage_widget.board.cards[0].price.text() not in ("", before)
    assert step.paperwork.book == step.keeper.book


def test_a_price_that_is_missing_is_named_and_once_it_is_there_the_total_is(
    step: AgreeStep, qtbot: QtBot
) -> None:
    """The samples of this rack have no prices, so the moulding cannot be charged by them."""
    shelf = shelf_of(step)
    assert "black-flat has no price; add it to the catalogue" in shelf.totals.text()
    form = opened(step, MOULDING)
    qtbot.mouseClick(form.basis.chips[Basis.LENGTH], LEFT)
    put(qtbot, form.fields["rate"], "30")
    price = step.keeper.price(building.options_of(step.session)[0].design)
    assert shelf.totals.text() == f"First design: {price.total.show()}"
    line = next(line for line in price.lines if line.charge == MOULDING)
    assert f"{line.amount.show()}: {line.how}" in shelf.rows[MOULDING].told.text()
    assert "Not in this design." in shelf.rows[MOULDING - 1].told.text()
    assert f"net {price.net.show()}" in shelf.told.text()


def test_every_field_of_a_charge_changes_the_book_and_undo_takes_each_back(
    step: AgreeStep, qtbot: QtBot
) -> None:
    form = opened(step, MOULDING)
    qtbot.mouseClick(form.basis.chips[Basis.LENGTH], LEFT)
    qtbot.mouseClick(form.per.chips["ft"], LEFT)
    for name, text in (
        ("title", "Frame"), ("rate", "4.20"), ("waste", "15"), ("minimum", "25"),
        ("material", "oak"), ("codes", "B*"),
    ):  # fmt: skip
        put(qtbot, form.fields[name], text)
    qtbot.mouseClick(form.private.chips[True], LEFT)
    assert step.keeper.book is not None
    charge = step.keeper.book.charges[MOULDING]
    assert (charge.title, charge.basis, charge.per, charge.rate) == (
        "Frame", Basis.LENGTH, "ft", Decimal("4.20"),
    )  # fmt: skip
    assert (charge.waste, charge.minimum) == (Decimal("0.15"), Decimal(25))
    assert (charge.material, charge.codes, charge.private) == ("oak", "B*", True)
    assert "Private" in shelf_of(step).rows[MOULDING].told.text()
    for _ in range(9):
        step.session.undo_stack.undo()
    assert step.keeper.book == EXAMPLE
    assert form.fields["title"].edit.text() == "Moulding"


def test_what_cannot_be_is_said_below_the_field_with_row_and_field_and_changes_nothing(
    step: AgreeStep, qtbot: QtBot
) -> None:
    form = opened(step, MOULDING)
    put(qtbot, form.fields["rate"], "a lot")
    said = form.fields["rate"].fault
    assert said.isVisible()
    assert f'Charge {MOULDING + 1}, "Moulding", rate is "a lot"' in said.text()
    assert form.fields["rate"].edit.text() == "a lot"
    assert step.keeper.book == EXAMPLE
    put(qtbot, form.fields["rate"], "2.5")
    assert not said.isVisible()
    glass = next(n for n, c in enumerate(EXAMPLE.charges) if c.title == "Glass")
    other = opened(step, glass)
    assert [row.edit.isChecked() for row in shelf_of(step).rows].index(True) == glass
    assert not form.isVisible()
    assert other.fields["rate"].name.text() == "USD for 1 ft²"
    shown = {name for name, field in other.fields.items() if not field.isHidden()}
    assert shown == {"title", "rate", "waste", "minimum", "material", "codes"}


def test_every_field_of_the_total_changes_the_book_or_says_why_not(
    step: AgreeStep, qtbot: QtBot
) -> None:
    shelf = shelf_of(step)
    for name, text, value in (
        ("currency", "eur", "EUR"),
        ("minimum", "60", Decimal(60)),
        ("tax_percent", "19", Decimal(19)),
        ("tax_name", "VAT", "VAT"),
        ("round_line_to", "0.5", Decimal("0.5")),
        ("round_total_to", "1", Decimal(1)),
        ("private_title", "Handwork", "Handwork"),
    ):
        put(qtbot, shelf.fields[name], text)
        assert getattr(step.keeper.book, name) == value
    put(qtbot, shelf.fields["tax_percent"], "200")
    assert "0 to 100" in shelf.fields["tax_percent"].fault.text()
    qtbot.mouseClick(shelf.tax.chips[True], LEFT)
    assert step.keeper.book is not None
    assert step.keeper.book.tax_included


def test_charges_are_added_moved_and_taken_out(step: AgreeStep, qtbot: QtBot) -> None:
    shelf = shelf_of(step)
    qtbot.mouseClick(shelf.add, LEFT)
    assert step.keeper.book is not None
    last = len(step.keeper.book.charges) - 1
    form = shelf.rows[last].form
    assert form is not None
    qtbot.waitUntil(form.isVisible)
    qtbot.mouseClick(form.part.chips[Part.GLAZING], LEFT)
    assert form.basis.chips[Basis.AREA].isVisible()
    assert not form.basis.chips[Basis.LENGTH].isVisible()
    form.asked.emit("up")
    assert step.keeper.book.charges[last - 1].title == "New charge"
    assert shelf.rows[last - 1].edit.isChecked()
    shelf.rows[0].asked.emit("up")
    assert step.keeper.book.charges[0] == EXAMPLE.charges[0]
    shelf.rows[last - 1].asked.emit("drop")
    assert step.keeper.book == EXAMPLE


def test_changes_are_written_whole_with_the_notes_and_read_at_the_next_start(
    step: AgreeStep, qtbot: QtBot, book_place: Path
) -> None:
    form = opened(step, MOULDING)
    for rate in ("2.5", "2.6", "2.7"):
        put(qtbot, form.fields["rate"], rate)
    rest(step, qtbot)
    assert read_price_book(book_place).charges[MOULDING].rate == Decimal("2.7")
    assert "# Each [[charge]] is one line of the price." in book_place.read_text(encoding="utf-8")
    again = PriceKeeper(step.session, step.counter.errands, path=book_place)
    again.load()
    rest(step, qtbot)
    assert again.book == step.keeper.book
    assert not again.is_invented
    assert "Kept for this shop" in shelf_of(step).notice.text()


def test_a_change_made_just_before_the_end_is_not_lost(
    step: AgreeStep, qtbot: QtBot, book_place: Path
) -> None:
    put(qtbot, opened(step, MOULDING).fields["rate"], "9")
    step.counter.errands.runner.close()
    step.finish()
    assert read_price_book(book_place).charges[MOULDING].rate == Decimal(9)


def test_a_file_that_cannot_be_read_is_told_and_set_aside_not_written_over(
    step: AgreeStep, qtbot: QtBot, book_place: Path
) -> None:
    book_place.parent.mkdir(parents=True, exist_ok=True)
    book_place.write_text('currency = "EUR"\nminimun = 3\n', encoding="utf-8")
    keeper = PriceKeeper(step.session, step.counter.errands, path=book_place)
    keeper.load()
    rest(step, qtbot)
    assert keeper.prices is not None
    assert "perhaps minimum is meant" in keeper.prices.fault
    assert keeper.book == EXAMPLE
    shelf = PriceShelf(step.session, keeper)
    qtbot.addWidget(shelf)
    assert "set aside" in shelf.notice.text()
    prices_files.save_prices(book_place, EXAMPLE, example_price_book_text())
    book_place.write_text("broken", encoding="utf-8")
    prices_files.save_prices(book_place, EXAMPLE, example_price_book_text())
    aside = sorted(path.name for path in book_place.parent.glob("*set-aside*"))
    assert aside == ["price_book-set-aside-2.toml", "price_book-set-aside.toml"]
    assert read_price_book(book_place) == EXAMPLE


def test_another_shop_s_file_is_taken_over_undoably_and_a_broken_one_said(
    step: AgreeStep, qtbot: QtBot, tmp_path: Path
) -> None:
    other = tmp_path / "other.toml"
    other.write_text('currency = "EUR"  # ours\n', encoding="utf-8")
    shelf_of(step).take_over(other)
    rest(step, qtbot)
    assert step.keeper.book is not None
    assert (step.keeper.book.currency, shelf_of(step).rows) == ("EUR", [])
    step.session.undo_stack.undo()
    assert step.keeper.book == EXAMPLE
    other.write_text("currency = 3", encoding="utf-8")
    shelf_of(step).take_over(other)
    rest(step, qtbot)
    assert "other.toml" in shelf_of(step).notice.text()
    assert step.keeper.book == EXAMPLE


def test_a_folder_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    from framing_palette.errors import OutputError

    (tmp_path / "file").write_text("")
    with pytest.raises(OutputError, match="prices hold until the window closes"):
        prices_files.save_prices(
            tmp_path / "file" / "price_book.toml", EXAMPLE, example_price_book_text()
        )


def test_the_usual_place_is_beside_the_settings() -> None:
    from framing_palette.window.preference_files import preferences_path

    assert prices_files.price_book_place() == preferences_path().with_name("price_book.toml")
