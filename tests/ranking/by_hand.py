"""Findings and samples made by hand, for tests that must not hang on the reading of a picture."""

import numpy as np

from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.colour import delta_e_2000
from framing_palette.picture import (
    Accent,
    ColourTrust,
    Findings,
    PaletteColour,
    RegionFinding,
    Role,
    Texture,
)
from framing_palette.picture.pictures import TrustGrade

Lab = tuple[float, float, float]
UNKNOWN_TRUST = ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells.")


def lch(lightness: float, chroma: float, hue_deg: float) -> Lab:
    hue = np.radians(hue_deg)
    return (float(lightness), float(chroma * np.cos(hue)), float(chroma * np.sin(hue)))


def sample(code: str, *colours: Lab | tuple[Lab, float], kind: Kind = Kind.MAT, **facts) -> Sample:
    """A sample; colours as Lab (equal shares) or as (Lab, share)."""
    shared = [c if isinstance(c[0], tuple) else (c, 1.0 / len(colours)) for c in colours]
    made = tuple(SampleColour(lab, share) for lab, share in shared)
    return Sample(code=code, name=code, kind=kind, colours=made, **facts)


def findings(
    whole: list[tuple[Lab, float]],
    *,
    focus: list[tuple[Lab, float]] | None = None,
    rim: list[tuple[Lab, float]] | None = None,
    extra: tuple[RegionFinding, ...] = (),
    accents: tuple[Accent, ...] = (),
    texture: Texture | None = None,
    trust: ColourTrust = UNKNOWN_TRUST,
) -> Findings:
    """A reading of a picture with these palettes; levels follow from the whole palette."""
    surface = texture or Texture()
    lab = np.array([colour for colour, _ in whole])
    share = np.array([part for _, part in whole])
    mean = share @ lab / share.sum()
    focus_colours = focus or whole
    focus_lab = np.array([colour for colour, _ in focus_colours])
    focus_share = np.array([part for _, part in focus_colours])
    strength = float(focus_share @ delta_e_2000(focus_lab, mean) / focus_share.sum())
    chroma = np.repeat(np.hypot(lab[:, 1], lab[:, 2]), np.maximum(1, (share * 1000).astype(int)))
    light = np.repeat(lab[:, 0], np.maximum(1, (share * 1000).astype(int)))

    def region(name: str, role: Role, colours: list[tuple[Lab, float]], part: float):
        made = tuple(PaletteColour(colour, weight) for colour, weight in colours)
        middle = np.average([c for c, _ in colours], axis=0, weights=[w for _, w in colours])
        return RegionFinding(name, role, part, made, (), tuple(middle), surface, strength)

    return Findings(
        regions=(
            region("boat", Role.FOCUS, focus_colours, 0.2),
            *extra,
            region("rim", Role.RIM, rim or whole, 0.2),
            region("whole", Role.WHOLE, whole, 1.0),
        ),
        accents=accents,
        mean_lab=tuple(mean),
        focus_strength=strength,
        chroma_range=tuple(np.percentile(chroma, [5, 95])),
        lightness_range=tuple(np.percentile(light, [5, 95])),
        colour_trust=trust,
        mm_per_px=surface.mm_per_px,
        focus_guessed=False,
    )


SEA = [
    (lch(45, 18, 240), 0.5),
    (lch(70, 10, 230), 0.3),
    (lch(30, 12, 250), 0.15),
    (lch(52, 62, 40), 0.05),
]
"""A grey-blue sea with a red boat."""

BOAT = [(lch(52, 62, 40), 0.4), (lch(80, 8, 80), 0.3), (lch(45, 18, 240), 0.3)]
