"""Intake: corners, chart, grey and size by hand, each undone to the identical desk and picture."""

from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QPointF, Qt
from pytestqt.qtbot import QtBot

from framing_palette.arrays import Float32Array
from framing_palette.colour import lab_d50_to_linear_srgb, linear_to_srgb
from framing_palette.colour.charts import chart_lab
from framing_palette.jobs import job_from_text, job_text
from framing_palette.jobs.taking_in import HowTaken
from framing_palette.window.intake_shelf import IntakeShelf
from framing_palette.window.intake_view import Hand, IntakeView
from framing_palette.window.shell import Shell
from framing_palette.window.steps.intake import IntakeStep
from framing_palette.window.watched_folder import WatchedFolder

LEFT = Qt.MouseButton.LeftButton
ROWS, COLUMNS = 480, 720
ART = (60, 60, 400, 360)  # left, top, right, bottom in pixels
CAST = np.array([1.1, 1.0, 0.75], np.float32)


def photographed() -> Float32Array:
    """A grey table with a blue and sand picture and a 24-patch chart, under warm light; linear."""
    image = np.full((ROWS, COLUMNS, 3), 0.3, np.float32)
    left, top, right, bottom = ART
    image[top:bottom, left:right] = (0.1, 0.2, 0.4)
    image[(top + bottom) // 2 : bottom, left:right] = (0.5, 0.4, 0.2)
    chart = np.clip(np.asarray(lab_d50_to_linear_srgb(chart_lab())), 0, 1)
    image[76:244, 436:688] = 0.02
    for place, patch in enumerate(chart):
        row, column = divmod(place, 6)
        y, x = 80 + row * 41, 440 + column * 41
        image[y : y + 37, x : x + 37] = patch
    return image * CAST * 0.85


@pytest.fixture(scope="module")
def photo_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("photo") / "table.png"
    srgb = np.clip(np.asarray(linear_to_srgb(np.clip(photographed(), 0, 1))), 0, 1)
    Image.fromarray(np.round(srgb * 255).astype(np.uint8)).save(path)
    return path


@pytest.fixture
def step(shell: Shell, photo_file: Path, qtbot: QtBot) -> IntakeStep:
    shell.show()
    shell.go("intake")
    found = shell.steps["intake"]
    assert isinstance(found, IntakeStep)
    shell.open_file(photo_file)
    qtbot.waitUntil(lambda: found.intaking.photograph is not None, timeout=20_000)
    rest(found, qtbot)
    return found


def rest(step: IntakeStep, qtbot: QtBot) -> None:
    runner = step.counter.errands.runner
    qtbot.waitUntil(lambda: not runner.is_busy(), timeout=30_000)


def view_of(step: IntakeStep) -> IntakeView:
    assert step.stage_widget is not None
    return step.stage_widget.view


def shelf_of(step: IntakeStep) -> IntakeShelf:
    assert step.shelf_widget is not None
    return step.shelf_widget


def take_in(step: IntakeStep, qtbot: QtBot) -> None:
    qtbot.mouseClick(shelf_of(step).take, LEFT)
    rest(step, qtbot)


def test_before_anything_is_done_the_shelf_says_what_would_raise_the_trust(
    step: IntakeStep,
) -> None:
    assert "colour chart beside the art" in shelf_of(step).raising.text()
    assert step.session.picture is not None
    assert step.session.picture.columns == COLUMNS


def test_one_click_squares_the_art_corrects_by_the_chart_and_says_how_good_it_is(
    step: IntakeStep, qtbot: QtBot
) -> None:
    take_in(step, qtbot)
    picture, taken = step.session.picture, step.intaking.taken
    assert picture is not None
    assert taken is not None
    assert taken.intake.chart is not None
    assert picture.colour_trust.method == "chart"
    told = (shelf_of(step).trust.text(), shelf_of(step).trust_further.text())
    assert " ".join(told).strip() == picture.colour_trust.words
    assert "whites." in told[0]
    wanted = np.array([ART[0] / COLUMNS, ART[1] / ROWS])
    assert np.abs(np.array(taken.intake.corners[0]) - wanted).max() < 0.01
    assert "ΔE₀₀" in shelf_of(step).patches.text()


def test_undo_brings_the_photograph_back_as_its_file_says(step: IntakeStep, qtbot: QtBot) -> None:
    before, pixels = step.session.desk, step.session.picture
    take_in(step, qtbot)
    assert step.session.desk != before
    step.session.undo_stack.undo()
    rest(step, qtbot)
    assert step.session.desk == before
    assert step.session.picture is not None
    assert pixels is not None
    np.testing.assert_array_equal(step.session.picture.lab_d50, pixels.lab_d50)


def test_a_corner_is_dragged_and_the_picture_follows_in_one_step_to_undo(
    step: IntakeStep, qtbot: QtBot
) -> None:
    view = view_of(step)
    start = view.place((0.0, 0.0)).toPoint()
    end = view.place((0.2, 0.25)).toPoint()
    qtbot.mousePress(view, LEFT, pos=start)
    qtbot.mouseMove(view, (start + end) / 2)
    qtbot.mouseMove(view, end)
    qtbot.mouseRelease(view, LEFT, pos=end)
    rest(step, qtbot)
    how = step.intaking.how
    assert how.corners is not None
    assert how.corners[0] == pytest.approx((0.2, 0.25), abs=0.01)
    assert how.corners[2] == (1.0, 1.0)
    assert step.session.undo_stack.count() == 1


def test_corners_are_moved_by_keys_alone(step: IntakeStep, qtbot: QtBot) -> None:
    view = view_of(step)
    qtbot.keyClick(view, Qt.Key.Key_N)
    for _ in range(3):
        qtbot.keyClick(view, Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    rest(step, qtbot)
    corners = step.intaking.how.corners
    assert corners is not None
    assert corners[1][0] == pytest.approx(1.0 - 30 / view.box().width(), abs=1e-6)
    assert step.session.undo_stack.count() == 1


def test_corners_that_cross_are_said_and_the_picture_stays(step: IntakeStep, qtbot: QtBot) -> None:
    picture = step.session.picture
    crossed = ((0.1, 0.1), (0.9, 0.9), (0.9, 0.1), (0.1, 0.9))
    step.intaking.wish("Cross", HowTaken(corners=crossed))
    rest(step, qtbot)
    assert "cross" in shelf_of(step).fault.text()
    assert not shelf_of(step).fault.isHidden()
    assert step.session.picture is picture


def test_a_grey_is_picked_where_there_is_no_chart_to_trust(step: IntakeStep, qtbot: QtBot) -> None:
    step.intaking.wish("No chart", HowTaken(chart="none"))
    rest(step, qtbot)
    qtbot.mouseClick(shelf_of(step).hands.chips[Hand.GREY], LEFT)
    view = view_of(step)
    qtbot.mouseClick(view, LEFT, pos=view.place((0.03, 0.95)).toPoint())
    rest(step, qtbot)
    assert step.intaking.how.grey == pytest.approx((0.03, 0.95), abs=0.01)
    assert step.session.picture is not None
    assert step.session.picture.colour_trust.method == "grey"


def test_the_curtain_goes_where_it_is_pulled_and_shows_the_photograph_on_its_left(
    step: IntakeStep, qtbot: QtBot
) -> None:
    take_in(step, qtbot)
    qtbot.mouseClick(shelf_of(step).looks.chips["after"], LEFT)
    view = view_of(step)
    middle = QPointF(view.width() / 2, view.height() * 0.75).toPoint()
    qtbot.mouseClick(view, LEFT, pos=middle)
    assert view.curtain == pytest.approx(0.5, abs=0.02)
    image = view.grab().toImage()
    seen, after = (
        image.pixelColor(middle.x() - 60, middle.y()),
        image.pixelColor(middle.x() + 60, middle.y()),
    )
    assert seen.blue() < after.blue()  # the warm light was taken out


def test_the_width_of_the_chart_gives_the_art_its_size_and_undo_takes_it_back(
    step: IntakeStep, qtbot: QtBot
) -> None:
    take_in(step, qtbot)
    before = step.session.desk
    field = shelf_of(step).chart_width
    field.edit.clear()
    qtbot.keyClicks(field.edit, "242 mm\r")  # the patches are 242 pixels wide
    rest(step, qtbot)
    job, picture = step.session.desk.job, step.session.picture
    assert job is not None
    assert job.art_size is not None
    assert picture is not None
    width, height = (side.as_float_mm() for side in job.art_size)
    assert width == pytest.approx(ART[2] - ART[0], rel=0.02)
    assert height == pytest.approx(ART[3] - ART[1], rel=0.02)
    assert picture.mm_per_px == pytest.approx(width / picture.columns, rel=0.01)
    assert field.edit.text()
    step.session.undo_stack.undo()
    step.session.undo_stack.undo()
    rest(step, qtbot)
    assert step.session.desk == before


def test_a_width_that_is_none_is_refused_below_its_field(step: IntakeStep, qtbot: QtBot) -> None:
    field = shelf_of(step).chart_width
    before = step.session.desk
    qtbot.keyClicks(field.edit, "0\r")
    assert field.fault.text()
    assert step.session.desk == before


def test_a_typed_size_gives_the_picture_its_scale(step: IntakeStep, qtbot: QtBot) -> None:
    take_in(step, qtbot)
    fields = shelf_of(step).size_fields
    for field, text in ((fields.width_field, "340 mm"), (fields.height_field, "300 mm")):
        field.edit.selectAll()
        qtbot.keyClicks(field.edit, text)
        qtbot.keyClick(field.edit, Qt.Key.Key_Return)
    rest(step, qtbot)
    picture = step.session.picture
    assert picture is not None
    assert picture.mm_per_px is not None
    assert picture.mm_per_px * picture.columns == pytest.approx(340, rel=0.01)


def test_how_the_photograph_was_taken_in_is_kept_with_the_job(step: IntakeStep) -> None:
    how = HowTaken(((0.1, 0.1), (0.9, 0.1), (0.9, 0.9), (0.1, 0.9)), "none", (0.5, 0.5))
    step.intaking.wish("Mark", how)
    job = step.session.desk.job
    assert job is not None
    assert job_from_text(job_text(job), "job").intake == how


def test_a_photograph_that_arrives_is_offered_once_it_is_whole(
    qtbot: QtBot, tmp_path: Path, photo_file: Path
) -> None:
    (tmp_path / "old.png").write_bytes(photo_file.read_bytes())
    folder = WatchedFolder()
    folder.watch(tmp_path)
    content = photo_file.read_bytes()
    new = tmp_path / "new.png"
    with qtbot.waitSignal(folder.arrived, timeout=20_000) as told:
        new.write_bytes(content[:100])
        folder.look()  # too small still
        new.write_bytes(content)
    assert told.args == [new]


def test_an_arrived_photograph_is_opened_by_a_click(
    step: IntakeStep, qtbot: QtBot, tmp_path: Path, photo_file: Path
) -> None:
    new = tmp_path / "second.png"
    new.write_bytes(photo_file.read_bytes())
    step.watched.arrived.emit(new)
    shelf = shelf_of(step)
    assert shelf.open_button.text() == "Open second.png"
    qtbot.mouseClick(shelf.open_button, LEFT)
    qtbot.waitUntil(
        lambda: step.session.desk.job is not None and step.session.desk.job.title == "Second",
        timeout=20_000,
    )
    rest(step, qtbot)


def sheet_file(folder: Path, *, right: float) -> Path:
    """A plain sheet that fills the photograph, under light that changes towards the right."""
    light = np.linspace(1.0, right, COLUMNS)[None, :, None] * CAST * 0.6
    srgb = np.asarray(linear_to_srgb(np.broadcast_to(light, (ROWS, COLUMNS, 3)).copy()))
    path = folder / "sheet.png"
    Image.fromarray(np.round(srgb * 255).astype(np.uint8)).save(path)
    return path


def test_a_plain_sheet_evens_out_the_light_and_undo_brings_it_back(
    step: IntakeStep, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    take_in(step, qtbot)
    before = step.session.picture
    assert before is not None
    assert shelf_of(step).leave_light.isHidden()
    path = sheet_file(tmp_path, right=0.8)
    chosen = lambda *_: (str(path), "")  # noqa: E731 - stands in for the file dialog
    monkeypatch.setattr("framing_palette.window.steps.intake.QFileDialog.getOpenFileName", chosen)
    qtbot.mouseClick(shelf_of(step).sheet, LEFT)
    rest(step, qtbot)
    evened = step.session.picture
    assert evened is not None
    assert not isinstance(step.intaking.how.light, str)
    assert "1.25 times across the plain sheet" in shelf_of(step).light.text()
    gain = evened.lab_d50[:20, -20:, 0].mean() / before.lab_d50[:20, -20:, 0].mean()
    left = evened.lab_d50[:20, :20, 0].mean() / before.lab_d50[:20, :20, 0].mean()
    assert gain > left * 1.02
    assert not shelf_of(step).leave_light.isHidden()
    step.session.undo_stack.undo()
    rest(step, qtbot)
    assert step.session.picture is not None
    np.testing.assert_array_equal(step.session.picture.lab_d50, before.lab_d50)
    step.session.undo_stack.redo()
    rest(step, qtbot)
    qtbot.mouseClick(shelf_of(step).leave_light, LEFT)
    rest(step, qtbot)
    assert step.intaking.how.light == "none"
    assert "left as it is" in shelf_of(step).light.text()


def test_a_sheet_that_is_none_is_said_and_the_picture_stays(
    step: IntakeStep, qtbot: QtBot, photo_file: Path, tmp_path: Path
) -> None:
    before, picture = step.session.desk, step.session.picture
    rough = np.kron(np.random.default_rng(1).integers(60, 200, (24, 36, 3)), np.ones((20, 20, 1)))
    path = tmp_path / "carpet.png"
    Image.fromarray(rough.astype(np.uint8)).save(path)
    for file, said in ((path, "carpet.png tells nothing"), (photo_file, "did not reach under")):
        step.intaking.even_out_by(file)
        rest(step, qtbot)
        assert said in shelf_of(step).fault.text()
        assert step.session.picture is picture
        assert step.session.desk == before
