"""Which backups stay: the newest always, and enough of every age to go back to."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.jobs.backups import backup_name, is_due, no_longer_needed, time_of_backup

NOW = datetime(2026, 11, 20, 15, 0, tzinfo=UTC)
HOUR = timedelta(hours=1)
TIMES = st.lists(
    st.integers(0, 10 * 366 * 86400).map(
        lambda seconds: datetime(2020, 1, 1, tzinfo=UTC) + timedelta(seconds=seconds)
    ),
    max_size=60,
)


@settings(deadline=None)
@given(TIMES)
def test_the_newest_six_always_stay_and_each_of_the_last_days_keeps_one(
    times: list[datetime],
) -> None:
    gone = no_longer_needed(times)
    kept = sorted(set(times) - gone, reverse=True)
    newest = sorted(set(times), reverse=True)
    assert kept[:6] == newest[:6]
    days = sorted({at.date() for at in times}, reverse=True)[:14]
    months = sorted({(at.year, at.month) for at in times}, reverse=True)[:24]
    assert set(days) <= {at.date() for at in kept}
    assert set(months) <= {(at.year, at.month) for at in kept}
    assert len(kept) <= 6 + 14 + 8 + 24


@settings(deadline=None)
@given(TIMES)
def test_pruning_what_is_pruned_lets_nothing_more_go(times: list[datetime]) -> None:
    kept = set(times) - no_longer_needed(times)
    assert no_longer_needed(kept) == frozenset()


def test_backups_of_every_four_hours_for_two_years_become_about_forty() -> None:
    taken = [NOW - 4 * HOUR * number for number in range(6 * 730)]
    kept = set(taken) - no_longer_needed(taken)
    assert 38 <= len(kept) <= 46
    assert NOW - min(kept) > timedelta(days=680)


@settings(deadline=None)
@given(TIMES.filter(len), st.text(min_size=1, max_size=5))
def test_the_name_of_a_backup_tells_when_it_was_taken(times: list[datetime], stem: str) -> None:
    name = Path("folder") / backup_name("jobs", times[0])
    assert time_of_backup(name, "jobs") == times[0]
    assert time_of_backup(name, "jobs2") is None


@pytest.mark.parametrize("name", ["jobs.sqlite", "jobs-now.sqlite", "jobs-20260101T000000Z.txt"])
def test_other_files_are_no_backups(name: str) -> None:
    assert time_of_backup(Path(name), "jobs") is None


def test_a_backup_is_due_when_there_is_none_or_it_is_old_or_of_the_future() -> None:
    assert is_due([], NOW)
    assert not is_due([NOW - 5 * HOUR, NOW - 3 * HOUR], NOW)
    assert is_due([NOW - 4 * HOUR], NOW)
    assert is_due([NOW + 100 * HOUR], NOW)
