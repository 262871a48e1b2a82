"""Measuring: every measure of every sample of a catalogue against one picture, at once.

A catalogue is worked through in blocks that fit the processor's cache, on every core; numpy lets
other threads run while it computes.
"""

import os
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float64Array
from framing_palette.colour import delta_e_2000, harmony
from framing_palette.ranking.columns import SampleColumns
from framing_palette.ranking.echo import closeness, family_degree
from framing_palette.ranking.kinship import Kinship, kinship
from framing_palette.ranking.near_miss import hue_presence, may_be_missed, near_miss, stray
from framing_palette.ranking.pull import (
    brightness,
    overpowering,
    pull,
    strong_chroma,
    vividness,
)
from framing_palette.ranking.ramps import rise
from framing_palette.ranking.rule import Limits
from framing_palette.ranking.separation import foil, plainness, separation
from framing_palette.ranking.subjects import Subject
from framing_palette.ranking.surfaces import softness_agreement, texture_affinity
from framing_palette.ranking.warmth import warmth_mismatch

BLOCK = 1024  # samples at once: their matrices stay in the cache
STRAY_LEVEL = (
    0.85  # of the usual strong chroma: a hue that is nowhere in the picture stands out soon
)
REPEATS = 0.5  # a colour of a sample that repeats one of the picture so well is counted as a repeat
NO_REPEAT = 0.1  # what a colour that repeats none counts when a sample's leading repeat is sought
HUE_CHROMA = (6.0, 16.0)  # C*ab between which a sample's colour comes to have a hue of its own
GLOW = (10.0, 40.0)  # L* above the mean of the art between which a colour comes to glow in it
LIGHTNESS_ALONE = np.array([1.0, 0.0, 0.0])
_MOST_THREADS = 8


@dataclass(frozen=True, slots=True, eq=False)
class MeasureColumns:
    """The measures of n samples, each of shape (n,); ranges as in :class:`Measures`.

    ``echo_target``, ``kin_target`` and ``near_miss_target`` are places among the subject's
    targets, ``echo_colour`` and ``stray_colour`` those among the sample's own;
    ``depth`` is darkness, 0 white to 1 black.
    """

    echo: Float64Array
    echo_target: NDArray[np.intp]
    echo_colour: NDArray[np.intp]
    echo_delta_e: Float64Array
    kin: Float64Array
    kin_target: NDArray[np.intp]
    meaning: Float64Array
    repeated: Float64Array
    own_hue: Float64Array
    cover: Float64Array
    separation_delta_e: Float64Array
    separation_lightness: Float64Array
    separation_chroma: Float64Array
    separation_hue: Float64Array
    settling: Float64Array
    pull: Float64Array
    neutral_pull: Float64Array
    vividness: Float64Array
    overpowering: Float64Array
    brightness: Float64Array
    chroma_excess: Float64Array
    warmth: Float64Array
    near_miss: Float64Array
    near_miss_target: NDArray[np.intp]
    stray: Float64Array
    stray_colour: NDArray[np.intp]
    harmony: Float64Array
    least_harmony: Float64Array
    texture: Float64Array
    softness: Float64Array
    glitter: Float64Array
    depth: Float64Array
    foil: Float64Array
    plain: Float64Array


def measure(
    columns: SampleColumns, subject: Subject, limits: Limits, width_mm: float | None = None
) -> MeasureColumns:
    """Return all measures of all samples.

    Parameters
    ----------
    columns
        The catalogue.
    subject
        The picture.
    limits
        The rule's limits.
    width_mm
        Visible width of the border; a pattern coarser than it cannot be seen.
    """
    texture = texture_affinity(columns, subject, width_mm)

    def measured(first: int) -> MeasureColumns:
        last = min(first + BLOCK, len(columns))
        return _measured(columns.block(first, last), subject, limits, texture[first:last])

    firsts = range(0, len(columns), BLOCK)
    if len(firsts) <= 1:
        return _measured(columns, subject, limits, texture)
    with ThreadPoolExecutor(min(_MOST_THREADS, os.cpu_count() or 1)) as pool:
        parts = list(pool.map(measured, firsts))
    names = [field.name for field in fields(MeasureColumns)]
    joined = {name: np.concatenate([getattr(part, name) for part in parts]) for name in names}
    return MeasureColumns(**joined)


