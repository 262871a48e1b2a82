"""Strip reading: what a strip lies next to, in a word, while it slides over the picture.

Everything that does not depend on where the strip lies is made once per picture; a reading then
takes a millisecond or two. The judgement is the ranking's own, with the colours along the strip's
edge in the place of the rim.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array
from framing_palette.catalogue import Sample
from framing_palette.picture import Findings, PaletteColour, Picture
from framing_palette.picture.places import Spot, spots
from framing_palette.picture.resampling import shrunk
from framing_palette.ranking.columns import SampleColumns, columns_of
from framing_palette.ranking.echo import closeness
from framing_palette.ranking.judging import judge
from framing_palette.ranking.kinship import kinship
from framing_palette.ranking.measuring import measure
from framing_palette.ranking.rule import HOUSE_RULE, Rule
from framing_palette.ranking.strips import Strip, outline_mm
from framing_palette.ranking.subjects import Subject, Target, subject_of
from framing_palette.ranking.verdicts import Verdict

READ_SIDE = 512
"""Longest side of the small picture that is read along the strip's edge."""

EDGE_DISTANCES_MM = (1.5, 4.0, 7.0)
"""How far outside its edge a strip is read."""

EDGE_SPACING_MM = 4.0
MOST_EDGE_POINTS = 240
MOST_ECHOES = 3
LEAST_CLOSENESS = 0.5
_SAME_FAMILY = 12.0


@dataclass(frozen=True, slots=True)
class RepeatedColour:
    """A colour of the picture that a sample repeats, and the spot where it is (0..1)."""

    lab: tuple[float, float, float]
    name: str
    spot: Spot
    closeness: float


@dataclass(frozen=True, slots=True)
class StripReading:
    """What a strip does where it lies.

    Parameters
    ----------
    verdict
        Blend: it settles; complement: it stands apart; clash: it fights. None while no part of
        the strip's edge lies on the picture.
    delta_e
        ΔE00 to the colours along its edge, weighted by their share.
    repeats
        The colours of the picture that it repeats, closest first.
    """

    verdict: Verdict | None
    delta_e: float
    repeats: tuple[RepeatedColour, ...]


@dataclass(frozen=True, slots=True, eq=False)
class StripReader:
    """A picture made ready for reading strips on it.

    Parameters
    ----------
    small_lab
        The picture at reading size, Lab D50.
    mm_per_px
        Its scale.
    palette_lab
        Shape (k, 3): the colours that an edge is sorted into.
    subject
        The picture as the ranking sees it.
    target_spots
        Where each of the subject's targets is.
    rule
        Limits and weights of the judgement.
    """

    small_lab: Float32Array
    mm_per_px: float
    palette_lab: Float64Array
    subject: Subject
    target_spots: tuple[Spot, ...]
    rule: Rule = HOUSE_RULE


def strip_reader(
    picture: Picture,
    findings: Findings,
    *,
    mm_per_px: float,
    rule: Rule = HOUSE_RULE,
) -> StripReader:
    """Return a picture made ready; takes some milliseconds, once per reading of the picture.

    Parameters
    ----------
    picture, findings
        The picture and what was found in it.
    mm_per_px
        Scale of the picture, or the nominal one that stands in while the true one is unknown.
    rule
        Limits and weights of the judgement.
    """
    small = shrunk(picture.lab_d50, READ_SIDE)
    subject = subject_of(findings)
    return StripReader(
        small_lab=small,
        mm_per_px=mm_per_px * picture.columns / small.shape[1],
        palette_lab=np.array([colour.lab for colour in findings.whole.colours]),
        subject=subject,
        target_spots=_target_spots(picture, findings, subject),
        rule=rule,
    )


def strip_columns(sample: Sample) -> SampleColumns:
    """Return a sample as the columns that readings need: its texture says nothing of a place."""
    return columns_of([replace(sample, texture=None)])


