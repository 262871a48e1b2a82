"""``doctor`` on the shop's jobs, and its report of a problem."""

import json
import zipfile
from pathlib import Path

from framing_palette.jobs.store import JobStore
from tests.jobs.test_store import job

from .conftest import Command


def test_doctor_counts_the_jobs_of_a_named_file(command: Command, tmp_path: Path) -> None:
    path = tmp_path / "shop.sqlite"
    with JobStore(path) as store:
        store.save(job("1"))
    ended = command("doctor", "--jobs", path)
    assert ended.code == 0
    assert f"ok   jobs: 1 in {path}, checked and whole" in ended.out


def test_doctor_says_what_to_do_about_damaged_jobs(command: Command, tmp_path: Path) -> None:
    path = tmp_path / "shop.sqlite"
    path.write_bytes(b"x" * 5000)
    ended = command("doctor", "--jobs", path)
    assert ended.code == 2
    assert "NOT  jobs" in ended.out
    assert "keep a copy of the file" in ended.out


def test_doctor_writes_a_report_that_names_no_place(command: Command, tmp_path: Path) -> None:
    path, bundle = tmp_path / "Ada Example.sqlite", tmp_path / "problem.zip"
    with JobStore(path) as store:
        store.save(job("1"))
    ended = command("doctor", "--jobs", path, "--bundle", bundle, "--json")
    assert ended.json["sound"] is True
    assert f"Wrote {bundle}." in ended.err
    with zipfile.ZipFile(bundle) as archive:
        text = archive.read("health.json").decode()
    found = {finding["what"]: finding["found"] for finding in json.loads(text)}
    assert found["jobs"].startswith("1 in <")
    assert "Ada" not in text
    assert str(tmp_path) not in text


def test_a_report_that_cannot_be_written_is_bad_input(command: Command, tmp_path: Path) -> None:
    ended = command("doctor", "--bundle", tmp_path / "none" / "problem.zip")
    assert ended.code == 2
    assert "cannot be written" in ended.err
