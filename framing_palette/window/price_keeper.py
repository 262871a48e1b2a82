"""The shop's prices while the window is open: read once, changed undoably, written."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand

from framing_palette.design import Design, Price, PriceBook, price_of
from framing_palette.errors import FramingPaletteError
from framing_palette.window.errands import Errands
from framing_palette.window.prices_files import (
    ShopPrices,
    price_book_place,
    prices_of_file,
    save_prices,
    shop_prices,
)
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from framing_palette.window.runner import Progress

READING, WRITING, OPENING = "price book reading", "price book writing", "price book opening"


class ChangePrices(QUndoCommand):
    """Replace the whole price book; it is checked before the command is made."""

    def __init__(
        self,
        words: str,
        before: ShopPrices,
        after: ShopPrices,
        assign: Callable[[ShopPrices], None],
    ) -> None:
        super().__init__(words)
        self._before, self._after, self._assign = before, after, assign

    def redo(self) -> None:
        """Put the later book in place."""
        self._assign(self._after)

    def undo(self) -> None:
        """Put the earlier book back."""
        self._assign(self._before)


class PriceKeeper(QObject):
    """Keeps the price book; ``changed`` tells whenever another one holds."""

    changed = Signal()

    def __init__(
        self,
        session: Session,
        errands: Errands,
        parent: QObject | None = None,
        path: Path | None = None,
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._errands = errands
        self._path = path
        self.prices: ShopPrices | None = None
        self.example: PriceBook | None = None
        self._written: ShopPrices | None = None

    @property
    def path(self) -> Path:
        """Where the book is kept."""
        if self._path is None:
            self._path = price_book_place()
        return self._path

    @property
    def book(self) -> PriceBook | None:
        """The price book; None until it was read."""
        return self.prices.book if self.prices else None

    @property
    def is_invented(self) -> bool:
        """Whether the figures are still those of the example; before the book is read, a guess."""
        if self.book is None:
            return not self.path.exists()
        return self.book == self.example

    def load(self) -> None:
        """Read the book, once."""
        if self.prices is not None or self._errands.runner.is_busy(READING):
            return
        path = self.path

        def work(progress: "Progress") -> tuple[ShopPrices, PriceBook]:
            from framing_palette.design import example_price_book

            progress.tell(0.0)
            return shop_prices(path), example_price_book()

        self._errands.runner.start(READING, work, done=self._take, failed=self._errands.tell)

    def edit(self, words: str, book: PriceBook) -> None:
        """Change the book, undoably."""
        if self.prices is not None and book != self.prices.book:
            self._push(words, ShopPrices(book, self.prices.text))

    def open_file(self, path: Path, failed: Callable[[Exception], None]) -> None:
        """Take over the prices of a file, undoably."""

        def work(progress: "Progress") -> ShopPrices:
            progress.tell(0.0)
            return prices_of_file(path)

        def done(prices: ShopPrices) -> None:
            self._push(self.tr("Take the prices of {name}").format(name=path.name), prices)

        self._errands.runner.start(OPENING, work, done=done, failed=failed)

    def price(self, design: Design) -> Price:
        """Price a design by the book as it is now.

        Raises
        ------
        FramingPaletteError
            When a price or a charge is missing, or the design cannot be built.
        """
        if self.book is None:
            raise FramingPaletteError(self.tr("The price book is being read."))
        return price_of(design, self.book, self._session.catalogue)

    def _take(self, read: tuple[ShopPrices, PriceBook]) -> None:
        self.prices, self.example = read
        self._written = self.prices
        self.changed.emit()

    def _push(self, words: str, after: ShopPrices) -> None:
        if self.prices is not None:
            command = ChangePrices(words, self.prices, after, self._assign)
            self._session.undo_stack.push(command)

    def _assign(self, prices: ShopPrices) -> None:
        self.prices = prices
        self.changed.emit()
        self._write()

    def _write(self) -> None:
        """Write the newest book; while one is being written, the next waits."""
        prices, path = self.prices, self.path
        if prices is None or prices == self._written or self._errands.runner.is_busy(WRITING):
            return

        def work(progress: "Progress") -> str:
            progress.tell(0.0)
            return save_prices(path, prices.book, prices.text)

        def done(_text: str) -> None:
            self._written = prices
            self._write()

        self._errands.runner.start(WRITING, work, done=done, failed=self._errands.tell)

    def finish(self) -> None:
        """Write what still waits, now; for the end of the program."""
        prices = self.prices
        if prices is not None and prices != self._written:
            try:
                save_prices(self.path, prices.book, prices.text)
            except FramingPaletteError as error:
                self._errands.tell(error)
