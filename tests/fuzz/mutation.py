"""Ways to spoil a file: as disks, senders, spreadsheets and people with bad intentions do it.

Everything follows from the random numbers that are handed in, so that a case can be made again.
"""

import json
import random
import re
from collections.abc import Sequence
from typing import Any

LARGEST = 1 << 16
NUMBER = re.compile(rb"[-+]?\d+(?:[.,/]\d+)?(?:[eE][-+]?\d+)?")
NUMBERS = (
    b"0", b"-0", b"-1", b"1e999", b"-1e999", b"1e-999", b"nan", b"inf", b"1/0", b"0/0", b"1,5",
    b"0x10", b"1_000", b"9" * 30, b"9" * 400, b"9" * 5000, b"0." + b"1" * 400, b"2147483648",
    b"18446744073709551616", "²".encode(), "½".encode(), "٣".encode(), b"100.6", b"-0.0001",
)  # fmt: skip
SCRAPS = (
    b"", b"\0", b"\n", b"\r", b"\r\n", b"\t", b'"', b"'", b"''", b'""', b",", b";", b"=", b"[", b"]", b"{",
    b"}", b"[[", b"]]", b"<", b">", b"&", b"#", b"\\", b"\\u0000", b"\\ud800", b"../", b"/", b"%s", b"{0}",
    b"\xff", b"\xfe\xff", b"\xff\xfe", b"\xef\xbb\xbf", b"\xed\xa0\x80", "é".encode(), "\u2028".encode(),
    "\u202e".encode(), b"null", b"true", b"[" * 3000, b'{"a":' * 1500, b"(" * 2000, b"<a>" * 1500,
    b"a." * 1500, b" " * 3000, b"<!DOCTYPE a [<!ENTITY b 'c'>]>", b"&b;", b"=cmd()", b"__class__",
)  # fmt: skip
BYTES = (0, 1, 0x7F, 0x80, 0xFE, 0xFF)
WORDS: tuple[Any, ...] = (
    None, True, False, 0, -1, 1, 10**30, 10**400, 1e308, float("inf"), float("nan"), "", "0", "1/0",
    "1e999", "9" * 400, "nan", "../x", "\0", "\ud800", "²", "a\nb", [], {}, [[]], [None], {"": None},
    [0, 0], [[0, 0], [1, 1]], "2026-01-15T10:00:00", "9999-12-31T23:59:59+00:00", "auto",
)  # fmt: skip


def mutated(content: bytes, rng: random.Random, others: Sequence[bytes] = ()) -> bytes:
    """Return the content spoilt in one to eight ways."""
    if content[:1] in (b"{", b"[") and rng.random() < 0.6:
        content = _in_json(content, rng)
        if rng.random() < 0.7:
            return content[:LARGEST]
    made = bytearray(content)
    for _ in range(rng.choice((1, 1, 1, 2, 3, 8))):
        rng.choice(_WAYS)(made, rng, others)
    return bytes(made[:LARGEST])


def _span(made: bytearray, rng: random.Random) -> tuple[int, int]:
    at = rng.randrange(len(made) + 1)
    return at, at + rng.choice((1, 1, 2, 4, 8, 30, 200, 4000))


def _one_byte(made: bytearray, rng: random.Random, _: Sequence[bytes]) -> None:
    if made:
        made[rng.randrange(len(made))] = (
            rng.choice(BYTES) if rng.random() < 0.5 else rng.randrange(256)
        )


def _one_bit(made: bytearray, rng: random.Random, _: Sequence[bytes]) -> None:
    if made:
        made[rng.randrange(len(made))] ^= 1 << rng.randrange(8)


def _cut_out(made: bytearray, rng: random.Random, _: Sequence[bytes]) -> None:
    at, end = _span(made, rng)
    del made[at:end]


def _doubled(made: bytearray, rng: random.Random, _: Sequence[bytes]) -> None:
    at, end = _span(made, rng)
    made[at:at] = made[at:end] * rng.choice((1, 1, 2, 20))


