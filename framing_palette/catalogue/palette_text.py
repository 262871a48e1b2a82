"""Palette text: colours for a drawing program, one a line, in the open form that GIMP reads."""

from collections.abc import Sequence

import numpy as np

from framing_palette.catalogue.samples import Lab
from framing_palette.colour import lab_d50_to_srgb_u8


def palette_text(name: str, colours: Sequence[tuple[str, Lab]], *, columns: int = 8) -> str:
    """Return named colours as the text of a palette file.

    Colours outside sRGB are drawn in to what a screen can show.

    Parameters
    ----------
    name
        Of the palette.
    colours
        Pairs of a colour's name and its Lab D50.
    columns
        How many a drawing program shows in a row.
    """
    lines = ["GIMP Palette", f"Name: {_line(name)}", f"Columns: {columns}", "#"]
    if colours:
        srgb = lab_d50_to_srgb_u8(np.array([lab for _, lab in colours]))
        lines += [
            f"{red:3d} {green:3d} {blue:3d}\t{_line(title)}"
            for (red, green, blue), (title, _) in zip(srgb.tolist(), colours, strict=True)
        ]
    return "\n".join(lines) + "\n"


def _line(text: str) -> str:
    return " ".join(text.split())
