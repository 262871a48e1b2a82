"""The whole window in German: no English word is left in it, and nothing is clipped.

Every word that a widget shows, paints or tells a screen reader must be one of the German files,
of the job, or of the rack. Samples, job and photograph carry names that are no English words.
"""

import re
import sys
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

import pytest
from PySide6.QtCore import QAbstractItemModel, QAbstractTableModel, QModelIndex, Qt
from PySide6.QtGui import QFontMetrics, QPainter
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QScrollArea,
    QWidget,
)
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Catalogue
from framing_palette.design import example_price_book_text
from framing_palette.jobs import Client
from framing_palette.units import Length
from framing_palette.window import building, opening
from framing_palette.window.controls import Chip
from framing_palette.window.keeping import keep_sample, lay_round, send_away
from framing_palette.window.languages import speak
from framing_palette.window.languages.language_files import pairs_of
from framing_palette.window.preferences import Preferences
from framing_palette.window.shell import Shell
from framing_palette.window.sliding import lay_strip
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import PATH_WIDTH, SMALL
from tests.window.buildable import BUILDABLE
from tests.window.conftest import BOAT, TRUST, make_picture, on_the_desk
from tests.window.renew_languages import LANGUAGES, messages
from tests.window.settling import settle
from tests.window.test_fit import clipped, overlapping

WORD = re.compile(r"[^\W\d_]{2,}")
OWN = (
    "Framing Palette sRGB PostgreSQL English Deutsch Letter Zuvek Blixa Testnam "
    "TEST Strg Umschalt Alt Esc Entf Hoch Runter mm cm kg px"
)
NOT_SAID = re.compile(r"\{[^{}]*\}|„[^“]*“")  # placeholders, and what is quoted from files
IDENTIFIERS = (  # words of files and their columns, which German sentences name as they are
    "acrylic additive because begin colour colours false glass lines mat part rows samples true "
    "unit wood"
)
LAID_OVER = re.compile(r"\b(?:Tour|QSplitterHandle) ''")  # a card on the window, a grip between two
PASSED_BY = frozenset(  # chips that bring no new word
    WORD.findall(
        "Rosa Rot Orange Gelb Grün Blaugrün Blau Violett Neutral Passepartouts Holzfilets "
        "Einlageleisten Leisten Farbton Tiefe Kräftigkeit Oberfläche Glanz Name Art Letter "
        "Fertig Abgeholt"
    )
)
SIZES = [(1366, 768), (1920, 1080)]


def named(number: int) -> str:
    return "Qarbo" + "iklmnoprst"[number]


STRANGE = Catalogue(
    samples=tuple(
        replace(sample, code=f"q-{number}", name=named(number))
        for number, sample in enumerate(BUILDABLE.samples)
    ),
    name="Zuvek",
)


def german_words() -> frozenset[str]:
    """Return all words that the German files can say, and those of the data."""
    told = [told for _, _, told, _ in messages(LANGUAGES / "de.ts")]
    told += pairs_of("de").values()
    own = [OWN, *(f"{sample.name} {sample.code}" for sample in STRANGE.samples)]
    texts = [*(NOT_SAID.sub("", text) for text in told), *own]
    return _words(texts) - _words([IDENTIFIERS])


def _words(texts: Iterable[str]) -> frozenset[str]:
    return frozenset(word.casefold() for text in texts for word in WORD.findall(text))


def words_of_the_example_prices() -> frozenset[str]:
    """Return the words of a price book, which are the shop's own."""
    return _words([example_price_book_text()])


@pytest.fixture
def painted(monkeypatch: pytest.MonkeyPatch) -> set[str]:
    """What is painted from now on, word for word."""
    found: set[str] = set()
    draw = QPainter.drawText

    def listen(painter: QPainter, *given: object) -> object:
        found.update(text for text in given if isinstance(text, str))
        return draw(painter, *given)

    monkeypatch.setattr(QPainter, "drawText", listen)
    return found


@pytest.fixture
def german(app: QApplication) -> Iterator[QApplication]:
    speak(app, "de")
    yield app
    speak(app, "en")


