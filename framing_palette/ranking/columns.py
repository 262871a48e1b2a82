"""A catalogue as columns: what the measures need of all samples, side by side.

A catalogue that is kept as arrays on disk is read straight from them; its samples are made only
when someone looks at them.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from math import nan

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import BoolArray, Float64Array
from framing_palette.catalogue import Catalogue, Finish, Kind, Sample, Surface
from framing_palette.catalogue.columns import CatalogueColumns, LazySamples
from framing_palette.picture import TEXTURE_MEASURES, Texture, texture_vector

SOFTNESS_OF_SURFACE: Mapping[Surface, float] = {
    # 0 hard and crisp, 1 soft; common practice, no published scale exists
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
GLITTER_OF_FINISH: Mapping[Finish, float] = {
    Finish.MATT: 0.0,
    Finish.SATIN: 0.1,
    Finish.GLOSS: 0.35,
    Finish.METALLIC: 0.6,
}
GLITTER_OF_SURFACE: Mapping[Surface, float] = {
    Surface.LEAF: 0.5,
    Surface.BRUSHED_METAL: 0.5,
    Surface.SILK: 0.2,
}
SHINE_HARDENS = 0.5  # softness lost to a full shine
SPARKLE_GLITTERS = 8.0  # glitter for each part of light points in a measured surface
TELLING_SHARE = 0.25  # of a sample: enough for a colour to carry its family
_UNKNOWN = 255
_REMEMBERED = 4


@dataclass(frozen=True, slots=True, eq=False)
class SampleColumns:
    """The samples of a catalogue as arrays; n samples with k colours in all.

    Parameters
    ----------
    samples
        Where the samples themselves are found.
    place
        Shape (n,): the place of each in ``samples``; those without a colour cannot be judged and
        are left out.
    lab, share
        Shapes (k, 3) and (k,): Lab D50 and shares, one sample's colours after another's.
    start
        Shape (n,), where each sample's colours begin.
    mean_lab
        Shape (n, 3).
    kind
        Shape (n,): the place in the enumeration.
    softness
        Shape (n,), 0 hard to 1 soft; nan when the surface is unknown.
    glitter
        Shape (n,), 0 matt to 1 glittering; 0 when nothing is known.
    textures, texture_of
        Shapes (t, numbers), rows of ``texture_vector``, and (n,): the row of each sample, -1 when
        its texture is unknown.
    """

    samples: Sequence[Sample]
    place: NDArray[np.intp]
    lab: Float64Array
    share: Float64Array
    start: NDArray[np.intp]
    mean_lab: Float64Array
    kind: NDArray[np.uint8]
    softness: Float64Array
    glitter: Float64Array
    textures: Float64Array
    texture_of: NDArray[np.int32]

    def __len__(self) -> int:
        """Return the number of samples."""
        return len(self.place)

    def sample(self, index: int) -> Sample:
        """Return the sample of a row."""
        return self.samples[int(self.place[index])]

    @property
    def counts(self) -> NDArray[np.intp]:
        """How many colours each sample has, shape (n,)."""
        return np.diff(np.append(self.start, len(self.lab)))

    def per_sample(self, per_colour: Float64Array) -> Float64Array:
        """Return the share-weighted mean over each sample's colours, shape (n,)."""
        return _reduced(np.add, per_colour * self.share, self.start)

    def felt(self, per_colour: Float64Array) -> Float64Array:
        """Return the root of the share-weighted mean square over each sample's colours, shape (n,).

        A part that is strong is felt beyond its share: a third of full strength counts 0.58.
        """
        return np.sqrt(self.per_sample(per_colour * per_colour))

    def strongest(self, per_colour: Float64Array) -> Float64Array:
        """Return the highest value that a telling part of each sample has, shape (n,).

        A colour counts in full from ``TELLING_SHARE`` of the sample on.
        """
        weighed = per_colour * np.minimum(1.0, self.share / TELLING_SHARE)
        return _reduced(np.maximum, weighed, self.start)

    def least(self, per_colour: Float64Array) -> Float64Array:
        """Return the lowest value among each sample's colours, shape (n,)."""
        return _reduced(np.minimum, per_colour, self.start)

    def only(self, mask: BoolArray) -> "SampleColumns":
        """Return the samples of a mask of shape (n,)."""
        return self if mask.all() else self.at(np.flatnonzero(mask))

    def at(self, rows: NDArray[np.intp]) -> "SampleColumns":
        """Return the samples of some rows, in their order."""
        counts = self.counts[rows]
        start = _starts(counts)
        colours = np.repeat(self.start[rows] - start, counts) + np.arange(counts.sum())
        return self._of(rows, colours, start)

    def block(self, first: int, last: int) -> "SampleColumns":
        """Return the samples from ``first`` up to and without ``last``, as views."""
        rows = slice(first, last)
        end = int(self.start[last]) if last < len(self) else len(self.lab)
        begin = int(self.start[first])
        return self._of(rows, slice(begin, end), self.start[rows] - begin)

    def _of(
        self,
        rows: slice | NDArray[np.intp],
        colours: slice | NDArray[np.intp],
        start: NDArray[np.intp],
    ) -> "SampleColumns":
        return SampleColumns(
            samples=self.samples,
            place=self.place[rows],
            lab=self.lab[colours],
            share=self.share[colours],
            start=start,
            mean_lab=self.mean_lab[rows],
            kind=self.kind[rows],
            softness=self.softness[rows],
            glitter=self.glitter[rows],
            textures=self.textures,
            texture_of=self.texture_of[rows],
        )


