"""A job in one file: a zip with the document, the photograph and a checksum of each.

What is inside: ``job.json`` (the document), ``pictures/SHA256.ENDING`` (the photograph as it was
taken) and ``checksums.json`` (SHA-256 of both). Nothing is unpacked to a path that the file names:
entries are read one by one, by these names alone, up to stated limits.
"""

import hashlib
import io
import json
import struct
import zipfile
import zlib
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import Final

from framing_palette.catalogue import Catalogue
from framing_palette.errors import JobFileError
from framing_palette.jobs.documents import job_from_text, job_text
from framing_palette.jobs.jobs import Job
from framing_palette.whole_files import check_ordinary, write_whole

ENDING: Final = ".framejob"
MOST_DOCUMENT_BYTES: Final = 20_000_000
MOST_PICTURE_BYTES: Final = 1_000_000_000
MOST_ENTRIES: Final = 16
# All that zipfile is known to raise on bytes that are not what they claim to be.
_BROKEN_ZIP: Final = (
    OSError,
    zipfile.BadZipFile,
    zipfile.LargeZipFile,
    zlib.error,
    struct.error,
    EOFError,
    RuntimeError,
    ValueError,
    OverflowError,
)
_DOCUMENT, _CHECKSUMS, _PICTURES = "job.json", "checksums.json", "pictures"


@dataclass(frozen=True, slots=True)
class PackedJob:
    """A job with the bytes of its photograph, as they travel together."""

    job: Job
    picture: bytes | None = None


def digest(content: bytes) -> str:
    """Return the SHA-256 of some bytes as hexadecimal text."""
    return hashlib.sha256(content).hexdigest()


def write_job_file(path: Path, packed: PackedJob) -> None:
    """Write a job file, whole or not at all, readable by its owner alone.

    Raises
    ------
    JobFileError
        When the picture is not the one that the job names.
    OutputError
        When the file cannot be written.
    """
    entries = _entries(path, packed)
    sums = {name: digest(content) for name, content in entries.items()}
    entries[_CHECKSUMS] = json.dumps(sums, indent=1).encode()
    content = io.BytesIO()
    with zipfile.ZipFile(content, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, entry in entries.items():
            archive.writestr(name, entry)
    write_whole(path, content.getvalue(), private=True)


def read_job_file(path: Path, catalogue: Catalogue | None = None) -> PackedJob:
    """Read a job file and check every entry against its checksum.

    Raises
    ------
    JobFileError
        When it is missing, cut short, too large, tampered with or not a job file.
    """
    try:
        check_ordinary(path)
        with zipfile.ZipFile(path) as archive:
            return _unpacked(path, archive, catalogue)
    except FileNotFoundError as error:
        raise JobFileError(path, problem="is not there", todo="check the name") from error
    except JobFileError:
        raise
    except _BROKEN_ZIP as error:
        raise JobFileError(
            path,
            problem=f"cannot be read ({error})",
            todo="ask for it again, or open a backup",
        ) from error


def _entries(path: Path, packed: PackedJob) -> dict[str, bytes]:
    entries = {_DOCUMENT: job_text(packed.job).encode()}
    named = packed.job.picture
    if packed.picture is None or named is None:
        return entries
    if digest(packed.picture) != named.sha256:
        raise JobFileError(
            path,
            problem=f"would hold another picture than {named.name}",
            todo="choose the picture for this job again",
        )
    entries[_picture_entry(packed.job)] = packed.picture
    return entries


def _picture_entry(job: Job) -> str:
    named = job.picture
    if named is None:
        return ""
    ending = PurePosixPath(named.name).suffix.lower()
    ending = ending if ending[1:].isalnum() else ""
    return f"{_PICTURES}/{named.sha256}{ending}"


def _unpacked(path: Path, archive: zipfile.ZipFile, catalogue: Catalogue | None) -> PackedJob:
    names = archive.namelist()
    if len(names) > MOST_ENTRIES or len(set(names)) != len(names):
        raise JobFileError(
            path,
            problem=f"holds {len(names)} entries, more than a job has or the same one twice",
            todo="ask for it again",
        )
    sums = _checksums(path, archive)
    lost = sorted(set(sums) - set(names))
    if lost:
        raise _damaged(path, lost[0])
    document = _entry(path, archive, _DOCUMENT, MOST_DOCUMENT_BYTES, sums)
    try:
        text = document.decode("utf-8")
    except UnicodeDecodeError as error:
        raise _damaged(path, _DOCUMENT) from error
    job = job_from_text(text, path, catalogue)
    picture_name = _picture_entry(job)
    if picture_name not in names:
        return PackedJob(job)
    picture = _entry(path, archive, picture_name, MOST_PICTURE_BYTES, sums)
    if job.picture is None or digest(picture) != job.picture.sha256:
        raise _damaged(path, picture_name)
    return PackedJob(job, picture)


def _checksums(path: Path, archive: zipfile.ZipFile) -> dict[str, str]:
    try:
        found = json.loads(_bytes(path, archive, _CHECKSUMS, MOST_DOCUMENT_BYTES))
    except (ValueError, RecursionError) as error:
        raise _damaged(path, _CHECKSUMS) from error
    if not isinstance(found, dict):
        raise _damaged(path, _CHECKSUMS)
    return {str(name): str(value) for name, value in found.items()}


def _entry(
    path: Path, archive: zipfile.ZipFile, name: str, most: int, sums: dict[str, str]
) -> bytes:
    content = _bytes(path, archive, name, most)
    if digest(content) != sums.get(name):
        raise _damaged(path, name)
    return content


def _bytes(path: Path, archive: zipfile.ZipFile, name: str, most: int) -> bytes:
    """Read one entry, never more than its limit whatever its header says."""
    try:
        with archive.open(name) as entry:
            content = entry.read(most + 1)
    except KeyError as error:
        raise JobFileError(
            path, problem=f"has no {name}", todo="it is not a job file; ask for it again"
        ) from error
    except _BROKEN_ZIP as error:
        raise _damaged(path, name) from error
    if len(content) > most:
        raise JobFileError(
            path,
            problem=f"holds more than {most:,} bytes as {name}",
            todo="it is not a job file of ours; ask for it again",
        )
    return content


def _damaged(path: Path, name: str) -> JobFileError:
    return JobFileError(
        path, problem=f"is damaged in {name}", todo="ask for it again, or open a backup"
    )
