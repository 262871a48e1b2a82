"""What a shop says of its rack: marks, imports and swatches, each undone to the same state."""

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Catalogue
from framing_palette.units import Length
from framing_palette.window.rack.door import RackDoor
from framing_palette.window.shell import Shell


def rest(shell: Shell, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not shell.runner.is_busy(), timeout=30_000)


@pytest.fixture
def at_rack(open_shell: Shell, qtbot: QtBot, tmp_path: Path) -> Iterator[Shell]:
    open_shell.rack_book.folder = tmp_path / "racks"
    open_shell.show()
    open_shell.toggle_rack()
    rest(open_shell, qtbot)
    yield open_shell
    rest(open_shell, qtbot)


@pytest.fixture
def rack(at_rack: Shell) -> RackDoor:
    assert at_rack.rack is not None
    return at_rack.rack


def look_at(rack: RackDoor, code: str) -> None:
    rack.state.look_at_row(rack.state.row_of(code))


def undo(shell: Shell, qtbot: QtBot) -> None:
    shell.session.undo_stack.undo()
    rest(shell, qtbot)


def test_a_sample_is_marked_out_of_stock_and_the_mark_is_undone_by_name(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    before = at_rack.session.catalogue
    look_at(rack, "brick-red")
    rack.shelf.near.marks.out.click()
    rest(at_rack, qtbot)
    assert at_rack.session.catalogue["brick-red"].in_stock is False
    assert at_rack.session.undo_stack.undoText() == "Out of stock: Brick red"
    assert not rack.state.points.is_there[rack.state.row_of("brick-red")]
    index = rack.shelf.near.model.index(0)
    assert "out of stock" in rack.shelf.near.model.data(index)
    undo(at_rack, qtbot)
    assert at_rack.session.catalogue == before
    at_rack.session.undo_stack.redo()
    rest(at_rack, qtbot)
    assert at_rack.session.catalogue["brick-red"].in_stock is False


def test_favourites_are_found_again(rack: RackDoor, at_rack: Shell, qtbot: QtBot) -> None:
    look_at(rack, "deep-sea")
    rack.shelf.near.marks.liked.click()
    rest(at_rack, qtbot)
    rack.stage.liked.click()
    shown = np.flatnonzero(rack.state.passing)
    assert [rack.state.sample(int(row)).code for row in shown] == ["deep-sea"]
    assert rack.shelf.near.marks.liked.isChecked()
    undo(at_rack, qtbot)
    assert not rack.state.passing.any()


def test_a_hidden_sample_is_in_no_list_until_it_is_shown_again(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    look_at(rack, "acid-lime")
    rack.shelf.near.marks.away.click()
    rest(at_rack, qtbot)
    assert "acid-lime" not in at_rack.session.catalogue
    assert rack.state.row_of("acid-lime") == -1
    (hidden,) = at_rack.rack_book.hidden()
    rack.shelf.hidden.show_again(hidden)
    rest(at_rack, qtbot)
    assert "acid-lime" in at_rack.session.catalogue
    assert at_rack.rack_book.hidden() == ()


def test_quick_changes_are_all_written_in_their_order(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    for code in ("brick-red", "deep-sea", "pale-sky"):
        rack.shelf.near.marks.show_sample(code)
        rack.shelf.near.marks.out.click()
    rest(at_rack, qtbot)
    gone = {one.code for one in at_rack.session.catalogue.samples if one.in_stock is False}
    assert gone == {"brick-red", "deep-sea", "pale-sky"}
    for _ in range(3):
        at_rack.session.undo_stack.undo()
    rest(at_rack, qtbot)
    assert all(one.in_stock is None for one in at_rack.session.catalogue.samples)


def test_what_was_said_holds_when_the_same_catalogue_is_opened_again(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    given = at_rack.session.catalogue
    look_at(rack, "brick-red")
    rack.shelf.near.marks.out.click()
    rest(at_rack, qtbot)
    at_rack.session.assign("catalogue", Catalogue(given.samples, name=given.name))
    rest(at_rack, qtbot)
    assert at_rack.session.catalogue["brick-red"].in_stock is False


def test_a_spreadsheet_is_previewed_brought_in_and_taken_out_again(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    table = tmp_path / "more.csv"
    table.write_text("sku,name,l,a,b\nfern,Fern,45,-20,20\n", encoding="utf-8")
    before, sheet = at_rack.session.catalogue, rack.shelf.bring
    sheet.look_at(table)
    rest(at_rack, qtbot)
    assert sheet.sum.text() == "1 new, 0 changed, 0 as they are."
    assert "fern: new" in sheet.lines.text()
    assert at_rack.session.catalogue is before
    sheet.take.click()
    rest(at_rack, qtbot)
    assert at_rack.session.catalogue["fern"].name == "Fern"
    assert at_rack.session.undo_stack.undoText() == "Bring in more.csv"
    undo(at_rack, qtbot)
    assert at_rack.session.catalogue == before
    at_rack.session.undo_stack.redo()
    rest(at_rack, qtbot)
    assert "fern" in at_rack.session.catalogue


def test_a_file_that_cannot_be_read_is_named_where_it_was_chosen(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    bad = tmp_path / "bad.txt"
    bad.write_text("", encoding="utf-8")
    rack.shelf.bring.look_at(bad)
    rest(at_rack, qtbot)
    assert "bad.txt is empty" in rack.shelf.bring.sum.text()
    assert rack.shelf.bring.take.isHidden()


def test_a_swatch_is_measured_and_put_on_the_rack(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    photograph = tmp_path / "terra.png"
    Image.fromarray(np.full((80, 100, 3), (150, 90, 70), dtype=np.uint8)).save(photograph)
    before, sheet = at_rack.session.catalogue, rack.shelf.measure
    sheet.width_field.taken.emit(Length.mm_of(50))
    sheet.measure(photograph)
    rest(at_rack, qtbot)
    assert sheet.code.text() == "terra"
    assert sheet.put.text() == "Put it on the rack"
    assert "a guess" in sheet.told.text()
    sheet.name.setText("Terra")
    sheet.put.click()
    rest(at_rack, qtbot)
    added = at_rack.session.catalogue["terra"]
    assert added.name == "Terra"
    assert added.texture is not None
    sheet.code.setText("brick-red")
    assert sheet.put.text() == "Give it these colours"
    undo(at_rack, qtbot)
    assert at_rack.session.catalogue == before


def test_a_code_that_is_none_is_refused_beside_its_field(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    photograph = tmp_path / "terra.png"
    Image.fromarray(np.full((80, 100, 3), (150, 90, 70), dtype=np.uint8)).save(photograph)
    sheet = rack.shelf.measure
    sheet.measure(photograph)
    rest(at_rack, qtbot)
    sheet.code.setText("../terra")
    sheet.put.click()
    assert "path" in sheet.fault.text()
    assert at_rack.session.undo_stack.count() == 0


def test_a_change_of_another_counter_is_said_and_not_overwritten(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    from framing_palette.catalogue.shop_edits import Marks, Said
    from framing_palette.catalogue.shop_rack_files import say

    book = at_rack.rack_book
    say(
        book.place,
        at_rack.session.catalogue,
        "brick-red",
        Said(),
        Said(marks=Marks(favourite=True)),
    )
    look_at(rack, "brick-red")
    rack.shelf.near.marks.out.click()
    rest(at_rack, qtbot)
    assert "brick-red" in at_rack.session.notice
    assert at_rack.session.catalogue["brick-red"].in_stock is None


def test_a_change_that_failed_does_nothing_when_it_is_undone(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    from framing_palette.catalogue.shop_edits import Marks, Said
    from framing_palette.catalogue.shop_rack_files import open_shop_rack, say

    book, base = at_rack.rack_book, at_rack.session.catalogue
    liked = Said(marks=Marks(favourite=True))
    say(book.place, base, "brick-red", Said(), liked)
    look_at(rack, "brick-red")
    rack.shelf.near.marks.out.click()
    rest(at_rack, qtbot)
    undo(at_rack, qtbot)
    assert open_shop_rack(book.place, base).of("brick-red") == liked
    assert at_rack.session.undo_stack.count() == 0


def test_closing_at_once_loses_no_change(rack: RackDoor, at_rack: Shell, qtbot: QtBot) -> None:
    from framing_palette.catalogue.shop_rack_files import open_shop_rack

    base, place = at_rack.session.catalogue, at_rack.rack_book.place
    for code in ("brick-red", "deep-sea", "pale-sky"):
        rack.shelf.near.marks.show_sample(code)
        rack.shelf.near.marks.liked.click()
    at_rack.close()
    assert open_shop_rack(place, base).liked == {"brick-red", "deep-sea", "pale-sky"}


def test_a_change_of_a_rack_that_was_left_never_brings_it_back(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    look_at(rack, "brick-red")
    rack.shelf.near.marks.out.click()
    rest(at_rack, qtbot)
    other = Catalogue(at_rack.session.catalogue.samples[:2], name="Another invented rack")
    at_rack.session.assign("catalogue", other)
    rest(at_rack, qtbot)
    undo(at_rack, qtbot)
    assert at_rack.session.catalogue is other


def test_name_and_price_are_edited_and_a_bad_price_is_said_beside_its_field(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    before = at_rack.session.catalogue
    look_at(rack, "brick-red")
    marks = rack.shelf.near.marks
    marks.open.click()
    marks.price.setText("cheap")
    marks.price.editingFinished.emit()
    assert "cheap" in marks.fault.text()
    marks.name.setText("Old brick")
    marks.price.setText("12,50")
    marks.price.editingFinished.emit()
    rest(at_rack, qtbot)
    edited = at_rack.session.catalogue["brick-red"]
    assert (edited.name, str(edited.price)) == ("Old brick", "12.50")
    assert marks.fault.text() == ""
    undo(at_rack, qtbot)
    assert at_rack.session.catalogue == before
    assert marks.name.text() == "Brick red"


SUPPLIED = (
    "Artikel,Bezeichnung,Breite,Preis,L*,a*,b*,Bemerkung\n"
    'K1,Eiche,"3,8","12,50","60,5","8","22",schmal\n'
    'K2,Esche,breit,"9,00","70","4","18",\n'
)


def test_columns_are_matched_by_hand_and_the_light_is_stated_before_anything_is_brought_in(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    table = tmp_path / "lieferant.csv"
    table.write_text(SUPPLIED, encoding="utf-8")
    before, bring, match = at_rack.session.catalogue, rack.shelf.bring, rack.stage.match
    bring.look_at(table)
    rest(at_rack, qtbot)
    assert "which column holds the code" in bring.lines.text()
    assert not bring.take.isEnabled()
    bring.match.click()
    assert rack.stage.pages.currentWidget() is match

    def pick(target: str, column: str) -> None:
        picker = match.pickers[target]
        picker.setCurrentIndex(picker.findData(column))
        picker.activated.emit(picker.currentIndex())
        rest(at_rack, qtbot)

    for target, column in (("code", "artikel"), ("name", "bezeichnung"), ("face_mm", "breite")):
        pick(target, column)
    pick("price", "preis")
    match.decimals.chips["comma"].click()
    rest(at_rack, qtbot)
    match.units.chips["cm"].click()
    rest(at_rack, qtbot)
    assert bring.sum.text() == "2 new, 0 changed, 0 as they are."
    shown = {match.rows.headerData(at, Qt.Orientation.Horizontal): at for at in range(7)}
    cells = [match.rows.data(match.rows.index(0, shown[name])) for name in ("Width", "Price")]
    assert cells == ["38", "12.50"]
    assert match.rows.data(match.rows.index(1, shown["Width"])) == "✕"
    assert "is not a length" in match.faults.text()
    assert "bemerkung" in match.unused.text()
    # Nobody has said for which light the colours hold: they wait.
    assert not bring.light.isHidden()
    assert match.rows.data(match.rows.index(0, shown["Colour L*"])) == ""
    bring.light.lights.chips["D65"].click()
    rest(at_rack, qtbot)
    bring.light.observers.chips[2].click()
    rest(at_rack, qtbot)
    assert float(match.rows.data(match.rows.index(0, shown["Colour L*"]))) == pytest.approx(60.5, 1)
    assert at_rack.session.catalogue is before
    bring.take.click()
    rest(at_rack, qtbot)
    oak = at_rack.session.catalogue["K1"]
    assert (oak.name, oak.face, str(oak.price)) == ("Eiche", Length.mm_of(38), "12.50")
    assert oak.colour_origin == "stated at import: figures for D65, 2 degree observer"
    assert rack.stage.pages.currentIndex() == 0
    undo(at_rack, qtbot)
    assert at_rack.session.catalogue == before


def test_an_export_without_a_light_waits_until_it_is_stated(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    export = tmp_path / "meter.txt"
    export.write_text(
        "CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\n"
        "BEGIN_DATA\nkelp 40 -10 12\nEND_DATA\n"
    )
    bring = rack.shelf.bring
    bring.look_at(export)
    rest(at_rack, qtbot)
    assert "does not tell their illuminant" in bring.lines.text()
    assert bring.match.isHidden()
    bring.light.lights.chips["D50"].click()
    rest(at_rack, qtbot)
    assert "does not tell their observer" in bring.lines.text()
    bring.light.observers.chips[10].click()
    rest(at_rack, qtbot)
    assert "10 degree observer" in bring.sum.text()
    bring.light.observers.chips[2].click()
    rest(at_rack, qtbot)
    assert bring.sum.text() == "1 new, 0 changed, 0 as they are."
    bring.take.click()
    rest(at_rack, qtbot)
    assert at_rack.session.catalogue["kelp"].colours[0].lab == (40, -10, 12)
