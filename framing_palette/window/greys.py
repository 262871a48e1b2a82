"""The surround's grey by its lightness."""

from functools import cache

from PySide6.QtGui import QColor

from framing_palette.colour.spaces import lab_d50_to_srgb_u8


@cache
def surround_color(lightness: int) -> QColor:
    """Return the neutral grey of an L* value."""
    red, green, blue = (int(level) for level in lab_d50_to_srgb_u8([float(lightness), 0.0, 0.0]))
    return QColor(red, green, blue)
