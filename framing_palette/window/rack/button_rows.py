"""Buttons side by side at the left, as wide as their words."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from framing_palette.window.tokens import GAP


def at_left(*buttons: QWidget) -> QHBoxLayout:
    """Return a row of buttons."""
    row = QHBoxLayout()
    row.setSpacing(GAP)
    for button in buttons:
        row.addWidget(button)
    row.addStretch(1)
    return row
