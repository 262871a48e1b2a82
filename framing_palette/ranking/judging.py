"""Judging: from measures to merit, from faults to verdicts, and from both to one score."""

from dataclasses import dataclass, fields

import numpy as np

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.ranking.measuring import MeasureColumns
from framing_palette.ranking.ramps import rise, saturating, sigmoid
from framing_palette.ranking.rule import Limits, Rule, Weights
from framing_palette.ranking.verdicts import Measures, Verdict

CLEAR_STEP = (15.0, 40.0)  # L* between which a colour comes to stand clear of what it touches
PART_RELATES = 0.25  # a part of the sample that repeats the picture relates the whole to it
QUALITIES = tuple(entry.name for entry in fields(Weights) if entry.name != "base")


@dataclass(frozen=True, slots=True, eq=False)
class JudgementColumns:
    """Verdict and score of n samples.

    Parameters
    ----------
    merit
        Log-odds-like sum of weighted qualities and faults, shape (n,).
    fault
        The worst of the faults that make a clash, 0..1, shape (n,).
    clash, blend
        Shape (n,); a sample that is neither complements.
    relation
        How surely each has to do with the picture, 0..1, shape (n,).
    foreign
        How far each stands clear with a colour that is nowhere in the picture, 0..1, shape (n,).
    score
        0..1, shape (n,).
    """

    merit: Float64Array
    fault: Float64Array
    clash: BoolArray
    blend: BoolArray
    relation: Float64Array
    foreign: Float64Array
    score: Float64Array

    def verdict(self, index: int) -> Verdict:
        """Return the verdict of one sample."""
        if self.clash[index]:
            return Verdict.CLASH
        return Verdict.BLEND if self.blend[index] else Verdict.COMPLEMENT


def qualities(measures: MeasureColumns, rule: Rule) -> Float64Array:
    """Return what the weights multiply, shape (n, number of ``QUALITIES``), in their order."""
    table = quality_table(measures, rule)
    return np.column_stack([table[name] for name in QUALITIES])


def quality_table(measures: MeasureColumns | Measures, rule: Rule) -> dict[str, Float64Array]:
    """Return what the weights multiply, by name, of many samples or of one, shape (n,) or ()."""
    texture = np.asarray(measures.texture)
    glitter = measures.glitter * (0.4 + 0.6 * measures.brightness)
    return {
        "echo": np.asarray(measures.echo),
        "kin": np.asarray(measures.kin * (1.0 - measures.vividness)),
        "meaning": np.asarray(measures.meaning),
        "cover": np.asarray(measures.cover),
        "foil": np.asarray(measures.plain * (1.0 - measures.echo)),
        "harmony": np.asarray(measures.harmony),
        "texture": np.where(np.isnan(texture), 0.5, texture),
        "softness": np.asarray(measures.softness),
        "depth": np.asarray(measures.depth),
        "vivid": np.asarray(measures.vividness),
        "bright": np.asarray(measures.brightness),
        "pull": np.log1p(measures.pull),
        "warmth": saturating(measures.warmth, rule.limits.warmth_limit),
        "near_miss": np.asarray(measures.near_miss),
        "stray": np.asarray(measures.stray),
        "glitter": np.asarray(glitter),
    }


def judge(measures: MeasureColumns, rule: Rule) -> JudgementColumns:
    """Return verdicts and scores.

    A clash is any one fault at its limit: a failed match, colour stronger than the focus, a strong
    hue that the picture lacks, the wrong white, or a colour that stands clear of the picture and
    is nowhere in it. A blend settles into what it touches, or keeps back: it is quiet and has
    nothing to do with the picture. What is related to the picture and no stronger than the place
    where the eye should rest complements it. The score of a clash lies under the clash ceiling,
    all others above, so that no clash can be ranked over a complement or a blend.
    """
    weights = np.array([getattr(rule.weights, name) for name in QUALITIES])
    merit = qualities(measures, rule) @ weights + rule.weights.base
    related = relation(measures)
    foreign = foreignness(measures, related, rule.limits)
    fault = np.maximum.reduce([*faults(measures, rule.limits).values(), foreign])
    settles = measures.settling <= rule.limits.blend_delta_e
    clash = (fault >= rule.limits.clash) & ~settles
    within = sigmoid(rule.score_slope * merit)
    ceiling = rule.clash_ceiling
    return JudgementColumns(
        merit=merit,
        fault=fault,
        clash=clash,
        blend=settles | (~clash & (related < rule.limits.related)),
        relation=related,
        foreign=foreign,
        score=np.where(clash, ceiling * within, ceiling + (1.0 - ceiling) * within),
    )


def relation(measures: MeasureColumns) -> Float64Array:
    """Return how surely each sample has to do with the picture, 0..1, shape (n,).

    It repeats one of its colours, if only in part, is of the family of a telling one, shares one of
    its hues, or is a plain neutral that stands clear of it as a mat does (common practice).
    """
    part = np.minimum(1.0, measures.repeated / PART_RELATES / 2.0)
    shared = np.maximum.reduce([measures.echo, measures.kin, measures.own_hue, part])
    return np.asarray(np.maximum(shared, measures.foil))


def foreignness(measures: MeasureColumns, related: Float64Array, limits: Limits) -> Float64Array:
    """Return how far each sample stands clear with a colour that is nowhere, 0..1, shape (n,)."""
    clear = rise(np.abs(measures.separation_lightness), *CLEAR_STEP)
    return np.where(related < limits.related, clear, 0.0)


def faults(measures: MeasureColumns | Measures, limits: Limits) -> dict[str, Float64Array]:
    """Return the faults that a sample has in itself, by name, 0..1, each of shape (n,) or ()."""
    return {
        "near_miss": np.asarray(measures.near_miss),
        "overpowering": np.asarray(measures.overpowering),
        "stray": np.asarray(measures.stray),
        "warmth": saturating(measures.warmth, limits.warmth_limit),
    }
