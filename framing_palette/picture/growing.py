"""Growing: the outline of what hangs together in colour around a point of the picture."""

import cv2
import numpy as np

from framing_palette.arrays import UInt8Array
from framing_palette.errors import FieldError
from framing_palette.picture.outlines import Outline, lasso
from framing_palette.picture.pictures import Picture
from framing_palette.picture.regions import Point
from framing_palette.picture.resampling import as_float32, blurred, shrunk

GROW_SIDE = 480
"""Longest side of the small picture that is grown in."""

TOLERANCES = (2.0, 40.0)
"""Smallest and largest tolerance, in ΔE units of plain CIELAB distance."""

USUAL_TOLERANCE = 12.0
_CLOSE_PX = 5
_SMOOTH = 0.003


def grown_outline(
    picture: Picture,
    start: Point,
    *,
    tolerance: float = USUAL_TOLERANCE,
) -> Outline:
    """Return the outline of the connected area whose colours are like those at a point.

    Holes are closed, and fine texture is smoothed away first, so that brush strokes and weave do
    not tear the area apart.

    Parameters
    ----------
    picture
        The picture.
    start
        (x, y) from 0 to 1 across the picture.
    tolerance
        How far colours may differ from those around the point, CIELAB units, 2 to 40.

    Raises
    ------
    FieldError
        When the point lies outside the picture or the tolerance outside its range.

    References
    ----------
    R. Adams and L. Bischof, Seeded region growing, 1994: here with a fixed seed colour.
    """
    x, y = start
    if not (0 <= x <= 1 and 0 <= y <= 1):
        raise FieldError("start", got=start, wanted="choose a point of the picture")
    if not TOLERANCES[0] <= tolerance <= TOLERANCES[1]:
        raise FieldError("tolerance", got=tolerance, wanted="choose 2 to 40")
    soft = blurred(shrunk(picture.lab_d50, GROW_SIDE), 1.5)
    rows, columns = soft.shape[:2]
    row, column = min(int(y * rows), rows - 1), min(int(x * columns), columns - 1)
    seed = soft[max(0, row - 2) : row + 3, max(0, column - 2) : column + 3]
    like = ((soft - np.median(seed.reshape(-1, 3), axis=0)) ** 2).sum(axis=-1) <= tolerance**2
    like[row, column] = True
    return lasso(_hanging_together(like.astype(np.uint8), row, column), tolerance=_SMOOTH)


def _hanging_together(like: UInt8Array, row: int, column: int) -> Outline:
    kernel = np.ones((_CLOSE_PX, _CLOSE_PX), dtype=np.uint8)
    closed = cv2.morphologyEx(like, cv2.MORPH_CLOSE, kernel)
    _, labels = cv2.connectedComponents(closed)
    area = (labels == labels[row, column]).astype(np.uint8)
    area = cv2.dilate(area, np.ones((3, 3), dtype=np.uint8))  # what the softening took off
    contours, _ = cv2.findContours(area, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    longest = max(contours, key=len).reshape(-1, 2)
    rows, columns = like.shape
    points = as_float32(longest) + 0.5
    return tuple((float(px) / columns, float(py) / rows) for px, py in points)
