"""The look: one style sheet and one palette made from the tokens, and the type."""

import sys

from PySide6.QtCore import QSettings, Qt
from PySide6.QtGui import QColor, QFont, QFontDatabase, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication, QStyleFactory

from framing_palette.window.tokens import (
    BODY,
    DARK,
    DISPLAY,
    HEADING,
    LIGHT,
    SMALL,
    THEMES,
    Tokens,
)

AS_SYSTEM = "system"

_LINUX_FAMILIES = ["Inter", "Noto Sans", "Cantarell", "Ubuntu", "Open Sans", "DejaVu Sans"]


def tokens_named(name: str) -> Tokens:
    """Return a theme by name; ``system`` follows the desktop's own choice."""
    if name in THEMES:
        return THEMES[name]
    scheme = QGuiApplication.styleHints().colorScheme()
    return DARK if scheme is Qt.ColorScheme.Dark else LIGHT


def put_on(app: QApplication, tokens: Tokens) -> None:
    """Give the whole program one theme."""
    app.setStyle(QStyleFactory.create("Fusion"))
    app.setFont(type_font(BODY))
    app.setPalette(palette_of(tokens))
    app.setStyleSheet(style_sheet(tokens))
    app.setProperty("theme", tokens.name)


def type_font(pixels: int, *, strong: bool = False) -> QFont:
    """Return the one family of the interface at one of its sizes."""
    if sys.platform.startswith("linux"):
        font = QFont()
        font.setFamilies(_LINUX_FAMILIES)
    else:
        font = QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont)
    font.setPixelSize(pixels)
    font.setWeight(QFont.Weight.DemiBold if strong else QFont.Weight.Normal)
    font.setStyleStrategy(QFont.StyleStrategy.PreferAntialias)
    return font


def palette_of(tokens: Tokens) -> QPalette:
    """Return the palette that painted widgets read their greys from."""
    palette = QPalette()
    role = QPalette.ColorRole
    for name, tone in (
        (role.Window, tokens.panel),
        (role.WindowText, tokens.ink),
        (role.Base, tokens.field),
        (role.AlternateBase, tokens.chrome),
        (role.Text, tokens.ink),
        (role.PlaceholderText, tokens.quiet_ink),
        (role.Button, tokens.panel),
        (role.ButtonText, tokens.ink),
        (role.BrightText, tokens.chosen_ink),
        (role.Light, tokens.hover),
        (role.Midlight, tokens.pressed),
        (role.Mid, tokens.line),
        (role.Dark, tokens.strong_line),
        (role.Shadow, tokens.ring_dark),
        (role.Highlight, tokens.chosen),
        (role.HighlightedText, tokens.chosen_ink),
        (role.ToolTipBase, tokens.chosen),
        (role.ToolTipText, tokens.chosen_ink),
        (role.Link, tokens.ink),
        (role.LinkVisited, tokens.ink),
        (role.Accent, tokens.chosen),
    ):
        palette.setColor(name, QColor(tone))
    for name in (role.WindowText, role.Text, role.ButtonText):
        palette.setColor(QPalette.ColorGroup.Disabled, name, QColor(tokens.faint_ink))
    return palette


def style_sheet(tokens: Tokens) -> str:
    """Return the style sheet of one theme."""
    facts = {name: getattr(tokens, name) for name in Tokens.__slots__}
    return _SHEET % {**facts, "small": SMALL, "body": BODY, "heading": HEADING, "display": DISPLAY}


def is_motion_wanted(settings: QSettings) -> bool:
    """Tell whether cross-fades may be shown."""
    return not settings.value("calm/reduced_motion", defaultValue=False, type=bool)


