"""The whole job by clicks and keys alone: from opening a photograph to papers on the disk."""

from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QFileDialog, QListView, QPushButton
from pytestqt.qtbot import QtBot

from framing_palette.colour import lab_d50_to_srgb_u8
from framing_palette.jobs import Status, read_job_file
from framing_palette.picture import Role
from framing_palette.units import Length
from framing_palette.window import building
from framing_palette.window.measuring_cards import MeasuringCard
from framing_palette.window.shell import Shell
from framing_palette.window.steps.agree import AgreeStep
from framing_palette.window.steps.build import BuildStep
from framing_palette.window.steps.choose import ChooseStep
from framing_palette.window.steps.measure import MeasureStep
from framing_palette.window.steps.read import ReadStep
from framing_palette.window.steps.step import Standing
from tests.window.buildable import BUILDABLE
from tests.window.conftest import make_picture

inch = Length.inches
LEFT = Qt.MouseButton.LeftButton


class Hands:
    """Clicks and types, and waits until the shop's background work is done."""

    def __init__(self, shell: Shell, qtbot: QtBot) -> None:
        self.shell = shell
        self.qtbot = qtbot

    def rest(self) -> None:
        self.qtbot.waitUntil(lambda: not self.shell.runner.is_busy(), timeout=30_000)

    def until(self, is_so: Callable[[], bool]) -> None:
        self.qtbot.waitUntil(is_so, timeout=30_000)

    def click(self, button: QAbstractButton) -> None:
        self.until(button.isVisible)
        assert button.isEnabled()
        self.qtbot.mouseClick(button, LEFT)
        self.rest()

    def go(self, key: str) -> None:
        self.click(self.shell.path.stop(key))
        assert self.shell.session.step == key

    def click_first_sample(self, view: QListView) -> None:
        index = view.model().index(1, 0)  # below the first heading
        self.qtbot.mouseClick(view.viewport(), LEFT, pos=view.visualRect(index).center())
        self.rest()

    def fill(self, card: MeasuringCard, width: str, height: str, initials: str) -> None:
        for edit, text in (
            (card.edits["width"], width),
            (card.edits["height"], height),
            (card.initials, initials),
        ):
            self.qtbot.keyClicks(edit, text)
        self.qtbot.keyClick(card.initials, Qt.Key.Key_Return)
        self.rest()


@pytest.fixture
def photograph(tmp_path: Path) -> Path:
    path = tmp_path / "red_boat.png"
    Image.fromarray(lab_d50_to_srgb_u8(make_picture().lab_d50)).save(path)
    return path


@pytest.fixture
def hands(shell: Shell, qtbot: QtBot) -> Hands:
    shell.session.assign("catalogue", BUILDABLE)
    shell.show()
    with qtbot.waitActive(shell):
        shell.activateWindow()
    return Hands(shell, qtbot)


def answer(monkeypatch: pytest.MonkeyPatch, asked: str, path: Path) -> None:
    """Let the system's own file dialog answer with a path."""
    monkeypatch.setattr(QFileDialog, asked, lambda *_a, **_k: (str(path), ""))


