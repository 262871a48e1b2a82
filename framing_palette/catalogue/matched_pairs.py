"""Matched pairs: what of a design matches here, and whether it still does in the client's light.

Two things lie in sight together: a sample beside the picture, and a sample beside the next one. Of
both, only colours that are close in the shop can part; the others never matched.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from framing_palette.catalogue.light import MatchUnderLights, compare_under_lights, nearest_colour
from framing_palette.catalogue.samples import Lab, Sample, SampleColour
from framing_palette.colour import delta_e_2000

CLOSE_DELTA_E = 3.0
"""Colours of ΔE00 up to this are meant to match; common practice calls more a contrast."""

COUNTS_FROM_SHARE = 0.15


@dataclass(frozen=True, slots=True)
class MatchedPair:
    """Two colours that are close here.

    Parameters
    ----------
    first, second
        What they are called.
    finding
        What the light does to them.
    """

    first: str
    second: str
    finding: MatchUnderLights

    @property
    def sentence(self) -> str:
        """The finding in plain words."""
        return f"{self.first} and {self.second}: {self.finding.sentence}."


def matched_pairs(
    samples: Sequence[Sample], picture_colours: Sequence[tuple[str, Lab]], light: str
) -> tuple[MatchedPair, ...]:
    """Return the pairs of a design that are close here, those that part most in a light first.

    Parameters
    ----------
    samples
        The design's, from the art outward; those without colours are passed over.
    picture_colours
        The picture's colours and what they are called.
    light
        The client's light.

    Raises
    ------
    FieldError
        When the light is not known.
    """
    coloured = [sample for sample in samples if sample.colours]
    pairs = [_beside_picture(sample, picture_colours, light) for sample in coloured]
    pairs += [_beside_each_other(*both, light) for both in pairwise(coloured)]
    found = [pair for pair in pairs if pair is not None]
    return tuple(sorted(found, key=lambda pair: -max(d.index for d in pair.finding.drifts)))


def _beside_picture(
    sample: Sample, picture_colours: Sequence[tuple[str, Lab]], light: str
) -> MatchedPair | None:
    candidates = [(nearest_colour(sample, lab), name, lab) for name, lab in picture_colours]
    if not candidates:
        return None
    colour, name, lab = min(candidates, key=lambda one: _apart(one[0].lab, one[2]))
    if _apart(colour.lab, lab) > CLOSE_DELTA_E:
        return None
    finding = compare_under_lights(colour, lab, (light,))
    return MatchedPair(sample.name, f"the picture's {name}", finding)


def _beside_each_other(first: Sample, second: Sample, light: str) -> MatchedPair | None:
    one, two = min(
        ((a, b) for a in _counting(first) for b in _counting(second)),
        key=lambda both: _apart(both[0].lab, both[1].lab),
    )
    if _apart(one.lab, two.lab) > CLOSE_DELTA_E:
        return None
    return MatchedPair(first.name, second.name, compare_under_lights(one, two, (light,)))


def _counting(sample: Sample) -> Sequence[SampleColour]:
    """Return the colours that are no slivers; the largest at least."""
    return [c for c in sample.colours if c.share >= COUNTS_FROM_SHARE] or sample.colours[:1]


def _apart(first: Lab, second: Lab) -> float:
    return float(delta_e_2000(first, second))
