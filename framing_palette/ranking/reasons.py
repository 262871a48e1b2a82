"""Reasons: two to four sentences from the measures that decided, to be said aloud.

Every sentence has a form of its own with the limits that make it true; nothing else is ever said.
Faults come first, then what the sample repeats, how it meets what it touches, and its strength.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isnan
from typing import Final

from framing_palette.ranking.rule import Rule
from framing_palette.ranking.verdicts import Measures

PART_SAYS: Final = 0.25  # share of the sample that repeats the picture from which it is spoken of
WHOLLY: Final = 0.8  # share from which one colour of a sample stands for it all
ALL_OF_IT: Final = 0.99
KIN_SAYS: Final = 0.5  # from here on a family is spoken of
HUE_SAYS: Final = 0.5
FOIL_SAYS: Final = 0.5
SAME_DELTA_E: Final = 6.0  # ΔE00 within which a repeated colour is "the" colour
SMALL_SHARE: Final = 0.03  # shares under it are worth telling
DEPTH_STEP: Final = 10.0  # L* difference from which two are apart by depth
SEEN_STEP: Final = 4.0  # L* or C*ab difference from which one is darker or quieter
BRIGHT_SAYS: Final = 0.5
QUIET_VIVIDNESS, QUIET_BRIGHTNESS = 0.3, 0.1
TINT_SAYS: Final = 20.0  # C*ab from which a pale colour is spoken of as a tint, not as a white
TEXTURE_SAYS: Final = 0.85  # more than any quiet surface has that is unlike the picture's
SOFT_SAYS: Final = 0.85  # agreement of softness, both soft
SOFT: Final = 0.6
FEWEST, MOST = 2, 4


@dataclass(frozen=True, slots=True)
class Facts:
    """What a sentence may rest on besides the measures.

    Parameters
    ----------
    measures
        The sample's measures.
    colour
        Plain name of the sample's strangest colour; empty where no sentence needs it.
    part, part_colour
        Share and plain name of the sample's colour that repeats the picture; no name where the
        sample has one colour only.
    light_gap, chroma_gap
        L* and C*ab of that colour less those of the colour it repeats.
    cast
        (a*, b*) of the sample's palest colour less those of the picture's nearest white.
    is_white_shown
        Whether the picture shows that white, rather than its warmth lets one guess.
    pale_chroma, pale_colour
        C*ab of that palest colour, and its plain name where a sentence needs it.
    focus
        How the place where the eye should rest is spoken of.
    touched
        How what the sample touches is spoken of.
    echo_place, kin_place, miss_place
        How the colours repeated, related and missed are spoken of.
    softness
        Of the sample's surface, 0..1; nan when unknown.
    """

    measures: Measures
    colour: str
    part: float
    part_colour: str
    light_gap: float
    chroma_gap: float
    cast: tuple[float, float]
    is_white_shown: bool
    pale_chroma: float
    pale_colour: str
    focus: str
    touched: str
    echo_place: str
    kin_place: str
    miss_place: str
    softness: float


def reasons(facts: Facts, rule: Rule) -> tuple[str, ...]:
    """Return two to four short sentences, the most telling first."""
    meeting = list(_meeting(facts, rule))
    found = [*_faults(facts, rule), *_kinship(facts, rule), *meeting, *_strength(facts)]
    if _settles(facts, rule):  # whatever else is true of it, this decided
        found = [*meeting, *(sentence for sentence in found if sentence not in meeting)]
    if len(found) < FEWEST:
        found.append(_pull(facts))
    return tuple(found[:MOST])


def _faults(facts: Facts, rule: Rule) -> Iterator[str]:
    measures, limit = facts.measures, rule.limits.clash
    if measures.near_miss >= limit:
        yield (
            f"Close to {facts.miss_place}, but another hue at much the same strength: "
            "it looks like a match that failed."
        )
    if measures.overpowering >= limit:
        yield f"Stronger in colour than {facts.focus}: the eye goes to the border first."
    if measures.warmth >= rule.limits.warmth_limit:
        yield _wrong_white(facts)
    if measures.stray >= limit:
        yield f"Its {facts.colour} is a strong hue that the picture does not use."
    elif measures.foreign >= limit:
        yield f"Its {facts.colour} is nowhere in the picture, and yet it stands clear of it."


def _wrong_white(facts: Facts) -> str:
    if facts.pale_chroma >= TINT_SAYS:
        return f"Its {facts.pale_colour} is not among the light colours of the picture."
    if facts.is_white_shown:
        return f"{_cast(*facts.cast)} than the whites of the picture."
    return f"{_cast(*facts.cast)} than the white that the picture asks for."


def _cast(a: float, b: float) -> str:
    if abs(b) >= abs(a):
        return "Yellower" if b > 0 else "Colder"
    return "Pinker" if a > 0 else "Greener"


def _kinship(facts: Facts, rule: Rule) -> Iterator[str]:
    measures = facts.measures
    if measures.repeated >= PART_SAYS:
        yield _echo(facts)
    elif measures.kin >= KIN_SAYS:
        yield f"Of one family with {facts.kin_place}."
    elif measures.own_hue >= HUE_SAYS and measures.relation >= rule.limits.related:
        yield "Its hue is one that the picture uses."
    elif measures.foil >= FOIL_SAYS:
        how = "lighter" if measures.separation_lightness > 0 else "darker"
        yield f"A plain neutral, clearly {how} than {facts.touched}."
    else:
        yield "Repeats no colour of the picture closely."


def _echo(facts: Facts) -> str:
    measures = facts.measures
    small = ""
    if measures.echo_share < SMALL_SHARE:
        small = f", which is only {percent(measures.echo_share)} of the picture"
    place = f"{facts.echo_place}{small}"
    is_same = measures.echo_delta_e <= SAME_DELTA_E
    if not facts.part_colour or facts.part >= WHOLLY:
        return f"Repeats {place}." if is_same else f"{_version(facts)} {place}."
    repeats = "repeats" if is_same else _part_version(facts)
    if measures.repeated >= ALL_OF_IT:
        return f"All of it repeats the picture: its {facts.part_colour} {repeats} {place}."
    return f"Its {facts.part_colour}, {percent(facts.part)} of it, {repeats} {place}."


def _version(facts: Facts) -> str:
    words = _steps(facts)
    return f"A {' and '.join(words)} version of" if words else "Near to"


def _part_version(facts: Facts) -> str:
    words = _steps(facts)
    return f"is a {' and '.join(words)} version of" if words else "is near to"


def _steps(facts: Facts) -> list[str]:
    words = []
    if abs(facts.light_gap) >= SEEN_STEP:
        words.append("lighter" if facts.light_gap > 0 else "darker")
    if abs(facts.chroma_gap) >= SEEN_STEP:
        words.append("stronger" if facts.chroma_gap > 0 else "quieter")
    return words


def _meeting(facts: Facts, rule: Rule) -> Iterator[str]:
    measures = facts.measures
    if _settles(facts, rule):
        yield f"Settles into {facts.touched}."
    elif measures.relation < rule.limits.related and measures.foreign < rule.limits.clash:
        yield f"Keeps back: it is too near {facts.touched} in depth to be seen for itself."
    elif abs(measures.separation_lightness) < DEPTH_STEP:
        yield f"Stands apart from {facts.touched} by colour more than by depth."
    elif measures.foil < FOIL_SAYS or measures.repeated >= PART_SAYS or measures.kin >= KIN_SAYS:
        how = "lighter" if measures.separation_lightness > 0 else "darker"
        yield f"Stands apart from {facts.touched}: it is {how}."


def _settles(facts: Facts, rule: Rule) -> bool:
    measures = facts.measures
    apart = measures.separation_delta_e if isnan(measures.settling) else measures.settling
    return apart <= rule.limits.blend_delta_e


def _strength(facts: Facts) -> Iterator[str]:
    measures = facts.measures
    if measures.brightness >= BRIGHT_SAYS:
        yield f"Brighter than {facts.focus}."
    elif measures.vividness < QUIET_VIVIDNESS and measures.brightness < QUIET_BRIGHTNESS:
        if measures.pull <= 1.0:
            yield f"Quieter than {facts.focus}: the eye goes to the picture first."
        else:
            yield f"Quiet in colour beside {facts.focus}."
    if measures.texture >= TEXTURE_SAYS:
        yield "Its surface is about as fine and as lively as the picture's."
    elif measures.softness >= SOFT_SAYS and facts.softness >= SOFT:
        yield "A soft surface for a soft subject."


def _pull(facts: Facts) -> str:
    how = "more" if facts.measures.pull > 1.0 else "less"
    return f"Stands out from the picture {how} than {facts.focus} does."


def percent(share: float) -> str:
    """Return a share as people say it: whole percents, tenths under one."""
    hundredths = 100.0 * share
    if hundredths < 0.05:
        return "less than 0.1 %"
    return f"{hundredths:.0f} %" if hundredths >= 0.95 else f"{hundredths:.1f} %"
