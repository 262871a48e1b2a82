"""Soft pastel on toothed paper: sticks catch the high fibres, fingers fill the low ones."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from sample_images.materials.brush import Brush, PaintLayer, cover
from sample_images.materials.curves import Points, filled, ribbon
from sample_images.materials.noise import Field, smoothstep
from sample_images.materials.pigment import Image, blend

if TYPE_CHECKING:
    from numpy.typing import NDArray


class ChalkSheet:
    """A sheet of paper, its tooth, and how far chalk has filled it."""

    def __init__(self, paper_srgb: Image, tooth: Field) -> None:
        self.colour = paper_srgb
        self._tooth = tooth
        self._filled = np.zeros(tooth.shape, np.float32)

    def smudge(self, target_srgb: Image, amount: Field) -> None:
        """Rub the target in with a finger: soft, and deeper into the tooth than a stick."""
        bite = np.clip(amount * (0.55 + 0.75 * self._tooth), 0, 1)
        self._lay(target_srgb, bite)

    def hatch(
        self,
        target_srgb: Image,
        angle: NDArray[np.float32],
        stick: Brush,
        rng: np.random.Generator,
        *,
        pressure: float,
        where: NDArray[np.float32] | None = None,
    ) -> None:
        """Strokes of a stick along the direction field; light pressure leaves the pits bare."""
        layer = PaintLayer(target_srgb)
        cover(layer, target_srgb, angle, stick, rng, where=where)
        self.press(layer, pressure)

    def press(self, layer: PaintLayer, pressure: float) -> None:
        """Bring the marks of a loose layer onto the sheet."""
        touch = np.clip(layer.height * 2.2, 0, 1)
        ground = self._tooth + 0.35 * self._filled
        bite = smoothstep(0.70 - pressure, 1.16 - pressure, ground + 0.22 * layer.height)
        self._lay(layer.colour, touch * bite)

    def contour(
        self, lines: list[Points], thick_px: list[float], colour: Image, *, pressure: float
    ) -> None:
        """Tapered strokes of a sharpened stick, `thick_px` wide at their middle."""
        mask = np.zeros(self._tooth.shape, np.float32)
        for line, thick in zip(lines, thick_px, strict=True):
            swell = np.sin(np.pi * np.linspace(0.04, 0.96, len(line))) ** 0.7
            np.maximum(mask, filled(mask.shape, ribbon(line, thick * swell), soft_px=0.7), out=mask)
        bite = smoothstep(0.62 - pressure, 1.12 - pressure, self._tooth)
        self._lay(colour, mask * bite)

    def dab(self, outlines: list[Points], colours: list[Image], *, pressure: float) -> None:
        """Blots of wet colour, one colour an outline (pixels)."""
        bite = smoothstep(0.62 - pressure, 1.12 - pressure, self._tooth)
        for outline, colour in zip(outlines, colours, strict=True):
            self._lay(colour, filled(bite.shape, outline, soft_px=0.6) * bite)

    def _lay(self, colour: Image, coverage: Field) -> None:
        self.colour = blend(self.colour, colour, coverage)
        self._filled = np.maximum(self._filled, coverage)
