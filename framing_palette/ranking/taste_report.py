"""Taste as plain values and back: the form in which a shop's choices are kept and carried.

What comes in may be damaged or made by another version: every entry is looked at by itself, what
cannot be used is left out and told of, and learned weights are held within the bounds that
learning keeps to. Nothing in it says who a client is.
"""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final, TypeGuard, TypeVar

import numpy as np

from framing_palette.errors import FieldError
from framing_palette.ranking.judging import QUALITIES
from framing_palette.ranking.rule import HOUSE_RULE, Rule
from framing_palette.ranking.taste import (
    MOST_CHOICES,
    Choice,
    Codes,
    PairKey,
    Taste,
    TasteFit,
    weights_of,
    with_weights,
)

TASTE_SCHEMA: Final = "framing-palette/taste@1"
LARGEST: Final = 10_000.0
LONGEST_TEXT: Final = 200
MOST_LAYERS: Final = 12

T = TypeVar("T")


def taste_report(taste: Taste) -> dict[str, Any]:
    """Return a taste as plain values."""
    return {
        "schema": TASTE_SCHEMA,
        "qualities": list(QUALITIES),
        "choices": [
            {
                "picture": choice.picture,
                "better_codes": list(choice.better_codes),
                "worse_codes": list(choice.worse_codes),
                "better": list(choice.better),
                "worse": list(choice.worse),
            }
            for choice in taste.choices
        ],
        "passed": [
            {"picture": picture, "looks": sorted(list(codes) for codes in pair)}
            for picture, pair in taste.passed
        ],
        "learned": None if taste.learned is None else _kept_report(taste.learned),
    }


def taste_from_report(report: object) -> Taste:
    """Return the taste of a report in which nothing is wrong.

    Raises
    ------
    FieldError
        When it is no such report, or an entry of it cannot be used.
    """
    taste, faults = usable_taste(report)
    if faults:
        raise faults[0]
    return taste


def usable_taste(report: object) -> tuple[Taste, tuple[FieldError, ...]]:
    """Return what can be used of a report, and what is wrong with the rest of it.

    Qualities are matched by name. One that the report does not know is level in all its choices.

    Raises
    ------
    FieldError
        When it is no such report, or knows less than half of the qualities.
    """
    if not isinstance(report, Mapping) or report.get("schema") != TASTE_SCHEMA:
        got = report.get("schema") if isinstance(report, Mapping) else _shown(report)
        wanted = f'choose a file with schema "{TASTE_SCHEMA}"'
        raise FieldError("schema", got=_shown(got), wanted=wanted)
    names = _names(report)
    faults: list[FieldError] = []
    choices = _each(report, "choices", lambda entry: _choice(entry, names), faults)
    passed = _each(report, "passed", _passed, faults)
    taste = Taste().with_choices(*choices).with_passed(*passed)
    try:
        learned = _learned(report.get("learned"))
    except FieldError as fault:
        faults.append(fault)
        learned = None
    return Taste(taste.choices, taste.passed, learned), tuple(faults)


def _names(report: Mapping[str, Any]) -> list[str]:
    names = report.get("qualities")
    known = set(QUALITIES) & {name for name in names if isinstance(name, str)} if _is(names) else ()
    if not _is(names) or len(known) * 2 < len(QUALITIES) or len(names) > MOST_CHOICES:
        unknown = ", ".join(name for name in QUALITIES if name not in known)
        wanted = "export the taste again with this version"
        raise FieldError("qualities", got=f"without {unknown}", wanted=wanted)
    return [str(name) for name in names]


def _each(
    report: Mapping[str, Any], field: str, make: Callable[[Any], T], faults: list[FieldError]
) -> list[T]:
    entries = report.get(field, [])
    if not _is(entries):
        faults.append(FieldError(field, got=_shown(entries), wanted="give a list"))
        return []
    made = []
    for number, entry in enumerate(entries[-MOST_CHOICES:], start=1):
        try:
            made.append(make(entry))
        except FieldError as fault:
            place = f"{field}, number {number}, {fault.field}"
            faults.append(FieldError(place, got=fault.got, wanted=fault.wanted))
    return made


def _choice(entry: object, names: list[str]) -> Choice:
    given = _table(entry, "entry")
    sides = [_qualities(given.get(side), side, names) for side in ("better", "worse")]
    codes = [_codes(given.get(field, []), field) for field in ("better_codes", "worse_codes")]
    if any(codes) and codes[0] == codes[1]:
        raise FieldError("worse_codes", got=_shown(codes[1]), wanted="give two different looks")
    return Choice(sides[0], sides[1], _text(given.get("picture", ""), "picture"), *codes)


