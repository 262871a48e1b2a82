"""The sleeping greyhound: outlines of its parts and the light on them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import cv2
import numpy as np

from sample_images.materials.curves import Points, drawn, filled, ribbon, spline
from sample_images.materials.form import inflated, lit
from sample_images.materials.noise import Field, fractal, smoothstep
from sample_images.materials.pigment import Image, blend, ramp, rgb
from sample_images.scenes.greyhound_outline import PARTS, closed

if TYPE_CHECKING:
    from numpy.typing import NDArray

KEY = (-0.55, -0.75, 0.55)


COAT = [
    (0.00, "2e2834"),
    (0.16, "4a4048"),
    (0.34, "78665f"),
    (0.52, "a98c74"),
    (0.70, "cdb092"),
    (0.86, "e8d3b5"),
    (1.00, "f8ebd4"),
]


def whole_outline_mask(shape: tuple[int, int]) -> Field:
    """Coverage 0..1 of the whole dog."""
    mask = np.zeros(shape, np.float32)
    for part in PARTS:
        mask = np.maximum(mask, filled(shape, part.outline * shape[1]))
    return mask


def paint_body(picture: Image, rng: np.random.Generator) -> tuple[Image, Field]:
    """The dog modelled over the rug, and the tone 0..1 that it was painted with."""
    width = picture.shape[1]
    shape = picture.shape[:2]
    tone = np.full(shape, 0.5, np.float32)
    soft = max(1.0, width * 0.0010)
    for part in PARTS:
        outline = part.outline * width
        mask = filled(shape, outline, soft_px=soft)
        if part.melt < 0.01:
            tone = _occluded(tone, mask, width)
        height = inflated(shape, outline)
        light = lit(height, KEY, flatten=part.flatten)
        own = 0.16 + 0.74 * light + part.tone
        melted = smoothstep(0.45, 1.0, filled(shape, outline, soft_px=part.melt * width))
        tone = tone + (own - tone) * np.minimum(mask, melted)
    tone = _anatomy(tone, rng)
    dog = whole_outline_mask(shape)
    coat = ramp(np.clip(tone, 0, 1), COAT)
    coat = _markings(coat, tone, shape)
    return blend(picture, coat, dog), tone


def _occluded(tone: Field, mask: Field, width: int) -> Field:
    """A soft shadow under the part about to be laid, down and to the right of it."""
    shift = np.array([[1, 0, width * 0.006], [0, 1, width * 0.009]], np.float32)
    moved = cv2.warpAffine(mask, shift, mask.shape[::-1])
    near = cv2.GaussianBlur(moved, (0, 0), width * 0.008)
    return tone * (1 - 0.42 * near)


def _anatomy(tone: Field, rng: np.random.Generator) -> Field:
    """Ribs, hip, shoulder blade and muscle: long soft lights and darks."""
    shape = tone.shape
    width = shape[1]
    strokes = [
        *(
            ([(x, 0.372), (x + 0.016, 0.43), (x + 0.006, 0.50)], -0.055, 0.0045)
            for x in (0.484, 0.505, 0.526, 0.546)
        ),
        *(
            ([(x, 0.376), (x + 0.016, 0.43), (x + 0.007, 0.49)], 0.05, 0.0045)
            for x in (0.494, 0.515, 0.536)
        ),
        ([(0.60, 0.42), (0.575, 0.47), (0.563, 0.51)], 0.10, 0.008),
        ([(0.585, 0.41), (0.553, 0.46), (0.540, 0.52)], -0.16, 0.010),
        ([(0.662, 0.350), (0.69, 0.345), (0.72, 0.365)], 0.12, 0.009),
        ([(0.66, 0.43), (0.70, 0.49), (0.75, 0.52)], -0.07, 0.014),
        ([(0.40, 0.375), (0.375, 0.43), (0.365, 0.49)], 0.08, 0.010),
        ([(0.465, 0.37), (0.468, 0.43), (0.45, 0.50)], -0.12, 0.010),
        ([(0.33, 0.37), (0.30, 0.41), (0.29, 0.44)], 0.05, 0.008),
        ([(0.36, 0.36), (0.335, 0.41), (0.32, 0.47)], -0.07, 0.010),
        ([(0.46, 0.552), (0.52, 0.540), (0.565, 0.530)], -0.14, 0.010),
    ]
    for points, change, soft in strokes:
        line = drawn(shape, spline(points) * width, max(2, round(width * 0.010)))
        tone = tone + change * 2.6 * cv2.GaussianBlur(line, (0, 0), width * soft)
    return tone + 0.012 * fractal(shape, rng, cell=width * 0.02, octaves=3)


def _markings(coat: Image, tone: Field, shape: tuple[int, int]) -> Image:
    """Pale chest, toes and muzzle blaze; dark mask about the eye; nose; warm ear."""
    width = shape[1]
    pale = ramp(
        np.clip(tone + 0.10, 0, 1),
        [(0.0, "5a5462"), (0.4, "a59ba0"), (0.75, "eee4d6"), (1.0, "fffaf0")],
    )
    spots = (
        (
            closed((0.120, 0.540), (0.104, 0.556), (0.118, 0.575), (0.165, 0.572), (0.172, 0.545)),
            0.8,
        ),
        (
            closed((0.540, 0.582), (0.525, 0.600), (0.545, 0.613), (0.598, 0.608), (0.598, 0.582)),
            0.8,
        ),
        (
            closed((0.325, 0.455), (0.300, 0.500), (0.340, 0.548), (0.372, 0.535), (0.352, 0.480)),
            0.75,
        ),
        (
            closed((0.090, 0.500), (0.130, 0.507), (0.190, 0.512), (0.200, 0.525), (0.100, 0.520)),
            0.6,
        ),
    )
    for outline, strength in spots:
        mask = filled(shape, outline * width, soft_px=width * 0.004)
        coat = blend(coat, pale, mask * strength)
    rose = filled(
        shape,
        closed((0.262, 0.418), (0.290, 0.424), (0.306, 0.447), (0.280, 0.442)) * width,
        soft_px=width * 0.003,
    )
    coat = blend(coat, rgb("9a6a5c"), rose * 0.6)
    return _face(coat, shape)


def _face(coat: Image, shape: tuple[int, int]) -> Image:
    width = shape[1]
    socket = filled(
        shape,
        closed((0.186, 0.447), (0.200, 0.440), (0.216, 0.447), (0.202, 0.459)) * width,
        soft_px=width * 0.004,
    )
    coat = blend(coat, rgb("6b5650"), socket * 0.55)
    lid = spline([(0.1840, 0.4525), (0.192, 0.4575), (0.203, 0.4562), (0.2135, 0.4480)])
    coat = blend(
        coat, rgb("2a2027"), filled(shape, _tapered(lid, 0.0046) * width, soft_px=width * 0.0005)
    )
    brow = spline([(0.190, 0.4475), (0.199, 0.444), (0.209, 0.4435)])
    coat = blend(
        coat,
        rgb("f0dcc0"),
        filled(shape, _tapered(brow, 0.003) * width, soft_px=width * 0.0012) * 0.55,
    )
    nose = closed(
        (0.083, 0.487),
        (0.090, 0.4765),
        (0.102, 0.4765),
        (0.106, 0.486),
        (0.100, 0.497),
        (0.089, 0.499),
    )
    coat = blend(coat, rgb("2b242b"), filled(shape, nose * width, soft_px=width * 0.0008))
    shine = filled(
        shape,
        closed((0.0895, 0.4815), (0.094, 0.479), (0.0985, 0.4805), (0.094, 0.483)) * width,
        soft_px=width * 0.0006,
    )
    coat = blend(coat, rgb("a9a3ad"), shine * 0.9)
    mouth = spline([(0.096, 0.5015), (0.115, 0.5035), (0.145, 0.5010), (0.178, 0.4945)])
    return blend(
        coat,
        rgb("4a3a3c"),
        filled(shape, _tapered(mouth, 0.0030) * width, soft_px=width * 0.0007) * 0.85,
    )


def _tapered(line: Points, thickest: float) -> NDArray[np.float64]:
    along = np.linspace(0, 1, len(line))
    return ribbon(line, thickest * np.sin(np.pi * (0.08 + 0.84 * along)))
