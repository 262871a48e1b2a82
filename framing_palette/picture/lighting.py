"""How the light falls off across a photograph, as a smooth surface told by something plain.

A plain sheet reflects everywhere alike, so what differs across its photograph is the light (and the
lens, which darkens towards its edges); both are taken out by one division in linear light. The
surface is fitted so that marks on the sheet do not pull at it (iteratively reweighted least squares
with Tukey's biweight; Holland and Welsch 1977, Communications in Statistics A6, 813-827, cited from
memory). It speaks only of where the sheet lay.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from framing_palette.arrays import BoolArray, Float32Array, Float64Array, FloatArray
from framing_palette.colour import linear_srgb_to_lab_d50
from framing_palette.errors import LightError
from framing_palette.picture.light_fields import (
    HIGHEST_DEGREE,
    LARGEST_FALL_OFF,
    LightField,
    Point,
    light_terms,
    places,
)

EVEN_WITHIN: Final = 1.04
"""Ratio of brightest to darkest light up to which the light is called even."""

_GRID_SIDE = 96
_CLIPPED_FROM = 0.985
_MOST_CLIPPED = 0.02
_DARKEST = 0.015
_LEAST_EVIDENCE = 0.12  # share of the photograph that must be there to tell it
_STEP = 0.08  # in the logarithm of light, from a cell to the next, where something else begins
_OFF_BY = 0.02  # in the logarithm of light, up to which a cell is part of the surface
_MOST_COLOUR_CHANGE = 4.0  # distance in a*, b* at equal lightness, 95th percentile
_TUKEY = 4.685
_ROUNDS = 24

_LUMINANCE = np.array([0.2126, 0.7152, 0.0722], np.float32)


def light_of_sheet(linear_srgb: FloatArray) -> LightField:
    """Return the light that a photographed plain sheet tells.

    Parameters
    ----------
    linear_srgb
        Shape (rows, columns, 3): the sheet, photographed under the same lamps from the same place.

    Raises
    ------
    LightError
        When it is too dark, clipped, not plain, of changing colour, or falls off too far.
    """
    rows, columns = _grid(linear_srgb)
    middle = np.zeros((rows, columns), dtype=bool)
    middle[rows // 4 : rows - rows // 4, columns // 4 : columns - columns // 4] = True
    return _told(linear_srgb, np.ones_like(middle), middle, SHEET)


def light_of_surroundings(linear_srgb: FloatArray, hidden: Sequence[Float64Array]) -> LightField:
    """Return the light that a plain table around the art tells.

    Parameters
    ----------
    linear_srgb
        Shape (rows, columns, 3): the photograph.
    hidden
        Outlines (n, 2), 0..1, of what lies on the table: the art and the chart.

    Raises
    ------
    LightError
        When the table is not plain, or too little of it is in sight.
    """
    import cv2

    rows, columns = _grid(linear_srgb)
    covered = np.zeros((rows, columns), np.uint8)
    for outline in hidden:
        cells = outline * (columns, rows) - 0.5
        cv2.fillConvexPoly(covered, np.rint(cells).astype(np.int32), 1)
    # The cells along an edge show both what lies there and the table, or a shadow.
    bare = cv2.dilate(covered, np.ones((5, 5), np.uint8)) == 0
    return _told(linear_srgb, bare, bare, TABLE)


@dataclass(frozen=True, slots=True)
class _Witness:
    """Something plain that can tell the light, and what is asked of it.

    ``degree`` is that of the surface, ``roughest`` the largest robust deviation from it in the
    logarithm of light; ``least_filled`` is the share of its outline that must be bare.
    """

    name: str
    degree: int
    roughest: float
    least_filled: float


SHEET: Final = _Witness("the sheet", HIGHEST_DEGREE, 0.03, 0.7)
TABLE: Final = _Witness("the table", 4, 0.015, 0.0)  # it must bridge where the art lies


def _told(
    linear_srgb: FloatArray, seen: BoolArray, sought: BoolArray, witness: _Witness
) -> LightField:
    """Return what the largest even piece tells, measured by the cells of ``sought`` it holds."""
    rows, columns = seen.shape
    cells, clipped = _cells(linear_srgb, rows, columns)
    light = cells @ _LUMINANCE
    _check_exposure(light[sought], clipped[sought], witness)
    level = np.log(np.maximum(light, 1e-4)).astype(np.float64)
    piece = _smooth_piece(level, seen & (clipped < _MOST_CLIPPED), sought)
    if piece.mean() < _LEAST_EVIDENCE:
        raise LightError(
            f"too little of {witness.name} is plain to tell how the light falls off",
            todo="photograph one plain matt sheet, white or grey, that fills the picture",
        )
    terms = light_terms(*places(rows, columns), witness.degree)
    coefficients, rough = _robust(terms[piece.ravel()], level[piece])
    if rough > witness.roughest:
        raise LightError(
            f"{witness.name} has a pattern or texture, its brightness differs by {rough:.1%} from "
            "place to place",
            todo="photograph a plain matt sheet",
        )
    fitted = (terms @ coefficients).reshape(rows, columns)
    plain = piece & (np.abs(level - fitted) < max(4 * rough, _OFF_BY))
    _check_colour(cells / np.exp(fitted)[..., np.newaxis], plain, witness)
    fall_off = float(np.exp(np.ptp(fitted[plain])))
    if fall_off > LARGEST_FALL_OFF:
        raise LightError(
            f"the light falls off {fall_off:.1f} times across {witness.name}",
            todo="set the lamps so that both sides are lit alike",
        )
    area = _outline(plain)
    if _filled(plain, area) < witness.least_filled:
        raise LightError(
            f"{witness.name} is covered in part",
            todo="take everything off it and photograph it bare",
        )
    coefficients[0] -= float(np.log(np.exp(fitted[plain]).mean()))
    proportions = linear_srgb.shape[1] / linear_srgb.shape[0]
    return LightField(tuple(map(float, coefficients)), area, proportions, fall_off)


def _check_exposure(light: FloatArray, clipped: FloatArray, witness: _Witness) -> None:
    if light.size == 0 or float(np.median(light)) < _DARKEST:
        raise LightError(
            f"{witness.name} is too dark or not in sight", todo="let more light into the camera"
        )
    share = float((clipped > 0.05).mean())
    if share > _MOST_CLIPPED:
        raise LightError(
            f"{share:.0%} of {witness.name} is burnt out and tells nothing of the light",
            todo="take the photograph again a little darker",
        )


def _check_colour(evened: FloatArray, plain: BoolArray, witness: _Witness) -> None:
    scale = 0.5 / max(float(np.median(evened[plain] @ _LUMINANCE)), 1e-6)
    lab = np.asarray(linear_srgb_to_lab_d50(evened[plain] * scale))
    change = np.hypot(*(lab - np.median(lab, axis=0))[:, 1:].T)
    most = float(np.percentile(change, 95))
    if most > _MOST_COLOUR_CHANGE:
        raise LightError(
            f"the colour of {witness.name} changes by {most:.1f} across the photograph, so lights "
            "of two kinds fall on it or it is not plain",
            todo="shut out the window or switch off the odd lamp, and use a plain sheet",
        )


def _grid(image: FloatArray) -> tuple[int, int]:
    rows, columns = image.shape[:2]
    scale = min(1.0, _GRID_SIDE / max(rows, columns))
    return max(4, round(rows * scale)), max(4, round(columns * scale))


def _cells(linear_srgb: FloatArray, rows: int, columns: int) -> tuple[Float32Array, Float32Array]:
    """Return the mean light of every cell, and its share of clipped pixels."""
    import cv2

    size = columns, rows
    light = np.asarray(linear_srgb, np.float32)
    below = float(np.nextafter(np.float32(_CLIPPED_FROM), np.float32(0)))
    # Of OpenCV's own, since a maximum over three neighbours is numpy's slowest.
    held = cv2.inRange(light, (-np.inf,) * 3, (below,) * 3)
    clipped = (held == 0).astype(np.float32)
    return (
        np.asarray(cv2.resize(light, size, interpolation=cv2.INTER_AREA), np.float32),
        np.asarray(cv2.resize(clipped, size, interpolation=cv2.INTER_AREA), np.float32),
    )


def _robust(terms: Float64Array, level: Float64Array) -> tuple[Float64Array, float]:
    """Return coefficients and the robust deviation from them; far outliers weigh nothing."""
    weights = np.ones(len(level))
    for step in range(_ROUNDS):
        weighted = terms.T * weights
        found = np.linalg.solve(weighted @ terms, weighted @ level)
        off = np.abs(level - terms @ found)
        rough = max(1.4826 * float(np.median(off)), 1e-4)
        if step < _ROUNDS // 2:  # least absolute deviations lead near the bulk, then far ones drop
            weights = 1.0 / np.maximum(off, 0.3 * rough)
        else:
            weights = np.square(np.maximum(1 - np.square(off / (_TUKEY * rough)), 0.0))
    return np.asarray(found, np.float64), rough


def _smooth_piece(level: Float64Array, usable: BoolArray, sought: BoolArray) -> BoolArray:
    """Return the piece without a step in it that holds most of the cells that are sought.

    Light changes slowly; where brightness jumps from one cell to the next, something else begins.
    """
    import cv2

    steps = np.zeros(level.shape, dtype=bool)
    for axis in (0, 1):
        jump = np.abs(np.diff(level, axis=axis)) > _STEP
        ends = ((1, 0), (0, 0)) if axis == 0 else ((0, 0), (1, 0))
        steps |= np.pad(jump, ends) | np.pad(jump, tuple(pair[::-1] for pair in ends))
    count, labels = cv2.connectedComponents((usable & ~steps).astype(np.uint8), connectivity=4)
    if count < 2:
        return np.zeros_like(usable)
    held = np.bincount(labels[sought], minlength=count)
    return np.asarray(labels == 1 + int(np.argmax(held[1:])))


def _filled(plain: BoolArray, area: tuple[Point, ...]) -> float:
    """Return the share of an outline that is plain."""
    import cv2

    rows, columns = plain.shape
    inside = np.zeros((rows, columns), np.uint8)
    outline = np.rint(np.asarray(area) * (columns, rows) - 0.5).astype(np.int32)
    cv2.fillConvexPoly(inside, outline, 1)
    return float(plain[inside > 0].mean())


def _outline(plain: BoolArray) -> tuple[Point, ...]:
    import cv2

    rows, columns = plain.shape
    down, across = np.nonzero(plain)
    middles = np.stack([across, down], axis=-1)
    steps = np.array([[0, 0], [1, 0], [1, 1], [0, 1]])
    edges = (middles[:, np.newaxis] + steps).reshape(-1, 1, 2).astype(np.float32)
    hull = cv2.approxPolyDP(cv2.convexHull(edges), 0.5, closed=True).reshape(-1, 2)
    return tuple((float(x) / columns, float(y) / rows) for x, y in hull)
