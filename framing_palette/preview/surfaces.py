"""Surfaces: a sample's texture at the scale of the picture, true to its measured colour."""

from dataclasses import dataclass
from zlib import crc32

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.colour import lab_d50_to_linear_srgb, linear_srgb_to_lab_d50
from framing_palette.preview.skins import Skin
from framing_palette.preview.texture_files import TextureImage
from framing_palette.preview.tiling import Extent, spread

_WHITE = 0.985
_LOOKED_AT_PX = 6000
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
    tile = _scaled(texture.linear, skin.texture_mm_per_px * texture.reduced * px_per_mm)
    if tile.ndim == 2:
        mean = float(tile.mean())
        if mean <= 0:
            return Surface(colour)
        tile = _within_white(tile / np.float32(mean), float(colour.max()))
    else:
        lab = linear_srgb_to_lab_d50(np.maximum(tile, 0.0))
        lab += np.asarray(skin.lab, np.float32) - lab.mean(axis=(0, 1))
        tile = lab_d50_to_linear_srgb(lab).astype(np.float32)
    if extent is not None:
        tile = spread(tile, extent, seed_of(skin.code))
        tile = _settled(tile, skin.lab) if tile.ndim == 3 else tile
    return Surface(colour, tile)


def _settled(field: Float32Array, lab: tuple[float, float, float]) -> Float32Array:
    """Return a spread surface whose mean Lab is the sample's again; a sample of it tells."""
    step = max(1, int((field.shape[0] * field.shape[1] / _LOOKED_AT_PX) ** 0.5))
    mean = linear_srgb_to_lab_d50(np.maximum(field[::step, ::step], 0.0)).mean(axis=(0, 1))
    wanted = lab_d50_to_linear_srgb(np.asarray(lab))
    got = lab_d50_to_linear_srgb(mean.astype(np.float64))
    gain = np.clip(wanted / np.maximum(got, 1e-6), 0.5, 2.0)
    settled: Float32Array = field * gain.astype(np.float32)
    return settled


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


def _scaled(linear: Float32Array, factor: float) -> Float32Array:
    import cv2

    keep = max(1, int(LARGEST_TILE_PX / max(factor, 1e-9)))
    cut = np.ascontiguousarray(linear[:keep, :keep])
    rows = max(1, round(cut.shape[0] * factor))
    columns = max(1, round(cut.shape[1] * factor))
    if (rows, columns) == cut.shape[:2]:
        return cut
    if rows <= cut.shape[0] and columns <= cut.shape[1]:
        return np.asarray(cv2.resize(cut, (columns, rows), interpolation=cv2.INTER_AREA))
    enlarged = cv2.resize(cut, (columns, rows), interpolation=cv2.INTER_CUBIC)
    # A cubic curve swings past sharp edges; beyond the tile's own range colours turn false.
    return np.clip(enlarged, cut.min(axis=(0, 1)), cut.max(axis=(0, 1)))
