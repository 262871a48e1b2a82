"""Taste on disk: a small JSON file of our own form, written whole, read with care."""

import json
from dataclasses import dataclass
from pathlib import Path

from framing_palette.errors import FieldError, OutputError, TasteFileError
from framing_palette.ranking.taste import Taste
from framing_palette.ranking.taste_report import taste_report, usable_taste
from framing_palette.whole_files import check_ordinary, write_whole

MOST_BYTES = 20_000_000


@dataclass(frozen=True, slots=True)
class ReadTaste:
    """What a taste file holds, and what of it could not be used, in a sentence each."""

    taste: Taste
    faults: tuple[str, ...] = ()


def read_taste_file(path: Path) -> ReadTaste:
    """Read a taste file; entries that cannot be used are left out and told of.

    Raises
    ------
    TasteFileError
        When it cannot be read, or is no taste file at all.
    """
    content = _content(path)
    try:
        taste, faults = usable_taste(json.loads(content))
    except FieldError as error:
        raise TasteFileError(
            path, problem=f"has {error.field} {error.got}", todo=error.wanted
        ) from error
    except (ValueError, RecursionError) as error:
        raise TasteFileError(
            path, problem="is not whole JSON text", todo="export it again"
        ) from error
    told = tuple(f"{path}, {fault} It was left out." for fault in faults)
    return ReadTaste(taste, told)


def write_taste_file(path: Path, taste: Taste) -> None:
    """Write a taste file whole or not at all; its folder is made when it is missing.

    Raises
    ------
    OutputError
        When it cannot be written; what was there before is still there.
    """
    content = json.dumps(taste_report(taste), separators=(",", ":")).encode()
    _make_folder(path)
    write_whole(path, content)


def set_aside(path: Path) -> Path | None:
    """Give a damaged file another name, so that a new one can take its place.

    Returns the new name, or None when it cannot be renamed.
    """
    for number in range(1, 100):
        aside = path.with_name(f"{path.stem}-damaged-{number}{path.suffix}")
        if not aside.exists():
            try:
                return path.rename(aside)
            except OSError:
                return None
    return None


def _content(path: Path) -> bytes:
    try:
        check_ordinary(path)
        with path.open("rb") as file:
            content = file.read(MOST_BYTES + 1)
    except OSError as error:
        raise TasteFileError(
            path,
            problem=f"cannot be read ({error.strerror or error})",
            todo="check that it is there and that you may read it",
        ) from error
    if len(content) > MOST_BYTES:
        raise TasteFileError(
            path,
            problem=f"is larger than {MOST_BYTES // 1_000_000} MB",
            todo="choose a file that this program exported",
        )
    return content


def _make_folder(path: Path) -> None:
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(
            path,
            problem=f"cannot be written ({error.strerror or error})",
            todo="choose a folder that exists and that you may write to",
        ) from error
