"""Twelve ways to make a plain border colour for any picture, from apt to unfortunate."""

import numpy as np

from framing_palette.picture import Findings
from tests.judgement.pictures import shown
from tests.ranking.by_hand import Lab, lch

LEAST_SHARE = 0.01


def _chroma(lab: Lab) -> float:
    return float(np.hypot(lab[1], lab[2]))


def _hue(lab: Lab) -> float:
    return float(np.degrees(np.arctan2(lab[2], lab[1])) % 360)


def recipes(findings: Findings) -> dict[str, Lab]:
    """The twelve colours for one picture, made of its palette; all can be shown on a screen."""
    palette = [c.lab for c in findings.whole.colours if c.share >= LEAST_SHARE]
    largest, second = palette[0], palette[min(1, len(palette) - 1)]
    vivid = max(palette, key=_chroma)
    hues = [_hue(lab) for lab in palette if _chroma(lab) > 12] or [_hue(vivid)]
    free = max(range(0, 360, 10), key=lambda h: min(abs((h - x + 180) % 360 - 180) for x in hues))
    made = {
        "vivid hue, darker and half as strong": lch(
            0.62 * vivid[0], 0.5 * _chroma(vivid), _hue(vivid)
        ),
        "largest area": largest,
        "second area": second,
        "darkest ground": min(palette),
        "black": (9.0, 0.2, 0.2),
        "warm white": (95.0, 0.4, 5.0),
        "vivid colour itself": vivid,
        "warm grey": (62.0, 1.0, 4.5),
        "second, brighter and stronger": lch(
            min(second[0] + 15, 92), 1.5 * _chroma(second) + 12, _hue(second)
        ),
        "cold white": (96.0, -0.8, -4.0),
        "opposite hue, vivid": lch(60, 70, _hue(vivid) + 180),
        "stray vivid": lch(55, 75, free),
    }
    return {name: shown(lab) for name, lab in made.items()}
