"""The job's number as a QR code (ISO/IEC 18004), drawn as squares."""

from itertools import groupby
from typing import Final

from framing_palette.papers.shapes import Drawing, Shape, rectangle

QUIET: Final = 4  # modules left white around it, as the standard asks


def qr_code(words: str, side: float) -> Drawing:
    """Return a QR code of some words with its quiet zone, ``side`` mm wide."""
    import segno

    matrix = segno.make_qr(words, error="m").matrix
    module = side / (len(matrix) + 2 * QUIET)
    shapes: list[Shape] = []
    for row, modules in enumerate(matrix):
        column = 0
        for is_dark, run in groupby(modules, key=bool):
            length = len(list(run))
            if is_dark:
                left, top = (QUIET + column) * module, (QUIET + row) * module
                # A hair taller than a module, so that no white line shows between rows.
                dark = rectangle(
                    left, top, length * module, module * 1.02, pen=None, fill=0.0, part="code"
                )
                shapes.append(dark)
            column += length
    return Drawing(side, side, tuple(shapes))
