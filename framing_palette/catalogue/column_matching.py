"""Column matching: which column of a spreadsheet with names of its own is which fact of a sample.

The guess is only a start: the person sees which column is taken for what, and corrects it.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from typing import Literal

from framing_palette.catalogue.conditions import Conditions, conditions_in_names
from framing_palette.catalogue.sample_rows import SAMPLE_COLUMNS
from framing_palette.catalogue.samples import Kind
from framing_palette.catalogue.wording import plain_words

LengthUnit = Literal["mm", "cm", "in"]
TARGETS = (*SAMPLE_COLUMNS, "L", "a", "b")
AXES = ("L", "a", "b")
LENGTH_TARGETS = tuple(column for column in SAMPLE_COLUMNS if column.endswith("_mm"))

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
    has_decimal_comma
        True when a comma parts the decimals; None leaves it to the file's separator.
    stated
        The light and observer of its colours, where the columns' names tell none.
    """

    columns: Mapping[str, str]
    kind: Kind | None = None
    unit: LengthUnit = "mm"
    units: Mapping[str, LengthUnit] = field(default_factory=dict)
    has_decimal_comma: bool | None = None
    stated: Conditions = field(default_factory=Conditions)

    @property
    def told(self) -> Conditions:
        """What the names of the columns with colours tell of light and observer.

        Columns that are called as in a catalogue folder hold what they hold there.
        """
        names = [self.columns[axis] for axis in AXES if axis in self.columns]
        if [name.lower() for name in names] == [axis.lower() for axis in AXES]:
            return Conditions("D50", 2)
        return conditions_in_names(names)

    @property
    def conditions(self) -> Conditions:
        """The light and observer that its colours hold for."""
        return self.told.filled_from(self.stated)

    @property
    def lacks_light(self) -> bool:
        """Whether it has colours whose light nobody has told."""
        return not self.conditions.are_known and all(axis in self.columns for axis in AXES)

    def taking(self, target: str, name: str) -> "ColumnMatch":
        """Return the match with one column taken for a fact; an empty name takes none.

        A column is taken for one fact alone, so it is given up where it was taken before.
        """
        columns = {
            other: column
            for other, column in self.columns.items()
            if other != target and (not name or column.lower() != name.lower())
        }
        if name:
            columns[target] = name
        units = {
            other: unit
            for other, column in columns.items()
            if other in LENGTH_TARGETS and (unit := _bare(column)[1])
        }
        return replace(self, columns=columns, units=units)


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
        if target in LENGTH_TARGETS and (unit := _bare(name)[1])
    }
    return ColumnMatch(columns, kind, "mm", units)


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
    if any(_LIGHT_WORD.fullmatch(word) for word in words):  # as in "L* (D50/2)"
        words = [word for word in words if not _CONDITION_WORD.fullmatch(word)]
    unit = _UNITS.get(words[-1]) if len(words) > 1 else None
    return " ".join(words[:-1] if unit else words), unit


_MARKS = str.maketrans(dict.fromkeys("_-()[]./:", " "))
_LIGHT_WORD = re.compile(r"d\d\d|f\d{1,2}")
_CONDITION_WORD = re.compile(r"d\d\d|f\d{1,2}|(?:2|10)°?(?:deg)?|deg|degree|observer|cie")
