"""The rack: its map, its list and its shelf, by hand and by keys."""

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QAbstractButton, QLabel, QWidget
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Catalogue, Kind
from framing_palette.window.rack.door import RackDoor
from framing_palette.window.rack.layer import Order, draw_layer
from framing_palette.window.rack.map_view import RackMap, reach_words
from framing_palette.window.rack.plane import Plane
from framing_palette.window.rack.state import FULL_RANGE, Look
from framing_palette.window.shell import Shell


def rest(shell: Shell, qtbot: QtBot) -> None:
    qtbot.waitUntil(lambda: not shell.runner.is_busy(), timeout=30_000)


@pytest.fixture
def at_rack(open_shell: Shell, qtbot: QtBot, tmp_path: Path) -> Iterator[Shell]:
    open_shell.rack_book.folder = tmp_path / "racks"
    open_shell.show()
    open_shell.doors["rack"].click()
    rest(open_shell, qtbot)
    yield open_shell
    rest(open_shell, qtbot)


@pytest.fixture
def rack(at_rack: Shell) -> RackDoor:
    assert at_rack.rack is not None
    return at_rack.rack


def spot(view: RackMap, lab: tuple[float, float, float]) -> QPoint:
    return view.plane.at(lab[1], lab[2]).toPoint()


def click(qtbot: QtBot, view: RackMap, at: QPoint) -> None:
    qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=at)


def test_the_door_opens_the_rack_and_closes_on_the_step_that_was_left(
    at_rack: Shell, rack: RackDoor
) -> None:
    assert at_rack.stages.currentWidget() is rack.stage
    assert at_rack.shelves.currentWidget() is rack.shelf
    assert at_rack.doors["rack"].isChecked()
    at_rack.doors["settings"].click()
    at_rack.doors["settings"].click()
    assert at_rack.shelves.currentWidget() is rack.shelf
    at_rack.doors["rack"].click()
    assert at_rack.stages.currentWidget() is not rack.stage
    assert not at_rack.doors["rack"].isChecked()


def test_a_click_on_a_tile_looks_near_its_sample(rack: RackDoor, qtbot: QtBot) -> None:
    view = rack.stage.map
    sample = rack.state.sample(rack.state.row_of("acid-lime"))
    click(qtbot, view, spot(view, sample.mean_lab))
    look = rack.state.look
    assert look is not None
    assert look.code == "acid-lime"
    row = rack.shelf.near.model.row_at(rack.shelf.near.model.index(0))
    assert rack.state.sample(row.row).code == "acid-lime"
    assert row.delta_e == pytest.approx(0.0, abs=1e-6)


