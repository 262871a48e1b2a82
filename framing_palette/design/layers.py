"""What a frame is made of: the art, the layers around it and the moulding that holds them.

All values are frozen and check only what can be said of them alone; how they stand to each other
is checked in ``order`` and ``checks``.
"""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Final, Literal

from framing_palette.catalogue import Kind
from framing_palette.design.spoken import above_zero, not_below_zero, said
from framing_palette.errors import FieldError
from framing_palette.units import ZERO, Length

DEFAULT_ALLOWANCE: Final = Length.inches(Fraction(1, 8))
DEFAULT_CLEARANCE: Final = Length.inches(Fraction(1, 8))
DEFAULT_HIDDEN_OVERLAP: Final = Length.mm_of(6)
MOST_LAYERS: Final = 6
FILLETS: Final = (Kind.WRAPPED_FILLET, Kind.WOOD_FILLET)

GlazingMaterial = Literal["glass", "acrylic"]
Join = Literal["mitre", "butt"]


class Shape(StrEnum):
    """The outline of an opening."""

    RECTANGLE = "rectangle"
    OVAL = "oval"
    ROUND = "round"


@dataclass(frozen=True, slots=True)
class Sides:
    """One length for each side of a rectangle, as seen from the front."""

    top: Length
    right: Length
    bottom: Length
    left: Length

    @classmethod
    def all_round(cls, length: Length) -> "Sides":
        """Return the same length on every side."""
        return cls(length, length, length, length)

    @property
    def horizontal(self) -> Length:
        """Left and right together."""
        return self.left + self.right

    @property
    def vertical(self) -> Length:
        """Top and bottom together."""
        return self.top + self.bottom

    @property
    def named(self) -> tuple[tuple[str, Length], ...]:
        """Each side with its name, clockwise from the top."""
        return (
            ("top", self.top),
            ("right", self.right),
            ("bottom", self.bottom),
            ("left", self.left),
        )

    @property
    def smallest(self) -> Length:
        """The narrowest side."""
        return min(self.top, self.right, self.bottom, self.left)

    def plus(self, length: Length) -> "Sides":
        """Widen every side by the same length."""
        return Sides(
            self.top + length, self.right + length, self.bottom + length, self.left + length
        )

    def turned(self) -> "Sides":
        """Return the sides after a quarter turn clockwise: the left side becomes the top."""
        return Sides(top=self.left, right=self.top, bottom=self.right, left=self.bottom)


@dataclass(frozen=True, slots=True)
class Art:
    """The physical object.

    Parameters
    ----------
    width, height : Length
        Above zero.
    thickness : Length
        Zero when negligible or not told.
    overlap : Length or None
        How much the innermost layer hides on EACH side (never the total of both sides); negative
        leaves that much of the surroundings visible, as in float mounting. None when nothing
        covers the art but the moulding or a liner.
    shape : Shape
        Outline of the opening in front of it.
    mass_kg : float or None
        Weighed, when known.
    friable : bool
        Pastel, charcoal, chalk: media that acrylic's static could lift.
    """

    width: Length
    height: Length
    thickness: Length = ZERO
    overlap: Length | None = None
    shape: Shape = Shape.RECTANGLE
    mass_kg: float | None = None
    friable: bool = False

    def __post_init__(self) -> None:
        above_zero("art width", self.width)
        above_zero("art height", self.height)
        not_below_zero("art thickness", self.thickness)
        if self.mass_kg is not None and not 0 < self.mass_kg < 1000:
            raise FieldError("art mass_kg", got=self.mass_kg, wanted="give a weight above 0 kg")


