"""Wording: the words that a search finds a sample by, without accents and in lower case."""

import unicodedata

from framing_palette.catalogue.samples import Sample


def plain_words(text: str) -> str:
    """Return text in lower case without accents, its blanks made single.

    Examples
    --------
    >>> plain_words("  Crème   BRÛLÉE ")
    'creme brulee'
    """
    if text.isascii():
        return " ".join(text.lower().split())
    letters = unicodedata.normalize("NFKD", text)
    kept = "".join(letter for letter in letters if not unicodedata.combining(letter))
    return " ".join(kept.casefold().split())


def search_words(sample: Sample) -> str:
    """Return the words that a sample is found by: code, name, kind, surface, material, tags."""
    parts = [
        sample.code,
        sample.name,
        sample.kind.replace("_", " "),
        (sample.surface or "").replace("_", " "),
        sample.finish or "",
        sample.material,
        sample.collection,
        *sample.tags,
    ]
    return plain_words(" ".join(parts))
