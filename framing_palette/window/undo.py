"""Undo by whole values: one command that knows the desk before and after."""

from collections.abc import Callable

from PySide6.QtGui import QUndoCommand

from framing_palette.window.desk import Desk

_NO_MERGE = -1


class ChangeDesk(QUndoCommand):
    """Replace the whole desk; the values are validated before the command is made.

    Commands of one ``merge_id`` that follow each other become one, so that a slider or a row of
    arrow keys is undone at once.
    """

    def __init__(
        self,
        words: str,
        *,
        before: Desk,
        after: Desk,
        assign: Callable[[Desk], None],
        merge_id: int = _NO_MERGE,
    ) -> None:
        super().__init__(words)
        self._before = before
        self._after = after
        self._assign = assign
        self._merge_id = merge_id

    @property
    def after(self) -> Desk:
        """The desk that this command puts in place."""
        return self._after

    def redo(self) -> None:
        """Put the later desk in place."""
        self._assign(self._after)

    def undo(self) -> None:
        """Put the earlier desk back."""
        self._assign(self._before)

    def id(self) -> int:
        """Return which commands may melt into this one."""
        return self._merge_id

    def mergeWith(self, later: QUndoCommand) -> bool:
        """Take over the result of a later command of the same kind."""
        if not isinstance(later, ChangeDesk) or later.id() != self.id():
            return False
        self._after = later.after
        return True
