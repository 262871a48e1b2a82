"""Does it suit?

The findings of a picture and the samples of a catalogue flow in; every sample comes out with its
measures, a verdict (complement, blend or clash), a score in 0..1 and reasons that a framer can say
aloud, best first. All measures are vectorised over a whole catalogue. The folder never decides: it
shows what it measured, and a shop can move the weights by its own choices. ``design`` and
everything after it may import this folder.
"""

from framing_palette.ranking.verdicts import Measures, RankedSample, Verdict

__all__ = ["Measures", "RankedSample", "Verdict"]
