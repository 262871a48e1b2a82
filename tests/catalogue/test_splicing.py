"""Columns put together from parts."""

from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.catalogue import Kind, Sample, SampleColour, read_catalogue_folder
from framing_palette.catalogue.columns import LazySamples, columns_from
from framing_palette.catalogue.search import SampleFilter, find_samples
from framing_palette.catalogue.splicing import joined_columns, sliced_columns, spliced_columns

SAMPLES = read_catalogue_folder(Path(__file__).parents[2] / "catalog")[0].samples[::13]
COLUMNS = columns_from(SAMPLES)
OTHER = Sample(
    "OTHER", "other", Kind.LINER, (SampleColour((5.0, 0.0, 0.0), 1.0, tuple([0.1] * 36)),)
)
BARE = Sample("BARE", "bare", Kind.MAT, (SampleColour((5.0, 0.0, 0.0), 1.0),))


def seen(columns: object) -> list[str]:
    return [repr(sample) for sample in LazySamples(columns)]  # type: ignore[arg-type]


@settings(deadline=None, max_examples=25)
@given(st.lists(st.integers(0, len(SAMPLES)), max_size=4))
def test_cutting_and_joining_changes_nothing(cuts: list[int]) -> None:
    marks = [0, *sorted(cuts), len(SAMPLES)]
    parts = [sliced_columns(COLUMNS, a, b) for a, b in pairwise(marks)]
    assert seen(joined_columns(parts)) == [repr(sample) for sample in SAMPLES]


@settings(deadline=None, max_examples=25)
@given(
    st.dictionaries(st.integers(0, len(SAMPLES) - 1), st.sampled_from([OTHER, BARE]), max_size=4),
    st.sets(st.integers(0, len(SAMPLES) - 1), max_size=4),
)
def test_exchanging_and_leaving_out_does_just_that(
    exchanged: dict[int, Sample], dropped: set[int]
) -> None:
    expected = [
        repr(exchanged.get(place, sample))
        for place, sample in enumerate(SAMPLES)
        if place not in dropped
    ]
    spliced = spliced_columns(COLUMNS, exchanged, dropped)
    assert seen(spliced) == expected
    assert len(find_samples(spliced, SampleFilter(text="other"))) == sum(
        sample is OTHER for place, sample in exchanged.items() if place not in dropped
    )


def test_nothing_to_change_gives_the_very_same_columns() -> None:
    assert spliced_columns(COLUMNS) is COLUMNS
    assert joined_columns([COLUMNS]) is COLUMNS


@pytest.mark.parametrize("columns", [joined_columns([]), spliced_columns(COLUMNS, {}, range(99))])
def test_leaving_everything_out_gives_an_empty_catalogue(columns: object) -> None:
    assert seen(columns) == []
