"""The explanation adds up to what was judged, and names what decided."""

import re

import pytest

from framing_palette.ranking import Verdict, ranking
from framing_palette.ranking.explaining import decided_in_words, judged_faults, merit_parts
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

FOUND = findings(SEA, focus=BOAT, rim=SEA[:3])
RACK = [
    sample("boat", lch(34, 31, 40)),
    sample("sea", SEA[0][0]),
    sample("grey", (53.0, 1.0, 4.0)),
    sample("lime", lch(75, 70, 115)),
    sample("foreign", lch(12, 19, 330)),
    sample("crimson", lch(50, 60, 15)),
    sample("mottled", (lch(52, 62, 40), 0.5), (lch(45, 18, 240), 0.5)),
]
RANKED = ranking(FOUND, RACK)
ROWS = [sample.code for sample in RACK]


@pytest.mark.parametrize("row", range(len(RACK)), ids=ROWS)
def test_the_parts_add_up_to_the_merit_that_was_judged(row):
    line = RANKED.at(row)
    merit = float(RANKED.judgement.merit[row])
    assert sum(merit_parts(line.measures).values()) == pytest.approx(merit, abs=1e-9)
    said = decided_in_words(line)
    assert float(re.search(r"merit ([+-][\d.]+) =", said)[1]) == pytest.approx(merit, abs=0.006)
    terms = [float(term) for term in re.findall(r"[+-]\d+\.\d\d", said.split(" = ")[1])]
    assert sum(terms) == pytest.approx(merit, abs=0.01 * len(terms))


@pytest.mark.parametrize("row", range(len(RACK)), ids=ROWS)
def test_the_worst_fault_is_the_one_that_was_judged(row):
    worst = next(iter(judged_faults(RANKED.at(row).measures).values()))
    assert worst == pytest.approx(RANKED.judgement.fault[row])


@pytest.mark.parametrize(
    ("code", "verdict", "said"),
    [
        ("boat", Verdict.COMPLEMENT, r"^complement, by relation [\d.]+ \(limit 0\.50\)"),
        ("sea", Verdict.BLEND, r"^blend, ΔE00 0\.0 to what it touches"),
        ("grey", Verdict.BLEND, r"^blend, by relation 0\.[0-4]\d"),
        ("lime", Verdict.CLASH, r"^clash, by stray"),
        ("foreign", Verdict.CLASH, r"^clash, by foreign"),
        ("crimson", Verdict.CLASH, r"^clash, by .*near miss 0\.9"),
    ],
)
def test_what_decided_is_named_first(code, verdict, said):
    line = RANKED.at(ROWS.index(code))
    assert line.verdict is verdict
    assert re.search(said, decided_in_words(line)), decided_in_words(line)
