"""Swatches: a sample measured from its photograph, with how far the measures can be trusted.

Colours with shares and texture are measured; finish and surface are guesses and are called so.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from framing_palette.arrays import BoolArray, Float32Array
from framing_palette.catalogue.samples import Finish, Sample, SampleColour, Surface
from framing_palette.colour import chroma, delta_e_2000
from framing_palette.errors import FieldError
from framing_palette.picture import (
    PaletteColour,
    Part,
    Picture,
    Region,
    Role,
    Texture,
    measure_texture,
    palette,
    region_mask,
    texture_distances,
    texture_vector,
)
from framing_palette.picture.histograms import folded
from framing_palette.picture.outlines import Outline

SWATCH_SCHEMA = "framing-palette/swatch@1"
UNEVEN_FROM = 2.0
"""A lightness slope across the swatch, in L*, from which the light is called uneven."""

_BLOCKS = 4
_TEXTURE_SIDE_PX = 640
_LEAST_PIXELS = 64
_NEIGHBOURS = 5
_METALS = frozenset({Surface.LEAF, Surface.BRUSHED_METAL})
_METAL_RISE, _GLOSS_RISE, _SATIN_RISE = 14.0, 18.0, 8.0  # L* over the lightest colour


@dataclass(frozen=True, slots=True)
class FinishGuess:
    """How the surface seems to return light, and the measured reason."""

    finish: Finish
    reason: str


@dataclass(frozen=True, slots=True)
class SurfaceGuess:
    """Which surface it seems to be, and the share of like samples that agree, 0..1."""

    surface: Surface
    agreement: float


@dataclass(frozen=True, slots=True)
class Swatch:
    """What a photograph tells about a sample.

    Parameters
    ----------
    colours
        Largest share first, shares adding up to one.
    texture
        Its bands are nan where the scale is unknown or the photograph too coarse.
    finish
        A guess.
    surface
        A guess; None when there was nothing to compare with.
    repeatability_delta_e
        How far the mean colour moves between parts of the swatch, ΔE00.
    unevenness
        Lightness from one side of the swatch to the other, in L*.
    uncertainty_delta_e
        What the colours may be off by, ΔE00; None when the photograph has no chart to tell.
    notices
        Sentences worth telling.
    """

    colours: tuple[PaletteColour, ...]
    texture: Texture
    finish: FinishGuess
    surface: SurfaceGuess | None
    repeatability_delta_e: float
    unevenness: float
    uncertainty_delta_e: float | None
    notices: tuple[str, ...] = ()

    def sample_colours(self) -> tuple[SampleColour, ...]:
        """Return the colours as a sample has them."""
        return tuple(SampleColour(colour.lab, colour.share) for colour in self.colours)


def measure_swatch(
    picture: Picture, outline: Outline | None = None, *, samples: Sequence[Sample] = ()
) -> Swatch:
    """Return the measures of a photographed swatch.

    Parameters
    ----------
    picture
        Read with its scale (mm_per_px) when that is known.
    outline
        Points (x, y) from 0 to 1 across the picture; the whole picture by default.
    samples
        A catalogue's samples with measured textures, for the guess of the surface.

    Raises
    ------
    FieldError
        When the outline holds too few pixels to measure.
    """
    mask = _mask(picture, outline)
    lab, inside = _cut(picture.lab_d50, mask)
    pixels = lab[inside]
    cells = folded(pixels)
    colours = palette(cells.lab_d50, cells.counts())
    texture = _texture(lab, inside, picture.mm_per_px)
    surface = guess_surface(texture, samples)
    spread, slope = _repeatability(lab, inside), _unevenness(lab, inside)
    uncertainty = _uncertainty(picture, spread, slope)
    return Swatch(
        colours=colours,
        texture=texture,
        finish=guess_finish(pixels, colours, surface),
        surface=surface,
        repeatability_delta_e=spread,
        unevenness=slope,
        uncertainty_delta_e=uncertainty,
        notices=_notices(picture, slope, uncertainty),
    )


def guess_finish(
    pixels: Float32Array, colours: Sequence[PaletteColour], surface: SurfaceGuess | None = None
) -> FinishGuess:
    """Return how a surface seems to return light, from its highlights; common practice, a guess.

    A highlight of a varnish has the colour of the lamp, a highlight of metal keeps the metal's.
    In flat light there is no highlight, and only the kind of surface tells.

    Parameters
    ----------
    pixels
        Shape (n, 3), Lab D50.
    colours
        The palette: a light colour of the surface itself is no highlight.
    surface
        What the surface seems to be.
    """
    if surface and surface.surface in _METALS and surface.agreement >= 0.5:
        words = surface.surface.replace("_", " ")
        return FinishGuess(Finish.METALLIC, f"its texture is most like {words}")
    body = max(colours, key=lambda colour: colour.lab[0]).lab
    rise = float(np.percentile(pixels[:, 0], 99.5)) - body[0]
    bright = pixels[pixels[:, 0] >= body[0] + 0.7 * max(rise, 1.0)]
    own = math.hypot(body[1], body[2])
    if rise > _METAL_RISE and own > 12 and float(chroma(bright).mean()) > 0.85 * own:
        why = f"light points stand {rise:.0f} L* over the lightest colour and keep its hue"
        return FinishGuess(Finish.METALLIC, why)
    if rise > _GLOSS_RISE:
        why = f"highlights stand {rise:.0f} L* over the lightest colour and are paler"
        return FinishGuess(Finish.GLOSS, why)
    if rise > _SATIN_RISE:
        why = f"soft highlights stand {rise:.0f} L* over the lightest colour"
        return FinishGuess(Finish.SATIN, why)
    return FinishGuess(Finish.MATT, "no highlight stands out")


def guess_surface(texture: Texture, samples: Sequence[Sample]) -> SurfaceGuess | None:
    """Return the surface that the most alike textures have; None when nothing can be compared.

    Parameters
    ----------
    texture
        Of the swatch, at known scale.
    samples
        A catalogue's; each texture picture counts once, those not measured are left out.
    """
    by_picture = {
        sample.texture_file: (sample.surface, texture_vector(sample.texture))
        for sample in samples
        if sample.texture is not None and sample.surface is not None
    }
    if not by_picture or texture.mm_per_px is None:
        return None
    surfaces = [surface for surface, _ in by_picture.values()]
    distance = texture_distances(texture, np.array([v for _, v in by_picture.values()]))
    order = np.argsort(distance, kind="stable")[:_NEIGHBOURS]
    near = [surfaces[i] for i in order if math.isfinite(distance[i])]
    if not near:
        return None
    best = max(dict.fromkeys(near), key=near.count)
    return SurfaceGuess(best, near.count(best) / len(near))


def photograph_origin(uncertainty_delta_e: float | None) -> str:
    """Return where photographed colours come from, in words for ``Sample.colour_origin``."""
    if uncertainty_delta_e is None:
        return "photographed without a colour chart"
    return f"photographed, good to about {uncertainty_delta_e:.1f} ΔE00"


def swatch_report(swatch: Swatch) -> dict[str, object]:
    """Return the measures as plain data for ``--json``; unknown figures are None."""
    texture, surface = swatch.texture, swatch.surface
    return {
        "schema": SWATCH_SCHEMA,
        "colours": [
            {"lab": [round(x, 3) for x in c.lab], "share": round(c.share, 4), "name": c.name}
            for c in swatch.colours
        ],
        "texture": {
            "lightness_contrast": _known(texture.lightness_contrast),
            "chroma_contrast": _known(texture.chroma_contrast),
            "direction_deg": round(texture.direction_deg, 1),
            "direction_strength": round(texture.direction_strength, 3),
            "regularity": round(texture.regularity, 3),
            "sparkle": round(texture.sparkle, 5),
            "mm_per_px": texture.mm_per_px,
        },
        "finish_guess": {"finish": swatch.finish.finish.value, "reason": swatch.finish.reason},
        "surface_guess": None
        if surface is None
        else {"surface": surface.surface.value, "agreement": round(surface.agreement, 2)},
        "repeatability_delta_e": round(swatch.repeatability_delta_e, 3),
        "unevenness": round(swatch.unevenness, 2),
        "uncertainty_delta_e": None
        if swatch.uncertainty_delta_e is None
        else round(swatch.uncertainty_delta_e, 2),
        "notices": list(swatch.notices),
    }


def _known(values: Sequence[float]) -> list[float | None]:
    return [None if math.isnan(value) else round(value, 3) for value in values]


def _mask(picture: Picture, outline: Outline | None) -> BoolArray:
    if outline is None:
        mask = np.ones((picture.rows, picture.columns), dtype=np.bool_)
    else:
        region = Region("swatch", Role.FOCUS, (Part(outline),))
        mask = region_mask(region, picture.rows, picture.columns)
    if np.count_nonzero(mask) < _LEAST_PIXELS:
        raise FieldError(
            "the swatch",
            got=f"{np.count_nonzero(mask)} pixels in size",
            wanted=f"draw an outline of {_LEAST_PIXELS} pixels or more",
        )
    return mask


def _cut(lab: Float32Array, mask: BoolArray) -> tuple[Float32Array, BoolArray]:
    """Return the smallest rectangle that holds the outline, and the mask in it."""
    rows, columns = np.flatnonzero(mask.any(axis=1)), np.flatnonzero(mask.any(axis=0))
    place = slice(rows[0], rows[-1] + 1), slice(columns[0], columns[-1] + 1)
    return lab[place], mask[place]


def _texture(lab: Float32Array, inside: BoolArray, mm_per_px: float | None) -> Texture:
    """Return the texture of the middle of the swatch, which is enough and fast."""
    rows, columns = (max(0, (size - _TEXTURE_SIDE_PX) // 2) for size in inside.shape)
    place = slice(rows, rows + _TEXTURE_SIDE_PX), slice(columns, columns + _TEXTURE_SIDE_PX)
    if np.count_nonzero(inside[place]) < _LEAST_PIXELS:
        place = slice(None), slice(None)
    return measure_texture(lab[place], mm_per_px, inside[place])


def _repeatability(lab: Float32Array, inside: BoolArray) -> float:
    """Return the mean ΔE00 between block means and the mean of all, the slope of light included."""
    means = [
        block[keep].mean(axis=0, dtype=np.float64)
        for rows, keeps in zip(
            np.array_split(lab, _BLOCKS), np.array_split(inside, _BLOCKS), strict=True
        )
        for block, keep in zip(
            np.array_split(rows, _BLOCKS, axis=1),
            np.array_split(keeps, _BLOCKS, axis=1),
            strict=True,
        )
        if np.count_nonzero(keep) > _LEAST_PIXELS // 4
    ]
    if len(means) < 2:
        return 0.0
    return float(delta_e_2000(np.array(means), np.mean(means, axis=0)).mean())


def _unevenness(lab: Float32Array, inside: BoolArray) -> float:
    """Return how much L* a plane through the swatch climbs from one end to the other."""
    step = max(1, int(math.sqrt(inside.size / 40_000)))
    rows, columns = np.nonzero(inside[::step, ::step])
    lightness = lab[::step, ::step, 0][rows, columns].astype(np.float64)
    if len(rows) < 8:
        return 0.0
    across = columns / max(columns.max(), 1) - 0.5
    down = rows / max(rows.max(), 1) - 0.5
    plane = np.stack([np.ones_like(across), across, down], axis=1)
    slope = np.linalg.lstsq(plane, lightness, rcond=None)[0]
    return float(np.hypot(slope[1], slope[2]))


def _uncertainty(picture: Picture, spread: float, slope: float) -> float | None:
    chart = picture.colour_trust.p95_delta_e
    if chart is None:
        return None
    return math.sqrt(chart**2 + spread**2 + (slope / 2) ** 2)


def _notices(picture: Picture, slope: float, uncertainty: float | None) -> tuple[str, ...]:
    found = list(picture.notices)
    if slope > UNEVEN_FROM:
        found.append(
            f"The light falls unevenly: {slope:.1f} L* from one side to the other; "
            "photograph the swatch in flat light."
        )
    if uncertainty is None:
        found.append(
            "The photograph holds no colour chart, so nobody can say how far off the colours are."
        )
    if picture.mm_per_px is None:
        found.append("The scale is not known, so the texture cannot be compared with others.")
    return tuple(found)
