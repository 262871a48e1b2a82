"""Cells: the text of one cell as a value, or a sentence that says why not."""

import math
import re
import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from enum import StrEnum
from functools import lru_cache
from typing import TypeVar

from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.catalogue.table_files import TableRow, unguarded
from framing_palette.errors import FieldError, LengthError
from framing_palette.units import Length

Word = TypeVar("Word", bound=StrEnum)
LONGEST_MM = 20_000
_YES = frozenset({"true", "yes", "y", "1", "t"})
_NO = frozenset({"false", "no", "n", "0", "f"})
_CONTROL = re.compile(r"[\x00-\x1f\x7f]")
_DECIMAL_COMMA = re.compile(r"[+-]?\d+,\d+( ?[a-z]+)?\Z")


@dataclass(frozen=True, slots=True)
class RowReader:
    """Reads the cells of one row; what cannot be read is added to the problems as unknown.

    Parameters
    ----------
    row, file
        The row and the name of its file, for messages.
    problems
        Where bad cells are told.
    """

    row: TableRow
    file: str
    problems: ProblemList

    def tell(self, column: str, reason: str, *, is_notice: bool = False) -> None:
        """Add a problem of this row."""
        self.problems.add(CellProblem(self.file, self.row.number, column, reason, is_notice))

    def text(self, column: str) -> str:
        """Return the cell as text; empty when it is not there."""
        return unguarded(self.row.cells.get(column, ""))

    def common_text(self, column: str) -> str:
        """Return text that many rows share, kept in the memory once."""
        return sys.intern(self.text(column))

    def code(self, column: str = "code", *, so: str = "") -> str:
        """Return the code of a sample, or an empty text when it cannot be one.

        Parameters
        ----------
        column
            Whose cell.
        so
            What follows from a bad cell, for the message.
        """
        code = self.text(column)
        reason = why_not_a_code(code)
        if reason:
            self.tell(column, reason + so)
            return ""
        return code

    def number(
        self, column: str, *, least: float = -math.inf, most: float = math.inf
    ) -> float | None:
        """Return the cell as a number within limits; None when empty or bad."""
        text = self._figures(column)
        if not text:
            return None
        value = _number(text)
        if value is None:
            self.tell(column, f'"{text}" is not a number')
        elif not least <= value <= most:
            self.tell(column, f"{text} is outside {least:g} to {most:g}")
            value = None
        return value

    def numbers(self, columns: Sequence[str]) -> list[float] | None:
        """Return many cells as numbers, or None when one of them is empty or bad, which is told."""
        cells = self.row.cells
        values = [_number(cells.get(column, "")) for column in columns]
        if any(value is None for value in values):
            values = [self.number(column) for column in columns]
        for column, value in zip(columns, values, strict=True):
            if value is None:
                if not cells.get(column, ""):
                    self.tell(column, "the cell is empty, but all of these columns are needed")
                return None
        return [value for value in values if value is not None]

    def length(self, column: str) -> Length | None:
        """Return the cell as a length, bare numbers being millimetres; None when empty or bad."""
        text = self._figures(column)
        if not text:
            return None
        value, is_possible = _length(text)
        if value is None:
            self.tell(column, f'"{text}" is not a length; write millimetres such as 32.5')
        elif not is_possible:
            self.tell(column, f"{text} is outside 0 to {LONGEST_MM} mm")
        return value if is_possible else None

    def price(self, column: str) -> Decimal | None:
        """Return the cell as an exact amount, not negative; None when empty or bad."""
        text = self._figures(column)
        if not text:
            return None
        try:
            value = Decimal(text)
        except InvalidOperation:
            self.tell(column, f'"{text}" is not a price; write the figure alone')
            return None
        if not value.is_finite() or not 0 <= value < Decimal("1e9"):
            self.tell(column, f"{text} is not a price that can be")
            return None
        return value

    def truth(self, column: str) -> bool | None:
        """Return the cell as true or false; None when empty or bad."""
        text = self.row.cells.get(column, "").lower()
        if not text:
            return None
        if text in _YES or text in _NO:
            return text in _YES
        self.tell(column, f'"{text}" is neither true nor false')
        return None

    def word(
        self,
        column: str,
        words: type[Word],
        *,
        others: Mapping[str, Word] | None = None,
        so: str = "",
    ) -> Word | None:
        """Return the cell as one of a set of words; None when empty or bad.

        Parameters
        ----------
        column
            Whose cell.
        words
            What it may say.
        others
            What else is understood, and as which word.
        so
            What follows from a bad cell, for the message.
        """
        text = self.row.cells.get(column, "")
        if not text:
            return None
        plain = text.lower().replace(" ", "_").replace("-", "_")
        if others and plain in others:
            return others[plain]
        try:
            return words(plain)
        except ValueError:
            self.tell(column, f'"{text}" is not one of {", ".join(words)}{so}')
            return None

    def _figures(self, column: str) -> str:
        """Return a cell that should hold a figure, its decimal comma made a point if it is one."""
        text = self.row.cells.get(column, "")
        if "," not in text:
            return text
        if self.row.decimal_comma and _DECIMAL_COMMA.match(text):
            return text.replace(",", ".")
        self.tell(
            column, f'"{text}" contains a comma; write a decimal point, and no thousands mark'
        )
        return ""


