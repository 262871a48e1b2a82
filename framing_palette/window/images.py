"""From arrays to images that Qt can show, and the picture at many sizes."""

from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QImage

from framing_palette.arrays import Float32Array, UInt8Array

_SMALLEST_LEVEL = 256
_VEIL = 205
"""How dark the veil is where a colour is absent, of 255."""


def image_of(srgb_u8: UInt8Array) -> QImage:
    """Return sRGB pixels, shape (rows, columns, 3), as an image that owns its memory."""
    rows, columns = srgb_u8.shape[:2]
    pixels = np.empty((rows, columns, 4), dtype=np.uint8)
    pixels[..., :3] = srgb_u8[..., ::-1]
    pixels[..., 3] = 255
    image = QImage(pixels.data, columns, rows, columns * 4, QImage.Format.Format_RGB32)
    return image.copy()


@dataclass(frozen=True, slots=True)
class Pyramid:
    """The picture at full working size and at halves of it, so that any zoom is quick."""

    levels: tuple[QImage, ...]

    @property
    def size(self) -> QSize:
        """Size of the largest level in pixels."""
        return self.levels[0].size()

    def level_for(self, scale: float) -> QImage:
        """Return the smallest level that is not coarser than the screen at this scale."""
        best = self.levels[0]
        for level in self.levels[1:]:
            if level.width() < self.levels[0].width() * scale:
                break
            best = level
        return best


def pyramid_of(srgb_u8: UInt8Array) -> Pyramid:
    """Return the picture with its halves; takes a while, so call it off the interface thread."""
    levels = [image_of(srgb_u8)]
    while min(levels[-1].width(), levels[-1].height()) > 2 * _SMALLEST_LEVEL:
        levels.append(_halved(levels[-1]))
    return Pyramid(tuple(levels))


def dimming_of(presence: Float32Array) -> QImage:
    """Return a dark veil, dense where a colour is absent, shape (rows, columns), 0..1 presence."""
    rows, columns = presence.shape
    pixels = np.zeros((rows, columns, 4), dtype=np.uint8)
    pixels[..., 3] = np.round((1.0 - presence) * _VEIL)
    form = QImage.Format.Format_ARGB32_Premultiplied
    return QImage(pixels.data, columns, rows, columns * 4, form).copy()


def _halved(image: QImage) -> QImage:
    half = QSize((image.width() + 1) // 2, (image.height() + 1) // 2)
    smooth = Qt.TransformationMode.SmoothTransformation
    small = image.scaled(half, Qt.AspectRatioMode.IgnoreAspectRatio, smooth)
    return small.convertToFormat(QImage.Format.Format_RGB32)
