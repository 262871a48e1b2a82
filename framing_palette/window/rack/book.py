"""The shop's book of its rack: marks and imports, each by name and undoable, written one by one.

The library's own libraries take long to load, so they are loaded where the work is done.

Each change is queued and written off the interface thread; what the library answers becomes the
session's catalogue. When a change fails, it is said in the notice and the rack stays as it was.
"""

from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand

from framing_palette.catalogue import Catalogue, Sample
from framing_palette.catalogue.rack_places import default_libraries, library_place
from framing_palette.catalogue.shop_edits import Said
from framing_palette.errors import FramingPaletteError
from framing_palette.window.errands import Errands
from framing_palette.window.runner import Progress
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from framing_palette.catalogue.incoming_files import HowToRead
    from framing_palette.catalogue.merging import ImportPlan
    from framing_palette.catalogue.shop_rack_files import FilePreview, ShopRack
    from framing_palette.catalogue.store import ImportNote

BOOK, LOOKING = "rack book", "rack looking"

Work = Callable[[], "ShopRack"]


class ChangeRack(QUndoCommand):
    """One change of the rack; both ways are queued by the book.

    A change that failed is obsolete: neither way does anything any more.
    """

    def __init__(
        self,
        words: str,
        *,
        forth: Callable[["ChangeRack"], None],
        back: Callable[["ChangeRack"], None],
    ) -> None:
        super().__init__(words)
        self._forth = forth
        self._back = back

    def redo(self) -> None:
        """Do it."""
        if not self.isObsolete():
            self._forth(self)

    def undo(self) -> None:
        """Take it back."""
        if not self.isObsolete():
            self._back(self)


@dataclass(frozen=True, slots=True)
class _Due:
    """Work that waits, the catalogue that it was made for, and the change that asked for it."""

    work: Work
    base: Catalogue
    change: ChangeRack | None = None


