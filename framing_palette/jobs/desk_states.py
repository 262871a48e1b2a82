"""How things lie on the desk beside a job: laid round the picture, sliding, kept, sent away.

Nothing here is agreed on; it is kept so that a job opens as it was left, whatever ended the work.
"""

from dataclasses import dataclass

from pydantic import BaseModel, ConfigDict, FiniteFloat

from framing_palette.ranking.strips import Strip


@dataclass(frozen=True, slots=True)
class OnRail:
    """A sample or a whole design that rests on the rail.

    Parameters
    ----------
    codes
        The sample's code, or the codes of a design's layers from the art outward.
    title
        What the rail calls it.
    note
        What the client or the designer said about it.
    """

    codes: tuple[str, ...]
    title: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class SentAway:
    """A sample that was sent away from this job, with the reason if one was given."""

    code: str
    reason: str = ""


@dataclass(frozen=True, slots=True)
class DeskState:
    """The desk of one job.

    Parameters
    ----------
    laid
        Codes of the samples laid round the picture, from the art outward.
    strips
        Samples that lie on the picture.
    rail
        What was kept.
    away
        What was sent away.
    """

    laid: tuple[str, ...] = ()
    strips: tuple[Strip, ...] = ()
    rail: tuple[OnRail, ...] = ()
    away: tuple[SentAway, ...] = ()


class _Model(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class StripModel(_Model):
    """One strip; millimetres and degrees."""

    number: int
    code: str
    x_mm: FiniteFloat
    y_mm: FiniteFloat
    length_mm: FiniteFloat
    width_mm: FiniteFloat
    turn_deg: FiniteFloat = 0.0
    bent: bool = False


class OnRailModel(_Model):
    """One thing on the rail."""

    codes: tuple[str, ...]
    title: str = ""
    note: str = ""


class SentAwayModel(_Model):
    """One sample sent away."""

    code: str
    reason: str = ""


class DeskModel(_Model):
    """The desk in a job's document."""

    laid: tuple[str, ...] = ()
    strips: tuple[StripModel, ...] = ()
    rail: tuple[OnRailModel, ...] = ()
    away: tuple[SentAwayModel, ...] = ()

    def desk(self) -> DeskState:
        """Return the desk as a value."""
        return DeskState(
            self.laid,
            tuple(Strip(**strip.model_dump()) for strip in self.strips),
            tuple(OnRail(**kept.model_dump()) for kept in self.rail),
            tuple(SentAway(**sent.model_dump()) for sent in self.away),
        )
