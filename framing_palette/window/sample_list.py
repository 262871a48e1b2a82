"""The shelf's list as a model: three quiet headings and the ranked samples under them."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import IntEnum
from typing import Any

from PySide6.QtCore import (
    QAbstractListModel,
    QMimeData,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
)

from framing_palette.catalogue import Kind, Sample
from framing_palette.ranking import RankedSample, Ranking, Verdict
from framing_palette.window.languages import told as in_language
from framing_palette.window.listing import Listed, listed_of
from framing_palette.window.parcels import SAMPLE_MIME, parcel

AnyIndex = QModelIndex | QPersistentModelIndex

MOST_LISTED = 150
"""Samples listed under one heading; the others are found by searching or by kind."""

_ORDER = (Verdict.COMPLEMENT, Verdict.BLEND, Verdict.CLASH)


class ListRole(IntEnum):
    """What a row of the list can be asked for besides its words."""

    ROW = Qt.ItemDataRole.UserRole + 1


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading with the number of samples under it."""

    verdict: Verdict
    count: int
    is_open: bool


@dataclass(frozen=True, slots=True)
class Rest:
    """How many samples under a heading are not listed, because so many fit better."""

    count: int


Row = Heading | RankedSample | Rest


class SampleList(QAbstractListModel):
    """Ranked samples that pass the filters, grouped by verdict."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._ranking: Ranking | None = None
        self._all: tuple[Listed, ...] = ()
        self._told: dict[str, str] = {}
        self._rows: list[Heading | Listed | Rest] = []
        self._place_of: dict[str, int] = {}
        self._open = {Verdict.COMPLEMENT, Verdict.BLEND}
        self._kinds: frozenset[Kind] = frozenset()
        self._sought = ""
        self._hidden: frozenset[str] = frozenset()
        self._near: dict[str, float] | None = None
        self._moved: Callable[[str], int] = lambda _code: 0

    def set_moved(self, moved: Callable[[str], int]) -> None:
        """Ask from now on how many places a sample was moved up by the shop's taste."""
        self._moved = moved

    def moved_words(self, code: str) -> str:
        """Return how far taste moved a sample; empty when it did not."""
        places = self._moved(code)
        if not places:
            return ""
        said = self.tr("up {places}") if places > 0 else self.tr("down {places}")
        return said.format(places=abs(places))

    def set_ranked(self, ranked: Ranking | None, listed: tuple[Listed, ...] | None = None) -> None:
        """Show another ranking; what it lists is made here unless it was made already."""
        self._ranking = ranked
        made = listed_of(ranked) if ranked is not None and listed is None else listed
        self._all = made or ()
        self._told = {}
        self._rebuild()

    def set_kinds(self, kinds: frozenset[Kind]) -> None:
        """Show only these kinds; none means all."""
        self._kinds = kinds
        self._rebuild()

    def set_sought(self, text: str) -> None:
        """Show only samples whose name, code, family or tags hold every word."""
        self._sought = text.casefold()
        self._rebuild()

    def set_hidden(self, codes: frozenset[str]) -> None:
        """Leave samples out that were sent away."""
        self._hidden = codes
        self._rebuild()

    def set_near(self, near: dict[str, float] | None) -> None:
        """Show only samples near a colour, nearest first under each heading; None means all."""
        self._near = near
        self._rebuild()

    def toggle(self, verdict: Verdict) -> None:
        """Open or close the part under a heading."""
        self._open ^= {verdict}
        self._rebuild()

    def row_at(self, index: AnyIndex) -> Row:
        """Return the heading or the ranked sample of a row."""
        row = self._rows[index.row()]
        if isinstance(row, Heading | Rest):
            return row
        if self._ranking is None:
            raise LookupError(row.sample.code)
        return self._ranking.at(row.position)

    def kind_of_row(self, index: AnyIndex) -> type:
        """Return what a row is, without making its words."""
        return type(self._rows[index.row()])

    def code_at(self, index: AnyIndex) -> str:
        """Return the code of a row; empty when it is no sample."""
        row = self._rows[index.row()]
        return row.sample.code if isinstance(row, Listed) else ""

    def index_of(self, code: str) -> QModelIndex:
        """Return where a sample stands; an invalid index when it is not shown."""
        place = self._place_of.get(code)
        return QModelIndex() if place is None else self.index(place)

    def shown_count(self) -> int:
        """Return how many samples pass the filters, closed parts included."""
        return sum(row.count for row in self._rows if isinstance(row, Heading))

    def rowCount(self, parent: AnyIndex | None = None) -> int:
        """Return the number of rows."""
        return 0 if parent is not None and parent.isValid() else len(self._rows)

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a row holds, and the words that a screen reader says for it."""
        if role == ListRole.ROW:
            return self.row_at(index)
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return self._spoken(self.row_at(index))
        return None

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """Let rows be chosen and samples be dragged away."""
        if isinstance(self._rows[index.row()], Rest):
            return Qt.ItemFlag.ItemIsEnabled
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        if isinstance(self._rows[index.row()], Listed):
            flags |= Qt.ItemFlag.ItemIsDragEnabled
        return flags

    def mimeTypes(self) -> list[str]:
        """Return the form in which a sample is dragged."""
        return [SAMPLE_MIME]

    def mimeData(self, indexes: Any) -> QMimeData:
        """Put the code of the dragged sample into a parcel."""
        rows = [self._rows[index.row()] for index in indexes]
        codes = [row.sample.code for row in rows if isinstance(row, Listed)]
        return parcel(codes[0]) if codes else QMimeData()

    def heading_words(self, verdict: Verdict) -> str:
        """Return the heading of a verdict."""
        return {
            Verdict.COMPLEMENT: self.tr("Complements"),
            Verdict.BLEND: self.tr("Blends"),
            Verdict.CLASH: self.tr("Clashes"),
        }[verdict]

    def _spoken(self, row: Row) -> str:
        if isinstance(row, Heading):
            state = self.tr("open") if row.is_open else self.tr("closed")
            return f"{self.heading_words(row.verdict)}, {row.count}, {state}"
        if isinstance(row, Rest):
            return self.rest_words(row)
        moved = self.moved_words(row.sample.code)
        by_taste = self.tr("By taste {moved}.").format(moved=moved) if moved else ""
        return " ".join(
            part
            for part in (f"{row.sample.name}.", by_taste, *map(in_language, row.reasons))
            if part
        )

    def rest_words(self, rest: Rest) -> str:
        """Return how many more there are and how to see them."""
        return self.tr("{count:,} more that fit less well: search, or show one kind.").format(
            count=rest.count
        )

    def _rebuild(self) -> None:
        self.beginResetModel()
        wanted = [listed for listed in self._all if self._passes(listed.sample)]
        if self._near is not None:
            near = self._near
            wanted.sort(key=lambda listed: near[listed.sample.code])
        self._rows = []
        for verdict in _ORDER:
            group = [listed for listed in wanted if listed.verdict is verdict]
            is_open = verdict in self._open or bool(self._sought)  # who searches wants to find
            if group:
                self._rows.append(Heading(verdict, len(group), is_open))
                self._rows.extend(group[:MOST_LISTED] if is_open else ())
                if is_open and len(group) > MOST_LISTED:
                    self._rows.append(Rest(len(group) - MOST_LISTED))
        self._place_of = {
            row.sample.code: number
            for number, row in enumerate(self._rows)
            if isinstance(row, Listed)
        }
        self.endResetModel()

    def _passes(self, sample: Sample) -> bool:
        if sample.code in self._hidden or (self._kinds and sample.kind not in self._kinds):
            return False
        if self._near is not None and sample.code not in self._near:
            return False
        if not self._sought:
            return True
        told = self._words_of(sample)
        return all(word in told for word in self._sought.split())

    def _words_of(self, sample: Sample) -> str:
        """Return what a search looks through, made once per sample."""
        if sample.code not in self._told:
            words = (sample.name, sample.code, sample.collection, *sample.tags)
            self._told[sample.code] = " ".join(words).casefold()
        return self._told[sample.code]
