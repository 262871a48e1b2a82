"""The whole job by keys alone: no pointer, from an open picture to papers on the disk.

Operable by keyboard, and no trap: Web Content Accessibility Guidelines 2.2 (W3C, 2023), success
criteria 2.1.1 and 2.1.2.
"""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QFileDialog, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Kind
from framing_palette.units import Length
from framing_palette.window import building
from framing_palette.window.shell import Shell
from framing_palette.window.steps.agree import AgreeStep
from framing_palette.window.steps.build import BuildStep
from framing_palette.window.steps.choose import ChooseStep
from framing_palette.window.steps.measure import MeasureStep
from tests.window.buildable import BUILDABLE
from tests.window.conftest import BOAT, make_picture, on_the_desk

inch = Length.inches
KEY = Qt.Key
PLAIN = Qt.KeyboardModifier.NoModifier
CONTROL = Qt.KeyboardModifier.ControlModifier
MOST_TABS = 90
STEPS = ("intake", "read", "choose", "build", "measure", "agree")


class Watch(QObject):
    """Counts presses of the pointer, and windows that come up beside the shell and take the keys."""

    def __init__(self) -> None:
        super().__init__()
        self.presses = 0
        self.strangers: list[QObject] = []

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        is_window = isinstance(watched, QWidget) and watched.isWindow()
        if is_window and event.type() is QEvent.Type.Show and not isinstance(watched, Shell):
            self.strangers.append(watched)
        self.presses += event.type() is QEvent.Type.MouseButtonPress
        return False


class Keys:
    """Presses keys where the focus is, as a keyboard does."""

    def __init__(self, shell: Shell, qtbot: QtBot) -> None:
        self.shell = shell
        self.qtbot = qtbot

    def press(self, key: Qt.Key, keys: Qt.KeyboardModifier = PLAIN) -> None:
        self.qtbot.keyClick(self.focus(), key, keys)
        self.rest()

    def type(self, text: str) -> None:
        edit = self.focus()
        assert isinstance(edit, QLineEdit)
        self.press(KEY.Key_A, CONTROL)
        self.qtbot.keyClicks(edit, text)
        assert edit.text() == text

    def focus(self) -> QWidget:
        return QApplication.focusWidget() or self.shell

    def rest(self) -> None:
        self.until(lambda: not self.shell.runner.is_busy())

    def until(self, is_so: Callable[[], bool]) -> None:
        self.qtbot.waitUntil(is_so, timeout=12_000)

    def go(self, key: str) -> None:
        self.press(Qt.Key(KEY.Key_1 + STEPS.index(key)), CONTROL)
        self.until(lambda: self.shell.session.step == key)
        self.rest()

    def tab_to(self, wanted: QWidget) -> None:
        """Go on with Tab until the focus is where it is wanted; once round is enough."""
        self.until(wanted.isEnabled)
        for _ in range(MOST_TABS):
            if QApplication.focusWidget() is wanted:
                assert wanted.isVisible()
                return
            self.qtbot.keyClick(self.focus(), KEY.Key_Tab)
        raise AssertionError(f"Tab never comes to {wanted.accessibleName() or wanted!r}")

    def choose(self, chips: Mapping[Any, QAbstractButton], wanted: object) -> None:
        """Go to a row of chips with Tab, and along it with the arrow, as in any such row."""
        self.tab_to(next(chip for chip in chips.values() if chip.isChecked()))
        for _ in chips:
            if not chips[wanted].hasFocus():
                self.press(KEY.Key_Right)
        assert chips[wanted].hasFocus()
        assert chips[wanted].isChecked()

    def push(self, button: QWidget) -> None:
        self.tab_to(button)
        self.press(KEY.Key_Space)


@pytest.fixture
def keys(shell: Shell, qtbot: QtBot) -> Keys:
    shell.session.assign("catalogue", BUILDABLE)
    shell.show()
    with qtbot.waitActive(shell):
        shell.activateWindow()
    with qtbot.waitSignal(shell.session.ranked_changed, timeout=20_000):
        shell.errands.take_job(on_the_desk(make_picture(), (BOAT,)))
    hands = Keys(shell, qtbot)
    hands.rest()
    return hands


