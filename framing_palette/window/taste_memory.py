"""Taste memory: what was known before the work on this picture, changed undoably as a whole."""

from collections.abc import Callable
from dataclasses import dataclass, field

from PySide6.QtGui import QUndoCommand

from framing_palette.ranking import Taste
from framing_palette.ranking.taste import PairKey


@dataclass(frozen=True, slots=True)
class Remembered:
    """What was known before the work on this picture, and which of its pairs no longer count."""

    taste: Taste = field(default_factory=Taste)
    ignored: frozenset[PairKey] = frozenset()


class ChangeTaste(QUndoCommand):
    """Replace what is remembered; both ways only assign."""

    def __init__(
        self,
        words: str,
        *,
        before: Remembered,
        after: Remembered,
        put: Callable[[Remembered], None],
    ) -> None:
        super().__init__(words)
        self._before, self._after, self._put = before, after, put

    def redo(self) -> None:
        """Put the later one in place."""
        self._put(self._after)

    def undo(self) -> None:
        """Put the earlier one back."""
        self._put(self._before)
