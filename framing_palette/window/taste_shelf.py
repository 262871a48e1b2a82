"""The taste card: what the shop's choices speak for, how far to trust it, and what it changes."""

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from framing_palette.ranking import Move
from framing_palette.ranking.taste import FEWEST_CHOICES, MOVES_AT_MOST, SMALLEST_MOVE
from framing_palette.ranking.taste_effect import weights_words
from framing_palette.window.controls import IconButton, push_button, words
from framing_palette.window.forms import Choice, FormShelf
from framing_palette.window.languages.telling import told
from framing_palette.window.session import Session
from framing_palette.window.taste_book import TasteBook
from framing_palette.window.tokens import GAP

_MOST_WEIGHTS = 5


class TasteShelf(FormShelf):
    """Switch, evidence, effect, and what can be done with the choices."""

    left = Signal()
    asked = Signal()

    def __init__(self, session: Session, book: TasteBook) -> None:
        super().__init__(
            self.tr("Taste"),
            self.tr("What this shop prefers, learned from its own choices and from nothing else."),
        )
        self._session = session
        self._book = book
        self.switch = Choice(
            self.tr("Order of the shortlist"),
            ((False, self.tr("House rule")), (True, self.tr("This shop's taste"))),
        )
        self.state = words(wrap=True)
        self.rests = words(size="small", wrap=True)
        self.learned = words(size="small", wrap=True)
        self.changes = words(size="small", wrap=True)
        self.moves = words(size="small", wrap=True)
        self.said = words(size="small", wrap=True)
        self.buttons: dict[str, QPushButton] = {
            "learn": push_button(self.tr("Learn from the choices"), rank="first"),
            "ask": push_button(self.tr("Answer a question")),
            "export": push_button(self.tr("Export")),
            "import": push_button(self.tr("Import")),
            "forget": push_button(self.tr("Forget all")),
        }
        self._add_order()
        self._add_evidence()
        self._add_effect()
        self._add_carrying()
        self.end()
        self._wire()
        self._tell()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go back to the samples with Escape."""
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)

    def _add_order(self) -> None:
        close = IconButton("close", self.tr("Back to the samples"), keys="Esc")
        close.clicked.connect(self.left)
        self.add_to_head(close)
        self.row(self.tr("The shortlist is ordered by"), self.switch)
        self.row("", self.state)

    def _add_evidence(self) -> None:
        self.section(self.tr("What it rests on"))
        self.row("", self.rests)
        self.row("", self.learned)
        self.row("", self._buttons("learn", "ask"))
        self.row(
            "",
            words(
                self.tr(
                    "Keeping, sending away, preferring side by side and answering questions make "
                    "choices, always between samples of one kind on one picture. Choices are "
                    "counted as you work; nothing is learned from them until you ask for it."
                ),
                size="small",
                quiet=True,
                wrap=True,
            ),
        )

    def _add_effect(self) -> None:
        self.section(self.tr("What it changes"))
        self.row("", self.changes)
        self.row("", self.moves)
        bounds = self.tr(
            "A weight moves by at most {part} of its house value, or by {least} where that is "
            "more, and never turns round. No verdict changes: taste orders samples within "
            "complements, blends and clashes."
        ).format(part=f"{MOVES_AT_MOST * 100:.0f}\u00a0%", least=f"{SMALLEST_MOVE:g}")
        self.row("", words(bounds, size="small", quiet=True, wrap=True))

    def _add_carrying(self) -> None:
        self.section(self.tr("Keep and carry"))
        self.row("", self._buttons("export", "import", "forget"))
        self.row("", self.said)
        self.row(
            "",
            words(
                self.tr(
                    "The file holds measures and sample codes, no picture and no client. "
                    "Importing takes the place of what is here; both can be undone."
                ),
                size="small",
                quiet=True,
                wrap=True,
            ),
        )

    def _buttons(self, *names: str) -> QWidget:
        row = QWidget()
        column = QVBoxLayout(row) if "learn" in names else QHBoxLayout(row)
        column.setContentsMargins(0, GAP, 0, GAP)
        column.setSpacing(GAP)
        for name in names:
            column.addWidget(self.buttons[name])
        return row

    def _wire(self) -> None:
        book, session = self._book, self._session
        self.switch.picked.connect(lambda on: book.switch(on=bool(on)))
        self.buttons["learn"].clicked.connect(book.learn)
        self.buttons["ask"].clicked.connect(self.asked)
        self.buttons["export"].clicked.connect(self._export)
        self.buttons["import"].clicked.connect(self._import)
        self.buttons["forget"].clicked.connect(book.forget)
        book.told.connect(self._say)
        for signal in (book.changed, book.effect_changed, session.preferences_changed):
            signal.connect(self._tell)
        session.ranked_changed.connect(self._tell)

    def _tell(self) -> None:
        book, preferences = self._book, self._session.preferences
        taste, learned = book.taste, book.taste.learned
        self.switch.show_value(preferences.taste_on)
        self.state.setText(self._state_words(is_on=preferences.taste_on))
        self.rests.setText(self._rests_words())
        is_told = learned is not None and not book.newer and not taste.passed
        self.rests.setVisible(not is_told)
        self.learned.setText(self._learned_words())
        can_learn = len(taste.choices) >= FEWEST_CHOICES and (learned is None or book.newer > 0)
        self.buttons["learn"].setEnabled(can_learn)
        self.buttons["ask"].setEnabled(self._session.ranked is not None)
        for name in ("export", "forget"):
            self.buttons[name].setEnabled(bool(taste.choices or taste.passed))
        self.changes.setText(self._changes_words())
        self.moves.setText("\n".join(self._moves_lines()))
        self.moves.setVisible(bool(self.moves.text()))
        self.said.setVisible(bool(self.said.text()))

    def _state_words(self, *, is_on: bool) -> str:
        if not is_on:
            return self.tr("Off. The house rule orders the shortlist.")
        if self._book.is_used:
            return self.tr("On. This shop's own weights order the shortlist.")
        return self.tr("On, but the house rule still orders the shortlist; see below why.")

    def _rests_words(self) -> str:
        taste = self._book.taste
        pictures = len({choice.picture for choice in taste.choices})
        said = self.tr("Choices: {count}, on pictures: {pictures}.").format(
            count=len(taste.choices), pictures=pictures
        )
        if taste.passed:
            left = self.tr("Pairs left undecided: {count}.").format(count=len(taste.passed))
            said = f"{said} {left}"
        return said

    def _learned_words(self) -> str:
        learned, newer = self._book.taste.learned, self._book.newer
        if learned is None:
            missing = FEWEST_CHOICES - len(self._book.taste.choices)
            if missing > 0:
                said = self.tr(
                    "Nothing is learned yet. It takes {fewest} choices at least; {missing} are "
                    "missing."
                )
                return said.format(fewest=FEWEST_CHOICES, missing=missing)
            return self.tr("Nothing is learned yet. There are enough choices to learn from.")
        said = told(learned.words)
        if newer:
            more = self.tr("Newer choices that are not in it yet: {count}.").format(count=newer)
            said = f"{said} {more}"
        return said

    def _changes_words(self) -> str:
        learned = self._book.taste.learned
        if learned is None or not learned.in_use:
            return self.tr("Nothing: the house rule stays as it is.")
        lines = weights_words(learned.moved())[:_MOST_WEIGHTS]
        return "\n".join((self.tr("Against the house rule:"), *(told(line) for line in lines)))

    def _moves_lines(self) -> list[str]:
        effect = self._book.effect
        if effect is None:
            return []
        shift = effect.shift
        first = self.tr(
            "On this picture {same} of the first {top} are the same by both. Places within a "
            "verdict by the house rule, and now:"
        ).format(same=shift.same_at_top, top=shift.top)
        return [first, *(self._move_words(move) for move in shift.moves)]

    def _move_words(self, move: Move) -> str:
        rack = self._session.catalogue
        name = rack[move.code].name if move.code in rack else move.code
        up = self.tr("{before} \u2192 {after}, up: {name}")
        down = self.tr("{before} \u2192 {after}, down: {name}")
        said = up if move.places > 0 else down
        return said.format(name=name, before=move.house_place, after=move.own_place)

    def _export(self) -> None:
        name, _ = QFileDialog.getSaveFileName(
            self, self.tr("Export this shop's taste"), "taste.json", self._files()
        )
        if name:
            self._book.export_to(Path(name))

    def _import(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self, self.tr("Import a shop's taste"), "", self._files()
        )
        if name:
            self._book.import_from(Path(name))

    def _files(self) -> str:
        return self.tr("Taste (*.json)")

    def _say(self, said: str) -> None:
        self.said.setText(said)
        self.said.setVisible(bool(said))
