"""Opening the window: on nothing, on a picture, or on a saved job.

A light frame stands on the screen at once; the libraries that do the work are loaded behind it in
a thread of their own, and then the window proper takes its place.
"""

import os
import sys
from dataclasses import dataclass, replace
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from types import TracebackType

    from framing_palette.window.frame import Frame
    from framing_palette.window.preferences import Preferences
    from framing_palette.window.shell import Shell

JOB_ENDING = ".framejob"
_LOOK_AGAIN_MS = 15


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the window is to be opened on; nothing is needed."""

    picture_path: Path | None = None
    regions_path: Path | None = None
    catalogue_dir: Path | None = None
    job_path: Path | None = None

    def sorted_out(self) -> "Wanted":
        """Return the same with a first path that ends like a saved job taken for one."""
        path = self.picture_path
        if self.job_path is None and path is not None and path.suffix == JOB_ENDING:
            return replace(self, picture_path=None, job_path=path)
        return self


def run(
    picture_path: Path | None = None,
    regions_path: Path | None = None,
    catalogue_dir: Path | None = None,
    job: Path | None = None,
) -> int:
    """Open the window and return the exit code when it is closed.

    A first path that ends like a saved job is opened as one. Without a catalogue folder the
    shipped catalogue is used.
    """
    from PySide6.QtWidgets import QApplication

    from framing_palette.window.frame import Frame
    from framing_palette.window.languages import speak
    from framing_palette.window.preference_files import read_preferences
    from framing_palette.window.theme import put_on, tokens_named

    preferences = read_preferences()
    os.environ.setdefault("QT_SCALE_FACTOR", f"{preferences.scale_percent / 100:g}")
    app = QApplication.instance() or QApplication(sys.argv[:1])
    app.setApplicationName("Framing Palette")
    sys.excepthook = _note_defect
    speak(app, preferences.language)
    if isinstance(app, QApplication):
        put_on(app, tokens_named(preferences.theme))
    frame = Frame()
    frame.show()
    fill(frame, preferences, Wanted(picture_path, regions_path, catalogue_dir, job).sorted_out())
    return app.exec()


def fill(frame: "Frame", preferences: "Preferences", wanted: Wanted) -> None:
    """Load the libraries behind the frame, then put the window proper into it."""
    from PySide6.QtCore import QTimer

    loading = Thread(target=_load, daemon=True)
    waiting = QTimer(frame, interval=_LOOK_AGAIN_MS)

    def look() -> None:
        if not loading.is_alive():
            waiting.stop()
            _put_in(frame, preferences, wanted)

    waiting.timeout.connect(look)
    loading.start()
    waiting.start()


def begin(shell: "Shell", wanted: Wanted) -> None:
    """Load the rack and then what was asked for; a job needs the rack to know its samples."""
    from framing_palette.errors import FramingPaletteError
    from framing_palette.jobs import shipped_folder

    shell.job_book.open()

    def then() -> None:
        if wanted.job_path is not None:
            shell.errands.open_job(wanted.job_path)
            shell.go("choose")
            if not shell.session.preferences.toured:
                shell.start_tour()
        elif wanted.picture_path is not None:
            shell.errands.open_picture(wanted.picture_path, regions_path=wanted.regions_path)
            shell.go("choose")

    try:
        folder = wanted.catalogue_dir or shipped_folder("catalog")
    except FramingPaletteError as error:
        shell.errands.tell(error)
        return
    shell.errands.open_catalogue(folder, then=then)


def _note_defect(
    kind: type[BaseException], error: BaseException, trace: "TracebackType | None"
) -> None:
    """Put what went wrong on the interface thread into the log; the window goes on."""
    from framing_palette.jobs.log_files import Happening, note_error

    note_error(Happening.DEFECT, error)
    sys.__excepthook__(kind, error, trace)


def _load() -> None:
    import framing_palette.window.shell  # noqa: F401 - to have it ready
    from framing_palette.jobs.log_files import start_log
    from framing_palette.window.languages import read_phrasebook

    start_log()
    read_phrasebook()


def _put_in(frame: "Frame", preferences: "Preferences", wanted: Wanted) -> None:
    from framing_palette.window.shell import Shell
    from framing_palette.window.tidying import Tidying

    shell = Shell(preferences)
    Tidying(shell.runner, shell)
    frame.put_in(shell)
    begin(shell, wanted)
