"""The taste book: the shop's choices, what was learned from them, and what that changes.

What is done on the desk becomes choices as it is done, and stops being one when it is undone. They
are written to the shop's own file. Nothing is learned from them until the framer asks for it, and
what was learned orders the shortlist only while it is switched on.
"""

from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from framing_palette.ranking import (
    HOUSE_RULE,
    Choice,
    ReadTaste,
    Taste,
    TasteFit,
    choices_from_work,
    picture_mark,
)
from framing_palette.ranking.taste import FEWEST_CHOICES, PairKey
from framing_palette.window.errands import Errands
from framing_palette.window.faults import plain_fault
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.taste_legwork import (
    Effect,
    learned_taste,
    read_own_taste,
    read_taste,
    taste_effect,
    write_taste,
)
from framing_palette.window.taste_memory import ChangeTaste, Remembered
from framing_palette.window.taste_work import work_on_desk

READING, WRITING, LEARNING = "taste reading", "taste writing", "taste learning"
EFFECT, CARRYING = "taste effect", "taste carrying"
_REST_MS = 400


class TasteBook(QObject):
    """Keeps the shop's choices; views read it and ask it."""

    changed = Signal()
    """Choices, or what was learned, are different."""
    effect_changed = Signal()
    told = Signal(str)
    """What came of reading, exporting or importing, for the card."""

    def __init__(self, session: Session, errands: Errands, path: Path) -> None:
        super().__init__(session)
        self._session = session
        self._errands = errands
        self.path = path
        self.remembered = Remembered()
        self.taste = Taste()
        self.effect: Effect | None = None
        self._done: tuple[Choice, ...] = ()
        self._left_open: tuple[PairKey, ...] = ()
        self._is_opening = False
        self._is_read = False
        self._is_on = session.preferences.taste_on
        self._write_soon = QTimer(self, interval=_REST_MS, singleShot=True)
        self._write_soon.timeout.connect(self.write)
        for signal in (
            session.kept_changed,
            session.set_aside_changed,
            session.answers_changed,
            session.job_changed,
        ):
            signal.connect(self._follow)
        session.packed_changed.connect(self._begin)
        session.ranked_changed.connect(self._on_ranked)
        session.preferences_changed.connect(self._on_preferences)
        self._read()

    # --- what is known --------------------------------------------------------------------------

    @property
    def mark(self) -> str:
        """The mark of the picture on the desk; it names nobody."""
        job = self._session.desk.job
        if job is None:
            return ""
        return picture_mark("picture", job.picture.sha256 if job.picture else job.number)

    @property
    def is_used(self) -> bool:
        """Tell whether the shortlist is ordered by the shop's own rule."""
        return self._session.rule != HOUSE_RULE

    @property
    def newer(self) -> int:
        """How many choices what was learned does not rest on yet."""
        learned = self.taste.learned
        return max(0, len(self.taste.choices) - (learned.rests_on if learned else 0))

    def places_up(self, code: str) -> int:
        """Return how many places a sample moved up by taste; below 0 down."""
        ranked = self._session.ranked
        if self.effect is None or ranked is None or not ranked.has(code):
            return 0
        row = ranked.row(code)
        return int(self.effect.up[row]) if row < len(self.effect.up) else 0

    # --- what the framer asks for ---------------------------------------------------------------

    def switch(self, *, on: bool) -> None:
        """Let taste order the shortlist, or the house rule again."""
        changed = self._session.preferences.changed("taste_on", on)
        self._session.assign("preferences", changed)

    def learn(self) -> None:
        """Learn from all choices made so far, once there are enough."""
        taste = self.taste
        if len(taste.choices) < FEWEST_CHOICES:
            return
        self._errands.runner.start(
            LEARNING,
            lambda progress: learned_taste(taste, progress),
            done=self._take_learned,
            failed=self._errands.tell,
        )

    def forget(self) -> None:
        """Forget all choices and what was learned from them."""
        if self.taste == Taste():
            return
        ignored = frozenset(choice.key for choice in self.taste.choices) | set(self.taste.passed)
        self._change(self.tr("Forget this shop's taste"), Remembered(Taste(), ignored))

    def export_to(self, path: Path) -> None:
        """Write the choices and what was learned to another file."""
        taste = self.taste
        self._errands.runner.start(
            CARRYING,
            lambda progress: write_taste(path, taste, progress),
            done=lambda _nothing: self.told.emit(self.tr("Exported to {path}.").format(path=path)),
            failed=lambda error: self.told.emit(in_language(plain_fault(error))),
        )

    def import_from(self, path: Path) -> None:
        """Take the choices and what was learned from a file, in place of what is here."""
        self._errands.runner.start(
            CARRYING,
            lambda progress: read_taste(path, progress),
            done=self._take_import,
            failed=lambda error: self.told.emit(in_language(plain_fault(error))),
        )

    # --- what follows ---------------------------------------------------------------------------

    def put(self, remembered: Remembered) -> None:
        """Remember something else; what is done on the desk counts besides."""
        self.remembered = remembered
        self._follow()
        self._apply()

    def write(self) -> None:
        """Write the choices to the shop's file, in the background."""
        self._write_soon.stop()
        if not self._is_read:
            return
        path, taste = self.path, self.taste
        self._errands.runner.start(
            WRITING,
            lambda progress: write_taste(path, taste, progress),
            done=lambda _nothing: None,
            failed=self._errands.tell,
        )

    def finish(self) -> None:
        """Write what still waits to be written."""
        if self._write_soon.isActive():
            self.write()

    def _change(self, words: str, after: Remembered) -> None:
        if after != self.remembered:
            change = ChangeTaste(words, before=self.remembered, after=after, put=self.put)
            self._session.undo_stack.push(change)

    def _begin(self) -> None:
        """Remember what was done on the last picture; what is done now is added to it."""
        self._is_opening = True
        self.remembered = Remembered(self.taste)
        self._done, self._left_open = (), ()

    def is_current(self) -> bool:
        """Tell whether the ranking is of the picture on the desk."""
        session = self._session
        ranked, findings = session.ranked, session.findings
        return ranked is not None and findings is not None and ranked.findings is findings

    def _on_ranked(self) -> None:
        self._follow()
        self._find_effect()

    def _follow(self) -> None:
        """Count what is done on the desk besides what was known before."""
        if self.is_current() and self._is_read:
            self._look_at_desk()
        known = self.remembered
        counted = (choice for choice in self._done if choice.key not in known.ignored)
        left_open = (pair for pair in self._left_open if pair not in known.ignored)
        self._take(known.taste.with_choices(*counted).with_passed(*left_open))

    def _look_at_desk(self) -> None:
        ranked, work, mark = self._session.ranked, work_on_desk(self._session), self.mark
        if ranked is None:
            return
        self._done = choices_from_work(ranked, work, picture=mark)
        self._left_open = tuple(
            (mark, frozenset((answer.better, answer.worse)))
            for answer in work.answers
            if answer.is_open
        )
        if self._is_opening:
            # How the job lay when it was opened is old work: counted then, or forgotten since.
            self._is_opening = False
            before = {choice.key for choice in self.remembered.taste.choices}
            old = frozenset(choice.key for choice in self._done) - before
            ignored = self.remembered.ignored | old
            self.remembered = replace(self.remembered, ignored=ignored)

    def _take(self, taste: Taste) -> None:
        if taste != self.taste:
            self.taste = taste
            if self._is_read:
                self._write_soon.start()
            self.changed.emit()

    def _on_preferences(self) -> None:
        """Learn when taste is switched on for the first time."""
        was_on, self._is_on = self._is_on, self._session.preferences.taste_on
        if self._is_on == was_on:
            return
        self._apply()
        if self._is_on and self.taste.learned is None:
            self.learn()

    def _apply(self) -> None:
        learned, is_on = self.taste.learned, self._session.preferences.taste_on
        rule = learned.rule if is_on and learned is not None and learned.in_use else HOUSE_RULE
        if rule != self._session.rule:
            self._session.assign("rule", rule)
        self.changed.emit()

    def _take_learned(self, learned: TasteFit) -> None:
        words = self.tr("Learn this shop's taste")
        after = replace(self.remembered.taste, learned=learned)
        self._change(words, replace(self.remembered, taste=after))

    def _take_import(self, found: ReadTaste) -> None:
        ignored = frozenset(choice.key for choice in self.taste.choices) | set(self.taste.passed)
        self._change(self.tr("Import a taste"), Remembered(found.taste, ignored))
        count = len(found.taste.choices)
        said = self.tr("Imported: {count} choices.").format(count=count)
        self.told.emit("\n".join((said, *map(in_language, found.faults[:3]))))

    def _find_effect(self) -> None:
        ranked = self._session.ranked
        if ranked is None or ranked.rule == HOUSE_RULE:
            self._errands.runner.cancel(EFFECT)
            self._take_effect(None)
            return
        self._errands.runner.start(
            EFFECT,
            lambda progress: taste_effect(ranked, progress),
            done=self._take_effect,
            failed=self._errands.tell,
        )

    def _take_effect(self, effect: Effect | None) -> None:
        if effect is not self.effect:
            self.effect = effect
            self.effect_changed.emit()

    def _read(self) -> None:
        path = self.path
        self._errands.runner.start(
            READING,
            lambda progress: read_own_taste(path, progress),
            done=self._take_read,
            failed=self._errands.tell,
        )

    def _take_read(self, found: ReadTaste) -> None:
        self._is_read = True
        self.remembered = Remembered(found.taste, self.remembered.ignored)
        self._follow()
        self._apply()
        if found.faults:
            self._session.assign("notice", "\n".join(found.faults[:3]))
