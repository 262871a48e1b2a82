"""Words for what was measured: one adjective a sentence, each with its measure.

References
----------
Ou, Luo, Woodcock, Wright 2004, A study of colour emotion and colour preference. Part I, Color
Research and Application 29(3):232-240: warmth, weight and activity of single colours; of several
colours the mean by share is taken, which is this program's own choice.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import nan
from typing import Final

import numpy as np

from framing_palette.catalogue import Finish, Kind, Sample
from framing_palette.colour import activity, chroma, delta_e_2000, heat, hue_deg, plain_name, weight
from framing_palette.papers.vocabulary import Descriptors, Vocabulary
from framing_palette.ranking import RankedSample, columns_of

SHEEN: Final = {Finish.MATT: 0.0, Finish.SATIN: 0.35, Finish.GLOSS: 0.75, Finish.METALLIC: 1.0}
KIND_WORDS: Final = {
    Kind.MAT: "mat",
    Kind.WRAPPED_FILLET: "wrapped fillet",
    Kind.WOOD_FILLET: "wood fillet",
    Kind.LINER: "liner",
    Kind.MOULDING: "frame",
}
SAME_LIGHTNESS: Final = 5.0  # L* within which two colours are equally deep
SAME_STRENGTH: Final = 6.0  # C*ab within which two colours are equally strong
SAME_HUE_DEG: Final = 15.0
HUELESS: Final = 6.0  # C*ab below which nobody speaks of a hue
SURE: Final = 0.5  # a fault from here on is spoken of


def descriptors_of(sample: Sample) -> Descriptors:
    """Measure a sample's look; what the catalogue leaves unknown stays nan."""
    columns = columns_of((sample,))
    if not len(columns):
        return Descriptors()
    lab, share, mean = columns.lab, columns.share, columns.mean_lab[0]

    def by_share(values: "np.typing.ArrayLike") -> float:
        return float(np.sum(np.asarray(values) * share))

    texture = sample.texture
    known = [c for c in texture.lightness_contrast if not np.isnan(c)] if texture else []
    return Descriptors(
        heat=by_share(heat(lab)),
        weight=by_share(weight(lab)),
        activity=by_share(activity(lab)),
        lightness=float(mean[0]),
        strength=float(chroma(mean)),
        variety=by_share(delta_e_2000(lab, mean)),
        grain=max(known, default=nan),
        order=texture.regularity if texture and known else nan,
        softness=float(columns.softness[0]),
        sheen=_sheen(sample),
        finish=str(sample.finish or ""),
        surface=str(sample.surface or "").replace("_", " "),
    )


def _sheen(sample: Sample) -> float:
    return nan if sample.finish is None else SHEEN[sample.finish]


def character(
    sample: Sample, vocabulary: Vocabulary, *, besides: frozenset[str] = frozenset()
) -> tuple[str, str] | None:
    """Return an adjective for a sample and the sentence that gives its measure.

    Parameters
    ----------
    besides
        Adjectives that were said already.

    Returns
    -------
    The adjective and for example "The frame is weathered: its surface varies by 5.2 steps of
    lightness and hardly shines."; None when no word of the vocabulary is true of it.
    """
    found = descriptors_of(sample)
    word = vocabulary.word_for(found, sample.kind, sample.surface, besides=besides)
    if word is None:
        return None
    name = "" if sample.kind is Kind.MOULDING else f", {sample.name},"
    subject = f"The {KIND_WORDS[sample.kind]}{name}"
    return word.say, f"{subject} is {word.say}: {word.reason(found)}."


def characters(
    samples: Sequence[Sample], vocabulary: Vocabulary, *, most: int = 2
) -> tuple[str, ...]:
    """Return a sentence each for the samples that say most, no adjective twice.

    The frame comes first, then the mats from the outermost in.
    """
    order = sorted(
        enumerate(samples), key=lambda pair: (pair[1].kind is not Kind.MOULDING, -pair[0])
    )
    sentences: list[str] = []
    said: set[str] = set()
    for _, sample in order:
        told = character(sample, vocabulary, besides=frozenset(said))
        if told and len(sentences) < most:
            said.add(told[0])
            sentences.append(told[1])
    return tuple(sentences)


