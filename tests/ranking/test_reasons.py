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

from framing_palette.catalogue import Finish, Sample, Surface
from framing_palette.colour import delta_e_2000, hue_deg, plain_name
from framing_palette.picture import Accent, Findings, Texture
from framing_palette.ranking import HOUSE_RULE, RankedSample, Verdict, ranking
from framing_palette.ranking.reasons import percent
from framing_palette.ranking.subjects import subject_of
from tests.judgement.pictures import COLOURED, SCENES, reading
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

LIMIT = HOUSE_RULE.limits.clash
PLACE = r"the (?P<name>[\w\- ]+?) (?:of (?P<region>.+?)|accent(?: in (?P<around>.+?))?)"
SMALL = r"(?:, which is only (?P<small>[\d.]+|less than 0\.1) % of the picture)?"


def _names(line: RankedSample) -> set[str]:
    return {plain_name(np.array(colour.lab)) for colour in line.sample.colours}


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


def _own(line: RankedSample, found: Findings) -> list[np.ndarray]:
    """The colours of the sample that stand in the measured difference to what they repeat."""
    colours = [np.array(colour.lab) for colour in line.sample.colours]
    wanted = line.measures.echo_delta_e
    return [
        own
        for own in colours
        for echoed in _echoed(line, found)
        if abs(float(delta_e_2000(own, echoed)) - wanted) < 1e-6
    ]


def _steps(owns: list[np.ndarray], line: RankedSample, found: Findings) -> list[tuple]:
    return [
        (own[0] - echoed[0], np.hypot(*own[1:]) - np.hypot(*echoed[1:]))
        for own in owns
        for echoed in _echoed(line, found)
    ]


def _version_is_true(
    match: re.Match, line: RankedSample, found: Findings, owns: list[np.ndarray] | None = None
) -> bool:
    said = set(match["how"].split(" and "))
    true = []
    for light, strong in _steps(owns or _own(line, found), line, found):
        expected = {"lighter" if light > 0 else "darker"} if abs(light) >= 4 else set()
        if abs(strong) >= 4:
            expected.add("stronger" if strong > 0 else "quieter")
        true.append(said == expected)
    return any(true) and _small_is_true(match, line)


def _part_is_true(match: re.Match, line: RankedSample, found: Findings) -> bool:
    """A part is named with its share, and what it does is true of that part."""
    total = sum(colour.share for colour in line.sample.colours)
    said = match.groupdict().get("part")
    owns = [
        np.array(colour.lab)
        for colour in line.sample.colours
        if plain_name(np.array(colour.lab)) == match["own"]
        and (said is None or abs(100 * colour.share / total - float(said)) <= 0.51)
    ]
    owns = [own for own in owns if any(np.array_equal(own, other) for other in _own(line, found))]
    if said is None and line.measures.repeated < 0.99:
        return False
    if match["how"] is not None:
        return _version_is_true(match, line, found, owns) and bool(owns)
    if match["near"] is not None:
        steps = _steps(owns, line, found)
        return any(max(map(abs, step)) < 4 for step in steps) and _small_is_true(match, line)
    return bool(owns) and line.measures.echo_delta_e <= 6 and _small_is_true(match, line)


def _shares_a_hue(line: RankedSample, found: Findings) -> bool:
    """Some colour of the picture has a hue within 40 degrees of one of the sample's."""
    targets = subject_of(found).target_lab
    owns = np.array([colour.lab for colour in line.sample.colours])
    turn = hue_deg(owns)[:, None] - hue_deg(targets)[None, :]
    near = np.abs((turn + 180) % 360 - 180) <= 40
    return bool((near & (np.hypot(*targets[:, 1:].T) > 6)[None, :]).any())


def _lightness_gap(line: RankedSample) -> float:
    return abs(line.measures.separation_lightness)


