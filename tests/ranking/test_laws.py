"""Laws that the judgement obeys for any picture and any sample."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from framing_palette.picture import Accent
from framing_palette.ranking import HOUSE_RULE, Verdict, ranking
from framing_palette.ranking.pull import bearable_chroma
from framing_palette.ranking.subjects import subject_of
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

LIGHTNESS = st.floats(8, 96)
CHROMA = st.floats(0, 75)
HUE = st.floats(0, 360)
COLOUR = st.builds(lch, LIGHTNESS, CHROMA, HUE)


@st.composite
def palettes(draw):
    colours = draw(st.lists(COLOUR, min_size=2, max_size=6))
    weights = draw(st.lists(st.floats(0.05, 1), min_size=len(colours), max_size=len(colours)))
    total = sum(weights)
    return sorted(
        ((lab, weight / total) for lab, weight in zip(colours, weights, strict=True)),
        key=lambda pair: -pair[1],
    )


def _judged(reading, *labs):
    return ranking(reading, [sample(f"S{i}", lab) for i, lab in enumerate(labs)])


@settings(max_examples=150)
@given(palettes(), palettes(), LIGHTNESS, HUE, st.floats(0, 40), st.floats(0.1, 40))
def test_raising_only_the_chroma_beyond_the_focus_never_improves_the_verdict(
    whole, focus, lightness, hue, beyond, more
):
    reading = findings(whole, focus=focus)
    start = bearable_chroma(subject_of(reading), HOUSE_RULE.limits) + beyond
    weaker = lch(lightness, start, hue)
    stronger = lch(lightness, start + more, hue)
    judgement = _judged(reading, weaker, stronger).judgement
    assert not (judgement.clash[0] and not judgement.clash[1])


@settings(max_examples=100)
@given(palettes(), COLOUR, COLOUR, st.floats(0.1, 1.0))
def test_an_accent_that_the_sample_echoes_never_hurts_it(whole, lab, other, strength):
    reading = findings(whole)
    accent = Accent(lab, 0.01, 0.5, 0.5, 30.0, strength)
    echoed = replace(reading, accents=(accent,))
    before, after = _judged(reading, lab), _judged(echoed, lab)
    assert after.judgement.score[0] >= before.judgement.score[0] - 1e-9
    assert not (after.judgement.clash[0] and not before.judgement.clash[0])


@given(palettes())
def test_a_sample_with_the_rims_own_palette_blends(rim):
    reading = findings(rim)
    made = sample("same", *rim)
    assert ranking(reading, [made])[0].verdict is Verdict.BLEND


@settings(max_examples=100)
@given(palettes(), COLOUR, st.floats(-2.0, 2.0), st.floats(-2.0, 2.0))
def test_a_shift_of_the_white_point_on_both_sides_changes_nothing_material(whole, lab, a, b):
    """Both the picture's and the sample's colours move together by as much as a wrong white does."""

    def moved(colour):
        return (colour[0], colour[1] + a * colour[0] / 100, colour[2] + b * colour[0] / 100)

    before = _judged(findings(whole), lab)
    after = _judged(findings([(moved(colour), part) for colour, part in whole]), moved(lab))
    assert abs(after.judgement.merit[0] - before.judgement.merit[0]) <= 0.8


@given(palettes(), COLOUR)
def test_measures_and_score_are_finite_and_within_their_ranges(whole, lab):
    ranked = _judged(findings(whole), lab)
    found = ranked[0].measures
    for name in ("echo", "vividness", "brightness", "overpowering", "near_miss", "stray"):
        assert 0.0 <= getattr(found, name) <= 1.0
    assert found.pull >= 0
    assert found.warmth >= 0
    assert found.chroma_excess >= 0
    assert 0.0 <= ranked[0].score <= 1.0


@given(palettes(), COLOUR, st.floats(0.05, 0.95))
def test_splitting_a_colour_into_two_equal_parts_changes_nothing(whole, lab, part):
    reading = findings(whole)
    one = ranking(reading, [sample("one", lab)]).judgement
    two = ranking(reading, [sample("two", (lab, part), (lab, 1 - part))]).judgement
    assert two.score[0] == pytest.approx(one.score[0], abs=0.02)


@given(st.lists(COLOUR, min_size=2, max_size=12))
def test_a_sample_is_judged_alike_alone_and_in_company(labs):
    reading = findings(SEA, focus=BOAT, rim=SEA[:3])
    together = _judged(reading, *labs).judgement.score
    alone = [float(_judged(reading, lab).judgement.score[0]) for lab in labs]
    assert np.allclose(together, alone, atol=1e-12)


@given(COLOUR, st.floats(0, 3))
def test_a_slightly_different_colour_gets_a_slightly_different_merit(lab, step):
    """No cliffs: a measuring error of an L* unit or two must not turn the order upside down."""
    reading = findings(SEA, focus=BOAT, rim=SEA[:3])
    assume(5 < lab[0] < 92)
    near = (lab[0] + step, lab[1], lab[2])
    merit = _judged(reading, lab, near).judgement.merit
    assert abs(merit[1] - merit[0]) <= 0.1 + 0.45 * step