@dataclass(frozen=True, slots=True)
class Layer:
    """One sheet, strip frame or liner between the art and the moulding.

    Parameters
    ----------
    kind : Kind
        Anything but a moulding.
    thickness : Length or None
        Board thickness, or the whole height of a fillet or liner; a wrapped fillet made of two
        plies counts both. None when unknown.
    code : str
        Catalogue code; empty when the measures were given by hand.
    reveal : Sides or None
        What shows beyond the layer above it, bevel included. The last layer has none.
    borders : Sides or None
        From the opening to the outside edge; for the outermost mat alone.
    face : Length or None
        Width of a fillet or liner from its sight edge. A wood fillet with a step has its step
        beyond the face; any other strip is hidden with a part of its face.
    bevel : Length or None
        Width of the slope in plan; None for a 45 degree bevel, which shows the thickness.
    rabbet_width, rabbet_depth : Length or None
        A liner's step, or the step of a wood fillet on which the board above rests.
    join : {"mitre", "butt"}
        How a fillet's strips meet.
    material : str
        In words.
    density_kg_m3 : float or None
        Mass per volume.
    sheet_w, sheet_h : Length or None
        Stock sheet.
    stick : Length or None
        Stock stick of a fillet or liner.
    """

    kind: Kind
    thickness: Length | None
    code: str = ""
    reveal: Sides | None = None
    borders: Sides | None = None
    face: Length | None = None
    bevel: Length | None = None
    rabbet_width: Length | None = None
    rabbet_depth: Length | None = None
    join: Join = "mitre"
    material: str = ""
    density_kg_m3: float | None = None
    sheet_w: Length | None = None
    sheet_h: Length | None = None
    stick: Length | None = None

    def __post_init__(self) -> None:
        measures = {
            "thickness": self.thickness,
            "face": self.face,
            "rabbet_width": self.rabbet_width,
            "rabbet_depth": self.rabbet_depth,
        }
        for name, length in measures.items():
            if length is not None:
                above_zero(name, length)
        if self.bevel is not None:
            not_below_zero("bevel", self.bevel)
        for name, sides in (("reveal", self.reveal), ("borders", self.borders)):
            for side, length in sides.named if sides else ():
                above_zero(f"{name}, {side}", length)

    @property
    def is_fillet(self) -> bool:
        """Whether it is a strip frame that lies under the layer above it."""
        return self.kind in FILLETS

    @property
    def strip_width(self) -> Length | None:
        """The whole width of a fillet's or liner's strip: the face, and a wood fillet's step."""
        if self.face is None:
            return None
        has_step = self.kind is Kind.WOOD_FILLET and self.rabbet_width is not None
        return self.face + (self.rabbet_width or ZERO) if has_step else self.face

    @property
    def bevel_width(self) -> Length | None:
        """The slope's width in plan: what the sample says, else a mat's thickness at 45 degrees.

        A fillet without a stated bevel has none that is known.
        """
        if self.bevel is not None:
            return self.bevel
        return self.thickness if self.kind is Kind.MAT else None


@dataclass(frozen=True, slots=True)
class Glazing:
    """The pane in front."""

    material: GlazingMaterial
    thickness: Length

    def __post_init__(self) -> None:
        if self.material not in ("glass", "acrylic"):
            raise FieldError(
                "glazing material", got=repr(self.material), wanted="write glass or acrylic"
            )
        above_zero("glazing thickness", self.thickness)


@dataclass(frozen=True, slots=True)
class Board:
    """A sheet behind the art: the backing, or the mount board that the art is hinged to."""

    thickness: Length
    material: str = ""
    density_kg_m3: float | None = None

    def __post_init__(self) -> None:
        above_zero("board thickness", self.thickness)


@dataclass(frozen=True, slots=True)
class Moulding:
    """The frame's profile.

    Parameters
    ----------
    face : Length
        Width seen from the front.
    rabbet_width, rabbet_depth : Length
        The step that holds the stack: width hides, depth holds.
    allowance : Length
        Play on EACH axis, both sides together.
    clearance : Length
        Room wanted behind the stack.
    height : Length or None
        From the wall to the highest point.
    """

    face: Length
    rabbet_width: Length
    rabbet_depth: Length
    allowance: Length = DEFAULT_ALLOWANCE
    clearance: Length = DEFAULT_CLEARANCE
    code: str = ""
    height: Length | None = None
    material: str = ""
    density_kg_m3: float | None = None
    stick: Length | None = None

    def __post_init__(self) -> None:
        above_zero("moulding face", self.face)
        above_zero("moulding rabbet_width", self.rabbet_width)
        above_zero("moulding rabbet_depth", self.rabbet_depth)
        not_below_zero("moulding allowance", self.allowance)
        not_below_zero("moulding clearance", self.clearance)
        if self.rabbet_width >= self.face:
            wanted = f"it must be less than the face, {said(self.face)}"
            raise FieldError("moulding rabbet_width", got=said(self.rabbet_width), wanted=wanted)
