"""The shelf's list as a model: three quiet headings and the ranked samples under them."""

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

from framing_palette.catalogue import Kind
from framing_palette.ranking import RankedSample, Verdict
from framing_palette.window.parcels import SAMPLE_MIME, parcel

AnyIndex = QModelIndex | QPersistentModelIndex

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


Row = Heading | RankedSample


class SampleList(QAbstractListModel):
    """Ranked samples that pass the filters, grouped by verdict."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._all: tuple[RankedSample, ...] = ()
        self._rows: list[Row] = []
        self._open = {Verdict.COMPLEMENT, Verdict.BLEND}
        self._kinds: frozenset[Kind] = frozenset()
        self._sought = ""
        self._hidden: frozenset[str] = frozenset()
        self._near: dict[str, float] | None = None

    def set_ranked(self, ranked: tuple[RankedSample, ...]) -> None:
        """Show another ranking."""
        self._all = ranked
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
        """Return the heading or sample of a row."""
        return self._rows[index.row()]

    def index_of(self, code: str) -> QModelIndex:
        """Return where a sample stands; an invalid index when it is not shown."""
        for number, row in enumerate(self._rows):
            if isinstance(row, RankedSample) and row.sample.code == code:
                return self.index(number)
        return QModelIndex()

    def shown_count(self) -> int:
        """Return how many samples pass the filters, closed parts included."""
        return sum(row.count for row in self._rows if isinstance(row, Heading))

    def rowCount(self, parent: AnyIndex | None = None) -> int:
        """Return the number of rows."""
        return 0 if parent is not None and parent.isValid() else len(self._rows)

    def data(self, index: AnyIndex, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a row holds, and the words that a screen reader says for it."""
        row = self._rows[index.row()]
        if role == ListRole.ROW:
            return row
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return self._spoken(row)
        return None

    def flags(self, index: AnyIndex) -> Qt.ItemFlag:
        """Let rows be chosen and samples be dragged away."""
        flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        if isinstance(self._rows[index.row()], RankedSample):
            flags |= Qt.ItemFlag.ItemIsDragEnabled
        return flags

    def mimeTypes(self) -> list[str]:
        """Return the form in which a sample is dragged."""
        return [SAMPLE_MIME]

    def mimeData(self, indexes: Any) -> QMimeData:
        """Put the code of the dragged sample into a parcel."""
        rows = [self._rows[index.row()] for index in indexes]
        codes = [row.sample.code for row in rows if isinstance(row, RankedSample)]
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
        return f"{row.sample.name}. {' '.join(row.reasons)}"

    def _rebuild(self) -> None:
        self.beginResetModel()
        wanted = [ranked for ranked in self._all if self._passes(ranked)]
        if self._near is not None:
            near = self._near
            wanted.sort(key=lambda ranked: near[ranked.sample.code])
        self._rows = []
        for verdict in _ORDER:
            group = [ranked for ranked in wanted if ranked.verdict is verdict]
            is_open = verdict in self._open
            if group:
                self._rows.append(Heading(verdict, len(group), is_open))
                self._rows.extend(group if is_open else ())
        self.endResetModel()

    def _passes(self, ranked: RankedSample) -> bool:
        sample = ranked.sample
        if sample.code in self._hidden or (self._kinds and sample.kind not in self._kinds):
            return False
        if self._near is not None and sample.code not in self._near:
            return False
        if not self._sought:
            return True
        told = " ".join((sample.name, sample.code, sample.collection, *sample.tags)).casefold()
        return all(word in told for word in self._sought.split())
