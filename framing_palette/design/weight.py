"""What the finished frame weighs, how sure that is, and what its wire and fixings must carry.

Weights are estimates: thicknesses and densities vary. Whoever hangs the frame goes by the heavy
end, and by the wall, the maker of the fixing and the local rules.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import pi, radians, sin
from typing import Final

from framing_palette.catalogue import Kind
from framing_palette.design.densities import (
    ACRYLIC,
    GLASS,
    PAPER_AND_BOARD,
    STRETCHED_CANVAS,
    UNNAMED_BACKING,
    Density,
    board_density,
    measured,
    wood_density,
)
from framing_palette.design.designs import Design
from framing_palette.design.figures import RectangleFigure
from framing_palette.design.layers import Board, Moulding, Shape
from framing_palette.design.size_parts import FrameSizes, LayerSize, OpeningSize, Sizes
from framing_palette.errors import FieldError

STANDARD_GRAVITY: Final = 9.80665
SAFETY_FACTOR: Final = 2.0
INSTALLER_ABOVE_KG: Final = 10.0
THIN_ART_MM: Final = 6.0
# A profile fills between half and nine tenths of the rectangle of its face and height.
_PROFILE_FILL: Final = (0.5, 0.7, 0.9)
# Without a stated height, the lip in front of the rabbet is between 1/8 and 3/4 inch.
_LIP_MM: Final = (3.2, 6.4, 19.0)


@dataclass(frozen=True, slots=True)
class WeightPart:
    """One part's weight in kg, likely and at both ends, and what it is based on."""

    name: str
    low_kg: float
    likely_kg: float
    high_kg: float
    basis: str


@dataclass(frozen=True, slots=True)
class Weight:
    """The frame's weight, part by part."""

    parts: tuple[WeightPart, ...]

    @property
    def likely_kg(self) -> float:
        """The likely whole."""
        return sum(part.likely_kg for part in self.parts)

    @property
    def low_kg(self) -> float:
        """The whole with every part at its light end."""
        return sum(part.low_kg for part in self.parts)

    @property
    def high_kg(self) -> float:
        """The whole with every part at its heavy end."""
        return sum(part.high_kg for part in self.parts)

    @property
    def needs_installer(self) -> bool:
        """Whether even its heavy end calls for a qualified installer."""
        return self.high_kg > INSTALLER_ABOVE_KG


def weight_of(design: Design, sizes: Sizes) -> Weight:
    """Estimate the weight of everything that hangs on the wall."""
    return Weight(tuple(_parts(design, sizes)))


def _parts(design: Design, sizes: Sizes) -> Iterator[WeightPart]:
    yield _art(design)
    for number, size in enumerate(sizes.layers, start=1):
        part = _layer(f"layer {number}", size)
        if part is not None:
            yield part
    if design.glazing:
        density = GLASS if design.glazing.material == "glass" else ACRYLIC
        volume_m3 = _area_m2(sizes.contents) * design.glazing.thickness.as_float_mm() / 1000
        yield _part(f"{design.glazing.material} glazing", volume_m3, density)
    boards = (
        ("mount board", design.mount, PAPER_AND_BOARD),
        ("backing", design.backing, UNNAMED_BACKING),
    )
    for name, board, unnamed in boards:
        if board:
            yield _board(name, board, unnamed, sizes.contents)
    if design.moulding and sizes.frame:
        yield _moulding(design.moulding, sizes.frame)


def _part(name: str, volume_m3: float, density: Density) -> WeightPart:
    return WeightPart(
        name,
        volume_m3 * density.low,
        volume_m3 * density.likely,
        volume_m3 * density.high,
        density.source,
    )


def _area_m2(size: RectangleFigure) -> float:
    width, height = size.lengths
    return width.as_float_mm() * height.as_float_mm() / 1e6


def _opening_m2(opening: OpeningSize) -> float:
    area = _area_m2(opening.size)
    return area if opening.shape is Shape.RECTANGLE else area * pi / 4


def _strips_m2(opening: OpeningSize) -> float:
    area = _area_m2(opening.strips) if opening.strips else 0.0
    return area if opening.shape is Shape.RECTANGLE else area * pi / 4