def _moved(made: bytearray, rng: random.Random, _: Sequence[bytes]) -> None:
    at, end = _span(made, rng)
    piece = made[at:end]
    del made[at:end]
    to = rng.randrange(len(made) + 1)
    made[to:to] = piece


def _scrap(made: bytearray, rng: random.Random, _: Sequence[bytes]) -> None:
    at, end = _span(made, rng)
    made[at : rng.choice((at, end))] = rng.choice(SCRAPS)


def _number(made: bytearray, rng: random.Random, _: Sequence[bytes]) -> None:
    found = list(NUMBER.finditer(made))
    if found:
        one = rng.choice(found)
        made[one.start() : one.end()] = rng.choice(NUMBERS)


def _big_integer(made: bytearray, rng: random.Random, _: Sequence[bytes]) -> None:
    """Put an extreme where a binary form may keep a length, a size or an offset."""
    width = rng.choice((1, 2, 4, 8))
    if len(made) >= width:
        at = rng.randrange(len(made) - width + 1)
        value = rng.choice(
            (0, 1, 2 ** (8 * width) - 1, 2 ** (8 * width - 1), rng.getrandbits(8 * width))
        )
        made[at : at + width] = value.to_bytes(width, rng.choice(("big", "little")))


def _line(made: bytearray, rng: random.Random, _: Sequence[bytes]) -> None:
    lines = made.split(b"\n")
    at, to = rng.randrange(len(lines)), rng.randrange(len(lines))
    what = rng.randrange(4)
    if what == 0:
        del lines[at]
    elif what == 1:
        lines.insert(to, lines[at])
    elif what == 2:
        lines[at], lines[to] = lines[to], lines[at]
    else:
        lines[at] = lines[at] + rng.choice((b",", b";", b" ", b"")) + lines[to]
    made[:] = b"\n".join(lines)


def _joined(made: bytearray, rng: random.Random, others: Sequence[bytes]) -> None:
    if others:
        other = rng.choice(others)
        at, from_ = rng.randrange(len(made) + 1), rng.randrange(len(other) + 1)
        made[at:] = other[from_:]


def _cut_short(made: bytearray, rng: random.Random, _: Sequence[bytes]) -> None:
    if rng.random() < 0.3:
        del made[rng.randrange(len(made) + 1) :]


_WAYS = (
    _one_byte, _one_byte, _one_bit, _cut_out, _doubled, _moved, _scrap, _scrap, _number, _number,
    _big_integer, _line, _joined, _cut_short,
)  # fmt: skip


def _in_json(content: bytes, rng: random.Random) -> bytes:
    """Put something odd in one place of a JSON document, its form otherwise kept."""
    try:
        document = json.loads(content)
        places = list(_places(document))
        for _ in range(rng.choice((1, 1, 2, 4))):
            holder, key = rng.choice(places)
            _change(holder, key, rng)
        return json.dumps(document).encode()
    except (ValueError, RecursionError, LookupError, TypeError):
        return content


def _places(value: Any) -> Any:
    inner = (
        value.items()
        if isinstance(value, dict)
        else enumerate(value)
        if isinstance(value, list)
        else ()
    )
    for key, child in list(inner):
        yield value, key
        yield from _places(child)


def _change(holder: Any, key: Any, rng: random.Random) -> None:
    what = rng.randrange(5)
    if what == 0:
        del holder[key]
    elif what == 1 and isinstance(holder, list):
        holder.extend([holder[key]] * rng.choice((1, 3, 600)))
    elif what == 2 and isinstance(holder, dict):
        holder[rng.choice(("a", "", "\0", key + "s"))] = holder.pop(key)
    elif what == 3 and isinstance(holder[key], str) and holder[key]:
        text = holder[key].encode()
        holder[key] = mutated(text, rng).decode("utf-8", "replace")
    else:
        holder[key] = rng.choice(WORDS)
