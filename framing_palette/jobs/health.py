"""Health: what a working day rests on, looked at one by one."""

import importlib.metadata
import os
import platform
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from framing_palette import __version__
from framing_palette.catalogue import read_catalogue_folder
from framing_palette.colour.self_check import PUBLISHED_ERROR, greatest_error
from framing_palette.errors import FramingPaletteError

LIBRARIES = (
    "numpy",
    "scipy",
    "scikit-learn",
    "scikit-image",
    "pillow",
    "opencv-contrib-python-headless",
    "imagecodecs",
    "reportlab",
    "SQLAlchemy",
    "PySide6-Essentials",
)


@dataclass(frozen=True, slots=True)
class HealthFinding:
    """One thing looked at, what was found, and whether it is in order."""

    what: str
    found: str
    sound: bool = True


def examine(catalogue_folder: Path) -> tuple[HealthFinding, ...]:
    """Look at versions, display, colour engine and catalogue."""
    return (
        HealthFinding("program", f"{__version__} on Python {platform.python_version()}"),
        HealthFinding("machine", f"{platform.system()} {platform.machine()}"),
        *_libraries(),
        _display(),
        _colour_engine(),
        *_catalogue(catalogue_folder),
    )


def _libraries() -> Iterator[HealthFinding]:
    for name in LIBRARIES:
        try:
            yield HealthFinding(name, importlib.metadata.version(name))
        except importlib.metadata.PackageNotFoundError:
            yield HealthFinding(name, "is not installed; install the program again", sound=False)


def _display() -> HealthFinding:
    chosen = os.environ.get("QT_QPA_PLATFORM")
    if chosen:
        return HealthFinding("display", f"Qt is told to use {chosen}")
    if not sys.platform.startswith("linux"):
        return HealthFinding("display", "the system's own")
    found = os.environ.get("WAYLAND_DISPLAY") or os.environ.get("DISPLAY")
    words = found or "none; the command line works, the window needs a desktop"
    return HealthFinding("display", words)


def _colour_engine() -> HealthFinding:
    error = greatest_error()
    words = f"within {error:.1e} ΔE00 of the published pairs (at most {PUBLISHED_ERROR:.0e})"
    return HealthFinding("colour engine", words, sound=error <= PUBLISHED_ERROR)


def _catalogue(folder: Path) -> Iterator[HealthFinding]:
    try:
        catalogue, problems = read_catalogue_folder(folder)
    except FramingPaletteError as error:
        yield HealthFinding("catalogue", str(error), sound=False)
        return
    wrong = [problem for problem in problems if not problem.is_notice]
    words = f"{len(catalogue)} good samples in {folder}, {len(wrong)} problems"
    yield HealthFinding("catalogue", words, sound=not wrong)
    for problem in wrong[:5]:
        yield HealthFinding("catalogue", str(problem), sound=False)
