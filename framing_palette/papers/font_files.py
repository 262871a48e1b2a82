"""The typeface of the papers: its files, and how wide words are in it.

Lato, by tyPoland Lukasz Dziedzic, under the SIL Open Font License 1.1 (``fonts/OFL.txt``). Its
figures are all equally wide, so that columns of sizes line up. PDFs embed only the letters used.
"""

from functools import cache, lru_cache
from pathlib import Path
from typing import Any, Final

from framing_palette.errors import FileProblemError
from framing_palette.papers.shapes import MM_PER_PT, Face

FOLDER: Final = Path(__file__).resolve().parent / "fonts"
_FILES: Final[dict[Face, str]] = {
    "light": "Lato-Light.ttf",
    "regular": "Lato-Regular.ttf",
    "bold": "Lato-Bold.ttf",
}
_STAND_IN: Final = "\N{WHITE SQUARE}"


def font_name(face: Face) -> str:
    """Return the name by which a face is known inside a PDF, once it has been read."""
    _registered()
    return f"papers-{face}"


@lru_cache(maxsize=4_000)
def text_width(words: str, face: Face, size: float, spacing: float = 0.0) -> float:
    """Return how wide a plain line of text is, in mm, as all its letters are set in one size."""
    from reportlab.pdfbase.pdfmetrics import stringWidth

    points = float(stringWidth(words, font_name(face), size / MM_PER_PT))
    return points * MM_PER_PT + spacing * len(words)


@lru_cache(maxsize=2_000)
def showable(words: str) -> str:
    """Return words as they can be set: control signs become spaces, unknown letters squares."""
    known = _known_letters()
    spaced = "".join(sign if sign.isprintable() else " " for sign in words)
    return "".join(sign if ord(sign) in known else _STAND_IN for sign in spaced)


@cache
def _registered() -> dict[Face, Any]:
    """Read the font files once.

    Raises
    ------
    FileProblemError
        When the installation has lost one.
    """
    from reportlab.pdfbase.pdfmetrics import registerFont
    from reportlab.pdfbase.ttfonts import TTFError, TTFont

    fonts: dict[Face, Any] = {}
    for face, file in _FILES.items():
        try:
            fonts[face] = TTFont(f"papers-{face}", str(FOLDER / file))
        except (OSError, TTFError) as error:
            raise FileProblemError(
                FOLDER / file,
                problem="is missing from this installation or damaged",
                todo="install the program again",
            ) from error
        registerFont(fonts[face])
    return fonts


@cache
def _known_letters() -> frozenset[int]:
    """Return the letters that every face has."""
    sets = [frozenset(font.face.charToGlyph) for font in _registered().values()]
    return frozenset.intersection(*sets)
