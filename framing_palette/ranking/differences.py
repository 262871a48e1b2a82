"""Differences: how two samples differ, in the words that are said at the counter.

The limits are common practice put into figures; warmth is Ou et al.'s heat.

References
----------
L.-C. Ou, M. R. Luo, A. Woodcock and A. Wright, A study of colour emotion and colour preference,
part I, Color Research and Application 29, 2004.
"""

from collections.abc import Iterator
from math import hypot

from framing_palette.catalogue import Sample
from framing_palette.colour import delta_e_2000, heat

HARDLY_DELTA_E = 2.0
_LIGHTER, _MUCH_LIGHTER = 3.0, 15.0
_STRONGER, _MUCH_STRONGER = 4.0, 18.0
_WARMER, _MUCH_WARMER = 0.15, 0.8
_WIDER_MM = 1.5


def difference_words(sample: Sample, other: Sample) -> str:
    """Return how a sample differs from another one, as a sentence.

    Parameters
    ----------
    sample
        What the sentence is about.
    other
        What it is compared with.
    """
    told = [*_colour(sample, other), *_form(sample, other)]
    if not told:
        return f"Hardly to be told from {other.name}."
    listed = ", ".join(told)
    return f"{listed[0].upper()}{listed[1:]} than {other.name}{_surface(sample, other)}."


def _colour(sample: Sample, other: Sample) -> Iterator[str]:
    if not sample.colours or not other.colours:
        return
    lab, base = sample.mean_lab, other.mean_lab
    if float(delta_e_2000(lab, base)) < HARDLY_DELTA_E:
        return
    yield from _more(lab[0] - base[0], "lighter", "darker", _LIGHTER, _MUCH_LIGHTER)
    chroma = hypot(lab[1], lab[2]) - hypot(base[1], base[2])
    yield from _more(chroma, "stronger", "quieter", _STRONGER, _MUCH_STRONGER)
    warmth = float(heat(lab)) - float(heat(base))
    yield from _more(warmth, "warmer", "cooler", _WARMER, _MUCH_WARMER)


def _form(sample: Sample, other: Sample) -> Iterator[str]:
    if sample.face is not None and other.face is not None:
        wider_mm = (sample.face - other.face).as_float_mm()
        yield from _more(wider_mm, "wider", "narrower", _WIDER_MM, float("inf"))


def _surface(sample: Sample, other: Sample) -> str:
    if sample.surface is None or other.surface is None or sample.surface is other.surface:
        return ""
    here, there = (kind.value.replace("_", " ") for kind in (sample.surface, other.surface))
    return f"; {here} instead of {there}"


def _more(amount: float, more: str, less: str, some: float, much: float) -> Iterator[str]:
    if abs(amount) >= some:
        word = more if amount > 0 else less
        yield f"much {word}" if abs(amount) >= much else word
