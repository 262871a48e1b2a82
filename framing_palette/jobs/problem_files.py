"""A report of a problem: one file to send to whoever can help, with nothing personal in it."""

import getpass
import io
import json
import os
import platform
import zipfile
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final

from framing_palette import __version__
from framing_palette.jobs.anonymous import without_names
from framing_palette.jobs.log_files import log_tail
from framing_palette.whole_files import write_whole

if TYPE_CHECKING:
    from framing_palette.jobs.health import HealthFinding

_READ_ME: Final = """\
This is a report of a problem with Framing Palette. It holds:

about.json   the versions of the program, of Python and of the system
health.json  what the program found when it looked at its installation
log.txt      what the program did last, in words of its own

It holds no job, no picture and no sample. Names, addresses, telephone numbers and places on the
computer are taken out; please look through it before you send it.
"""


def write_problem_file(
    path: Path,
    findings: "Sequence[HealthFinding]",
    *,
    names: Iterable[str] = (),
    log_folder: Path | None = None,
) -> Path:
    """Write a report of a problem, whole or not at all, readable by its owner alone.

    Parameters
    ----------
    path
        The zip file to write.
    findings
        What `examine` found.
    names
        Of clients, to be taken out wherever they are; the user's own is taken out anyhow.
    log_folder
        Where the log is; the platform's own folder when None.

    Raises
    ------
    OutputError
        When it cannot be written.
    """
    names = [*names, *_own_names()]
    health = [
        {
            "what": finding.what,
            "found": without_names(finding.found, names),
            "sound": finding.sound,
        }
        for finding in findings
    ]
    about = {
        "program": __version__,
        "python": platform.python_version(),
        "system": platform.system(),
        "release": platform.release(),
        "machine": platform.machine(),
        "processors": os.cpu_count(),
    }
    entries = {
        "READ_ME.txt": _READ_ME,
        "about.json": json.dumps(about, indent=1),
        "health.json": json.dumps(health, indent=1, ensure_ascii=False),
        "log.txt": without_names(log_tail(log_folder), names),
    }
    content = io.BytesIO()
    with zipfile.ZipFile(content, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in entries.items():
            archive.writestr(name, text)
    return write_whole(path, content.getvalue(), private=True)


def _own_names() -> list[str]:
    """Return the user's and the computer's name and the home folder, as far as they are known."""
    names = [platform.node(), str(Path.home())]
    try:
        names.append(getpass.getuser())
    except (OSError, KeyError, ImportError):
        return names  # a user without a name
    return names
