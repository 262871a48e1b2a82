"""The phrasebook in use: finished English sentences in the language of the window."""

from framing_palette.window.languages.patterns import Phrasebook

_ENGLISH = Phrasebook({})
_in_use = [_ENGLISH]


def told(text: str) -> str:
    """Return a finished sentence, or several, in the language of the window.

    What has no translation (names, codes, figures) stays as it is.
    """
    return text if _in_use[0] is _ENGLISH else _in_use[0].told(text)


def take_phrasebook(phrasebook: Phrasebook | None) -> None:
    """Tell sentences by another phrasebook from now on; None leaves them in English."""
    _in_use[0] = phrasebook or _ENGLISH
