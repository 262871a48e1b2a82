"""Reasons: two to four sentences from the measures that decided, to be said aloud.

Every sentence has a form of its own with the limits that make it true; nothing else is ever said.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from framing_palette.ranking.rule import Rule
from framing_palette.ranking.verdicts import Measures, Verdict

ECHO_SAYS = 0.5  # from here on an echo is spoken of
SAME_DELTA_E = 6.0  # ΔE00 within which a repeated colour is "the" colour
SMALL_SHARE = 0.03  # shares under it are worth telling
AT_MOST, AT_LEAST = 2, 4


@dataclass(frozen=True, slots=True)
class Facts:
    """What a sentence may rest on besides the measures.

    Parameters
    ----------
    verdict
        The sample's verdict.
    measures
        Its measures.
    colour
        Plain name of the sample's main colour.
    light_gap, chroma_gap
        L* and C*ab of the sample less those of the colour it repeats.
    warm_gap
        b* of the sample less that of the picture's whites.
    focus
        Name of the place where the eye should rest.
    rim
        Plain name of the main colour that the sample touches, and what it belongs to.
    """

    verdict: Verdict
    measures: Measures
    colour: str
    light_gap: float
    chroma_gap: float
    warm_gap: float
    focus: str
    rim: str


def reasons(facts: Facts, rule: Rule) -> tuple[str, ...]:
    """Return two to four short sentences, the most telling first."""
    found = list(dict.fromkeys((*_faults(facts, rule), *_merits(facts, rule))))
    if len(found) < AT_MOST:
        found.append(_strength(facts))
    return tuple(found[:AT_LEAST])


def _faults(facts: Facts, rule: Rule) -> Iterator[str]:
    measures, limit = facts.measures, rule.limits.clash
    if measures.near_miss >= limit:
        target = _place(measures.near_miss_name, measures.near_miss_region)
        yield f"Close to {target} but not the same hue: it looks like a match that failed."
    if measures.overpowering >= limit:
        yield f"Stronger in colour than {facts.focus}: the eye goes to the border first."
    if measures.warmth >= rule.limits.warmth_limit:
        how = "Yellower" if facts.warm_gap > 0 else "Colder"
        yield f"{how} than the whites of the picture."
    if measures.stray >= limit:
        yield f"Its {facts.colour} is a strong hue that the picture does not use."


def _merits(facts: Facts, rule: Rule) -> Iterator[str]:
    measures = facts.measures
    if measures.echo >= ECHO_SAYS:
        yield _echo(facts)
    else:
        yield "Repeats no colour of the picture closely."
    yield _edge(facts, rule)
    if measures.brightness >= 0.5:
        yield f"Brighter than {facts.focus}."
    elif measures.vividness < 0.25 and measures.brightness < 0.1:
        yield f"Quieter than {facts.focus}: the eye goes to the picture first."


def _echo(facts: Facts) -> str:
    measures = facts.measures
    target = _place(measures.echo_name, measures.echo_region)
    small = ""
    if measures.echo_share < SMALL_SHARE:
        small = f", which is only {_percent(measures.echo_share)} of the picture"
    if measures.echo_delta_e <= SAME_DELTA_E:
        return f"Repeats {target}{small}."
    return f"A {_version(facts)} version of {target}{small}."


def _version(facts: Facts) -> str:
    words = []
    if abs(facts.light_gap) >= 4.0:
        words.append("lighter" if facts.light_gap > 0 else "darker")
    if abs(facts.chroma_gap) >= 4.0:
        words.append("stronger" if facts.chroma_gap > 0 else "quieter")
    return ", ".join(words) or "close"


def _edge(facts: Facts, rule: Rule) -> str:
    measures = facts.measures
    if measures.separation_delta_e <= rule.limits.blend_delta_e:
        return f"Settles into {facts.rim}."
    how = "lighter" if measures.separation_lightness > 0 else "darker"
    if abs(measures.separation_lightness) >= 10.0:
        return f"Stands apart from {facts.rim}, {how}."
    return f"Stands apart from {facts.rim} by colour more than by depth."


def _strength(facts: Facts) -> str:
    if facts.measures.pull > 1.0:
        return f"Stands out from the picture more than {facts.focus} does."
    return f"Stands out from the picture less than {facts.focus} does."


def _place(name: str, region: str) -> str:
    if region == "accent":
        return f"the {name} accent"
    return f"the {name} of {region_words(region)}"


def region_words(region: str) -> str:
    """Return how a region is spoken of: "the boat", "the picture's edge", "the picture"."""
    known = {"rim": "the picture's edge", "whole": "the picture", "": "the picture"}
    return known.get(region, f"the {region}")


def _percent(share: float) -> str:
    percent = 100.0 * share
    return f"{percent:.0f} %" if percent >= 0.95 else f"{max(percent, 0.1):.1f} %"
