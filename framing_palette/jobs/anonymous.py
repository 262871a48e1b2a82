"""Text without names: paths, addresses and the words that name a person, taken out of a report."""

import re
from collections.abc import Iterable
from typing import Final

_EMAIL: Final = re.compile(r"[^\s@<>()\"']+@[^\s@<>()\"']+")
# An absolute path up to a sign that ends one; spaces inside are taken along while a separator
# follows, since folders of people often have one.
_WORD: Final = r"[^\s\\/:*?\"'<>|;,()]+"
_PATH: Final = re.compile(
    rf"(?<![\w.<])(?:[A-Za-z]:[\\/]|\\\\|~?/)(?:{_WORD}(?: {_WORD})*[\\/])*(?:{_WORD})?"
)
_LONG_NUMBER: Final = re.compile(r"\+?\d[\d ()/-]{6,}\d")
_LETTER: Final = re.compile(r"\w")
_SEPARATOR: Final = re.compile(r"[\\/]")
_SHORTEST_NAME: Final = 3


def without_names(text: str, names: Iterable[str] = ()) -> str:
    """Return text without names, addresses, telephone numbers and places on this computer.

    Parameters
    ----------
    text
        Anything; times such as ``2026-03-04T12:00:00Z`` stay.
    names
        Of people and folders; each is taken out whole, and of people's names each word of three
        letters or more, whatever the case.
    """
    text = _EMAIL.sub("<address>", text)
    known = sorted({name.strip() for name in names if _LETTER.search(name)}, key=len, reverse=True)
    folders = [name for name in known if _SEPARATOR.search(name)]
    people = [name for name in known if name not in folders]
    text = _PATH.sub("<path>", _without(folders, text))
    words = [word for name in people for word in re.findall(r"\w+", name)]
    long_words = [word for word in words if len(word) >= _SHORTEST_NAME and not word.isdecimal()]
    return _LONG_NUMBER.sub(_number_or_time, _without([*people, *long_words], text))


def _without(names: Iterable[str], text: str) -> str:
    for name in names:
        text = re.sub(rf"(?<!\w){re.escape(name)}(?!\w)", "<name>", text, flags=re.IGNORECASE)
    return text


def _number_or_time(found: re.Match[str]) -> str:
    """Keep a date, which is no telephone number."""
    is_date = re.match(r"\d{4}-\d\d-\d\d(?!\d)", found[0])
    return found[0] if is_date else "<number>"
