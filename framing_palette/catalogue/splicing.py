"""Splicing: columns put together from parts, samples exchanged or left out, nothing made anew."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import islice
from typing import Any

import numpy as np
from numpy.typing import NDArray

from framing_palette.catalogue.columns import CatalogueColumns, column_names, columns_from
from framing_palette.catalogue.samples import Sample

PART = 4000
_BLOBS = (("records", "record_start"), ("codes", "code_start"), ("words", "word_start"))
_BY_COLOUR = ("lab", "share")
_BY_SAMPLE = ("mean_lab", "kind", "surface", "finish", "face_mm", "price", "in_stock")
_STARTS = (*(start for _, start in _BLOBS), "colour_start")
_TABLES = (("spectra", "spectrum_of"), ("textures", "texture_of"))


def joined_columns(parts: Sequence[CatalogueColumns]) -> CatalogueColumns:
    """Return several catalogues' columns one after another as one."""
    return parts[0] if len(parts) == 1 else _joined(list(map(_arrays_of, parts)))


def columns_in_parts(samples: Iterator[Sample]) -> CatalogueColumns:
    """Return samples as columns, a few thousand at a time to spare the memory."""
    parts = []
    while part := list(islice(samples, PART)):
        parts.append(_arrays_of(columns_from(part)))
    return _joined(parts)


def _arrays_of(columns: CatalogueColumns) -> dict[str, NDArray[Any]]:
    return {name: getattr(columns, name) for name in column_names()}


def _joined(parts: list[dict[str, NDArray[Any]]]) -> CatalogueColumns:
    """Join columns, taking each out of the parts, so that not all is in the memory twice."""
    if not parts:
        return columns_from(())
    joined: dict[str, Any] = {}
    for table, row_of in _TABLES:
        sizes = [len(part[table]) for part in parts]
        joined[row_of] = _joined_rows([part.pop(row_of) for part in parts], sizes)
    for start in _STARTS:
        joined[start] = _starts([part.pop(start) for part in parts])
    for name in tuple(parts[0]):
        joined[name] = np.concatenate([part.pop(name) for part in parts])
    return CatalogueColumns(**joined)


def sliced_columns(columns: CatalogueColumns, first: int, stop: int) -> CatalogueColumns:
    """Return the columns of the samples from one place up to another, as views."""
    part: dict[str, Any] = {}
    for blob, start in _BLOBS:
        marks = getattr(columns, start)[first : stop + 1]
        part[blob] = getattr(columns, blob)[marks[0] : marks[-1]]
        part[start] = marks - marks[0]
    marks = columns.colour_start[first : stop + 1]
    colours = slice(int(marks[0]), int(marks[-1]))
    part["colour_start"] = marks - marks[0]
    for name in _BY_COLOUR:
        part[name] = getattr(columns, name)[colours]
    for name in _BY_SAMPLE:
        part[name] = getattr(columns, name)[first:stop]
    for (table, row_of), items in zip(_TABLES, (colours, slice(first, stop)), strict=True):
        rows = getattr(columns, row_of)[items]
        # Rows stand in the order of their items, so a slice of items has a slice of rows.
        used = rows[rows >= 0]
        low, high = (int(used[0]), int(used[-1]) + 1) if len(used) else (0, 0)
        part[table] = getattr(columns, table)[low:high]
        part[row_of] = np.where(rows < 0, -1, rows - low).astype(np.int32)
    return replace(columns, **part)


def spliced_columns(
    columns: CatalogueColumns,
    exchanged: Mapping[int, Sample] | None = None,
    dropped: Collection[int] = (),
) -> CatalogueColumns:
    """Return columns with some samples exchanged and some left out.

    Parameters
    ----------
    columns
        The whole.
    exchanged
        New samples by place.
    dropped
        Places to leave out.
    """
    exchanged = exchanged or {}
    if not exchanged and not dropped:
        return columns
    gone, parts, place = frozenset(dropped), list[CatalogueColumns](), 0
    for cut in sorted({*exchanged, *gone}):
        if cut > place:
            parts.append(sliced_columns(columns, place, cut))
        if cut not in gone:
            parts.append(columns_from([exchanged[cut]]))
        place = cut + 1
    if place < len(columns):
        parts.append(sliced_columns(columns, place, len(columns)))
    return joined_columns(parts)


def _joined_rows(rows: Sequence[NDArray[np.int32]], sizes: Sequence[int]) -> NDArray[np.int32]:
    """Return rows of several tables as rows of their join; -1 stays -1."""
    offset = np.cumsum([0, *sizes[:-1]])
    moved = [np.where(one < 0, -1, one + by) for one, by in zip(rows, offset, strict=True)]
    return np.concatenate(moved).astype(np.int32)


def _starts(marks: Sequence[NDArray[np.int64]]) -> NDArray[np.int64]:
    """Return where each of all items begins, from the marks of the parts."""
    offset = np.cumsum([0, *(int(part[-1]) for part in marks)])
    moved = [part[:-1] + first for part, first in zip(marks, offset[:-1], strict=True)]
    return np.concatenate([*moved, offset[-1:]]).astype(np.int64)
