"""Accents: small places whose colour stands out strongly from all round them.

A place counts when it is small but not a speck, differs strongly even from the most similar part
of its surroundings, and has a colour that the rest of the picture hardly uses. Grain is smoothed
away first; specks are dust; small, colourless and nearly white ones are glints.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import BoolArray, Float32Array, Float64Array, as_lab
from framing_palette.colour import delta_e_2000, plain_name
from framing_palette.picture.findings import Accent, Lab
from framing_palette.picture.histograms import Cells, folded
from framing_palette.picture.resampling import as_float32, blurred, shrunk, squared_length
from framing_palette.picture.seeing import as_seen

ACCENT_SIDE = 512
"""Accents are sought at most this many pixels long; finer points are dust, grain or glints."""

MIN_SHARE, MAX_SHARE = 0.0007, 0.025
"""Least and largest share of the picture, with room below 0.1 % for errors of measuring."""

MIN_DELTA_E = 14.0
"""Least ΔE00 to the mean of the wider surroundings and to the nearest quarter of the ring."""

MAX_SHADES_DELTA_E = 20.0
"""Three quarters of a place lie this near to its middle colour, or it is several places."""

SAME_DELTA_E = 9.0
MAX_ELSEWHERE = 0.008
"""A colour that the rest of the picture uses more than this is no accent anywhere in it."""

MAX_ALIKE = 6
"""More places of the same colour than this are a pattern."""

FEW_ACCENTS, STRONG = 5, 0.55
"""After the first five only strong accents are listed: the eye does not rest on more."""

GLINT_SHARE, GLINT_LIGHTNESS, GLINT_CHROMA = 0.002, 93.0, 8.0

_SURROUND = 0.08  # of the short side
_EDGE = 11.0
_GAP_PX = 2
_MIN_RADIUS_PX = 1.5


@dataclass(frozen=True, slots=True, eq=False)
class _Candidate:
    """A compact place of one colour, with the bounding box that `mask` fills."""

    box: tuple[slice, slice]
    mask: BoolArray
    colour: Float64Array
    delta_e: float
    nearest_delta_e: float
    shades_delta_e: float

    @property
    def middle(self) -> tuple[float, float]:
        """Row and column of the middle of its pixels."""
        row, column = np.nonzero(self.mask)
        return float(row.mean()) + self.box[0].start, float(column.mean()) + self.box[1].start

    @property
    def stands_out(self) -> bool:
        """True when it differs even from the nearest quarter of its ring, and is of one colour."""
        return self.nearest_delta_e >= MIN_DELTA_E and self.shades_delta_e <= MAX_SHADES_DELTA_E


def find_accents(lab_d50: ArrayLike, *, mm_per_px: float | None = None) -> tuple[Accent, ...]:
    """Return the accents of a picture, strongest first.

    Parameters
    ----------
    lab_d50
        Shape (rows, columns, 3).
    mm_per_px
        Scale of these pixels; None leaves the sizes unknown.
    """
    lab = as_float32(as_lab(lab_d50))
    small = as_seen(shrunk(lab, ACCENT_SIDE))
    mm = None if mm_per_px is None else mm_per_px * max(lab.shape[:2]) / max(small.shape[:2])
    standing = _standing(small)
    accents = [_accent(small, place, mm) for place in _rare(small, standing)]
    kept = [accent for accent in accents if not _is_glint(accent)]
    kept.sort(key=lambda accent: (-accent.strength, accent.y, accent.x))
    return tuple(
        accent
        for place, accent in enumerate(kept)
        if place < FEW_ACCENTS or accent.strength >= STRONG
    )


def accent_strength(delta_e: float, share: float) -> float:
    """Return how far an accent stands out, 0..1, growing with difference and size.

    Half of full strength is reached by a difference of 30 ΔE00 on 0.3 % of the picture.
    """
    reach = (delta_e / 30.0) * (share / 0.003) ** 0.25
    return float(reach / (1 + reach))


def _standing(lab: Float32Array) -> list[_Candidate]:
    """Return the places that stand out, as wholes where their shades belong together."""
    surround = blurred(lab, max(1.0, _SURROUND * min(lab.shape[:2])))
    apart = np.asarray(delta_e_2000(lab, surround) >= MIN_DELTA_E, dtype=np.bool_)
    kernel = np.ones((3, 3), np.uint8)
    spread = as_float32(cv2.dilate(lab, kernel) - cv2.erode(lab, kernel))
    smooth = apart & (squared_length(spread) < _EDGE**2)
    whole = np.asarray(cv2.erode(apart.astype(np.uint8), kernel), dtype=np.bool_)
    wholes = [place for place in _candidates(lab, whole, apart) if place.stands_out]
    parts = [place for place in _candidates(lab, smooth, apart) if place.stands_out]
    return wholes + [
        part for part in parts if not any(_is_shade_of(part, place) for place in wholes)
    ]


def _is_shade_of(part: _Candidate, whole: _Candidate) -> bool:
    """Return True when a part overlaps a whole and is no more than another shade of it."""
    if delta_e_2000(part.colour, whole.colour) > MAX_SHADES_DELTA_E:
        return False
    (rows, columns), (row, column) = whole.box, part.middle
    return bool(rows.start <= row < rows.stop and columns.start <= column < columns.stop)


def _candidates(lab: Float32Array, core: BoolArray, apart: BoolArray) -> Iterator[_Candidate]:
    """Yield the compact places round each connected piece of `core`, grown by a pixel."""
    number, labels, stats, _ = cv2.connectedComponentsWithStats(
        core.astype(np.uint8), connectivity=4
    )
    pixels = labels.size
    for label in range(1, number):
        left, top, width, height, area = stats[label].tolist()
        if area > MAX_SHARE * pixels or (width + 2) * (height + 2) < MIN_SHARE * pixels:
            continue
        margin = _GAP_PX + 2 + round(0.8 * (area / np.pi) ** 0.5)
        box = (
            slice(max(0, top - margin), top + height + margin),
            slice(max(0, left - margin), left + width + margin),
        )
        candidate = _measured(lab[box], labels[box] == label, apart[box], box)
        if MIN_SHARE <= candidate.mask.sum() / pixels <= MAX_SHARE and _is_compact(candidate.mask):
            yield candidate


def _measured(
    lab: Float32Array, core: BoolArray, apart: BoolArray, box: tuple[slice, slice]
) -> _Candidate:
    """Return a place with its colour and its difference to the ring round it."""
    mask = _grown(core, 1) & apart
    ring = ~_grown(core, 1 + _GAP_PX)
    colour = np.median(lab[core], axis=0).astype(np.float64)
    if not ring.any():
        return _Candidate(box, mask, colour, 0.0, 0.0, 0.0)
    differences = delta_e_2000(lab[ring], colour)
    shades = delta_e_2000(lab[core], colour)
    return _Candidate(
        box,
        mask,
        colour,
        delta_e=float(np.median(differences)),
        nearest_delta_e=float(np.percentile(differences, 25)),
        shades_delta_e=float(np.percentile(shades, 75)),
    )


def _grown(mask: BoolArray, by_px: int) -> BoolArray:
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (2 * by_px + 1, 2 * by_px + 1))
    return np.asarray(cv2.dilate(mask.astype(np.uint8), kernel), dtype=np.bool_)


def _is_compact(mask: BoolArray) -> bool:
    """Return True when some part is thicker than a thread, for the place's size."""
    padded = np.pad(mask.astype(np.uint8), 1)
    thickest = float(cv2.distanceTransform(padded, cv2.DIST_L2, 3).max())
    return thickest >= max(_MIN_RADIUS_PX, 0.25 * math.sqrt(float(mask.sum()) / np.pi))


