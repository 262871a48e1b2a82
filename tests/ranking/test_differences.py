import pytest

from framing_palette.catalogue import Kind, Sample, SampleColour, Surface
from framing_palette.ranking.differences import difference_words
from framing_palette.units import Length

Lab = tuple[float, float, float]


def sample(
    name: str, lab: Lab, face_mm: int | None = None, surface: Surface | None = None
) -> Sample:
    face = Length.mm_of(face_mm) if face_mm else None
    colours = (SampleColour(lab, 1.0),)
    return Sample(name, name, Kind.MOULDING, colours, face=face, surface=surface)


BASE = sample("Base", (50.0, 20.0, 20.0), 30, Surface.LINEN)


@pytest.mark.parametrize(
    ("lab", "wanted"),
    [
        ((60.0, 20.0, 20.0), "Lighter than Base."),
        ((20.0, 20.0, 20.0), "Much darker than Base."),
        ((50.0, 26.0, 26.0), "Stronger, warmer than Base."),
        ((50.0, 3.0, 3.0), "Much quieter, cooler than Base."),
        ((50.0, 20.2, 20.2), "Hardly to be told from Base."),
    ],
)
def test_colour_differences_are_named_by_direction_and_size(lab: Lab, wanted: str) -> None:
    other = sample("Other", lab, 30, Surface.LINEN)
    assert difference_words(other, BASE) == wanted


def test_width_and_surface_are_told_too() -> None:
    wide = sample("Wide", (60.0, 20.0, 20.0), 50, Surface.SUEDE)
    assert difference_words(wide, BASE) == "Lighter, wider than Base; suede instead of linen."


def test_a_sample_without_colours_is_compared_by_its_form_alone() -> None:
    bare = Sample("bare", "Bare", Kind.MOULDING, (), face=Length.mm_of(20))
    assert difference_words(bare, BASE) == "Narrower than Base."


def test_the_sentence_turns_round_with_its_two_samples() -> None:
    light = sample("Light", (80.0, 20.0, 20.0), 30, Surface.LINEN)
    assert "lighter" in difference_words(light, BASE).lower()
    assert "darker" in difference_words(BASE, light).lower()