def _cast_is_true(match: re.Match, line: RankedSample, found: Findings) -> bool:
    subject = subject_of(found)
    palest = max(colour.lab for colour in line.sample.colours)
    gaps = [np.array(palest[1:]) - white for white in subject.whites.choices]
    a, b = min(gaps, key=np.linalg.norm)
    side = {"Yellower": b > 0, "Colder": b < 0, "Pinker": a > 0, "Greener": a < 0}
    assert np.hypot(*palest[1:]) < 20
    assert (match["white"] == "whites of the picture") == (subject.whites.shown >= 0.5)
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
    r"(?P<cast>Yellower|Colder|Pinker|Greener) than the "
    r"(?P<white>whites of the picture|white that the picture asks for)\.": _cast_is_true,
    r"Its (?P<name>.+) is not among the light colours of the picture\.": (
        lambda m, x, _f: (
            x.measures.warmth >= HOUSE_RULE.limits.warmth_limit
            and m["name"] == plain_name(np.array(max(c.lab for c in x.sample.colours)))
        )
    ),
    r"Its (?P<name>.+) is a strong hue that the picture does not use\.": (
        lambda m, x, _f: x.measures.stray >= LIMIT and m["name"] in _names(x)
    ),
    r"Its (?P<name>.+) is nowhere in the picture, and yet it stands clear of it\.": (
        lambda m, x, _f: (
            x.verdict is Verdict.CLASH
            and max(x.measures.echo, x.measures.kin, x.measures.own_hue) < 0.5
            and x.measures.repeated < 0.25
            and _lightness_gap(x) >= 25
            and m["name"] in _names(x)
        )
    ),
    rf"All of it repeats the picture: its (?P<own>.+?) (?:repeats|(?P<near>is near to)|"
    rf"is a (?P<how>[\w ]+) version of) {PLACE}{SMALL}\.": _part_is_true,
    rf"Its (?P<own>.+?), (?P<part>\d+) % of it, (?:repeats|(?P<near>is near to)|"
    rf"is a (?P<how>[\w ]+) version of) {PLACE}{SMALL}\.": _part_is_true,
    rf"Repeats {PLACE}{SMALL}\.": (
        lambda m, x, _f: (
            x.measures.echo_delta_e <= 6
            and m["name"] == x.measures.echo_name
            and _small_is_true(m, x)
        )
    ),
    rf"A (?P<how>[\w ]+) version of {PLACE}{SMALL}\.": _version_is_true,
    rf"Near to {PLACE}{SMALL}\.": (
        lambda _m, x, f: any(max(map(abs, step)) < 4 for step in _steps(_own(x, f), x, f))
    ),
    rf"Of one family with {PLACE}\.": lambda _m, x, _f: x.measures.kin >= 0.5,
    r"A plain neutral, clearly (?P<how>lighter|darker) than (?P<edge>.+)\.": (
        lambda m, x, _f: x.measures.foil >= 0.5 and _is_lighter(m, x)
    ),
    r"Repeats no colour of the picture closely\.": (
        lambda _m, x, _f: x.measures.repeated < 0.25 and x.measures.kin < 0.5
    ),
    r"Its hue is one that the picture uses\.": (
        lambda _m, x, f: x.measures.own_hue >= 0.5 and _shares_a_hue(x, f)
    ),
    r"Settles into (?P<edge>.+)\.": (
        lambda _m, x, _f: x.verdict is Verdict.BLEND and x.measures.settling <= 5
    ),
    r"Keeps back: it is too near (?P<edge>.+) in depth to be seen for itself\.": (
        lambda _m, x, _f: (
            x.verdict in {Verdict.BLEND, Verdict.CLASH}
            and x.measures.settling > 5
            and x.measures.relation < 0.5
            and _lightness_gap(x) < 28
        )
    ),
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


FAULTS = (
    "match that failed|Stronger in colour|than the white|not among the light|does not use|nowhere"
)
SAYS = {
    Verdict.CLASH: FAULTS,
    Verdict.BLEND: "Settles into|Keeps back",
    Verdict.COMPLEMENT: "[Rr]epeats (?!no)|version of|[Nn]ear to|family|hue is one|plain neutral",
}
"""What must be said for a verdict, so that verdict and reasons never speak of different things."""


def check_sentences(line: RankedSample, found: Findings) -> None:
    assert 2 <= len(line.reasons) <= 4, line.reasons
    assert len(set(line.reasons)) == len(line.reasons)
    for sentence in line.reasons:
        forms = [form for form in SENTENCES if re.fullmatch(form, sentence)]
        assert forms, f"nothing is known that would make this true: {sentence}"
        true = [SENTENCES[form](re.fullmatch(form, sentence), line, found) for form in forms]
        assert any(true), (sentence, line.measures, line.sample.colours)
    said = " ".join(line.reasons)
    assert re.search(SAYS[line.verdict], said), (line.verdict, line.reasons, line.measures)


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


def _mottled(own) -> list[Sample]:
    """Samples of several of the picture's colours, as they are, darker, or with strangers."""
    made = []
    for n in range(len(own) - 1):
        one, two = own[n].lab, own[n + 1].lab
        for name, change in (("same", 0.0), ("near", 3.2), ("darker", -8.0)):
            here, there = ((lab[0] + change, lab[1], lab[2]) for lab in (one, two))
            made.append(sample(f"all {name} {n}", (here, 0.6), (there, 0.4)))
            made.append(sample(f"part {name} {n}", (here, 0.4), (lch(52, 8, 200), 0.6)))
    return made


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
        own = reading(picture).whole.colours
        rack += [sample(f"P{n}", c.lab) for n, c in enumerate(own)]
        rack += _mottled(own)
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
