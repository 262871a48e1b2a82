"""Marking texts that are shown later: tables of words at the head of a module.

``pyside6-lupdate`` finds what is marked by this very name, which Qt gave it; Qt's own function is
not used, because the type checker takes its answer for any object.
"""

from collections.abc import Callable
from typing import Final


def _as_it_is(_context: str, text: str) -> str:
    return text


QT_TRANSLATE_NOOP: Final[Callable[[str, str], str]] = _as_it_is
"""Takes a context and a text, and returns the text: it is translated where it is shown."""
