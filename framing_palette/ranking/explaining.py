"""Explaining: what decided a verdict and a score, in numbers that add up."""

from collections.abc import Mapping

from framing_palette.ranking.judging import QUALITIES, faults, quality_table
from framing_palette.ranking.rule import HOUSE_RULE, Rule
from framing_palette.ranking.verdicts import Measures, RankedSample, Verdict

LEAST_TOLD = 0.05  # of merit; what adds or takes less is told as one sum


def merit_parts(measures: Measures, rule: Rule = HOUSE_RULE) -> dict[str, float]:
    """Return what each quality adds to the merit, and ``base``; their sum is the merit."""
    table = quality_table(measures, rule)
    parts = {name: float(getattr(rule.weights, name) * table[name]) for name in QUALITIES}
    return {**parts, "base": rule.weights.base}


def judged_faults(measures: Measures, rule: Rule = HOUSE_RULE) -> dict[str, float]:
    """Return the faults any of which makes a clash, by name, 0..1, the worst first."""
    found = {name: float(degree) for name, degree in faults(measures, rule.limits).items()}
    found["foreign"] = measures.foreign
    return dict(sorted(found.items(), key=lambda pair: -pair[1]))


def decided_in_words(line: RankedSample, rule: Rule = HOUSE_RULE) -> str:
    """Return on one line what decided the verdict, and the parts that the merit is the sum of."""
    parts = merit_parts(line.measures, rule)
    return f"{_verdict(line, rule)}; merit {sum(parts.values()):+.2f} = {_sum(parts)}"


def _verdict(line: RankedSample, rule: Rule) -> str:
    measures, limits = line.measures, rule.limits
    found = judged_faults(measures, rule)
    told = {name.replace("_", " "): f"{degree:.2f}" for name, degree in found.items()}
    if line.verdict is Verdict.CLASH:
        over = [f"{name} {told[name]}" for name in told if float(told[name]) >= limits.clash]
        return f"clash, by {' and '.join(over)} (limit {limits.clash:.2f})"
    if measures.settling <= limits.blend_delta_e:
        limit = f"(limit {limits.blend_delta_e:.1f})"
        return f"blend, ΔE00 {measures.settling:.1f} to what it touches {limit}"
    how = f"relation {measures.relation:.2f} (limit {limits.related:.2f})"
    worst = next(iter(told))
    return f"{line.verdict}, by {how}; worst fault {worst} {told[worst]}"


def _sum(parts: Mapping[str, float]) -> str:
    told = {name: part for name, part in parts.items() if abs(part) >= LEAST_TOLD}
    rest = sum(parts.values()) - sum(told.values())
    ordered = sorted(told, key=lambda name: -abs(told[name]))
    terms = [f"{name.replace('_', ' ')} {told[name]:+.2f}" for name in ordered]
    return ", ".join([*terms, f"rest {rest:+.2f}"])