class RackBook(QObject):
    """What the shop says of its samples, and what it brings in."""

    changed = Signal()

    def __init__(self, session: Session, errands: Errands, folder: Path | None = None) -> None:
        super().__init__(session)
        self._session = session
        self._errands = errands
        self.folder = folder
        self._base = Catalogue(samples=())
        self.rack: ShopRack | None = None
        self._queue: deque[_Due] = deque()
        self._is_ours = False
        session.catalogue_changed.connect(self._follow)
        self._follow()

    @property
    def place(self) -> Path:
        """The library of the catalogue that is loaded."""
        return library_place(self.folder or default_libraries(), self._base)

    def said_of(self, code: str) -> Said:
        """Return what the shop says of a sample now."""
        return self.rack.of(code) if self.rack is not None else Said()

    def liked(self) -> frozenset[str]:
        """Return the codes of the shop's favourites."""
        return self.rack.liked if self.rack is not None else frozenset()

    def hidden(self) -> tuple[Sample, ...]:
        """Return the samples that are not to be shown."""
        return self.rack.hidden if self.rack is not None else ()

    def say(self, words: str, code: str, now: Said) -> None:
        """Say something of a sample, undoably."""
        before = self.said_of(code)
        if now != before:
            self._push(
                words,
                lambda change: self._write(code, before, now, change),
                lambda change: self._write(code, now, before, change),
            )

    def look_at_file(
        self,
        path: Path,
        how: "HowToRead",
        *,
        done: Callable[["FilePreview"], None],
        failed: Callable[[Exception], None],
    ) -> None:
        """Find out what a file would change."""
        place, base = self.place, self._base

        def work(_progress: Progress) -> "FilePreview":
            from framing_palette.catalogue.shop_rack_files import look_at_file

            return look_at_file(place, base, path, how)

        self._errands.runner.start(
            LOOKING,
            work,
            done=done,
            failed=failed,
        )

    def bring_in_samples(self, words: str, samples: tuple[Sample, ...], source: str) -> None:
        """Bring samples in, undoably; the plan is made when it is done, also a second time."""
        place, base, numbers = self.place, self._base, list[int]()

        def forth() -> "ShopRack":
            from framing_palette.catalogue.shop_rack_files import bring_in, plan_samples

            number, rack = bring_in(place, base, plan_samples(place, base, samples, source))
            numbers.append(number)
            return rack

        def back() -> "ShopRack":
            from framing_palette.catalogue.shop_rack_files import take_out

            return take_out(place, base, numbers.pop())

        self._push(
            words,
            lambda change: self._queue_up(_Due(forth, base, change)),
            lambda change: self._queue_up(_Due(back, base, change)),
        )

    def imports(self) -> "tuple[ImportNote, ...]":
        """Return what was brought in and not taken out again, latest first."""
        return self.rack.imports if self.rack is not None else ()

    def take_back(self, words: str, number: int, source: str) -> None:
        """Take an import and every later one out again, undoably."""
        place, base = self.place, self._base
        numbers, brought = [number], list[Sample]()

        def forth() -> "ShopRack":
            from framing_palette.catalogue.shop_rack_files import take_back

            brought[:], rack = take_back(place, base, numbers.pop())
            return rack

        def back() -> "ShopRack":
            from framing_palette.catalogue.shop_rack_files import bring_back

            again, rack = bring_back(place, base, brought, source)
            numbers.append(again)
            return rack

        self._push(
            words,
            lambda change: self._queue_up(_Due(forth, base, change)),
            lambda change: self._queue_up(_Due(back, base, change)),
        )

    def bring_in(self, words: str, plan: "ImportPlan") -> None:
        """Bring in what was looked at, undoably."""
        self.bring_in_samples(words, tuple(plan.samples), plan.source)

    def finish(self) -> None:
        """Write what still waits, now; for the end of the program."""
        while self._queue:
            due = self._queue.popleft()
            try:
                due.work()
            except FramingPaletteError as error:
                self._errands.tell(error)

    def _push(
        self,
        words: str,
        forth: Callable[[ChangeRack], None],
        back: Callable[[ChangeRack], None],
    ) -> None:
        self._session.undo_stack.push(ChangeRack(words, forth=forth, back=back))

    def _write(self, code: str, before: Said, now: Said, change: ChangeRack) -> None:
        place, base = self.place, self._base

        def work() -> "ShopRack":
            from framing_palette.catalogue.shop_rack_files import say

            return say(place, base, code, before, now)

        self._queue_up(_Due(work, base, change))

    def _queue_up(self, due: _Due) -> None:
        self._queue.append(due)
        if not self._errands.runner.is_busy(BOOK):
            self._work_on()

    def _work_on(self) -> None:
        if self._queue:
            due = self._queue.popleft()
            self._errands.runner.start(
                BOOK,
                lambda _progress: due.work(),
                done=lambda rack: self._take(due, rack),
                failed=lambda error: self._fail(due, error),
            )

    def _fail(self, failed: _Due, error: Exception) -> None:
        for due in (failed, *self._queue):
            if due.change is not None:
                due.change.setObsolete(True)
        self._queue.clear()
        self._errands.tell(error)

    def _take(self, due: _Due, rack: "ShopRack") -> None:
        if due.base is self._base:
            self.rack = rack
            self._is_ours = True
            self._session.assign("catalogue", rack.catalogue)
            self._is_ours = False
            self.changed.emit()
        self._work_on()

    def _follow(self) -> None:
        """Read what the shop has said of another catalogue, when it has said anything."""
        if self._is_ours:
            return
        self._base, self.rack = self._session.catalogue, None
        if len(self._base) and self.place.exists():
            place, base = self.place, self._base

            def work() -> "ShopRack":
                from framing_palette.catalogue.shop_rack_files import open_shop_rack

                return open_shop_rack(place, base)

            self._queue_up(_Due(work, base))
