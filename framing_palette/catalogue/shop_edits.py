"""Shop edits: what a shop says of a sample itself, kept apart from what its maker says."""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields, replace
from decimal import Decimal, InvalidOperation
from typing import Any

from framing_palette.catalogue.records import colour_of_record, record_of_colour
from framing_palette.catalogue.samples import PriceBasis, Sample, SampleColour
from framing_palette.errors import FieldError


@dataclass(frozen=True, slots=True)
class ShopEdits:
    """A shop's own facts about a sample; None leaves the maker's fact as it is.

    Parameters
    ----------
    name, price, price_per, in_stock, tags, colours
        As of `Sample`; colours are the shop's own measurement.
    note
        For the people of the shop.
    """

    name: str | None = None
    price: Decimal | None = None
    price_per: PriceBasis | None = None
    in_stock: bool | None = None
    tags: tuple[str, ...] | None = None
    colours: tuple[SampleColour, ...] | None = None
    note: str = ""

    @property
    def is_empty(self) -> bool:
        """Whether the shop says nothing of its own."""
        return self == ShopEdits()

    def applied_to(self, sample: Sample) -> Sample:
        """Return the sample as the shop sees it."""
        own = {
            name: value
            for name in ("name", "price", "price_per", "in_stock", "tags", "colours")
            if (value := getattr(self, name)) is not None
        }
        return replace(sample, **own) if own else sample

    def record(self) -> dict[str, Any]:
        """Return the edits as plain data, what is not edited left out."""
        record: dict[str, Any] = {
            fact.name: value
            for fact in fields(self)
            if (value := getattr(self, fact.name)) not in (None, "")
        }
        for name in ("price", "price_per"):
            if name in record:
                record[name] = str(record[name])
        if self.tags is not None:
            record["tags"] = list(self.tags)
        if self.colours is not None:
            record["colours"] = [record_of_colour(colour) for colour in self.colours]
        return record

    @classmethod
    def of_record(cls, record: Mapping[str, Any]) -> "ShopEdits":
        """Return the edits of `record`."""
        facts = dict(record)
        if "price" in facts:
            facts["price"] = Decimal(facts["price"])
        if "price_per" in facts:
            facts["price_per"] = PriceBasis(facts["price_per"])
        if "tags" in facts:
            facts["tags"] = tuple(facts["tags"])
        if "colours" in facts:
            facts["colours"] = tuple(colour_of_record(one) for one in facts["colours"])
        return cls(**facts)


@dataclass(frozen=True, slots=True)
class Marks:
    """How a shop treats a sample: liked, no longer made, not to be shown."""

    favourite: bool = False
    discontinued: bool = False
    hidden: bool = False


@dataclass(frozen=True, slots=True)
class Said:
    """What a shop says of one sample."""

    edits: ShopEdits = field(default_factory=ShopEdits)
    marks: Marks = field(default_factory=Marks)


@dataclass(frozen=True, slots=True)
class Entry:
    """One sample of the library.

    Parameters
    ----------
    imported
        As its maker says.
    edits, marks
        As the shop says.
    revision
        Counts the changes; handed back with an edit so that nobody overwrites another's unseen.
    """

    imported: Sample
    edits: ShopEdits
    marks: Marks
    revision: int

    @property
    def sample(self) -> Sample:
        """The sample as the shop sees it."""
        return self.edits.applied_to(self.imported)


def with_own_facts(said: Said, sample: Sample, name: str, price: str) -> Said:
    """Return what a shop says with a name and a price of its own; what is empty is the maker's.

    Parameters
    ----------
    said
        What it says now.
    sample
        As the shop sees it now: a text that tells nothing new changes nothing.
    name, price
        As typed; a decimal comma is read as a point.

    Raises
    ------
    FieldError
        When the price is no amount of money.
    """
    edits = said.edits
    if name != sample.name:
        edits = replace(edits, name=name or None)
    amount = _amount(price)
    if amount != sample.price:
        edits = replace(edits, price=amount)
    return replace(said, edits=edits)


def _amount(text: str) -> Decimal | None:
    if not text:
        return None
    try:
        amount = Decimal(text.replace(",", "."))
    except InvalidOperation:
        amount = Decimal(-1)
    if not amount.is_finite() or amount < 0:
        raise FieldError("price", got=text, wanted="type an amount such as 12.50, or nothing")
    return amount