def _measured(
    columns: SampleColumns, subject: Subject, limits: Limits, texture: Float64Array
) -> MeasureColumns:
    lab, mean, importance = columns.lab, columns.per_sample, subject.target_importance
    chroma = np.hypot(lab[:, 1], lab[:, 2])
    kin = kinship(lab, subject.target_lab)
    close = closeness(kin, limits)
    echo = np.minimum(close * importance, 1.0)
    family = family_degree(kin, subject)
    telling = family * subject.target_telling
    presence = hue_presence(kin, importance)
    strayed = _stray(kin, presence, subject, limits)
    strong = np.flatnonzero(may_be_missed(kin, limits))
    missed = near_miss(kin.among(strong), presence, importance[strong], limits)
    apart = separation(columns, subject)
    neutral = foil(lab, subject)
    together = np.asarray(harmony(lab[:, None, :], subject.art_lab))
    best = echo.max(axis=1)
    repeats = best >= REPEATS
    echo_lead, echo_target = _lead(columns, echo * np.where(repeats, 1.0, NO_REPEAT)[:, None])
    return MeasureColumns(
        echo=columns.felt(best),
        echo_target=echo_target,
        echo_colour=echo_lead - columns.start,
        echo_delta_e=np.asarray(delta_e_2000(lab[echo_lead], subject.target_lab[echo_target])),
        kin=columns.strongest(telling.max(axis=1)),
        kin_target=_lead(columns, telling)[1],
        meaning=columns.strongest(_meaning(lab, family, subject)),
        repeated=mean(repeats.astype(np.float64)),
        own_hue=columns.felt(presence * rise(chroma, *HUE_CHROMA)),
        cover=_cover(columns, subject, close),
        separation_delta_e=apart.delta_e,
        settling=apart.settling,
        separation_lightness=apart.lightness,
        separation_chroma=apart.chroma,
        separation_hue=apart.hue,
        pull=mean(pull(lab, subject)),
        neutral_pull=mean(pull(lab * LIGHTNESS_ALONE, subject)),
        vividness=mean(vividness(lab, subject, limits)),
        overpowering=columns.felt(overpowering(lab, subject, limits)),
        brightness=mean(brightness(lab, subject, limits)),
        chroma_excess=mean(np.maximum(chroma - subject.art_chroma, 0.0)),
        warmth=mean(warmth_mismatch(lab, presence, subject, limits)),
        near_miss=columns.felt(missed.max(axis=1, initial=0.0)),
        near_miss_target=np.append(strong, 0)[_lead(columns, missed)[1]],
        stray=columns.felt(strayed),
        stray_colour=_lead(columns, strayed[:, None])[0] - columns.start,
        harmony=mean(together @ subject.art_share),
        least_harmony=columns.least(together.min(axis=1)),
        texture=texture,
        softness=softness_agreement(columns, subject),
        glitter=columns.glitter,
        depth=1.0 - np.clip(columns.mean_lab[:, 0] / 100.0, 0.0, 1.0),
        foil=mean(neutral),
        plain=mean(neutral * plainness(lab)),
    )


def _meaning(lab: Float64Array, family: Float64Array, subject: Subject) -> Float64Array:
    """Return how surely each colour repeats one that is used with meaning, 0..1, shape (k,).

    Repeated as a light in a dark picture it outshines what it repeats, and counts no more.
    """
    glow = rise(lab[:, 0] - subject.mean_lab[0], *GLOW)
    return np.asarray((family * subject.target_meaning).max(axis=1, initial=0.0) * (1.0 - glow))


def _stray(kin: Kinship, presence: Float64Array, subject: Subject, limits: Limits) -> Float64Array:
    level = min(strong_chroma(subject, limits), STRAY_LEVEL * limits.strong_chroma)
    return stray(kin, presence, level)


def _cover(columns: SampleColumns, subject: Subject, close: Float64Array) -> Float64Array:
    """Return how much of the picture's palette each sample repeats, 0..1, shape (n,).

    Small colours count for more than their area: by the square root of their share.
    """
    if not len(columns):
        return np.zeros(0)
    spread = np.sqrt(subject.art_share)
    best = np.maximum.reduceat(close[:, subject.art_target], columns.start, axis=0)
    return np.asarray((best * (spread / spread.sum())).sum(axis=1))


def _lead(columns: SampleColumns, value: Float64Array) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return, for each sample, which of its colours leads by value times share, and its target."""
    if not len(columns):
        return np.zeros(0, dtype=np.intp), np.zeros(0, dtype=np.intp)
    if not value.shape[1]:
        return columns.start, np.zeros(len(columns), dtype=np.intp)
    weighed = value.max(axis=1) * columns.share
    best = np.repeat(np.maximum.reduceat(weighed, columns.start), columns.counts)
    places = np.flatnonzero(weighed == best)
    owner = np.repeat(np.arange(len(columns)), columns.counts)[places]
    lead = places[np.unique(owner, return_index=True)[1]]
    return lead, value[lead].argmax(axis=1)
