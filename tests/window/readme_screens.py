"""The README's screenshots, made again: python tests/window/readme_screens.py (into .screens/)."""

import os
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["FRAMING_PALETTE_JOBS"] = f"{tempfile.mkdtemp()}/jobs.sqlite"  # not the user's own
sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

import numpy as np
from PIL import Image
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from framing_palette.catalogue import Kind
from framing_palette.cli import main as command_line
from framing_palette.window.shell import Shell
from framing_palette.window.sliding import bend, lay_strip
from framing_palette.window.theme import put_on, tokens_named
from tests.window.shots import ROOT, best, rest

FOLDER = ROOT / ".screens"
MOST_BYTES = 1_500_000
QUALITY = 84  # full colour resolution, so that greys stay grey and a small buoy red


def slide(shell: Shell) -> None:
    lay_strip(shell.session, best(shell, 0, Kind.MOULDING), (330.0, 150.0))
    bend(shell.session, shell.session.desk.strips[-1])
    lay_strip(shell.session, best(shell, 4, Kind.MAT), (300.0, 330.0))


def save(shell: Shell, name: str) -> None:
    grabbed = shell.grab().toImage().convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(grabbed.constBits(), np.uint8).reshape(grabbed.height(), -1)
    pixels = rows[:, : grabbed.width() * 3].reshape(grabbed.height(), grabbed.width(), 3)
    Image.fromarray(pixels).save(FOLDER / f"{name}.jpg", quality=QUALITY, subsampling=0)


def make(job_file: Path) -> None:
    app = QApplication.instance() or QApplication(sys.argv[:1])
    put_on(app, tokens_named("light"))
    shell = Shell()
    shell.resize(1366, 768)
    shell.show()
    shell.errands.open_catalogue(ROOT / "catalog")
    rest(shell)
    shell.errands.open_job(job_file)
    rest(shell)
    for step in ("intake", "read", "choose", "build", "measure", "agree"):
        shell.go(step)
        rest(shell)
        if step == "read":
            shell.session.assign("chosen_region", 0)
        if step == "choose":
            slide(shell)
        rest(shell)
        save(shell, step)
    shell.close()


def main() -> int:
    FOLDER.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        command_line(["demo", "--no-window", "--out", folder])
        make(Path(folder) / "demo.framejob")
    size = sum(path.stat().st_size for path in FOLDER.glob("*.jpg"))
    print(f"{size:,} bytes in {FOLDER.name}")
    return 0 if size <= MOST_BYTES else 1


if __name__ == "__main__":
    sys.exit(main())
