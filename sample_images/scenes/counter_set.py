"""What lies on the shop counter, where the lamp hangs and where the camera stands.

Counter coordinates are millimetres: x to the right, y toward the viewer, z up, from
the upper left corner of the picture.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from sample_images.materials import spectral
from sample_images.materials.pigment import Image, to_linear

if TYPE_CHECKING:
    from sample_images.materials.noise import Field

WIDTH_PX, HEIGHT_PX = 3000, 2100
LAMP_K, BALANCE_K = 3200.0, 3900.0
LAMP_MM = np.array([820.0, -420.0, 1000.0])
FILL = 0.30
EYE_MM, TARGET_MM = np.array([400.0, 900.0, 1420.0]), np.array([458.0, 206.0, 0.0])
FOCAL_PX = 4820.0
PATCH_MM, GAP_MM, RIM_MM = 40.0, 4.0, 9.0
PANEL_MM = 4.0
GREY = 0.18
Points = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Card:
    """A flat thing on the counter: its upper left corner, turn, size (mm) and surface."""

    left_mm: float
    top_mm: float
    turn_deg: float
    width_mm: float
    height_mm: float
    surface: Image  # linear camera values without light falloff
    lift_mm: float = 0.0

    def corners(self) -> Points:
        """(4, 3) corners in the counter's millimetres, clockwise from the upper left."""
        flat = np.array([(0, 0), (1, 0), (1, 1), (0, 1)]) * (self.width_mm, self.height_mm)
        return self.on_table(flat)

    def on_table(self, flat: Points) -> Points:
        """Places on the card (mm from its corner) as (n, 3) places on the counter."""
        c, s = np.cos(np.deg2rad(self.turn_deg)), np.sin(np.deg2rad(self.turn_deg))
        turned = flat @ np.array([[c, s], [-s, c]]) + (self.left_mm, self.top_mm)
        return np.column_stack([turned, np.full(len(flat), self.lift_mm)])


def things(
    art_srgb: NDArray[np.uint8],
    art_mm: tuple[float, float],
    device: spectral.Camera,
    lamp: spectral.Spectra,
    paint: Points,
) -> list[Card]:
    art = to_linear(art_srgb.astype(np.float32) / 255) @ paint.astype(np.float32)
    chart, (chart_w, chart_h) = _chart(device, lamp)
    grey = device.response(lamp, np.full(len(spectral.WAVELENGTHS), GREY)).astype(np.float32)
    return [
        Card(642.0, 14.0, 1.6, chart_w, chart_h, chart, 1.0),
        Card(690.0, 262.0, -3.5, 150.0, 105.0, np.broadcast_to(grey, (105, 150, 3)).copy(), 1.0),
        Card(0.0, 0.0, 0.0, *art_mm, art, PANEL_MM),
    ]


def _chart(device: spectral.Camera, lamp: spectral.Spectra) -> tuple[Image, tuple[float, float]]:
    """Four rows of six patches on a dark card, 8 samples a millimetre."""
    step = PATCH_MM + GAP_MM
    size = (6 * step + GAP_MM + 2 * RIM_MM, 4 * step + GAP_MM + 2 * RIM_MM)
    dark = device.response(lamp, np.full(len(spectral.WAVELENGTHS), 0.021)).astype(np.float32)
    per_mm = 8
    card = np.broadcast_to(dark, (round(size[1] * per_mm), round(size[0] * per_mm), 3)).copy()
    for index, spectrum in enumerate(spectral.patch_spectra().values()):
        left, top = patch_corner(index)
        rows = slice(round(top * per_mm), round((top + PATCH_MM) * per_mm))
        columns = slice(round(left * per_mm), round((left + PATCH_MM) * per_mm))
        card[rows, columns] = device.response(lamp, spectrum)
    return card, size


def patch_corner(index: int) -> tuple[float, float]:
    row, column = divmod(index, 6)
    step = PATCH_MM + GAP_MM
    return RIM_MM + GAP_MM + column * step, RIM_MM + GAP_MM + row * step


def projection(scale: float) -> Points:
    """(3, 4) projection from counter millimetres to pixels."""
    ahead = TARGET_MM - EYE_MM
    ahead = ahead / np.linalg.norm(ahead)
    right = np.cross(np.array([0.0, 0.0, 1.0]), ahead)  # y comes toward the viewer
    right = right / np.linalg.norm(right)
    turn = np.stack([right, np.cross(right, ahead), ahead])
    lens = np.array(
        [
            [FOCAL_PX * scale, 0, WIDTH_PX * scale / 2],
            [0, FOCAL_PX * scale, HEIGHT_PX * scale / 2],
            [0, 0, 1],
        ]
    )
    return lens @ np.column_stack([turn, -turn @ EYE_MM])


def projected(view: Points, places: Points) -> Points:
    """(n, 2) pixels of (n, 3) places in millimetres."""
    seen = np.column_stack([places, np.ones(len(places))]) @ view.T
    return seen[:, :2] / seen[:, 2:]


def lamp_share(x_mm: Field, y_mm: Field) -> Field:
    """Relative illuminance on the counter: one lamp by the inverse square and cosine, and fill."""
    dx, dy = x_mm - LAMP_MM[0], y_mm - LAMP_MM[1]
    distance = np.sqrt(dx**2 + dy**2 + LAMP_MM[2] ** 2)
    lamp = (LAMP_MM[2] / distance) ** 3
    return (FILL + (1 - FILL) * lamp).astype(np.float32)
