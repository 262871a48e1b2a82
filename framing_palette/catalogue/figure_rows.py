"""Figure rows: what the tables beside samples.csv hold in figures, by code and in little memory.

A row as Python values takes some ten times the memory of its figures, and a large catalogue has a
million rows; so they wait as plain doubles until their sample takes them.
"""

import sys
from array import array


class FigureRows:
    """Rows of equally many figures by code, in the order in which they came.

    Parameters
    ----------
    width
        Figures in a row.
    """

    def __init__(self, width: int) -> None:
        self._width = width
        self._rows: dict[str, array[float]] = {}

    def add(self, code: str, *figures: float) -> None:
        """Keep one more row of a code."""
        rows = self._rows.get(code)
        if rows is None:
            rows = self._rows[sys.intern(code)] = array("d")  # one text for all tables
        rows.extend(figures)

    def first_figures(self, code: str) -> list[float]:
        """Return the first figure of each row of a code."""
        return list(self._rows.get(code, array("d"))[:: self._width])

    def take(self, code: str) -> list[tuple[float, ...]]:
        """Return the rows of a code, and keep them no longer."""
        rows = self._rows.pop(code, array("d"))
        return [
            tuple(rows[start : start + self._width]) for start in range(0, len(rows), self._width)
        ]
