"""Walkers in the rainy street, cut out as flat cards with their own light."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from typing import TYPE_CHECKING

import cv2
import numpy as np

from sample_images.materials.curves import Points, drawn, filled, spline

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from sample_images.materials.noise import Field

_PX_PER_M = 260


@dataclass(frozen=True, slots=True)
class Card:
    """A flat figure across the street: its place, size in metres, coverage and light."""

    x_m: float
    z_m: float
    width_m: float
    height_m: float
    cover: Field
    light: Field


class Cutout:
    """A figure under construction; coordinates in metres, x from its middle, y up."""

    def __init__(self, width_m: float, height_m: float, px_per_m: int = _PX_PER_M) -> None:
        self.size = (width_m, height_m)
        self.scale = px_per_m
        shape = (round(height_m * px_per_m), round(width_m * px_per_m))
        self.cover = np.zeros(shape, np.float32)
        self.light = np.zeros(shape, np.float32)

    def pixels(self, points: Points) -> NDArray[np.float64]:
        flip = np.asarray(points, float) * (1, -1) + (self.size[0] / 2, self.size[1])
        return flip * self.scale

    def shape(self, points: Points, tone: float, *, rim: float = 0.0, soft: float = 0.6) -> None:
        mask = filled(self.cover.shape, self.pixels(points), soft_px=soft)
        inner = cv2.GaussianBlur(mask, (0, 0), 0.022 * self.scale)
        edge = np.clip(1 - inner, 0, 1) * mask * rim
        self.light = self.light * (1 - mask) + (tone + edge) * mask
        self.cover = np.maximum(self.cover, mask)

    def line(self, points: Points, thick_m: float, tone: float) -> None:
        thick = max(1, round(thick_m * self.scale))
        mask = drawn(self.cover.shape, self.pixels(points), thick)
        self.light = self.light * (1 - mask) + tone * mask
        self.cover = np.maximum(self.cover, mask)

    def card(self, x_m: float, z_m: float) -> Card:
        return Card(x_m, z_m, *self.size, self.cover, self.light)


def loop(*points: tuple[float, float]) -> Points:
    return spline(points, closed=True, per_span=12)


def _umbrella(cut: Cutout, x: float, y: float, half: float, *, tone: float, lean: float) -> None:
    rise = half * 0.62
    ribs = np.linspace(-1, 1, 6)
    top = np.array([x + lean, y + rise])
    hem: list[Points] = []
    for left, right in itertools.pairwise(ribs):
        a = np.array([x + half * left, y + 0.06 * half * (1 - left**2) + lean * left * 0.6])
        b = np.array([x + half * right, y + 0.06 * half * (1 - right**2) + lean * right * 0.6])
        sag = (a + b) / 2 + (0, 0.055 * half)
        hem.append(spline([a, sag, b], per_span=8))
    arc = np.linspace(0, np.pi, 40)
    dome = np.stack(
        [
            x + half * np.cos(arc) + lean * np.sin(arc),
            y + rise * np.sin(arc) ** 0.85 + lean * 0.6 * np.cos(arc),
        ],
        axis=1,
    )
    cut.shape(np.vstack([dome, *hem]), tone, rim=0.10)
    for rib in ribs[1:-1]:
        end = np.array([x + half * rib, y + 0.06 * half * (1 - rib**2)])
        middle = (end + top) / 2 + np.array([rib * half * 0.17, half * 0.07])
        cut.line(spline([top, middle, end], per_span=10), 0.010, tone * 0.45)
    gleam = spline(
        [
            (x - half * 0.62, y + rise * 0.52),
            (x - half * 0.35, y + rise * 0.82),
            (x - half * 0.05, y + rise * 0.95),
        ],
        per_span=10,
    )
    cut.line(gleam, 0.012, tone + 0.07)
    cut.line(np.array([top, top + np.array([0, 0.09])]), 0.018, 0.05)


def walker(
    x_m: float, z_m: float, *, tone: float = 0.030, stride: float = 1.0, mirror: bool = False
) -> Card:
    """A person from behind, long coat, mid-step, umbrella up."""
    cut = Cutout(1.5, 2.35)
    s = 0.10 * stride
    cut.line(np.array([(0.06, 1.0), (0.05, 1.75)]), 0.022, 0.06)
    cut.shape(
        loop(
            (-0.16, 0.62),
            (-0.03, 0.62),
            (-0.04, 0.30),
            (-0.045 - s * 0.3, 0.06),
            (-0.02 - s * 0.3, 0.0),
            (-0.15 - s * 0.3, 0.0),
            (-0.13 - s * 0.3, 0.07),
            (-0.14, 0.34),
        ),
        tone * 0.8,
        rim=0.05,
    )
    cut.shape(
        loop(
            (0.02, 0.62),
            (0.16, 0.62),
            (0.14, 0.34),
            (0.13 + s * 0.2, 0.16),
            (0.16 + s * 0.4, 0.10),
            (0.10 + s * 0.2, 0.065),
            (0.03, 0.15),
            (0.035, 0.36),
        ),
        tone * 0.7,
        rim=0.05,
    )
    cut.shape(
        loop(
            (-0.09, 1.53),
            (-0.20, 1.46),
            (-0.25, 1.22),
            (-0.23, 1.00),
            (-0.25, 0.72),
            (-0.285, 0.47),
            (-0.05, 0.435),
            (0.20, 0.455),
            (0.275, 0.50),
            (0.235, 0.75),
            (0.215, 1.00),
            (0.245, 1.20),
            (0.205, 1.45),
            (0.10, 1.53),
        ),
        tone,
        rim=0.09,
    )
    cut.shape(
        loop(
            (-0.215, 1.44),
            (-0.285, 1.30),
            (-0.30, 1.05),
            (-0.275, 0.84),
            (-0.215, 0.86),
            (-0.205, 1.10),
            (-0.165, 1.36),
        ),
        tone * 0.85,
        rim=0.10,
    )
    cut.shape(
        loop(
            (0.20, 1.44),
            (0.275, 1.28),
            (0.255, 1.10),
            (0.13, 1.12),
            (0.09, 1.18),
            (0.15, 1.24),
            (0.165, 1.38),
        ),
        tone * 0.85,
        rim=0.10,
    )
    cut.line(spline([(0.0, 1.36), (0.012, 1.0), (0.0, 0.46)], per_span=8), 0.010, tone * 0.4)
    cut.line(np.array([(-0.20, 0.985), (0.20, 0.985)]), 0.022, tone * 0.45)
    cut.shape(
        loop(
            (-0.092, 1.62),
            (-0.075, 1.73),
            (0.0, 1.775),
            (0.075, 1.73),
            (0.092, 1.62),
            (0.06, 1.53),
            (-0.06, 1.53),
        ),
        tone * 0.9,
        rim=0.06,
    )
    _umbrella(cut, 0.05, 1.80, 0.66, tone=0.055, lean=0.045)
    card = cut.card(x_m, z_m)
    if not mirror:
        return card
    return Card(x_m, z_m, card.width_m, card.height_m, card.cover[:, ::-1], card.light[:, ::-1])


def couple(x_m: float, z_m: float) -> Card:
    """Two people close together under one pale umbrella."""
    cut = Cutout(1.9, 2.35)
    for x, tall, tone in ((-0.24, 1.0, 0.05), (0.22, 0.93, 0.035)):
        legs = [
            (-0.13, 0.5),
            (0.13, 0.5),
            (0.11, 0.02),
            (0.02, 0.0),
            (0.0, 0.36),
            (-0.03, 0.0),
            (-0.12, 0.02),
        ]
        cut.shape(np.array(legs) * (1, tall) + (x, 0), tone * 0.7)
        coat = [
            (-0.08, 1.52),
            (-0.23, 1.40),
            (-0.26, 1.0),
            (-0.25, 0.55),
            (0.25, 0.52),
            (0.24, 1.0),
            (0.22, 1.40),
            (0.08, 1.52),
        ]
        cut.shape(spline(np.array(coat) * (1, tall) + (x, 0), closed=True), tone, rim=0.08)
        head = [(-0.09, 1.60), (0.0, 1.76), (0.09, 1.60), (0.0, 1.50)]
        cut.shape(spline(np.array(head) * (1, tall) + (x, 0), closed=True), tone, rim=0.05)
    _umbrella(cut, 0.0, 1.78, 0.80, tone=0.30, lean=-0.03)
    return cut.card(x_m, z_m)
