"""Measuring: every measure of every sample of a catalogue against one picture, at once."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float64Array
from framing_palette.colour import delta_e_2000, harmony
from framing_palette.picture import Role
from framing_palette.ranking.columns import SampleColumns
from framing_palette.ranking.echo import closeness, kinship_with_telling
from framing_palette.ranking.kinship import kinships
from framing_palette.ranking.near_miss import hue_presence, near_miss, stray
from framing_palette.ranking.pull import (
    brightness,
    overpowering,
    pull,
    strong_chroma,
    vividness,
)
from framing_palette.ranking.rule import Limits
from framing_palette.ranking.separation import foil, separation
from framing_palette.ranking.subjects import Subject
from framing_palette.ranking.surfaces import softness_agreement, texture_affinity
from framing_palette.ranking.warmth import warmth_mismatch


@dataclass(frozen=True, slots=True, eq=False)
class MeasureColumns:
    """The measures of n samples, each of shape (n,); ranges as in :class:`Measures`."""

    echo: Float64Array
    echo_target: NDArray[np.intp]
    echo_delta_e: Float64Array
    kin: Float64Array
    kin_target: NDArray[np.intp]
    cover: Float64Array
    separation_delta_e: Float64Array
    separation_lightness: Float64Array
    separation_chroma: Float64Array
    separation_hue: Float64Array
    pull: Float64Array
    vividness: Float64Array
    overpowering: Float64Array
    brightness: Float64Array
    chroma_excess: Float64Array
    warmth: Float64Array
    near_miss: Float64Array
    near_miss_target: NDArray[np.intp]
    stray: Float64Array
    harmony: Float64Array
    texture: Float64Array
    softness: Float64Array
    glitter: Float64Array
    depth: Float64Array
    foil: Float64Array


@dataclass(slots=True)
class _Kin:
    """What the kinship of all colours gives, filled block by block."""

    echo: Float64Array
    echo_target: NDArray[np.intp]
    near_miss: Float64Array
    near_miss_target: NDArray[np.intp]
    stray: Float64Array
    telling: Float64Array
    telling_target: NDArray[np.intp]
    cover: Float64Array


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
    kin = _kin(columns, subject, limits)
    lead = _leading_colour(columns, kin.echo)
    targets = kin.echo_target[lead]
    apart = separation(columns, subject)
    lab, mean = columns.lab, columns.per_sample
    chroma = np.hypot(lab[:, 1], lab[:, 2])
    return MeasureColumns(
        echo=mean(kin.echo),
        echo_target=targets,
        echo_delta_e=np.asarray(delta_e_2000(lab[lead], subject.target_lab[targets])),
        kin=columns.strongest(kin.telling),
        kin_target=kin.telling_target[_leading_colour(columns, kin.telling)],
        cover=kin.cover,
        separation_delta_e=apart.delta_e,
        separation_lightness=apart.lightness,
        separation_chroma=apart.chroma,
        separation_hue=apart.hue,
        pull=mean(pull(lab, subject)),
        vividness=mean(vividness(lab, subject, limits)),
        overpowering=mean(overpowering(lab, subject, limits)),
        brightness=mean(brightness(lab, subject, limits)),
        chroma_excess=mean(np.maximum(chroma - subject.art_chroma, 0.0)),
        warmth=mean(warmth_mismatch(lab, subject, limits)),
        near_miss=mean(kin.near_miss),
        near_miss_target=kin.near_miss_target[_leading_colour(columns, kin.near_miss)],
        stray=mean(kin.stray),
        harmony=mean(_harmony_with_art(lab, subject)),
        texture=texture_affinity(columns, subject, width_mm),
        softness=softness_agreement(columns, subject),
        glitter=columns.glitter,
        foil=mean(foil(lab, subject)),
        depth=1.0 - np.clip(columns.mean_lab[:, 0] / 100.0, 0.0, 1.0),
    )


def _kin(columns: SampleColumns, subject: Subject, limits: Limits) -> _Kin:
    count, importance = len(columns.lab), subject.target_importance
    kin = _Kin(
        echo=np.empty(count),
        echo_target=np.empty(count, dtype=np.intp),
        near_miss=np.empty(count),
        near_miss_target=np.empty(count, dtype=np.intp),
        stray=np.empty(count),
        telling=np.empty(count),
        telling_target=np.empty(count, dtype=np.intp),
        cover=np.empty(len(columns)),
    )
    level = strong_chroma(subject, limits)
    spread = np.sqrt(subject.art_share)  # small colours count for more than their area
    spread = spread / spread.sum()
    whole = np.array([target.role is Role.WHOLE for target in subject.targets])
    for samples, rows, kinship in kinships(columns, subject):
        close = closeness(kinship, limits)
        weighed = close * importance
        kin.echo_target[rows] = weighed.argmax(axis=1)
        kin.echo[rows] = np.minimum(weighed.max(axis=1), 1.0)
        presence = hue_presence(kinship, importance)
        missed = near_miss(kinship, presence, importance, limits)
        kin.near_miss_target[rows] = missed.argmax(axis=1)
        kin.near_miss[rows] = missed.max(axis=1)
        kin.stray[rows] = stray(kinship, presence, level)
        telling = kinship_with_telling(kinship, subject)
        kin.telling_target[rows] = telling.argmax(axis=1)
        kin.telling[rows] = telling.max(axis=1)
        best = np.maximum.reduceat(close[:, whole], columns.start[samples] - rows.start, axis=0)
        kin.cover[samples] = best @ spread
    return kin


def _leading_colour(columns: SampleColumns, value: Float64Array) -> NDArray[np.intp]:
    """Return, for each sample, which of its colours counts most by value times share."""
    if not len(columns):
        return np.zeros(0, dtype=np.intp)
    weighed = value * columns.share
    best = np.maximum.reduceat(weighed, columns.start)
    counts = np.diff(np.append(columns.start, len(columns.lab)))
    owner = np.repeat(np.arange(len(columns)), counts)
    places = np.flatnonzero(weighed == best[owner])
    first = np.unique(owner[places], return_index=True)[1]
    return places[first]


def _harmony_with_art(lab: Float64Array, subject: Subject) -> Float64Array:
    pairs = np.asarray(harmony(lab[:, None, :], subject.art_lab[None, :, :]))
    return pairs @ subject.art_share
