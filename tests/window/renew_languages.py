"""Brings the files of the second language in line with the window's sources.

python tests/window/renew_languages.py    # lupdate, then lrelease; prints what is still to be done

Translations are written into the ``.ts`` between two runs, by hand or with Linguist.
"""

import subprocess
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from pathlib import Path

import PySide6

ROOT = Path(__file__).resolve().parents[2]
WINDOW = ROOT / "framing_palette" / "window"
LANGUAGES = WINDOW / "languages"
_HOW = ("-no-obsolete", "-locations", "none", "-tr-function-alias", "translate+=tell")


def sources() -> list[Path]:
    """Return the modules of the window in a fixed order."""
    return sorted(WINDOW.rglob("*.py"))


def collect(ts: Path) -> None:
    """Write every text that the sources mark into a ``.ts``; translations that it has stay."""
    _run("lupdate", *_HOW, *map(str, sources()), "-ts", str(ts))


def release(ts: Path, qm: Path) -> None:
    """Make what Qt reads out of a ``.ts``."""
    _run("lrelease", "-silent", str(ts), "-qm", str(qm))


def messages(ts: Path) -> Iterator[tuple[str, str, str, bool]]:
    """Return context, source, translation and whether it is finished, of every message."""
    for context in ET.parse(ts).getroot().iter("context"):  # noqa: S314 - a file of our own
        for message in context.iter("message"):
            told = message.find("translation")
            assert told is not None
            yield (
                context.findtext("name", ""),
                message.findtext("source", ""),
                told.text or "",
                told.get("type") is None,
            )


def _run(name: str, *arguments: str) -> None:
    program = Path(PySide6.__file__).parent / name
    subprocess.run([program, *arguments], check=True, capture_output=True, cwd=ROOT)


def main() -> None:
    """Renew every language beside English."""
    for ts in sorted(LANGUAGES.glob("*.ts")):
        collect(ts)
        release(ts, ts.with_suffix(".qm"))
        for context, source, _, is_finished in messages(ts):
            if not is_finished:
                print(f"{ts.name}: {context}: {source!r}")


if __name__ == "__main__":
    main()
