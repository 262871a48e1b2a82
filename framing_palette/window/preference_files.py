"""Preferences on disk: a small JSON file in the user's own settings folder."""

import json
import os
from dataclasses import asdict, fields
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import Any

from framing_palette.errors import FramingPaletteError, OutputError
from framing_palette.units import Length
from framing_palette.whole_files import read_whole
from framing_palette.window.preferences import Preferences

LARGEST_BYTES = 1_000_000
_LENGTHS = ("mat_border", "tolerance")


def preferences_path() -> Path:
    """Return where the preferences of this user are kept."""
    from platformdirs import user_config_path

    return user_config_path("framing-palette", appauthor=False) / "window.json"


def taste_path(preferences: Path | None = None) -> Path:
    """Return where this shop's choices are kept: beside the preferences."""
    return (preferences or preferences_path()).with_name("taste.json")


def read_preferences(path: Path | None = None) -> Preferences:
    """Return the saved preferences; what is missing or cannot be read keeps its usual value."""
    try:
        saved = json.loads(read_whole(path or preferences_path(), LARGEST_BYTES))
    except (OSError, ValueError, RecursionError):
        return Preferences()
    if not isinstance(saved, dict):
        return Preferences()
    usual, known = Preferences(), {field.name for field in fields(Preferences)}
    given = {name: value for name, value in saved.items() if name in known}
    for name, value in given.items():
        usual = _with(usual, name, value)
    return usual


def write_preferences(preferences: Preferences, path: Path | None = None) -> None:
    """Save the preferences; the old file stays whole until the new one is complete.

    Raises
    ------
    OutputError
        When the folder cannot be written.
    """
    path = path or preferences_path()
    table = asdict(preferences)
    table |= {name: str(getattr(preferences, name).mm) for name in _LENGTHS}
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with NamedTemporaryFile(
            "w", dir=path.parent, prefix=".", suffix=".json", delete=False, encoding="utf-8"
        ) as file:
            json.dump(table, file, indent=1)
        os.replace(file.name, path)  # noqa: PTH105 - both names are plain text here
    except OSError as error:
        raise OutputError(
            path,
            problem=f"cannot be written ({error.strerror or error})",
            todo="check the disk and your rights; the settings hold until the window closes",
        ) from error


def _with(preferences: Preferences, name: str, value: Any) -> Preferences:
    """Return the preferences with one saved value, or as they are when it makes no sense."""
    usual = getattr(preferences, name)
    try:
        if name in _LENGTHS:
            return preferences.changed(name, Length.mm_of(str(value)))
        if type(value) is not type(usual):
            return preferences
        return preferences.changed(name, value)
    except FramingPaletteError:
        return preferences