def _art(design: Design) -> WeightPart:
    """Return the art's weight: weighed, or by its thickness as paper and board or as canvas."""
    mass = design.art.mass_kg
    if mass is not None:
        return WeightPart("art", mass * 0.98, mass, mass * 1.02, "weighed")
    thickness_mm = design.art.thickness.as_float_mm()
    density = PAPER_AND_BOARD if thickness_mm <= THIN_ART_MM else STRETCHED_CANVAS
    area_mm2 = sum(
        window.width.as_float_mm() * window.height.as_float_mm() for window in design.windows
    )
    return _part("art", area_mm2 * thickness_mm / 1e9, density)


def _layer(name: str, size: LayerSize) -> WeightPart | None:
    layer = size.layer
    if size.outer is None or layer.thickness is None:
        return None
    holes_m2 = sum(_opening_m2(opening) for opening in size.openings)
    strips = [_strips_m2(opening) for opening in size.openings if opening.strips]
    whole_m2 = sum(strips) if strips else _area_m2(size.outer)
    volume_m3 = (whole_m2 - holes_m2) * layer.thickness.as_float_mm() / 1000
    if layer.density_kg_m3 is not None:
        density = measured(layer.density_kg_m3)
    elif layer.kind in (Kind.MAT, Kind.WRAPPED_FILLET):
        density = board_density(layer.material, PAPER_AND_BOARD)
    else:
        density = wood_density(layer.material)
    return _part(f"{name}, {layer.kind.replace('_', ' ')}", volume_m3, density)


def _board(name: str, board: Board, unnamed: Density, size: RectangleFigure) -> WeightPart:
    volume_m3 = _area_m2(size) * board.thickness.as_float_mm() / 1000
    stated = board.density_kg_m3
    density = measured(stated) if stated else board_density(board.material, unnamed)
    return _part(name, volume_m3, density)


def _moulding(moulding: Moulding, frame: FrameSizes) -> WeightPart:
    """Return the moulding's weight: cross-section times the rails' mean length."""
    stated = moulding.density_kg_m3
    density = measured(stated) if stated else wood_density(moulding.material)
    length_m = (
        sum((rail.long_point.value + rail.short_point.value).as_float_mm() for rail in frame.rails)
        / 2000
    )
    low, likely, high = (
        _section_m2(moulding, fill, lip_mm) * length_m
        for fill, lip_mm in zip(_PROFILE_FILL, _LIP_MM, strict=True)
    )
    return WeightPart(
        "moulding", low * density.low, likely * density.likely, high * density.high, density.source
    )


def _section_m2(moulding: Moulding, fill: float, lip_mm: float) -> float:
    depth_mm = moulding.rabbet_depth.as_float_mm()
    height_mm = moulding.height.as_float_mm() if moulding.height else depth_mm + lip_mm
    rabbet_mm2 = moulding.rabbet_width.as_float_mm() * depth_mm
    outline_mm2 = moulding.face.as_float_mm() * height_mm * fill
    return max(outline_mm2 - rabbet_mm2, 0.1 * outline_mm2) / 1e6


def wire_tension_n(weight_kg: float, angle_deg: float) -> float:
    """Return the pull in each half of a hanging wire, in newtons.

    Parameters
    ----------
    weight_kg : float
        What hangs on it.
    angle_deg : float
        The wire's angle from the horizontal, above 0 and up to 90 degrees.

    Raises
    ------
    FieldError
        When the angle is outside that range.

    Notes
    -----
    Statics: T = W / (2 sin a); a flat wire pulls many times the weight.
    """
    if not 0 < angle_deg <= 90:
        wanted = "give the angle from the horizontal, above 0 and up to 90 degrees"
        raise FieldError("wire angle", got=angle_deg, wanted=wanted)
    return weight_kg * STANDARD_GRAVITY / (2 * sin(radians(angle_deg)))


def fixing_rating_kg(weight: Weight) -> float:
    """Return the least rating of each fixing: twice the heavy end of the weight.

    Common practice; two points on the wall and two on the frame, each rated for the whole.
    """
    return SAFETY_FACTOR * weight.high_kg
