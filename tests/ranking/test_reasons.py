"""Every sentence that is ever said is taken apart here and held against the numbers.

The checks do not use the program's own facts: they go back to the measures, the sample's colours
and the findings of the picture.
"""

import re
from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.catalogue import Finish, Surface
from framing_palette.colour import plain_name
from framing_palette.picture import Accent, Findings, Texture
from framing_palette.ranking import HOUSE_RULE, RankedSample, Verdict, ranking
from framing_palette.ranking.reasons import percent
from framing_palette.ranking.subjects import subject_of
from tests.judgement.pictures import COLOURED, SCENES, reading
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

LIMIT = HOUSE_RULE.limits.clash
PLACE = r"the (?P<name>[\w\- ]+?) (?:of (?P<region>.+?)|accent(?: in (?P<around>.+?))?)"
SMALL = r"(?:, which is only (?P<small>[\d.]+|less than 0\.1) % of the picture)?"


def _mean(line: RankedSample) -> np.ndarray:
    return np.array(line.sample.mean_lab)


def _echoed(line: RankedSample, found: Findings) -> list[np.ndarray]:
    """The colours that the measures may mean, looked up in the findings by place and name."""
    region, name = line.measures.echo_region, line.measures.echo_name
    if region == "accent":
        colours = [(a.lab, a.name) for a in found.accents]
    else:
        colours = [(c.lab, c.name) for r in found.regions if r.name == region for c in r.colours]
    named = [np.array(lab) for lab, own in colours if (own or plain_name(np.array(lab))) == name]
    assert named, (region, name)
    return named


def _small_is_true(match: re.Match, line: RankedSample) -> bool:
    said, share = match["small"], line.measures.echo_share
    if said is None:
        return share >= 0.03
    if said == "less than 0.1":
        return share < 0.001
    return abs(100 * share - float(said)) <= 0.51 and share < 0.03


def _steps(line: RankedSample, found: Findings) -> list[tuple[float, float]]:
    own = _mean(line)
    return [
        (own[0] - echoed[0], np.hypot(*own[1:]) - np.hypot(*echoed[1:]))
        for echoed in _echoed(line, found)
    ]


def _version_is_true(match: re.Match, line: RankedSample, found: Findings) -> bool:
    said = set(match["how"].split(" and "))
    true = []
    for light, strong in _steps(line, found):
        expected = {"lighter" if light > 0 else "darker"} if abs(light) >= 4 else set()
        if abs(strong) >= 4:
            expected.add("stronger" if strong > 0 else "quieter")
        true.append(said == expected)
    return any(true) and _small_is_true(match, line)


def _cast_is_true(match: re.Match, line: RankedSample, found: Findings) -> bool:
    subject = subject_of(found)
    palest = max(colour.lab for colour in line.sample.colours)
    whites = [subject.white_ab, *(c[1:] for c in subject.art_lab if c[0] > 70)]
    gaps = [np.array(palest[1:]) - np.array(white) for white in whites]
    a, b = min(gaps, key=np.linalg.norm)
    side = {"Yellower": b > 0, "Colder": b < 0, "Pinker": a > 0, "Greener": a < 0}
    assert np.hypot(*palest[1:]) < 20
    return bool(side[match["cast"]]) and line.measures.warmth >= HOUSE_RULE.limits.warmth_limit


def _is_lighter(match: re.Match, line: RankedSample) -> bool:
    return (match["how"] == "lighter") == (line.measures.separation_lightness > 0)


Check = Callable[[re.Match, RankedSample, Findings], bool]
SENTENCES: dict[str, Check] = {
    rf"Close to {PLACE}, but another hue at much the same strength: it looks like a match that failed\.": (
        lambda m, x, _f: x.measures.near_miss >= LIMIT and m["name"] == x.measures.near_miss_name
    ),
    r"Stronger in colour than (?P<focus>.+): the eye goes to the border first\.": (
        lambda _m, x, f: (
            max(np.hypot(*c.lab[1:]) for c in x.sample.colours) > subject_of(f).focus_chroma
        )
    ),
    r"(?P<cast>Yellower|Colder|Pinker|Greener) than the whites of the picture\.": _cast_is_true,
    r"Its (?P<name>.+) is not among the light colours of the picture\.": (
        lambda m, x, _f: (
            x.measures.warmth >= HOUSE_RULE.limits.warmth_limit
            and m["name"] == plain_name(np.array(max(c.lab for c in x.sample.colours)))
        )
    ),
    r"Its (?P<name>.+) is a strong hue that the picture does not use\.": (
        lambda m, x, _f: x.measures.stray >= LIMIT and m["name"] == plain_name(_mean(x))
    ),
    rf"Repeats {PLACE}{SMALL}\.": (
        lambda m, x, _f: (
            x.measures.echo_delta_e <= 6
            and m["name"] == x.measures.echo_name
            and _small_is_true(m, x)
        )
    ),
    rf"A (?P<how>[\w ]+) version of {PLACE}{SMALL}\.": _version_is_true,
    rf"Near to {PLACE}{SMALL}\.": (
        lambda _m, x, f: any(max(map(abs, step)) < 4 for step in _steps(x, f))
    ),
    rf"Of one family with {PLACE}\.": lambda _m, x, _f: x.measures.kin >= 0.5,
    r"A plain neutral, clearly (?P<how>lighter|darker) than (?P<edge>.+)\.": (
        lambda m, x, _f: x.measures.foil >= 0.5 and _is_lighter(m, x)
    ),
    r"Repeats no colour of the picture closely\.": (
        lambda _m, x, _f: x.measures.echo < 0.5 and x.measures.kin < 0.5
    ),
    r"Settles into (?P<edge>.+)\.": lambda _m, x, _f: x.verdict is Verdict.BLEND,
    r"Stands apart from (?P<edge>.+) by colour more than by depth\.": (
        lambda _m, x, _f: (
            abs(x.measures.separation_lightness) < 10 and x.verdict is not Verdict.BLEND
        )
    ),
    r"Stands apart from (?P<edge>.+): it is (?P<how>lighter|darker)\.": (
        lambda m, x, _f: abs(x.measures.separation_lightness) >= 10 and _is_lighter(m, x)
    ),
    r"Brighter than (?P<focus>.+)\.": (
        lambda _m, x, f: max(c.lab[0] for c in x.sample.colours) > subject_of(f).focus_light
    ),
    r"Quieter than (?P<focus>.+): the eye goes to the picture first\.": (
        lambda _m, x, _f: x.measures.pull <= 1
    ),
    r"Quiet in colour beside (?P<focus>.+)\.": (
        lambda _m, x, _f: x.measures.pull > 1 and x.measures.vividness < 0.3
    ),
    r"Its surface is about as fine and as lively as the picture's\.": (
        lambda _m, x, _f: x.measures.texture >= 0.85
    ),
    r"A soft surface for a soft subject\.": (
        lambda _m, x, _f: x.measures.softness >= 0.85 and x.sample.surface is not None
    ),
    r"Stands out from the picture (?P<how>more|less) than (?P<focus>.+) does\.": (
        lambda m, x, _f: (m["how"] == "more") == (x.measures.pull > 1)
    ),
}


