"""Texture numbers: a measured texture as one row of named numbers and back, whatever it holds."""

import math
from collections.abc import Sequence
from dataclasses import fields

from framing_palette.picture import BANDS_MM, Texture

_PLAIN = Texture()


def texture_names() -> tuple[str, ...]:
    """Return the names of a texture's numbers in order, for example ``sparkle``.

    A measure by octave carries its wavelength, a set of measures by octave a count besides.
    """
    return tuple(name for field in fields(Texture) for name in _names(field.name))


def texture_numbers(texture: Texture) -> list[float]:
    """Return a texture as numbers in the order of `texture_names`; nan where unknown."""
    numbers: list[float] = []
    for field in fields(Texture):
        value = getattr(texture, field.name)
        if isinstance(value, tuple):
            numbers += value
        else:
            numbers.append(math.nan if value is None else float(value))
    return numbers


def texture_from_numbers(numbers: Sequence[float]) -> Texture:
    """Return the texture of `texture_numbers`' row."""
    facts: dict[str, object] = {}
    place = 0
    for field in fields(Texture):
        plain = getattr(_PLAIN, field.name)
        if isinstance(plain, tuple):
            facts[field.name] = tuple(float(x) for x in numbers[place : place + len(plain)])
            place += len(plain)
            continue
        number = float(numbers[place])
        facts[field.name] = None if plain is None and math.isnan(number) else number
        place += 1
    return Texture(**facts)  # type: ignore[arg-type]  # the fields are the class's own


def _names(field: str) -> list[str]:
    plain = getattr(_PLAIN, field)
    if not isinstance(plain, tuple):
        return [field]
    each = len(plain) // len(BANDS_MM)
    bands = [f"{field}_{band:g}mm" for band in BANDS_MM]
    return bands if each == 1 else [f"{band}_{i}" for band in bands for i in range(1, each + 1)]
