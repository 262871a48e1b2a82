"""Merging: what an import would change in a library, told before anything is changed."""

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields, replace
from typing import Any

from framing_palette.catalogue.records import record_of, record_text
from framing_palette.catalogue.samples import Sample, SampleColour


@dataclass(frozen=True, slots=True)
class Change:
    """One fact of a sample that an import would change; None for unknown."""

    code: str
    fact: str
    before: object
    after: object

    def __str__(self) -> str:
        """Return the change as one line for the preview."""
        return f"{self.code}: {self.fact} {_told(self.before)} → {_told(self.after)}"


@dataclass(frozen=True, slots=True)
class ImportPlan:
    """What an import will do; made without touching the library.

    Parameters
    ----------
    samples
        What is imported.
    source
        Where it comes from, for the history.
    new, changed
        Places in `samples`.
    unchanged
        How many are the same already.
    missing
        Codes that the library has and the import has not; they stay.
    edited
        Codes among the changed for which the shop has facts of its own; those stay in force.
    changes
        Fact by fact, of the changed samples.
    library_revision
        The state of the library that the plan was made for.
    """

    samples: Sequence[Sample]
    source: str
    new: tuple[int, ...]
    changed: tuple[int, ...]
    unchanged: int
    missing: tuple[str, ...]
    edited: tuple[str, ...]
    changes: tuple[Change, ...]
    library_revision: int

    @property
    def summary(self) -> str:
        """The plan in one sentence."""
        return (
            f"{len(self.new)} new, {len(self.changed)} changed, {self.unchanged} the same, "
            f"{len(self.missing)} not in the import; {len(self.edited)} keep the shop's own edits."
        )


def imported_text(sample: Sample) -> str:
    """Return a sample as the library keeps it."""
    return record_text(record_of(sample))


def digest_of(text: str) -> str:
    """Return a short mark that is the same for the same record."""
    return hashlib.blake2b(text.encode("utf-8"), digest_size=16).hexdigest()


def changes_between(before: Mapping[str, Any], after: Mapping[str, Any]) -> tuple[Change, ...]:
    """Return the facts that differ between two records of one sample."""
    code = str(after.get("code") or before.get("code"))
    return tuple(
        Change(code, fact, before.get(fact), after.get(fact))
        for fact in sorted({*before, *after})
        if before.get(fact) != after.get(fact)
    )


def merged_samples(
    current: Sequence[Sample], incoming: Sequence[Sample]
) -> tuple[tuple[Sample, ...], tuple[Change, ...]]:
    """Return samples with others merged in by code, and every fact that changed.

    What the incoming sample leaves unknown stays as it was; new samples come last.

    Parameters
    ----------
    current, incoming
        Samples, each code once in either.
    """
    news = {sample.code: sample for sample in incoming}
    known = {sample.code for sample in current}
    merged, changes = list[Sample](), list[Change]()
    for sample in current:
        new = news.get(sample.code)
        whole = sample if new is None else merged_sample(sample, new)
        if whole != sample:
            changes += changes_between(record_of(sample), record_of(whole))
        merged.append(whole)
    merged += [sample for sample in incoming if sample.code not in known]
    return tuple(merged), tuple(changes)


def merged_sample(current: Sample, incoming: Sample) -> Sample:
    """Return a sample with all that an incoming one of the same code knows.

    A name that is only the code says nothing, and the kind stays.
    """
    told = {
        field.name: value
        for field in fields(Sample)
        if field.name not in {"code", "kind"}
        and (value := getattr(incoming, field.name)) not in (None, "", ())
    }
    if incoming.name == incoming.code:
        told.pop("name", None)
    if incoming.colours:
        told["colours"] = _with_shares(incoming.colours, current.colours)
        told["colour_origin"] = incoming.colour_origin
    return replace(current, **told)


def _with_shares(
    incoming: tuple[SampleColour, ...], current: tuple[SampleColour, ...]
) -> tuple[SampleColour, ...]:
    """Return new colours; those that come with equal shares, not knowing any, keep the old ones."""
    if len(incoming) != len(current) or len({colour.share for colour in incoming}) > 1:
        return incoming
    pairs = zip(incoming, current, strict=True)
    return tuple(replace(new, share=old.share) for new, old in pairs)


def _told(value: object) -> str:
    if value is None:
        return "unknown"
    if isinstance(value, list):
        return f"{len(value)} values" if len(value) > 3 else ", ".join(map(_told, value))
    if isinstance(value, dict):
        lab = value.get("lab")
        return f"({', '.join(f'{x:.2f}' for x in lab)})" if lab else "values"
    return str(value)
