"""A catalogue as columns: the numbers of all samples side by side, for whole-array measures."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.catalogue import Catalogue, Finish, Sample, Surface
from framing_palette.picture import Texture

SOFTNESS_OF_SURFACE = {  # 0 hard and crisp, 1 soft; common practice, no published scale exists
    Surface.SMOOTH: 0.5,
    Surface.LINEN: 0.65,
    Surface.SUEDE: 1.0,
    Surface.SILK: 0.6,
    Surface.MOTTLED: 0.6,
    Surface.LEAF: 0.2,
    Surface.BRUSHED_METAL: 0.0,
    Surface.PLAIN_WOOD: 0.4,
    Surface.DISTRESSED_WOOD: 0.35,
}
GLITTER_OF_FINISH = {Finish.MATT: 0.0, Finish.SATIN: 0.1, Finish.GLOSS: 0.35, Finish.METALLIC: 0.6}
GLITTER_OF_SURFACE = {Surface.LEAF: 0.5, Surface.BRUSHED_METAL: 0.5, Surface.SILK: 0.2}
TELLING_SHARE = 0.25  # of a sample: enough for a colour to carry its family
_REMEMBERED = 4


@dataclass(frozen=True, slots=True, eq=False)
class SampleColumns:
    """The samples of a catalogue as arrays; n samples with k colours in all.

    Parameters
    ----------
    samples
        The samples, those without any colour left out: they cannot be judged.
    lab
        Shape (k, 3), Lab D50, the colours of all samples one after another.
    share
        Shape (k,), adding up to one within each sample.
    start
        Shape (n,), where each sample's colours begin.
    mean_lab
        Shape (n, 3).
    softness
        Shape (n,), 0 hard to 1 soft; nan when the surface is unknown.
    glitter
        Shape (n,), 0 matt to 1 glittering; 0 when nothing is known.
    """

    samples: tuple[Sample, ...]
    lab: Float64Array
    share: Float64Array
    start: "np.typing.NDArray[np.intp]"
    mean_lab: Float64Array
    softness: Float64Array
    glitter: Float64Array
    textured: BoolArray

    def __len__(self) -> int:
        """Return the number of samples."""
        return len(self.samples)

    def per_sample(self, per_colour: Float64Array) -> Float64Array:
        """Return the share-weighted mean over each sample's colours, shape (n,)."""
        if not len(self):
            return np.zeros(0)
        return np.add.reduceat(per_colour * self.share, self.start)

    def strongest(self, per_colour: Float64Array) -> Float64Array:
        """Return the highest value that a telling part of each sample has, shape (n,).

        A colour counts in full from ``TELLING_SHARE`` of the sample on.
        """
        if not len(self):
            return np.zeros(0)
        weighed = per_colour * np.minimum(1.0, self.share / TELLING_SHARE)
        return np.maximum.reduceat(weighed, self.start)


_recent: list[tuple[Sequence[Sample], SampleColumns]] = []


def columns_of(source: "Catalogue | Sequence[Sample] | SampleColumns") -> SampleColumns:
    """Return the columns of a catalogue or of samples; the last few catalogues are remembered.

    Parameters
    ----------
    source
        A catalogue, samples, or columns already made (returned as they are).
    """
    if isinstance(source, SampleColumns):
        return source
    samples = source.samples if isinstance(source, Catalogue) else tuple(source)
    for known, columns in _recent:
        if known is samples:
            return columns
    columns = _build(samples)
    _recent.insert(0, (samples, columns))
    del _recent[_REMEMBERED:]
    return columns


def sparkle_of(texture: Texture | None) -> float:
    """Return a measured texture's share of light points as 0..1 glitter."""
    return 0.0 if texture is None else min(1.0, 8.0 * texture.sparkle)


def _build(samples: Sequence[Sample]) -> SampleColumns:
    kept = tuple(sample for sample in samples if sample.colours)
    counts = np.array([len(sample.colours) for sample in kept], dtype=np.intp)
    flat = [(*colour.lab, colour.share) for sample in kept for colour in sample.colours]
    table = np.array(flat, dtype=np.float64).reshape(-1, 4)
    start = np.concatenate(([0], np.cumsum(counts)[:-1])).astype(np.intp)[: len(kept)]
    share = _normalised(np.maximum(table[:, 3], 0.0), start, counts)
    lab = np.ascontiguousarray(table[:, :3])
    mean = np.add.reduceat(lab * share[:, None], start) if kept else np.zeros((0, 3))
    return SampleColumns(
        samples=kept,
        lab=lab,
        share=share,
        start=start,
        mean_lab=mean,
        softness=np.array([_softness(sample) for sample in kept], dtype=np.float64),
        glitter=np.array([_glitter(sample) for sample in kept], dtype=np.float64),
        textured=np.array([_has_texture(sample) for sample in kept], dtype=np.bool_),
    )


def _normalised(
    share: Float64Array,
    start: "np.typing.NDArray[np.intp]",
    counts: "np.typing.NDArray[np.intp]",
) -> Float64Array:
    """Return shares that add up to one within each sample; equal ones when all are zero."""
    if not len(start):
        return share
    total = np.repeat(np.add.reduceat(share, start), counts)
    return np.where(
        total > 0, share / np.where(total > 0, total, 1.0), 1 / np.repeat(counts, counts)
    )


def _softness(sample: Sample) -> float:
    if sample.surface is None:
        return float("nan")
    shine = GLITTER_OF_FINISH[sample.finish] if sample.finish else 0.0
    return max(0.0, SOFTNESS_OF_SURFACE[sample.surface] - 0.5 * shine)


def _glitter(sample: Sample) -> float:
    finish = GLITTER_OF_FINISH[sample.finish] if sample.finish else 0.0
    surface = GLITTER_OF_SURFACE.get(sample.surface, 0.0) if sample.surface else 0.0
    return max(finish, surface, sparkle_of(sample.texture))


def _has_texture(sample: Sample) -> bool:
    return sample.texture is not None and sample.texture.mm_per_px is not None
