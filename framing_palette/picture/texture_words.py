"""Texture in words: what a measured texture is called at the counter.

The limits are common practice put into figures: no published scale of such words exists.
"""

from math import isnan, nan

from framing_palette.picture.findings import BANDS_MM, Texture

FAINT, PLAIN, STRONG = 0.8, 2.5, 6.0
"""Standard deviation of L* in the strongest octave from which a texture is faint, plain, strong."""

FINE_MM, COARSE_MM = 1.5, 6.0
DIRECTED = 0.35
REGULAR = 0.45
SPARKLING = 0.01


def texture_words(texture: Texture) -> str:
    """Return a texture in a few words, such as "fine level weave, about 1 mm".

    Says so when the scale is unknown, because size is half of what a texture is.
    """
    if texture.mm_per_px is None:
        return "texture not measured: the size of the art is not known"
    wave_mm, contrast = _strongest(texture)
    if isnan(contrast):
        return "texture not measured: too little of it is seen"
    if contrast < FAINT:
        return "smooth" + _sparkle(texture)
    return f"{_strength(contrast)}{_size(wave_mm)} {_pattern(texture)}, about {wave_mm:g} mm" + (
        _sparkle(texture)
    )


def _strongest(texture: Texture) -> tuple[float, float]:
    known = [
        (contrast, wave)
        for wave, contrast in zip(BANDS_MM, texture.lightness_contrast, strict=True)
        if not isnan(contrast)
    ]
    if not known:
        return nan, nan
    contrast, wave = max(known)
    return wave, contrast


def _strength(contrast: float) -> str:
    if contrast < PLAIN:
        return "faint "
    return "strong " if contrast >= STRONG else ""


def _size(wave_mm: float) -> str:
    if wave_mm < FINE_MM:
        return "fine"
    return "coarse" if wave_mm > COARSE_MM else "middling"


def _pattern(texture: Texture) -> str:
    kind = "weave" if texture.regularity >= REGULAR else "grain"
    if texture.direction_strength < DIRECTED:
        return kind if kind == "weave" else "mottle"
    turn = texture.direction_deg % 180.0
    if min(turn, 180.0 - turn) <= 22.5:
        return f"level {kind}"
    return f"upright {kind}" if abs(turn - 90.0) <= 22.5 else f"slanting {kind}"


def _sparkle(texture: Texture) -> str:
    return ", with points of light" if texture.sparkle >= SPARKLING else ""
