"""Rack places: which file keeps what a shop says of which catalogue."""

import hashlib
from pathlib import Path

from framing_palette.catalogue.samples import Catalogue


def default_libraries() -> Path:
    """Return the folder in which this user's racks are kept."""
    import platformdirs

    return platformdirs.user_data_path("framing-palette", appauthor=False) / "racks"


def library_place(folder: Path, catalogue: Catalogue) -> Path:
    """Return the file that keeps what the shop says of a catalogue, in a folder of libraries."""
    key = f"{catalogue.textures_dir}\0{catalogue.name}".encode()
    return folder / f"{hashlib.blake2b(key, digest_size=8).hexdigest()}.sqlite"
