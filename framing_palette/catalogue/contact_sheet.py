"""Contact sheets: one photograph of many swatches, parted and matched to the codes they lie for.

The swatches must lie apart on an even ground that none of them has the colour of.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from framing_palette.arrays import BoolArray, Float32Array, Float64Array
from framing_palette.catalogue.cells import why_not_a_code
from framing_palette.catalogue.samples import Sample
from framing_palette.catalogue.swatch import Swatch, measure_swatch
from framing_palette.errors import FieldError
from framing_palette.picture import Picture
from framing_palette.picture.outlines import Outline

GROUND_DELTA = 7.0
"""A pixel this far from the ground in CIELAB belongs to a swatch."""

_RIM_SHARE = 0.02
_LEAST_SHARE = 0.003  # of the photograph; smaller things are crumbs and labels
_LEAST_FILL = 0.7  # of its own rectangle; less is a cable, a hand, two swatches touching askew
_MARGIN = 0.08  # of each side, so that edges and shadows stay out


@dataclass(frozen=True, slots=True)
class SheetSwatch:
    """One swatch of a sheet: its code, where it lies (0..1 across the photograph), its measures."""

    code: str
    outline: Outline
    swatch: Swatch


def find_swatches(picture: Picture, *, ignored: Sequence[Outline] = ()) -> tuple[Outline, ...]:
    """Return the swatches of a sheet in reading order, each drawn in from its edge.

    Parameters
    ----------
    picture
        The whole sheet.
    ignored
        Outlines of what lies there besides, such as the colour chart; what has its middle inside
        one of them is left out.
    """
    import cv2

    away = _away_from_ground(picture.lab_d50)
    size = max(3, round(0.004 * max(away.shape)) | 1)
    kernel = np.ones((size, size), np.uint8)
    solid = cv2.morphologyEx(away.astype(np.uint8), cv2.MORPH_CLOSE, kernel)
    solid = cv2.morphologyEx(solid, cv2.MORPH_OPEN, kernel)
    edges, _ = cv2.findContours(solid, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_SIMPLE)
    boxes = [box for edge in edges if (box := _box(edge, away.shape)) is not None]
    shape = np.array([away.shape[1], away.shape[0]], dtype=np.float64)
    kept = [
        box / shape
        for box in boxes
        if not any(_inside(box.mean(axis=0) / shape, outline) for outline in ignored)
    ]
    return tuple(_drawn_in(box) for box in _reading_order(kept))


def measure_sheet(
    picture: Picture,
    codes: Sequence[str],
    *,
    outlines: Sequence[Outline] | None = None,
    ignored: Sequence[Outline] = (),
    samples: Sequence[Sample] = (),
) -> tuple[SheetSwatch, ...]:
    """Return every swatch of a sheet with its code and its measures.

    Parameters
    ----------
    picture
        The whole sheet, chart-corrected and with its scale when there is one.
    codes
        In reading order: left to right, row by row.
    outlines
        The swatches if they are known already, else they are found.
    ignored
        As of `find_swatches`.
    samples
        A catalogue's, for the guess of the surface.

    Raises
    ------
    FieldError
        When there are more or fewer codes than swatches, or a code cannot be one.
    """
    found = find_swatches(picture, ignored=ignored) if outlines is None else tuple(outlines)
    for code in codes:
        if reason := why_not_a_code(code):
            raise FieldError("codes", got=f'"{code}"', wanted=reason)
    if len(set(codes)) != len(codes):
        raise FieldError("codes", got="with one of them twice", wanted="list each once")
    if len(codes) != len(found):
        raise FieldError(
            "codes",
            got=f"{len(codes)} for {len(found)} swatches",
            wanted="list one code for each swatch, left to right and row by row",
        )
    return tuple(
        SheetSwatch(code, outline, measure_swatch(picture, outline, samples=samples))
        for code, outline in zip(codes, found, strict=True)
    )


def _away_from_ground(lab: Float32Array) -> BoolArray:
    """Return the pixels that differ from the ground, which is what most of the rim shows."""
    import cv2

    soft = cv2.GaussianBlur(np.ascontiguousarray(lab), (0, 0), 1.5)
    rows, columns = soft.shape[:2]
    depth = max(2, round(_RIM_SHARE * min(rows, columns)))
    rim = np.concatenate(
        [
            soft[:depth].reshape(-1, 3),
            soft[-depth:].reshape(-1, 3),
            soft[:, :depth].reshape(-1, 3),
            soft[:, -depth:].reshape(-1, 3),
        ]
    )
    ground = np.median(rim, axis=0)
    return np.asarray(np.linalg.norm(soft - ground, axis=-1) > GROUND_DELTA)


def _box(edge: Any, shape: tuple[int, ...]) -> Float64Array | None:
    """Return the four corners of a shape's rectangle in pixels, None for what is no swatch."""
    import cv2

    area = float(cv2.contourArea(edge))
    rectangle = cv2.minAreaRect(edge)
    width, height = rectangle[1]
    if area < _LEAST_SHARE * shape[0] * shape[1] or area < _LEAST_FILL * width * height:
        return None
    return np.asarray(cv2.boxPoints(rectangle), dtype=np.float64)


def _inside(point: Float64Array, outline: Outline) -> bool:
    import cv2

    polygon = np.array(outline, dtype=np.float32)
    return cv2.pointPolygonTest(polygon, (float(point[0]), float(point[1])), measureDist=False) >= 0


def _reading_order(boxes: list[Float64Array]) -> list[Float64Array]:
    """Return boxes row by row; a box is of a row while its middle lies within the row."""
    rows: list[list[Float64Array]] = []
    for box in sorted(boxes, key=lambda one: float(one[:, 1].mean())):
        middle = float(box[:, 1].mean())
        if rows and middle < float(rows[-1][0][:, 1].max()):
            rows[-1].append(box)
        else:
            rows.append([box])
    return [box for row in rows for box in sorted(row, key=lambda one: float(one[:, 0].mean()))]


def _drawn_in(box: Float64Array) -> Outline:
    middle = box.mean(axis=0)
    inner = middle + (box - middle) * (1 - 2 * _MARGIN)
    return tuple((float(x), float(y)) for x, y in np.clip(inner, 0, 1))
