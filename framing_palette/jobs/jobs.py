"""Jobs: everything that designer and client decided about one piece of art."""

from collections import Counter
from dataclasses import dataclass, field, replace
from datetime import datetime
from enum import StrEnum

from framing_palette.design import Design
from framing_palette.design.measuring import Reading as Measurement
from framing_palette.errors import FieldError
from framing_palette.jobs.desk_states import DeskState
from framing_palette.jobs.taking_in import HowTaken
from framing_palette.picture import Region
from framing_palette.units import Length

__all__ = ["Client", "Event", "Job", "Measurement", "Option", "PictureFile", "Status"]


class Status(StrEnum):
    """Where the job is in the shop, in the order in which it moves."""

    OPEN = "open"
    PROPOSED = "proposed"
    AGREED = "agreed"
    WORKSHOP = "workshop"
    READY = "ready"
    COLLECTED = "collected"


@dataclass(frozen=True, slots=True)
class Client:
    """Who the job is for; personal data, kept out of every log."""

    name: str = ""
    contact: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class PictureFile:
    """The photograph of the art as the job keeps it.

    Parameters
    ----------
    name
        The file's own name, for people.
    sha256
        Digest of its bytes, by which it is found and checked.
    """

    name: str
    sha256: str


@dataclass(frozen=True, slots=True)
class Option:
    """One design shown to the client, with the reasons said aloud."""

    design: Design
    reasons: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class Event:
    """One decision, for the history."""

    at: datetime
    words: str


@dataclass(frozen=True, slots=True)
class Job:
    """One piece of art on its way through the shop.

    Parameters
    ----------
    number
        The shop's number, unique in its library.
    title
        What is framed.
    client, status
        Whose, and where it is.
    created, changed
        With a time zone.
    picture
        The photograph, when there is one.
    art_size
        Width and height as told by the client or typed at intake; the measurements decide.
    intake
        How the photograph is squared and corrected; None while it stays as its file says.
    regions
        As drawn on the picture.
    measurements
        None, one or two of each piece of art; the second was taken without seeing the first.
    options
        Designs in the order in which they are shown.
    chosen
        Position of the agreed one among the options.
    kept
        Codes of the samples kept for this job.
    catalogue
        The catalogue's name, for messages.
    note
        For the shop only.
    history
        Oldest first.
    desk
        How things lay on the desk when the job was left.
    """

    number: str
    title: str
    created: datetime
    changed: datetime
    client: Client = field(default_factory=Client)
    status: Status = Status.OPEN
    picture: PictureFile | None = None
    art_size: tuple[Length, Length] | None = None
    intake: HowTaken | None = None
    regions: tuple[Region, ...] = ()
    measurements: tuple[Measurement, ...] = ()
    options: tuple[Option, ...] = ()
    chosen: int | None = None
    kept: tuple[str, ...] = ()
    catalogue: str = ""
    note: str = ""
    history: tuple[Event, ...] = ()
    desk: DeskState = field(default_factory=DeskState)

    def __post_init__(self) -> None:
        if not self.number.strip():
            raise FieldError("job number", got="empty", wanted="give the job a number")
        if self.chosen is not None and not 0 <= self.chosen < len(self.options):
            wanted = f"it must be one of the {len(self.options)} options, counted from 0"
            raise FieldError("job chosen", got=self.chosen, wanted=wanted)
        self._check_measurements()

    def _check_measurements(self) -> None:
        """Refuse a third reading of one piece, or one of a piece that cannot be."""
        counts = Counter(reading.piece for reading in self.measurements)
        for piece, count in counts.items():
            if piece < 0:
                wanted = "pieces of art are counted from 0"
                raise FieldError("job measurement piece", got=piece, wanted=wanted)
            if count > 2:
                which = "it" if len(counts) == 1 else f"art {piece + 1}"
                wanted = f"{which} takes two independent ones; take the old ones away first"
                raise FieldError("number of measurements", got=count, wanted=wanted)

    @property
    def agreed(self) -> Option | None:
        """The option that was agreed on."""
        return None if self.chosen is None else self.options[self.chosen]

    def with_event(self, at: datetime, words: str) -> "Job":
        """Return the job with one more line of history, changed at that time."""
        return replace(self, changed=at, history=(*self.history, Event(at, words)))