_SHEET = """
QWidget#shell, QWidget#panel, QDialog { background: %(panel)s; }
QWidget#chrome { background: %(chrome)s; }
QFrame#ruleAcross { background: %(line)s; min-height: 1px; max-height: 1px; border: none; }
QFrame#ruleDown { background: %(line)s; min-width: 1px; max-width: 1px; border: none; }
QLabel { background: transparent; }
QLabel[tone="quiet"] { color: %(quiet_ink)s; }
QLabel[textSize="small"] { font-size: %(small)spx; }
QLabel[textSize="heading"] { font-size: %(heading)spx; font-weight: 600; }
QLabel[textSize="display"] { font-size: %(display)spx; font-weight: 600; }
QLabel[weight="strong"] { font-weight: 600; }

QPushButton {
  background: %(field)s; border: 1px solid %(strong_line)s; border-radius: 4px;
  padding: 0 11px; min-height: 38px; font-size: %(body)spx;
}
QPushButton:hover { background: %(hover)s; }
QPushButton:pressed { background: %(pressed)s; }
QPushButton:disabled { color: %(faint_ink)s; border-color: %(line)s; background: transparent; }
QPushButton[rank="first"] {
  background: %(chosen)s; color: %(chosen_ink)s; border-color: %(chosen)s;
}
QPushButton[rank="first"]:disabled {
  background: transparent; color: %(faint_ink)s; border-color: %(line)s;
}
QPushButton[rank="quiet"] { background: transparent; border-color: transparent; padding: 0 8px; }
QPushButton[rank="quiet"]:hover { background: %(hover)s; }
QPushButton[rank="quiet"]:pressed { background: %(pressed)s; }

QLineEdit, QPlainTextEdit, QComboBox, QSpinBox, QDoubleSpinBox {
  background: %(field)s; border: 1px solid %(strong_line)s; border-radius: 4px;
  padding: 0 10px; min-height: 38px; font-size: %(body)spx;
  selection-background-color: %(chosen)s; selection-color: %(chosen_ink)s;
  color: %(ink)s; placeholder-text-color: %(quiet_ink)s;
}
QPlainTextEdit { padding: 6px 8px; }
QLineEdit:disabled { color: %(faint_ink)s; border-color: %(line)s; background: transparent; }
QLineEdit[rank="quiet"] {
  border-color: %(line)s; background: %(panel)s; min-height: 30px; font-size: %(small)spx;
}
QLineEdit[rank="quiet"]:focus { border-color: %(strong_line)s; }
QComboBox::drop-down { border: none; width: 28px; }
QComboBox::down-arrow { image: none; }
QComboBox QAbstractItemView {
  background: %(field)s; border: 1px solid %(strong_line)s; outline: none;
  selection-background-color: %(chosen)s; selection-color: %(chosen_ink)s;
}
QComboBox QAbstractItemView::item { min-height: 36px; padding: 0 8px; }

QAbstractItemView { background: transparent; border: none; outline: none; }
QHeaderView { background: transparent; border: none; }
QHeaderView::section {
  background: %(panel)s; color: %(quiet_ink)s; border: none;
  border-bottom: 1px solid %(line)s; padding: 4px 8px 4px 2px; font-size: %(small)spx;
}
QScrollArea, QScrollArea > QWidget > QWidget { background: transparent; border: none; }
QScrollBar:vertical { background: transparent; width: 12px; margin: 0; }
QScrollBar::handle:vertical {
  background: %(strong_line)s; border-radius: 2px; min-height: 32px; margin: 2px 4px;
}
QScrollBar::handle:vertical:hover {
  background: %(quiet_ink)s; margin: 2px 3px; border-radius: 3px;
}
QScrollBar:horizontal { background: transparent; height: 12px; margin: 0; }
QScrollBar::handle:horizontal {
  background: %(strong_line)s; border-radius: 2px; min-width: 32px; margin: 4px 2px;
}
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; border: none; background: none; }
QScrollBar::add-page, QScrollBar::sub-page { background: none; }

QSlider { min-height: 40px; }
QSlider::groove:horizontal { height: 2px; background: %(strong_line)s; }
QSlider::handle:horizontal {
  width: 16px; height: 16px; margin: -8px 0; border-radius: 9px;
  background: %(field)s; border: 2px solid %(ink)s;
}
QSlider::handle:horizontal:hover { background: %(hover)s; }

QToolTip {
  background: %(chosen)s; color: %(chosen_ink)s; border: 1px solid %(chosen)s;
  padding: 6px 8px; font-size: %(small)spx;
}
QMenu { background: %(field)s; border: 1px solid %(strong_line)s; padding: 4px 0; }
QMenu::item { min-height: 36px; padding: 0 24px 0 16px; }
QMenu::item:selected { background: %(chosen)s; color: %(chosen_ink)s; }
QMenu::item:disabled { color: %(faint_ink)s; }
QMenu::separator { height: 1px; background: %(line)s; margin: 4px 0; }
"""
