"""Two counters, one job: what only one changed is never lost, what both changed is named."""

from dataclasses import fields, replace
from datetime import timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.jobs import Client, DeskState, Event, Job, OnRail, Status
from framing_palette.jobs.merging import _TOGETHER, merged
from framing_palette.units import Length
from tests.jobs.test_store import START, job

CODES = st.lists(st.sampled_from("ABCDEF"), unique=True, max_size=4).map(tuple)
EVENTS = st.lists(
    st.builds(
        Event, st.integers(0, 9).map(lambda n: START + timedelta(hours=n)), st.sampled_from("xyz")
    ),
    max_size=3,
    unique=True,
).map(tuple)
JOBS = st.builds(
    lambda title, note, kept, client, history: replace(
        job("1"), title=title, note=note, kept=kept, client=Client(client), history=history
    ),
    st.sampled_from(["Boat", "Harbour"]),
    st.sampled_from(["", "dry", "damp"]),
    CODES,
    st.sampled_from(["Ada", "Bo"]),
    EVENTS,
)


def test_every_field_of_a_job_is_merged_or_always_theirs() -> None:
    merged_fields = {name for group in _TOGETHER for name in group}
    assert merged_fields | {"changed", "kept", "desk", "history", "number", "created"} == {
        field.name for field in fields(Job)
    }


@settings(deadline=None)
@given(JOBS, JOBS)
def test_what_only_one_counter_changed_is_taken_as_it_is(base: Job, changed: Job) -> None:
    for mine, theirs in ((base, changed), (changed, base)):
        found = merged(base, mine, theirs)
        assert found.undecided == ()
        assert replace(found.job, history=()) == replace(changed, history=())
        assert set(found.job.history) >= set(changed.history)


@settings(deadline=None)
@given(JOBS, JOBS)
def test_two_who_did_the_same_have_nothing_to_decide(base: Job, changed: Job) -> None:
    found = merged(base, changed, changed)
    assert found.undecided == ()
    assert set(found.job.kept) == set(changed.kept)


@settings(deadline=None)
@given(JOBS, JOBS, JOBS)
def test_nothing_that_either_did_is_lost_without_a_word(base: Job, mine: Job, theirs: Job) -> None:
    found = merged(base, mine, theirs)
    for name in ("title", "note", "client"):
        here, there = getattr(mine, name), getattr(theirs, name)
        was, now = getattr(base, name), getattr(found.job, name)
        if here != was and there not in (was, here):
            assert name in found.undecided
        else:
            assert now == (there if here == was else here)
    assert set(found.job.history) >= set(theirs.history) | (set(mine.history) - set(base.history))
    added = (set(mine.kept) | set(theirs.kept)) - set(base.kept)
    gone = (set(base.kept) - set(mine.kept)) | (set(base.kept) - set(theirs.kept))
    assert set(found.job.kept) >= added
    assert not gone & set(found.job.kept)
    assert len(set(found.job.kept)) == len(found.job.kept)


def test_a_size_here_and_a_status_there_are_for_a_person_to_decide() -> None:
    base = job("1")
    mine = replace(base, art_size=(Length.mm_of(1), Length.mm_of(2)))
    theirs = replace(base, status=Status.PROPOSED)
    assert merged(base, mine, theirs).undecided == ("art_size", "status")


def test_the_history_of_both_is_told_in_order() -> None:
    first, second, third = (Event(START + timedelta(hours=n), f"{n}") for n in range(3))
    base = replace(job("1"), history=(first,))
    mine = base.with_event(second.at, "1")
    theirs = base.with_event(third.at, "2")
    found = merged(base, mine, theirs).job
    assert found.history == (first, second, third)
    assert found.changed == third.at


def test_what_both_kept_and_what_one_laid_lies_on_the_desk_of_both() -> None:
    base = replace(job("1"), desk=DeskState(rail=(OnRail(("A",)),)))
    mine = replace(base, desk=DeskState(("M",), rail=(OnRail(("A",)), OnRail(("B",), note="warm"))))
    theirs = replace(base, desk=DeskState(rail=(OnRail(("C",)),)))
    found = merged(base, mine, theirs)
    assert found.undecided == ()
    assert found.job.desk == DeskState(("M",), rail=(OnRail(("C",)), OnRail(("B",), note="warm")))
