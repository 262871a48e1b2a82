"""The shelf of Measure: every size, each with a small "how" that unfolds its sum."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.jobs.measured import is_measured
from framing_palette.window.bench import Bench
from framing_palette.window.controls import Chip, rule, words
from framing_palette.window.forms import scrolled
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.tokens import GAP, MARGIN, SECTION, WIDE_MARGIN
from framing_palette.window.told_sizes import ToldPart, ToldSize, told_parts


class SizesShelf(QWidget):
    """The sizes of the design in hand."""

    def __init__(self, session: Session, bench: Bench) -> None:
        super().__init__()
        self._session = session
        self._bench = bench
        self.rows: list[SizeRow] = []
        self.told = words(size="small", quiet=True, wrap=True)
        self._open: set[str] = set()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, MARGIN, 0, 0)
        column.setSpacing(4)
        for label in (words(self.tr("Every size"), size="heading"), self.told):
            label.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 0)
            column.addWidget(label)
        column.addSpacing(GAP)
        inside = QWidget()
        self._rows = QVBoxLayout(inside)
        self._rows.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, SECTION)
        self._rows.setSpacing(4)
        column.addWidget(scrolled(inside), 1)
        for signal in (bench.changed, session.preferences_changed, session.job_changed):
            signal.connect(self._follow)
        self._tell()

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with what changed while nobody looked."""
        super().showEvent(event)
        if self._is_behind:
            self._tell()

    def _follow(self) -> None:
        """Make the rows anew, but only once they are looked at."""
        self._is_behind = True
        if self.isVisible():
            self._tell()

    def _tell(self) -> None:
        self._is_behind = False
        self._open = {row.key for row in self.rows if row.how.isChecked()}
        while (item := self._rows.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.rows = []
        self.told.setText(self._words())
        cuttable, preferences = self._bench.cuttable, self._session.preferences
        if cuttable is not None:
            for part in told_parts(
                cuttable, self._session.catalogue, preferences.unit, preferences.denominator
            ):
                self._add(part)
        self._rows.addStretch(1)

    def _words(self) -> str:
        job, design = self._session.desk.job, self._bench.design
        if job is None or design is None:
            return self.tr("Build a design first; its sizes and sums stand here.")
        name = design.name or self.tr("the design")
        preferences = self._session.preferences
        if is_measured(job, tolerance=preferences.tolerance, unit=preferences.unit):
            said = self.tr('Of {design}. "How" shows the sum behind a figure.')
        else:
            said = self.tr("Of {design}. By the size that was told, not measured yet.")
        return said.format(design=name)

    def _add(self, part: ToldPart) -> None:
        self._rows.addWidget(rule())
        self._rows.addWidget(words(in_language(part.title), strong=True, wrap=True))
        if part.remark:
            self._rows.addWidget(
                words(in_language(part.remark), size="small", quiet=True, wrap=True)
            )
        for size in part.sizes:
            row = SizeRow(part.title, size)
            row.how.setChecked(row.key in self._open)
            self.rows.append(row)
            self._rows.addWidget(row)


class SizeRow(QWidget):
    """One size; "how" unfolds its sum."""

    def __init__(self, title: str, size: ToldSize) -> None:
        super().__init__()
        self.key = f"{title}: {size.name}"
        said = self.tr("How it came about: {size}").format(
            size=f"{in_language(title)}: {in_language(size.name)}"
        )
        self.how = Chip(self.tr("how"), told=said)
        self.sums = words(in_language("\n".join(size.sums)), size="small", wrap=True)
        self.sums.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.sums.hide()
        told = QVBoxLayout()
        told.setSpacing(0)
        told.addWidget(words(in_language(size.name), size="small", quiet=True, wrap=True))
        told.addWidget(words(in_language(size.value), wrap=True))
        row = QHBoxLayout()
        row.addLayout(told, 1)
        row.addWidget(self.how, 0, Qt.AlignmentFlag.AlignVCenter)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 4, 0, 4)
        column.setSpacing(4)
        column.addLayout(row)
        column.addWidget(self.sums)
        self.how.toggled.connect(self.sums.setVisible)
