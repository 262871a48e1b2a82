"""Column matching: a spreadsheet with names of its own read as samples, after a look at it.

The guess is only a start: the person sees which column is taken for what, and corrects it.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from itertools import islice
from pathlib import Path
from typing import Literal

from framing_palette.catalogue.cells import RowReader, length_text
from framing_palette.catalogue.palette_rows import read_colour_row
from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.catalogue.sample_rows import LEFT_OUT, SAMPLE_COLUMNS, read_sample_row
from framing_palette.catalogue.samples import Kind, Sample, SampleColour
from framing_palette.catalogue.table_files import TableRow, open_table
from framing_palette.catalogue.wording import plain_words
from framing_palette.errors import CatalogueError, FramingPaletteError
from framing_palette.units import Length

LengthUnit = Literal["mm", "cm", "in"]
TARGETS = (*SAMPLE_COLUMNS, "L", "a", "b")
_LENGTHS = tuple(column for column in SAMPLE_COLUMNS if column.endswith("_mm"))

# Words that spreadsheets of the trade use for the columns; common practice.
_WORDS: Mapping[str, tuple[str, ...]] = {
    "code": ("code", "sku", "item", "item no", "item number", "article", "article no", "number",
             "ref", "reference", "id", "sample id", "part", "part no"),
    "name": ("name", "description", "title", "colour", "color", "colour name", "color name",
             "sample name"),
    "kind": ("kind", "type", "category", "product type"),
    "surface": ("surface", "texture type"),
    "material": ("material", "wood", "species", "substrate"),
    "finish": ("finish", "sheen"),
    "face_mm": ("face", "face width", "width", "moulding width", "molding width"),
    "thickness_mm": ("thickness", "height", "depth overall", "caliper", "gauge"),
    "bevel_mm": ("bevel", "bevel width"),
    "rabbet_width_mm": ("rabbet width", "rebate width", "lip"),
    "rabbet_depth_mm": ("rabbet depth", "rebate depth", "rabbet", "rebate"),
    "stick_mm": ("stick", "stick length", "length", "bar length"),
    "sheet_w_mm": ("sheet width", "board width"),
    "sheet_h_mm": ("sheet height", "sheet length", "board height"),
    "density_kg_m3": ("density",),
    "join": ("join", "joint"),
    "texture": ("texture", "image", "picture", "photo", "file"),
    "price": ("price", "cost", "net price", "unit price", "trade price"),
    "price_per": ("price per", "unit", "uom", "price unit", "sold by"),
    "in_stock": ("in stock", "stock", "available"),
    "conservation": ("conservation", "archival", "grade"),
    "collection": ("collection", "family", "series", "range", "line"),
    "tags": ("tags", "keywords"),
    "L": ("l", "l*", "lab l", "cie l", "lightness"),
    "a": ("a", "a*", "lab a", "cie a"),
    "b": ("b", "b*", "lab b", "cie b"),
}  # fmt: skip
_UNITS: Mapping[str, LengthUnit] = {
    "mm": "mm",
    "cm": "cm",
    "in": "in",
    "inch": "in",
    "inches": "in",
}


@dataclass(frozen=True, slots=True)
class ColumnMatch:
    """Which columns of a spreadsheet are which facts of a sample.

    Parameters
    ----------
    columns
        The spreadsheet's column by our column (one of TARGETS).
    kind
        Of the rows that tell none.
    unit
        Of bare lengths, where the column's name tells none.
    units
        Of bare lengths by our column, where the name tells one.
    """

    columns: Mapping[str, str]
    kind: Kind | None = None
    unit: LengthUnit = "mm"
    units: Mapping[str, LengthUnit] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class MatchPreview:
    """The first rows of a spreadsheet as they would be read.

    Parameters
    ----------
    header
        The spreadsheet's columns, lower case.
    unused
        Those that no fact is taken from.
    samples
        Of the first good rows.
    problems
        Of the first rows.
    """

    header: tuple[str, ...]
    unused: tuple[str, ...]
    samples: tuple[Sample, ...]
    problems: tuple[CellProblem, ...]


def guess_match(header: Sequence[str], *, kind: Kind | None = None) -> ColumnMatch:
    """Return the likely meaning of a spreadsheet's columns; each column is used once.

    Parameters
    ----------
    header
        The columns' names.
    kind
        Of the samples, when the spreadsheet does not tell.
    """
    free = {_bare(name)[0]: name for name in reversed(header) if name}
    columns: dict[str, str] = {}
    for is_close in (False, True):
        for target, words in _WORDS.items():
            if target not in columns:
                found = _found((_bare(target)[0], *words), free, is_close=is_close)
                if found:
                    columns[target] = free.pop(found)
    units = {
        target: unit
        for target, name in columns.items()
        if target in _LENGTHS and (unit := _bare(name)[1])
    }
    return ColumnMatch(columns, kind, "mm", units)


def preview_matched_file(path: Path, match: ColumnMatch, *, rows: int = 20) -> MatchPreview:
    """Return what the first rows of a spreadsheet would give.

    Raises
    ------
    CatalogueError
        When the file cannot be read.
    """
    problems = ProblemList()
    header, lines = open_table(path, problems)
    samples = tuple(_samples(islice(lines, rows), path, match, problems))
    used = {name.lower() for name in match.columns.values()}
    unused = tuple(name for name in header if name and name not in used)
    return MatchPreview(tuple(header), unused, samples, problems.told())


def read_matched_file(
    path: Path, match: ColumnMatch
) -> tuple[tuple[Sample, ...], tuple[CellProblem, ...]]:
    """Return the good samples of a spreadsheet, and all that is wrong with it.

    Raises
    ------
    CatalogueError
        When the file cannot be read, or no column is taken for the code.
    """
    if "code" not in match.columns:
        raise CatalogueError(
            path, problem="has no column that is taken for the code", todo="say which one it is"
        )
    problems = ProblemList()
    _, lines = open_table(path, problems)
    return tuple(_samples(lines, path, match, problems)), problems.told()


def _samples(
    lines: Iterable[TableRow], path: Path, match: ColumnMatch, problems: ProblemList
) -> Iterator[Sample]:
    seen: dict[str, int] = {}
    for line in lines:
        row = RowReader(_renamed(line, match), path.name, problems)
        sample = read_sample_row(row)
        if sample is None:
            continue
        if sample.code in seen:
            row.tell("code", f"{sample.code} stands in row {seen[sample.code]} already{LEFT_OUT}")
            continue
        seen[sample.code] = line.number
        yield replace(sample, colours=_colours(row))


def _colours(row: RowReader) -> tuple[SampleColour, ...]:
    """Return the colour of a row; none when it has none, or a bad one, which is told."""
    if not any(row.text(axis) for axis in ("l", "a", "b")):
        return ()
    read = read_colour_row(row)
    return () if read is None or read.lab is None else (SampleColour(read.lab, 1.0),)


def _renamed(line: TableRow, match: ColumnMatch) -> TableRow:
    """Return a row under our column names, its bare lengths in millimetres."""
    cells = {
        target.lower(): line.cells.get(name.lower(), "") for target, name in match.columns.items()
    }
    if match.kind is not None and not cells.get("kind"):
        cells["kind"] = str(match.kind)
    for column in _LENGTHS:
        unit = match.units.get(column, match.unit)
        if unit != "mm" and cells.get(column):
            cells[column] = _in_millimetres(cells[column], unit)
    return TableRow(line.number, cells, line.decimal_comma)


def _in_millimetres(text: str, unit: LengthUnit) -> str:
    """Return a length in millimetres; text that is none stays for the reader to refuse."""
    try:
        return length_text(Length.parse(text, unit))
    except FramingPaletteError:
        return text


def _found(words: Sequence[str], free: Mapping[str, str], *, is_close: bool) -> str:
    for word in words:
        if word in free:
            return word
    if is_close:
        for word in words:
            if len(word) > 3 and (near := get_close_matches(word, free, n=1, cutoff=0.85)):
                return near[0]
    return ""


def _bare(name: str) -> tuple[str, LengthUnit | None]:
    """Return a column's name in plain words without its unit, and the unit."""
    words = [word for word in plain_words(name.translate(_MARKS)).split() if word]
    unit = _UNITS.get(words[-1]) if len(words) > 1 else None
    return " ".join(words[:-1] if unit else words), unit


_MARKS = str.maketrans(dict.fromkeys("_-()[]./:", " "))