def _qualities(given: object, side: str, names: list[str]) -> tuple[float, ...]:
    wanted = f"give {len(names)} numbers"
    if not _is(given) or len(given) != len(names):
        raise FieldError(side, got=_shown(given), wanted=wanted)
    numbers = {name: _number(value, side, wanted) for name, value in zip(names, given, strict=True)}
    return tuple(numbers.get(name, 0.0) for name in QUALITIES)


def _passed(entry: object) -> PairKey:
    given = _table(entry, "entry")
    looks = given.get("looks")
    if not _is(looks) or len(looks) != 2:
        raise FieldError("looks", got=_shown(looks), wanted="give two lists of codes")
    picture = _text(given.get("picture", ""), "picture")
    return picture, frozenset(_codes(look, "looks") for look in looks)


def learned_report(learned: TasteFit) -> dict[str, Any]:
    """Return what was learned as plain values, without the weights."""
    return {
        "in_use": learned.in_use,
        "rests_on": learned.rests_on,
        "pictures": learned.pictures,
        "foretold": learned.foretold,
        "house_foretold": learned.house_foretold,
        "words": learned.words,
    }


def _kept_report(learned: TasteFit) -> dict[str, Any]:
    return {
        **learned_report(learned),
        "weights": dict(zip(QUALITIES, weights_of(learned.rule).tolist(), strict=True)),
        "house": dict(zip(QUALITIES, weights_of(HOUSE_RULE).tolist(), strict=True)),
    }


def _learned(given: object) -> TasteFit | None:
    if given is None:
        return None
    table = _table(given, "learned")
    counts = [_number(table.get(name), f"learned, {name}") for name in ("rests_on", "pictures")]
    if min(counts) < 0 or any(count != int(count) for count in counts):
        raise FieldError("learned", got=_shown(counts), wanted="give whole numbers from 0")
    shares = [
        _share(table.get(name), f"learned, {name}") for name in ("foretold", "house_foretold")
    ]
    is_used = table.get("in_use") is True and None not in shares
    rule = _rule(table) if is_used else HOUSE_RULE
    return TasteFit(rule, int(counts[0]), int(counts[1]), shares[0], shares[1], in_use=is_used)


def _rule(table: Mapping[str, Any]) -> Rule:
    """Return the learned rule, held within its bounds."""
    kept = {name: _table(table.get(name), f"learned, {name}") for name in ("weights", "house")}
    read = {
        name: np.array([_number(part.get(quality), f"learned, {name}") for quality in QUALITIES])
        for name, part in kept.items()
    }
    if not np.allclose(read["house"], weights_of(HOUSE_RULE), atol=1e-9):
        wanted = "learn again from the choices"
        raise FieldError("learned", got="from another house rule", wanted=wanted)
    return with_weights(HOUSE_RULE, read["weights"])


def _share(given: object, field: str) -> float | None:
    if given is None:
        return None
    share = _number(given, field)
    if not 0.0 <= share <= 1.0:
        raise FieldError(field, got=share, wanted="give a share from 0 to 1")
    return share


def _codes(given: object, field: str) -> Codes:
    if not _is(given) or len(given) > MOST_LAYERS:
        raise FieldError(field, got=_shown(given), wanted=f"give up to {MOST_LAYERS} codes")
    return tuple(_text(code, field) for code in given)


def _text(given: object, field: str) -> str:
    if not isinstance(given, str) or len(given) > LONGEST_TEXT:
        wanted = f"give a text of at most {LONGEST_TEXT} characters"
        raise FieldError(field, got=_shown(given), wanted=wanted)
    return given


def _number(given: object, field: str, wanted: str = "give a number") -> float:
    if isinstance(given, bool) or not isinstance(given, int | float):
        raise FieldError(field, got=_shown(given), wanted=wanted)
    if not abs(given) <= LARGEST:  # not a number either; and no float holds every whole number
        raise FieldError(field, got="out of range", wanted=wanted)
    return float(given)


def _table(given: object, field: str) -> Mapping[str, Any]:
    if not isinstance(given, Mapping):
        raise FieldError(field, got=_shown(given), wanted="give a table of named values")
    return given


def _is(given: object) -> TypeGuard[Sequence[Any]]:
    return isinstance(given, list | tuple)


def _shown(given: object) -> str:
    text = str(given)
    return text if len(text) <= 40 else f"{text[:40]}…"
