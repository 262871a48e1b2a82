"""Preferences: how the shop wants to see things; a frozen value with its plain explanations."""

from dataclasses import dataclass, field, replace
from typing import Any

from framing_palette.errors import FieldError
from framing_palette.units import Length, LengthUnit
from framing_palette.window.tokens import DEFAULT_SURROUND

DARKEST_SURROUND, LIGHTEST_SURROUND = 20, 95


@dataclass(frozen=True, slots=True)
class Preferences:
    """What the settings page changes.

    Parameters
    ----------
    unit
        "in" or "mm".
    denominator
        Inches are shown to this fraction: 16, 32 or 64.
    surround
        L* of what the picture lies on, 20 to 95.
    theme
        "system", "light" or "dark".
    language
        "system", "en" or "de"; used when the window next opens.
    mat_border
        Width of a mat when it is laid round the picture to look at it.
    tolerance
        Most that two measurements of the art may differ.
    reduced_motion
        True for no cross-fades.
    scale_percent
        Size of the interface, 100 to 200; used when the window next opens.
    show_numbers
        False hides every measure, for a screen that the client sees.
    taste_on
        True lets the shop's learned taste order the shortlist.
    toured
        True once the first-run tour was seen or left.
    screen_told
        True once it was read what a screen cannot show.

    Raises
    ------
    FieldError
        When a value is outside what the window can show.
    """

    unit: LengthUnit = "in"
    denominator: int = 32
    surround: int = DEFAULT_SURROUND
    theme: str = "system"
    language: str = "system"
    mat_border: Length = field(default_factory=lambda: Length.inches("2 1/2"))
    tolerance: Length = field(default_factory=lambda: Length.inches("1/32"))
    reduced_motion: bool = False
    scale_percent: int = 100
    show_numbers: bool = True
    taste_on: bool = False
    toured: bool = False
    screen_told: bool = False

    def __post_init__(self) -> None:
        if not DARKEST_SURROUND <= self.surround <= LIGHTEST_SURROUND:
            raise FieldError("surround", got=self.surround, wanted="choose 20 to 95")
        if self.denominator not in (16, 32, 64):
            raise FieldError("denominator", got=self.denominator, wanted="choose 16, 32 or 64")
        if self.scale_percent not in (100, 125, 150, 175, 200):
            raise FieldError("scale", got=self.scale_percent, wanted="choose 100 to 200 by 25")

        if self.unit not in ("in", "mm", "cm"):
            raise FieldError("unit", got=self.unit, wanted="choose in, mm or cm")
        if self.theme not in ("system", "light", "dark"):
            raise FieldError("theme", got=self.theme, wanted="choose system, light or dark")
        if self.language not in ("system", "en", "de"):
            raise FieldError("language", got=self.language, wanted="choose system, en or de")
        if min(self.mat_border.mm, self.tolerance.mm) <= 0:
            raise FieldError("mat border and tolerance", got="0", wanted="make both larger")

    def changed(self, name: str, value: Any) -> "Preferences":
        """Return the preferences with one of them changed.

        Raises
        ------
        FieldError
            When the window cannot show that.
        """
        return replace(self, **{name: value})
