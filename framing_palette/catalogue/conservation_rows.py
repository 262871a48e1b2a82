"""Conservation rows: what is claimed of a sample's safety for art, of what exactly, and since when.

A photographic activity test is made on one colour of a board and says nothing of its neighbours in
the range (ISO 18916: the test is of the material tested; from memory), so a claim keeps its scope.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from framing_palette.catalogue.cells import RowReader
from framing_palette.catalogue.samples import ClaimScope, ConservationFact, Sample
from framing_palette.catalogue.table_files import guarded
from framing_palette.catalogue.wording import plain_words

CONSERVATION_COLUMNS = ("code", "claim", "scope", "date", "source")
_PER_COLOUR = ("photographic activity", "pat ", "iso 18916")


@dataclass(frozen=True, slots=True)
class ConservationRow:
    """One row of conservation.csv."""

    code: str
    fact: ConservationFact


def read_conservation_row(row: RowReader) -> ConservationRow | None:
    """Return one claim about a sample, or None when a cell is bad or missing."""
    before = row.problems.count
    code, claim = row.code(), row.common_text("claim")
    if not claim:
        row.tell("claim", "the claim is missing")
    scope, when = row.word("scope", ClaimScope), _date(row)
    if row.problems.count > before:
        return None
    if scope is ClaimScope.RANGE and _is_per_colour(claim):
        reason = "a photographic activity test holds for the tested colour; ask for this colour's"
        row.tell("scope", reason, is_notice=True)
    return ConservationRow(code, ConservationFact(claim, scope, when, row.common_text("source")))


def conservation_cells(sample: Sample) -> Iterator[tuple[str, ...]]:
    """Return the rows of CONSERVATION_COLUMNS of a sample."""
    for fact in sample.conservation_facts:
        when = "" if fact.when is None else fact.when.isoformat()
        texts = (sample.code, fact.claim, fact.scope or "", when, fact.source)
        yield tuple(guarded(text) for text in texts)


def _date(row: RowReader) -> date | None:
    text = row.text("date")
    if not text:
        return None
    try:
        return date.fromisoformat(text)
    except ValueError:
        row.tell("date", f'"{text}" is not a date; write it like 2025-03-31')
        return None


def _is_per_colour(claim: str) -> bool:
    words = f"{plain_words(claim)} "
    return any(mark in words for mark in _PER_COLOUR)
