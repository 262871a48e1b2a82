"""Speaking a language: Qt's translators and the phrasebook, put on together."""

from functools import partial
from typing import Final

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

from framing_palette.window.languages.language_files import phrasebook_of, translation_of
from framing_palette.window.languages.telling import take_phrasebook

ENGLISH: Final = "en"
LANGUAGES: Final = {ENGLISH: "English", "de": "Deutsch"}  # each by its own name
SYSTEM: Final = "system"

_worn: list[QTranslator] = []


def speak(app: QCoreApplication, language: str) -> str:
    """Let the application speak a language from now on, and return which one it is.

    Parameters
    ----------
    app
        Screens that already stand keep their words: speak before the window is made.
    language
        A key of `LANGUAGES`, or "system" for that of the computer; one that is not known is
        taken as English.
    """
    chosen = QLocale.system().name()[:2] if language == SYSTEM else language
    chosen = chosen if chosen in LANGUAGES else ENGLISH
    while _worn:
        app.removeTranslator(_worn.pop())
    take_phrasebook(None if chosen == ENGLISH else partial(phrasebook_of, chosen))
    if chosen != ENGLISH:
        for translator in (_of_qt(app, chosen), _of_ours(app, chosen)):
            app.installTranslator(translator)
            _worn.append(translator)
    return chosen


def _of_qt(app: QCoreApplication, language: str) -> QTranslator:
    """Return the translator of Qt's own words: its dialogs and their buttons."""
    translator = QTranslator(app)
    place = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
    translator.load(f"qtbase_{language}", place)
    return translator


def _of_ours(app: QCoreApplication, language: str) -> QTranslator:
    translator = QTranslator(app)
    content = translation_of(language)
    translator.setProperty("content", content)  # Qt reads it where it lies: it must stay
    translator.load(content)
    return translator
