"""The files of a language: what Qt reads, and the phrasebook."""

import tomllib
from functools import cache
from importlib.resources import files
from typing import Final

from framing_palette.window.languages.patterns import Phrasebook

_HERE: Final = files("framing_palette.window.languages")


def translation_of(language: str) -> bytes:
    """Return the content of the file that Qt's translator reads."""
    return _HERE.joinpath(f"{language}.qm").read_bytes()


def pairs_of(language: str) -> dict[str, str]:
    """Return English sentences and patterns with the same in a language, all sections together."""
    tables = tomllib.loads(_HERE.joinpath(f"{language}.toml").read_text(encoding="utf-8"))
    return {english: told for table in tables.values() for english, told in table.items()}


@cache
def phrasebook_of(language: str) -> Phrasebook:
    """Return the phrasebook of a language."""
    return Phrasebook(pairs_of(language))
