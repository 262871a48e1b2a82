"""Verdicts: what the measures of one sample say about one picture."""

from dataclasses import dataclass
from enum import StrEnum
from math import nan

from framing_palette.catalogue import Sample


class Verdict(StrEnum):
    """The three things a sample can do beside a picture."""

    COMPLEMENT = "complement"  # seen as itself, related to the picture, not stronger than the focus
    BLEND = "blend"  # settles into what it touches, or keeps back beside it
    CLASH = "clash"  # fights the picture


@dataclass(frozen=True, slots=True)
class Measures:
    """What was measured of one sample against one picture.

    Parameters
    ----------
    echo_delta_e
        ΔE00 between the sample and the colour of the picture that it repeats best.
    separation_delta_e, separation_lightness
        ΔE00 and L* difference (sample minus rim) to what the sample touches.
    pull
        Strength of the border over strength of the focus; above 1 it is seen first.
    harmony
        Ou and Luo 2006, area-weighted, about -1.2 to 1.7.
    texture
        Affinity of the surface with the picture's, 0..1; nan when unknown.
    settling
        ΔE00 to the nearest main colour of what the sample touches; nan when not measured apart
        from ``separation_delta_e``.
    chroma_excess
        C*ab above the art's own range, 0 when inside.
    warmth
        Warmth mismatch near the neutral axis, in b*-like units, 0 when it agrees.
    echo_region, echo_name, echo_share
        Which colour is repeated: the region (or "accent"), its plain name, its share of the
        picture.
    echo
        How well the colours are repeated, darker and quieter versions included, 0..1.
    separation_chroma, separation_hue
        C*ab difference (sample minus rim) and metric hue difference to what the sample touches.
    vividness, brightness
        Strength of colour for this picture (0.5 as the art's own), and lightness beyond the
        focus's light tones, 0..1.
    overpowering, near_miss, stray, glitter
        Faults, 0..1: colour beyond the focus's; a hue that looks like a failed match; a strong
        hue that the picture lacks; shine.
    near_miss_region, near_miss_name
        Which colour is missed.
    softness
        Agreement of the surface with the subject, 0..1, 0.5 when unknown.
    least_harmony
        Harmony of the least harmonious pair of a sample's and a picture's colour, a warning.
    neutral_pull
        Pull of plain neutrals as light as the sample: what its colour adds is pull less this.
    kin
        How surely it is of the family of one of the picture's telling colours, 0..1.
    foil
        How far it is a plain neutral that stands clear of what it touches, 0..1.
    cover
        How much of the picture's palette it repeats, 0..1.
    meaning
        How surely it repeats a colour that the picture uses sparingly and with meaning, 0..1.
    repeated
        Share of the sample whose colours each repeat one of the picture, 0..1.
    own_hue
        How surely the picture uses the sample's hue, at whatever depth and strength, 0..1.
    plain
        As ``foil``, less for a middle grey than for black or white.
    depth
        Darkness, 0 white to 1 black.
    relation
        How surely it has to do with the picture at all, 0..1.
    foreign
        Fault: how far it stands clear with a colour that is nowhere in the picture, 0..1.
    """

    echo_delta_e: float
    separation_delta_e: float
    separation_lightness: float
    pull: float
    harmony: float
    texture: float
    chroma_excess: float = 0.0
    warmth: float = 0.0
    echo_region: str = ""
    echo_name: str = ""
    echo_share: float = 0.0
    echo: float = 0.0
    settling: float = nan
    separation_chroma: float = 0.0
    separation_hue: float = 0.0
    vividness: float = 0.0
    brightness: float = 0.0
    overpowering: float = 0.0
    near_miss: float = 0.0
    near_miss_region: str = ""
    near_miss_name: str = ""
    stray: float = 0.0
    glitter: float = 0.0
    softness: float = 0.5
    least_harmony: float = 0.0
    neutral_pull: float = 0.0
    kin: float = 0.0
    foil: float = 0.0
    cover: float = 0.0
    meaning: float = 0.0
    repeated: float = 0.0
    own_hue: float = 0.0
    plain: float = 0.0
    depth: float = 0.0
    relation: float = 0.0
    foreign: float = 0.0


@dataclass(frozen=True, slots=True)
class RankedSample:
    """One sample with its verdict, score (0..1, higher is better) and reasons to say aloud."""

    sample: Sample
    verdict: Verdict
    score: float
    reasons: tuple[str, ...]
    measures: Measures
    stability: float = 1.0
