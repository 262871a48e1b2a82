"""Column files: a large catalogue folder kept as arrays on disk, found again by its content."""

import hashlib
import json
import os
import shutil
import tempfile
from contextlib import suppress
from dataclasses import asdict
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from framing_palette.catalogue.catalogue_files import (
    names_of_folder,
    no_usable_sample,
    read_catalogue_folder,
    stream_samples,
)
from framing_palette.catalogue.columns import CatalogueColumns, column_names, lazy_catalogue
from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.catalogue.samples import Catalogue
from framing_palette.catalogue.splicing import columns_in_parts

SMALL_BYTES = 2 << 20
"""Tables smaller than this together are read anew each time: that is as quick."""

KEPT_CATALOGUES = 6
_FORM = "columns 6"  # changes whenever columns or their reading change, so that old ones are left
_TABLES = ("samples", "colours", "spectra", "profiles", "conservation", "textures")
_CHUNK = 1 << 20


def default_cache_dir() -> Path:
    """Return the folder for kept columns of this user."""
    import platformdirs

    return Path(platformdirs.user_cache_dir("framing-palette")) / "catalogues"


def open_catalogue_folder(
    folder: Path, *, cache_dir: Path | None = None
) -> tuple[Catalogue, tuple[CellProblem, ...]]:
    """Return a catalogue folder as `read_catalogue_folder` does, a large one from kept columns.

    The columns are found by the content of the tables, so an edited table is read anew.

    Parameters
    ----------
    folder
        The catalogue folder.
    cache_dir
        Where columns are kept; the user's own cache by default. It may be deleted at any time.

    Raises
    ------
    CatalogueError
        When nothing in the folder can be used.
    """
    if _size(folder) < SMALL_BYTES:
        return read_catalogue_folder(folder)
    place = (cache_dir or default_cache_dir()) / content_key(folder)
    kept, facts = kept_columns(place), _kept_facts(place)
    if kept is not None and facts is not None:
        return lazy_catalogue(kept, textures_dir=facts[0], name=facts[1]), facts[2]
    problems = ProblemList()
    columns = columns_in_parts(stream_samples(folder, problems))
    if not len(columns):
        raise no_usable_sample(folder, problems)
    textures_dir, name = names_of_folder(folder, problems)
    told = problems.told()
    keep_columns(
        place,
        columns,
        {
            "textures_dir": textures_dir,
            "name": name,
            "problems": [asdict(problem) for problem in told],
        },
    )
    return lazy_catalogue(columns, textures_dir=textures_dir, name=name), told


def content_key(folder: Path) -> str:
    """Return a key that changes with the tables' content and with the list of texture files."""
    digest = hashlib.blake2b(_FORM.encode(), digest_size=20)
    digest.update(str(folder.resolve()).encode())
    for path in _tables(folder):
        digest.update(path.name.encode())
        with path.open("rb") as file:
            while chunk := file.read(_CHUNK):
                digest.update(chunk)
    textures = folder / "textures"
    if textures.is_dir():
        with os.scandir(textures) as entries:
            for name, size, changed in sorted(
                (entry.name, entry.stat().st_size, entry.stat().st_mtime_ns) for entry in entries
            ):
                digest.update(f"{name}\0{size}\0{changed}\0".encode())
    return digest.hexdigest()


def _tables(folder: Path) -> list[Path]:
    """Return the tables of a folder whatever the letter case of their names."""
    wanted = {f"{name}.csv" for name in _TABLES} | {"datapackage.json"}
    try:
        return sorted(path for path in folder.iterdir() if path.name.lower() in wanted)
    except OSError:
        return []


def _size(folder: Path) -> int:
    return sum(path.stat().st_size for path in _tables(folder))


def keep_columns(
    place: Path, columns: CatalogueColumns, facts: dict[str, Any] | None = None
) -> None:
    """Write columns where `kept_columns` finds them; without room nothing is kept.

    They are written beside their place and moved there whole, so that no half is ever read.
    """
    with suppress(OSError):
        place.parent.mkdir(parents=True, exist_ok=True)
        made = Path(tempfile.mkdtemp(prefix="new-", dir=place.parent))
        try:
            for name in column_names():
                np.save(made / f"{name}.npy", getattr(columns, name), allow_pickle=False)
            (made / "facts.json").write_text(json.dumps(facts or {}), encoding="utf-8")
            shutil.rmtree(place, ignore_errors=True)
            made.replace(place)
        finally:
            shutil.rmtree(made, ignore_errors=True)
        _forget_old(place.parent)


def kept_columns(place: Path) -> CatalogueColumns | None:
    """Return columns mapped from disk, or None when there are none that can be read."""
    try:
        columns = CatalogueColumns(
            **{name: _array(place / f"{name}.npy") for name in column_names()}
        )
        os.utime(place)  # tells the newest from the oldest when old ones are forgotten
    except (OSError, ValueError, EOFError):
        return None
    return columns


def _kept_facts(place: Path) -> tuple[str, str, tuple[CellProblem, ...]] | None:
    """Return the textures folder, name and problems that were kept with columns."""
    try:
        facts = json.loads((place / "facts.json").read_text(encoding="utf-8"))
        problems = tuple(CellProblem(**problem) for problem in facts["problems"])
        return str(facts["textures_dir"]), str(facts["name"]), problems
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        return None


def _array(path: Path) -> NDArray[Any]:
    try:
        return np.asarray(np.load(path, mmap_mode="r", allow_pickle=False))
    except ValueError:  # an empty array cannot be mapped
        return np.asarray(np.load(path, allow_pickle=False))


def _forget_old(folder: Path) -> None:
    kept = sorted(
        (path for path in folder.iterdir() if path.is_dir() and not path.name.startswith("new-")),
        key=lambda path: path.stat().st_mtime,
        reverse=True,
    )
    for path in kept[KEPT_CATALOGUES:]:
        shutil.rmtree(path, ignore_errors=True)
