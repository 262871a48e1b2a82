import pytest

from framing_palette.catalogue import Catalogue, Kind, Sample, SampleColour
from framing_palette.picture.looking import read_findings
from framing_palette.ranking import RankedSample, Ranking, Verdict, ranking
from framing_palette.window.listing import listed_of
from framing_palette.window.sample_list import MOST_LISTED, Heading, Rest, SampleList


@pytest.fixture
def big_rack() -> Catalogue:
    """400 greys and browns, all plain mats."""
    samples = [
        Sample(
            f"M-{number}",
            f"Plain {number}",
            Kind.MAT if number % 4 else Kind.LINER,
            (SampleColour((20.0 + 0.15 * number, 1.0, 2.0), 1.0),),
            tags=("plain", "even" if number % 2 == 0 else "odd"),
        )
        for number in range(400)
    ]
    return Catalogue(tuple(samples))


@pytest.fixture
def ranked(big_rack: Catalogue, plain_picture: object) -> Ranking:
    return ranking(read_findings(plain_picture), big_rack)  # type: ignore[arg-type]


@pytest.fixture
def model(ranked: Ranking, qapp: object) -> SampleList:
    shown = SampleList()
    shown.set_ranked(ranked, listed_of(ranked))
    return shown


def rows(model: SampleList) -> list[object]:
    return [model.row_at(model.index(at)) for at in range(model.rowCount())]


def test_the_order_is_that_of_the_ranking_under_each_heading(
    model: SampleList, ranked: Ranking
) -> None:
    most = 0
    for verdict in (Verdict.COMPLEMENT, Verdict.BLEND):
        wanted = [one.sample.code for one in ranked if one.verdict is verdict]
        listed = [
            row.sample.code
            for row in rows(model)
            if isinstance(row, RankedSample) and row.verdict is verdict
        ]
        assert listed == wanted[:MOST_LISTED]
        most = max(most, len(wanted))
    assert most > MOST_LISTED


def test_headings_count_all_and_the_rest_says_how_many_are_not_listed(model: SampleList) -> None:
    told = rows(model)
    (heading,) = (row for row in told if isinstance(row, Heading) and row.count > MOST_LISTED)
    (rest,) = (row for row in told if isinstance(row, Rest))
    assert heading.count == MOST_LISTED + rest.count
    assert model.rest_words(rest).startswith(f"{rest.count:,} more")


def test_a_search_looks_through_names_codes_and_tags(model: SampleList) -> None:
    model.set_sought("odd PLAIN m-39")
    codes = {row.sample.code for row in rows(model) if isinstance(row, RankedSample)}
    assert codes == {"M-39", "M-391", "M-393", "M-395", "M-397", "M-399"}


def test_kinds_and_hidden_samples_are_left_out(model: SampleList) -> None:
    model.set_kinds(frozenset({Kind.LINER}))
    assert model.shown_count() == 100
    model.set_hidden(frozenset({"M-4", "M-8"}))
    assert model.shown_count() == 98
    assert not model.index_of("M-4").isValid()
    assert model.index_of("M-12").isValid()


def test_near_samples_come_nearest_first(model: SampleList) -> None:
    model.set_near({"M-7": 3.0, "M-9": 1.0, "M-5": 2.0})
    codes = [row.sample.code for row in rows(model) if isinstance(row, RankedSample)]
    assert codes == ["M-9", "M-5", "M-7"]


def test_a_row_is_spoken_with_its_reasons(model: SampleList) -> None:
    index = model.index(1)
    row = model.row_at(index)
    assert isinstance(row, RankedSample)
    assert model.data(index) == f"{row.sample.name}. {' '.join(row.reasons)}"
    assert "open" in model.data(model.index(0))
