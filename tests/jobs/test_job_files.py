"""Job files: the same job comes out, and no file however made does harm on the way in."""

import json
import os
import stat
import zipfile
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from framing_palette.errors import FramingPaletteError, JobFileError, OutputError
from framing_palette.jobs import PackedJob, PictureFile, job_text, read_job_file, write_job_file
from framing_palette.jobs.job_files import MOST_DOCUMENT_BYTES, digest
from tests.jobs.test_documents import whole_job

PICTURE = bytes(range(256)) * 40


def packed() -> PackedJob:
    job = replace(whole_job(), picture=PictureFile("harbour.jpg", digest(PICTURE)))
    return PackedJob(job, PICTURE)


def repacked(path: Path, entries: dict[str, bytes]) -> Path:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in entries.items():
            archive.writestr(name, content)
    return path


def entries_of(path: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def test_a_job_file_gives_back_the_job_and_the_picture_byte_for_byte(tmp_path: Path) -> None:
    write_job_file(tmp_path / "a.framejob", packed())
    assert read_job_file(tmp_path / "a.framejob") == packed()


def test_a_job_without_a_picture_travels_too(tmp_path: Path) -> None:
    job = PackedJob(replace(whole_job(), picture=None))
    write_job_file(tmp_path / "a.framejob", job)
    assert read_job_file(tmp_path / "a.framejob") == job


@pytest.mark.skipif(os.name == "nt", reason="Windows has no owner bits")
def test_a_job_file_is_readable_by_its_owner_alone(tmp_path: Path) -> None:
    write_job_file(tmp_path / "a.framejob", packed())
    assert stat.S_IMODE((tmp_path / "a.framejob").stat().st_mode) == 0o600


def test_a_failed_write_leaves_the_older_file_whole_and_no_rubbish(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.framejob"
    write_job_file(path, packed())
    before = path.read_bytes()

    def full(_descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OutputError, match="No space left"):
        write_job_file(path, packed())
    assert path.read_bytes() == before
    assert list(tmp_path.iterdir()) == [path]


def test_a_picture_that_is_not_the_jobs_own_is_not_written(tmp_path: Path) -> None:
    with pytest.raises(JobFileError, match="another picture"):
        write_job_file(tmp_path / "a.framejob", replace(packed(), picture=b"other"))


def test_a_lost_picture_is_noticed_by_the_list_of_checksums(tmp_path: Path) -> None:
    write_job_file(tmp_path / "a.framejob", packed())
    entries = entries_of(tmp_path / "a.framejob")
    picture = next(name for name in entries if name.startswith("pictures/"))
    entries["pictures/other.jpg"] = entries.pop(picture)
    with pytest.raises(JobFileError, match="damaged"):
        read_job_file(repacked(tmp_path / "b.framejob", entries))


@pytest.mark.parametrize("name", ["job.json", "checksums.json"])
def test_a_missing_entry_is_named(tmp_path: Path, name: str) -> None:
    write_job_file(tmp_path / "a.framejob", packed())
    entries = entries_of(tmp_path / "a.framejob")
    del entries[name]
    with pytest.raises(JobFileError, match=name):
        read_job_file(repacked(tmp_path / "b.framejob", entries))


def test_a_changed_document_or_picture_is_noticed_by_its_checksum(tmp_path: Path) -> None:
    write_job_file(tmp_path / "a.framejob", packed())
    for name in entries_of(tmp_path / "a.framejob"):
        if name == "checksums.json":
            continue
        entries = entries_of(tmp_path / "a.framejob")
        entries[name] = entries[name].replace(b"7", b"8", 1) + b" "
        with pytest.raises(JobFileError, match="damaged"):
            read_job_file(repacked(tmp_path / "b.framejob", entries))


def test_entries_with_paths_outside_are_never_unpacked(tmp_path: Path) -> None:
    write_job_file(tmp_path / "a.framejob", packed())
    entries = entries_of(tmp_path / "a.framejob") | {"../escaped.txt": b"x", "/abs.txt": b"x"}
    inside = tmp_path / "inside"
    inside.mkdir()
    assert read_job_file(repacked(inside / "b.framejob", entries)) == packed()
    assert sorted(entry.name for entry in tmp_path.iterdir()) == ["a.framejob", "inside"]


def test_an_entry_that_grows_without_end_is_stopped_at_its_limit(tmp_path: Path) -> None:
    bomb = b" " * (MOST_DOCUMENT_BYTES + 1000)
    entries = {"job.json": bomb, "checksums.json": json.dumps({}).encode()}
    path = repacked(tmp_path / "b.framejob", entries)
    assert path.stat().st_size < 100_000
    with pytest.raises(JobFileError, match="more than"):
        read_job_file(path)


@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_the_same_entry_twice_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "b.framejob"
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("job.json", job_text(whole_job()))
        archive.writestr("job.json", "{}")
    with pytest.raises(JobFileError, match="twice"):
        read_job_file(path)


def test_a_missing_file_and_a_text_file_are_told_apart(tmp_path: Path) -> None:
    with pytest.raises(JobFileError, match="is not there"):
        read_job_file(tmp_path / "none.framejob")
    (tmp_path / "text.framejob").write_text("hello")
    with pytest.raises(JobFileError, match="cannot be read"):
        read_job_file(tmp_path / "text.framejob")


@settings(
    max_examples=400,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
@given(data=st.data())
def test_a_job_file_with_any_bytes_changed_is_read_rightly_or_refused_in_words(
    tmp_path: Path, data: st.DataObject
) -> None:
    path = tmp_path / "a.framejob"
    if not path.exists():
        write_job_file(path, packed())
    content = bytearray(path.read_bytes())
    for _ in range(data.draw(st.integers(1, 6))):
        content[data.draw(st.integers(0, len(content) - 1))] = data.draw(st.integers(0, 255))
    cut = data.draw(st.integers(0, len(content)))
    broken = tmp_path / "broken.framejob"
    broken.write_bytes(bytes(content[: len(content) - cut]))
    try:
        assert read_job_file(broken) == packed()
    except FramingPaletteError as error:
        assert "broken.framejob" in str(error)
