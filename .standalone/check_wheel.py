"""Install the wheel as users do, use it, take it away again: ``python .standalone/check_wheel.py``.

The installed program must find its catalogue and pictures outside any checkout, and uninstalling
it must leave the shop's jobs, backups and settings exactly as they were.
"""

import hashlib
import os
import subprocess
import sys
import tempfile
from pathlib import Path

from build import ROOT, environment, run

_USE = """
from pathlib import Path
from framing_palette.jobs import read_job_file
from framing_palette.jobs.database_files import default_jobs_path
from framing_palette.jobs.store import JobStore

packed = read_job_file(Path("demo/demo.framejob"))
default_jobs_path().parent.mkdir(parents=True, exist_ok=True)
with JobStore() as store:
    store.save(packed.job, picture=packed.picture)
    print(store.take_backup())
"""


def main() -> int:
    """Install, use, uninstall, and compare what is left."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        home = place / "home"
        home.mkdir()
        python = environment(place / "venv")
        pip = [python, "-m", "pip", "--quiet", "--disable-pip-version-check"]
        run(*pip, "wheel", "--no-deps", "--wheel-dir", place / "wheel", ROOT)
        (wheel,) = (place / "wheel").glob("framing_palette-*.whl")
        run(*pip, "install", "-c", ROOT / ".ci" / "constraints.txt", wheel)
        program = python.parent / "framing-palette"
        in_home(home, program, "doctor")
        in_home(home, program, "demo", "--no-window", "--out", "demo")
        in_home(home, python, "-c", _USE)
        before = contents(home)
        if not any(name.endswith("jobs.sqlite") for name in before):
            sys.exit("no job was stored")
        run(*pip, "uninstall", "-y", "framing-palette")
        if contents(home) != before:
            sys.exit("uninstalling changed the shop's data")
        if program.exists():
            sys.exit("uninstalling left the program")
    print(f"ok  installed from {wheel.name}, used, uninstalled; {len(before)} files left untouched")
    return 0


def in_home(home: Path, *words: str | Path) -> None:
    """Run a command with another home and outside the checkout."""
    clean = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    clean |= {"HOME": str(home), "USERPROFILE": str(home), "QT_QPA_PLATFORM": "offscreen"}
    subprocess.run([str(word) for word in words], check=True, env=clean, cwd=home)


def contents(home: Path) -> dict[str, str]:
    """Return the digest of every file in a home."""
    return {
        str(path.relative_to(home)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(home.rglob("*"))
        if path.is_file()
    }


if __name__ == "__main__":
    sys.exit(main())