def test_a_click_on_a_bare_spot_looks_near_the_colour_that_lies_there(
    rack: RackDoor, qtbot: QtBot
) -> None:
    view = rack.stage.map
    view.show_plane(Plane(a=0, b=-60, scale=6, width=view.width(), height=view.height()))
    click(qtbot, view, QPoint(view.width() // 2, view.height() // 2))
    look = rack.state.look
    assert look is not None
    assert look.code == ""
    assert look.lab[1:] == pytest.approx((0, -60), abs=0.5)


def test_rings_stand_where_the_pictures_colours_are_and_lead_to_what_is_near(
    rack: RackDoor, qtbot: QtBot
) -> None:
    view = rack.stage.map
    rings = view.rings()
    assert len(rings) >= 3
    qtbot.keyClick(view, Qt.Key.Key_N)
    look = rack.state.look
    assert look is not None
    assert look.lab == rings[0].reach.lab
    qtbot.keyClick(view, Qt.Key.Key_P)
    assert rack.state.look is not None
    assert rack.state.look.lab == rings[-1].reach.lab


def test_a_slice_of_lightness_leaves_out_tiles_and_rings(rack: RackDoor, qtbot: QtBot) -> None:
    bar = rack.stage.lightness
    bar.slice_at(82)
    codes = {rack.state.sample(int(row)).code for row in np.flatnonzero(rack.state.passing)}
    assert codes == {"pale-sky", "acid-lime"}
    assert all(72 <= ring.reach.lab[0] <= 92 for ring in rack.stage.map.rings())
    assert "72 to 92" in bar.accessibleName()
    qtbot.keyClick(bar, Qt.Key.Key_Down)
    assert rack.state.wanted.lightness == (67.0, 87.0)
    qtbot.keyClick(bar, Qt.Key.Key_Escape)
    assert rack.state.wanted.lightness == FULL_RANGE


def test_a_family_is_zoomed_to(rack: RackDoor) -> None:
    before = rack.stage.map.plane.scale
    rack.stage.families.chips["red"].click()
    codes = {rack.state.sample(int(row)).code for row in np.flatnonzero(rack.state.passing)}
    assert codes == {"brick-red"}
    assert rack.stage.map.plane.scale > before


def test_kinds_stock_and_words_narrow_the_rack_down(rack: RackDoor, at_rack: Shell) -> None:
    rack.stage.kinds[Kind.MOULDING].click()
    assert rack.state.passing.sum() == 1
    rack.stage.kinds[Kind.MOULDING].click()
    at_rack.job_line.sought.emit("sky")
    assert [rack.state.sample(int(row)).code for row in np.flatnonzero(rack.state.passing)] == [
        "pale-sky"
    ]
    at_rack.job_line.sought.emit("")
    rack.stage.there.click()
    assert rack.state.passing.all()


def test_a_lasso_lays_its_samples_side_by_side(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    view = rack.stage.map
    qtbot.keyClick(view, Qt.Key.Key_L)
    assert view.is_lassoing
    corners = [view.plane.at(a, b).toPoint() for a, b in ((-10, 0), (8, 0), (8, -20), (-10, -20))]
    qtbot.mousePress(view, Qt.MouseButton.LeftButton, pos=corners[0])
    for corner in corners[1:]:
        qtbot.mouseMove(view, corner)
    qtbot.mouseRelease(view, Qt.MouseButton.LeftButton, pos=corners[-1])
    codes = [rack.state.sample(row).code for row in rack.state.marked]
    assert codes[:2] == ["pale-sky", "deep-sea"]
    assert not view.is_lassoing
    rack.shelf.near.compare.click()
    assert [kept.codes[0] for kept in at_rack.session.desk.kept] == codes
    assert at_rack.session.comparing
    assert at_rack.session.step == "choose"


def test_keys_reach_everything_on_the_map(rack: RackDoor, qtbot: QtBot) -> None:
    view = rack.stage.map
    qtbot.keyClick(view, Qt.Key.Key_Right)
    first = rack.state.look
    assert first is not None
    assert first.code
    qtbot.keyClick(view, Qt.Key.Key_Up)
    second = rack.state.look
    assert second is not None
    assert second.lab[2] >= first.lab[2]
    qtbot.keyClick(view, Qt.Key.Key_Space)
    assert rack.state.marked == (rack.state.row_of(second.code),)
    qtbot.keyClick(view, Qt.Key.Key_Escape)
    assert rack.state.marked == ()
    scale = view.plane.scale
    qtbot.keyClick(view, Qt.Key.Key_Plus)
    assert view.plane.scale == pytest.approx(scale * 1.25)
    qtbot.keyClick(view, Qt.Key.Key_0)
    assert view.plane.scale == pytest.approx(scale)
    qtbot.keyClick(view, Qt.Key.Key_Escape)
    assert rack.state.look is None


def test_the_hand_pushes_and_the_wheel_keeps_what_lies_under_it(rack: RackDoor) -> None:
    plane = Plane(a=3, b=-4, scale=5, width=400, height=300)
    point = QPointF(90, 210)
    closer = plane.zoomed(2.5, point)
    assert closer.under(point) == pytest.approx(plane.under(point))
    assert plane.moved(25, -10).at(3, -4) == plane.at(3, -4) + QPointF(25, -10)
    assert plane.under(plane.at(12, 34)) == pytest.approx((12, 34))
    assert closer.placed_in(closer).width() == pytest.approx(400)


def test_gaps_are_listed_farthest_first_and_lead_to_the_nearest(rack: RackDoor) -> None:
    rack.shelf.pages.chips["gaps"].click()
    found = [row.reach.delta_e for row in rack.shelf.gaps.rows]
    assert found == sorted(found, reverse=True)
    assert len(found) == sum(reach.is_gap for reach in rack.state.reaches) > 0
    assert rack.stage.map.with_quiet
    rack.shelf.gaps.rows[0].click()
    assert rack.state.look is not None
    assert rack.state.look.lab == rack.shelf.gaps.rows[0].reach.lab


def test_the_list_shows_what_the_map_shows_in_the_order_asked_for(
    rack: RackDoor, qtbot: QtBot
) -> None:
    rack.stage.views.chips["list"].click()
    model = rack.stage.list.model
    assert model.rowCount() == len(rack.state.points)
    rack.stage.list.orders.chips["light"].click()
    lightness = [model.sample_at(model.index(at)).mean_lab[0] for at in range(model.rowCount())]
    assert lightness == sorted(lightness, reverse=True)
    rack.stage.list.orders.chips["name"].click()
    names = [model.sample_at(model.index(at)).name for at in range(model.rowCount())]
    assert names == sorted(names)
    rack.stage.list.view.setFocus()
    qtbot.keyClick(rack.stage.list.view, Qt.Key.Key_End)
    assert rack.state.look is not None
    assert rack.state.look.name == names[-1]


def test_state_is_told_in_words(rack: RackDoor) -> None:
    told = rack.stage.map.accessibleDescription()
    assert "6 of 6 samples" in told
    assert "nothing near them" in told
    view = rack.stage.map
    sample = rack.state.sample(rack.state.row_of("acid-lime"))
    assert "Acid lime" in view.words_at(QPointF(spot(view, sample.mean_lab)))
    ring = view.rings()[-1]
    told = view.words_at(ring.centre + QPointF(ring.radius, 0))
    assert told == reach_words(rack.state, ring.place)
    assert ("a gap" in told) == ring.reach.is_gap


def test_f6_opens_the_rack(open_shell: Shell, qtbot: QtBot, tmp_path: Path) -> None:
    open_shell.rack_book.folder = tmp_path / "racks"
    open_shell.show()
    with qtbot.waitActive(open_shell):
        open_shell.activateWindow()
    qtbot.keyClick(open_shell, Qt.Key.Key_F6)
    assert open_shell.rack is not None
    assert open_shell.stages.currentWidget() is open_shell.rack.stage
    rest(open_shell, qtbot)


def test_every_control_has_a_name(rack: RackDoor) -> None:
    for part in (rack.stage, rack.shelf):
        for button in part.findChildren(QAbstractButton):
            assert button.accessibleName() or button.text(), button
    assert rack.stage.map.accessibleName()
    assert rack.stage.lightness.accessibleName()


def pixel(image: QImage, at: QPointF) -> tuple[int, int, int]:
    color = image.pixelColor(at.toPoint())
    return color.red(), color.green(), color.blue()


def test_a_tile_has_the_colour_of_its_sample_and_a_hollow_one_the_grounds_in_its_middle(
    rack: RackDoor,
) -> None:
    from dataclasses import replace

    from framing_palette.colour import lab_d50_to_srgb_u8
    from framing_palette.window.greys import surround_color

    points, ground = rack.state.points, surround_color(60)
    row = rack.state.row_of("acid-lime")
    plane = Plane(a=-50, b=80, scale=10, width=300, height=200)
    passing = np.ones(len(points), dtype=np.bool_)
    there = draw_layer(Order(points, passing, plane, 1.0, ground))
    at = there.plane.at(-50, 80)
    wanted = tuple(int(level) for level in lab_d50_to_srgb_u8(points.mean_lab[row]))
    assert pixel(there.image, at) == wanted
    gone = replace(points, is_there=np.zeros(len(points), dtype=np.bool_))
    hollow = draw_layer(Order(gone, passing, plane, 1.0, ground))
    assert pixel(hollow.image, at + QPointF(2, 2)) == (ground.red(), ground.green(), ground.blue())
    rim = at - QPointF(plane.tile / 2 - 3, 0)
    assert pixel(hollow.image, rim) == wanted


def test_the_map_is_achromatic_but_for_samples_and_rings(rack: RackDoor) -> None:
    from framing_palette.catalogue.rack_map import rack_points
    from framing_palette.window.greys import surround_color

    empty = rack_points(())
    bare = draw_layer(
        Order(
            empty,
            np.zeros(0, dtype=np.bool_),
            Plane(width=200, height=150),
            1.0,
            surround_color(60),
        )
    )
    pixels = np.frombuffer(bare.image.bits(), dtype=np.uint8).reshape(-1, 4)[:, :3].astype(int)
    assert np.ptp(pixels, axis=1).max() <= 1


def test_another_catalogue_is_shown_and_an_empty_one_too(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    at_rack.session.assign("catalogue", Catalogue(samples=()))
    rest(at_rack, qtbot)
    assert len(rack.state.points) == 0
    view = rack.stage.map
    view.grab()
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Space, Qt.Key.Key_0, Qt.Key.Key_Plus):
        qtbot.keyClick(view, key)
    click(qtbot, view, QPoint(50, 50))
    assert rack.state.look is None


@pytest.mark.parametrize(("width", "height"), [(1920, 1080), (1366, 768), (911, 512), (683, 384)])
def test_nothing_that_must_be_read_is_clipped(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot, width: int, height: int
) -> None:
    at_rack.resize(width, height)
    for page in ("near", "gaps", "bring", "measure", "hidden"):
        rack.shelf.show_page(page)
        qtbot.wait(20)
        assert not list(clipped(rack.shelf)), page
    for view in ("list", "map"):
        rack.stage.show_view(view)
        qtbot.wait(20)
        assert not list(clipped(rack.stage)), view


def clipped(part: QWidget) -> Iterator[str]:
    for label in part.findChildren(QLabel):
        if label.isVisible() and label.text():
            needed = label.heightForWidth(label.width()) if label.wordWrap() else 0
            if needed > label.height() + 1:
                yield f"{label.text()!r} needs more height than {label.height()}"
            if not label.wordWrap() and label.sizeHint().width() > label.width() + 1:
                yield f"{label.text()!r} needs more width than {label.width()}"
    for button in part.findChildren(QAbstractButton):
        if button.isVisible() and button.text() and button.sizeHint().width() > button.width() + 1:
            yield f"{button.text()!r} is wider than {button.width()}"


def test_what_was_all_in_sight_stays_so_in_a_smaller_window_and_what_was_not_is_left(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    view = rack.stage.map
    view.fit()
    before = view.plane.scale
    at_rack.resize(1100, 640)
    qtbot.waitUntil(lambda: view.plane.scale < before)
    view.zoom_by(2)
    closer = view.plane.scale
    at_rack.resize(1366, 768)
    qtbot.wait(30)
    assert view.plane.scale == closer


def test_nothing_near_says_what_to_do(rack: RackDoor, qtbot: QtBot) -> None:
    rack.state.look_at(Look((50.0, 60.0, -90.0), "violet"))
    assert rack.shelf.near.model.rowCount() == 0
    assert "Show more families" in rack.shelf.near.told.text()


def test_a_sample_is_seen_at_home_with_a_word_on_whether_its_match_holds(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    card = rack.shelf.near.light
    rack.state.look_at(Look((38.5, 30.0, 20.0), "brick"))
    rack.shelf.near.view.setCurrentIndex(rack.shelf.near.model.index(0))
    rest(at_rack, qtbot)
    assert card.told.isHidden()
    assert card.looks.isHidden()
    card.picker.setCurrentIndex(card.picker.findData("LED-B1"))
    card.picker.activated.emit(card.picker.currentIndex())
    rest(at_rack, qtbot)
    assert at_rack.session.light == "LED-B1"
    assert card.told.text().startswith("Matches here and ")
    assert "warm LEDs (2700 K)" in card.told.text()
    assert "estimated" in card.told.text()
    here, home = card.looks._rows
    assert here[0].lab == (38.0, 30.0, 20.0)
    assert home[0].lab != here[0].lab
    at_rack.session.assign("light", "D50")
    rest(at_rack, qtbot)
    assert card.looks.isHidden()
    assert card.picker.currentData() == "D50"


def test_levels_part_the_rack_by_lightness_and_a_click_shows_one_on_the_map(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    rack.stage.views.chips["levels"].click()
    levels = rack.stage.levels
    qtbot.waitUntil(lambda: sum(one.count for one in levels.maps) == 6, timeout=10_000)
    rest(at_rack, qtbot)
    assert [one.count for one in levels.maps] == [2, 1, 1, 1, 1]
    assert levels.maps[1].accessibleName() == "L* 60 to 80: 1"
    lit = levels.maps[0].grab().toImage().convertToFormat(QImage.Format.Format_RGB32)
    greens = [
        lit.pixelColor(x, y)
        for x in range(0, lit.width(), 2)
        for y in range(26, lit.height(), 2)
        if lit.pixelColor(x, y).green() > lit.pixelColor(x, y).red() + 60
    ]
    assert greens  # the acid lime is the only one so light
    levels.maps[3].click()
    assert rack.state.wanted.lightness == (20.0, 40.0)
    assert rack.stage.pages.currentWidget() is rack.stage.plate
    rack.stage.show_view("levels")
    levels.maps[3].click()
    assert rack.state.wanted.lightness == FULL_RANGE


def test_levels_hold_every_sample_once_whatever_is_wanted(
    rack: RackDoor, at_rack: Shell, qtbot: QtBot
) -> None:
    rack.stage.show_view("levels")
    rack.state.want(kinds=frozenset({Kind.MAT}), lightness=(0.0, 20.0))
    levels = rack.stage.levels
    qtbot.waitUntil(lambda: [one.count for one in levels.maps] == [2, 0, 1, 1, 0], timeout=10_000)
    rest(at_rack, qtbot)
