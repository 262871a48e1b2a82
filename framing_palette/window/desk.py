"""The desk: everything the designer can do and undo, as one frozen value."""

from dataclasses import dataclass

from framing_palette.errors import FieldError
from framing_palette.jobs import Job, OnRail, SentAway
from framing_palette.picture import Region
from framing_palette.ranking import Answer
from framing_palette.ranking.strips import Strip

MOST_KEPT = 4


@dataclass(frozen=True, slots=True)
class Desk:
    """What lies on the desk; every edit makes a new one.

    Parameters
    ----------
    job
        Whose and what it is, measurements, designs and status; its regions and kept samples are
        those of the job as it was opened, the desk's own are the ones that count.
    regions
        The outlines drawn on the picture.
    laid
        Codes of the samples laid round the picture, from the art outward.
    strips
        Samples that lie on the picture as strips.
    kept
        What rests on the rail, at most four.
    set_aside
        Samples that were sent away from this job.
    answers
        Which of two looks was preferred, oldest first; what the shop's taste learns from.

    Raises
    ------
    FieldError
        When more is kept than the rail holds.
    """

    job: Job | None = None
    regions: tuple[Region, ...] = ()
    laid: tuple[str, ...] = ()
    strips: tuple[Strip, ...] = ()
    kept: tuple[OnRail, ...] = ()
    set_aside: tuple[SentAway, ...] = ()
    answers: tuple[Answer, ...] = ()

    def __post_init__(self) -> None:
        if len(self.kept) > MOST_KEPT:
            raise FieldError(
                "The rail",
                got="full",
                wanted="take one of the four off it first",
            )