def _rare(lab: Float32Array, places: list[_Candidate]) -> list[_Candidate]:
    """Return the places whose colour neither the rest of the picture nor a pattern uses."""
    cells = folded(lab)
    rest = _shares_outside(cells, places, lab.shape[:2])
    kept = []
    for place in places:
        same = delta_e_2000(cells.lab_d50, place.colour) < SAME_DELTA_E
        alike = sum(
            float(delta_e_2000(place.colour, other.colour)) < SAME_DELTA_E for other in places
        )
        if float(rest[same].sum()) <= MAX_ELSEWHERE and alike <= MAX_ALIKE:
            kept.append(place)
    return kept


def _shares_outside(cells: Cells, places: list[_Candidate], shape: tuple[int, ...]) -> Float64Array:
    outside = np.ones(shape, dtype=np.bool_)
    for place in places:
        outside[place.box] &= ~_grown(place.mask, _GAP_PX)
    return cells.counts(outside.ravel()) / outside.size


def _accent(lab: Float32Array, place: _Candidate, mm_per_px: float | None) -> Accent:
    rows, columns = lab.shape[:2]
    row, column = place.middle
    area_px = int(place.mask.sum())
    share = area_px / (rows * columns)
    L, a, b = place.colour.tolist()
    return Accent(
        lab=(L, a, b),
        share=share,
        x=(column + 0.5) / columns,
        y=(row + 0.5) / rows,
        delta_e=place.delta_e,
        strength=accent_strength(place.delta_e, share),
        size_mm=None if mm_per_px is None else 2 * mm_per_px * math.sqrt(area_px / math.pi),
        name=plain_name((L, a, b)),
    )


def _is_glint(accent: Accent) -> bool:
    lab: Lab = accent.lab
    colourless = math.hypot(lab[1], lab[2]) < GLINT_CHROMA
    return bool(accent.share < GLINT_SHARE and lab[0] > GLINT_LIGHTNESS and colourless)
