"""The swatch book: pictures of samples, plain at once and true as soon as they are drawn."""

from collections import OrderedDict
from dataclasses import dataclass, replace

from PySide6.QtCore import QObject, QPointF, QRect, QRectF, QSizeF, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QGuiApplication, QImage, QPainter, QPen

from framing_palette.arrays import UInt8Array
from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.errors import FramingPaletteError
from framing_palette.preview.swatches import Piece, flat_srgb_u8, swatch_srgb_u8
from framing_palette.window.images import image_of
from framing_palette.window.runner import Progress, Runner
from framing_palette.window.session import Session

_TOPIC = "swatches"
_MOST_IMAGES = 600
_BATCH = 12
_MOST_ORDERS = 64
_GATHER_MS = 15
MM_PER_INCH = 25.4

Key = tuple[str, Piece]


@dataclass(frozen=True, slots=True)
class _Order:
    sample: Sample
    piece: Piece


class SwatchBook(QObject):
    """Draws samples for every list and strip; each image is made once, off the interface thread."""

    arrived = Signal()

    def __init__(self, session: Session, runner: Runner) -> None:
        super().__init__(session)
        self._session = session
        self._runner = runner
        self._images: OrderedDict[Key, QImage] = OrderedDict()
        self._latest: dict[tuple[str, float, bool], QImage] = {}
        self._flat: dict[str, QColor] = {}
        self._orders: dict[Key, _Order] = {}
        self._gather = QTimer(self, interval=_GATHER_MS, singleShot=True)
        self._gather.timeout.connect(self._draw_ordered)
        session.catalogue_changed.connect(self.forget)

    def forget(self) -> None:
        """Throw every image away, because the catalogue is another one."""
        self._images.clear()
        self._latest.clear()
        self._flat.clear()
        self._orders.clear()
        self._runner.cancel(_TOPIC)

    def flat(self, sample: Sample) -> QColor:
        """Return the sample's mean colour."""
        if sample.code not in self._flat:
            self._flat[sample.code] = QColor(*flat_srgb_u8(sample))
        return self._flat[sample.code]

    def image(self, sample: Sample, piece: Piece) -> QImage | None:
        """Return a piece of a sample, or None now and ``arrived`` later."""
        key = (sample.code, piece)
        image = self._images.get(key)
        if image is not None:
            self._images.move_to_end(key)
            return image
        if key not in self._orders:
            self._orders[key] = _Order(sample, piece)
            while len(self._orders) > _MOST_ORDERS:
                del self._orders[next(iter(self._orders))]
            if not self._runner.is_busy(_TOPIC):
                self._gather.start()
        return None

    def image_or_like(self, sample: Sample, piece: Piece) -> QImage | None:
        """Return a piece, or the last one of another size until the right one is drawn."""
        return self.image(sample, piece) or self._latest.get(_form(sample.code, piece))

    def draw(self, painter: QPainter, box: QRect, sample: Sample) -> None:
        """Draw a swatch at life size, the whole face of what is wider than the box."""
        ratio = painter.device().devicePixelRatioF()
        size = QSizeF(box.size()) * ratio
        piece = Piece(
            width_px=round(size.width()),
            height_px=round(size.height()),
            px_per_mm=_swatch_scale(sample, size.height(), ratio),
            formed=sample.kind is not Kind.MAT,
        )
        image = self.image(sample, piece)
        if image is None:
            painter.fillRect(box, self.flat(sample))
        else:
            painter.drawImage(QRectF(box), image, QRectF(QPointF(0, 0), QSizeF(image.size())))
        painter.setPen(QPen(QColor(0, 0, 0, 40), 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(QRectF(box).adjusted(0.5, 0.5, -0.5, -0.5))

    def _draw_ordered(self) -> None:
        newest = list(self._orders.values())[-_BATCH:]
        if not newest:
            return
        catalogue = self._session.catalogue
        self._runner.start(
            _TOPIC,
            lambda progress: _drawn(newest, catalogue, progress),
            done=self._take,
            failed=self._give_up,
        )

    def _take(self, images: dict[Key, QImage]) -> None:
        for key, image in images.items():
            self._orders.pop(key, None)
            self._images[key] = image
            self._latest[_form(*key)] = image
        while len(self._images) > _MOST_IMAGES:
            self._images.popitem(last=False)
        self.arrived.emit()
        if self._orders:
            self._gather.start()

    def _give_up(self, error: Exception) -> None:
        self._orders.clear()
        self._session.assign("notice", str(error))


def _drawn(orders: list[_Order], catalogue: Catalogue, progress: Progress) -> dict[Key, QImage]:
    images: dict[Key, QImage] = {}
    for number, order in enumerate(orders):
        progress.tell(number / len(orders))
        images[(order.sample.code, order.piece)] = image_of(_pixels(order, catalogue))
    return images


def _pixels(order: _Order, catalogue: Catalogue) -> UInt8Array:
    try:
        return swatch_srgb_u8(order.sample, catalogue, order.piece)
    except FramingPaletteError:
        # The catalogue's check names a broken texture; here the plain surface must do.
        plain = replace(order.sample, texture_file="")
        return swatch_srgb_u8(plain, catalogue, order.piece)


def _form(code: str, piece: Piece) -> tuple[str, float, bool]:
    return code, piece.turn_deg, piece.formed


def _swatch_scale(sample: Sample, height_px: float, ratio: float) -> float:
    screen = QGuiApplication.primaryScreen()
    life_size = screen.logicalDotsPerInch() * ratio / MM_PER_INCH
    face_mm = sample.face.as_float_mm() if sample.face else 0.0
    return min(life_size, height_px / face_mm) if face_mm > 0 else life_size
