"""The phrasebook in use: finished English sentences in the language of the window."""

from collections.abc import Callable

from framing_palette.window.languages.patterns import Phrasebook

_in_use: list[Callable[[], Phrasebook] | None] = [None]


def told(text: str) -> str:
    """Return a finished sentence, or several, in the language of the window.

    What has no translation (names, codes, figures) stays as it is.
    """
    phrasebook = _in_use[0]
    return text if phrasebook is None else phrasebook().told(text)


def take_phrasebook(phrasebook: Callable[[], Phrasebook] | None) -> None:
    """Tell sentences by another phrasebook from now on; None leaves them in English.

    It is asked for when the first sentence is told: to read it takes longer than a window may wait.
    """
    _in_use[0] = phrasebook


def read_phrasebook() -> None:
    """Read the phrasebook in use now, on whichever thread this is."""
    phrasebook = _in_use[0]
    if phrasebook is not None:
        phrasebook()