_recent: list[tuple[Sequence[Sample], SampleColumns]] = []


def columns_of(
    source: Catalogue | Sequence[Sample] | SampleColumns, kinds: Sequence[Kind] | None = None
) -> SampleColumns:
    """Return the columns of a catalogue or of samples; the last few catalogues are remembered.

    Parameters
    ----------
    source
        A catalogue, samples, or columns already made (returned as they are).
    kinds
        Only these kinds; all when None.
    """
    columns = source if isinstance(source, SampleColumns) else _remembered(source)
    if kinds is None:
        return columns
    wanted = [tuple(Kind).index(kind) for kind in kinds]
    return columns.only(np.isin(columns.kind, wanted))


def _remembered(source: Catalogue | Sequence[Sample]) -> SampleColumns:
    samples = source.samples if isinstance(source, Catalogue) else source
    for known, columns in _recent:
        if known is samples:
            return columns
    if isinstance(samples, LazySamples):
        columns = _from_arrays(samples, samples.columns)
    else:
        columns = _from_samples(samples)
    if not isinstance(samples, list):  # a list may change under our hands
        _recent.insert(0, (samples, columns))
        del _recent[_REMEMBERED:]
    return columns


def _from_arrays(samples: LazySamples, kept: CatalogueColumns) -> SampleColumns:
    return _columns(
        samples=samples,
        lab=np.asarray(kept.lab),
        share=np.asarray(kept.share),
        counts=np.diff(np.asarray(kept.colour_start)).astype(np.intp),
        words=(np.asarray(kept.kind), np.asarray(kept.surface), np.asarray(kept.finish)),
        textures=np.asarray(kept.textures),
        texture_of=np.asarray(kept.texture_of),
    )


def _from_samples(samples: Sequence[Sample]) -> SampleColumns:
    flat = [(*colour.lab, colour.share) for sample in samples for colour in sample.colours]
    table = np.array(flat, dtype=np.float64).reshape(-1, 4)
    textures: dict[Texture, int] = {}
    texture_of = [
        -1 if sample.texture is None else textures.setdefault(sample.texture, len(textures))
        for sample in samples
    ]
    rows = [texture_vector(texture) for texture in textures]
    return _columns(
        samples=samples,
        lab=np.ascontiguousarray(table[:, :3]),
        share=table[:, 3],
        counts=np.array([len(sample.colours) for sample in samples], dtype=np.intp),
        words=(
            _places([sample.kind for sample in samples], tuple(Kind)),
            _places([sample.surface for sample in samples], tuple(Surface)),
            _places([sample.finish for sample in samples], tuple(Finish)),
        ),
        textures=np.array(rows, dtype=np.float64).reshape(-1, len(TEXTURE_MEASURES)),
        texture_of=np.array(texture_of, dtype=np.int32),
    )