@pytest.mark.whole_job
def test_a_job_goes_from_an_open_picture_to_its_papers_by_keys_alone(
    keys: Keys, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    watch = Watch()
    app = QApplication.instance()
    assert app is not None
    app.installEventFilter(watch)
    try:
        for step in STEPS:
            keys.go(step)
        lay_the_first_sample_round(keys)
        begin_a_design_and_change_a_width(keys)
        measure_twice(keys)
        papers = agree_and_write_papers(keys, tmp_path, monkeypatch)
    finally:
        app.removeEventFilter(watch)
    assert watch.presses == 0
    assert watch.strangers == []

    proposal, ticket = (
        "\n".join(page.extract_text() for page in PdfReader(path).pages) for path in papers
    )
    assert "Ada Example" in proposal
    assert "AB" in ticket
    assert "CD" in ticket


def lay_the_first_sample_round(keys: Keys) -> None:
    keys.go("choose")
    step = keys.shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    shelf = step.shelf_widget
    assert shelf is not None
    keys.until(lambda: shelf.model.rowCount() > 1)
    keys.push(shelf.chips[Kind.MAT])
    keys.tab_to(shelf.view)
    keys.press(KEY.Key_Down)
    keys.press(KEY.Key_Down)
    chosen = keys.shell.session.chosen_code
    assert BUILDABLE[chosen].kind is Kind.MAT
    keys.press(KEY.Key_Return)
    assert keys.shell.session.desk.laid == (chosen,)


def begin_a_design_and_change_a_width(keys: Keys) -> None:
    keys.go("build")
    step, session = keys.shell.steps["build"], keys.shell.session
    assert isinstance(step, BuildStep)
    stage, shelf = step.stage_widget, step.shelf_widget
    assert stage is not None
    assert shelf is not None
    fields = stage.begin.size_fields
    for field, text in ((fields.width_field, "12"), (fields.height_field, "9")):
        keys.tab_to(field.edit)
        keys.type(text)
    keys.press(KEY.Key_Return)
    keys.push(stage.begin.build)
    samples = shelf.samples
    keys.choose(samples.kinds.chips, Kind.MOULDING)
    keys.until(lambda: samples.model.rowCount() > 1)
    keys.tab_to(samples.view)
    keys.press(KEY.Key_Down)
    keys.push(samples.controls["use"])
    design = building.design_in_hand(session)
    assert design is not None
    assert design.moulding is not None
    assert design.art.width == inch(12)

    keys.tab_to(stage.section)
    for _ in range(8):
        if session.chosen_part == "layer 1":
            break
        keys.press(KEY.Key_Down)
    assert session.chosen_part == "layer 1"
    before = design.layers[0]
    keys.press(KEY.Key_Right)
    changed = building.design_in_hand(session)
    assert changed is not None
    assert changed.layers[0] != before
    keys.press(KEY.Key_Z, CONTROL)
    back = building.design_in_hand(session)
    assert back is not None
    assert back.layers[0] == before
    keys.press(KEY.Key_Z, CONTROL | Qt.KeyboardModifier.ShiftModifier)
    assert building.design_in_hand(session) == changed


def measure_twice(keys: Keys) -> None:
    keys.go("measure")
    step = keys.shell.steps["measure"]
    assert isinstance(step, MeasureStep)
    stage = step.stage_widget
    assert stage is not None
    keys.tab_to(stage.cards[0].edits["width"])
    for card, width, initials in ((stage.cards[0], "12", "AB"), (stage.cards[1], "12", "CD")):
        assert keys.focus() is card.edits["width"]  # the second card takes the focus over
        for edit, text in (
            (card.edits["width"], width),
            (card.edits["height"], "9"),
            (card.initials, initials),
        ):
            keys.tab_to(edit)
            keys.type(text)
        keys.press(KEY.Key_Return)
    assert stage.verdict.text() == "They agree."


def agree_and_write_papers(
    keys: Keys, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> tuple[Path, ...]:
    keys.go("agree")
    step = keys.shell.steps["agree"]
    assert isinstance(step, AgreeStep)
    stage, shelf = step.stage_widget, step.shelf_widget
    assert stage is not None
    assert shelf is not None
    keys.tab_to(shelf.edits["name"])
    keys.type("Ada Example")
    keys.press(KEY.Key_Return)
    keys.push(stage.board.cards[0].choose)
    job = keys.shell.session.desk.job
    assert job is not None
    assert job.agreed is not None
    written = []
    for view in ("proposal", "ticket"):
        keys.choose(stage.turned.chips, view)
        assert stage.view == view
        path = folder / f"{view}.pdf"
        monkeypatch.setattr(
            QFileDialog, "getSaveFileName", lambda *_a, path=path, **_k: (str(path), "")
        )
        keys.push(shelf.save)
        keys.until(path.exists)
        written.append(path)
    return tuple(written)
