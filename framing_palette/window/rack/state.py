"""What the rack's views share: the points, what is wanted of them, and what is looked at."""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any

import numpy as np
from PySide6.QtCore import QObject, Signal

from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.catalogue.rack_map import RackPoints, neighbours, rack_points
from framing_palette.catalogue.wording import plain_words, search_words
from framing_palette.ranking.gaps import Reach, reaches
from framing_palette.window.errands import Errands
from framing_palette.window.rack.book import RackBook
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from framing_palette.arrays import BoolArray
    from framing_palette.picture import Findings

Lab = tuple[float, float, float]

POINTS, REACHES = "rack points", "rack reaches"
NEAR_DELTA_E = 12.0
FULL_RANGE = (0.0, 100.0)
MOST_NEAR = 60


@dataclass(frozen=True, slots=True)
class Wanted:
    """Which samples are looked through.

    Parameters
    ----------
    kinds
        Any of these; none means all.
    family
        A hue family; empty means all.
    lightness
        From one L* to another.
    only_there, only_liked
        Leave out what is told to be out of stock, and what is no favourite of the shop.
    words
        All of which a sample's name, code, family or tags must hold.
    """

    kinds: frozenset[Kind] = frozenset()
    family: str = ""
    lightness: tuple[float, float] = FULL_RANGE
    only_there: bool = False
    only_liked: bool = False
    words: str = ""


@dataclass(frozen=True, slots=True)
class Look:
    """What is looked near: a colour and what it is called; ``code`` when it is a sample's own."""

    lab: Lab
    name: str
    code: str = ""


@dataclass(frozen=True, slots=True)
class _Found:
    points: RackPoints
    row_of: dict[str, int]
    words: tuple[str, ...]


class RackState(QObject):
    """Follows the session's catalogue and findings; the views follow it."""

    points_changed = Signal()
    wanted_changed = Signal()
    look_changed = Signal()
    marked_changed = Signal()
    reaches_changed = Signal()

    def __init__(
        self,
        session: Session,
        errands: Errands,
        book: RackBook,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self.session = session
        self.book = book
        self._errands = errands
        self.points: RackPoints = rack_points(())
        self.catalogue = Catalogue(samples=())
        self.passing: BoolArray = np.zeros(0, dtype=np.bool_)
        self.wanted = Wanted()
        self.look: Look | None = None
        self.near: tuple[tuple[int, float], ...] = ()
        self.marked: tuple[int, ...] = ()
        self._row_of: dict[str, int] = {}
        self._words: tuple[str, ...] = ()
        self.reaches: tuple[Reach, ...] = ()
        session.catalogue_changed.connect(self._follow_catalogue)
        session.findings_changed.connect(self._reach)
        book.changed.connect(self._follow_book)
        self._follow_catalogue()

    def sample(self, row: int) -> Sample:
        """Return the sample of a row of the points."""
        return self.catalogue.samples[int(self.points.place[row])]

    def known(self, code: str) -> Sample | None:
        """Return the sample of a code; None when the catalogue has none."""
        catalogue = self.session.catalogue
        if code not in catalogue:
            return None
        return catalogue[code]

    def row_of(self, code: str) -> int:
        """Return the row of a sample; -1 when the map does not know it."""
        return self._row_of.get(code, -1)

    def is_liked(self, row: int) -> bool:
        """Tell whether a sample is a favourite of the shop."""
        return self.sample(row).code in self.book.liked()

    def want(self, **changes: Any) -> None:
        """Look through other samples."""
        wanted = replace(self.wanted, **changes)
        if wanted != self.wanted:
            self.wanted = wanted
            self._sieve()
            self.wanted_changed.emit()
            self._find_near()

    def look_at(self, look: Look | None) -> None:
        """Look near a colour."""
        self.look = look
        self._find_near()

    def look_at_row(self, row: int) -> None:
        """Look near a sample's own colour."""
        sample = self.sample(row)
        lightness, a, b = self.points.mean_lab[row].tolist()
        self.look_at(Look((lightness, a, b), sample.name, sample.code))

    def mark(self, rows: tuple[int, ...]) -> None:
        """Lay samples side by side on the shelf."""
        self.marked = tuple(dict.fromkeys(rows))
        self.marked_changed.emit()

    def _sieve(self) -> None:
        passing = self.fitting_but_lightness()
        if self.wanted.lightness != FULL_RANGE:
            passing &= self.points.between(*self.wanted.lightness)
        self.passing = passing

    def fitting_but_lightness(self) -> "BoolArray":
        """Return which samples are wanted, whatever their lightness."""
        points, wanted = self.points, self.wanted
        passing = points.of_kinds(wanted.kinds) & points.of_family(wanted.family)
        if wanted.only_there:
            passing &= points.is_there
        if wanted.only_liked:
            liked = np.zeros(len(points), dtype=np.bool_)
            liked[[self._row_of[code] for code in self.book.liked() if code in self._row_of]] = True
            passing &= liked
        for word in plain_words(wanted.words).split():
            has = (word in told for told in self._words)
            passing &= np.fromiter(has, dtype=np.bool_, count=len(points))
        return passing

    def _find_near(self) -> None:
        look = self.look
        self.near = ()
        if look is not None:
            found = neighbours(
                self.points, look.lab, within_delta_e=NEAR_DELTA_E, only=self.passing
            )
            self.near = found[:MOST_NEAR]
        self.look_changed.emit()

    def _follow_catalogue(self) -> None:
        catalogue = self.session.catalogue

        def take(found: _Found) -> None:
            marked = [self.sample(row).code for row in self.marked]
            self.points, self.catalogue = found.points, catalogue
            self._row_of, self._words = found.row_of, found.words
            self.marked = tuple(found.row_of[code] for code in marked if code in found.row_of)
            if self.look is not None and self.look.code not in {"", *found.row_of}:
                self.look = None
            self._sieve()
            self.points_changed.emit()
            self.marked_changed.emit()
            self._find_near()
            self._reach()

        self._errands.runner.start(
            POINTS,
            lambda _progress: _found(catalogue),
            done=take,
            failed=self._errands.tell,
        )

    def _follow_book(self) -> None:
        if self.wanted.only_liked:
            self._sieve()
            self.wanted_changed.emit()
        self.look_changed.emit()

    def _reach(self) -> None:
        findings, points = self.session.findings, self.points
        if findings is None:
            self._take_reaches(())
            return
        self._errands.runner.start(
            REACHES,
            lambda _progress: _reached(findings, points),
            done=self._take_reaches,
            failed=self._errands.tell,
        )

    def _take_reaches(self, found: tuple[Reach, ...]) -> None:
        self.reaches = found
        self.reaches_changed.emit()


def _found(catalogue: Catalogue) -> _Found:
    points = rack_points(catalogue.samples)
    samples = [catalogue.samples[place] for place in points.place.tolist()]
    row_of = {sample.code: row for row, sample in enumerate(samples)}
    return _Found(points, row_of, tuple(search_words(sample) for sample in samples))


def _reached(findings: "Findings", points: RackPoints) -> tuple[Reach, ...]:
    return reaches(findings, points)