@pytest.fixture
def german_shell(german: QApplication, shell: Shell, qtbot: QtBot) -> Shell:
    """A shell on a job with a design, a strip and a full rail, all of it named strangely."""
    session = shell.session
    trust = replace(TRUST, words="Testnam.")
    picture = replace(make_picture(), colour_trust=trust)
    given = on_the_desk(picture, (replace(BOAT, name="Blixa"),))
    with qtbot.waitSignal(session.ranked_changed, timeout=20_000):
        session.assign("catalogue", STRANGE)
        shell.errands.take_job(given)
    job = session.desk.job
    assert job is not None
    session.edit("Testnam", job=replace(job, title="Testnam", client=Client(name="Testnam")))
    return shell


def shown(shell: QWidget) -> Iterator[str]:
    """Return every text of a window that is seen or read aloud."""
    for widget in [shell, *shell.findChildren(QWidget)]:
        if not widget.isVisible():
            continue
        yield from (widget.toolTip(), widget.accessibleName(), widget.accessibleDescription())
        yield from (widget.windowTitle(), widget.statusTip(), widget.whatsThis())
        if isinstance(widget, QLabel | QAbstractButton):
            yield widget.text()
        elif isinstance(widget, QLineEdit):
            yield from (widget.placeholderText(), widget.text())
        elif isinstance(widget, QPlainTextEdit):
            yield from (widget.placeholderText(), widget.toPlainText())
        elif isinstance(widget, QComboBox):
            yield from (widget.itemText(at) for at in range(widget.count()))
        elif isinstance(widget, QAbstractItemView) and widget.model() is not None:
            yield from cells(widget.model())


def cells(model: QAbstractItemModel) -> Iterator[str]:
    roles = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole)
    columns = model.columnCount(QModelIndex()) if isinstance(model, QAbstractTableModel) else 1
    for row in range(min(model.rowCount(QModelIndex()), 20)):
        for column in range(columns):
            for role in (*roles, Qt.ItemDataRole.ToolTipRole):
                text = model.data(model.index(row, column), role)
                if isinstance(text, str):
                    yield text


def scenes(shell: Shell, qtbot: QtBot) -> Iterator[str]:
    """Walk through the whole window."""

    def rest() -> None:
        qtbot.waitUntil(lambda: not shell.runner.is_busy(), timeout=30_000)
        QApplication.processEvents()

    session = shell.session
    for key in ("intake", "read", "choose", "build", "measure", "agree"):
        shell.go(key)
        rest()
        yield f"{key}, no design"
    shell.go("choose")
    lay_strip(session, "q-1")
    session.assign("chosen_code", "q-0")
    lay_round(session, ("q-0",))
    shelf = shell.steps["choose"].shelf_widget  # type: ignore[attr-defined]
    shelf.do("measures")
    rest()
    yield "measures"
    shelf.do("measures")
    for code in ("q-0", "q-1", "q-2", "q-4"):
        keep_sample(session, code)
    keep_sample(session, "q-3")
    rest()
    yield "a full rail and a notice"
    session.show_side_by_side(shown=True)
    rest()
    yield "side by side"
    session.show_side_by_side(shown=False)
    send_away(session, "q-3")
    building.set_art_size(session, Length.inches(16), Length.inches(12))
    rest()
    building.begin_design(session, ("q-0", "q-4"))
    for key in ("build", "measure", "agree", "read", "intake"):
        shell.go(key)
        for part in ("layer 1", "glazing", "moulding", "art"):
            session.assign("chosen_part", part)
            rest()
            if key != "build":
                break
            yield f"{key}, {part}"
        rest()
        yield key
    shell.toggle_settings()
    yield "settings"
    shell.toggle_settings()
    shell.keys_sheet.toggle()
    yield "keys"
    shell.keys_sheet.toggle()
    shell.start_tour()
    for number in range(5):
        yield f"tour {number}"
        shell.tour.go_on()
    yield from more_of_the_shelves(shell, qtbot, rest)
    for door in ("rack", "book"):
        shell.doors[door].click()
        rest()
        yield door
        shell.doors[door].click()


