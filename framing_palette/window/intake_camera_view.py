"""The live picture of the camera on the bench, with what can be done with it below."""

from functools import partial

from PySide6.QtCore import QPointF, QRectF, QSize, QSizeF, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from framing_palette.window.controls import push_button, words
from framing_palette.window.greys import surround_color
from framing_palette.window.intake_camera import IntakeCamera
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

_EDGE = 32.0


class IntakeCameraView(QWidget):
    """Shows the camera; Escape puts it away."""

    def __init__(self, session: Session, camera: IntakeCamera) -> None:
        super().__init__()
        self._session = session
        self._camera = camera
        self.live = _Live(session, camera)
        self.told = words(wrap=True)
        self.told.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.freeze = push_button(self.tr("Freeze"), rank="first")
        self.sheet = push_button(self.tr("This is the plain sheet"))
        self.another = push_button(self.tr("Another camera"))
        self.away = push_button(self.tr("Put the camera away"))
        self.freeze.clicked.connect(partial(camera.freeze, is_sheet=False))
        self.sheet.clicked.connect(camera.freeze_sheet)
        self.another.clicked.connect(camera.take_next)
        self.away.clicked.connect(camera.put_away)
        row = QHBoxLayout()
        row.setSpacing(GAP)
        row.addStretch(1)
        for button in (self.freeze, self.sheet, self.another, self.away):
            row.addWidget(button)
        row.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, MARGIN)
        column.setSpacing(MARGIN)
        column.addWidget(self.live, 1)
        foot = QVBoxLayout()
        foot.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 0)
        foot.setSpacing(GAP)
        foot.addWidget(self.told)
        foot.addLayout(row)
        column.addLayout(foot)
        camera.changed.connect(self._tell)
        self._tell()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Put the camera away with Escape."""
        if event.key() == Qt.Key.Key_Escape:
            self._camera.put_away()
        else:
            super().keyPressEvent(event)

    def _tell(self) -> None:
        camera = self._camera
        is_live = camera.image is not None
        begins = is_live and not camera.is_freezing and not self.freeze.isEnabled()
        self.freeze.setEnabled(is_live and not camera.is_freezing)
        if begins and self.isVisible():
            self.freeze.setFocus(Qt.FocusReason.OtherFocusReason)
        self.sheet.setEnabled(self.freeze.isEnabled())
        self.sheet.setVisible(self._session.packed is not None)
        self.another.setEnabled(not camera.is_freezing)
        if camera.is_freezing:
            said = self.tr("Keep everything still: {share} % of the frames are taken.").format(
                share=round(100 * camera.share)
            )
        elif not is_live:
            said = self.tr("Waiting for the camera.")
        else:
            said = in_language(camera.fault) or self.tr(
                "Freeze takes the mean of 16 frames, which has a quarter of their noise. Keep "
                "hands, art and lamps still."
            )
        self.told.setText(said)
        self.live.update()


class _Live(QWidget):
    """The picture alone on its surround."""

    def __init__(self, session: Session, camera: IntakeCamera) -> None:
        super().__init__()
        self._session = session
        self._camera = camera
        self.setMinimumSize(240, 160)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAccessibleName(self.tr("What the camera sees"))

    def sizeHint(self) -> QSize:
        """Ask for room."""
        return QSize(800, 520)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Let frames come in the size in which they are shown."""
        super().resizeEvent(event)
        room = QSizeF(self.width() - 2 * _EDGE, self.height() - 2 * _EDGE)
        self._camera.room = (room * self.devicePixelRatioF()).toSize().expandedTo(QSize(64, 64))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the last frame in the middle."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), surround_color(self._session.preferences.surround))
        image = self._camera.image
        if image is None:
            return
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        room = QRectF(self.rect()).adjusted(_EDGE, _EDGE, -_EDGE, -_EDGE)
        fit = QSizeF(image.size()).scaled(room.size(), Qt.AspectRatioMode.KeepAspectRatio)
        corner = room.center() - QPointF(fit.width() / 2, fit.height() / 2)
        painter.drawImage(QRectF(corner, fit), image)