@pytest.mark.whole_job
def test_a_job_goes_from_a_photograph_to_its_papers_by_clicks_and_keys_alone(
    hands: Hands, photograph: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    open_photograph(hands, photograph, monkeypatch)
    draw_where_the_eye_rests(hands)
    lay_a_mat_round_the_picture(hands)
    build_the_frame(hands)
    measure_twice(hands)
    proposal, ticket = agree_and_save_papers(hands, tmp_path, monkeypatch)

    words = "\n".join(page.extract_text() for page in PdfReader(proposal).pages)
    assert "Ada Example" in words
    words = "\n".join(page.extract_text() for page in PdfReader(ticket).pages)
    assert "AB" in words
    assert "CD" in words

    saved = save_the_job(hands, tmp_path, monkeypatch)
    job = read_job_file(saved, BUILDABLE).job
    assert job.status is Status.WORKSHOP
    assert job.client.name == "Ada Example"
    assert job.agreed is not None
    assert job.agreed.design.art.width == inch(12)
    assert len(job.measurements) == 2
    standings = [step.standing() for step in hands.shell.steps.values()]
    assert Standing.ATTENTION not in standings


@pytest.mark.whole_job
def test_undoing_a_whole_job_step_by_step_ends_at_the_photograph(
    hands: Hands, photograph: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    open_photograph(hands, photograph, monkeypatch)
    session = hands.shell.session
    at_first = session.desk
    draw_where_the_eye_rests(hands)
    lay_a_mat_round_the_picture(hands)
    build_the_frame(hands)
    measure_twice(hands)
    at_last = session.desk
    count = session.undo_stack.count()
    for _ in range(count):
        hands.click(hands.shell.job_line.undo)
    assert session.desk == at_first
    for _ in range(count):
        hands.click(hands.shell.job_line.redo)
    assert session.desk == at_last


def open_photograph(hands: Hands, photograph: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    answer(monkeypatch, "getOpenFileName", photograph)
    stage = hands.shell.stages.currentWidget()
    assert stage is not None
    button = next(
        button
        for button in stage.findChildren(QPushButton)
        if button.isVisible() and button.text() == "Open a photograph"
    )
    hands.click(button)
    hands.until(lambda: hands.shell.session.findings is not None)
    hands.rest()


def draw_where_the_eye_rests(hands: Hands) -> None:
    hands.go("read")
    step = hands.shell.steps["read"]
    assert isinstance(step, ReadStep)
    canvas = step.canvas
    assert canvas is not None
    place = canvas.place
    start, end = place.to_screen(0.35, 0.35), place.to_screen(0.65, 0.65)
    hands.qtbot.keyClick(canvas, Qt.Key.Key_E)
    hands.qtbot.mousePress(canvas, LEFT, pos=start.toPoint())
    hands.qtbot.mouseMove(canvas, end.toPoint())
    hands.qtbot.mouseRelease(canvas, LEFT, pos=end.toPoint())
    hands.until(lambda: bool(hands.shell.session.desk.regions))
    hands.rest()
    assert hands.shell.session.desk.regions[0].role is Role.FOCUS


def lay_a_mat_round_the_picture(hands: Hands) -> None:
    hands.go("choose")
    step = hands.shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    shelf = step.shelf_widget
    assert shelf is not None
    hands.until(lambda: shelf.model.rowCount() > 1)
    hands.click_first_sample(shelf.view)
    hands.qtbot.keyClick(shelf.view, Qt.Key.Key_Return)
    hands.rest()
    assert len(hands.shell.session.desk.laid) == 1


def build_the_frame(hands: Hands) -> None:
    hands.go("build")
    step = hands.shell.steps["build"]
    assert isinstance(step, BuildStep)
    stage, shelf = step.stage_widget, step.shelf_widget
    assert stage is not None
    assert shelf is not None
    fields = stage.begin.size_fields
    for field, text in ((fields.width_field, "12"), (fields.height_field, "9")):
        hands.qtbot.keyClicks(field.edit, text)
        hands.qtbot.keyClick(field.edit, Qt.Key.Key_Return)
        hands.rest()
    hands.click(stage.begin.build)
    from framing_palette.catalogue import Kind

    samples = shelf.samples
    for kind in (Kind.MAT, Kind.MOULDING):
        hands.click(samples.kinds.chips[kind])
        hands.until(lambda: samples.model.rowCount() > 1)
        hands.click_first_sample(samples.view)
        button = samples.controls["add" if kind is Kind.MAT else "use"]
        hands.click(button)
    design = building.design_in_hand(hands.shell.session)
    assert design is not None
    assert design.moulding is not None
    hands.qtbot.keyClick(stage.section, Qt.Key.Key_Down)  # from the frame to what lies in it
    for _ in range(2):
        hands.qtbot.keyClick(stage.section, Qt.Key.Key_Down)
    hands.qtbot.keyClick(stage.section, Qt.Key.Key_Right)
    hands.rest()


def measure_twice(hands: Hands) -> None:
    hands.go("measure")
    step = hands.shell.steps["measure"]
    assert isinstance(step, MeasureStep)
    stage, shelf = step.stage_widget, step.shelf_widget
    assert stage is not None
    assert shelf is not None
    hands.fill(stage.cards[0], "12", "9", "AB")
    hands.fill(stage.cards[1], "12 1/32", "9", "CD")
    assert stage.verdict.text() == "They agree."
    hands.click(shelf.rows[0].how)
    assert shelf.rows[0].sums.isVisible()


def agree_and_save_papers(
    hands: Hands, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> tuple[Path, Path]:
    hands.go("agree")
    step = hands.shell.steps["agree"]
    assert isinstance(step, AgreeStep)
    stage, shelf = step.stage_widget, step.shelf_widget
    assert stage is not None
    assert shelf is not None
    hands.qtbot.keyClicks(shelf.edits["name"], "Ada Example")
    hands.qtbot.keyClick(shelf.edits["name"], Qt.Key.Key_Return)
    hands.click(stage.board.cards[0].choose)
    written = []
    for view in ("proposal", "ticket"):
        hands.click(stage.turned.chips[view])
        hands.until(shelf.save.isEnabled)
        path = folder / f"{view}.pdf"
        answer(monkeypatch, "getSaveFileName", path)
        hands.click(shelf.save)
        hands.until(path.exists)
        written.append(path)
    hands.click(shelf.status.chips[Status.WORKSHOP])
    return written[0], written[1]


def save_the_job(hands: Hands, folder: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    path = folder / "boat.framejob"
    answer(monkeypatch, "getSaveFileName", path)
    with hands.qtbot.waitActive(hands.shell):
        hands.shell.activateWindow()
    control = Qt.KeyboardModifier.ControlModifier
    hands.qtbot.keyClick(hands.shell, Qt.Key.Key_S, control)
    hands.until(path.exists)
    hands.rest()
    return path
