"""Judging: from measures to merit, from faults to verdicts, and from both to one score."""

from dataclasses import dataclass, fields

import numpy as np

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.ranking.measuring import MeasureColumns
from framing_palette.ranking.ramps import saturating, sigmoid
from framing_palette.ranking.rule import Rule, Weights
from framing_palette.ranking.verdicts import Verdict

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
    score
        0..1, shape (n,).
    """

    merit: Float64Array
    fault: Float64Array
    clash: BoolArray
    blend: BoolArray
    score: Float64Array

    def verdict(self, index: int) -> Verdict:
        """Return the verdict of one sample."""
        if self.clash[index]:
            return Verdict.CLASH
        return Verdict.BLEND if self.blend[index] else Verdict.COMPLEMENT


def qualities(measures: MeasureColumns, rule: Rule) -> Float64Array:
    """Return what the weights multiply, shape (n, number of ``QUALITIES``), in their order."""
    limits = rule.limits
    known_texture = np.where(np.isnan(measures.texture), 0.5, measures.texture)
    table = {
        "echo": measures.echo,
        "kin": measures.kin * (1.0 - measures.vividness),
        "cover": measures.cover,
        "foil": measures.foil * (1.0 - measures.echo),
        "harmony": measures.harmony,
        "texture": known_texture,
        "softness": measures.softness,
        "depth": measures.depth,
        "vivid": measures.vividness,
        "bright": measures.brightness,
        "pull": np.log1p(measures.pull),
        "warmth": saturating(measures.warmth, limits.warmth_limit),
        "near_miss": measures.near_miss,
        "stray": measures.stray,
        "glitter": measures.glitter * (0.4 + 0.6 * measures.brightness),
    }
    return np.column_stack([table[name] for name in QUALITIES])


def judge(measures: MeasureColumns, rule: Rule) -> JudgementColumns:
    """Return verdicts and scores.

    A clash is any one fault at its limit: a failed match, colour stronger than the focus, a strong
    hue that the picture lacks, or the wrong white. Its score lies under the clash ceiling, all
    others above, so that no clash can be ranked over a complement or a blend.
    """
    weights = np.array([getattr(rule.weights, name) for name in QUALITIES])
    merit = qualities(measures, rule) @ weights + rule.weights.base
    fault = _fault(measures, rule)
    blend = measures.settling <= rule.limits.blend_delta_e
    clash = (fault >= rule.limits.clash) & ~blend
    within = sigmoid(rule.score_slope * merit)
    ceiling = rule.clash_ceiling
    score = np.where(clash, ceiling * within, ceiling + (1.0 - ceiling) * within)
    return JudgementColumns(merit=merit, fault=fault, clash=clash, blend=blend, score=score)


def _fault(measures: MeasureColumns, rule: Rule) -> Float64Array:
    wrong_white = saturating(measures.warmth, rule.limits.warmth_limit)
    worst = np.maximum(measures.near_miss, measures.overpowering)
    return np.maximum(np.maximum(worst, measures.stray), wrong_white)
