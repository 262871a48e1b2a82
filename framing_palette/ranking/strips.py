"""Strips: a piece of a sample laid on the picture, straight or bent into a corner."""

from dataclasses import dataclass, replace
from math import cos, floor, radians, sin

from framing_palette.catalogue import Kind, Sample
from framing_palette.errors import UnknownFactError
from framing_palette.picture import Picture
from framing_palette.units import Length

PointMm = tuple[float, float]

SHORTEST_MM = 20.0
NOMINAL_LONG_SIDE_MM = 500.0
"""Stands in for the art's long side while its size is not known; whoever shows it says so."""

_LENGTH_SHARE = 0.42
_LEAST_PROPORTION = 2.2


@dataclass(frozen=True, slots=True)
class Strip:
    """A piece of a sample at true scale, placed on the art.

    Parameters
    ----------
    number
        Tells strips of one sample apart.
    code
        The sample's code.
    x_mm, y_mm
        Its centre, right of and below the art's upper left corner.
    length_mm, width_mm
        Its size; a bent strip has two arms of ``length_mm``.
    turn_deg
        Clockwise from lying level, 0..360.
    bent
        True for an L-shaped corner whose outer edges lie above and left when not turned.
    """

    number: int
    code: str
    x_mm: float
    y_mm: float
    length_mm: float
    width_mm: float
    turn_deg: float = 0.0
    bent: bool = False


def strip_scale(picture: Picture) -> float:
    """Return millimetres per pixel of a picture, nominal ones while its size is not known."""
    return picture.mm_per_px or NOMINAL_LONG_SIDE_MM / max(picture.columns, picture.rows)


def new_strip(
    number: int,
    sample: Sample,
    *,
    at_mm: PointMm,
    art_width_mm: float,
    mat_border: Length,
) -> Strip:
    """Return a strip of a sample as it is first laid down: level, a little under half the art wide.

    Raises
    ------
    UnknownFactError
        When a moulding, fillet or liner has no face width.
    """
    width_mm = width_seen(sample, mat_border=mat_border).as_float_mm()
    return Strip(
        number=number,
        code=sample.code,
        x_mm=at_mm[0],
        y_mm=at_mm[1],
        length_mm=max(_LENGTH_SHARE * art_width_mm, _LEAST_PROPORTION * width_mm, SHORTEST_MM),
        width_mm=width_mm,
    )


def moved(strip: Strip, *, right_mm: float = 0.0, down_mm: float = 0.0) -> Strip:
    """Return the strip pushed along."""
    return replace(strip, x_mm=strip.x_mm + right_mm, y_mm=strip.y_mm + down_mm)


def turned(strip: Strip, by_deg: float) -> Strip:
    """Return the strip turned clockwise about its centre."""
    return replace(strip, turn_deg=(strip.turn_deg + by_deg) % 360.0)


def lengthened(strip: Strip, by_mm: float) -> Strip:
    """Return the strip longer or shorter, never shorter than it is wide or than 20 mm."""
    least = max(SHORTEST_MM, strip.width_mm)
    return replace(strip, length_mm=max(least, strip.length_mm + by_mm))


def outline_mm(strip: Strip) -> tuple[PointMm, ...]:
    """Return the corners on the art: four of a straight strip, six of a bent one."""
    corners = _bent_corners(strip) if strip.bent else _straight_corners(strip)
    return tuple(_placed(strip, corner) for corner in corners)


def is_on_strip(strip: Strip, point_mm: PointMm) -> bool:
    """Tell whether a place on the art is covered by the strip."""
    x, y = _unplaced(strip, point_mm)
    reach, half = strip.length_mm / 2, strip.width_mm / 2
    if not strip.bent:
        return abs(x) <= reach and abs(y) <= half
    inside = abs(x) <= reach and abs(y) <= reach
    return inside and (y <= -reach + strip.width_mm or x <= -reach + strip.width_mm)


def kept_on_art(strip: Strip, *, width_mm: float, height_mm: float) -> Strip:
    """Return the strip with its centre brought back onto the art."""
    x_mm = min(max(strip.x_mm, 0.0), width_mm)
    y_mm = min(max(strip.y_mm, 0.0), height_mm)
    return replace(strip, x_mm=x_mm, y_mm=y_mm)


def snapped_turn(turn_deg: float, *, step_deg: float = 15.0) -> float:
    """Return the nearest multiple of a step, 0..360."""
    return floor(turn_deg / step_deg + 0.5) * step_deg % 360.0


def _straight_corners(strip: Strip) -> tuple[PointMm, ...]:
    reach, half = strip.length_mm / 2, strip.width_mm / 2
    return ((-reach, -half), (reach, -half), (reach, half), (-reach, half))


def _bent_corners(strip: Strip) -> tuple[PointMm, ...]:
    reach, inner = strip.length_mm / 2, -strip.length_mm / 2 + strip.width_mm
    return (
        (-reach, -reach),
        (reach, -reach),
        (reach, inner),
        (inner, inner),
        (inner, reach),
        (-reach, reach),
    )


def _placed(strip: Strip, corner: PointMm) -> PointMm:
    turn = radians(strip.turn_deg)
    x, y = corner
    return (
        strip.x_mm + x * cos(turn) - y * sin(turn),
        strip.y_mm + x * sin(turn) + y * cos(turn),
    )


def _unplaced(strip: Strip, point_mm: PointMm) -> PointMm:
    turn = radians(strip.turn_deg)
    x, y = point_mm[0] - strip.x_mm, point_mm[1] - strip.y_mm
    return (x * cos(turn) + y * sin(turn), -x * sin(turn) + y * cos(turn))


def width_seen(sample: Sample, *, mat_border: Length) -> Length:
    """Return how wide a sample is seen from the front; a mat as wide as the shop likes to show it.

    Raises
    ------
    UnknownFactError
        When a moulding, fillet or liner has no face width.
    """
    if sample.kind is Kind.MAT:
        return mat_border
    if sample.face is None:
        raise UnknownFactError(sample.code, fact="face width", needed_for="showing it at scale")
    return sample.face


def width_laid(sample: Sample, *, mat_border: Length) -> Length:
    """Return how wide a sample is seen in a frame: of a wrapped fillet its bevel alone.

    Raises
    ------
    UnknownFactError
        When a moulding, fillet or liner has no face width.
    """
    if sample.kind is Kind.WRAPPED_FILLET and sample.bevel:
        return sample.bevel
    return width_seen(sample, mat_border=mat_border)