@lru_cache(maxsize=8192)
def why_not_a_code(code: str) -> str:
    """Return why a text cannot be a sample's code, or an empty text when it can.

    Examples
    --------
    >>> why_not_a_code("M-CHALK")
    ''
    """
    if not code:
        return "the code is missing"
    if _CONTROL.search(code):
        return "the code contains a line break or another control character"
    if "/" in code or "\\" in code or ".." in code or code == ".":
        return f'"{code}" looks like a path; a code may not contain / or \\ or two dots'
    if len(code) > 100:
        return "the code is longer than 100 characters"
    return ""


def length_text(length: Length | None) -> str:
    """Return a length as exact millimetres, empty when unknown."""
    if length is None:
        return ""
    numerator, denominator = length.mm.numerator, length.mm.denominator
    if denominator == 1:
        return str(numerator)
    rest = denominator
    for prime in (2, 5):
        while rest % prime == 0:
            rest //= prime
    if rest != 1:
        return f"{numerator}/{denominator}"
    digits = max(_power(denominator, 2), _power(denominator, 5))
    scaled = str(abs(numerator) * 10**digits // denominator).rjust(digits + 1, "0")
    return f"{'-' if numerator < 0 else ''}{scaled[:-digits]}.{scaled[-digits:]}"


def number_text(value: float | None) -> str:
    """Return a float so that reading it gives the same float; empty when unknown."""
    if value is None:
        return ""
    return str(int(value)) if value == int(value) and abs(value) < 1e15 else repr(float(value))


def joined_tags(tags: Sequence[str]) -> str:
    """Return tags as one cell."""
    return ";".join(tags)


@lru_cache(maxsize=8192)
def split_tags(text: str) -> tuple[str, ...]:
    """Return the tags of one cell, empty ones left out."""
    return tuple(tag for part in text.split(";") if (tag := part.strip()))


@lru_cache(maxsize=8192)
def _length(text: str) -> tuple[Length | None, bool]:
    """Return a written length, and whether anything in a shop can have it."""
    try:
        length = Length.mm_of(text)
    except (LengthError, FieldError):
        return None, False
    return length, 0 <= length.mm <= LONGEST_MM


@lru_cache(maxsize=65536)
def _number(text: str) -> float | None:
    try:
        value = float(text)
    except ValueError:
        return None
    return value if math.isfinite(value) and "_" not in text else None


def _power(number: int, prime: int) -> int:
    count = 0
    while number % prime == 0:
        number //= prime
        count += 1
    return count
