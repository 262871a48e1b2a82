"""Dates as a framer asks for them."""

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.errors import FieldError
from framing_palette.jobs.dates_asked import dates_asked


def day(year: int, month: int = 1, day: int = 1) -> datetime:
    return datetime(year, month, day, tzinfo=UTC)


@pytest.mark.parametrize(
    ("text", "first", "before"),
    [
        ("2026", day(2026), day(2027)),
        (" 2026-03 ", day(2026, 3), day(2026, 4)),
        ("2025-12", day(2025, 12), day(2026, 1)),
        ("2024-2-29", day(2024, 2, 29), day(2024, 3, 1)),
        ("2026-03-04 to 2026-04-15", day(2026, 3, 4), day(2026, 4, 16)),
        ("2025 until 2026-03", day(2025), day(2026, 4)),
        ("2025..2026", day(2025), day(2027)),
        ("2026-12-31", day(2026, 12, 31), day(2027)),
    ],
)
def test_a_year_a_month_a_day_and_a_span_are_all_of_it(
    text: str, first: datetime, before: datetime
) -> None:
    assert dates_asked(text, UTC) == (first, before)


def test_nothing_asked_is_no_limit() -> None:
    assert dates_asked("  ", UTC) == (None, None)


@pytest.mark.parametrize("text", ["spring", "2026-13", "2026-02-30", "26", "2026 to 2027 to 2028"])
def test_what_is_no_date_is_told_how_to_write_one(text: str) -> None:
    with pytest.raises(FieldError, match="such as 2026"):
        dates_asked(text, UTC)


def test_a_span_that_runs_backwards_is_told() -> None:
    with pytest.raises(FieldError, match="the earlier date first"):
        dates_asked("2026-05 to 2026-03", UTC)


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused_in_a_sentence(text: str) -> None:
    try:
        first, before = dates_asked(text, UTC)
    except FieldError as error:
        assert str(error)
    else:
        assert (first is None) == (before is None)
        assert first is None or before is None or first < before
