"""Photographs beside the database, each once, named by the SHA-256 of its bytes."""

import re
from collections.abc import Iterable
from pathlib import Path

from framing_palette.errors import JobStoreError, OutputError
from framing_palette.jobs.backup_files import settle_folder
from framing_palette.jobs.job_files import digest
from framing_palette.whole_files import write_whole

_SHA256 = re.compile(r"[0-9a-f]{64}")


class Photographs:
    """A folder of photographs that jobs name by their digest; readable by its owner alone."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def keep(self, content: bytes) -> str:
        """Keep a photograph, durably, and return its digest.

        Raises
        ------
        OutputError
            When it cannot be written.
        """
        name = digest(content)
        place = self._place(name)
        try:
            if place.is_file() and place.read_bytes() == content:
                return name
            place.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            write_whole(place, content, private=True)
            settle_folder(place.parent)
            settle_folder(self.folder)
        except OSError as error:
            raise OutputError(
                self.folder,
                problem=f"cannot be written ({error.strerror or error})",
                todo="choose a folder that exists and that you may write to",
            ) from error
        return name

    def content(self, sha256: str) -> bytes:
        """Return a photograph's bytes.

        Raises
        ------
        JobStoreError
            When it is not there, cannot be read or is not the one that was kept.
        """
        place = self._place(sha256)
        try:
            content = place.read_bytes()
        except OSError as error:
            raise JobStoreError(
                place,
                problem=f"is missing from the photographs ({error.strerror or error})",
                todo="put it back from a backup, or choose the picture for the job again",
            ) from error
        if digest(content) != sha256:
            raise JobStoreError(
                place,
                problem="is damaged",
                todo="put it back from a backup, or choose the picture for the job again",
            )
        return content

    def erase(self, digests: Iterable[str]) -> int:
        """Take photographs away for ever and return how many there were."""
        places = [self._place(sha256) for sha256 in digests]
        there = [place for place in places if place.is_file()]
        for place in there:
            place.unlink(missing_ok=True)
        return len(there)

    def _place(self, sha256: str) -> Path:
        """Return where a photograph lies; a name that is no digest never becomes a path."""
        if not _SHA256.fullmatch(sha256):
            raise JobStoreError(
                self.folder,
                problem="is asked for a photograph by something that is no SHA-256",
                todo="choose the picture for the job again",
            )
        return self.folder / sha256[:2] / sha256
