"""Money: decimal amounts in one currency, rounded once and half up."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction
from typing import Final

from framing_palette.errors import FieldError
from framing_palette.units.lengths import Exact, exact_fraction

DIGITS: Final = 40
_CONTEXT: Final = Context(prec=DIGITS, rounding=ROUND_HALF_UP)
CENT: Final = Decimal("0.01")


@dataclass(frozen=True, slots=True, order=True)
class Money:
    """A decimal amount of one currency.

    Parameters
    ----------
    amount : Decimal
        The amount; a rate may have more places than coins exist for.
    currency : str
        Three capital letters, as in ISO 4217.

    Examples
    --------
    >>> Money.of("12.345", "EUR").rounded().show()
    '12.35 EUR'
    """

    amount: Decimal
    currency: str

    def __post_init__(self) -> None:
        if not self.amount.is_finite():
            raise FieldError("amount of money", got=self.amount, wanted="write a plain number")
        code = self.currency
        if not (len(code) == 3 and code.isascii() and code.isalpha() and code.isupper()):
            wanted = "write the three capital letters of its code, like EUR or USD"
            raise FieldError("currency", got=repr(code), wanted=wanted)

    @classmethod
    def of(cls, amount: Exact | str, currency: str, *, field: str = "amount of money") -> "Money":
        """Read money from an exact number or a written one such as ``12.50``.

        Raises
        ------
        FieldError
            When the text is not a plain number, or the number is a float.
        """
        if isinstance(amount, str):
            return cls(_decimal_from_text(amount, field), currency)
        if isinstance(amount, Decimal):
            return cls(amount, currency)
        return cls._from_fraction(exact_fraction(amount), currency)

    @classmethod
    def zero(cls, currency: str) -> "Money":
        """Return no money of that currency."""
        return cls(Decimal(0), currency)

    @classmethod
    def _from_fraction(cls, value: Fraction, currency: str) -> "Money":
        amount = _CONTEXT.divide(Decimal(value.numerator), Decimal(value.denominator))
        return cls(amount, currency)

    def rounded(self, step: Decimal = CENT) -> "Money":
        """Round to the nearest multiple of ``step``; a half goes away from zero.

        Raises
        ------
        FieldError
            When the step is not above zero.
        """
        if not step > 0:
            raise FieldError("rounding step", got=step, wanted="give an amount above zero")
        steps = _CONTEXT.divide(self.amount, step).quantize(Decimal(1), context=_CONTEXT)
        return Money(_CONTEXT.multiply(steps, step), self.currency)

    def times(self, factor: Exact, step: Decimal = CENT) -> "Money":
        """Multiply by an exact factor, rounding once to ``step``, half up.

        The product is exact until that one rounding.
        """
        product = Fraction(self.amount) * exact_fraction(factor) / Fraction(step)
        steps = (2 * abs(product) + 1) // 2
        signed = -steps if product < 0 else steps
        return Money(_CONTEXT.multiply(Decimal(signed), step), self.currency)

    def show(self) -> str:
        """Write the amount with at least two places and its currency: ``1250.00 EUR``."""
        places = max(2, -int(self.amount.normalize().as_tuple().exponent))
        return f"{self.amount:.{places}f} {self.currency}"

    def __add__(self, other: "Money") -> "Money":
        return Money(_CONTEXT.add(self.amount, self._alike(other)), self.currency)

    def __sub__(self, other: "Money") -> "Money":
        return Money(_CONTEXT.subtract(self.amount, self._alike(other)), self.currency)

    def __neg__(self) -> "Money":
        return Money(self.amount.copy_negate(), self.currency)

    def __bool__(self) -> bool:
        return bool(self.amount)

    def _alike(self, other: "Money") -> Decimal:
        if other.currency != self.currency:
            wanted = f"a sum in {self.currency} takes only {self.currency}"
            raise FieldError("currency", got=other.currency, wanted=wanted)
        return other.amount


def _decimal_from_text(text: str, field: str) -> Decimal:
    """Read a plain decimal number: no exponent, no thousands, a comma only before cents."""
    body = text.strip()
    plain = body.replace(",", ".") if body.count(",") + body.count(".") == 1 else body
    digits = plain.removeprefix("-").replace(".", "", 1)
    is_thousands = len(body.partition(",")[2]) == 3
    is_plain = digits.isascii() and digits.isdigit() and len(digits) < DIGITS
    if is_thousands or not is_plain:
        raise FieldError(field, got=f'"{text}"', wanted="write a number like 12.50")
    return Decimal(plain)


def money_total(amounts: Iterable[Money], currency: str) -> Money:
    """Return the sum of any number of amounts of one currency."""
    return sum(amounts, Money.zero(currency))
