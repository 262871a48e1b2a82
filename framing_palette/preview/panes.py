"""Panes: what the glazing mirrors of the room."""

from collections.abc import Iterator

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import Pane, Plan, Rect

# Share of the light that is mirrored straight on, both faces together. Ordinary glass: about 8 %
# by Fresnel's law for an index of 1.52; coated: below 1 %, by the makers' usual figures (from
# memory). The mirrored room is mostly dim, so half of it is shown.
_MIRRORED = {Pane.PLAIN: 0.04, Pane.LOW_REFLECTION: 0.006}
_TINT = {Pane.PLAIN: (1.0, 1.0, 1.0), Pane.LOW_REFLECTION: (0.78, 1.0, 1.12)}
_ROOM, _WINDOW = 0.25, 1.2  # light of the mirrored room and of the window in it


def pane_pieces(plan: Plan, pane: Pane, grid: Grid, box: Box) -> Iterator[Piece]:
    """Draw the glazing's part of a block: a faint, soft window in a dim room."""
    if pane is Pane.NONE or not plan.pane_below:
        return
    above = plan.layers[plan.pane_below :]
    sight = above[0].holes[0].rect if above else plan.extent
    part = grid.around(sight).meet(box)
    if part.empty:
        return
    rows, columns = grid.cover(sight, part)
    cover = np.multiply.outer(rows, columns) * np.float32(_MIRRORED[pane])
    mirrored = _room(sight, grid, part)[..., None] * np.asarray(_TINT[pane], np.float32)
    yield Piece(part, mirrored, cover=cover)


def _room(sight: Rect, grid: Grid, box: Box) -> Float32Array:
    """Return the light of the mirrored room: a leaning window of two lights, its edges soft."""
    x = ((grid.x_mm(box) - sight.left) / sight.width)[None, :]
    y = ((grid.y_mm(box) - sight.top) / sight.height)[:, None]
    across = x + 0.42 * y
    window = _between(across, 0.12, 0.36) + _between(across, 0.40, 0.64)
    fade = np.clip(1.15 - y, 0.0, 1.0) ** 2
    light: Float32Array = (_ROOM + _WINDOW * window * fade).astype(np.float32)
    return light


def _between(place: np.ndarray, start: float, stop: float) -> np.ndarray:
    soft = 0.05
    rise = np.clip((place - start) / soft + 0.5, 0.0, 1.0)
    fall = np.clip((stop - place) / soft + 0.5, 0.0, 1.0)
    both = rise * fall
    return both * both * (3.0 - 2.0 * both)
