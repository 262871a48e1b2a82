"""Tiling: a small photographed surface made large without a repeat that the eye can find.

Patches from random places of the tile are laid side by side; of several random ones the patch is
taken that agrees best with what it overlaps, never the one that simply goes on. In the overlap
the two are blended so that the contrast stays: a plain average of two unlike patterns would be
flatter than either.

References
----------
A. A. Efros and W. T. Freeman, Image quilting for texture synthesis and transfer, SIGGRAPH 2001
(patches chosen by their overlap). E. Heitz and F. Neyret, High-performance by-example noise using
a histogram-preserving blending operator, 2018 (the variance-preserving blend).
"""

from dataclasses import dataclass

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view

from framing_palette.arrays import Float32Array
from framing_palette.preview.channels import (
    grey_of,
    keep_within,
    mean_of,
    multiply_by,
    range_of,
)
from framing_palette.preview.patches import (
    COMPARED,
    OVERLAP,
    PATCH,
    TRIES,
    Patches,
    blended,
    likeness,
    meets,
    unlikeness,
)

_LEAST_TILE_PX = 6
_EVEN = 0.012  # deviation of tone below which a repeat cannot be seen
_SMALL_PX = 600
_ROUNDED_ROWS = 3
_ROOM = 8  # a tile this many times as wide as the strip has no edge that matters
_LINED = 0.3  # share of the variance between rows that makes a pattern of lines along the stick


@dataclass(frozen=True, slots=True)
class Extent:
    """How large a surface must be, in pixels, and whether it is a strip.

    A strip no wider than its tile keeps lines where they lie across the stick; all else is free.
    """

    rows: int
    columns: int
    strip: bool


def rows_used(extent: Extent) -> int | None:
    """Return how many rows of a tile are enough for an extent, None for all."""
    return _ROOM * extent.rows if extent.strip else None


def spread(tile: Float32Array, extent: Extent, seed: int) -> Float32Array:
    """Return a surface of at least the wanted size made from a tile; the mean stays the tile's.

    Parameters
    ----------
    tile
        Shape (rows, columns) or (rows, columns, 3).
    extent
        The size wanted.
    seed
        Same seed, same surface.
    """
    rng = np.random.default_rng(seed)
    if extent.strip:
        tile = _filled_up(tile, extent.rows)
    over = _overhang(tile, extent)
    wanted = Extent(extent.rows + over[0], extent.columns + over[1], extent.strip)
    if extent.strip and extent.rows <= tile.shape[0]:
        loose = not _lined(tile)
        field = _strip(tile, wanted, rng, loose=loose)
    else:
        field = _sheet(tile, wanted, rng)
    for axis in (0, 1):
        field = _closed(field, over[axis], tile, axis)
    # The blend that keeps the contrast may pass the tile's own range, where colours turn false.
    field = np.ascontiguousarray(field)
    keep_within(field, *range_of(tile))
    drift = mean_of(field) / np.maximum(mean_of(tile), np.float32(1e-9))
    if drift.min() > 0:
        multiply_by(field, np.asarray(1.0 / drift, np.float32))
    return field


def window_of(field: Float32Array, row: int, column: int, rows: int, columns: int) -> Float32Array:
    """Return a block of a surface that begins anew beyond its edges, where it closes on itself."""
    height, width = field.shape[:2]
    row, column = row % height, column % width
    if row + rows <= height and column + columns <= width:
        return field[row : row + rows, column : column + columns]
    down = np.arange(row, row + rows) % height
    across = np.arange(column, column + columns) % width
    block: Float32Array = field[down][:, across]
    return block


