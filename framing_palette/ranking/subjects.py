"""The subject: what the ranking needs of a picture's findings, as arrays and a few levels."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import isnan
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float64Array
from framing_palette.colour import delta_e_2000, delta_e_2000_matrix
from framing_palette.picture import Findings, RegionFinding, Role, Texture
from framing_palette.ranking.ramps import rise
from framing_palette.ranking.whites import Whites, whites_of

Lab = tuple[float, float, float]

ROLE_IMPORTANCE = {  # principle 4: the place and the accent count more than the area
    Role.FOCUS: 1.0,
    Role.SUPPORT: 0.95,
    Role.GROUND: 0.85,
    Role.RIM: 0.85,
    Role.WHOLE: 0.88,
}
ACCENT_IMPORTANCE = 1.0
FAINT_SHARE = 0.002  # a palette colour of this share of the picture counts half
TELLING_CHROMA = (10.0, 30.0)  # C*ab between which a colour comes to be a telling one
TELLING_DELTA_E = (5.0, 22.0)  # and its ΔE00 to the mean of the art
LIKE_DELTA_E = (6.0, 14.0)  # ΔE00 between which a colour of the picture stops being like another
SPARING_SHARE = (0.02, 0.12)  # shares of the picture between which a colour stops being sparing
HARD_STEP_L, HARD_STEP_AB = 30.0, 40.0  # standard deviations of L* and (a*, b*) of a crisp subject
HARD_CONTRAST = 8.0  # L* contrast in fine octaves of a crisp subject
SAME_DELTA_E = 1.5  # ΔE00 within which two regions' colours are one
LOOSE_TRUST = 0.7  # in a texture whose scale is only the usual one
LEAST_STRENGTH = 3.0  # ΔE00; a focus weaker than this cannot be told from its surroundings


class ColourShare(Protocol):
    """Anything with a colour and its share: a palette colour or a sample's colour."""

    @property
    def lab(self) -> Lab: ...  # noqa: D102
    @property
    def share(self) -> float: ...  # noqa: D102


@dataclass(frozen=True, slots=True)
class Target:
    """A colour of the picture that a sample can repeat."""

    lab: Lab
    share: float  # of the picture
    region: str  # the region's name, or "accent"
    name: str
    importance: float
    role: Role | None  # None for an accent


@dataclass(frozen=True, slots=True, eq=False)
class Subject:
    """The picture as the ranking sees it.

    Parameters
    ----------
    targets
        The colours that may be echoed, m of them.
    target_lab, target_importance
        Shape (m, 3) and (m,): the same as arrays.
    target_telling
        Shape (m,), 0..1: how strong a colour is and how far it stands from the mean of the art.
    target_meaning
        Shape (m,), 0..1: how surely it is used with meaning: telling, and sparingly used.
    art_lab, art_share, art_target
        The palette of the whole picture, and the place of each colour among the targets.
    rim_lab, rim_share
        What the sample touches.
    mean_lab, focus_strength
        The unit and zero of pull.
    focus_chroma, focus_light
        C*ab and L* that nine tenths of the focus stay under.
    art_chroma
        95th percentile of C*ab over the art.
    whites
        The white that the picture asks for.
    softness
        0 crisp to 1 soft.
    textures, texture_trust
        Surfaces of what the eye rests on and of the whole, those that are known; and how far to
        trust them: fully at true scale, less where a usual size had to stand for it.
    """

    targets: tuple[Target, ...]
    target_lab: Float64Array
    target_importance: Float64Array
    target_telling: Float64Array
    target_meaning: Float64Array
    art_lab: Float64Array
    art_share: Float64Array
    art_target: NDArray[np.intp]
    rim_lab: Float64Array
    rim_share: Float64Array
    mean_lab: Lab
    focus_strength: float
    focus_chroma: float
    focus_light: float
    art_chroma: float
    whites: Whites
    softness: float
    textures: tuple[Texture, ...]
    texture_trust: float


def subject_of(findings: Findings, touching: Sequence[ColourShare] | None = None) -> Subject:
    """Return the subject of a reading.

    Parameters
    ----------
    findings
        The reading of the picture.
    touching
        The colours of a neighbouring layer, when the sample will not touch the picture's rim.
    """
    targets = _told_once(tuple(_targets(findings)))
    target_lab = np.array([target.lab for target in targets], dtype=np.float64)
    importance = np.array([target.importance for target in targets])
    art_lab, art_share = _palette(findings.whole.colours)
    art_target = np.asarray(delta_e_2000_matrix(art_lab, target_lab)).argmin(axis=1)
    rim_lab, rim_share = _palette(touching or findings.rim.colours)
    focus = findings.by_role(Role.FOCUS) or (findings.whole,)
    textures = _textures(findings, focus[0])
    whites = whites_of(art_lab, art_share, *_palette(findings.rim.colours))
    telling = _telling(target_lab, findings.mean_lab) * np.minimum(1.0, importance / 0.85)
    levels = _focus_colours(focus)
    return Subject(
        targets=targets,
        target_lab=target_lab,
        target_importance=importance,
        target_telling=telling,
        target_meaning=telling * _sparing(targets, art_lab, art_share),
        art_lab=art_lab,
        art_share=art_share,
        art_target=art_target,
        rim_lab=rim_lab,
        rim_share=rim_share,
        mean_lab=findings.mean_lab,
        focus_strength=max(findings.focus_strength, LEAST_STRENGTH),
        focus_chroma=_upper([np.hypot(lab[1], lab[2]) for lab, _ in levels], levels),
        focus_light=_upper([lab[0] for lab, _ in levels], levels),
        art_chroma=findings.chroma_range[1],
        whites=whites,
        softness=_softness(levels, focus[0].texture),
        textures=textures,
        texture_trust=1.0 if findings.mm_per_px is not None else LOOSE_TRUST,
    )


