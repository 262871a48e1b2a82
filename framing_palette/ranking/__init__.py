"""Does it suit?

The findings of a picture and the samples of a catalogue flow in; every sample comes out with its
measures, a verdict (complement, blend or clash), a score in 0..1 and reasons that a framer can say
aloud, best first. All measures are vectorised over a whole catalogue. The folder never decides: it
shows what it measured, and a shop can move the weights by its own choices. ``design`` and
everything after it may import this folder.
"""

from framing_palette.ranking.columns import SampleColumns, columns_of
from framing_palette.ranking.ranks import Ranking, rank, ranking
from framing_palette.ranking.report import rank_report, sample_report
from framing_palette.ranking.rule import HOUSE_RULE, Limits, Rule, Weights
from framing_palette.ranking.verdicts import Measures, RankedSample, Verdict

__all__ = [
    "HOUSE_RULE",
    "Limits",
    "Measures",
    "RankedSample",
    "Ranking",
    "Rule",
    "SampleColumns",
    "Verdict",
    "Weights",
    "columns_of",
    "rank",
    "rank_report",
    "ranking",
    "sample_report",
]