@dataclass(frozen=True, slots=True)
class GentleChange:
    """What to keep of something that was liked, and what to change."""

    keep: str
    change: str


def gentle_change(
    liked: RankedSample, offered: RankedSample, *, focus: str = "the picture"
) -> GentleChange:
    """Say kindly what an offered sample keeps of a liked one, what it changes, and why.

    Parameters
    ----------
    liked, offered
        Judged against the same picture.
    focus
        How the place where the eye should rest is spoken of.
    """
    kept = _kept(liked.sample, offered.sample)
    keep = (
        f"Keep {_and(kept)} of {liked.sample.name}."
        if kept
        else (f"Keep the idea of {liked.sample.name}.")
    )
    changes = _changes(liked.sample, offered.sample)
    why = _why(liked, offered, focus)
    how = _and(changes) if changes else "as it is but for its name"
    return GentleChange(keep, f"Try {offered.sample.name}, {how}{why}.")


def _kept(liked: Sample, offered: Sample) -> list[str]:
    """Return what both have in common, the most visible first."""
    one, two = np.asarray(liked.mean_lab), np.asarray(offered.mean_lab)
    kept = []
    both_hued = min(float(chroma(one)), float(chroma(two))) >= HUELESS
    if both_hued and _hue_gap(one, two) <= SAME_HUE_DEG:
        kept.append("the hue")
    if abs(one[0] - two[0]) <= SAME_LIGHTNESS:
        kept.append("the depth")
    if liked.surface is not None and liked.surface is offered.surface:
        kept.append(f"the {liked.surface.replace('_', ' ')} surface")
    if liked.face is not None and liked.face == offered.face and liked.kind is Kind.MOULDING:
        kept.append("the width")
    return kept


def _changes(liked: Sample, offered: Sample) -> list[str]:
    """Return how the offered sample differs, in comparatives."""
    one, two = np.asarray(liked.mean_lab), np.asarray(offered.mean_lab)
    changes = []
    lighter, stronger = float(two[0] - one[0]), float(chroma(two) - chroma(one))
    if abs(lighter) > SAME_LIGHTNESS:
        changes.append(_step(lighter, "lighter", "darker"))
    if abs(stronger) > SAME_STRENGTH:
        changes.append(_step(stronger, "stronger in colour", "quieter in colour"))
    hued = max(float(chroma(one)), float(chroma(two))) >= HUELESS
    if hued and _hue_gap(one, two) > SAME_HUE_DEG:
        changes.append(f"nearer to {plain_name(two)}")
    if None not in (liked.surface, offered.surface) and liked.surface is not offered.surface:
        changes.append(f"with a {str(offered.surface).replace('_', ' ')} surface")
    if not changes:
        apart = float(delta_e_2000(one, two))
        changes.append(f"only {apart:.1f} ΔE away")
    return changes


def _step(value: float, more: str, less: str) -> str:
    size = "a little " if abs(value) <= 12.0 else ""
    return f"{size}{more if value > 0 else less} (by {abs(value):.0f})"


def _hue_gap(one: "np.typing.NDArray[np.float64]", two: "np.typing.NDArray[np.float64]") -> float:
    gap = abs(float(hue_deg(one) - hue_deg(two))) % 360.0
    return min(gap, 360.0 - gap)


def _why(liked: RankedSample, offered: RankedSample, focus: str) -> str:
    """Return what the change mends, when a measured fault of the liked sample is gone."""
    before, after = liked.measures, offered.measures
    if before.overpowering >= SURE > after.overpowering:
        return f", so that the eye goes to {focus} first"
    if before.near_miss >= SURE > after.near_miss:
        return f", so that it no longer looks like a missed match with the {before.near_miss_name}"
    if before.stray >= SURE > after.stray:
        return ", so that it stays among the picture's own hues"
    if before.warmth > 0 and after.warmth < before.warmth / 2:
        return ", so that it agrees with the whites of the picture"
    if after.echo_delta_e < before.echo_delta_e and after.echo_name:
        return f", so that it comes nearer to the {after.echo_name} of the picture"
    return ""


def _and(words: Sequence[str]) -> str:
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last