def _targets(findings: Findings) -> Iterable[Target]:
    for region in findings.regions:
        for colour in region.colours:
            share = colour.share * region.share
            weight = ROLE_IMPORTANCE[region.role] * share / (share + FAINT_SHARE)
            yield Target(colour.lab, share, region.name, colour.name, weight, region.role)
    for accent in findings.accents:
        weight = ACCENT_IMPORTANCE * (0.6 + 0.4 * accent.strength)
        yield Target(accent.lab, accent.share, "accent", accent.name, weight, None)


def _told_once(targets: tuple[Target, ...]) -> tuple[Target, ...]:
    """Return the targets without those that a more important one stands for.

    Regions overlap, so that the same colour is found in the focus, the rim and the whole.
    """
    order = sorted(range(len(targets)), key=lambda index: -targets[index].importance)
    lab = np.array([targets[index].lab for index in order], dtype=np.float64)
    same = np.asarray(delta_e_2000_matrix(lab, lab)) < SAME_DELTA_E
    kept: list[int] = []
    for place in range(len(order)):
        if not same[place, kept].any():
            kept.append(place)
    return tuple(targets[index] for index in sorted(order[place] for place in kept))


def _telling(lab: Float64Array, mean_lab: Lab) -> Float64Array:
    strong = rise(np.hypot(lab[:, 1], lab[:, 2]), *TELLING_CHROMA)
    apart = rise(np.asarray(delta_e_2000(lab, np.array(mean_lab))), *TELLING_DELTA_E)
    return strong * apart


def _sparing(
    targets: Sequence[Target], art_lab: Float64Array, art_share: Float64Array
) -> Float64Array:
    """Return 1 for colours that the picture uses sparingly, falling to 0, shape (m,).

    A region's colour may be found all over the picture: all that is like it counts.
    """
    lab = np.array([target.lab for target in targets], dtype=np.float64)
    like = 1.0 - rise(np.asarray(delta_e_2000_matrix(lab, art_lab)), *LIKE_DELTA_E)
    share = np.maximum([target.share for target in targets], like @ art_share)
    return 1.0 - rise(share, *SPARING_SHARE)


def _palette(colours: Sequence[ColourShare]) -> tuple[Float64Array, Float64Array]:
    lab = np.array([colour.lab for colour in colours], dtype=np.float64).reshape(-1, 3)
    share = np.array([max(colour.share, 0.0) for colour in colours], dtype=np.float64)
    total = share.sum()
    return lab, share / total if total > 0 else np.full(len(share), 1 / max(len(share), 1))


def _focus_colours(focus: Sequence[RegionFinding]) -> list[tuple[Lab, float]]:
    """Return the colours and accents of the focus with their shares of the picture."""
    levels = [(c.lab, c.share * region.share) for region in focus for c in region.colours]
    return levels + [(a.lab, a.share) for region in focus for a in region.accents]


def _upper(values: Sequence[float], levels: Sequence[tuple[Lab, float]]) -> float:
    """Return the value that nine tenths of the focus, by area, stay under."""
    order = np.argsort(values)
    share = np.array([levels[index][1] for index in order])
    reached = np.cumsum(share) >= 0.9 * share.sum() - 1e-12
    return float(np.asarray(values)[order][int(np.argmax(reached))])


def _textures(findings: Findings, focus: RegionFinding) -> tuple[Texture, ...]:
    candidates = (focus.texture, findings.whole.texture, *findings.loose_textures)
    return tuple(one for one in candidates if not all(map(isnan, one.lightness_contrast)))


def _softness(levels: Sequence[tuple[Lab, float]], texture: Texture) -> float:
    """Return how soft the subject is: quiet steps among its colours, and in its fine texture."""
    lab, share = np.array([lab for lab, _ in levels]), np.array([part for _, part in levels])
    share = share / share.sum()
    spread = np.sqrt(share @ (lab - share @ lab) ** 2)
    steps = float(np.hypot(spread[0] / HARD_STEP_L, np.hypot(*spread[1:]) / HARD_STEP_AB))
    broad = 1.0 - min(1.0, steps)
    bands = [band for band in texture.lightness_contrast[:3] if not isnan(band)]
    if not bands:
        return broad
    fine = 1.0 - min(1.0, sum(bands) / len(bands) / HARD_CONTRAST)
    return 0.6 * broad + 0.4 * fine
