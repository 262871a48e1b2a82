"""A line that says once, when the first picture lies on the desk, what a screen cannot show."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QHBoxLayout, QWidget

from framing_palette.window.controls import IconButton, words
from framing_palette.window.session import Session
from framing_palette.window.tokens import MARGIN

_LEAST_WORDS = 176


class ScreenBar(QWidget):
    """Stands at the foot of the stage until it was read; it never comes again."""

    check_wanted = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        row = QHBoxLayout(self)
        row.setContentsMargins(MARGIN, 0, 0, 0)
        row.setSpacing(4)
        self.said = words(
            self.tr(
                "A screen shows colour only approximately: confirm with the sample itself under "
                "good light. Sliding here spares delicate art."
            ),
            size="small",
            wrap=True,
        )
        self.said.setMinimumWidth(_LEAST_WORDS)
        self.check = IconButton("settings", self.tr("Check this screen"))
        self.close_button = IconButton("close", self.tr("Understood"))
        row.addWidget(self.said, 1)
        row.addWidget(self.check, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self.close_button, 0, Qt.AlignmentFlag.AlignVCenter)
        self.check.clicked.connect(self._check)
        self.close_button.clicked.connect(self._put_away)
        session.pyramid_changed.connect(self._follow)
        session.preferences_changed.connect(self._follow)
        self._follow()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ground."""
        QPainter(self).fillRect(self.rect(), self.palette().color(QPalette.ColorRole.Base))

    def _follow(self) -> None:
        has_picture = self._session.pyramid is not None
        self.setVisible(has_picture and not self._session.preferences.screen_told)

    def _check(self) -> None:
        self._put_away()
        self.check_wanted.emit()

    def _put_away(self) -> None:
        told = self._session.preferences.changed("screen_told", value=True)
        self._session.assign("preferences", told)
