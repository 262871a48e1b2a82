"""Lengths as people write them: reading and showing, exactly.

Everything here works on plain exact millimetres, so that the ``Length`` value can be built on it.
"""

import re
import unicodedata
from fractions import Fraction
from typing import Final, Literal, get_args

from framing_palette.errors import FieldError, LengthError

LengthUnit = Literal["in", "mm", "cm"]
Denominator = Literal[16, 32, 64]

UNITS: Final = get_args(LengthUnit)
DENOMINATORS: Final = get_args(Denominator)
MM_PER_INCH: Final = Fraction(127, 5)
MM_PER: Final = {
    "in": MM_PER_INCH,
    "inch": MM_PER_INCH,
    "inches": MM_PER_INCH,
    '"': MM_PER_INCH,
    "ft": 12 * MM_PER_INCH,
    "foot": 12 * MM_PER_INCH,
    "feet": 12 * MM_PER_INCH,
    "'": 12 * MM_PER_INCH,
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
}
LONGEST_TEXT: Final = 60

_ALIKE: Final = str.maketrans(
    {
        "\N{MINUS SIGN}": "-",
        "\N{EN DASH}": "-",
        "\N{NON-BREAKING HYPHEN}": "-",
        "\N{HYPHEN}": "-",
        "\N{FRACTION SLASH}": "/",
        "\N{DIVISION SLASH}": "/",
        "\N{DOUBLE PRIME}": '"',
        "\N{LEFT DOUBLE QUOTATION MARK}": '"',
        "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
        "\N{PRIME}": "'",
        "\N{LEFT SINGLE QUOTATION MARK}": "'",
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
    }
)
_MIXED: Final = re.compile(r"(?P<whole>[0-9]+)(?: +|-)(?P<top>[0-9]+) ?/ ?(?P<bottom>[0-9]+)")
_FRACTION: Final = re.compile(r"(?P<top>[0-9]+) ?/ ?(?P<bottom>[0-9]+)")
_DECIMAL: Final = re.compile(r"[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+")
_PLAIN: Final = re.compile(
    r"(?P<number>[0-9.,/ -]+?) ?(?P<unit>inches|inch|in|feet|foot|ft|mm|cm|m|\"|')?\.?"
)
_FEET_AND_INCHES: Final = re.compile(
    r"(?P<feet>[0-9]+) ?(?:feet|foot|ft|') ?-? ?(?P<inches>[0-9.,/ -]+?) ?(?:inches|inch|in|\")?\.?"
)


def millimetres_from_text(
    text: str, unit: LengthUnit = "in", *, field: str | None = None
) -> Fraction:
    """Read a written length as exact millimetres; a bare number is taken in ``unit``.

    Nothing is guessed: what could be read in two ways is refused.

    Parameters
    ----------
    text : str
        For example ``16 3/8``, ``16-3/8``, ``16.375``, ``16 3/8"``, ``1' 4 3/8"``, ``416 mm``
        or ``41.6 cm``.
    unit : {"in", "mm", "cm"}
        The unit of a number without one.
    field : str, optional
        What the text was typed into, for the refusal.

    Returns
    -------
    Fraction
        Millimetres, negative when the text begins with a minus sign.

    Raises
    ------
    LengthError
        When the text is none of the accepted forms.
    FieldError
        When ``unit`` is not one of the three.

    Examples
    --------
    >>> millimetres_from_text("16 3/8")
    Fraction(16637, 40)
    >>> millimetres_from_text("41.6 cm")
    Fraction(416, 1)
    """
    if unit not in UNITS:
        raise FieldError("unit", got=unit, wanted="choose in, mm or cm")
    plain = _plain_characters(text)
    negative = plain.startswith("-")
    body = plain.removeprefix("-").lstrip()
    amount = _feet_and_inches(body)
    if amount is None:
        amount = _number_and_unit(body, unit)
    if amount is None:
        raise LengthError(text, field=field)
    return -amount if negative else amount