def more_of_the_shelves(shell: Shell, qtbot: QtBot, rest: Callable[[], None]) -> Iterator[str]:
    """Turn over the pages that lie behind others, and open what is folded away."""
    shelves = {key: step.shelf_widget for key, step in shell.steps.items() if key != "measure"}  # type: ignore[attr-defined]
    shell.go("choose")
    for asked in ("ask", "taste"):
        shelves["choose"].do(asked)
        rest()
        yield f"choose, {asked}"
    for key in ("build", "agree"):
        shell.go(key)
        for chip in shelves[key].findChildren(Chip):
            if chip.isVisible() and chip.isCheckable() and chip.text() not in PASSED_BY:
                chip.click()
                rest()
                yield f"{key}, {chip.text()}"
    shelves["agree"].prices.click()
    rest()
    yield "prices"
    shell.go("measure")
    for row in shell.steps["measure"].shelf_widget.rows:  # type: ignore[attr-defined]
        row.how.setChecked(True)
    rest()
    yield "how every size came about"
    shell.doors["rack"].click()
    for holder in (shell.rack.shelf, shell.rack.stage):
        for chip in holder.findChildren(Chip):
            if chip.isVisible() and chip.isCheckable() and chip.text() not in PASSED_BY:
                chip.click()
                rest()
                yield f"rack, {chip.text()}"
    shell.doors["rack"].click()
    shell.doors["book"].click()
    job = shell.session.desk.job
    assert job is not None
    rest()
    shell.book.ledger.choose(job.number)
    qtbot.waitUntil(lambda: shell.book.ledger.job is not None, timeout=20_000)
    for page in ("job", "client", "backups"):
        shell.book.shelf.show_page(page)
        rest()
        yield f"book, {page}"
    shell.doors["book"].click()
    shell.toggle_client_view()
    rest()
    assert shell.client_view is not None
    shell.client_view.grab()  # what it paints is heard
    yield "the client's view"
    shell.toggle_client_view()


def too_wide(shell: Shell) -> Iterator[str]:
    """What lies in an area that scrolls up and down alone, and is wider than the area."""
    for area in shell.findChildren(QScrollArea):
        off = area.horizontalScrollBarPolicy() is Qt.ScrollBarPolicy.ScrollBarAlwaysOff
        if area.isVisible() and off and area.widget().width() > area.viewport().width() + 1:
            yield f"{area.widget().width()} in {area.viewport().width()}: {[text for text in shown(area) if text][:9]}"


def strange(texts: set[str], known: frozenset[str]) -> dict[str, list[str]]:
    found = {}
    for text in texts:
        words = [word for word in WORD.findall(text) if word.casefold() not in known]
        if words:
            found[text] = words
    return found


def test_no_word_of_the_whole_window_is_english(
    german_shell: Shell, qtbot: QtBot, painted: set[str]
) -> None:
    german, prices = german_words(), words_of_the_example_prices()
    german_shell.show()
    found: dict[str, list[str]] = {}
    for scene in scenes(german_shell, qtbot):
        german_shell.grab()
        texts = {*painted, *shown(german_shell)}
        painted.clear()
        known = german | prices if scene == "prices" else german
        for text, words in strange(texts, known).items():
            found.setdefault(f"{scene}: {text}", words)
    assert not found, "\n".join(f"{words} in {text!r}" for text, words in found.items())


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_nothing_is_clipped_in_german(
    german_shell: Shell, qtbot: QtBot, width: int, height: int
) -> None:
    german_shell.resize(width, height)
    german_shell.show()
    faults = []
    for scene in scenes(german_shell, qtbot):
        settle(german_shell)
        faults += [f"{scene}: {fault}" for fault in clipped(german_shell)]
        faults += [f"{scene}: {fault}" for fault in too_wide(german_shell)]
        faults += [
            f"{scene}: {fault}"
            for fault in overlapping(german_shell)
            if not LAID_OVER.search(fault)
        ]
    assert not faults, "\n".join(faults)


@pytest.mark.parametrize("key", ["intake", "read", "choose", "build", "measure", "agree"])
def test_the_word_of_a_stop_has_room_beside_its_mark(german_shell: Shell, key: str) -> None:
    stop = german_shell.path.stop(key)
    needs = QFontMetrics(type_font(SMALL, strong=True)).horizontalAdvance(stop.text())
    assert needs <= PATH_WIDTH - 6


def test_the_window_opens_in_the_language_that_was_chosen(
    app: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    said: list[str] = []
    chosen = Preferences(language="de")
    monkeypatch.setattr("framing_palette.window.preference_files.read_preferences", lambda: chosen)
    monkeypatch.setattr(QApplication, "exec", lambda *_: 0)
    monkeypatch.setattr(sys, "excepthook", sys.excepthook)
    monkeypatch.setattr(
        opening, "fill", lambda frame, *_: said.append(frame.tr("Setting out the samples"))
    )
    try:
        assert opening.run() == 0
    finally:
        speak(app, "en")
    assert said == ["Muster werden ausgelegt"]
