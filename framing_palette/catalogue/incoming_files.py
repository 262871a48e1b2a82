"""Incoming files: what a shop may bring, looked at under what the person has said of it.

A spreadsheet shows its columns and its first rows as they would be read; an export whose colours
hold for a light that nobody tells waits until the person states it.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from framing_palette.catalogue.column_matching import ColumnMatch, guess_match
from framing_palette.catalogue.conditions import Conditions
from framing_palette.catalogue.exchange_files import samples_from_file
from framing_palette.catalogue.matched_table_files import (
    MatchPreview,
    preview_matched_file,
    read_matched_file,
)
from framing_palette.catalogue.problems import ProblemList
from framing_palette.catalogue.samples import Kind, Sample
from framing_palette.catalogue.table_files import open_table
from framing_palette.errors import UnknownLightError

TABLE_SUFFIXES = frozenset({".csv", ".tsv"})
ROWS_SHOWN = 12


@dataclass(frozen=True, slots=True)
class HowToRead:
    """What the person says of a file.

    Parameters
    ----------
    kind
        Of the samples that tell none.
    match
        Of a spreadsheet's columns; None leaves it to the guess.
    stated
        Light and observer of colours that tell none.
    """

    kind: Kind = Kind.MAT
    match: ColumnMatch | None = None
    stated: Conditions = field(default_factory=Conditions)


@dataclass(frozen=True, slots=True)
class Incoming:
    """A file as it would be read.

    Parameters
    ----------
    samples
        What it gives.
    remarks
        Sentences worth telling.
    match, preview
        Of a spreadsheet, as it was read; None for any other file.
    lacks_light
        Whether its colours hold for a light that nobody has told yet.
    """

    samples: Sequence[Sample]
    remarks: tuple[str, ...] = ()
    match: ColumnMatch | None = None
    preview: MatchPreview | None = None
    lacks_light: bool = False


def read_incoming(path: Path, how: HowToRead) -> Incoming:
    """Return what a file gives when it is read as the person says.

    Raises
    ------
    ExchangeFileError, CatalogueError
        When the file cannot be used.
    """
    if path.suffix.lower() in TABLE_SUFFIXES:
        return _table(path, how)
    try:
        samples, remarks = samples_from_file(path, how.kind, assumed=how.stated)
    except UnknownLightError as error:
        return Incoming((), (str(error),), lacks_light=True)
    return Incoming(samples, remarks)


def _table(path: Path, how: HowToRead) -> Incoming:
    match = how.match
    if match is None:
        header, _ = open_table(path, ProblemList())
        match = guess_match(header)
    match = replace(match, kind=how.kind, stated=how.stated)
    preview = preview_matched_file(path, match, rows=ROWS_SHOWN)
    if "code" not in match.columns:
        remark = "Say which column holds the code of each sample; without it no row can be read."
        return Incoming((), (remark,), match, preview)
    samples, problems = read_matched_file(path, match)
    return Incoming(samples, tuple(map(str, problems)), match, preview, match.lacks_light)