def check_sentences(line: RankedSample, found: Findings) -> None:
    assert 2 <= len(line.reasons) <= 4, line.reasons
    assert len(set(line.reasons)) == len(line.reasons)
    for sentence in line.reasons:
        forms = [form for form in SENTENCES if re.fullmatch(form, sentence)]
        assert forms, f"nothing is known that would make this true: {sentence}"
        true = [SENTENCES[form](re.fullmatch(form, sentence), line, found) for form in forms]
        assert any(true), (sentence, line.measures, line.sample.colours)


@pytest.mark.parametrize("picture", [*COLOURED[:6], *list(SCENES)[:8]])
def test_every_sentence_about_a_wide_rack_is_true(picture):
    rng = np.random.default_rng(len(picture))
    rack = [
        sample(
            f"S{n}",
            *(lch(*rng.uniform([8, 0, 0], [97, 70, 360])) for _ in range(rng.integers(1, 4))),
            surface=rng.choice([None, *Surface]),
            finish=rng.choice([None, *Finish]),
        )
        for n in range(120)
    ]
    rack += [sample(f"P{n}", c.lab) for n, c in enumerate(reading(picture).whole.colours)]
    for line in ranking(reading(picture), rack):
        check_sentences(line, reading(picture))


COLOUR = st.builds(lch, st.floats(5, 97), st.floats(0, 75), st.floats(0, 360))


@settings(max_examples=60)
@given(COLOUR, COLOUR, COLOUR, st.floats(0.001, 0.02))
def test_every_sentence_about_any_colour_and_any_accent_is_true(own, ground, dot, share):
    accent = Accent(dot, share, 0.5, 0.5, 30.0, 0.6, name=plain_name(np.array(dot)))
    found = findings([(ground, 0.7), (SEA[1][0], 0.3)], focus=BOAT, accents=(accent,))
    for line in ranking(found, [sample("own", own), sample("dot", dot)]):
        check_sentences(line, found)


def test_all_forms_of_sentences_are_said_somewhere():
    """A form that is never said would be a check that cannot fail."""
    said = set()
    for picture in (*COLOURED, *SCENES):
        rng = np.random.default_rng(1)
        rack = [
            sample(f"S{n}", lch(*rng.uniform([8, 0, 0], [97, 70, 360])), surface=surface)
            for n in range(60)
            for surface in (None, Surface.SUEDE)
        ]
        rack += [sample(f"N{n}", lch(8 + 3 * n, 2, 80)) for n in range(30)]
        rack += [sample(f"P{n}", c.lab) for n, c in enumerate(reading(picture).whole.colours)]
        for line in ranking(reading(picture), rack):
            said |= {form for form in SENTENCES for s in line.reasons if re.fullmatch(form, s)}
    weave = Texture(lightness_contrast=(2.0,) * 6, mm_per_px=0.2)
    woven = findings(SEA, focus=BOAT, texture=weave)
    for line in ranking(woven, [sample("linen", lch(30, 28, 40), texture=weave)]):
        check_sentences(line, woven)
        said |= {form for form in SENTENCES for s in line.reasons if re.fullmatch(form, s)}
    assert said == set(SENTENCES), set(SENTENCES) - said


def test_an_accent_is_told_with_its_share_and_place():
    red = lch(45, 45, 38)
    accent = Accent(red, 0.011, 0.5, 0.5, 30.0, 0.6, name="brick red")
    found = findings(SEA[:3], rim=SEA[:3], accents=(accent,))
    line = ranking(found, [sample("red", red)])[0]
    assert line.reasons[0] == ("Repeats the brick red accent, which is only 1 % of the picture.")


@pytest.mark.parametrize(
    ("share", "said"),
    [(0.0001, "less than 0.1 %"), (0.004, "0.4 %"), (0.011, "1 %"), (0.0249, "2 %")],
)
def test_a_share_is_said_as_people_say_it(share, said):
    assert percent(share) == said
