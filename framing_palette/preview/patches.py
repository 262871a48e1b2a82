"""Patches: pieces of a tile that can be taken from anywhere, compared and blended."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from framing_palette.arrays import Float32Array
from framing_palette.preview.channels import grey_of, in_lines, mean_of

Place = tuple[int, int]
Places = NDArray[np.int64]

PATCH, OVERLAP = 0.8, 0.3  # of the tile, of the patch
TRIES = 14
COMPARED = 24  # rows or columns looked at when patches are compared
_SEAM = 2.0  # a step over the edge may be this many times a usual step
_REMEMBERED = 4
_ALIKE = 0.12  # of the tile: patches nearer than this look the same


@dataclass(frozen=True, slots=True, eq=False)
class Patches:
    """A tile laid out so that a patch from any place in it is one slice.

    ``small`` is the grey tile with every ``step``-th row, for comparing, ``variance`` its own, and
    ``windows`` every piece of it that an overlap may show.
    """

    wide: Float32Array
    small: Float32Array
    windows: Float32Array
    variance: float
    mean: Float32Array
    tile_rows: int
    tile_columns: int
    height: int
    step: int
    width: int
    overlap: int
    starts: int
    row_starts: int

    @classmethod
    def of(
        cls, tile: Float32Array, *, height: int, wraps: bool, free: bool, closed: bool = True
    ) -> "Patches":
        """Lay a tile out.

        Parameters
        ----------
        height
            Rows of a patch, at most the tile's.
        wraps
            Whether it goes on over its right edge.
        free
            Whether patches may also be taken from other rows.
        closed
            Whether it goes on over its lower edge, so that they may lie across that.
        """
        tile = tile if free else tile[:height]
        rows, columns = tile.shape[:2]
        patch = max(4, round(PATCH * columns))
        wide = np.concatenate([tile, tile[:, :patch]], axis=1) if wraps else tile
        wide = np.concatenate([wide, wide[:height]]) if free and closed else wide
        step = max(1, height // COMPARED)
        small = np.ascontiguousarray(grey_of(wide)[::step])
        row_starts = rows if closed else rows - height + 1
        overlap = max(2, round(OVERLAP * patch))
        return cls(
            wide,
            small,
            sliding_window_view(small, (height // step, overlap)),
            float(small.var()),
            mean_of(tile).reshape(1, 1, *tile.shape[2:]) if free else _row_means(tile),
            rows,
            columns,
            height,
            step,
            patch,
            overlap,
            columns if wraps else columns - patch + 1,
            row_starts if free else 1,
        )

    @property
    def memory(self) -> int:
        """How many of the last places are not taken again; fewer where there is little choice."""
        return 1 if self.row_starts == 1 else _REMEMBERED

    @property
    def grey_rows(self) -> int:
        """Rows of a patch that are compared."""
        return self.height // self.step

    def first(self, rng: np.random.Generator) -> Place:
        """Return a random place to begin with."""
        rows, columns = self.tries(rng, 1)
        return int(rows[0, 0]), int(columns[0, 0])

    def best_after(
        self, tries: tuple[Places, Places], laid: list[Place], before: Float32Array
    ) -> tuple[Place, float]:
        """Return the place that agrees best with what it overlaps, and how far it is off.

        A place that would just go on where the last patch ended is passed over, and so is one
        that was taken a moment ago: the eye finds the same mark twice in a row at once.

        Parameters
        ----------
        tries
            Rows and columns of places to choose from.
        laid
            The places taken so far, at least one.
        before
            Grey of the overlap, shape (grey_rows, overlap).
        """
        rows, columns = tries
        shunned = np.array([*laid[-self.memory :], laid[-1]])
        shunned[-1, 1] += self.width - self.overlap
        across = np.abs(_round_trip(columns - shunned[:, 1:], self.tile_columns))
        down = np.abs(_round_trip(rows - shunned[:, :1], self.tile_rows))
        near = (across <= _ALIKE * self.tile_columns) & (down <= _ALIKE * self.tile_rows)
        errors = unlikeness(self.windows[rows // self.step, columns], before)
        best = int(np.argmin(np.where(np.any(near, axis=0), np.inf, errors)))
        return (int(rows[best]), int(columns[best])), float(errors[best])

    def tries(self, rng: np.random.Generator, count: int) -> tuple[Places, Places]:
        """Return rows and columns of random places for so many choices, a line for each."""
        columns = rng.integers(self.starts, size=(count, TRIES))
        if self.row_starts == 1:
            return 0 * columns, columns
        rows = rng.integers(max(1, self.row_starts // self.step), size=columns.shape)
        return rows * self.step, columns

    def cut(self, at: Place) -> Float32Array:
        """Return the patch from a place."""
        row, column = at
        return self.wide[row : row + self.height, column : column + self.width]

    def grey(self, at: Place, columns: int) -> Float32Array:
        """Return the grey beginning of the patch from a place, for comparing."""
        row, column = at[0] // self.step, at[1]
        return self.small[row : row + self.grey_rows, column : column + columns]


def _round_trip(difference: Places, size: int) -> Places:
    return (difference + size // 2) % size - size // 2


def meets(tile: Float32Array, axis: int) -> bool:
    """Tell whether a tile goes on over its edge as smoothly as it does inside."""
    grey = grey_of(tile)
    grey = grey if axis == 0 else grey.T
    if grey.shape[0] < 3:
        return True
    usual = float(np.abs(np.diff(grey, axis=0)).mean())
    return float(np.abs(grey[0] - grey[-1]).mean()) <= _SEAM * usual + 1e-6


def unlikeness(tries: Float32Array, before: Float32Array) -> Float32Array:
    """Return the mean squared difference of each of some greys, shape (n, rows, columns)."""
    apart = (tries - before).reshape(len(tries), -1)
    errors: Float32Array = np.einsum("ij,ij->i", apart, apart) / np.float32(apart.shape[1])
    return errors


def likeness(error: float, variance: float) -> float:
    """Return how alike two overlapping patterns are, 0..1, from their mean squared difference.

    Unrelated patterns differ by twice the variance.
    """
    return min(max(1.0 - error / max(2.0 * variance, 1e-12), 0.0), 1.0)


def blended(
    old: Float32Array, new: Float32Array, mean: Float32Array, likeness: float, *, axis: int
) -> Float32Array:
    """Blend two patterns over an axis and keep their contrast, given how alike they are.

    With part p of the new pattern the blend is mean + (p (new - mean) + (1 - p) (old - mean)) / k,
    k being what the contrast of the sum would shrink to.
    """
    part, squares, both = _ramp(old.shape[axis], 1 if axis == 0 or old.ndim == 2 else 3)
    kept = np.reciprocal(np.sqrt(squares + likeness * both)).astype(np.float32, copy=False)
    of_new, of_old = part * kept, (1.0 - part) * kept
    if axis == 0:
        of_new, of_old = of_new[:, None], of_old[:, None]
    middle = in_lines(np.broadcast_to(mean, (*mean.shape[:1], *old.shape[1:])))
    blend: Float32Array = in_lines(new) * of_new
    blend += in_lines(old) * of_old
    blend += middle * (1.0 - of_new - of_old)
    return blend.reshape(old.shape)


@lru_cache(maxsize=64)
def _ramp(count: int, channels: int) -> tuple[Float32Array, Float32Array, Float32Array]:
    """Return the part p of the new pattern over an overlap, p2 + (1 - p)2, and 2 p (1 - p)."""
    ramp = np.repeat((np.arange(count, dtype=np.float32) + 0.5) / count, channels)
    part = np.asarray(ramp * ramp * (3.0 - 2.0 * ramp), np.float32)
    both = np.asarray(2.0 * part * (1.0 - part), np.float32)
    return part, np.asarray(1.0 - both, np.float32), both


def _row_means(tile: Float32Array) -> Float32Array:
    """Return the mean of each row, shape (rows, 1) or (rows, 1, 3)."""
    import cv2

    return np.asarray(cv2.reduce(tile, 1, cv2.REDUCE_AVG), np.float32)
