"""Contrast of the text that is on the screen, measured from the pixels of both themes.

Web Content Accessibility Guidelines 2.2 (W3C, 2023), success criterion 1.4.3: text at least 4.5 to
1 to its ground. What is switched off is no part of it, as there.
"""

from collections.abc import Iterator

import numpy as np
import pytest
from numpy.typing import NDArray
from PySide6.QtCore import QPoint, QRect
from PySide6.QtGui import QImage, QPalette
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from framing_palette.colour import srgb_to_linear
from framing_palette.window import building
from framing_palette.window.controls import ElidedWords
from framing_palette.window.shell import Shell
from framing_palette.window.theme import palette_of, put_on, tokens_named
from tests.window.buildable import BUILDABLE

ROLE = QPalette.ColorRole
THEMES = pytest.mark.parametrize("theme", ["light", "dark"])
LEAST = 4.5
INKS = {
    ROLE.WindowText: (ROLE.Window, ROLE.Base, ROLE.AlternateBase, ROLE.Light, ROLE.Midlight),
    ROLE.Text: (ROLE.Base, ROLE.AlternateBase),
    ROLE.ButtonText: (ROLE.Button, ROLE.Light, ROLE.Midlight),
    ROLE.PlaceholderText: (ROLE.Window, ROLE.Base, ROLE.AlternateBase),
    ROLE.HighlightedText: (ROLE.Highlight,),
    ROLE.ToolTipText: (ROLE.ToolTipBase,),
    ROLE.Link: (ROLE.Window, ROLE.Base),
}


def luminances(levels: NDArray[np.uint8]) -> NDArray[np.float64]:
    return np.asarray(srgb_to_linear(levels / 255.0) @ np.array([0.2126, 0.7152, 0.0722]))


def contrast(first: float, second: float) -> float:
    return (max(first, second) + 0.05) / (min(first, second) + 0.05)


@THEMES
def test_every_ink_of_the_palette_stands_out_from_its_grounds(theme: str, app: object) -> None:
    palette = palette_of(tokens_named(theme))
    for group in (QPalette.ColorGroup.Active, QPalette.ColorGroup.Inactive):
        for ink, grounds in INKS.items():
            for ground in grounds:
                pair = [palette.color(group, role) for role in (ink, ground)]
                levels = np.array([[c.red(), c.green(), c.blue()] for c in pair], dtype=np.uint8)
                assert contrast(*luminances(levels)) >= LEAST, (group, ink, ground)


@pytest.fixture
def filled(open_shell: Shell, qtbot: QtBot) -> Iterator[Shell]:
    shell = open_shell
    shell.show()
    shell.session.assign("catalogue", BUILDABLE)
    qtbot.waitUntil(lambda: not shell.runner.is_busy(), timeout=20_000)
    building.begin_design(shell.session, ("pale-sky", "black-flat"))
    yield shell
    put_on_theme("light")


def put_on_theme(theme: str) -> None:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    put_on(app, tokens_named(theme))


def test_every_word_on_every_step_stands_out_as_it_is_drawn(filled: Shell, qtbot: QtBot) -> None:
    measured = dict[str, float]()
    for theme in ("light", "dark"):
        put_on_theme(theme)
        for step in filled.steps:
            filled.go(step)
            qtbot.waitUntil(lambda: not filled.runner.is_busy(), timeout=20_000)
            measured |= measured_at(filled, f"{theme} {step}")
    assert len(measured) > 200
    assert {name: round(value, 2) for name, value in measured.items() if value < LEAST} == {}


@THEMES
def test_a_word_in_the_ink_of_what_is_switched_off_would_be_found_out(
    theme: str, app: object, qtbot: QtBot
) -> None:
    tokens = tokens_named(theme)
    label = QLabel("Sight size")
    qtbot.addWidget(label)
    label.setStyleSheet(f"color: {tokens.faint_ink}; background: {tokens.panel}")
    label.resize(120, 40)
    assert 1.5 < contrast_in(pixels_of(label), label.rect()) < LEAST


def measured_at(shell: Shell, where: str) -> dict[str, float]:
    """Return the contrast of every word that is seen now."""
    pixels = pixels_of(shell)
    boxes = {widget: seen_box(shell, widget) for widget in texts_in(shell)}
    return {
        f"{where}: {type(widget).__name__} {widget.property('text')}": contrast_in(pixels, box)
        for widget, box in boxes.items()
        if box.width() > 8 and box.height() > 8
    }


def pixels_of(widget: QWidget) -> NDArray[np.uint8]:
    image = widget.grab().toImage().convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), -1)
    return rows[:, : image.width() * 3].reshape(image.height(), image.width(), 3).copy()


def texts_in(shell: Shell) -> list[QWidget]:
    """Return what shows words, is switched on and is not hidden."""
    found = [
        widget
        for kind in (QLabel, QLineEdit, QAbstractButton, ElidedWords)
        for widget in shell.findChildren(kind)
        if widget.isVisible() and widget.isEnabled()
    ]
    return [widget for widget in found if isinstance(widget, ElidedWords) or says(widget)]


def says(widget: QWidget) -> bool:
    text = widget.property("text") or widget.property("placeholderText")
    return bool(str(text or "").strip())


def seen_box(shell: Shell, widget: QWidget) -> QRect:
    """Return where in the window a widget is seen."""
    part = widget.visibleRegion().boundingRect()
    return part.translated(widget.mapTo(shell, QPoint(0, 0)))


def contrast_in(pixels: NDArray[np.uint8], box: QRect) -> float:
    """Return the contrast of the commonest tone with the one that is farthest from it."""
    inside = pixels[box.top() + 2 : box.bottom() - 1, box.left() + 2 : box.right() - 1]
    tones, counts = np.unique(inside.reshape(-1, 3), axis=0, return_counts=True)
    if len(tones) < 2:
        return float("inf")  # an empty line
    light = luminances(tones)
    ground = float(light[int(np.argmax(counts))])
    return max(contrast(ground, float(tone)) for tone in light)
