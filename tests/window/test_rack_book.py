"""What a shop says of its rack: marks, imports and swatches, each undone to the same state."""

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QPoint, QPointF, Qt
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Catalogue
from framing_palette.catalogue.shop_swatch_files import folder_results
from framing_palette.colour import delta_e_2000, srgb_u8_to_lab_d50
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


SHEET_COLOURS = ((190, 120, 90), (60, 90, 130), (230, 225, 210), (90, 110, 70))


def photographed_sheet(path: Path) -> Path:
    """Four swatches in two rows on grey."""
    pixels = np.full((300, 400, 3), 128, dtype=np.uint8)
    for at, colour in enumerate(SHEET_COLOURS):
        top, left = 30 + 140 * (at // 2), 40 + 180 * (at % 2)
        pixels[top : top + 100, left : left + 140] = colour
    Image.fromarray(pixels).save(path)
    return path


def test_a_contact_sheet_is_parted_matched_to_listed_codes_and_taken_back_as_one(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    before, sheet = at_rack.session.catalogue, rack.shelf.swatches.sheet
    sheet.look_at(photographed_sheet(tmp_path / "sheet.png"))
    rest(at_rack, qtbot)
    plate = rack.stage.photo.plate
    assert rack.stage.pages.currentWidget() is rack.stage.photo
    assert len(plate.outlines) == 4
    sheet.codes.setPlainText("t-1, t-2\nt-3")
    assert sheet.found.text() == "4 swatches, 3 codes"
    assert not sheet.put.isEnabled()
    sheet.codes.setPlainText("t-1\nt-2\nt-3\nt-4")
    assert plate.codes == ("t-1", "t-2", "t-3", "t-4")
    sheet.put.click()
    rest(at_rack, qtbot)
    after = at_rack.session.catalogue
    for code, colour in zip(plate.codes, SHEET_COLOURS, strict=True):
        wanted = srgb_u8_to_lab_d50(np.array(colour, dtype=np.uint8))
        assert float(delta_e_2000(after[code].colours[0].lab, wanted)) < 1
        assert after[code].colour_origin == "photographed without a colour chart"
    assert at_rack.session.undo_stack.undoText() == "Put 4 swatches of sheet.png on the rack"
    undo(at_rack, qtbot)
    assert at_rack.session.catalogue == before


def test_an_outline_is_bent_by_hand_moved_by_keys_and_what_it_holds_is_measured(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    one, plate = rack.shelf.swatches.one, rack.stage.photo.plate
    one.measure(photographed_sheet(tmp_path / "swatch.png"))
    rest(at_rack, qtbot)
    assert plate.outlines == (((0, 0), (1, 0), (1, 1), (0, 1)),)
    assert rack.stage.photo.more.isHidden()
    box = plate.box()

    def at(x: float, y: float) -> QPoint:
        return QPointF(box.left() + x * box.width(), box.top() + y * box.height()).toPoint()

    # The first swatch lies from (0.1, 0.1) to (0.45, 0.43).
    for start, end in (((0, 0), (0.12, 0.13)), ((1, 0), (0.43, 0.13)), ((1, 1), (0.43, 0.4))):
        qtbot.mousePress(plate, Qt.MouseButton.LeftButton, pos=at(*start))
        qtbot.mouseMove(plate, at(*end))
        qtbot.mouseRelease(plate, Qt.MouseButton.LeftButton, pos=at(*end))
    qtbot.mousePress(plate, Qt.MouseButton.LeftButton, pos=at(0, 1))
    qtbot.mouseMove(plate, at(0.12, 0.4))
    qtbot.mouseRelease(plate, Qt.MouseButton.LeftButton, pos=at(0.12, 0.4))
    rest(at_rack, qtbot)
    assert one.swatch is not None
    (colour,) = one.swatch.colours
    wanted = srgb_u8_to_lab_d50(np.array(SHEET_COLOURS[0], dtype=np.uint8))
    assert float(delta_e_2000(colour.lab, wanted)) < 1
    left = plate.outlines[0][0][0]
    qtbot.keyClick(plate, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert plate.outlines[0][0][0] == pytest.approx(left + 0.02)
    for _ in range(60):
        plate.move_by(0.02, 0)
    assert max(x for x, _ in plate.outlines[0]) == pytest.approx(1.0)
    rest(at_rack, qtbot)


def test_outlines_are_added_chosen_and_taken_away_by_keys(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    sheet, plate = rack.shelf.swatches.sheet, rack.stage.photo.plate
    sheet.look_at(photographed_sheet(tmp_path / "sheet.png"))
    rest(at_rack, qtbot)
    qtbot.keyClick(plate, Qt.Key.Key_Plus)
    assert (len(sheet.outlines), plate.chosen) == (5, 4)
    qtbot.keyClick(plate, Qt.Key.Key_P)
    qtbot.keyClick(plate, Qt.Key.Key_Delete)
    assert (len(sheet.outlines), plate.chosen) == (4, 2)
    assert plate.accessibleDescription() == "Swatch 3 of 4 is chosen."
    rack.stage.photo.back.click()
    assert rack.stage.pages.currentIndex() == 0


def test_a_folder_is_measured_once_with_what_cannot_be_and_put_on_the_rack_as_one(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    folder = tmp_path / "season"
    folder.mkdir()
    for at, colour in enumerate(SHEET_COLOURS):
        tile = np.full((60, 80, 3), colour, dtype=np.uint8)
        Image.fromarray(tile).save(folder / f"n-{at}.png")
    (folder / "broken.png").write_bytes(b"no picture")
    before, page = at_rack.session.catalogue, rack.shelf.swatches.folder
    page.measure(folder)
    assert not page.stop.isHidden()
    rest(at_rack, qtbot)
    assert page.said.text() == "4 measured, 1 could not be."
    assert "broken.png" in page.lines.text()
    kept = folder_results(at_rack.rack_book.place.parent, folder)
    lines = len(kept.read_text().splitlines())
    page.measure(folder)
    rest(at_rack, qtbot)
    assert len(kept.read_text().splitlines()) == lines  # nothing was measured again
    page.put.click()
    rest(at_rack, qtbot)
    assert {f"n-{at}" for at in range(4)} <= {s.code for s in at_rack.session.catalogue.samples}
    undo(at_rack, qtbot)
    assert at_rack.session.catalogue == before
    page.scale.setText("much")
    page.scale.editingFinished.emit()
    assert "millimetres per pixel" in page.said.text()


def test_a_folder_that_was_stopped_goes_on_where_it_was(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    folder = tmp_path / "season"
    folder.mkdir()
    for at in range(40):
        Image.fromarray(np.full((50, 60, 3), 3 * at, dtype=np.uint8)).save(folder / f"n-{at}.png")
    page = rack.shelf.swatches.folder
    kept = folder_results(at_rack.rack_book.place.parent, folder)
    page.measure(folder)
    qtbot.waitUntil(lambda: kept.exists() and bool(kept.read_text()), timeout=20_000)
    page.stop.click()
    assert "Stopped" in page.said.text()
    assert not page.go_on.isHidden()
    qtbot.waitUntil(lambda: not at_rack.runner._running, timeout=20_000)
    first = len(kept.read_text().splitlines())
    assert 0 < first < 40
    page.go_on.click()
    rest(at_rack, qtbot)
    assert page.said.text() == "40 measured, 0 could not be."
    assert len(kept.read_text().splitlines()) == 40


def test_an_import_of_another_day_is_taken_out_with_those_after_it_and_brought_back(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, tmp_path: Path
) -> None:
    before, bring = at_rack.session.catalogue, rack.shelf.bring
    for name, rows in (
        ("one", "fern,Fern,45,-20,20\n"),
        ("two", "fern,Fern,50,-9,9\nsand,,80,2,9\n"),
    ):
        table = tmp_path / f"{name}.csv"
        table.write_text(f"code,name,l,a,b\n{rows}", encoding="utf-8")
        bring.look_at(table)
        rest(at_rack, qtbot)
        bring.take.click()
        rest(at_rack, qtbot)
    at_rack.session.undo_stack.clear()  # as on another day
    both = at_rack.session.catalogue
    assert both["fern"].colours[0].lab == (50, -9, 9)
    older = min(bring.history.buttons)
    button = bring.history.buttons[older]
    assert button.accessibleName() == "Take out one.csv and the 1 brought in after it"
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    rest(at_rack, qtbot)
    assert at_rack.session.catalogue == before
    assert bring.history.buttons == {}
    undo(at_rack, qtbot)
    assert at_rack.session.catalogue == both
    at_rack.session.undo_stack.redo()
    rest(at_rack, qtbot)
    assert at_rack.session.catalogue == before
