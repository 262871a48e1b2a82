"""A pane that shows a design as it will hang, drawn off the interface thread at the pane's size."""

from collections.abc import Callable
from dataclasses import dataclass
from threading import Lock

from PySide6.QtCore import QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QPalette, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from framing_palette.catalogue import Catalogue
from framing_palette.design import Design
from framing_palette.picture import Picture
from framing_palette.preview import Easel, Options, Wall, render
from framing_palette.window.errands import Errands
from framing_palette.window.greys import surround_color
from framing_palette.window.images import image_of
from framing_palette.window.languages import told as in_language
from framing_palette.window.runner import Progress
from framing_palette.window.session import Session
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import BODY, MARGIN, SMALL

_REST_MS = 40
_LEAST_PX = 48
_MARGIN = 0.07
_TURNING_LIGHTNESS = 55
_one_at_a_time = Lock()


@dataclass(frozen=True, slots=True, eq=False)
class _Order:
    """What is to be drawn."""

    design: Design
    picture: Picture
    catalogue: Catalogue
    size: QSize
    surround: int
    light: str


@dataclass(frozen=True, slots=True, eq=False)
class Rendered:
    """A drawn design, and what is to be said about the drawing."""

    image: QImage
    notices: tuple[str, ...]


class PreviewPane(QWidget):
    """Shows the newest drawing; while something is being changed, only the newest is drawn."""

    drawn = Signal()

    def __init__(
        self,
        session: Session,
        errands: Errands,
        topic: str,
        design: Callable[[], Design | None],
    ) -> None:
        super().__init__()
        self._session = session
        self._errands = errands
        self._topic = topic
        self._design = design
        self._easel = Easel()
        self._waits = False
        self.rendered: Rendered | None = None
        self.design_drawn: Design | None = None
        self.setMinimumSize(160, 120)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAccessibleName(self.tr("The framed picture"))
        self._soon = QTimer(self, interval=_REST_MS, singleShot=True)
        self._soon.timeout.connect(self._draw)
        for signal in (
            session.picture_changed,
            session.catalogue_changed,
            session.preferences_changed,
            session.light_changed,
        ):
            signal.connect(self.follow)

    def follow(self) -> None:
        """Draw the design as it is now, as soon as the one before is done."""
        if self._design() is None:
            self.rendered = self.design_drawn = None
            self.update()
        if not self._soon.isActive():
            self._soon.start()

    def showEvent(self, event: QShowEvent) -> None:
        """Draw what changed while nobody looked."""
        super().showEvent(event)
        self.follow()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw at the new size."""
        super().resizeEvent(event)
        self.follow()

    def sizeHint(self) -> QSize:
        """Ask for room."""
        return QSize(480, 400)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Put the drawing on the surround."""
        painter = QPainter(self)
        lightness = self._session.preferences.surround
        painter.fillRect(self.rect(), surround_color(lightness))
        painter.setPen(surround_color(98 if lightness < _TURNING_LIGHTNESS else 12))
        painter.setFont(type_font(BODY))
        if self.rendered is None:
            said = self.tr("The frame is being drawn.") if self._order() else ""
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignCenter, said)
            return
        image = self.rendered.image
        size = QSize(image.size() / image.devicePixelRatio())
        size = size.scaled(self.size(), Qt.AspectRatioMode.KeepAspectRatio)
        box = QRectF(
            (self.width() - size.width()) / 2,
            (self.height() - size.height()) / 2,
            size.width(),
            size.height(),
        )
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(box, image)
        self._paint_notices(painter)

    def _paint_notices(self, painter: QPainter) -> None:
        if self.rendered is None or not self.rendered.notices:
            return
        painter.setFont(type_font(SMALL))
        flags = Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap
        text = "\n".join(map(in_language, self.rendered.notices))
        room = self.rect().adjusted(MARGIN, MARGIN, -MARGIN, -MARGIN)
        box = painter.boundingRect(room, flags, text)
        box.moveBottom(room.bottom())
        palette = self.palette()
        painter.fillRect(box.adjusted(-8, -4, 8, 4), palette.color(QPalette.ColorRole.Window))
        painter.setPen(palette.color(QPalette.ColorRole.WindowText))
        painter.drawText(box, flags, text)

    def _order(self) -> _Order | None:
        session, design = self._session, self._design()
        if design is None or session.picture is None:
            return None
        ratio = self.devicePixelRatioF()
        size = QSize(round(self.width() * ratio), round(self.height() * ratio))
        return _Order(
            design,
            session.picture,
            session.catalogue,
            size,
            session.preferences.surround,
            session.light,
        )

    def _draw(self) -> None:
        order = self._order() if self.isVisible() else None
        if order is None or min(order.size.width(), order.size.height()) < _LEAST_PX:
            return
        if self._errands.runner.is_busy(self._topic):
            self._waits = True
            return
        easel, ratio = self._easel, self.devicePixelRatioF()
        self._errands.runner.start(
            self._topic,
            lambda progress: _rendered(order, easel, ratio, progress),
            done=lambda rendered: self._take(rendered, order.design),
            failed=self._fail,
        )

    def _take(self, rendered: Rendered, design: Design) -> None:
        self.rendered, self.design_drawn = rendered, design
        self.update()
        self.drawn.emit()
        self._go_on()

    def _fail(self, error: Exception) -> None:
        self._errands.tell(error)
        self._go_on()

    def _go_on(self) -> None:
        if self._waits:
            # Only the newest wish counts; those in between are never drawn.
            self._waits = False
            self._soon.start()


def _rendered(order: _Order, easel: Easel, ratio: float, progress: Progress) -> Rendered:
    progress.tell(0.0)
    lab = (float(order.surround), 0.0, 0.0)
    options = Options(
        wall=Wall(lab=lab, fall_off=0.0, dapple=0.0),
        margin=_MARGIN,
        height_px=order.size.height(),
        under=order.light,
    )
    with _one_at_a_time:  # several panes would only fight for the same cores
        done = render(
            order.design,
            order.picture,
            order.catalogue,
            width_px=order.size.width(),
            options=options,
            easel=easel,
        )
    image = image_of(done.srgb)
    image.setDevicePixelRatio(ratio)
    return Rendered(image, done.notices)
