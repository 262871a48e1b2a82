"""Surfaces: a sample's texture at the scale of the picture, true to its measured colour."""

from dataclasses import dataclass
from math import ceil
from zlib import crc32

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.colour import lab_d50_to_linear_srgb, linear_srgb_to_lab_d50
from framing_palette.colour.pictures import lab_picture_to_linear_srgb
from framing_palette.preview.channels import keep_within, mean_of, multiply_by, range_of
from framing_palette.preview.patches import meets
from framing_palette.preview.skins import Skin
from framing_palette.preview.texture_files import TextureImage
from framing_palette.preview.tiling import Extent, rows_used, spread

_WHITE = 0.985
_LOOKED_AT_PX = 6000
_BEYOND_PX = 3
LARGEST_TILE_PX = 1536  # of the scaled texture kept; a larger one is cut


@dataclass(frozen=True, slots=True, eq=False)
class Surface:
    """A level, evenly lit sample, as a tile.

    Parameters
    ----------
    colour
        Linear sRGB of the whole, shape (3,).
    tile
        None for an even surface; (rows, columns) a tone whose mean is 1; (rows, columns, 3) the
        surface in linear sRGB. The grain runs along the columns' index.
    """

    colour: Float32Array
    tile: Float32Array | None = None


def linear_of(lab: tuple[float, float, float]) -> Float32Array:
    """Return a colour in linear sRGB, not clipped, shape (3,)."""
    return lab_d50_to_linear_srgb(np.asarray(lab)).astype(np.float32)


def seed_of(*words: object) -> int:
    """Return a seed that depends on nothing but the words."""
    return crc32("|".join(str(word) for word in words).encode())


def surface_of(
    skin: Skin, texture: TextureImage | None, px_per_mm: float, extent: Extent | None = None
) -> Surface:
    """Return a skin's surface with its texture scaled to the picture.

    The mean over the tile is the sample's measured Lab: relief multiplies that colour by a tone
    with mean 1 in linear light; a photographed surface is moved as a whole in Lab.

    Parameters
    ----------
    extent
        How large the surface must be; None for the bare tile.
    """
    colour = linear_of(skin.lab)
    if texture is None:
        return Surface(colour)
    factor = skin.texture_mm_per_px * texture.reduced * px_per_mm
    tile = _scaled(texture.linear, factor, rows_used(extent) if extent else None)
    if tile.ndim == 2:
        mean = float(mean_of(tile))
        if mean <= 0:
            return Surface(colour)
        tile = _within_white(tile / np.float32(mean), float(colour.max()))
    else:
        lab = linear_srgb_to_lab_d50(np.maximum(tile, 0.0))
        lab = lab.astype(np.float32, copy=False)
        lab += np.asarray(skin.lab, np.float32) - mean_of(lab)
        tile = lab_picture_to_linear_srgb(lab)
    if extent is not None:
        tile = spread(tile, extent, seed_of(skin.code))
        if tile.ndim == 3:
            _settle(tile, skin.lab)
    return Surface(colour, tile)


def _settle(field: Float32Array, lab: tuple[float, float, float]) -> None:
    """Move a spread surface so that its mean Lab is the sample's again; a sample of it tells."""
    step = max(1, int((field.shape[0] * field.shape[1] / _LOOKED_AT_PX) ** 0.5))
    mean = mean_of(linear_srgb_to_lab_d50(np.maximum(field[::step, ::step], 0.0)))
    wanted = lab_d50_to_linear_srgb(np.asarray(lab))
    got = lab_d50_to_linear_srgb(mean.astype(np.float64))
    gain = np.clip(wanted / np.maximum(got, 1e-6), 0.5, 2.0)
    multiply_by(field, gain.astype(np.float32))


def _within_white(tone: Float32Array, brightest: float) -> Float32Array:
    """Return a tone flattened as far as it would carry a pale surface past white.

    Cutting it off instead would darken the mean and so the sample.
    """
    top = float(np.quantile(tone, 0.995)) - 1.0
    allowed = max(_WHITE / max(brightest, 1e-6) - 1.0, 0.0)
    if top <= allowed:
        return tone
    flattened: Float32Array = 1.0 + (tone - 1.0) * np.float32(allowed / top)
    return flattened


def _scaled(linear: Float32Array, factor: float, most_rows: int | None = None) -> Float32Array:
    import cv2

    keep = max(1, int(LARGEST_TILE_PX / max(factor, 1e-9)))
    rows = keep if most_rows is None else min(keep, ceil((most_rows + 1) / max(factor, 1e-9)))
    cut = np.ascontiguousarray(linear[:rows, :keep])
    rows = max(1, round(cut.shape[0] * factor))
    columns = max(1, round(cut.shape[1] * factor))
    if (rows, columns) == cut.shape[:2]:
        return cut
    if rows <= cut.shape[0] and columns <= cut.shape[1]:
        return np.asarray(cv2.resize(cut, (columns, rows), interpolation=cv2.INTER_AREA))
    enlarged = _enlarged(cut, rows, columns)
    # A cubic curve swings past sharp edges; beyond the tile's own range colours turn false.
    keep_within(enlarged, *range_of(cut))
    return enlarged


def _enlarged(tile: Float32Array, rows: int, columns: int) -> Float32Array:
    """Return a tile made larger, still seamless where it was.

    Where it goes on over an edge, what comes beyond is put there first, so that the curve through
    the last pixels leads into the first ones.
    """
    import cv2

    beyond = [min(_BEYOND_PX, tile.shape[axis]) if meets(tile, axis) else 0 for axis in (0, 1)]
    margin = [(pixels, pixels) for pixels in beyond] + [(0, 0)] * (tile.ndim - 2)
    down, across = (
        round(pixels * size / tile.shape[axis])
        for axis, (pixels, size) in enumerate(zip(beyond, (rows, columns), strict=True))
    )
    size = (columns + 2 * across, rows + 2 * down)
    cubic = cv2.resize(np.pad(tile, margin, mode="wrap"), size, interpolation=cv2.INTER_CUBIC)
    inner = np.asarray(cubic, np.float32)[down : down + rows, across : across + columns]
    return np.ascontiguousarray(inner)
