"""The plane on the screen: where a*, b* lies in pixels, and how tiles look at a zoom."""

from dataclasses import dataclass, replace

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize

from framing_palette.arrays import Float64Array

FARTHEST, CLOSEST = 1.2, 120.0
"""Pixels for one unit of a* or b*."""

_TILE_SMALLEST, _TILE_LARGEST = 9.0, 64.0
TRUE_FROM = 30.0
"""Side of a tile, in pixels, from which it shows the surface of its sample."""


@dataclass(frozen=True, slots=True)
class Plane:
    """A view of the plane: a* to the right, b* upward.

    Parameters
    ----------
    a, b
        What lies in the middle.
    scale
        Pixels for one unit.
    width, height
        Of the view, in pixels.
    """

    a: float = 0.0
    b: float = 0.0
    scale: float = 4.0
    width: float = 640.0
    height: float = 480.0

    @property
    def tile(self) -> float:
        """Side of a tile in pixels: it grows more slowly than the distances."""
        return float(min(_TILE_LARGEST, max(_TILE_SMALLEST, 4.6 * self.scale**0.62)))

    def at(self, a: float, b: float) -> QPointF:
        """Return where a colour lies on the screen."""
        return QPointF(
            self.width / 2 + (a - self.a) * self.scale, self.height / 2 - (b - self.b) * self.scale
        )

    def places(self, lab: Float64Array) -> Float64Array:
        """Return where colours lie on the screen, shape (n, 2)."""
        x = self.width / 2 + (lab[:, 1] - self.a) * self.scale
        y = self.height / 2 - (lab[:, 2] - self.b) * self.scale
        return np.column_stack([x, y])

    def under(self, point: QPointF) -> tuple[float, float]:
        """Return a*, b* under a point of the screen."""
        return (
            self.a + (point.x() - self.width / 2) / self.scale,
            self.b - (point.y() - self.height / 2) / self.scale,
        )

    def resized(self, size: QSize) -> "Plane":
        """Return the same view in another size."""
        return replace(self, width=float(size.width()), height=float(size.height()))

    def zoomed(self, factor: float, about: QPointF) -> "Plane":
        """Return a closer or farther view; what lies under the point stays there."""
        a, b = self.under(about)
        scale = min(CLOSEST, max(FARTHEST, self.scale * factor))
        share = self.scale / scale
        return replace(self, a=a + (self.a - a) * share, b=b + (self.b - b) * share, scale=scale)

    def moved(self, dx: float, dy: float) -> "Plane":
        """Return the view pushed by pixels."""
        return replace(self, a=self.a - dx / self.scale, b=self.b + dy / self.scale)

    def showing(self, lab: Float64Array, *, margin: float = 48.0) -> "Plane":
        """Return the view that just shows some colours; nothing to show shows the middle."""
        if not len(lab):
            return replace(self, a=0.0, b=0.0, scale=4.0)
        low, high = lab[:, 1:].min(axis=0), lab[:, 1:].max(axis=0)
        room = np.array([max(40.0, self.width - 2 * margin), max(40.0, self.height - 2 * margin)])
        scale = float(np.min(room / np.maximum(high - low, 4.0)))
        a, b = ((low + high) / 2).tolist()
        return replace(self, a=a, b=b, scale=min(CLOSEST, max(FARTHEST, scale)))

    def placed_in(self, other: "Plane") -> QRectF:
        """Return where this view's whole surface lies on the screen of another view."""
        corner = self.under(QPointF(0, 0))
        share = other.scale / self.scale
        return QRectF(
            other.at(*corner), QRectF(0, 0, self.width * share, self.height * share).size()
        )
