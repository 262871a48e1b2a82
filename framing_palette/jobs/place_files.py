"""Where the shop's jobs are kept: this computer's own file, or the address that several share.

The environment comes before what was set in the window, and that before the usual file. An
address can hold a password, so the setting is readable by its owner alone and is shown without it;
better is an address without one and the password where the database's own client looks for it.
"""

import json
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from framing_palette.errors import OutputError
from framing_palette.jobs.database_files import (
    default_jobs_path,
    file_of,
    is_server,
    shown_address,
)
from framing_palette.whole_files import read_whole, write_whole

ADDRESS_VARIABLE: Final = "FRAMING_PALETTE_JOBS"
PHOTOGRAPHS_VARIABLE: Final = "FRAMING_PALETTE_PHOTOGRAPHS"
LARGEST_BYTES: Final = 100_000


@dataclass(frozen=True, slots=True, repr=False)
class ShopPlace:
    """Where jobs and photographs are kept.

    Parameters
    ----------
    address
        A file, or the address of a database server.
    photographs
        The folder of the photographs; beside the file, or in this computer's own when None.
    from_environment
        Whether the environment named the address, so that it cannot be set in the window.
    """

    address: str | Path
    photographs: Path | None = None
    from_environment: bool = False

    @property
    def is_server(self) -> bool:
        """Whether several counters may share it over the network."""
        return is_server(self.address)

    @property
    def shown(self) -> str:
        """The address as it may be shown, without a password."""
        return shown_address(self.address)

    @property
    def file(self) -> Path | None:
        """The file; None for a server."""
        return None if self.is_server else file_of(self.address)

    @property
    def folder(self) -> Path:
        """The folder on this computer for what belongs to it."""
        return (self.file or default_jobs_path()).parent

    @property
    def photographs_folder(self) -> Path:
        """The folder of the photographs."""
        return self.photographs or self.folder / "photographs"

    @property
    def unsent_folder(self) -> Path:
        """Where jobs wait on this computer that could not be saved where they belong."""
        return self.folder / "unsent"

    def __repr__(self) -> str:
        """Return it without a password."""
        return f"ShopPlace({self.shown!r})"


def setting_path() -> Path:
    """Return where the address is kept for this user."""
    import platformdirs

    return platformdirs.user_config_path("framing-palette", appauthor=False) / "jobs.json"


def shop_place(setting: Path | None = None) -> ShopPlace:
    """Return where the shop's jobs are kept; a setting that cannot be read counts as none."""
    said = _said(setting or setting_path())
    photographs = os.environ.get(PHOTOGRAPHS_VARIABLE, "").strip() or said["photographs"]
    folder = Path(photographs).expanduser() if photographs else None
    from_environment = os.environ.get(ADDRESS_VARIABLE, "").strip()
    address = from_environment or said["address"]
    place: str | Path = address if address and "://" in address else _path(address)
    return ShopPlace(place, folder, from_environment=bool(from_environment))


def write_shop_place(address: str, photographs: str = "", setting: Path | None = None) -> Path:
    """Set where the jobs are kept from the next start on; empty is this computer's own file.

    Raises
    ------
    OutputError
        When it cannot be written.
    """
    path = setting or setting_path()
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(
            path.parent,
            problem=f"cannot be made ({error.strerror or error})",
            todo="check the disk and your rights",
        ) from error
    said = {"address": address.strip(), "photographs": photographs.strip()}
    return write_whole(path, json.dumps(said, indent=1).encode(), private=True)


def _path(address: str) -> Path:
    return Path(address).expanduser() if address else default_jobs_path()


def _said(path: Path) -> dict[str, str]:
    said = {"address": "", "photographs": ""}
    try:
        read = json.loads(read_whole(path, LARGEST_BYTES))
    except (OSError, ValueError, RecursionError):
        return said
    if isinstance(read, dict):
        said |= {name: read[name].strip() for name in said if isinstance(read.get(name), str)}
    return said
