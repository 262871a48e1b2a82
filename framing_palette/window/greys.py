"""From Lab to what Qt paints with: the surround's grey, and colours of picture and samples."""

from functools import cache

from PySide6.QtGui import QColor

from framing_palette.colour import lab_d50_to_srgb_u8


@cache
def surround_color(lightness: int) -> QColor:
    """Return the neutral grey of an L* value."""
    return color_of((float(lightness), 0.0, 0.0))


def color_of(lab: tuple[float, float, float]) -> QColor:
    """Return a colour (Lab D50) as the screen can show it."""
    red, green, blue = (int(level) for level in lab_d50_to_srgb_u8(lab))
    return QColor(red, green, blue)