def read_strip(
    reader: StripReader,
    strip: Strip,
    columns: SampleColumns,
    repeats: tuple[RepeatedColour, ...] | None = None,
) -> StripReading:
    """Return what a strip of a sample does where it lies.

    Parameters
    ----------
    reader
        The picture made ready.
    strip
        Where the sample lies.
    columns
        The one sample, as :func:`strip_columns` gives it.
    repeats
        What :func:`repeated_colours` found before; they do not depend on where the strip lies.
    """
    if repeats is None:
        repeats = repeated_colours(reader, columns)
    touching = edge_colours(reader, strip)
    if not touching:
        return StripReading(None, float("nan"), repeats)
    lab = np.array([colour.lab for colour in touching])
    share = np.array([colour.share for colour in touching])
    subject = replace(reader.subject, rim_lab=lab, rim_share=share)
    measures = measure(columns, subject, reader.rule.limits, None)
    verdict = judge(measures, reader.rule).verdict(0)
    return StripReading(verdict, float(measures.separation_delta_e[0]), repeats)


def repeated_colours(reader: StripReader, columns: SampleColumns) -> tuple[RepeatedColour, ...]:
    """Return the colours of the picture that a sample repeats, closest first, three at most."""
    near = closeness(kinship(columns.lab, reader.subject.target_lab), reader.rule.limits)
    best = (near * columns.share[:, None] ** 0.5).max(axis=0) * reader.subject.target_importance
    found: list[RepeatedColour] = []
    for index in np.argsort(-best, kind="stable"):
        if best[index] < LEAST_CLOSENESS or len(found) == MOST_ECHOES:
            break
        target = reader.subject.targets[int(index)]
        if not _is_told(target, found):
            spot = reader.target_spots[int(index)]
            found.append(RepeatedColour(target.lab, target.name, spot, float(best[index])))
    return tuple(found)


def edge_colours(reader: StripReader, strip: Strip) -> tuple[PaletteColour, ...]:
    """Return the colours along the outside of a strip's edge with their shares.

    Empty when the edge lies wholly off the picture.
    """
    lab = _edge_pixels(reader, strip)
    if not len(lab):
        return ()
    distance = ((lab[:, None, :] - reader.palette_lab[None]) ** 2).sum(axis=-1)
    nearest = distance.argmin(axis=1)
    count = np.bincount(nearest, minlength=len(reader.palette_lab))
    sums = [np.bincount(nearest, lab[:, axis], len(reader.palette_lab)) for axis in range(3)]
    filled = np.flatnonzero(count)
    means = np.stack(sums, axis=1)[filled] / count[filled, None]
    shares = count[filled] / len(lab)
    return tuple(
        PaletteColour(lab=(float(mean[0]), float(mean[1]), float(mean[2])), share=float(share))
        for mean, share in zip(means, shares, strict=True)
    )


def _edge_pixels(reader: StripReader, strip: Strip) -> Float64Array:
    points = _edge_points_mm(strip) / reader.mm_per_px
    column, row = np.floor(points).astype(np.intp).T
    rows, columns = reader.small_lab.shape[:2]
    inside = (column >= 0) & (column < columns) & (row >= 0) & (row < rows)
    return np.asarray(reader.small_lab[row[inside], column[inside]], dtype=np.float64)


def _edge_points_mm(strip: Strip) -> Float64Array:
    corners = np.array(outline_mm(strip))
    ends = np.roll(corners, -1, axis=0)
    lengths = np.hypot(*(ends - corners).T)
    spacing = max(EDGE_SPACING_MM, lengths.sum() * len(EDGE_DISTANCES_MM) / MOST_EDGE_POINTS)
    points = []
    for start, end, length in zip(corners, ends, lengths, strict=True):
        along = (np.arange(max(1, int(length / spacing))) + 0.5) * spacing / max(length, 1e-9)
        on_edge = start + np.minimum(along, 1.0)[:, None] * (end - start)
        # The outline runs clockwise on the screen, so its outside is to the left of the way.
        outward = np.array([end[1] - start[1], start[0] - end[0]]) / max(length, 1e-9)
        points += [on_edge + outward * distance for distance in EDGE_DISTANCES_MM]
    return np.concatenate(points)


def _target_spots(picture: Picture, findings: Findings, subject: Subject) -> tuple[Spot, ...]:
    accents = {accent.lab: (accent.x, accent.y) for accent in findings.accents}
    found = spots(picture, [target.lab for target in subject.targets])
    return tuple(
        accents.get(target.lab, spot) if target.role is None else spot
        for target, spot in zip(subject.targets, found, strict=True)
    )


def _is_told(target: Target, found: Sequence[RepeatedColour]) -> bool:
    here = np.asarray(target.lab)
    return any(
        other.name == target.name or np.linalg.norm(here - np.asarray(other.lab)) < _SAME_FAMILY
        for other in found
    )
