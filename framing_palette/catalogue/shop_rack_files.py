"""The shop's rack: a catalogue folder with what the shop says of it, kept in the shop's library.

The folder stays as it was made. The first change copies it into a library of its own; from then
on the library is the rack, and a folder that has changed since is taken in as one more import.
"""

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from framing_palette.catalogue.incoming_files import HowToRead, Incoming, read_incoming
from framing_palette.catalogue.merging import ImportPlan, imported_text, merged_sample
from framing_palette.catalogue.samples import Catalogue, Sample
from framing_palette.catalogue.shop_edits import Said
from framing_palette.catalogue.store import ImportNote, Library
from framing_palette.errors import LibraryError, SampleChangedError

_FOLDER = "folder "


@dataclass(frozen=True, slots=True)
class ShopRack:
    """A rack as the shop sees it.

    Parameters
    ----------
    catalogue
        What may be offered: hidden samples are not in it.
    said
        By code, of the samples that the shop has said something of.
    hidden
        Samples that are not to be shown, in their order.
    liked
        Codes of the favourites.
    imports
        What the shop has brought in and not taken out again, latest first; the folder itself is
        not among it.
    """

    catalogue: Catalogue
    said: Mapping[str, Said] = field(default_factory=dict)
    hidden: tuple[Sample, ...] = ()
    liked: frozenset[str] = frozenset()
    imports: tuple[ImportNote, ...] = ()

    def of(self, code: str) -> Said:
        """Return what the shop says of a sample; nothing by default."""
        return self.said.get(code, Said())


@dataclass(frozen=True, slots=True)
class FilePreview:
    """An import that was looked at and not yet made.

    Parameters
    ----------
    plan
        What it would do.
    incoming
        The file as it was read.
    """

    plan: ImportPlan
    incoming: Incoming


def open_shop_rack(place: Path, catalogue: Catalogue) -> ShopRack:
    """Return a catalogue as the shop sees it; the library is made when there is none.

    Raises
    ------
    LibraryError
        When the library cannot be used.
    """
    with _library(place) as library:
        _take_folder(library, catalogue)
        return _rack_of(library, catalogue)


def say(place: Path, catalogue: Catalogue, code: str, before: Said, now: Said) -> ShopRack:
    """Write what the shop says of a sample, and return the rack as it is then.

    Parameters
    ----------
    place, catalogue
        The library and the folder's catalogue.
    code
        Which sample.
    before, now
        What was said when the change was made, and what is to be said.

    Raises
    ------
    SampleChangedError
        When another counter has said something else since; nothing is written.
    LibraryError
        When the library cannot be used.
    """
    with _library(place) as library:
        _take_folder(library, catalogue)
        entry = library.entry(code)
        if Said(entry.edits, entry.marks) != before:
            raise SampleChangedError(code, seen=entry.revision - 1, found=entry.revision)
        library.edit(code, revision=entry.revision, edits=now.edits, marks=now.marks)
        return _rack_of(library, catalogue)


def look_at_file(place: Path, catalogue: Catalogue, path: Path, how: HowToRead) -> FilePreview:
    """Return what bringing in a spreadsheet or an instrument's export would change.

    What the file leaves unknown stays as it is. The samples stay as they are.

    Parameters
    ----------
    place, catalogue
        The library and the folder's catalogue.
    path
        The file.
    how
        What the person says of it.

    Raises
    ------
    ExchangeFileError, CatalogueError
        When the file cannot be used.
    LibraryError
        When the library cannot be used.
    """
    incoming = read_incoming(path, how)
    return FilePreview(plan_samples(place, catalogue, incoming.samples, path.name), incoming)


def plan_samples(
    place: Path, catalogue: Catalogue, incoming: Sequence[Sample], source: str
) -> ImportPlan:
    """Return what bringing in samples would change.

    Raises
    ------
    LibraryError
        When the library cannot be used.
    """
    with _library(place) as library:
        _take_folder(library, catalogue)
        known = {entry.imported.code: entry.imported for entry in library.entries()}
        merged = [
            merged_sample(known[sample.code], sample) if sample.code in known else sample
            for sample in incoming
        ]
        return library.preview_import(merged, source)


def bring_in(place: Path, catalogue: Catalogue, plan: ImportPlan) -> tuple[int, ShopRack]:
    """Import as planned, and return the import's number and the rack as it is then.

    Raises
    ------
    ImportPlanError
        When the library has changed since the plan was made.
    LibraryError
        When the library cannot be written; nothing is changed then.
    """
    with Library(place) as library:
        number = library.apply_import(plan)
        return number, _rack_of(library, catalogue)


def take_out(place: Path, catalogue: Catalogue, number: int) -> ShopRack:
    """Undo the latest import, and return the rack as it is then.

    Raises
    ------
    ImportPlanError
        When a later import stands.
    LibraryError
        When the library cannot be written; nothing is changed then.
    """
    with Library(place) as library:
        library.undo_import(number)
        return _rack_of(library, catalogue)


def take_back(
    place: Path, catalogue: Catalogue, number: int
) -> tuple[tuple[Sample, ...], ShopRack]:
    """Undo an import and every later one; return what they had brought, and the rack then.

    Raises
    ------
    ImportPlanError
        When the import does not stand.
    LibraryError
        When the library cannot be written; nothing is changed then.
    """
    with Library(place) as library:
        brought = library.undo_back_to(number)
        _take_folder(library, catalogue)
        return brought, _rack_of(library, catalogue)


def bring_back(
    place: Path, catalogue: Catalogue, samples: Sequence[Sample], source: str
) -> tuple[int, ShopRack]:
    """Bring samples in just as they are, after `take_back`; return the import's number.

    Raises
    ------
    LibraryError
        When the library cannot be written; nothing is changed then.
    """
    with Library(place) as library:
        number = library.apply_import(library.preview_import(samples, source))
        return number, _rack_of(library, catalogue)


def _library(place: Path) -> Library:
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise LibraryError(
            place, problem=f"cannot be made ({error.strerror})", todo="check the folder's rights"
        ) from error
    return Library(place)


def _take_folder(library: Library, catalogue: Catalogue) -> None:
    """Take the folder's samples into the library, unless just these were taken already."""
    digest = hashlib.blake2b(digest_size=8)
    for sample in catalogue.samples:
        digest.update(imported_text(sample).encode())
    source = f"{_FOLDER}{digest.hexdigest()}"
    if any(note.source == source and not note.is_undone for note in library.imports()):
        return
    library.apply_import(library.preview_import(catalogue.samples, source))


def _rack_of(library: Library, catalogue: Catalogue) -> ShopRack:
    shown, hidden, said = list[Sample](), list[Sample](), dict[str, Said]()
    for entry in library.entries():
        sample = entry.sample
        one = Said(entry.edits, entry.marks)
        if one != Said():
            said[sample.code] = one
        (hidden if entry.marks.hidden else shown).append(sample)
    liked = frozenset(code for code, one in said.items() if one.marks.favourite)
    imports = tuple(
        note
        for note in library.imports()
        if not note.is_undone and not note.source.startswith(_FOLDER)
    )
    rack = replace(catalogue, samples=tuple(shown))
    return ShopRack(rack, said, tuple(hidden), liked, imports)
