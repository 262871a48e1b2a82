"""Build: the design in hand is changed by clicks, drags, keys and typing, and each can be undone."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Kind
from framing_palette.design import Design
from framing_palette.design.changing import borders_of
from framing_palette.units import Length
from framing_palette.window import building
from framing_palette.window.section.scene import Scene
from framing_palette.window.shell import Shell
from framing_palette.window.steps.build import BuildShelf, BuildStage, BuildStep
from framing_palette.window.steps.step import Standing
from tests.window.buildable import BUILDABLE

inch = Length.inches


@pytest.fixture
def step(open_shell: Shell, qtbot: QtBot) -> BuildStep:
    open_shell.show()
    with qtbot.waitSignal(open_shell.session.ranked_changed, timeout=20_000):
        open_shell.session.assign("catalogue", BUILDABLE)
    open_shell.go("build")
    found = open_shell.steps["build"]
    assert isinstance(found, BuildStep)
    return found


@pytest.fixture
def built(step: BuildStep, qtbot: QtBot) -> BuildStep:
    """A design of two mats and a frame in hand, drawn once."""
    building.begin_design(step.session, ("deep-sea", "pale-sky", "black-flat"))
    wait_idle(step, qtbot)
    return step


def wait_idle(step: BuildStep, qtbot: QtBot) -> None:
    runner = step.counter.errands.runner
    qtbot.waitUntil(lambda: not runner.is_busy(), timeout=20_000)


def stage_of(step: BuildStep) -> BuildStage:
    assert step.stage_widget is not None
    return step.stage_widget


def shelf_of(step: BuildStep) -> BuildShelf:
    assert step.shelf_widget is not None
    return step.shelf_widget


def design_of(step: BuildStep) -> Design:
    design = building.design_in_hand(step.session)
    assert design is not None
    return design


def scene_of_view(step: BuildStep) -> Scene:
    scene = stage_of(step).section.scene()
    assert scene is not None
    return scene


def drag(qtbot: QtBot, view: QWidget, start: QPointF, way: QPoint) -> None:
    begin = start.toPoint()
    qtbot.mousePress(view, Qt.MouseButton.LeftButton, pos=begin)
    for share in (0.5, 1.0):
        qtbot.mouseMove(view, begin + QPoint(round(way.x() * share), round(way.y() * share)))
    qtbot.mouseRelease(view, Qt.MouseButton.LeftButton, pos=begin + way)


def undone_alike(step: BuildStep, act: Callable[[], None]) -> None:
    """Check that an act changes the desk and that undo brings back the identical one."""
    before = step.session.desk
    act()
    after = step.session.desk
    assert after != before
    step.session.undo_stack.undo()
    assert step.session.desk == before
    step.session.undo_stack.redo()
    assert step.session.desk == after


def test_without_a_design_the_stage_says_how_to_begin_and_a_click_builds_what_is_laid(
    step: BuildStep, qtbot: QtBot
) -> None:
    begin = stage_of(step).begin
    assert "Lay samples round the picture" in begin.told.text()
    assert begin.build.isHidden()
    step.session.edit("Lay", laid=("pale-sky", "black-flat"))
    assert "Pale sky + Black flat" in begin.told.text()
    qtbot.mouseClick(begin.build, Qt.MouseButton.LeftButton)
    assert design_of(step).codes == ("pale-sky", "black-flat")
    assert step.standing() is Standing.DONE


def test_art_without_a_size_must_be_sized_first_and_typing_it_is_enough(
    step: BuildStep, qtbot: QtBot
) -> None:
    from dataclasses import replace

    job = building.job_of(step.session)
    step.session.edit("Forget", job=replace(job, art_size=None))
    fields = stage_of(step).begin.size_fields
    assert not stage_of(step).begin.find_button.isEnabled()
    for field, text in ((fields.width_field, "12"), (fields.height_field, "9 1/2")):
        qtbot.keyClicks(field.edit, text)
        qtbot.keyClick(field.edit, Qt.Key.Key_Return)
    assert building.job_of(step.session).art_size == (inch(12), inch("9 1/2"))
    assert stage_of(step).begin.find_button.isEnabled()


def test_the_framed_picture_is_drawn_off_the_thread_and_follows_each_change(
    built: BuildStep, qtbot: QtBot
) -> None:
    preview = stage_of(built).preview
    qtbot.waitUntil(lambda: preview.design_drawn is design_of(built), timeout=20_000)
    first = preview.rendered
    assert first is not None
    assert (first.image.width(), first.image.height()) == (preview.width(), preview.height())
    building.use_sample(built.session, "brick-red", "layer 2")
    qtbot.waitUntil(lambda: preview.design_drawn is design_of(built), timeout=20_000)
    assert preview.rendered is not None
    assert preview.rendered.image != first.image


def test_sight_size_outside_and_depth_stand_there_at_once(built: BuildStep) -> None:
    facts = stage_of(built).facts
    built.session.assign("preferences", built.session.preferences.changed("unit", "mm"))
    # art 320 x 240 mm, 1/8 in hidden on each side: 320 - 6.35, 240 - 6.35
    assert facts.sight.text() == "Sight size 313.7 × about 233.7 mm"
    assert facts.depth_line.text().startswith("Fits the rabbet")


def test_dragging_an_edge_changes_the_width_in_steps_and_is_one_undo(
    built: BuildStep, qtbot: QtBot
) -> None:
    view, scene = stage_of(built).section, scene_of_view(built)
    edge = next(edge for edge in view.edges() if edge.part == "layer 1")
    start = QPointF(scene.x(edge.u), scene.foot + 26)
    way = QPoint(round(inch("1/4").as_float_mm() * scene.px_per_mm), 0)
    undone_alike(built, lambda: drag(qtbot, view, start, way))
    reveal = design_of(built).layers[0].reveal
    assert reveal is not None
    assert reveal.right == inch("1/2")


def test_dragging_the_border_moves_the_frame(built: BuildStep, qtbot: QtBot) -> None:
    view, scene = stage_of(built).section, scene_of_view(built)
    edge = next(edge for edge in view.edges() if edge.part == "layer 2")
    before = borders_of(design_of(built))
    way = QPoint(round(inch("1/2").as_float_mm() * scene.px_per_mm), 0)
    drag(qtbot, view, QPointF(scene.x(edge.u), scene.foot + 26), way)
    after = borders_of(design_of(built))
    assert before is not None
    assert after is not None
    assert after.right - before.right == inch("1/2")


def test_a_layer_carried_over_another_changes_places_with_it(
    built: BuildStep, qtbot: QtBot
) -> None:
    view, scene = stage_of(built).section, scene_of_view(built)
    boxes = {
        f"layer {piece.number}": scene.polygon(piece).boundingRect()
        for piece in scene.section.pieces
        if piece.name == "mat"
    }
    lower, upper = boxes["layer 1"], boxes["layer 2"]
    start = QPointF(scene.x(scene.section.contents_edge) - 8, lower.center().y())
    assert scene.part_at(start) == "layer 1"
    way = QPoint(0, round(upper.center().y() - lower.center().y()) - 8)
    undone_alike(built, lambda: drag(qtbot, view, start, way))
    assert design_of(built).codes == ("pale-sky", "deep-sea", "black-flat")


def test_the_section_is_worked_by_keys_alone(built: BuildStep, qtbot: QtBot) -> None:
    view = stage_of(built).section
    built.session.assign("chosen_part", "backing")
    for wanted in ("art", "layer 1"):
        qtbot.keyClick(view, Qt.Key.Key_Up)
        assert built.session.chosen_part == wanted
    undone_alike(built, lambda: qtbot.keyClick(view, Qt.Key.Key_Right))
    reveal = design_of(built).layers[0].reveal
    assert reveal is not None
    assert reveal.right == inch("5/16")
    undone_alike(
        built, lambda: qtbot.keyClick(view, Qt.Key.Key_Up, Qt.KeyboardModifier.AltModifier)
    )
    assert built.session.chosen_part == "layer 2"
    undone_alike(built, lambda: qtbot.keyClick(view, Qt.Key.Key_Delete))
    assert design_of(built).codes == ("pale-sky", "black-flat")


def test_a_width_typed_in_the_list_is_exact(built: BuildStep, qtbot: QtBot) -> None:
    field = stage_of(built).parts.rows["layer 1"].field
    assert field is not None

    def type_it() -> None:
        field.edit.selectAll()
        qtbot.keyClicks(field.edit, "3/8")
        qtbot.keyClick(field.edit, Qt.Key.Key_Return)

    undone_alike(built, type_it)
    reveal = design_of(built).layers[0].reveal
    assert reveal is not None
    assert reveal.right == inch("3/8")


def test_a_width_that_cannot_be_built_is_refused_where_it_was_typed(
    built: BuildStep, qtbot: QtBot
) -> None:
    built.session.assign("chosen_part", "art")
    row = stage_of(built).parts.rows["art"]
    assert row.field is not None
    before = built.session.desk
    row.field.edit.selectAll()
    qtbot.keyClicks(row.field.edit, "200")
    qtbot.keyClick(row.field.edit, Qt.Key.Key_Return)
    assert built.session.desk is before
    assert "less than half" in row.field.fault.text()
    assert not row.field.fault.isHidden()


def test_leaving_a_field_untouched_never_rounds_what_it_shows(
    built: BuildStep, qtbot: QtBot
) -> None:
    from framing_palette.design.changing import with_shown_width

    odd = with_shown_width(design_of(built), "layer 1", Length.mm_of("7.3"))
    building.put_design(built.session, odd, "Odd")
    field = stage_of(built).parts.rows["layer 1"].field
    assert field is not None
    before = built.session.desk
    qtbot.keyClick(field.edit, Qt.Key.Key_Return)
    assert built.session.desk is before


def test_a_wider_foot_is_typed_at_the_outermost_mat(built: BuildStep, qtbot: QtBot) -> None:
    built.session.assign("chosen_part", "layer 2")
    foot = stage_of(built).parts.foot
    assert foot is not None
    foot.edit.selectAll()
    qtbot.keyClicks(foot.edit, "1/2")
    qtbot.keyClick(foot.edit, Qt.Key.Key_Return)
    borders = borders_of(design_of(built))
    assert borders is not None
    assert borders.bottom - borders.top == inch("1/2")


def test_glazing_is_a_choice_of_three(built: BuildStep, qtbot: QtBot) -> None:
    built.session.assign("chosen_part", "glazing")
    for name, material in (("acrylic", "acrylic"), ("none", None)):
        panes = stage_of(built).parts.panes
        assert panes is not None
        qtbot.mouseClick(panes.chips[name], Qt.MouseButton.LeftButton)
        glazing = design_of(built).glazing
        assert (glazing.material if glazing else None) == material


def test_too_shallow_a_frame_is_told_with_the_shortfall_and_frames_that_would_do(
    built: BuildStep,
) -> None:
    building.use_sample(built.session, "thin-ash", "moulding")
    facts = stage_of(built).facts
    assert "Too deep by" in facts.depth_line.text()
    assert facts.deeper.text() == "Deep enough: Black flat."
    assert built.standing() is Standing.ATTENTION


def test_the_shelf_ranks_for_the_chosen_part_and_enter_uses_the_sample(
    built: BuildStep, qtbot: QtBot
) -> None:
    samples = shelf_of(built).samples
    built.session.assign("chosen_part", "layer 1")
    wait_idle(built, qtbot)
    assert "layer 1" in samples.told.text()
    built.session.assign("chosen_code", "brick-red")
    undone_alike(built, lambda: qtbot.keyClick(samples.view, Qt.Key.Key_Return))
    assert design_of(built).codes == ("brick-red", "pale-sky", "black-flat")
    qtbot.keyClick(samples.view, Qt.Key.Key_S)
    assert design_of(built).codes == ("brick-red", "brick-red", "pale-sky", "black-flat")


def test_the_frame_chosen_in_the_section_brings_mouldings_to_the_shelf(
    built: BuildStep, qtbot: QtBot
) -> None:
    built.session.assign("chosen_part", "moulding")
    wait_idle(built, qtbot)
    model = shelf_of(built).samples.model
    assert model.shown_count() == len(BUILDABLE.of_kind(Kind.MOULDING))
    assert not model.index_of("brick-red").isValid()


def test_three_designs_are_found_with_a_lock_and_laid_beside_each_other(
    built: BuildStep, qtbot: QtBot
) -> None:
    shelf = shelf_of(built)
    qtbot.mouseClick(shelf.pages.chips["designs"], Qt.MouseButton.LeftButton)
    designs = shelf.designs
    qtbot.mouseClick(designs.locks["black-flat"], Qt.MouseButton.LeftButton)
    with qtbot.waitSignal(designs.found_arrived, timeout=30_000):
        qtbot.mouseClick(designs.find_button, Qt.MouseButton.LeftButton)
    assert designs.cards
    assert all("black-flat" in [s.code for s in found.layers] for found in designs.found)
    assert "combinations" in designs.told.text()
    undone_alike(built, lambda: qtbot.mouseClick(designs.cards[0].take, Qt.MouseButton.LeftButton))
    assert len(building.options_of(built.session)) == 2


def test_a_price_ceiling_nothing_passes_is_said_in_place(built: BuildStep, qtbot: QtBot) -> None:
    designs = shelf_of(built).designs
    designs.limit.setText("a few")
    designs.search()
    assert "limit" in designs.told.text().lower()
    designs.limit.setText("1")
    designs.search()
    wait_idle(built, qtbot)
    assert designs.found == ()
    assert designs.told.text()


def test_near_what_is_liked_keeps_the_kind_and_gives_its_reason(
    built: BuildStep, qtbot: QtBot
) -> None:
    building.use_sample(built.session, "acid-lime", "layer 2")
    built.session.assign("chosen_part", "layer 2")
    liked = shelf_of(built).liked
    shelf_of(built).show_page("liked")
    with qtbot.waitSignal(liked.choice_arrived, timeout=20_000):
        qtbot.mouseClick(liked.find_button, Qt.MouseButton.LeftButton)
    assert liked.better is not None
    assert liked.better.offered.sample.kind is Kind.MAT
    assert liked.told.text() == liked.better.reason
    offered = liked.better.offered.sample.code
    qtbot.mouseClick(liked.use, Qt.MouseButton.LeftButton)
    assert design_of(built).layers[1].code == offered


def test_a_copy_begins_another_design_and_tabs_take_one_in_hand(
    built: BuildStep, qtbot: QtBot
) -> None:
    tabs = stage_of(built).tabs
    qtbot.mouseClick(tabs.copy, Qt.MouseButton.LeftButton)
    building.use_sample(built.session, "brick-red", "layer 2")
    assert [chip.text() for chip in tabs.chips] == ["First design", "Second design"]
    qtbot.mouseClick(tabs.chips[0], Qt.MouseButton.LeftButton)
    assert design_of(built).layers[1].code == "pale-sky"
    undone_alike(built, lambda: qtbot.mouseClick(tabs.drop, Qt.MouseButton.LeftButton))
    assert len(building.options_of(built.session)) == 1