def _columns(
    *,
    samples: Sequence[Sample],
    lab: Float64Array,
    share: Float64Array,
    counts: NDArray[np.intp],
    words: tuple[NDArray[np.uint8], NDArray[np.uint8], NDArray[np.uint8]],
    textures: Float64Array,
    texture_of: NDArray[np.int32],
) -> SampleColumns:
    """Return the columns of those samples that have a colour."""
    has = counts > 0
    counts = counts[has]
    start = _starts(counts)
    share = _normalised(np.maximum(share, 0.0), start, counts)
    kind, surface, finish = (word[has] for word in words)
    shine = _looked_up(GLITTER_OF_FINISH, finish, tuple(Finish), unknown=0.0)
    hard = SHINE_HARDENS * shine
    soft = _looked_up(SOFTNESS_OF_SURFACE, surface, tuple(Surface), unknown=nan)
    own = _looked_up(GLITTER_OF_SURFACE, surface, tuple(Surface), unknown=0.0)
    texture_of = texture_of[has]
    sparkle = np.nan_to_num(np.append(textures[:, TEXTURE_MEASURES.index("sparkle")], 0.0))
    measured = np.minimum(1.0, SPARKLE_GLITTERS * sparkle[texture_of])  # -1 is the last: unknown
    return SampleColumns(
        samples=samples,
        place=np.flatnonzero(has),
        lab=lab,
        share=share,
        start=start,
        mean_lab=_reduced(np.add, lab * share[:, None], start),
        kind=kind,
        softness=np.maximum(0.0, soft - hard),
        glitter=np.maximum(np.maximum(shine, own), measured),
        textures=textures,
        texture_of=texture_of,
    )


def _starts(counts: NDArray[np.intp]) -> NDArray[np.intp]:
    return (np.cumsum(counts) - counts).astype(np.intp)


def _reduced(how: np.ufunc, per_colour: Float64Array, start: NDArray[np.intp]) -> Float64Array:
    if not len(start):
        return np.zeros((0, *per_colour.shape[1:]))
    return np.asarray(how.reduceat(per_colour, start))


def _normalised(
    share: Float64Array, start: NDArray[np.intp], counts: NDArray[np.intp]
) -> Float64Array:
    """Return shares that add up to one within each sample; equal ones when all are zero."""
    total = np.repeat(_reduced(np.add, share, start), counts)
    equal = 1.0 / np.repeat(counts, counts)
    return np.where(total > 0, share / np.where(total > 0, total, 1.0), equal)


def _places(values: Sequence[Enum | None], words: tuple[Enum, ...]) -> NDArray[np.uint8]:
    place = {word: index for index, word in enumerate(words)}
    return np.array(
        [_UNKNOWN if value is None else place[value] for value in values], dtype=np.uint8
    )


def _looked_up(
    table: Mapping[Surface, float] | Mapping[Finish, float],
    places: NDArray[np.uint8],
    words: tuple[Surface, ...] | tuple[Finish, ...],
    *,
    unknown: float,
) -> Float64Array:
    """Return a number for each word; words without one count as nothing, unknown ones as told."""
    numbers = np.zeros(_UNKNOWN + 1)
    for index, word in enumerate(words):
        numbers[index] = table.get(word, 0.0)  # type: ignore[call-overload]  # one of the two
    numbers[_UNKNOWN] = unknown
    return np.asarray(numbers[places])
