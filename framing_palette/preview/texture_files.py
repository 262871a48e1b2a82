"""Reading photographed surfaces from the catalogue's textures folder."""

from dataclasses import dataclass
from pathlib import Path

import numpy as np

from framing_palette.arrays import Float32Array
from framing_palette.colour import srgb_to_linear
from framing_palette.errors import CatalogueError

MOST_PIXELS = 100_000_000  # 10,000 x 10,000: larger scans are refused before they are decoded


@dataclass(frozen=True, slots=True, eq=False)
class TextureImage:
    """A photographed surface in linear light.

    ``linear`` has shape (rows, columns) for relief, a tone around the sample's own colour, and
    (rows, columns, 3) for the surface itself.
    """

    linear: Float32Array


def read_texture(path: Path | str) -> TextureImage:
    """Return a texture file in linear light: mode L as relief, all else as the surface.

    Raises
    ------
    CatalogueError
        When the file is missing, broken or larger than ``MOST_PIXELS``.
    """
    from PIL import Image

    try:
        with Image.open(path) as image:
            if image.width * image.height > MOST_PIXELS:
                raise CatalogueError(
                    path,
                    problem=f"is a texture of {image.width} x {image.height} pixels",
                    todo="reduce it to at most 10,000 x 10,000",
                )
            mode = "L" if image.mode in ("L", "1", "LA", "I;16") else "RGB"
            encoded = np.asarray(image.convert(mode))
    except (OSError, ValueError, SyntaxError, Image.DecompressionBombError) as error:
        if isinstance(error, CatalogueError):
            raise
        raise CatalogueError(
            path,
            problem="cannot be read as a texture",
            todo="replace it with a PNG or empty the sample's texture cell",
        ) from error
    steps = np.repeat(np.linspace(0.0, 1.0, 256)[:, None], 3, axis=1)
    table = srgb_to_linear(steps)[:, 0].astype(np.float32)
    return TextureImage(table[encoded])
