"""Does it suit?

The findings of a picture and the samples of a catalogue flow in; every sample comes out with its
measures, a verdict (complement, blend or clash), a score in 0..1 and reasons that a framer can say
aloud, best first. All measures are vectorised over a whole catalogue. The folder never decides: it
shows what it measured, and a shop can move the weights by its own choices. ``design`` and
everything after it may import this folder.
"""

from framing_palette.ranking.columns import SampleColumns, columns_of
from framing_palette.ranking.nearest import Aspect, BetterChoice, nearest_better
from framing_palette.ranking.rankings import Ranking, ranking
from framing_palette.ranking.ranks import rank
from framing_palette.ranking.report import rank_report, sample_report
from framing_palette.ranking.rule import HOUSE_RULE, Limits, Rule, Weights
from framing_palette.ranking.stability import verdict_stability, with_stability
from framing_palette.ranking.taste import Choice, Taste, TasteFit, fit_taste
from framing_palette.ranking.taste_choices import (
    Answer,
    Work,
    choice_between,
    choices_from_work,
    picture_mark,
)
from framing_palette.ranking.taste_effect import Move, Shift, judged_by, shift_between
from framing_palette.ranking.taste_files import ReadTaste, read_taste_file, write_taste_file
from framing_palette.ranking.taste_questions import next_question
from framing_palette.ranking.taste_report import learned_report, taste_from_report, taste_report
from framing_palette.ranking.verdicts import Measures, RankedSample, Verdict

__all__ = [
    "HOUSE_RULE",
    "Answer",
    "Aspect",
    "BetterChoice",
    "Choice",
    "Limits",
    "Measures",
    "Move",
    "RankedSample",
    "Ranking",
    "ReadTaste",
    "Rule",
    "SampleColumns",
    "Shift",
    "Taste",
    "TasteFit",
    "Verdict",
    "Weights",
    "Work",
    "choice_between",
    "choices_from_work",
    "columns_of",
    "fit_taste",
    "judged_by",
    "learned_report",
    "nearest_better",
    "next_question",
    "picture_mark",
    "rank",
    "rank_report",
    "ranking",
    "read_taste_file",
    "sample_report",
    "shift_between",
    "taste_from_report",
    "taste_report",
    "verdict_stability",
    "with_stability",
    "write_taste_file",
]
