"""Patches: pieces of a tile that can be taken from anywhere, compared and blended."""

from dataclasses import dataclass

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from framing_palette.arrays import Float32Array

Place = tuple[int, int]
Places = NDArray[np.int64]

PATCH, OVERLAP = 0.8, 0.3  # of the tile, of the patch
TRIES = 14
COMPARED = 40  # rows or columns looked at when patches are compared
_SEAM = 2.0  # a step over the edge may be this many times a usual step
_ALIKE = 0.12  # of the tile: patches nearer than this look the same


@dataclass(frozen=True, slots=True, eq=False)
class Patches:
    """A tile laid out so that a patch from any place in it is one slice.

    ``small`` is the grey tile with every ``step``-th row, for comparing.
    """

    wide: Float32Array
    small: Float32Array
    mean: Float32Array
    tile_rows: int
    tile_columns: int
    height: int
    step: int
    width: int
    overlap: int
    starts: int
    free: bool

    @classmethod
    def of(cls, tile: Float32Array, *, height: int, wraps: bool, free: bool) -> "Patches":
        """Lay a tile out.

        Parameters
        ----------
        height
            Rows of a patch, at most the tile's.
        wraps
            Whether it goes on over its right edge.
        free
            Whether patches may also be taken from other rows.
        """
        tile = tile if free else tile[:height]
        rows, columns = tile.shape[:2]
        patch = max(4, round(PATCH * columns))
        wide = np.concatenate([tile, tile[:, :patch]], axis=1) if wraps else tile
        wide = np.concatenate([wide, wide]) if free else wide
        step = max(1, height // COMPARED)
        return cls(
            wide,
            np.ascontiguousarray(grey_of(wide)[::step]),
            tile.mean(axis=(0, 1) if free else 1, keepdims=True),
            rows,
            columns,
            height,
            step,
            patch,
            max(2, round(OVERLAP * patch)),
            columns if wraps else columns - patch + 1,
            free,
        )

    @property
    def grey_rows(self) -> int:
        """Rows of a patch that are compared."""
        return self.height // self.step

    def first(self, rng: np.random.Generator) -> Place:
        """Return a random place to begin with."""
        rows, columns = self._tries(rng)
        return int(rows[0]), int(columns[0])

    def best_after(
        self, rng: np.random.Generator, last: Place, before: Float32Array
    ) -> tuple[Place, float]:
        """Return the random place that agrees best with what it overlaps, and how far it is off.

        A place that would just go on where the last patch ended is passed over.

        Parameters
        ----------
        before
            Grey of the overlap, shape (grey_rows, overlap).
        """
        rows, columns = self._tries(rng)
        on = (last[1] + self.width - self.overlap) % self.tile_columns
        across = np.abs(_round_trip(columns - on, self.tile_columns))
        down = np.abs(_round_trip(rows - last[0], self.tile_rows))
        near = (across <= _ALIKE * self.tile_columns) & (down <= _ALIKE * self.tile_rows)
        windows = sliding_window_view(self.small, before.shape)
        errors = np.square(windows[rows // self.step, columns] - before).mean(axis=(1, 2))
        best = int(np.argmin(np.where(near, np.inf, errors)))
        return (int(rows[best]), int(columns[best])), float(errors[best])

    def _tries(self, rng: np.random.Generator) -> tuple[Places, Places]:
        columns = rng.integers(self.starts, size=TRIES)
        if not self.free:
            return 0 * columns, columns
        return rng.integers(self.tile_rows // self.step, size=TRIES) * self.step, columns

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


def grey_of(tile: Float32Array) -> Float32Array:
    """Return a tile without its colour, shape (rows, columns)."""
    return tile if tile.ndim == 2 else tile.mean(axis=2)


def likeness(error: float, grey: Float32Array) -> float:
    """Return how alike two overlapping patterns are, 0..1, from their mean squared difference.

    Unrelated patterns differ by twice the variance.
    """
    return float(np.clip(1.0 - error / max(2.0 * float(grey.var()), 1e-12), 0.0, 1.0))


def blended(
    old: Float32Array, new: Float32Array, mean: Float32Array, likeness: float, *, axis: int
) -> Float32Array:
    """Blend two patterns over an axis and keep their contrast, given how alike they are."""
    count = old.shape[axis]
    ramp = ((np.arange(count) + 0.5) / count).astype(np.float32)
    shape = [1] * old.ndim
    shape[axis] = count
    part = (ramp * ramp * (3 - 2 * ramp)).reshape(shape)
    kept = np.sqrt(part**2 + (1 - part) ** 2 + 2 * likeness * part * (1 - part))
    blend: Float32Array = mean + (part * (new - mean) + (1 - part) * (old - mean)) / kept
    return blend
