"""A layout that sets its items in a row and goes on below when the row is full."""

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class FlowLayout(QLayout):
    """Items from left to right, then in the next row."""

    def __init__(self, *, gap: int, row_gap: int = 0, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._gap = gap
        self._row_gap = row_gap
        self._items: list[QLayoutItem] = []
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        """Take one more item."""
        self._items.append(item)

    def count(self) -> int:
        """Return how many items there are."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """Return an item; None past the end, as Qt asks for."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """Give an item away; None past the end, as Qt asks for."""
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        """Ask for no more room than the items need."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        """Tell Qt that the height follows from the width."""
        return True

    def heightForWidth(self, width: int) -> int:
        """Return the height of all rows at a width."""
        return self._arrange(QRect(0, 0, width, 0), is_real=False)

    def setGeometry(self, rect: QRect) -> None:
        """Place the items."""
        super().setGeometry(rect)
        self._arrange(rect, is_real=True)

    def sizeHint(self) -> QSize:
        """Ask for the room of the widest item."""
        return self.minimumSize()

    def minimumSize(self) -> QSize:
        """Need the room of the widest item."""
        size = QSize()
        for item in self._items:
            size = size.expandedTo(item.minimumSize())
        return size

    def _arrange(self, rect: QRect, *, is_real: bool) -> int:
        x, y, row_height = rect.x(), rect.y(), 0
        for item in self._items:
            if item.isEmpty():
                continue  # hidden
            hint = item.sizeHint()
            if x > rect.x() and x + hint.width() > rect.right() + 1:
                x, y, row_height = rect.x(), y + row_height + self._row_gap, 0
            if is_real:
                item.setGeometry(QRect(QPoint(x, y), hint))
            x += hint.width() + self._gap
            row_height = max(row_height, hint.height())
        return y + row_height - rect.y()
