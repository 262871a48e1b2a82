"""Bristle brushes: strokes that follow a direction field and leave paint in relief."""

from __future__ import annotations

from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

from sample_images.materials.curves import normals, trace
from sample_images.materials.pigment import Image, from_lab, softened, to_lab

Paths = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Brush:
    """One brush and the hand that holds it; lengths in pixels, colours in Lab units."""

    width_px: float
    length_px: float
    spacing: float = 0.6  # distance between strokes, in brush widths
    hair_px: float = 3.0  # distance between bristles
    tone_spread: float = 3.0  # lightness scatter from stroke to stroke
    hue_spread: float = 4.0  # a, b scatter from stroke to stroke
    streak: float = 2.5  # lightness scatter from bristle to bristle
    wander: float = 0.12  # radians off the direction field
    stop_at: float = 14.0  # colour step at which a stroke ends
    wet: float = 0.12  # share of the paint already there that is picked up
    body: float = 1.0  # height of the paint ridge


class PaintLayer:
    """Paint on a ground: colour and height in one four-channel byte array."""

    def __init__(self, ground_srgb: Image) -> None:
        rows, columns = ground_srgb.shape[:2]
        self.pixels = np.zeros((rows, columns, 4), np.uint8)
        self.pixels[..., :3] = np.round(np.clip(ground_srgb, 0, 1) * 255)

    @property
    def colour(self) -> Image:
        """Encoded sRGB 0..1."""
        return self.pixels[..., :3].astype(np.float32) / 255

    @property
    def height(self) -> NDArray[np.float32]:
        """Thickness of the paint, 0..1."""
        return self.pixels[..., 3].astype(np.float32) / 255

    def stroke(
        self, path: Paths, brush: Brush, colour: NDArray[np.float32], rng: np.random.Generator
    ) -> None:
        """Drag one loaded brush along an open (n, 2) path; `colour` is encoded sRGB 0..1."""
        count = max(3, round(brush.width_px / brush.hair_px))
        across = np.linspace(-0.5, 0.5, count) + rng.normal(0, 0.25 / count, count)
        lines = _bristle_lines(path, across * brush.width_px, brush, rng)
        under = self._picked_up(path)
        mixed = colour * (1 - brush.wet) + under * brush.wet
        tone = rng.normal(0, brush.streak * 0.01, count) + 0.012 * across * rng.normal(0, 1)
        ridge = 0.35 + 0.4 * np.abs(across * 2) ** 3 + rng.uniform(-0.2, 0.2, count)
        paint = np.empty((count, 4))
        paint[:, :3] = (mixed[None] + tone[:, None]) * 255
        paint[:, 3] = ridge * brush.body * 255
        thick = max(1, round(brush.hair_px * 1.25))
        self._draw(lines, np.clip(paint, 0, 255), thick, rng)

    def _draw(self, lines: Paths, paint: Paths, thick: int, rng: np.random.Generator) -> None:
        values = paint.tolist()
        for index in rng.permutation(len(values)):
            trace(self.pixels, lines[index], values[index], thick)

    def _picked_up(self, path: Paths) -> NDArray[np.float32]:
        column, row = path[len(path) // 2]
        rows, columns = self.pixels.shape[:2]
        inside = self.pixels[min(max(int(row), 0), rows - 1), min(max(int(column), 0), columns - 1)]
        return inside[:3].astype(np.float32) / 255


def _bristle_lines(
    path: Paths, offsets: NDArray[np.float64], brush: Brush, rng: np.random.Generator
) -> Paths:
    """(bristles, n, 2) lines beside the path, rounded and ragged at both ends."""
    side = normals(path)
    lines = path[None] + offsets[:, None, None] * side[None]
    start, end = path[1] - path[0], path[-1] - path[-2]
    start = start / max(np.hypot(*start), 1e-9)
    end = end / max(np.hypot(*end), 1e-9)
    rounding = 0.35 * brush.width_px * (1 - (2 * offsets / brush.width_px) ** 2)
    ragged = rng.uniform(-0.15, 0.3, (2, len(offsets))) * brush.width_px
    lines[:, 0] -= (rounding + ragged[0])[:, None] * start
    lines[:, -1] += (rounding + ragged[1] * 2)[:, None] * end
    return lines


def follow(starts: Paths, angle: NDArray[np.float32], step_px: float, steps: int) -> Paths:
    """(n, steps + 1, 2) paths that flow both ways from each start along the field."""
    half = steps // 2
    back = _one_way(starts, angle, -step_px, half)[:, :0:-1]
    ahead = _one_way(starts, angle, step_px, steps - half)
    return np.concatenate([back, ahead], axis=1)


def _one_way(starts: Paths, angle: NDArray[np.float32], step_px: float, steps: int) -> Paths:
    rows, columns = angle.shape
    here = starts.copy()
    trail = [here.copy()]
    heading = np.zeros_like(here)
    for _ in range(steps):
        row = np.clip(here[:, 1], 0, rows - 1).astype(int)
        column = np.clip(here[:, 0], 0, columns - 1).astype(int)
        turn = angle[row, column]
        way = np.stack([np.cos(turn), np.sin(turn)], axis=1) * step_px
        flip = (way * heading).sum(axis=1) < 0
        way[flip] *= -1
        heading = way
        here = here + way
        trail.append(here.copy())
    return np.stack(trail, axis=1)


def scattered(
    shape: tuple[int, int], pitch_px: float, rng: np.random.Generator
) -> NDArray[np.float64]:
    """(n, 2) column/row places on a jittered grid, in random order."""
    rows, columns = shape
    grid = np.mgrid[0 : rows + pitch_px : pitch_px, 0 : columns + pitch_px : pitch_px]
    places = grid.reshape(2, -1)[::-1].T + rng.uniform(-0.7, 0.7, (grid[0].size, 2)) * pitch_px
    return rng.permutation(places)


def cover(
    layer: PaintLayer,
    target_srgb: Image,
    angle: NDArray[np.float32],
    brush: Brush,
    rng: np.random.Generator,
    *,
    where: NDArray[np.float32] | None = None,
    within: NDArray[np.float32] | None = None,
) -> int:
    """Paint `target_srgb` with one brush and return the number of strokes.

    `where` (0..1) is the chance that a stroke is laid at a place; a stroke ends
    where `within` falls below a half.
    """
    shape = target_srgb.shape[:2]
    lab = to_lab(softened(target_srgb, max(0.6, brush.width_px * 0.18)))
    starts = scattered(shape, brush.width_px * brush.spacing, rng)
    row, column = _indices(starts, shape)
    if where is not None:
        keep = rng.uniform(size=len(starts)) < where[row, column]
        starts, row, column = starts[keep], row[keep], column[keep]
    if not len(starts):
        return 0
    aim = lab[row, column]
    step = brush.width_px * 0.5
    steps = max(4, round(brush.length_px / step))
    paths = follow(starts, angle, step, steps)
    paths = _wandered(paths, starts, brush, rng)
    spread = np.array([brush.tone_spread, brush.hue_spread, brush.hue_spread])
    mixed = aim + np.clip(rng.normal(0, 1, aim.shape), -1.6, 1.6) * spread
    colours = from_lab(mixed[None].astype(np.float32))[0]
    first, last = _reach(paths, _leaving(paths, lab, aim, brush.stop_at, within))
    for index in range(len(starts)):
        part = paths[index, first[index] : last[index] + 1]
        if len(part) < 3:
            part = paths[index, max(0, steps // 2 - 1) : steps // 2 + 2]
        layer.stroke(part, brush, colours[index], rng)
    return len(starts)


def _indices(places: Paths, shape: tuple[int, int]) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    row = np.clip(places[..., 1], 0, shape[0] - 1).astype(np.intp)
    column = np.clip(places[..., 0], 0, shape[1] - 1).astype(np.intp)
    return row, column


def _wandered(paths: Paths, starts: Paths, brush: Brush, rng: np.random.Generator) -> Paths:
    turn = rng.normal(0, brush.wander, len(paths))
    c, s = np.cos(turn)[:, None], np.sin(turn)[:, None]
    offset = paths - starts[:, None]
    x, y = offset[..., 0], offset[..., 1]
    return np.stack([x * c - y * s, x * s + y * c], axis=-1) + starts[:, None]


def _leaving(
    paths: Paths,
    lab: Image,
    aim: NDArray[np.float32],
    limit: float,
    within: NDArray[np.float32] | None,
) -> NDArray[np.bool_]:
    """Which points of each path lie on another colour or outside the shape."""
    row, column = _indices(paths, lab.shape[:2])
    far: NDArray[np.bool_] = np.linalg.norm(lab[row, column] - aim[:, None], axis=-1) > limit
    return far if within is None else far | (within[row, column] < 0.5)


def _reach(paths: Paths, far: NDArray[np.bool_]) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """First and last point of each path before it leaves its colour or its shape."""
    middle = paths.shape[1] // 2 - (1 - paths.shape[1] % 2)
    after = far[:, middle:]
    before = far[:, : middle + 1][:, ::-1]
    ahead = np.where(after.any(1), after.argmax(1) - 1, after.shape[1] - 1)
    back = np.where(before.any(1), before.argmax(1) - 1, before.shape[1] - 1)
    return middle - np.maximum(back, 0), middle + np.maximum(ahead, 0)


def detail(target_srgb: Image, width_px: float, *, full_at: float) -> NDArray[np.float32]:
    """Where a brush of `width_px` would lose something, 0..1; 1 from a loss of `full_at`.

    The loss is the colour distance in Lab units between the target and the target
    as that brush can show it.
    """
    sharp = to_lab(target_srgb)
    soft = softened(sharp, width_px * 0.5)
    lost = np.linalg.norm(sharp - soft, axis=-1)
    reach = max(3, round(width_px * 0.7)) | 1
    grown = cv2.dilate(lost, cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (reach, reach)))
    return np.clip(grown / full_at, 0, 1).astype(np.float32)


def along_edges(
    angle: NDArray[np.float32],
    target_srgb: Image,
    sigma_px: float,
    *,
    pull: float,
    where: NDArray[np.float32] | float = 1.0,
) -> NDArray[np.float32]:
    """The direction field bent toward the edges of the target, so that edges stay clean.

    References
    ----------
    The edge direction is that of the smoothed structure tensor (Foerstner and Guelch 1987).
    """
    light = to_lab(target_srgb)[..., 0] / 100
    gx, gy = (cv2.Sobel(light, cv2.CV_32F, *axis, ksize=3) for axis in ((1, 0), (0, 1)))
    xx, yy, xy = (cv2.GaussianBlur(p, (0, 0), sigma_px) for p in (gx * gx, gy * gy, gx * gy))
    strength = np.sqrt((xx - yy) ** 2 + 4 * xy**2)
    weight = np.tanh(strength * pull) * where
    edge = 0.5 * np.arctan2(2 * xy, xx - yy) + np.pi / 2
    c = (1 - weight) * np.cos(2 * angle) + weight * np.cos(2 * edge)
    s = (1 - weight) * np.sin(2 * angle) + weight * np.sin(2 * edge)
    return (0.5 * np.arctan2(s, c)).astype(np.float32)
