"""Try the standalone program as a user would: ``python .standalone/check.py dist/framing-palette``.

Runs from an empty home with next to nothing in the environment: the doctor, the whole demo, every
command that reads or writes a kind of file, an older shop's database (its steps are files of their
own), and the window on a display (a virtual one where there is none). Exits with 1 at the first
thing that is not as it should be.
"""

import argparse
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
STARTED_WITHIN_S = 60
WINDOW_TITLE = "Framing Palette"
DISPLAY = ":97"
DESIGN = """unit = "in"
[art]
width = "16"
height = "20"
overlap = "1/8"
[[layer]]
kind = "mat"
thickness = "1/16"
borders = ["2 1/2", "2 1/2", "3", "2 1/2"]
[moulding]
face = "1 1/2"
rabbet_width = "1/4"
rabbet_depth = "5/8"
"""


class Program:
    """The built program, run in a home of its own.

    Parameters
    ----------
    folder
        As ``build.py`` made it.
    home
        Empty; stands in for a user's.
    """

    def __init__(self, folder: Path, home: Path) -> None:
        ending = ".exe" if sys.platform == "win32" else ""
        self.path = folder.resolve() / f"framing-palette{ending}"
        self.home = home

    def environment(self, **more: str) -> dict[str, str]:
        """Return what a freshly logged-in user has, and no Python of any kind."""
        kept = ("SYSTEMROOT", "TEMP", "TMP", "LANG", "XDG_RUNTIME_DIR")
        bare = {name: os.environ[name] for name in kept if name in os.environ}
        home = str(self.home)
        places = {"HOME": home, "USERPROFILE": home, "APPDATA": home, "LOCALAPPDATA": home}
        path = os.environ.get("PATH", "") if sys.platform == "win32" else "/usr/bin:/bin"
        return {**bare, **places, "PATH": path, **more}

    def run(self, *words: str | Path, code: int = 0) -> str:
        """Run a command and return what it printed.

        Raises
        ------
        SystemExit
            When it ends otherwise than it should.
        """
        done = subprocess.run(
            [str(self.path), *map(str, words)],
            cwd=self.home,
            env=self.environment(QT_QPA_PLATFORM="offscreen"),
            capture_output=True,
            text=True,
            encoding="utf-8",
            check=False,
            timeout=600,
        )
        if done.returncode != code:
            sys.exit(f"{' '.join(map(str, words))}: {done.returncode}\n{done.stdout}{done.stderr}")
        print(f"ok  {words[0]} {words[1] if len(words) > 1 else ''}", flush=True)
        return done.stdout


def main() -> int:
    """Check everything and say how quickly the window stood there."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--picture", type=Path, help="keep a picture of the window's screen here")
    words = parser.parse_args()
    with tempfile.TemporaryDirectory() as home:
        program = Program(words.folder, Path(home))
        check_commands(program)
        check_older_database(program)
        with display() as shown:
            check_window(program, shown, words.picture)
    return 0


def check_commands(program: Program) -> None:
    """Run every command once."""
    home = program.home
    report = json.loads(program.run("doctor", "--json"))
    wrong = [one for one in report["findings"] if not one["sound"]]
    expect(not wrong, f"the doctor finds {wrong}")
    program.run("demo", "--no-window", "--out", "demo")
    for name in ("ranking.json", "preview.png", "proposal.pdf", "ticket.pdf", "demo.framejob"):
        expect((home / "demo" / name).stat().st_size > 1000, f"the demo left no {name}")
    shipped = next(program.path.parent.rglob("shipped"))
    picture = shipped / "sample_images" / "ferry_at_dusk.jpg"
    rack = shipped / "catalog"
    (home / "design.toml").write_text(DESIGN)
    ranked = json.loads(program.run("rank", picture, "--catalog", rack, "--json"))
    expect(len(ranked["samples"]) > 300, "the ranking is short")
    program.run("search", picture, "--catalog", rack, "--layers", "mat,moulding")
    program.run("palette", picture)
    program.run("size", "design.toml")
    program.run("papers", "demo/demo.framejob", "--out", "papers")
    program.run("swatch", picture, "--mm-per-px", "0.2")
    program.run("catalog", "check", rack)
    program.run("catalog", "export", rack, "--out", "rack.cxf")
    program.run("catalog", "import", "rack.cxf", "--catalog", rack, "--out", "rack")
    program.run("rank", "missing.jpg", "--catalog", rack, code=2)


def check_older_database(program: Program) -> None:
    """Open a shop's database of the oldest form."""
    shop = program.home / "shop.sqlite"
    shutil.copy(ROOT / "tests" / "files" / "jobs_1" / "jobs.sqlite", shop)
    told = program.run("doctor", "--jobs", shop)
    expect("checked and whole" in told, told)


def check_window(program: Program, shown: dict[str, str], picture: Path | None) -> None:
    """Open the window, see it on the screen, and close it."""
    begun_s = time.monotonic()
    running = subprocess.Popen(
        [str(program.path)], cwd=program.home, env=program.environment(**shown)
    )
    try:
        wait_for_window(running, shown)
        print(f"ok  the window stands after {time.monotonic() - begun_s:.1f} s", flush=True)
        time.sleep(20)  # the rest is loaded behind it
        expect(running.poll() is None, f"the window went away: {running.returncode}")
        if picture and shutil.which("import") and "DISPLAY" in shown:
            words = ["import", "-display", shown["DISPLAY"], "-window", "root", str(picture)]
            subprocess.run(words, check=True)
    finally:
        running.terminate()
        running.wait(30)


def wait_for_window(running: "subprocess.Popen[bytes]", shown: dict[str, str]) -> None:
    """Wait until a window of that name is on the display; elsewhere that the program lives on."""
    if "DISPLAY" not in shown or not shutil.which("xwininfo"):
        time.sleep(STARTED_WITHIN_S / 3)
        expect(running.poll() is None, f"the window went away: {running.returncode}")
        return
    end_s = time.monotonic() + STARTED_WITHIN_S
    while time.monotonic() < end_s:
        expect(running.poll() is None, f"the window went away: {running.returncode}")
        words = ["xwininfo", "-display", shown["DISPLAY"], "-root", "-tree"]
        tree = subprocess.run(words, capture_output=True, text=True, check=False).stdout
        if WINDOW_TITLE in tree:
            return
        time.sleep(0.1)
    sys.exit(f"no window within {STARTED_WITHIN_S} s")


@contextmanager
def display() -> Iterator[dict[str, str]]:
    """Give the environment of a display: the system's own, or on Linux a virtual one."""
    if not sys.platform.startswith("linux"):
        yield {}
        return
    screen = ["Xvfb", DISPLAY, "-screen", "0", "1366x768x24", "-nolisten", "tcp"]
    server = subprocess.Popen(screen, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        time.sleep(2)
        expect(server.poll() is None, "no virtual display could be started")
        yield {"DISPLAY": DISPLAY}
    finally:
        server.terminate()
        server.wait(10)


def expect(is_so: bool, otherwise: str) -> None:  # noqa: FBT001 - reads like a sentence
    """End with a sentence unless something is so."""
    if not is_so:
        sys.exit(otherwise)


if __name__ == "__main__":
    sys.exit(main())
