"""Reading photographed surfaces from the catalogue's textures folder."""

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from framing_palette.arrays import Float32Array, UInt8Array
from framing_palette.catalogue.surface_files import FORMATS
from framing_palette.colour import srgb_to_linear
from framing_palette.errors import CatalogueError
from framing_palette.picture.still_files import CODEC_FAULTS
from framing_palette.whole_files import check_ordinary

if TYPE_CHECKING:
    from PIL.Image import Image as PillowImage

MOST_PIXELS = 80_000_000  # larger scans are refused before they are decoded
_STRIPE_ROWS = 32
_KEPT_PX = 2048  # a larger one is averaged down as it is read
_RELIEF_MODES = frozenset({"L", "LA", "I;16", "1"})


@dataclass(frozen=True, slots=True, eq=False)
class TextureImage:
    """A photographed surface in linear light.

    Parameters
    ----------
    linear
        Shape (rows, columns) for relief, a tone around the sample's own colour, and
        (rows, columns, 3) for the surface itself.
    reduced
        How many pixels of the file make one of these, along each axis.
    """

    linear: Float32Array
    reduced: int = 1


def read_texture(path: Path | str) -> TextureImage:
    """Return a texture file in linear light: grey files as relief, all else as the surface.

    Raises
    ------
    CatalogueError
        When the file is missing, broken or larger than ``MOST_PIXELS``.
    """
    from PIL import Image

    try:
        check_ordinary(Path(path))
        with Image.open(path, formats=FORMATS) as image:
            _check_size(path, image.size)
            mode = "L" if image.mode in _RELIEF_MODES else "RGB"
            return _in_linear_light(image if image.mode == mode else image.convert(mode))
    except CatalogueError:
        raise
    except (*CODEC_FAULTS, Image.DecompressionBombError) as error:
        raise CatalogueError(
            path,
            problem="cannot be read as a texture",
            todo="replace it with a PNG or empty the sample's texture cell",
        ) from error


def _check_size(path: Path | str, size: tuple[int, int]) -> None:
    if size[0] * size[1] > MOST_PIXELS:
        raise CatalogueError(
            path,
            problem=f"is a texture of {size[0]} x {size[1]} pixels",
            todo="reduce it to at most 8,000 x 8,000",
        )


def _in_linear_light(image: "PillowImage") -> TextureImage:
    """Return a decoded image, averaged down stripe by stripe when it is large."""
    reduced = -(-max(image.size) // _KEPT_PX)
    if reduced == 1:
        return TextureImage(_linear(np.asarray(image)))
    columns, rows = (max(1, side // reduced) for side in image.size)
    linear = np.empty((rows, columns, 3)[: 2 if image.mode == "L" else 3], np.float32)
    for row in range(0, rows, _STRIPE_ROWS):
        below = min(row + _STRIPE_ROWS, rows)
        edges = (0, row * reduced, columns * reduced, below * reduced)
        stripe = np.asarray(image.crop(edges))
        linear[row:below] = _averaged(stripe, (columns, below - row))
    return TextureImage(linear, reduced)


def _averaged(stripe: UInt8Array, size: tuple[int, int]) -> Float32Array:
    import cv2

    return np.asarray(cv2.resize(_linear(stripe), size, interpolation=cv2.INTER_AREA), np.float32)


def _linear(pixels: UInt8Array) -> Float32Array:
    import cv2

    return np.asarray(cv2.LUT(pixels, _linear_steps()), np.float32)


@cache
def _linear_steps() -> Float32Array:
    steps = np.repeat(np.linspace(0.0, 1.0, 256)[:, None], 3, axis=1)
    linear: Float32Array = srgb_to_linear(steps)[:, 0].astype(np.float32)
    return linear
