"""Splicing: columns put together from parts, samples exchanged or left out, nothing made anew."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from framing_palette.catalogue.columns import CatalogueColumns, columns_from
from framing_palette.catalogue.samples import Sample

_BLOBS = (("records", "record_start"), ("codes", "code_start"), ("words", "word_start"))
_BY_COLOUR = ("lab", "share")
_BY_SAMPLE = (
    "mean_lab", "kind", "surface", "finish", "face_mm", "price", "in_stock", "texture",
)  # fmt: skip


def joined_columns(parts: Sequence[CatalogueColumns]) -> CatalogueColumns:
    """Return several catalogues' columns one after another as one."""
    if len(parts) == 1:
        return parts[0]
    if not parts:
        return columns_from(())
    joined: dict[str, Any] = {}
    for blob, start in _BLOBS:
        joined[blob] = np.concatenate([getattr(part, blob) for part in parts])
        joined[start] = _starts([getattr(part, start) for part in parts])
    joined["colour_start"] = _starts([part.colour_start for part in parts])
    for name in (*_BY_COLOUR, *_BY_SAMPLE, "spectra"):
        joined[name] = np.concatenate([getattr(part, name) for part in parts])
    offset = np.cumsum([0, *(len(part.spectra) for part in parts[:-1])])
    joined["spectrum_of"] = np.concatenate(
        [
            np.where(part.spectrum_of < 0, -1, part.spectrum_of + first).astype(np.int32)
            for part, first in zip(parts, offset, strict=True)
        ]
    )
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
    # Reflectances stand in the order of the colours, so a slice of colours has a slice of them.
    rows = columns.spectrum_of[colours]
    used = rows[rows >= 0]
    low, high = (int(used[0]), int(used[-1]) + 1) if len(used) else (0, 0)
    part["spectra"] = columns.spectra[low:high]
    part["spectrum_of"] = np.where(rows < 0, -1, rows - low).astype(np.int32)
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


def _starts(marks: Sequence[NDArray[np.int64]]) -> NDArray[np.int64]:
    """Return where each of all items begins, from the marks of the parts."""
    offset = np.cumsum([0, *(int(part[-1]) for part in marks)])
    moved = [part[:-1] + first for part, first in zip(marks, offset[:-1], strict=True)]
    return np.concatenate([*moved, offset[-1:]]).astype(np.int64)
