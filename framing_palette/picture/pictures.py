"""The picture: the photograph of the art, upright, with its scale and how far to trust it."""

from dataclasses import dataclass, field
from enum import StrEnum

from framing_palette.arrays import Float32Array


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
