"""The job in one line: whose, what, how large, how far its colours can be trusted."""

from PySide6.QtCore import QCoreApplication, Qt, Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QSizePolicy, QVBoxLayout, QWidget

from framing_palette.window.controls import ElidedWords, IconButton, key_words
from framing_palette.window.languages import QT_TRANSLATE_NOOP
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.tokens import BODY, GAP, JOB_LINE_HEIGHT, SMALL, WIDE_MARGIN

_ROOM_FOR_SEARCH = 760
_TRUST_WORDS = {
    "whites": QT_TRANSLATE_NOOP("JobLine", "colours good enough to choose between whites"),
    "hues": QT_TRANSLATE_NOOP("JobLine", "colours good enough to choose between neighbouring hues"),
    "families": QT_TRANSLATE_NOOP("JobLine", "colours good for broad families only"),
    "unknown": QT_TRANSLATE_NOOP("JobLine", "colours not checked"),
}


class JobLine(QWidget):
    """Title and facts at the left, undo and search at the right."""

    sought = Signal(str)

    def __init__(self, session: Session) -> None:
        super().__init__()
        self.setObjectName("chrome")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setFixedHeight(JOB_LINE_HEIGHT)
        self._session = session
        self._title = ElidedWords(size=BODY, strong=True)
        self._facts = ElidedWords(size=SMALL, quiet=True)
        self._doing = ElidedWords(size=SMALL, quiet=True)
        self._doing.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.search = QLineEdit()
        self.search.setProperty("rank", "quiet")
        self.search.setPlaceholderText(self.tr("Search   /"))
        self.search.setAccessibleName(self.tr("Search the samples"))
        self.search.setClearButtonEnabled(False)
        self.search.setFixedWidth(208)
        self.search.textChanged.connect(self.sought)
        self.undo = IconButton("undo", self.tr("Nothing to undo"))
        self.redo = IconButton("redo", self.tr("Nothing to redo"))
        self.rail = IconButton("rail", self.tr("The rail, away or back"), keys="F8")
        self.shelf = IconButton("shelf", self.tr("The shelf, away or back"), keys="F9")
        self._lay_out()
        self._wire()

    def set_doing(self, text: str) -> None:
        """Say what is being worked on in the background, or nothing."""
        self._doing.set_text(text)

    def resizeEvent(self, event: object) -> None:
        """Give up the search field where there is no room; "/" brings it back."""
        super().resizeEvent(event)  # type: ignore[arg-type]
        self.search.setVisible(self.width() >= _ROOM_FOR_SEARCH or self.search.hasFocus())

    def _lay_out(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(WIDE_MARGIN, 0, GAP, 0)
        row.setSpacing(0)
        column = QVBoxLayout()
        column.setSpacing(0)
        column.addStretch(1)
        column.addWidget(self._title)
        column.addWidget(self._facts)
        column.addStretch(1)
        row.addLayout(column, 1)
        row.addSpacing(WIDE_MARGIN)
        row.addWidget(self._doing)
        row.addSpacing(WIDE_MARGIN)
        row.addWidget(self.undo)
        row.addWidget(self.redo)
        row.addSpacing(GAP)
        row.addWidget(self.search)
        row.addSpacing(GAP)
        row.addWidget(self.rail)
        row.addWidget(self.shelf)

    def _wire(self) -> None:
        session, stack = self._session, self._session.undo_stack
        self.undo.clicked.connect(stack.undo)
        self.redo.clicked.connect(stack.redo)
        session.undo_changed.connect(self._tell_undo)
        for keys, act in (("Ctrl+Z", stack.undo), ("Ctrl+Shift+Z; Ctrl+Y", stack.redo)):
            action = QAction(self)
            action.setShortcuts(QKeySequence.listFromString(keys))
            action.triggered.connect(act)
            self.addAction(action)
        for signal in (
            session.job_changed,
            session.picture_changed,
            session.saved_changed,
            session.preferences_changed,
        ):
            signal.connect(self._tell)
        self._tell()
        self._tell_undo()

    def _tell(self) -> None:
        job, picture = self._session.desk.job, self._session.picture
        self._title.set_text(job.title if job else self.tr("No picture yet"))
        said = [job.client.name if job else "", size_words(self._session)]
        if picture is not None:
            said.append(self.tr(_TRUST_WORDS[picture.colour_trust.grade.value]))
        said.append(self._session.saved)
        self._facts.set_text("   ·   ".join(word for word in said if word))
        self._facts.setVisible(bool(self._facts.text()))

    def _tell_undo(self) -> None:
        stack = self._session.undo_stack
        for button, can, text, verb, nothing, keys in (
            (
                self.undo,
                stack.canUndo(),
                stack.undoText(),
                self.tr("Undo"),
                self.tr("Undo: nothing"),
                "Ctrl+Z",
            ),
            (
                self.redo,
                stack.canRedo(),
                stack.redoText(),
                self.tr("Redo"),
                self.tr("Redo: nothing"),
                "Ctrl+Shift+Z",
            ),
        ):
            told = f"{verb}: {in_language(text)}" if can else nothing
            button.setEnabled(can)
            button.setAccessibleName(told)
            button.setToolTip(f"{told}  ({key_words(keys)})" if can else told)


def size_words(session: Session) -> str:
    """Return the art's true size in the shop's unit, or that it is not known yet."""
    job = session.desk.job
    if job is None:
        return ""
    if job.art_size is None:
        return QCoreApplication.translate("JobLine", "size not known yet")
    width, height = job.art_size
    unit, fraction = session.preferences.unit, session.preferences.denominator
    return in_language(f"{width.figures(unit, fraction)} × {height.show(unit, fraction)}")
