"""A report of a problem: enough to help, nothing that is anybody's."""

import getpass
import json
import platform
import stat
import zipfile
from pathlib import Path

import pytest

from framing_palette.errors import OutputError
from framing_palette.jobs import HealthFinding
from framing_palette.jobs.problem_files import write_problem_file

FINDINGS = (
    HealthFinding("catalogue", f"391 good samples in {Path.home()}/shop, 0 problems"),
    HealthFinding("jobs", "/data/Ada Example/jobs.sqlite is damaged: Ada, restore", sound=False),
)


def entries(path: Path) -> dict[str, str]:
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name).decode() for name in archive.namelist()}


def test_the_report_holds_versions_health_and_the_log(tmp_path: Path) -> None:
    (tmp_path / "framing-palette.log").write_text("2026-03-04T12:00:00Z 7 defect: X\n")
    path = write_problem_file(tmp_path / "p.zip", FINDINGS, log_folder=tmp_path)
    found = entries(path)
    assert sorted(found) == ["READ_ME.txt", "about.json", "health.json", "log.txt"]
    assert json.loads(found["about.json"])["python"] == platform.python_version()
    assert [finding["sound"] for finding in json.loads(found["health.json"])] == [True, False]
    assert found["log.txt"] == "2026-03-04T12:00:00Z 7 defect: X\n"
    assert stat.S_IMODE(path.stat().st_mode) & 0o077 == 0


def test_no_name_and_no_place_is_in_the_report(tmp_path: Path) -> None:
    log = "Ada Example at ada@example.invalid in /home/ada/x by somebody\n"
    (tmp_path / "framing-palette.log").write_text(log)
    path = write_problem_file(
        tmp_path / "p.zip", FINDINGS, names=["Ada Example"], log_folder=tmp_path
    )
    found = entries(path)
    assert found["log.txt"] == "<name> at <address> in <path> by somebody\n"
    assert "391 good samples in" in found["health.json"]
    together = found["log.txt"] + found["health.json"]
    for secret in ("Ada", "ada@", str(Path.home()), "/data"):
        assert secret not in together


def test_a_user_without_a_name_can_report_too(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def nobody() -> str:
        raise OSError

    monkeypatch.setattr(getpass, "getuser", nobody)
    assert write_problem_file(tmp_path / "p.zip", (), log_folder=tmp_path).exists()


def test_a_report_that_cannot_be_written_is_told(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match=r"p\.zip cannot be written"):
        write_problem_file(tmp_path / "none" / "p.zip", (), log_folder=tmp_path)
