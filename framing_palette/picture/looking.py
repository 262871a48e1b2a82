"""Looking at the picture: all that judgement needs to know of it, in one go."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from framing_palette.arrays import BoolArray, Float32Array, Float64Array
from framing_palette.picture.accents import find_accents
from framing_palette.picture.attention import strength_map
from framing_palette.picture.findings import (
    USUAL_LONG_SIDES_MM,
    Accent,
    Findings,
    Lab,
    RegionFinding,
    Texture,
)
from framing_palette.picture.focus_guess import guessed_focus
from framing_palette.picture.histograms import Cells, folded
from framing_palette.picture.masks import RIM_DEPTH, region_mask, rim_mask
from framing_palette.picture.palettes import palette
from framing_palette.picture.pictures import Picture
from framing_palette.picture.regions import Part, Region, Role
from framing_palette.picture.seeing import as_seen
from framing_palette.picture.texture import measure_texture

GUESSED_FOCUS_NAME = "focus (a guess)"
_PERCENTILES = (5, 95)


@dataclass(frozen=True, slots=True, eq=False)
class Survey:
    """What is measured once per picture, so that a region can be read again while it is dragged.

    Parameters
    ----------
    picture
        The picture itself.
    cells
        Its colours as the eye takes them in, folded into a fine histogram, and the cell of each
        pixel.
    strength
        Attention of each place, possibly at a smaller size than the picture.
    accents
        Accents of the whole picture, strongest first.
    mean_lab
        Mean of the art.
    loose_textures
        Of the middle of the art at usual sizes, when its scale is not known.
    """

    picture: Picture
    cells: Cells
    strength: Float32Array
    accents: tuple[Accent, ...]
    mean_lab: Lab
    loose_textures: tuple[Texture, ...]


def survey_picture(picture: Picture) -> Survey:
    """Return what every region of a picture needs, measured once."""
    lab = picture.lab_d50
    return Survey(
        picture=picture,
        cells=folded(as_seen(lab)),
        strength=strength_map(lab),
        accents=find_accents(lab, mm_per_px=picture.mm_per_px),
        mean_lab=_mean(lab.reshape(-1, 3)),
        loose_textures=_loose_textures(picture),
    )


def _loose_textures(picture: Picture) -> tuple[Texture, ...]:
    if picture.mm_per_px is not None:
        return ()
    rows, columns = picture.rows // 4, picture.columns // 4
    middle = picture.lab_d50[rows : picture.rows - rows, columns : picture.columns - columns]
    side_px = max(picture.rows, picture.columns)
    return tuple(measure_texture(middle, side / side_px) for side in USUAL_LONG_SIDES_MM)


def read_findings(
    picture: Picture, regions: Sequence[Region] = (), *, rim_depth: float = RIM_DEPTH
) -> Findings:
    """Return the whole reading of a picture.

    Without a focus region, one is guessed from attention and `focus_guessed` says so.

    Parameters
    ----------
    picture
        The picture.
    regions
        Regions as drawn, in order.
    rim_depth
        Depth of the outer band that a border touches, as a share of the short side, up to 0.5.

    Raises
    ------
    FieldError
        When a region covers nothing of the picture, or the rim's depth is impossible.
    """
    return findings_from_survey(survey_picture(picture), regions, rim_depth=rim_depth)


def findings_from_survey(
    survey: Survey, regions: Sequence[Region] = (), *, rim_depth: float = RIM_DEPTH
) -> Findings:
    """Return the whole reading of a surveyed picture, as :func:`read_findings` does.

    Raises
    ------
    FieldError
        When a region covers nothing of the picture, or the rim's depth is impossible.
    """
    picture = survey.picture
    guessed = not any(region.role is Role.FOCUS for region in regions)
    drawn = (guess_focus(survey), *regions) if guessed else tuple(regions)
    found = (
        *(read_region(survey, region) for region in drawn),
        _made(survey, Role.RIM, rim_mask(picture.rows, picture.columns, depth=rim_depth)),
        _made(survey, Role.WHOLE, np.ones((picture.rows, picture.columns), np.bool_)),
    )
    lab = picture.lab_d50
    return Findings(
        regions=found,
        accents=survey.accents,
        mean_lab=survey.mean_lab,
        focus_strength=_focus_strength(found),
        chroma_range=_range(np.hypot(lab[..., 1], lab[..., 2])),
        lightness_range=_range(lab[..., 0]),
        colour_trust=picture.colour_trust,
        mm_per_px=picture.mm_per_px,
        focus_guessed=guessed,
        loose_textures=survey.loose_textures,
    )


def guess_focus(survey: Survey) -> Region:
    """Return the place where attention gathers as a region whose name says that it is a guess."""
    outline = guessed_focus(survey.picture.lab_d50)
    return Region(name=GUESSED_FOCUS_NAME, role=Role.FOCUS, parts=(Part(outline),))


def read_region(survey: Survey, region: Region, *, with_texture: bool = True) -> RegionFinding:
    """Return what is in one region.

    Parameters
    ----------
    survey
        Of the picture.
    region
        As drawn.
    with_texture
        False leaves the texture unknown, quick enough to follow a drag.

    Raises
    ------
    FieldError
        When the region covers nothing of the picture.
    """
    mask = region_mask(region, survey.picture.rows, survey.picture.columns)
    outline = next(part.polygon for part in region.parts if not part.subtract)
    return _finding(
        survey, region.name, region.role, mask, outline=outline, with_texture=with_texture
    )


def _made(survey: Survey, role: Role, mask: BoolArray) -> RegionFinding:
    return _finding(survey, role.value, role, mask, outline=(), with_texture=True)


def _finding(
    survey: Survey,
    name: str,
    role: Role,
    mask: BoolArray,
    *,
    outline: tuple[tuple[float, float], ...],
    with_texture: bool,
) -> RegionFinding:
    picture, pixels = survey.picture, mask.ravel()
    weight = survey.cells.counts(pixels)
    return RegionFinding(
        name=name,
        role=role,
        share=float(mask.mean()),
        colours=palette(survey.cells.lab_d50, weight),
        accents=tuple(accent for accent in survey.accents if _lies_in(accent, mask)),
        mean_lab=_weighted_mean(survey.cells.lab_d50, weight),
        texture=measure_texture(*_cut_out(picture, mask)) if with_texture else Texture(),
        strength=_mean_strength(survey.strength, mask),
        outline=outline,
    )


def _cut_out(picture: Picture, mask: BoolArray) -> tuple[Float32Array, float | None, BoolArray]:
    """Return the smallest box round a mask, since nothing else is measured."""
    rows, columns = np.flatnonzero(mask.any(axis=1)), np.flatnonzero(mask.any(axis=0))
    box = (slice(rows[0], rows[-1] + 1), slice(columns[0], columns[-1] + 1))
    return picture.lab_d50[box], picture.mm_per_px, mask[box]


def _mean_strength(strength: Float32Array, mask: BoolArray) -> float:
    """Return the mean over a mask, read at the middle of each place of the smaller map."""
    row, column = (
        (np.arange(small) + 0.5) * full / small
        for small, full in zip(strength.shape, mask.shape, strict=True)
    )
    inside = mask[np.ix_(row.astype(np.intp), column.astype(np.intp))]
    if inside.any():
        return float(strength[inside].mean(dtype=np.float64))
    row, column = (
        (where + 0.5) * small / full
        for where, small, full in zip(np.nonzero(mask), strength.shape, mask.shape, strict=True)
    )
    return float(strength[row.astype(np.intp), column.astype(np.intp)].mean(dtype=np.float64))


def _focus_strength(found: tuple[RegionFinding, ...]) -> float:
    """Return the mean over all focus regions, each by its area."""
    focus = [region for region in found if region.role is Role.FOCUS]
    return float(
        np.average([region.strength for region in focus], weights=[r.share for r in focus])
    )


def _lies_in(accent: Accent, mask: BoolArray) -> bool:
    rows, columns = mask.shape
    return bool(
        mask[min(int(accent.y * rows), rows - 1), min(int(accent.x * columns), columns - 1)]
    )


def _mean(lab: Float32Array) -> Lab:
    L, a, b = lab.mean(axis=0, dtype=np.float64).tolist()
    return L, a, b


def _weighted_mean(lab: Float64Array, weight: Float64Array) -> Lab:
    L, a, b = np.average(lab, axis=0, weights=weight).tolist()
    return L, a, b


def _range(values: Float32Array) -> tuple[float, float]:
    low, high = np.percentile(values, _PERCENTILES).tolist()
    return low, high
