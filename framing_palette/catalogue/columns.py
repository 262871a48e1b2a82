"""Columns: a whole catalogue as arrays, from which samples are made one by one when looked at.

A hundred thousand samples as Python values take seconds to build and half a gigabyte to hold; as
arrays they open at once, and straight from disk when they are memory-mapped.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields
from itertools import pairwise
from typing import Any, overload

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import SPECTRUM_LENGTH, Float32Array, Float64Array, UInt8Array
from framing_palette.catalogue.records import read_record, record_of, record_text, sample_of
from framing_palette.catalogue.samples import (
    Catalogue,
    Finish,
    Kind,
    Sample,
    SampleColour,
    SampleSequence,
    Surface,
)
from framing_palette.catalogue.texture_numbers import (
    texture_from_numbers,
    texture_names,
    texture_numbers,
)
from framing_palette.catalogue.wording import search_words

UNKNOWN_WORD = 255
TEXTURE_LENGTH = len(texture_names())
_KINDS, _SURFACES, _FINISHES = tuple(Kind), tuple(Surface), tuple(Finish)
_KEPT_SAMPLES = 4096


@dataclass(frozen=True, slots=True, eq=False)
class CatalogueColumns:
    """The facts of n samples with k colours in all, m of them with a reflectance.

    Parameters
    ----------
    records, record_start
        JSON lines of the samples without their colours, one after another, as bytes; shape (n+1,)
        where each begins.
    codes, code_start, words, word_start
        Likewise the codes, and the lower-case words that a text search looks in, each sample's
        ended by a line break so that no word runs into the next sample.
    lab, share, colour_start
        Shapes (k, 3), (k,) and (n+1,): the colours of sample i are those from colour_start[i] to
        colour_start[i+1].
    spectra, spectrum_of
        Shapes (m, 36) and (k,): the row of each colour in spectra, -1 for none.
    mean_lab
        Shape (n, 3), share-weighted; nan without colours.
    kind, surface, finish
        Shape (n,): the place in the enumeration, 255 when unknown.
    face_mm, price
        Shape (n,); nan when unknown.
    in_stock
        Shape (n,): 1, 0, or -1 when not told.
    textures, texture_of
        Shapes (t, TEXTURE_LENGTH), rows as of `texture_numbers`, and (n,): the row of each
        sample, -1 for none.
    """

    records: UInt8Array
    record_start: NDArray[np.int64]
    codes: UInt8Array
    code_start: NDArray[np.int64]
    words: UInt8Array
    word_start: NDArray[np.int64]
    lab: Float64Array
    share: Float64Array
    colour_start: NDArray[np.int64]
    spectra: Float64Array
    spectrum_of: NDArray[np.int32]
    mean_lab: Float32Array
    kind: UInt8Array
    surface: UInt8Array
    finish: UInt8Array
    face_mm: Float32Array
    price: Float64Array
    in_stock: NDArray[np.int8]
    textures: Float64Array
    texture_of: NDArray[np.int32]

    def __len__(self) -> int:
        """Return the number of samples."""
        return len(self.kind)

    def sample(self, place: int) -> Sample:
        """Return the sample at a place, made anew."""
        start, stop = self.record_start[place], self.record_start[place + 1]
        record = read_record(self.records[start:stop].tobytes())
        row = int(self.texture_of[place])
        texture = None if row < 0 else texture_from_numbers(self.textures[row].tolist())
        return sample_of(record, self._colours(place), texture)

    @property
    def texture(self) -> Float64Array:
        """The textures of all samples, shape (n, TEXTURE_LENGTH), nan rows where unknown."""
        rows = np.full((len(self), self.textures.shape[1]), np.nan)
        known = self.texture_of >= 0
        rows[known] = self.textures[self.texture_of[known]]
        return rows

    def code_list(self) -> list[str]:
        """Return all codes in order."""
        return _split(self.codes, self.code_start)

    def _colours(self, place: int) -> tuple[SampleColour, ...]:
        start, stop = int(self.colour_start[place]), int(self.colour_start[place + 1])
        return tuple(self._colour(place) for place in range(start, stop))

    def _colour(self, place: int) -> SampleColour:
        lightness, a, b = self.lab[place].tolist()
        row = int(self.spectrum_of[place])
        spectrum = None if row < 0 else tuple(self.spectra[row].tolist())
        return SampleColour((lightness, a, b), float(self.share[place]), spectrum)


class LazySamples(SampleSequence):
    """The samples of columns, each made when it is first looked at; a few thousand are kept."""

    def __init__(self, columns: CatalogueColumns) -> None:
        self.columns = columns
        self._codes: list[str] | None = None
        self._made: dict[int, Sample] = {}

    def __len__(self) -> int:
        """Return the number of samples."""
        return len(self.columns)

    @overload
    def __getitem__(self, place: int) -> Sample: ...

    @overload
    def __getitem__(self, place: slice) -> tuple[Sample, ...]: ...

    def __getitem__(self, place: int | slice) -> Sample | tuple[Sample, ...]:
        """Return the sample at a place, or those of a slice."""
        if isinstance(place, slice):
            return tuple(self[i] for i in range(*place.indices(len(self))))
        if not -len(self) <= place < len(self):
            raise IndexError(place)
        place %= len(self)
        if place not in self._made:
            if len(self._made) >= _KEPT_SAMPLES:
                self._made.clear()
            self._made[place] = self.columns.sample(place)
        return self._made[place]

    def __iter__(self) -> Iterator[Sample]:
        """Go through the samples without keeping them."""
        return (self.columns.sample(place) for place in range(len(self)))

    @property
    def codes(self) -> Sequence[str]:
        """All codes in order."""
        if self._codes is None:
            self._codes = self.columns.code_list()
        return self._codes


def columns_from(samples: Sequence[Sample]) -> CatalogueColumns:
    """Return samples as columns; columns that the samples were made from come back as they are."""
    if isinstance(samples, LazySamples):
        return samples.columns
    flat = [colour for sample in samples for colour in sample.colours]
    counts = [len(sample.colours) for sample in samples]
    colour_start = np.concatenate(([0], np.cumsum(counts, dtype=np.int64))).astype(np.int64)
    spectra = [colour.spectrum for colour in flat if colour.spectrum is not None]
    spectrum_of = _rows([colour.spectrum is not None for colour in flat])
    lab = np.array([colour.lab for colour in flat], dtype=np.float64).reshape(-1, 3)
    share = np.array([colour.share for colour in flat], dtype=np.float64)
    records, record_start = _joined(
        [record_text(record_of(sample, with_colours=False)) for sample in samples]
    )
    codes, code_start = _joined([sample.code for sample in samples])
    words, word_start = _joined([f"{search_words(sample)}\n" for sample in samples])
    return CatalogueColumns(
        records=records,
        record_start=record_start,
        codes=codes,
        code_start=code_start,
        words=words,
        word_start=word_start,
        lab=lab,
        share=share,
        colour_start=colour_start,
        spectra=np.array(spectra, dtype=np.float64).reshape(-1, SPECTRUM_LENGTH),
        spectrum_of=spectrum_of,
        mean_lab=_means(lab, share, colour_start),
        kind=_places([sample.kind for sample in samples], _KINDS),
        surface=_places([sample.surface for sample in samples], _SURFACES),
        finish=_places([sample.finish for sample in samples], _FINISHES),
        face_mm=np.array([_face_mm(sample) for sample in samples], dtype=np.float32),
        price=np.array([_price(sample) for sample in samples], dtype=np.float64),
        in_stock=np.array(
            [-1 if sample.in_stock is None else sample.in_stock for sample in samples],
            dtype=np.int8,
        ),
        textures=np.array(
            [texture_numbers(sample.texture) for sample in samples if sample.texture is not None],
            dtype=np.float64,
        ).reshape(-1, TEXTURE_LENGTH),
        texture_of=_rows([sample.texture is not None for sample in samples]),
    )


def lazy_catalogue(
    columns: CatalogueColumns, *, textures_dir: str = "", name: str = ""
) -> Catalogue:
    """Return columns as a catalogue whose samples are made when they are looked at."""
    return Catalogue(LazySamples(columns), textures_dir, name)


def column_names() -> tuple[str, ...]:
    """Return the names of the columns in order."""
    return tuple(field.name for field in fields(CatalogueColumns))


def _joined(texts: Sequence[str]) -> tuple[UInt8Array, NDArray[np.int64]]:
    encoded = [text.encode("utf-8") for text in texts]
    start = np.concatenate(([0], np.cumsum([len(text) for text in encoded], dtype=np.int64)))
    return np.frombuffer(b"".join(encoded), dtype=np.uint8), start.astype(np.int64)


def _split(blob: UInt8Array, start: NDArray[np.int64]) -> list[str]:
    whole, marks = blob.tobytes(), start.tolist()
    return [whole[a:b].decode("utf-8") for a, b in pairwise(marks)]


def _means(lab: Float64Array, share: Float64Array, start: NDArray[np.int64]) -> Float32Array:
    """Return the share-weighted mean colour of each sample; nan without colours."""
    sums = np.vstack(
        [np.zeros(4), np.cumsum(np.column_stack([lab * share[:, None], share]), axis=0)]
    )
    parts = sums[start[1:]] - sums[start[:-1]]
    with np.errstate(invalid="ignore", divide="ignore"):
        return np.asarray(parts[:, :3] / parts[:, 3:], dtype=np.float32)


def _places(words: Sequence[Any], all_words: Sequence[Any]) -> UInt8Array:
    place = {word: i for i, word in enumerate(all_words)}
    return np.array([place.get(word, UNKNOWN_WORD) for word in words], dtype=np.uint8)


def _rows(is_there: Sequence[bool]) -> NDArray[np.int32]:
    """Return the row of each item in a table of those that are there; -1 for the others."""
    there = np.array(is_there, dtype=np.bool_)
    return np.where(there, np.cumsum(there) - 1, -1).astype(np.int32)


def _face_mm(sample: Sample) -> float:
    return float("nan") if sample.face is None else sample.face.as_float_mm()


def _price(sample: Sample) -> float:
    return float("nan") if sample.price is None else float(sample.price)