def _plain_characters(text: str) -> str:
    """Return ``text`` in lower case with one kind of quote, dash and slash; empty when overlong."""
    if len(text) > LONGEST_TEXT:
        return ""
    spelled = "".join(_spelled_fraction(character) for character in text)
    single_spaced = " ".join(spelled.translate(_ALIKE).split())
    return single_spaced.replace("''", '"').casefold()


def _spelled_fraction(character: str) -> str:
    """Return a vulgar-fraction character as `` 3/8``, any other character as it is."""
    kind, *codes = unicodedata.decomposition(character).split() or [""]
    if kind != "<fraction>":
        return character
    return " " + "".join(chr(int(code, 16)) for code in codes)


def _feet_and_inches(body: str) -> Fraction | None:
    match = _FEET_AND_INCHES.fullmatch(body)
    if match is None:
        return None
    inches = _number(match["inches"])
    if inches is None or inches >= 12:
        return None
    return (12 * int(match["feet"]) + inches) * MM_PER_INCH


def _number_and_unit(body: str, unit: LengthUnit) -> Fraction | None:
    match = _PLAIN.fullmatch(body)
    number = _number(match["number"]) if match else None
    if match is None or number is None:
        return None
    return number * MM_PER[match["unit"] or unit]


def _number(text: str) -> Fraction | None:
    """Return the value of a decimal, a fraction or a whole number with a fraction below one."""
    text = text.strip()
    if match := _MIXED.fullmatch(text):
        part = _ratio(match["top"], match["bottom"])
        return int(match["whole"]) + part if part is not None and part < 1 else None
    if match := _FRACTION.fullmatch(text):
        return _ratio(match["top"], match["bottom"])
    if _DECIMAL.fullmatch(text) is None or _is_thousands(text):
        return None
    return Fraction(text.replace(",", ".").rstrip("."))


def _ratio(top: str, bottom: str) -> Fraction | None:
    return Fraction(int(top), int(bottom)) if int(bottom) else None


def _is_thousands(text: str) -> bool:
    """Tell whether a comma could as well part thousands, as in ``1,250``."""
    whole, comma, places = text.partition(",")
    return bool(comma) and len(places) == 3 and bool(whole.strip("0"))


def rounded_half_up(value: Fraction) -> int:
    """Return the nearest whole number; a half goes away from zero, so that signs mirror."""
    size = (2 * abs(value) + 1) // 2
    return -size if value < 0 else size


def smallest_step_mm(unit: LengthUnit, denominator: int = 32, decimals: int = 1) -> Fraction:
    """Return the millimetres of the smallest step that ``figures_from_millimetres`` can write.

    Raises
    ------
    FieldError
        When the unit, the denominator or the number of decimals is not one that is shown.
    """
    if unit not in UNITS:
        raise FieldError("unit", got=unit, wanted="choose in, mm or cm")
    if unit == "in":
        if denominator not in DENOMINATORS:
            raise FieldError(
                "smallest fraction of an inch",
                got=f"1/{denominator}",
                wanted="choose 1/16, 1/32 or 1/64",
            )
        return MM_PER_INCH / denominator
    if not 0 <= decimals <= 6:
        raise FieldError("number of decimals", got=decimals, wanted="choose 0 to 6")
    return Fraction(1, 10**decimals)


def figures_from_millimetres(
    mm: Fraction, unit: LengthUnit, denominator: int = 32, decimals: int = 1
) -> str:
    """Write ``mm`` without its unit, to the nearest step: ``16 3/8``, ``415.9``, ``41.59``.

    ``decimals`` counts places of a millimetre; centimetres show one more.
    """
    steps = rounded_half_up(mm / smallest_step_mm(unit, denominator, decimals))
    sign, size = ("-" if steps < 0 else ""), abs(steps)
    if unit == "in":
        return sign + _mixed_number(Fraction(size, denominator))
    places = decimals + (1 if unit == "cm" else 0)
    whole, rest = divmod(size, 10**places)
    tail = f"{rest:0{places}d}".rstrip("0") if rest else ""
    return f"{sign}{whole}.{tail}" if tail else f"{sign}{whole}"


def _mixed_number(value: Fraction) -> str:
    whole, rest = divmod(value, 1)
    if not rest:
        return str(whole)
    return f"{whole} {rest}" if whole else str(rest)
