"""Pieces: drawn blocks of linear light, laid over one another from the frame inward."""

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.preview.channels import lit_by
from framing_palette.preview.grids import Box


@dataclass(frozen=True, slots=True, eq=False)
class Piece:
    """A block of pixels and how much of each it covers.

    Parameters
    ----------
    box
        Where it lies on the grid.
    linear
        Shape (rows, columns, 3), linear sRGB.
    cover_rows, cover_columns
        Coverage of each row and column, 0..1; a pixel's is the product. None covers wholly.
    cover
        Coverage of each pixel, shape (rows, columns), for round outlines, else None.
    """

    box: Box
    linear: Float32Array
    cover_rows: Float32Array | None = None
    cover_columns: Float32Array | None = None
    cover: Float32Array | None = None

    @property
    def size_bytes(self) -> int:
        """Memory that it holds."""
        return self.linear.nbytes + (self.cover.nbytes if self.cover is not None else 0)


def lay(pieces: Iterable[Piece], box: Box) -> Float32Array:
    """Return a block of the picture with the pieces laid over one another in order."""
    canvas = np.zeros((box.rows, box.columns, 3), np.float32)
    lay_onto(canvas, pieces, box)
    return canvas


def lay_onto(canvas: Float32Array, pieces: Iterable[Piece], box: Box) -> None:
    """Lay pieces in order onto a canvas that fills a block."""
    for piece in pieces:
        shared = piece.box.meet(box)
        if not shared.empty:
            _lay_one(piece, shared, canvas, box)


def _lay_one(piece: Piece, shared: Box, canvas: Float32Array, box: Box) -> None:
    rows, columns = shared.within(piece.box)
    source = piece.linear[rows, columns]
    target = canvas[shared.within(box)]
    if piece.cover is not None:
        target += lit_by(source - target, piece.cover[rows, columns])
        return
    edges = _edge_lines(piece, rows, columns)
    below = [(place, target[place].copy(), cover) for place, cover in edges]
    target[...] = source
    for place, under, cover in below:
        target[place] = under + (source[place] - under) * cover


Place = tuple[slice, slice]


def _edge_lines(piece: Piece, rows: slice, columns: slice) -> list[tuple[Place, Float32Array]]:
    """Return the rows and columns that are covered in part, each with its coverage.

    Corner pixels appear in a row and in a column; both carry the same product.
    """
    if piece.cover_rows is None or piece.cover_columns is None:
        return []
    down, across = piece.cover_rows[rows], piece.cover_columns[columns]
    lines: list[tuple[Place, Float32Array]] = []
    for row in np.flatnonzero(down < 1.0):
        cover = (down[row] * across)[None, :, None]
        lines.append(((slice(row, row + 1), slice(None)), cover))
    for column in np.flatnonzero(across < 1.0):
        cover = (down * across[column])[:, None, None]
        lines.append(((slice(None), slice(column, column + 1)), cover))
    return lines
