"""The README keeps its promises: its commands are there to be run, and the checks run them."""

import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def command(name: str) -> str:
    found = re.search(rf"<!-- command: {name} -->\s*```sh\n(.+?)\n```", README, re.DOTALL)
    assert found, name
    return found[1]


@pytest.mark.parametrize("name", ["demo", "test"])
def test_each_command_is_one_line(name: str) -> None:
    assert "\n" not in command(name)


def test_the_demo_command_ends_in_the_demo_and_the_test_command_in_the_tests() -> None:
    assert re.search(r"framing-palette demo --out \S+$", command("demo"))
    assert re.search(r"python -m pytest\b[^&|;]*$", command("test"))


def test_both_commands_install_from_the_same_constraints() -> None:
    assert (ROOT / ".ci" / "constraints.txt").is_file()
    for name in ("demo", "test"):
        assert "-c .ci/constraints.txt" in command(name)


def test_the_constraints_pin_every_runtime_dependency_exactly() -> None:
    import tomllib

    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    pinned = {
        line.split("==")[0].lower().replace("_", "-")
        for line in (ROOT / ".ci" / "constraints.txt").read_text().splitlines()
        if "==" in line
    }
    wanted = {re.split(r"[<>=!\[ ]", name)[0].lower() for name in project["dependencies"]}
    assert wanted <= pinned


def test_the_checks_read_the_test_command_out_of_the_readme() -> None:
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    assert "readme_command test" in script
    assert "pytest" not in script


def test_the_top_level_holds_only_the_agreed_entries() -> None:
    import subprocess

    files = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    if files.returncode != 0:
        pytest.skip("not a git checkout")
    tops = {line.split("/")[0] for line in files.stdout.splitlines()}
    agreed = {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        "framing_palette",
        "tests",
        "sample_images",
        "catalog",
    }
    assert {top for top in tops if not top.startswith(".")} <= agreed
