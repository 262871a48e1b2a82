import numpy as np
import pytest

from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.picture import ColourTrust, Picture
from framing_palette.picture.looking import read_findings
from framing_palette.picture.pictures import TrustGrade
from framing_palette.ranking import SampleColumns, Verdict, ranking
from framing_palette.ranking.strip_reading import (
    StripReader,
    edge_colours,
    read_strip,
    repeated_colours,
    strip_columns,
    strip_reader,
)
from framing_palette.ranking.strips import Strip

SKY, SEA, RED = (78.0, -3.0, -8.0), (45.0, -4.0, -12.0), (42.0, 52.0, 34.0)


@pytest.fixture(scope="module")
def reader() -> StripReader:
    """Sky over sea, 400 by 300 mm, with a red boat of 80 by 60 mm in the middle."""
    lab = np.empty((300, 400, 3), dtype=np.float32)
    lab[:150] = SKY
    lab[150:] = SEA
    lab[120:180, 160:240] = RED
    trust = ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells.")
    picture = Picture(lab, 1.0, trust, 400, 300)
    return strip_reader(picture, read_findings(picture), mm_per_px=1.0)


def one(lab: tuple[float, float, float]) -> SampleColumns:
    return strip_columns(Sample("a", "A", Kind.MAT, (SampleColour(lab, 1.0),)))


def strip(x_mm: float, y_mm: float, *, turn_deg: float = 0.0, bent: bool = False) -> Strip:
    return Strip(1, "a", x_mm, y_mm, 100.0, 20.0, turn_deg, bent)


def test_the_edge_on_one_colour_reads_as_that_colour_alone(reader: StripReader) -> None:
    (colour,) = edge_colours(reader, strip(80.0, 60.0))
    assert colour.lab == pytest.approx(SKY, abs=0.01)
    assert colour.share == pytest.approx(1.0)


def test_shares_along_the_edge_add_up_to_one_and_follow_the_place(reader: StripReader) -> None:
    colours = edge_colours(reader, strip(80.0, 150.0))  # one long edge in the sky, one in the sea
    assert sum(colour.share for colour in colours) == pytest.approx(1.0)
    assert [colour.share for colour in colours] == pytest.approx([0.5, 0.5], abs=0.06)


@pytest.mark.parametrize("bent", [False, True])
@pytest.mark.parametrize("turn_deg", [0.0, 30.0, 90.0, 200.0])
def test_what_lies_under_the_strip_does_not_count(
    reader: StripReader, turn_deg: float, *, bent: bool
) -> None:
    # The red boat is wholly hidden under a strip that is larger than it.
    cover = Strip(1, "a", 200.0, 150.0, 140.0, 130.0, turn_deg, bent)
    assert all(colour.lab[1] < 30.0 for colour in edge_colours(reader, cover))


def test_off_the_picture_there_is_nothing_to_read(reader: StripReader) -> None:
    reading = read_strip(reader, strip(-300.0, -300.0), one(SKY))
    assert reading.verdict is None
    assert np.isnan(reading.delta_e)


def test_a_strip_of_the_colour_that_it_lies_on_settles(reader: StripReader) -> None:
    reading = read_strip(reader, strip(80.0, 60.0), one(SKY))
    assert reading.verdict is Verdict.BLEND
    assert reading.delta_e == pytest.approx(0.0, abs=0.05)


def test_a_strip_far_stronger_than_the_picture_fights(reader: StripReader) -> None:
    assert read_strip(reader, strip(80.0, 60.0), one((70.0, 60.0, 85.0))).verdict is Verdict.CLASH


def test_the_difference_grows_as_the_strip_slides_from_its_own_colour(reader: StripReader) -> None:
    over = [read_strip(reader, strip(60.0, y), one(SKY)).delta_e for y in (60.0, 150.0, 240.0)]
    assert over == sorted(over)
    assert over[0] < over[1] < over[2]


def test_a_repeated_colour_is_pointed_at_where_it_is(reader: StripReader) -> None:
    best = repeated_colours(reader, one((38.0, 44.0, 28.0)))[0]
    assert best.lab == pytest.approx(RED, abs=1.0)
    x, y = best.spot
    assert 0.4 <= x <= 0.6
    assert 0.4 <= y <= 0.6


def test_a_colour_that_the_picture_does_not_have_repeats_nothing(reader: StripReader) -> None:
    assert repeated_colours(reader, one((60.0, -60.0, 60.0))) == ()


def test_the_word_is_the_rankings_own_verdict_with_the_edge_in_the_place_of_the_rim(
    reader: StripReader,
) -> None:
    lab = np.empty((300, 400, 3), dtype=np.float32)
    lab[:150] = SKY
    lab[150:] = SEA
    lab[120:180, 160:240] = RED
    trust = ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells.")
    findings = read_findings(Picture(lab, 1.0, trust, 400, 300))
    for lab_of_sample in (SKY, SEA, RED, (70.0, 60.0, 85.0), (95.0, 0.0, 3.0), (20.0, 0.0, 0.0)):
        for place in (strip(80.0, 60.0), strip(80.0, 150.0), strip(200.0, 250.0, bent=True)):
            sample = Sample("a", "A", Kind.MAT, (SampleColour(lab_of_sample, 1.0),))
            touching = edge_colours(reader, place)
            wanted = ranking(findings, [sample], touching=touching)[0]
            found = read_strip(reader, place, strip_columns(sample))
            assert found.verdict is wanted.verdict
            assert found.delta_e == pytest.approx(wanted.measures.separation_delta_e)
