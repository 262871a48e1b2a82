"""The picture: the photograph of the art, upright, with its scale and how far to trust it."""

import math
from dataclasses import dataclass, field, replace
from enum import StrEnum

from framing_palette.arrays import Float32Array
from framing_palette.errors import FieldError
from framing_palette.units import Length

PROPORTION_TOLERANCE = 0.02
"""A typed size whose proportions differ more than this from the picture's earns a warning."""


class TrustGrade(StrEnum):
    """How good the colours are, in steps that decide what they may be used for."""

    WHITES = "whites"  # good enough to choose between whites
    HUES = "hues"  # good enough to choose between neighbouring hues
    FAMILIES = "families"  # only for broad families of colour
    UNKNOWN = "unknown"  # nothing in the photograph tells


@dataclass(frozen=True, slots=True)
class PatchError:
    """One patch of a colour chart after correction, Lab D50 and ΔE00 left out of the fit."""

    name: str
    measured_lab: tuple[float, float, float]
    reference_lab: tuple[float, float, float]
    delta_e: float


@dataclass(frozen=True, slots=True)
class ColourTrust:
    """What is known about the error of the picture's colours.

    Parameters
    ----------
    method
        How the colours were corrected, in a word: "chart", "grey", "profile" or "assumed".
    grade
        The step that the errors fall into.
    words
        One sentence for people: how good, and what that is enough for.
    mean_delta_e, p95_delta_e, max_delta_e
        Leave-one-out ΔE00; None where nothing in the photograph tells.
    clipped_share
        Share of pixels (0..1) with a channel at its end.
    patches
        The chart's patches, empty without a chart.
    """

    method: str
    grade: TrustGrade
    words: str
    mean_delta_e: float | None = None
    p95_delta_e: float | None = None
    max_delta_e: float | None = None
    clipped_share: float = 0.0
    patches: tuple[PatchError, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Picture:
    """The photograph of the art, upright and reduced to working size.

    Parameters
    ----------
    lab_d50
        Shape (rows, columns, 3), float32 CIELAB D50, read-only.
    mm_per_px
        Millimetres on the art per pixel of ``lab_d50``; None when not known.
    colour_trust
        What is known about the error of the colours.
    full_width_px, full_height_px
        Size of the upright photograph before it was reduced.
    source
        The file's name for messages, empty for a picture made in memory.
    notices
        Sentences worth telling about how the file was read.
    """

    lab_d50: Float32Array
    mm_per_px: float | None
    colour_trust: ColourTrust
    full_width_px: int
    full_height_px: int
    source: str = ""
    notices: tuple[str, ...] = field(default=())

    @property
    def rows(self) -> int:
        """Height in working pixels."""
        return int(self.lab_d50.shape[0])

    @property
    def columns(self) -> int:
        """Width in working pixels."""
        return int(self.lab_d50.shape[1])

    def with_full_scale(self, mm_per_px: float) -> "Picture":
        """Return the picture with its scale, given per pixel of the photograph as stored.

        Raises
        ------
        FieldError
            When the scale is not a number above zero.
        """
        if not (math.isfinite(mm_per_px) and mm_per_px > 0):
            raise FieldError("mm_per_px", got=mm_per_px, wanted="it must be above zero")
        longest = max(self.full_width_px, self.full_height_px)
        return replace(self, mm_per_px=mm_per_px * longest / max(self.rows, self.columns))

    def true_size(self) -> tuple[Length, Length] | None:
        """Return width and height of what is shown, to the millimetre; None without a scale."""
        if self.mm_per_px is None:
            return None
        across, down = (max(1, round(px * self.mm_per_px)) for px in (self.columns, self.rows))
        return Length.mm_of(across), Length.mm_of(down)

    def with_true_size(self, width: Length, height: Length) -> "Picture":
        """Return the picture with the scale that follows from the art's true size.

        The picture must show the art from edge to edge. When the typed proportions differ from
        the picture's by more than 2 %, a notice says so and the scale follows the mean of both
        sides.

        Raises
        ------
        FieldError
            When a side is not above zero.
        """
        sides_mm = {"width": width.as_float_mm(), "height": height.as_float_mm()}
        for name, side_mm in sides_mm.items():
            if side_mm <= 0:
                raise FieldError(f"the art's {name}", got=side_mm, wanted="it must be above zero")
        across, down = sides_mm["width"] / self.columns, sides_mm["height"] / self.rows
        said_before = _proportions_notice(1.0)[-_TELLING:]
        notices = tuple(told for told in self.notices if not told.endswith(said_before))
        if abs(across / down - 1) > PROPORTION_TOLERANCE:
            notices += (_proportions_notice(across / down),)
        return replace(self, mm_per_px=(across * down) ** 0.5, notices=notices)


_TELLING = 60  # letters at a notice's end by which it is known again


def _proportions_notice(ratio: float) -> str:
    return (
        f"The typed size is {abs(ratio - 1):.0%} {'wider' if ratio > 1 else 'narrower'} than the "
        "picture's proportions: check the size, and that the picture shows all of the art."
    )
