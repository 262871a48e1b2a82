"""What becomes of a job that is to be kept."""

from dataclasses import dataclass
from enum import StrEnum

from framing_palette.jobs.job_lines import StoredJob


class Fate(StrEnum):
    """What became of a job that was to be kept."""

    SAVED = "saved"
    HERE = "here"
    """On this computer alone: the shop's jobs cannot be reached."""
    UNDECIDED = "undecided"
    """On this computer alone: another counter changed the same."""
    ERASED = "erased"
    """Nowhere: it was erased, and what is erased does not come back."""


@dataclass(frozen=True, slots=True)
class Kept:
    """What became of a job.

    Parameters
    ----------
    fate
        Where it is now.
    base
        As it is in the shop's jobs, to be named at the next save; merged with what others did, and
        under another number when its own was taken.
    theirs, undecided
        What the other counter has, and the fields that both changed, when somebody has to decide.
    why
        The sentence for the person at the counter, unless it is saved.
    """

    fate: Fate
    base: StoredJob
    theirs: StoredJob | None = None
    undecided: tuple[str, ...] = ()
    why: str = ""


@dataclass(frozen=True, slots=True)
class FoldedIn:
    """Numbers of the jobs that waited here: those saved now, and those that wait on."""

    saved: tuple[str, ...] = ()
    waiting: tuple[str, ...] = ()
