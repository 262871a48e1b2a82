"""Library files: the shop's library as a catalogue, its unchanged bulk kept as arrays on disk."""

from pathlib import Path

from framing_palette.catalogue.column_files import (
    default_cache_dir,
    keep_columns,
    kept_columns,
)
from framing_palette.catalogue.columns import CatalogueColumns, lazy_catalogue
from framing_palette.catalogue.samples import Catalogue
from framing_palette.catalogue.splicing import columns_in_parts, spliced_columns
from framing_palette.catalogue.store import Library

_KEPT_FROM = 2000


def library_catalogue(
    library: Library,
    *,
    textures_dir: str = "",
    name: str = "",
    with_hidden: bool = False,
    cache_dir: Path | None = None,
) -> Catalogue:
    """Return the library's samples as the shop sees them.

    Parameters
    ----------
    library
        An open library.
    textures_dir, name
        Of the catalogue that is made.
    with_hidden
        Whether samples that are marked as hidden are there.
    cache_dir
        Where arrays are kept; the user's own cache by default.

    Raises
    ------
    LibraryError
        When the library cannot be read.
    """
    columns = _imported_columns(library, cache_dir or default_cache_dir())
    place_of = {code: place for place, code in enumerate(columns.code_list())}
    exchanged, dropped = {}, set()
    for entry in library.entries(changed_only=True):
        place = place_of.get(entry.imported.code)
        if place is None:
            continue
        if entry.marks.hidden and not with_hidden:
            dropped.add(place)
        elif not entry.edits.is_empty:
            exchanged[place] = entry.sample
    columns = spliced_columns(columns, exchanged, dropped)
    return lazy_catalogue(columns, textures_dir=textures_dir, name=name)


def _imported_columns(library: Library, cache_dir: Path) -> CatalogueColumns:
    """Return the columns of what the makers say, from the cache while no import came between."""
    place = cache_dir / f"library-{library.key()}"
    found = kept_columns(place)
    if found is not None:
        return found
    samples = (entry.imported for entry in library.entries())
    columns = columns_in_parts(samples)
    if len(columns) >= _KEPT_FROM:
        keep_columns(place, columns)
    return columns
