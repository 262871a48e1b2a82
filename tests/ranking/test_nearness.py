import pytest

from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.colour import delta_e_2000
from framing_palette.ranking.nearness import NEAR_DELTA_E, near_samples

RED, BROWN, BLUE = (45.0, 45.0, 25.0), (40.0, 25.0, 22.0), (45.0, -5.0, -35.0)


def sample(code: str, *colours: tuple[tuple[float, float, float], float]) -> Sample:
    shown = tuple(SampleColour(lab, share) for lab, share in colours)
    return Sample(code, code, Kind.MAT, shown)


def test_near_samples_come_nearest_first_with_their_difference() -> None:
    samples = [
        sample("brown", (BROWN, 1.0)),
        sample("blue", (BLUE, 1.0)),
        sample("red", (RED, 1.0)),
    ]
    near = near_samples(samples, RED)
    assert list(near) == ["red", "brown"]
    assert near["red"] == pytest.approx(0.0, abs=1e-9)
    assert near["brown"] == pytest.approx(float(delta_e_2000(BROWN, RED)))
    assert near["brown"] <= NEAR_DELTA_E


def test_a_second_colour_counts_when_enough_of_it_is_seen() -> None:
    samples = [
        sample("much", (BLUE, 0.7), (RED, 0.3)),
        sample("speck", (BLUE, 0.95), (RED, 0.05)),
    ]
    assert list(near_samples(samples, RED)) == ["much"]


def test_no_samples_and_samples_without_colours_are_near_nothing() -> None:
    assert near_samples([], RED) == {}
    assert near_samples([sample("bare")], RED) == {}
