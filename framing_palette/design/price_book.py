"""The shop's own price book: what each part of a frame costs, and how it is worked out."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fnmatch import fnmatchcase
from fractions import Fraction
from typing import Final

from framing_palette.errors import FieldError
from framing_palette.units import Length, Money

CENT: Final = Decimal("0.01")


class Part(StrEnum):
    """What a charge is for."""

    MAT = "mat"
    WRAPPED_FILLET = "wrapped_fillet"
    WOOD_FILLET = "wood_fillet"
    LINER = "liner"
    MOULDING = "moulding"
    GLAZING = "glazing"
    MOUNT = "mount"
    BACKING = "backing"
    OPENING = "opening"
    JOB = "job"


class Basis(StrEnum):
    """What one rate buys."""

    UNITED_INCH = "united_inch"  # width and height together, in inches
    LENGTH = "length"
    AREA = "area"
    EACH = "each"
    MINUTES = "minutes"
    CATALOGUE = "catalogue"  # the sample's own price times a factor


LENGTH_UNITS: Final = {
    "mm": Length.mm_of(1),
    "cm": Length.mm_of(10),
    "m": Length.mm_of(1000),
    "in": Length.inches(1),
    "ft": Length.inches(12),
}
AREA_UNITS: Final = {
    "m2": LENGTH_UNITS["m"].mm ** 2,
    "ft2": LENGTH_UNITS["ft"].mm ** 2,
    "in2": LENGTH_UNITS["in"].mm ** 2,
}
PIECES: Final = (Part.JOB, Part.OPENING)
STRIPS: Final = (Part.WRAPPED_FILLET, Part.WOOD_FILLET, Part.LINER, Part.MOULDING)


def allowed_bases(part: Part) -> tuple[Basis, ...]:
    """Return the ways in which a part can be charged."""
    strips, pieces = part in STRIPS, part in PIECES
    refused = {
        Basis.LENGTH: not strips,
        Basis.AREA: strips or pieces,
        Basis.UNITED_INCH: part is Part.OPENING,
        Basis.CATALOGUE: not strips and part is not Part.MAT,
    }
    return tuple(basis for basis in Basis if not refused.get(basis, False))


@dataclass(frozen=True, slots=True)
class Break:
    """Up to this many united inches, this rate holds for the whole size."""

    up_to: Decimal
    rate: Decimal


@dataclass(frozen=True, slots=True)
class Charge:
    """One way in which a part is charged.

    Parameters
    ----------
    title
        What the line is called.
    part, basis
        What is charged, and by what.
    rate
        Money for one of the basis; for minutes, money for an hour; for the catalogue basis, the
        factor on the sample's price.
    per
        Unit of a length (m, ft, in, cm, mm) or an area (m2, ft2, in2).
    breaks
        Ascending; beyond the last one ``rate`` holds.
    waste
        Added share of a length or area, 0.15 for 15 %.
    minutes
        Labour for each part.
    minimum
        Least amount of a line.
    material
        A word that the part's material must contain; empty for any.
    codes
        A pattern with ``*`` that the sample's code must match; empty for any.
    private
        Whether the client never sees the line.
    """

    title: str
    part: Part
    basis: Basis
    rate: Decimal
    per: str = ""
    breaks: tuple[Break, ...] = ()
    waste: Decimal = Decimal(0)
    minutes: Decimal = Decimal(0)
    minimum: Decimal = Decimal(0)
    material: str = ""
    codes: str = ""
    private: bool = False

    def __post_init__(self) -> None:
        self._check_amounts()
        self._check_unit()
        self._check_basis()
        limits = [each.up_to for each in self.breaks]
        if limits != sorted(set(limits)):
            raise FieldError(self._field("breaks"), got=limits, wanted="let each up_to be larger")

    def _field(self, name: str) -> str:
        return f'charge "{self.title}" {name}'

    def _check_amounts(self) -> None:
        amounts = {
            "rate": self.rate,
            "waste": self.waste,
            "minutes": self.minutes,
            "minimum": self.minimum,
        }
        for name, amount in amounts.items():
            if not (amount.is_finite() and amount >= 0):
                raise FieldError(self._field(name), got=amount, wanted="give zero or more")
        if self.waste > 3:
            wanted = "it is a share: 0.15 stands for 15 %"
            raise FieldError(self._field("waste"), got=self.waste, wanted=wanted)

    def _check_unit(self) -> None:
        units = {Basis.LENGTH: tuple(LENGTH_UNITS), Basis.AREA: tuple(AREA_UNITS)}
        wanted = units.get(self.basis, ("",))
        if self.per not in wanted:
            choice = f"choose {', '.join(wanted)}" if wanted != ("",) else "leave it out"
            raise FieldError(self._field("per"), got=repr(self.per), wanted=choice)

    def _check_basis(self) -> None:
        if self.basis not in allowed_bases(self.part):
            wanted = f"a {self.part.replace('_', ' ')} cannot be charged that way"
            raise FieldError(self._field("by"), got=self.basis, wanted=wanted)
        if self.breaks and self.basis is not Basis.UNITED_INCH:
            wanted = "only a charge by the united inch has them"
            raise FieldError(self._field("breaks"), got="given", wanted=wanted)

    def is_for(self, part: Part, code: str, material: str) -> bool:
        """Tell whether it applies to a part of that code and material."""
        return (
            self.part is part
            and (not self.codes or fnmatchcase(code, self.codes))
            and self.material.casefold() in material.casefold()
        )

    def rate_for(self, united_inches: Fraction) -> Decimal:
        """Return the rate that holds for a size."""
        return next((each.rate for each in self.breaks if united_inches <= each.up_to), self.rate)


@dataclass(frozen=True, slots=True)
class PriceBook:
    """All charges of a shop, and how a total is formed.

    Parameters
    ----------
    currency
        Three capital letters.
    charges
        In the order of the lines.
    minimum
        Least net price of a job.
    tax_percent, tax_name
        Zero for none.
    tax_included
        Whether the charges already contain the tax, which is then only stated.
    round_line_to, round_total_to
        Steps; a half goes up.
    private_title
        The one line under which the client sees the sum of all private lines.
    """

    currency: str
    charges: tuple[Charge, ...]
    minimum: Decimal = Decimal(0)
    tax_percent: Decimal = Decimal(0)
    tax_name: str = "tax"
    tax_included: bool = False
    round_line_to: Decimal = CENT
    round_total_to: Decimal = CENT
    private_title: str = "Workmanship"

    def __post_init__(self) -> None:
        Money.zero(self.currency)  # refuses what is no currency
        if not (self.minimum.is_finite() and self.minimum >= 0):
            raise FieldError("minimum", got=self.minimum, wanted="give zero or more")
        if not (self.tax_percent.is_finite() and 0 <= self.tax_percent <= 100):
            raise FieldError("tax percent", got=self.tax_percent, wanted="give 0 to 100")
        for name in ("round_line_to", "round_total_to"):
            step: Decimal = getattr(self, name)
            if not (step.is_finite() and step > 0):
                raise FieldError(name, got=step, wanted="give a step above zero, like 0.01")
