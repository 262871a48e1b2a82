"""The tables of a price book file as they stand in it."""

from decimal import Decimal, InvalidOperation
from typing import Annotated

from pydantic import BaseModel, BeforeValidator, ConfigDict

from framing_palette.design.price_book import CENT, Basis, Part


def _exact(value: object) -> Decimal:
    """Take a written or exact number; TOML's own decimals arrive exact too."""
    if isinstance(value, Decimal | int | str) and not isinstance(value, bool):
        try:
            number = Decimal(value)
        except InvalidOperation:
            number = Decimal("NaN")
        if number.is_finite():
            return number
    message = 'write a number like "12.50"'
    raise ValueError(message)


Amount = Annotated[Decimal, BeforeValidator(_exact)]


class _Table(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class BreakTable(_Table):
    """One step of ``breaks``."""

    up_to: Amount
    rate: Amount


class ChargeTable(_Table):
    """One ``[[charge]]``."""

    title: str
    part: Part
    by: Basis
    rate: Amount
    per: str = ""
    breaks: tuple[BreakTable, ...] = ()
    waste: Amount = Decimal(0)
    minutes: Amount = Decimal(0)
    minimum: Amount = Decimal(0)
    material: str = ""
    codes: str = ""
    private: bool = False


class PriceBookTable(_Table):
    """The whole file."""

    currency: str
    minimum: Amount = Decimal(0)
    tax_percent: Amount = Decimal(0)
    tax_name: str = "tax"
    tax_included: bool = False
    round_line_to: Amount = CENT
    round_total_to: Amount = CENT
    private_title: str = "Workmanship"
    charge: tuple[ChargeTable, ...] = ()
