"""One of the looks that stand side by side: its picture, its words, its note, what to do."""

from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from framing_palette.jobs import OnRail
from framing_palette.ranking import Verdict
from framing_palette.ranking.look_differences import look_difference_words
from framing_palette.window.canvas.border import BorderLayer
from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.outlook import Outlook
from framing_palette.window.controls import IconButton, words
from framing_palette.window.keeping import lay_round, let_go
from framing_palette.window.languages.telling import told as in_language
from framing_palette.window.look_view import LookView
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.taste_work import prefer_look, reject_look
from framing_palette.window.tokens import GAP, MARGIN

_ICON_INDENT = MARGIN - 10  # what is drawn of the first icon stands under the words


class ComparePanel(QWidget):
    """One look with its words."""

    def __init__(
        self,
        session: Session,
        swatches: SwatchBook,
        outlook: Outlook,
        number: int,
        kept: OnRail,
    ) -> None:
        super().__init__()
        self._session = session
        self._number = number
        self._other = 0
        self.kept = kept
        self.view = LookView(session, swatches, outlook, kept.codes)
        self.view.show_look(kept.codes, kept.title)
        self.told = words(size="small", quiet=True, wrap=True)
        self.title = words(f"{number + 1}  {kept.title}", strong=True, wrap=True)
        self.title.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.told.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.note = QLineEdit(kept.note)
        self.note.setProperty("rank", "quiet")
        self.note.setPlaceholderText(self.tr("Note"))
        self.note.setAccessibleName(self.tr("Note on {title}").format(title=kept.title))
        self.note.editingFinished.connect(self._take_note)
        self._lay_out()
        for signal in (session.ranked_changed, session.answers_changed):
            signal.connect(self._tell)
        self._tell()

    @property
    def canvas(self) -> Canvas:
        """The picture."""
        return self.view.canvas

    @property
    def border(self) -> BorderLayer:
        """What is laid round it."""
        return self.view.border

    def show_kept(self, kept: OnRail) -> None:
        """Show the same look with another note."""
        self.kept = kept
        if self.note.text() != kept.note:
            self.note.setText(kept.note)

    def compare_with(self, number: int) -> None:
        """Tell the differences from another of the looks."""
        self._other = number
        self._tell()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.view, 1)
        below = QVBoxLayout()
        below.setContentsMargins(MARGIN, GAP, MARGIN, 4)
        below.setSpacing(4)
        below.addWidget(self.title)
        below.addWidget(self.told)
        below.addWidget(self.note)
        self.action_row = self._make_actions()
        column.addLayout(below)
        column.addWidget(self.action_row)

    def _make_actions(self) -> QWidget:
        actions = QWidget()
        row = QHBoxLayout(actions)
        row.setContentsMargins(_ICON_INDENT, 0, 0, GAP)
        row.setSpacing(0)
        self.buttons: dict[str, IconButton] = {}
        for name, icon, said in (
            ("prefer", "done", self.tr("Prefer it to those beside it: {title}")),
            ("lay", "lay", self.tr("Lay this one round the picture: {title}")),
            ("off", "close", self.tr("Take it off the rail: {title}")),
            ("away", "away", self.tr("Send it away: {title}")),
        ):
            button = IconButton(icon, said.format(title=self.kept.title))
            button.clicked.connect(lambda _on=False, name=name: self._do(name))
            self.buttons[name] = button
            row.addWidget(button)
        row.addStretch(1)
        return actions

    def _do(self, name: str) -> None:
        if name == "prefer":
            prefer_look(self._session, self._number)
        elif name == "lay" and self._session.desk.laid != self.kept.codes:
            lay_round(self._session, self.kept.codes)
        elif name == "off":
            let_go(self._session, self._number)
        elif name == "away":
            reject_look(self._session, self._number)

    def _take_note(self) -> None:
        kept = self._session.desk.kept
        text = self.note.text().strip()
        if self._number < len(kept) and kept[self._number].note != text:
            noted = replace(kept[self._number], note=text)
            others = (*kept[: self._number], noted, *kept[self._number + 1 :])
            self._session.edit(self.tr("Note on {title}").format(title=noted.title), kept=others)

    def _tell(self) -> None:
        lines = [*self._verdict_words(), *self._difference_words(), *self._preference_words()]
        self.told.setText("\n".join(lines))

    def _verdict_words(self) -> list[str]:
        """Return what a single sample does; a design's parts touch each other, not the picture."""
        ranked = self._session.ranked_of(self.kept.codes[0])
        if ranked is None or len(self.kept.codes) > 1:
            return []
        said = {
            Verdict.COMPLEMENT: self.tr("Stands apart and belongs."),
            Verdict.BLEND: self.tr("Settles into the picture or keeps back."),
            Verdict.CLASH: self.tr("Fights the picture."),
        }
        return [said[ranked.verdict]]

    def _difference_words(self) -> list[str]:
        kept, rack = self._session.desk.kept, self._session.catalogue
        other = kept[self._other] if self._other < len(kept) else self.kept
        looks = [[rack[code] for code in look.codes if code in rack] for look in (self.kept, other)]
        if other.codes == self.kept.codes or not all(looks):
            return []
        return [in_language(sentence) for sentence in look_difference_words(*looks)]

    def _preference_words(self) -> list[str]:
        titles = {kept.codes: kept.title for kept in self._session.desk.kept}
        over = [
            titles[answer.worse]
            for answer in self._session.desk.answers
            if answer.better == self.kept.codes and answer.worse in titles and not answer.is_open
        ]
        if not over:
            return []
        return [self.tr("Preferred to {titles}.").format(titles=", ".join(over))]
