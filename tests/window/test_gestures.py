"""Dropping, pasting, wheeling, pinching, and the small ways to the same ends."""

from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent, QImage, QWheelEvent
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from framing_palette.errors import OutputError
from framing_palette.picture import Accent
from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.outlook import Look, Outlook
from framing_palette.window.canvas.pins import PinLayer
from framing_palette.window.canvas.stage import Stage
from framing_palette.window.keeping import keep_sample
from framing_palette.window.parcels import carried_code, parcel
from framing_palette.window.paste_files import keep_pasted
from framing_palette.window.shell import Shell
from framing_palette.window.sliding import lay_strip

BUTTON, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier


@pytest.fixture
def canvas(open_shell: Shell) -> Canvas:
    open_shell.show()
    open_shell.go("choose")
    found = open_shell.steps["choose"].canvas  # type: ignore[attr-defined]
    assert isinstance(found, Canvas)
    return found


def wheel(canvas: Canvas, at: QPointF, steps: int) -> None:
    event = QWheelEvent(
        at,
        canvas.mapToGlobal(at),
        QPoint(),
        QPoint(0, 120 * steps),
        Qt.MouseButton.NoButton,
        NONE,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(canvas, event)


def test_the_wheel_zooms_at_the_pointer(canvas: Canvas) -> None:
    at = canvas.place.to_screen(0.25, 0.75)
    before = canvas.place.width
    wheel(canvas, at, 3)
    assert canvas.place.width == pytest.approx(before * 1.2**3)
    assert (canvas.place.to_screen(0.25, 0.75) - at).manhattanLength() < 1.0


def test_keys_zoom_and_nought_shows_the_whole(canvas: Canvas, qtbot: QtBot) -> None:
    whole = canvas.place.width
    qtbot.keyClick(canvas, Qt.Key.Key_Plus)
    assert canvas.place.width > whole
    qtbot.keyClick(canvas, Qt.Key.Key_Minus)
    assert canvas.place.width == pytest.approx(whole)
    wheel(canvas, QPointF(10, 10), 5)
    qtbot.keyClick(canvas, Qt.Key.Key_0)
    assert canvas.place.width == pytest.approx(whole)


def test_a_double_click_beside_everything_shows_the_whole(canvas: Canvas, qtbot: QtBot) -> None:
    whole = canvas.place.width
    canvas.zoom_by(3.0)
    qtbot.mouseDClick(canvas, BUTTON, pos=QPoint(4, 4))
    assert canvas.place.width == pytest.approx(whole)


def test_a_double_click_on_a_strip_lays_it_round(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    lay_strip(open_shell.session, "brick-red")
    qtbot.mouseDClick(canvas, BUTTON, pos=canvas.place.to_screen(0.5, 0.5).toPoint())
    assert open_shell.session.desk.laid == ("brick-red",)


def test_the_look_never_loses_the_picture() -> None:
    look = Look().zoomed(1e9, 0.5, 0.5)
    assert look.zoom <= 32
    assert Look().zoomed(1e-9, 0.5, 0.5).zoom >= 0.5
    assert Look().moved(50.0, -50.0) == Look(1.0, -0.2, 1.2)
    outlook = Outlook()
    outlook.set_look(look)
    outlook.fit()
    assert outlook.look == Look()


def test_a_file_dropped_on_the_stage_is_opened(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot, tmp_path: Path
) -> None:
    path = tmp_path / "new.png"
    image = QImage(64, 48, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.darkGray)
    image.save(str(path))
    data = QMimeData()
    data.setUrls([QUrl("https://example.org/not-a-file"), QUrl.fromLocalFile(str(path))])
    drop = QDropEvent(QPointF(40, 40), Qt.DropAction.CopyAction, data, BUTTON, NONE)
    stage = canvas.parentWidget()
    assert isinstance(stage, Stage)
    with qtbot.waitSignal(open_shell.session.packed_changed):
        stage.dropEvent(drop)
    assert open_shell.session.desk.job is not None
    assert open_shell.session.desk.job.title == "New"


def test_a_sample_dropped_on_the_rail_is_kept_and_delete_takes_it_off(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    data = parcel("deep-sea")
    drop = QDropEvent(QPointF(40, 40), Qt.DropAction.CopyAction, data, BUTTON, NONE)
    open_shell.rail.dropEvent(drop)
    assert [kept.codes for kept in open_shell.session.desk.kept] == [("deep-sea",)]
    qtbot.keyClick(open_shell.rail.slots[0], Qt.Key.Key_Delete)
    assert open_shell.session.desk.kept == ()


def test_what_rests_on_the_rail_lies_round_with_its_number_and_goes_with_it_again(
    open_shell: Shell, canvas: Canvas, qtbot: QtBot
) -> None:
    keep_sample(open_shell.session, "deep-sea")
    open_shell.rail.chosen.emit(0)
    assert open_shell.session.desk.laid == ("deep-sea",)
    open_shell.rail.chosen.emit(0)
    assert open_shell.session.desk.laid == ()
    open_shell.rail.chosen.emit(3)
    assert open_shell.session.desk.laid == ()


def test_a_parcel_holds_the_code_and_other_parcels_hold_none() -> None:
    assert carried_code(parcel("R-ÄÖ")) == "R-ÄÖ"
    assert carried_code(QMimeData()) == ""


def test_doors_fold_into_one_where_the_window_is_low(open_shell: Shell, qtbot: QtBot) -> None:
    open_shell.resize(700, open_shell.path.minimumSizeHint().height())
    open_shell.show()
    path = open_shell.path
    assert path.more.isVisible()
    assert not open_shell.doors["settings"].isVisible()
    qtbot.mouseClick(path.more, BUTTON)
    menu = path.findChild(QMenu)
    assert isinstance(menu, QMenu)
    assert "Settings" in [action.text() for action in menu.actions()]
    menu.close()


def test_plates_of_many_accents_never_overlap_nor_leave_the_canvas(
    open_shell: Shell, canvas: Canvas
) -> None:
    from dataclasses import replace

    findings = open_shell.session.findings
    assert findings is not None
    accents = tuple(
        Accent((50.0, 40.0, 20.0), 0.002, x, 0.97 - 0.01 * number, 40.0, 0.8, name=f"red {number}")
        for number, x in enumerate((0.1, 0.2, 0.3, 0.4, 0.6, 0.7, 0.8, 0.9))
    )
    open_shell.session.assign("findings", replace(findings, accents=accents))
    layer = PinLayer(open_shell.session)
    plates = [pin.plate for pin in layer.pins(canvas.place)]
    assert len(plates) == 8
    for number, plate in enumerate(plates):
        assert canvas.rect().toRectF().contains(plate)
        assert not any(plate.intersects(other) for other in plates[number + 1 :])
    canvas.add_layer(layer)
    shown = canvas.grab().toImage()
    layer.show_pins(False)
    assert layer.pins(canvas.place) == ()
    assert canvas.grab().toImage() != shown


def test_a_pasted_picture_that_cannot_be_kept_is_told(tmp_path: Path) -> None:
    image = QImage(8, 8, QImage.Format.Format_RGB32)
    blocker = tmp_path / "file"
    blocker.write_text("in the way", encoding="utf-8")
    with pytest.raises(OutputError, match="save the picture to a file yourself"):
        keep_pasted(image, blocker / "deep")
    assert keep_pasted(image, tmp_path / "ok").exists()


def test_without_a_picture_nothing_can_be_laid_and_the_shelf_says_so(
    shell: Shell, qtbot: QtBot, rack: object
) -> None:
    shell.session.assign("catalogue", rack)
    lay_strip(shell.session, "brick-red")
    assert "Bring a picture first" in shell.notice.text()
    assert shell.session.desk.strips == ()


def test_a_moulding_without_a_face_cannot_be_laid_and_says_what_is_missing(
    open_shell: Shell, rack: object
) -> None:
    from dataclasses import replace

    from framing_palette.catalogue import Catalogue

    assert isinstance(rack, Catalogue)
    bare = replace(rack["black-flat"], code="bare", face=None)
    open_shell.session.assign("catalogue", Catalogue((*rack.samples, bare)))
    lay_strip(open_shell.session, "bare")
    assert "bare has no face width" in open_shell.notice.text()
    open_shell.session.edit("Lay", laid=("bare",))
    assert "add it to the catalogue" in open_shell.notice.text()
