"""What was found in the picture: palettes, accents, texture and attention, as plain values."""

from dataclasses import dataclass
from math import nan

from framing_palette.picture.pictures import ColourTrust
from framing_palette.picture.regions import Role

Lab = tuple[float, float, float]

BANDS_MM = (0.5, 1.0, 2.0, 4.0, 8.0, 16.0)
"""Wavelengths, in millimetres on the art, at the middle of each octave of a texture."""

USUAL_LONG_SIDES_MM = (350.0, 500.0, 700.0)
"""Usual long sides of framed art, which stand in where the true size is not known."""

PATTERN_CODES = 10
"""Number of local patterns that are told apart in each octave of a texture."""


@dataclass(frozen=True, slots=True)
class PaletteColour:
    """One dominant colour (Lab D50) with its share of the region, 0..1."""

    lab: Lab
    share: float
    name: str = ""


@dataclass(frozen=True, slots=True)
class Accent:
    """A small but striking colour.

    Parameters
    ----------
    lab
        Its colour, Lab D50.
    share
        Share of the picture, 0..1.
    x, y
        Its centre, 0..1 across the upright picture.
    delta_e
        ΔE00 to its surroundings.
    strength
        How far it stands out, 0..1, larger with difference and size.
    size_mm
        Diameter on the art of a disc of its area; None when the scale is unknown.
    name
        Plain colour name.
    """

    lab: Lab
    share: float
    x: float
    y: float
    delta_e: float
    strength: float
    size_mm: float | None = None
    name: str = ""


@dataclass(frozen=True, slots=True)
class Texture:
    """A surface at true scale; nan marks a band that resolution or size leaves unknown.

    Parameters
    ----------
    lightness_contrast, chroma_contrast
        Standard deviation of L*, and of the (a*, b*) vector, in each octave of ``BANDS_MM``: an
        even wave of that length counts with its full deviation.
    direction_deg
        Direction along which the grain runs, 0 horizontal, counter-clockwise, 0..180.
    direction_strength
        0 none, 1 perfectly parallel.
    regularity
        0 random, 1 perfectly repeating.
    sparkle
        Share of light points far above their surroundings, 0..1.
    mm_per_px
        Scale at which it was measured; None when unknown, and then all bands are unknown.
    mean_lightness
        Mean L*.
    peakedness
        Logarithm of the kurtosis of L* in each octave: 1.1 for an even mixture, more where few
        marks stand on a quiet ground.
    pattern
        For each octave in turn, the ``PATTERN_CODES`` square roots of how often each local
        pattern occurs, the patterns being the same however the surface is turned or lit.
    """

    lightness_contrast: tuple[float, ...] = (nan,) * len(BANDS_MM)
    chroma_contrast: tuple[float, ...] = (nan,) * len(BANDS_MM)
    direction_deg: float = 0.0
    direction_strength: float = 0.0
    regularity: float = 0.0
    sparkle: float = 0.0
    mm_per_px: float | None = None
    mean_lightness: float = nan
    peakedness: tuple[float, ...] = (nan,) * len(BANDS_MM)
    pattern: tuple[float, ...] = (nan,) * (len(BANDS_MM) * PATTERN_CODES)


@dataclass(frozen=True, slots=True)
class RegionFinding:
    """All that was measured in one region.

    Parameters
    ----------
    name, role
        As drawn; ``rim`` and ``whole`` are made by the program.
    share
        Share of the picture's area, 0..1.
    colours
        Dominant colours, largest share first, shares summing to one.
    accents
        Accents whose centre lies in the region, strongest first.
    mean_lab
        Mean CIELAB D50.
    texture
        At true scale.
    strength
        Mean attention: ΔE00 of the blurred region to the mean of the art.
    outline
        Outline for showing, (x, y) in 0..1; empty for ``rim`` and ``whole``.
    """

    name: str
    role: Role
    share: float
    colours: tuple[PaletteColour, ...]
    accents: tuple[Accent, ...]
    mean_lab: Lab
    texture: Texture
    strength: float
    outline: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Findings:
    """The whole reading of a picture, all that judgement needs to know of it.

    Parameters
    ----------
    regions
        The drawn regions in order, then ``rim`` and ``whole``.
    accents
        Accents of the whole picture, strongest first.
    mean_lab
        Mean of the art, CIELAB D50.
    focus_strength
        Mean attention over the focus regions (ΔE00 units), the unit of pull.
    chroma_range
        5th and 95th percentile of C*ab over the art.
    lightness_range
        5th and 95th percentile of L* over the art.
    colour_trust
        How far to trust the colours.
    mm_per_px
        Scale, or None.
    focus_guessed
        True when no focus was drawn and the program proposed one.
    loose_textures
        Of the middle of the art, measured as if its long side were each of ``USUAL_LONG_SIDES_MM``,
        when the scale is not known: enough to tell a fine surface from a coarse one, never shown.
    """

    regions: tuple[RegionFinding, ...]
    accents: tuple[Accent, ...]
    mean_lab: Lab
    focus_strength: float
    chroma_range: tuple[float, float]
    lightness_range: tuple[float, float]
    colour_trust: ColourTrust
    mm_per_px: float | None
    focus_guessed: bool
    loose_textures: tuple[Texture, ...] = ()

    def by_role(self, role: Role) -> tuple[RegionFinding, ...]:
        """Return the regions of one role, in order."""
        return tuple(region for region in self.regions if region.role is role)

    @property
    def rim(self) -> RegionFinding:
        """The outer band that a border touches."""
        return self.by_role(Role.RIM)[0]

    @property
    def whole(self) -> RegionFinding:
        """The whole picture."""
        return self.by_role(Role.WHOLE)[0]
