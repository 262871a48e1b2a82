"""The shop's book of its rack: marks and imports, each by name and undoable, written one by one.

Each change is queued and written off the interface thread; what the library answers becomes the
session's catalogue. When a change fails, it is said in the notice and the rack stays as it was.
"""

from collections import deque
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QUndoCommand

from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.window.errands import Errands
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from framing_palette.catalogue.merging import ImportPlan
    from framing_palette.catalogue.shop_rack_files import FilePreview, Said, ShopRack

BOOK, LOOKING = "rack book", "rack looking"

Work = Callable[[], "ShopRack"]


class ChangeRack(QUndoCommand):
    """One change of the rack; both ways are queued by the book."""

    def __init__(self, words: str, *, forth: Callable[[], None], back: Callable[[], None]) -> None:
        super().__init__(words)
        self._forth = forth
        self._back = back

    def redo(self) -> None:
        """Do it."""
        self._forth()

    def undo(self) -> None:
        """Take it back."""
        self._back()


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
        self._queue: deque[Work] = deque()
        self._is_ours = False
        session.catalogue_changed.connect(self._follow)
        self._follow()

    @property
    def place(self) -> Path:
        """The library of the catalogue that is loaded."""
        from framing_palette.catalogue.shop_rack_files import default_libraries, library_place

        return library_place(self.folder or default_libraries(), self._base)

    def said_of(self, code: str) -> "Said":
        """Return what the shop says of a sample now."""
        from framing_palette.catalogue.shop_rack_files import Said

        return self.rack.of(code) if self.rack is not None else Said()

    def liked(self) -> frozenset[str]:
        """Return the codes of the shop's favourites."""
        return self.rack.liked if self.rack is not None else frozenset()

    def hidden(self) -> tuple[Sample, ...]:
        """Return the samples that are not to be shown."""
        return self.rack.hidden if self.rack is not None else ()

    def say(self, words: str, code: str, now: "Said") -> None:
        """Say something of a sample, undoably."""
        before = self.said_of(code)
        if now != before:
            self._push(
                words,
                lambda: self._write(code, before, now),
                lambda: self._write(code, now, before),
            )

    def look_at_file(
        self,
        path: Path,
        kind: Kind,
        *,
        done: Callable[["FilePreview"], None],
        failed: Callable[[Exception], None],
    ) -> None:
        """Find out what a file would change."""
        from framing_palette.catalogue.shop_rack_files import look_at_file

        place, base = self.place, self._base
        self._errands.runner.start(
            LOOKING,
            lambda _progress: look_at_file(place, base, path, kind),
            done=done,
            failed=failed,
        )

    def bring_in_samples(self, words: str, samples: tuple[Sample, ...], source: str) -> None:
        """Bring samples in, undoably; the plan is made when it is done, also a second time."""
        from framing_palette.catalogue.shop_rack_files import bring_in, plan_samples, take_out

        place, base, numbers = self.place, self._base, list[int]()

        def forth() -> "ShopRack":
            number, rack = bring_in(place, base, plan_samples(place, base, samples, source))
            numbers.append(number)
            return rack

        self._push(
            words,
            lambda: self._queue_up(forth),
            lambda: self._queue_up(lambda: take_out(place, base, numbers.pop())),
        )

    def bring_in(self, words: str, plan: "ImportPlan") -> None:
        """Bring in what was looked at, undoably."""
        self.bring_in_samples(words, tuple(plan.samples), plan.source)

    def _push(self, words: str, forth: Callable[[], None], back: Callable[[], None]) -> None:
        self._session.undo_stack.push(ChangeRack(words, forth=forth, back=back))

    def _write(self, code: str, before: "Said", now: "Said") -> None:
        from framing_palette.catalogue.shop_rack_files import say

        place, base = self.place, self._base
        self._queue_up(lambda: say(place, base, code, before, now))

    def _queue_up(self, work: Work) -> None:
        self._queue.append(work)
        if not self._errands.runner.is_busy(BOOK):
            self._work_on()

    def _work_on(self) -> None:
        if self._queue:
            work = self._queue.popleft()
            self._errands.runner.start(
                BOOK, lambda _progress: work(), done=self._take, failed=self._fail
            )

    def _fail(self, error: Exception) -> None:
        self._queue.clear()
        self._errands.tell(error)

    def _take(self, rack: "ShopRack") -> None:
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
        self._queue.clear()
        if len(self._base) and self.place.exists():
            from framing_palette.catalogue.shop_rack_files import open_shop_rack

            place, base = self.place, self._base
            self._queue_up(lambda: open_shop_rack(place, base))