def _filled_up(tile: Float32Array, rows: int) -> Float32Array:
    """Return a tile that was made for a strip of this width, but for rounding, made to fit it."""
    missing = rows - tile.shape[0]
    if not 0 < missing <= max(_ROUNDED_ROWS, tile.shape[0] // 20):
        return tile
    return np.concatenate([tile, np.repeat(tile[-1:], missing, axis=0)])


def _overhang(tile: Float32Array, extent: Extent) -> tuple[int, int]:
    """Return how many more rows and columns are made, to be blended into the beginning."""
    if min(tile.shape[:2]) < _LEAST_TILE_PX or _is_even(tile):
        return 0, 0
    over = [0, 0]
    for axis, wanted in ((0, extent.rows), (1, extent.columns)):
        if wanted > tile.shape[axis]:
            over[axis] = max(2, round(OVERLAP * PATCH * tile.shape[axis]))
    return over[0], over[1]


def _closed(field: Float32Array, over: int, tile: Float32Array, axis: int) -> Float32Array:
    """Return a surface without its overhang, which leads from its end over to its beginning."""
    if not over:
        return field
    end = field.shape[axis] - over
    body, rest = np.split(field, [end], axis=axis)
    begin = body[:over] if axis == 0 else body[:, :over]
    error = float(np.square(grey_of(rest) - grey_of(begin)).mean())
    alike = likeness(error, float(grey_of(tile).var()))
    begin[...] = blended(rest, begin, _overall_mean(tile), alike, axis=axis)
    return body


def _overall_mean(tile: Float32Array) -> Float32Array:
    return mean_of(tile).reshape(1, 1, *tile.shape[2:])


def _folded(start: int, count: int, size: int) -> np.ndarray:
    place = np.arange(start, start + count) % (2 * size)
    return np.where(place < size, place, 2 * size - 1 - place)


def _is_even(tile: Float32Array) -> bool:
    grey = grey_of(tile)
    return float(grey.std()) <= _EVEN * max(float(grey.mean()), 1e-9)


def _strip(
    tile: Float32Array, extent: Extent, rng: np.random.Generator, *, loose: bool
) -> Float32Array:
    """Return a tile continued along its columns; unless loose, rows stay where they are.

    The extent has at most the tile's rows.
    """
    width, columns = tile.shape[1], extent.columns
    first = int(rng.integers(width))
    closes = meets(tile, axis=1)
    if width < _LEAST_TILE_PX or _is_even(tile) or (columns <= width and closes):
        places = (np.arange(columns) + first) % width if closes else _folded(first, columns, width)
        return tile[: extent.rows, places]
    closed = loose and meets(tile, axis=0)
    free = closed or (loose and tile.shape[0] >= _ROOM * extent.rows)
    patches = Patches.of(tile, height=extent.rows, wraps=closes, free=free, closed=closed)
    return _quilted(patches, columns, rng)


def _lined(tile: Float32Array) -> bool:
    """Tell whether a pattern is mostly lines along the stick, which must not jump across it."""
    grey = grey_of(tile)
    return float(grey.mean(axis=1).var()) > _LINED * float(grey.var())


def _quilted(patches: "Patches", columns: int, rng: np.random.Generator) -> Float32Array:
    patch, overlap = patches.width, patches.overlap
    depth = patches.wide.shape[2:]
    out = np.empty((patches.height, columns + patch, *depth), np.float32)
    kept = np.empty((patches.grey_rows, columns + patch), np.float32)
    place, at = 0, patches.first(rng)
    laid = [at]
    out[:, :patch], kept[:, :patch] = patches.cut(at), patches.grey(at, patch)
    further = max(0, -(-(columns - patch) // (patch - overlap)))
    for tries in zip(*patches.tries(rng, further), strict=True):
        place += patch - overlap
        before = kept[:, place : place + overlap]
        at, error = patches.best_after(tries, laid, before)
        laid.append(at)
        fresh = patches.cut(at)
        out[:, place : place + overlap] = blended(
            out[:, place : place + overlap],
            fresh[:, :overlap],
            patches.mean,
            likeness(error, patches.variance),
            axis=1,
        )
        out[:, place + overlap : place + patch] = fresh[:, overlap:]
        kept[:, place : place + patch] = patches.grey(at, patch)
    return out[:, :columns]


def _sheet(tile: Float32Array, extent: Extent, rng: np.random.Generator) -> Float32Array:
    """Return a tile continued both ways: strips of it, stacked at shifts that agree."""
    height, width = tile.shape[:2]
    if min(height, width) < _LEAST_TILE_PX or _is_even(tile):
        return _repeated(tile, extent)
    spare = width
    length = Extent(height, extent.columns + spare, extent.strip)
    loose = not (extent.strip and _lined(tile))
    variants = [_strip(tile, length, rng, loose=loose) for _ in range(_variants(extent))]
    if extent.rows <= height:
        return variants[0][: extent.rows, : extent.columns]
    wraps = meets(tile, axis=0)
    patch = max(4, round(PATCH * height))
    overlap = max(2, round(OVERLAP * patch))
    mean = _overall_mean(tile)
    out = np.empty((extent.rows + patch, extent.columns, *tile.shape[2:]), np.float32)
    bands = _Bands(variants, extent.columns, patch, spare, wraps=wraps)
    band = bands.drawn(rng)[0]
    out[:patch] = band
    place = 0
    while place + patch < extent.rows:
        place += patch - overlap
        before = out[place : place + overlap]
        band, alike = bands.drawn(rng, before)
        out[place : place + overlap] = blended(before, band[:overlap], mean, alike, axis=0)
        out[place + overlap : place + patch] = band[overlap:]
    return out[: extent.rows]


def _variants(extent: Extent) -> int:
    """Return how many strips a surface is stacked from; a small or narrow one can do with one."""
    return 1 if extent.strip or extent.columns <= _SMALL_PX else 2


def _repeated(tile: Float32Array, extent: Extent) -> Float32Array:
    rows, columns = np.arange(extent.rows), np.arange(extent.columns)
    height, width = tile.shape[:2]
    down = rows % height if meets(tile, axis=0) else _folded(0, extent.rows, height)
    across = columns % width if meets(tile, axis=1) else _folded(0, extent.columns, width)
    repeated: Float32Array = tile[down][:, across]
    return repeated


class _Bands:
    """Bands cut out of long strips at random heights and shifts."""

    def __init__(
        self, variants: list[Float32Array], columns: int, patch: int, spare: int, *, wraps: bool
    ) -> None:
        height = variants[0].shape[0]
        self._strips = [
            np.concatenate([strip, strip[:patch]]) if wraps else strip for strip in variants
        ]
        self._starts = height if wraps else height - patch + 1
        self._columns, self._patch = columns, patch
        self._step = max(1, columns // (4 * COMPARED))
        self._shifts = max(1, spare // self._step)
        greys = [grey_of(strip) for strip in self._strips]
        self._variances = [float(grey.var()) for grey in greys]
        self._smalls = np.stack([grey[:, :: self._step] for grey in greys])

    def drawn(
        self, rng: np.random.Generator, before: Float32Array | None = None
    ) -> tuple[Float32Array, float]:
        """Return the best of some random bands and how well it agrees with what is above it."""
        count = TRIES if before is not None else 1
        limits = (len(self._strips), self._starts, self._shifts)
        tries = [rng.integers(limit, size=count) for limit in limits]
        errors = np.zeros(1, np.float32)
        if before is not None:
            above = grey_of(before)[:, :: self._step]
            windows = sliding_window_view(self._smalls, above.shape, axis=(1, 2))
            errors = unlikeness(windows[tuple(tries)], above)
        best = int(np.argmin(errors))
        strip, row, shift = (int(places[best]) for places in tries)
        column = shift * self._step
        band = self._strips[strip][row : row + self._patch, column : column + self._columns]
        return band, likeness(float(errors[best]), self._variances[strip])
