"""Build the standalone program: ``python .standalone/build.py``.

It ends up in ``dist/framing-palette/``, a folder that runs on a machine without Python. Everything
is made anew under ``build/standalone/``: an environment, the wheel as users get it, and the program
out of the installed wheel, so that a file missing from the wheel is missing here too. The same
script serves Linux, Windows and macOS; each builds for itself alone.
"""

import argparse
import os
import shutil
import subprocess
import sys
import time
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
HERE = ROOT / ".standalone"
EXTRAS = "cxf,heic,raw,postgresql"


def main() -> int:
    """Build, and say how large it is and how long it took."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--work", type=Path, default=ROOT / "build" / "standalone")
    parser.add_argument("--out", type=Path, default=ROOT / "dist")
    words = parser.parse_args()
    begun_s = time.monotonic()
    work, out = words.work.resolve(), words.out.resolve()
    shutil.rmtree(work, ignore_errors=True)
    python = environment(work / "venv")
    pip = [python, "-m", "pip", "--quiet", "--disable-pip-version-check"]
    run(*pip, "wheel", "--no-deps", "--wheel-dir", work / "wheel", ROOT)
    (wheel,) = (work / "wheel").glob("framing_palette-*.whl")
    pins = ("-c", ROOT / ".ci" / "constraints.txt", "-r", HERE / "requirements.txt")
    run(*pip, "install", *pins, f"{wheel}[{EXTRAS}]")
    folders = ("--distpath", out, "--workpath", work / "pyinstaller")
    spec = HERE / "framing-palette.spec"
    run(python, "-m", "PyInstaller", "--noconfirm", "--log-level", "WARN", *folders, spec)
    made = out / "framing-palette"
    files = [path for path in made.rglob("*") if path.is_file() and not path.is_symlink()]
    size_mb = sum(path.stat().st_size for path in files) / 1e6
    print(f"{made}: {size_mb:.0f} MB, built in {time.monotonic() - begun_s:.0f} s")
    return 0


def environment(folder: Path) -> Path:
    """Make a fresh virtual environment and return its Python."""
    venv.create(folder, with_pip=True)
    return folder / ("Scripts/python.exe" if sys.platform == "win32" else "bin/python")


def run(*words: str | Path) -> None:
    """Run a command outside the checkout, so that it finds the installed package alone."""
    clean = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    subprocess.run([str(word) for word in words], check=True, env=clean, cwd=HERE)


if __name__ == "__main__":
    sys.exit(main())
