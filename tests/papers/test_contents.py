"""Contents: no ticket without two agreeing measurements, and lengths written without doubt."""

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.design import Window
from framing_palette.errors import (
    FieldError,
    MeasurementError,
    MeasurementsDisagreeError,
    MeasurementsMissingError,
    NotAsMeasuredError,
)
from framing_palette.papers import MeasuredArt, Notation, notation_of
from framing_palette.units import Length
from tests.papers.made_up import all_designs, plain, readings, several, ticket_of

inch = Length.inches


@pytest.mark.parametrize("count", [0, 1, 3])
def test_art_must_be_measured_exactly_twice(count):
    with pytest.raises(MeasurementsMissingError, match=f"There are {count} measurements where 2"):
        MeasuredArt.of(readings(inch(16), inch(20))[:1] * count)


def test_measurements_that_disagree_are_refused_by_side():
    first, second = readings(inch(16), inch(20))
    wrong = replace(second, height=inch("20 1/8"))
    with pytest.raises(MeasurementsDisagreeError, match="The height was measured"):
        MeasuredArt.of((first, wrong))


def test_the_same_reading_twice_is_not_two_measurements():
    first, _ = readings(inch(16), inch(20))
    with pytest.raises(MeasurementError, match="same hand"):
        MeasuredArt.of((first, first))
    assert MeasuredArt.of((first, replace(first, at=first.at + timedelta(minutes=5))))


def test_a_ticket_needs_a_measurement_at_all():
    with pytest.raises(MeasurementsMissingError):
        ticket_of(plain(), measured=())


def test_a_ticket_for_another_size_than_was_measured_is_refused():
    measured = (MeasuredArt.of(readings(inch(16), inch("20 1/2"))),)
    with pytest.raises(NotAsMeasuredError, match="as it was measured"):
        ticket_of(plain(), measured=measured)


def test_windows_of_different_sizes_each_need_their_measurements():
    design = several()
    windows = (Window(inch(6), inch(7)), *design.arrangement.windows[1:])
    mixed = replace(design, arrangement=replace(design.arrangement, windows=windows))
    with pytest.raises(MeasurementsMissingError, match="2 measurements where 12 are needed"):
        ticket_of(mixed, measured=ticket_of(several()).measured[:1])
    assert not ticket_of(mixed).is_measured_for_all


def test_a_frame_without_layers_goes_by_the_size_that_holds_the_art():
    first, second = readings(inch(24), inch(30))
    larger = replace(second, width=inch("24 1/32"))
    measured = (MeasuredArt.of((first, larger)),)
    canvas = all_designs()["canvas"]
    with pytest.raises(NotAsMeasuredError):
        ticket_of(canvas, measured=measured)
    held = replace(canvas, art=replace(canvas.art, width=inch("24 1/32")))
    assert ticket_of(held, measured=measured)


def test_figures_say_when_they_are_rounded():
    assert Notation("in").figures(Length.mm_of(300)) == "≈ 11 13/16"
    assert Notation("mm").said(Length.mm_of(300)) == "300 mm"
    assert Notation("in", "mm").second(Length.mm_of(300)) == "300 mm"
    assert Notation("in").second(Length.mm_of(300)) == ""


def test_one_sign_stands_for_both_rounded_sides_and_only_then():
    notation = Notation("in")
    assert notation.pair(Length.mm_of(300), Length.mm_of(400)) == "≈ 11 13/16 × 15 3/4"
    assert notation.pair(inch(12), Length.mm_of(400)) == "12 × ≈ 15 3/4"
    assert Notation("in", "mm").second_pair(inch(1), inch(2)) == "25.4 × 50.8 mm"
    assert notation.second_pair(inch(1), inch(2)) == ""


@given(st.integers(1, 100_000), st.sampled_from(["in", "mm", "cm"]))
def test_a_figure_without_the_sign_is_exact(thousandths, unit):
    length = Length.mm_of(thousandths) / 1000
    figures = Notation(unit).figures(length)
    if not figures.startswith("≈"):
        assert Length.parse(figures, unit) == length


@pytest.mark.parametrize(
    ("text", "notation"),
    [("in", Notation("in")), ("mm, in", Notation("mm", "in")), ("cm", Notation("cm"))],
)
def test_units_are_read_in_their_order(text, notation):
    assert notation_of(text) == notation


@pytest.mark.parametrize("text", ["", "ft", "in,in", "in,mm,cm"])
def test_units_that_cannot_be_used_are_refused(text):
    with pytest.raises(FieldError, match="units"):
        notation_of(text)


def test_the_legend_names_units_and_steps():
    legend = Notation("in", "mm").legend
    assert "inches and millimetres" in legend
    assert "1/32 in or 0.1 mm" in legend
