"""Problems: what was wrong with a table, cell by cell, in words for whoever keeps it."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

MOST_TOLD = 2000  # a file of ten million bad lines must not fill the memory with complaints


@dataclass(frozen=True, slots=True)
class CellProblem:
    """One thing to put right in a catalogue folder.

    Parameters
    ----------
    file
        Name of the file inside the folder.
    row
        As a spreadsheet counts: the header is row 1. None when the whole file is meant.
    column
        Name of the column; empty when the whole row is meant.
    reason
        What is wrong and what to do, as a sentence without a full stop.
    is_notice
        True when nothing was left out and the reader merely should know.
    """

    file: str
    row: int | None
    column: str
    reason: str
    is_notice: bool = False

    def __str__(self) -> str:
        """Return one sentence, for example ``samples.csv row 14, column face_mm: ...``."""
        place = self.file
        if self.row is not None:
            place += f" row {self.row}"
        if self.column:
            place += f", column {self.column}" if self.row is not None else f" column {self.column}"
        return f"{place}: {self.reason}."


class ProblemList:
    """Collects problems while a folder is read, and stops listing them when there are too many."""

    def __init__(self, limit: int = MOST_TOLD) -> None:
        self._limit = limit
        self._kept: list[CellProblem] = []
        self._untold = 0
        self._count = 0

    def __iter__(self) -> Iterator[CellProblem]:
        """Go through the problems that are kept."""
        return iter(self._kept)

    @property
    def count(self) -> int:
        """How many problems were added that left something out."""
        return self._count

    def add(self, problem: CellProblem) -> None:
        """Keep a problem, or only count it once the limit is reached."""
        self._count += not problem.is_notice
        if len(self._kept) < self._limit:
            self._kept.append(problem)
        else:
            self._untold += 1

    def extend(self, problems: Iterable[CellProblem]) -> None:
        """Keep several problems."""
        for problem in problems:
            self.add(problem)

    def take_over(self, other: "ProblemList") -> None:
        """Keep all that another list holds, what it only counted included."""
        self.extend(other)
        self._untold += other.untold
        self._count += other.untold

    @property
    def untold(self) -> int:
        """How many problems were only counted."""
        return self._untold

    def told(self) -> tuple[CellProblem, ...]:
        """Return all that is kept, with a last line for those that are only counted."""
        if not self._untold:
            return tuple(self._kept)
        reason = f"{self._untold} more problems are not listed; put these right first"
        return (*self._kept, CellProblem("the folder", None, "", reason))
