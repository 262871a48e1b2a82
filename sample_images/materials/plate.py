"""Ink line and light watercolour on paper, laid from the front of the subject to its back."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import cv2
import numpy as np

from sample_images.materials.curves import Points, filled, fixed, ribbon, trace
from sample_images.materials.noise import Field, fractal, smoothstep
from sample_images.materials.pigment import Image, glaze, rgb, to_linear, to_srgb

if TYPE_CHECKING:
    from numpy.typing import NDArray


@dataclass(frozen=True, slots=True)
class Wash:
    """A pool of colour: its outline in pixels, pigment, strength, and how it settled."""

    outline: Points
    pigment: str
    depth: float
    fade_from: tuple[float, float] | None = None  # where the brush was dipped in water
    fade_px: float = 1.0
    edge: float = 0.55  # how much pigment crept to the rim
    soft_px: float = 0.8


@dataclass(frozen=True, slots=True)
class Pen:
    """One pen line: path in pixels and its thickest width."""

    path: Points
    thick_px: float
    swell: bool = True


@dataclass(frozen=True, slots=True)
class Subject:
    """One part of the drawing: the area it hides, its washes and its lines."""

    outline: Points
    washes: list[Wash] = field(default_factory=list)
    lines: list[Pen] = field(default_factory=list)


class Plate:
    """A sheet that collects water, pigment and ink."""

    def __init__(self, paper_srgb: Image, tooth: Field, rng: np.random.Generator) -> None:
        self._linear = to_linear(paper_srgb)
        self._tooth = tooth
        self._ink = np.zeros(tooth.shape, np.float32)
        self._hidden = np.zeros(tooth.shape, np.float32)
        self._bloom = fractal(tooth.shape, rng, cell=tooth.shape[1] * 0.035, octaves=5, gain=0.6)

    def add(self, subject: Subject) -> None:
        """Draw a part behind everything that is there already."""
        box = self._box(subject)
        top, bottom, left, right = box
        if bottom - top < 2 or right - left < 2:
            return
        part = np.s_[top:bottom, left:right]
        shown = 1 - self._hidden[part]
        corner = np.array([left, top], float)
        for wash in subject.washes:
            depth = self._settled(wash, corner, part) * shown
            self._linear[part] = glaze(self._linear[part], rgb(wash.pigment), depth)
        ink = _inked(subject.lines, corner, shown.shape) * shown
        self._ink[part] = np.maximum(self._ink[part], ink)
        if len(subject.outline) > 2:
            claim = filled(shown.shape, subject.outline - corner)
            self._hidden[part] = np.maximum(self._hidden[part], claim)

    def finished(self, ink_code: str) -> Image:
        """The dry sheet: encoded sRGB 0..1."""
        pale = 0.86 + 0.14 * smoothstep(-1.2, 1.2, self._bloom)
        bite = 1 - 0.35 * smoothstep(0.45, 0.9, self._tooth)
        depth = cv2.GaussianBlur(self._ink, (0, 0), 0.55) * pale * bite
        return to_srgb(glaze(self._linear, rgb(ink_code), depth))

    def _settled(self, wash: Wash, corner: NDArray[np.float64], part: tuple[slice, slice]) -> Field:
        """Film thickness: pooled at the rim, grained by the tooth, bloomed by the wet."""
        shape = self._tooth[part].shape
        body = filled(shape, wash.outline - corner, soft_px=wash.soft_px)
        inner = cv2.GaussianBlur(body, (0, 0), max(2.0, shape[1] * 0.012 + 2.0))
        rim = np.clip(body - inner, 0, 1) * 2
        film = body * (0.78 + 0.20 * self._bloom[part]) + wash.edge * rim * body
        if wash.fade_from is not None:
            rows, columns = np.mgrid[0 : shape[0], 0 : shape[1]].astype(np.float32)
            x, y = np.array(wash.fade_from) - corner
            away = np.hypot(columns - x, rows - y) / wash.fade_px
            film = film * np.clip(away, 0.0, 1.0) ** 1.2
        grain = 1 + 0.55 * (0.5 - self._tooth[part]) * 2
        return np.clip(film, 0, None) * grain * wash.depth

    def _box(self, subject: Subject) -> tuple[int, int, int, int]:
        every = [subject.outline, *(w.outline for w in subject.washes)]
        every += [pen.path for pen in subject.lines]
        points = np.vstack([p for p in every if len(p)])
        rows, columns = self._tooth.shape
        left, top = np.floor(points.min(axis=0)).astype(int) - 12
        right, bottom = np.ceil(points.max(axis=0)).astype(int) + 13
        return max(top, 0), min(bottom, rows), max(left, 0), min(right, columns)


def _inked(lines: list[Pen], corner: NDArray[np.float64], shape: tuple[int, ...]) -> Field:
    """Coverage of pen lines that swell in the middle and lift off at the ends."""
    marks = np.zeros(shape, np.uint8)
    for pen in lines:
        along = np.linspace(0.03, 0.97, len(pen.path))
        swell = np.sin(np.pi * along) ** 0.6 if pen.swell else np.ones(len(along))
        band = ribbon(pen.path - corner, pen.thick_px * (0.3 + 0.7 * swell))
        cv2.fillPoly(marks, [fixed(band)], 255, cv2.LINE_AA, 4)
        trace(marks, pen.path - corner, 150, 1)
    return marks.astype(np.float32) / 255
