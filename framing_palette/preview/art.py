"""The art: the picture resampled into its place on the grid."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil, sqrt

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.colour.pictures import lab_picture_to_linear_srgb
from framing_palette.picture import Picture
from framing_palette.preview.channels import lit_by
from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.ovals import clipped
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import Hole, Rect
from framing_palette.preview.sections import Site
from framing_palette.preview.shade import level_light
from framing_palette.preview.skins import REFERENCE_LIGHT


@dataclass(frozen=True, slots=True, eq=False)
class ArtImage:
    """A picture reduced to where it will lie, with the picture that it was made from."""

    picture: Picture
    linear: Float32Array


_WORKING_PX = 3_000_000  # what is kept of a large picture while its place changes
_STRIPE_ROWS = 40
STRETCH_ALLOWED = 0.02  # typed and photographed proportions may differ this much


def linear_picture(picture: Picture, *, under: str = REFERENCE_LIGHT) -> Float32Array:
    """Return the picture in linear sRGB, as it looks in the client's light.

    A picture has no reflectances, so under another light than the shop's it is an estimate.
    """
    return _in_light(picture.lab_d50, under)


def _in_light(lab: Float32Array, under: str) -> Float32Array:
    if under != REFERENCE_LIGHT:
        from framing_palette.catalogue.light import lab_under

        lab = lab_under(lab, under).astype(np.float32)
    return lab_picture_to_linear_srgb(lab)


def working_picture(picture: Picture, *, under: str = REFERENCE_LIGHT) -> Float32Array:
    """Return a picture in linear sRGB, a large one reduced by a whole number, to be kept."""
    by = max(1, ceil(sqrt(picture.rows * picture.columns / _WORKING_PX)))
    if by == 1:
        return linear_picture(picture, under=under)
    rows, columns = max(1, picture.rows // by), max(1, picture.columns // by)
    return _reduced(picture.lab_d50[: rows * by, : columns * by], rows, columns, under)


def placed_picture(picture: Picture, art: Rect, box: Box, *, under: str) -> Float32Array:
    """Return the part of a picture that is shown, reduced to a block's size if it is larger."""
    lab = fitted(picture.lab_d50, art)
    if lab.shape[0] < box.rows or lab.shape[1] < box.columns:
        return _in_light(lab, under)
    return _reduced(lab, box.rows, box.columns, under)


def _reduced(lab: Float32Array, rows: int, columns: int, under: str) -> Float32Array:
    """Return colours in linear light averaged over areas, first along the rows, then down.

    Worked through by stripes, so that the whole is never held in linear light.
    """
    import cv2

    narrow = np.empty((lab.shape[0], columns, 3), np.float32)
    for row in range(0, lab.shape[0], _STRIPE_ROWS):
        linear = _in_light(lab[row : row + _STRIPE_ROWS], under)
        cv2.resize(
            linear,
            (columns, linear.shape[0]),
            dst=narrow[row : row + _STRIPE_ROWS],
            interpolation=cv2.INTER_AREA,
        )
    small = cv2.resize(narrow, (columns, rows), interpolation=cv2.INTER_AREA)
    return np.asarray(small, np.float32)


def fitted(linear: Float32Array, rect: Rect) -> Float32Array:
    """Return the middle of a picture cut to an art's proportions, when they differ."""
    rows, columns = linear.shape[:2]
    wanted, got = rect.width / rect.height, columns / rows
    if abs(wanted / got - 1.0) <= STRETCH_ALLOWED:
        return linear
    if got > wanted:
        keep = max(1, round(rows * wanted))
        start = (columns - keep) // 2
        return linear[:, start : start + keep]
    keep = max(1, round(columns / wanted))
    start = (rows - keep) // 2
    return linear[start : start + keep]


def placed(rect: Rect, grid: Grid) -> Box:
    """Return the whole pixels that an art fills, at least one."""
    top, left = round(grid.y_px(rect.top)), round(grid.x_px(rect.left))
    bottom, right = round(grid.y_px(rect.bottom)), round(grid.x_px(rect.right))
    return Box(top, max(bottom, top + 1), left, max(right, left + 1))


def scaled(linear: Float32Array, box: Box) -> Float32Array:
    """Return the picture reduced to a block's size, or as it is when it must be enlarged."""
    import cv2

    if linear.shape[0] < box.rows or linear.shape[1] < box.columns:
        return linear
    size = (box.columns, box.rows)
    return np.asarray(cv2.resize(linear, size, interpolation=cv2.INTER_AREA), np.float32)


def cut(image: Float32Array, box: Box, part: Box) -> Float32Array:
    """Return the part of a block from an image that fills the block, enlarging as needed."""
    import cv2

    if image.shape[:2] == (box.rows, box.columns):
        return image[part.within(box)]
    step_x, step_y = image.shape[1] / box.columns, image.shape[0] / box.rows
    columns = (np.arange(part.column_0, part.column_1) - box.column_0 + 0.5) * step_x - 0.5
    rows = (np.arange(part.row_0, part.row_1) - box.row_0 + 0.5) * step_y - 0.5
    map_x, map_y = np.meshgrid(columns.astype(np.float32), rows.astype(np.float32))
    enlarged = cv2.remap(
        image, map_x, map_y, interpolation=cv2.INTER_CUBIC, borderMode=cv2.BORDER_REPLICATE
    )
    return np.maximum(np.asarray(enlarged, np.float32), 0.0)


def art_pieces(site: Site, image: Float32Array, sight: Hole, seen: Box) -> Iterator[Piece]:
    """Draw one art's part of a block, in the shade of the layers round it.

    Parameters
    ----------
    image
        The picture from ``scaled``.
    sight
        The opening that it is seen through.
    """
    box = placed(site.plan.arts[site.window], site.grid)
    part = box.meet(seen).meet(site.grid.around(sight.rect))
    if not part.empty:
        lit = level_light(site, 0, 0.0, part)
        yield clipped(sight, site.grid, part, lit_by(cut(image, box, part), lit))
