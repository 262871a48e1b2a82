"""Merging what two counters did to one job since both had it alike, and what a person must decide.

What only one of them changed is taken from that one. The history of both is kept. Where both
changed the same in different ways nothing is guessed: it is named, and one of the two stands until
somebody has looked at it.
"""

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import Any, Final, TypeVar

from framing_palette.jobs.desk_states import DeskState
from framing_palette.jobs.jobs import Event, Job

Thing = TypeVar("Thing")

# What only makes sense together is taken together: the chosen design is counted among the designs,
# their sizes follow the measurements, and the status says whether one was chosen.
_TOGETHER: Final = (
    ("title",),
    ("client",),
    ("picture", "intake", "regions"),
    ("art_size", "measurements", "options", "chosen", "status"),
    ("catalogue",),
    ("note",),
)


@dataclass(frozen=True, slots=True)
class Merged:
    """A merged job and what both counters changed differently.

    Parameters
    ----------
    job
        With everything that could be merged; where both changed the same, with mine.
    undecided
        The fields that somebody has to look at, empty when there are none.
    """

    job: Job
    undecided: tuple[str, ...]


def merged(base: Job, mine: Job, theirs: Job) -> Merged:
    """Merge two jobs that were both made from one.

    Parameters
    ----------
    base
        As it was when both opened it.
    mine, theirs
        As this counter has it now, and as the other has saved it.
    """
    values, undecided = dict[str, Any](), list[str]()
    for fields in _TOGETHER:
        was, here, there = ([getattr(job, name) for name in fields] for job in (base, mine, theirs))
        if here not in (was, there) and there != was:
            undecided += [name for name in fields if getattr(mine, name) != getattr(theirs, name)]
        values |= zip(fields, there if here == was else here, strict=True)
    job = replace(
        theirs,
        **values,
        changed=max(mine.changed, theirs.changed),
        kept=_with_changes_of_both(base.kept, mine.kept, theirs.kept),
        desk=_desk_of_both(base.desk, mine.desk, theirs.desk),
        history=_told_by_both(base.history, mine.history, theirs.history),
    )
    return Merged(job, tuple(undecided))


def decided(joined: Job, theirs: Job, fields: Collection[str]) -> Job:
    """Return a merged job with some fields as the other counter has them, and what goes with them.

    Parameters
    ----------
    joined
        What `merged` made of both.
    theirs
        As the other counter has saved it.
    fields
        Of those that were undecided.
    """
    taken = [name for group in _TOGETHER if set(group) & set(fields) for name in group]
    return replace(joined, **{name: getattr(theirs, name) for name in taken})


def questions(undecided: Collection[str]) -> tuple[tuple[str, ...], ...]:
    """Return undecided fields as they have to be decided: what goes together at once."""
    groups = (tuple(name for name in group if name in undecided) for group in _TOGETHER)
    return tuple(group for group in groups if group)


def _with_changes_of_both(
    base: tuple[Thing, ...], mine: tuple[Thing, ...], theirs: tuple[Thing, ...]
) -> tuple[Thing, ...]:
    """Return theirs with what I added and without what I took away."""
    if theirs == base:
        return mine
    gone = set(base) - set(mine)
    added = [thing for thing in mine if thing not in base and thing not in theirs]
    return (*(thing for thing in theirs if thing not in gone), *added)


def _desk_of_both(base: DeskState, mine: DeskState, theirs: DeskState) -> DeskState:
    """Return what both kept and sent away; what lies on the picture is mine where both moved."""
    return DeskState(
        theirs.laid if mine.laid == base.laid else mine.laid,
        theirs.strips if mine.strips == base.strips else mine.strips,
        _with_changes_of_both(base.rail, mine.rail, theirs.rail),
        _with_changes_of_both(base.away, mine.away, theirs.away),
    )


def _told_by_both(
    base: tuple[Event, ...], mine: tuple[Event, ...], theirs: tuple[Event, ...]
) -> tuple[Event, ...]:
    """Return both histories as one, by time; the same line of both is told once."""
    known = set(theirs)
    both = [*theirs, *(event for event in mine if event not in known and event not in base)]
    return tuple(sorted(both, key=lambda event: event.at))
