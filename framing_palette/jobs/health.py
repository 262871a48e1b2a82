"""Health: what a working day rests on, looked at one by one."""

import importlib.metadata
import os
import platform
import sys
from collections.abc import Iterator, Sequence
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
    "alembic",
    "pydantic",
    "PySide6-Essentials",
)


@dataclass(frozen=True, slots=True)
class HealthFinding:
    """One thing looked at, what was found, and whether it is in order."""

    what: str
    found: str
    sound: bool = True


def examine(catalogue_folder: Path, jobs: str | Path | None = None) -> tuple[HealthFinding, ...]:
    """Look at versions, display, colour engine, catalogue and the shop's jobs.

    Parameters
    ----------
    catalogue_folder
        The catalogue that the shop works with.
    jobs
        File or address of the shop's jobs; this computer's own file when None. A file that is
        missing is not made.
    """
    return (
        HealthFinding("program", f"{__version__} on Python {platform.python_version()}"),
        HealthFinding("machine", f"{platform.system()} {platform.machine()}"),
        *_libraries(),
        _display(),
        _colour_engine(),
        *_catalogue(catalogue_folder),
        *_jobs(jobs),
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


def _jobs(address: str | Path | None) -> Iterator[HealthFinding]:
    from framing_palette.jobs import backup_files, database_files
    from framing_palette.jobs.place_files import shop_place
    from framing_palette.jobs.store import JobStore

    address = address or shop_place().address
    is_file = not database_files.is_server(address)
    path = database_files.file_of(address) if is_file else None
    if path is not None and not path.exists() and not backup_files.backups_of(path):
        yield HealthFinding("jobs", f"none yet in {path}")
        return
    try:
        with JobStore(address) as store:
            yield HealthFinding("jobs", f"{store.count()} in {store.shown}, checked and whole")
    except FramingPaletteError as error:
        yield HealthFinding("jobs", str(error), sound=False)
    if path is not None:
        yield _backups(backup_files.backups_of(path), backup_files.newest_whole_backup(path))


def _backups(backups: Sequence[Path], newest: Path | None) -> HealthFinding:
    if newest is None:
        words = "none of them is whole; take one" if backups else "none yet"
        return HealthFinding("backups", words, sound=not backups)
    broken = backups.index(newest)
    words = f"{len(backups)}, the newest whole one is {newest.name}"
    return HealthFinding("backups", words if not broken else f"{words}; {broken} after it are not")
