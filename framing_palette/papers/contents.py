"""What goes on the ticket, and what both papers share, as plain frozen values."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import Literal

from framing_palette.catalogue import Sample
from framing_palette.design import (
    AgreedSize,
    Cuttable,
    Design,
    SheetPlan,
    StickPlan,
    Weight,
    agree,
)
from framing_palette.design.measuring import TOLERANCE_INCH, Measured
from framing_palette.errors import FieldError, MeasurementsMissingError, NotAsMeasuredError
from framing_palette.units import Denominator, Length, LengthUnit

PageName = Literal["A4", "Letter"]
MOST_OPTIONS = 3


@dataclass(frozen=True, slots=True)
class Shop:
    """Who hands over the papers: name, and address and contact in lines.

    ``is_invented`` marks a shop that does not exist, so that every page says so.
    """

    name: str = ""
    lines: tuple[str, ...] = ()
    is_invented: bool = False


@dataclass(frozen=True, slots=True)
class Notation:
    """How lengths are written on a page: their unit, a second one if wished, the smallest step."""

    unit: LengthUnit = "in"
    also: LengthUnit | None = None
    denominator: Denominator = 32

    def figures(self, length: Length) -> str:
        """Return a length without its unit; ≈ marks one that had to be rounded."""
        return self._figures(length, self.unit)

    def second(self, length: Length) -> str:
        """Return a length in the second unit, with it; empty when there is none."""
        return f"{self._figures(length, self.also)} {self.also}" if self.also else ""

    def said(self, length: Length) -> str:
        """Return a length with its unit."""
        return f"{self.figures(length)} {self.unit}"

    def said_at_least(self, length: Length) -> str:
        """Return a length that must be reached, rounded up where it must be rounded."""
        if length.is_shown_exactly(self.unit, self.denominator):
            return self.said(length)
        up = length.rounded(self.unit, self.denominator, way="up")
        return f"≈ {self.said(up)}"

    def pair(self, width: Length, height: Length) -> str:
        """Return two sides of a rectangle without their unit, one ≈ standing for both."""
        sides = [self.figures(width), self.figures(height)]
        if all(side.startswith("≈ ") for side in sides):
            sides[1] = sides[1].removeprefix("≈ ")
        return " × ".join(sides)

    def second_pair(self, width: Length, height: Length) -> str:
        """Return two sides in the second unit; empty when there is none."""
        if self.also is None:
            return ""
        return f"{Notation(self.also, None, self.denominator).pair(width, height)} {self.also}"

    def _figures(self, length: Length, unit: LengthUnit) -> str:
        sign = "" if length.is_shown_exactly(unit, self.denominator) else "≈ "
        return f"{sign}{length.figures(unit, self.denominator)}"

    @property
    def legend(self) -> str:
        """What the figures are rounded to, in one sentence."""
        units = [self.unit, *([self.also] if self.also else [])]
        steps = {"in": f"1/{self.denominator} in", "mm": "0.1 mm", "cm": "0.01 cm"}
        names = {"in": "inches", "mm": "millimetres", "cm": "centimetres"}
        words = " and ".join(names[unit] for unit in units)
        rounding = " or ".join(steps[unit] for unit in units)
        return (
            f"Lengths in {words}; ≈ means rounded to the nearest {rounding}, all others are exact."
        )


def notation_of(units: str) -> Notation:
    """Return a notation from one unit, or two with a comma: ``in``, ``mm,in``.

    Raises
    ------
    FieldError
        When a unit is not known, or there are more than two.
    """
    known: dict[str, LengthUnit] = {"in": "in", "mm": "mm", "cm": "cm"}
    names = [name.strip() for name in units.split(",")]
    if len(names) > 2 or len(set(names)) != len(names) or not set(names) <= set(known):
        wanted = "write in, mm or cm, or two of them with a comma"
        raise FieldError("units", got=repr(units), wanted=wanted)
    return Notation(known[names[0]], known[names[1]] if len(names) > 1 else None)


@dataclass(frozen=True, slots=True)
class MeasuredArt:
    """One piece of art measured twice, and what the two measurements agree on."""

    first: Measured
    second: Measured
    agreed: AgreedSize

    @classmethod
    def of(
        cls,
        readings: Sequence[Measured],
        tolerance: Length = TOLERANCE_INCH,
        unit: LengthUnit = "in",
        *,
        of: str = "",
    ) -> "MeasuredArt":
        """Settle the size of a piece of art; ``of`` names it in a refusal.

        Raises
        ------
        MeasurementsMissingError
            When there are not two measurements.
        MeasurementError
            When they disagree, or are not independent.
        """
        if len(readings) != 2:
            raise MeasurementsMissingError(len(readings))
        first, second = readings
        return cls(first, second, agree(first, second, tolerance, unit, of=of))


@dataclass(frozen=True, slots=True)
class StockSheets:
    """The mats that come out of one kind of board: its name, and where they lie on its sheets.

    ``numbers`` gives the cut of each blank by the blank's name.
    """

    name: str
    plan: SheetPlan
    numbers: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class TicketContents:
    """Everything that the workshop reads.

    Parameters
    ----------
    number, title, client
        Of the job.
    cuttable
        The design that has passed every check, sized for the art as it was measured.
    measured
        One for each window of an arrangement, else one; one alone will do for windows that are
        all of one size.
    samples
        The catalogue's samples in use, by code: their names and cross-sections.
    notation
        How lengths are written.
    sticks
        Which rails come from which stick; None when the stick's length is not known.
    sheets
        Which mats come from which sheets, as far as the size of the sheets is known.
    weight
        The estimated weight.
    note
        For the workshop.
    remarks
        Cautions besides those of the design.
    at
        When the job was last changed.

    Raises
    ------
    MeasurementsMissingError
        When a piece of art was not measured twice.
    NotAsMeasuredError
        When the design is for another size than was measured.
    """

    number: str
    title: str
    client: str
    shop: Shop
    cuttable: Cuttable
    measured: tuple[MeasuredArt, ...]
    at: datetime
    samples: Mapping[str, Sample] = field(default_factory=dict)
    notation: Notation = Notation()
    sticks: StickPlan | None = None
    sheets: tuple[StockSheets, ...] = ()
    weight: Weight | None = None
    note: str = ""
    remarks: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        windows = self.design.windows
        measured = self.measured * len(windows) if self.is_measured_for_all else self.measured
        if len(measured) != len(windows):
            raise MeasurementsMissingError(2 * len(measured), pieces=len(windows))
        for number, (window, found) in enumerate(zip(windows, measured, strict=True), start=1):
            agreed = found.agreed
            size = agreed.width, agreed.height
            if not self.design.layers:
                size = agreed.outer_width, agreed.outer_height
            if (window.width, window.height) != size:
                raise NotAsMeasuredError(number if len(windows) > 1 else None)

    @property
    def is_measured_for_all(self) -> bool:
        """Whether one piece was measured for several of the same size; the ticket then warns."""
        windows = self.design.windows
        sizes = {(window.width, window.height) for window in windows}
        return len(windows) > 1 and len(self.measured) == 1 and len(sizes) == 1

    @property
    def cautions(self) -> tuple[str, ...]:
        """What the workshop must mind, the measuring first."""
        told = (*(caution.sentence for caution in self.cuttable.cautions), *self.remarks)
        if not self.is_measured_for_all:
            return told
        count = len(self.design.windows)
        unmeasured = (
            f"One of {count} pieces was measured for all: measure each of the other {count - 1} "
            "twice before anything is cut."
        )
        return (unmeasured, *told)

    @property
    def design(self) -> Design:
        """The design to be cut."""
        return self.cuttable.design
