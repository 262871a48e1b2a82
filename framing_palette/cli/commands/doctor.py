"""``framing-palette doctor``: whether this installation is sound."""

import argparse
from pathlib import Path
from typing import Any

from framing_palette.cli.inputs import add_catalogue, add_json
from framing_palette.cli.printing import print_json, tell

SUMMARY = "check this installation: versions, display, colour engine, catalogue, jobs"
EXPLANATION = """\
Look at everything that a working day rests on and say what is not in order: the versions of the
libraries, the display, the colour engine against published values, a catalogue's health, and the
database of the shop's jobs with its backups. With --bundle all of it goes into one file, with the
end of the log, to be sent to whoever can help; no job, picture or name is in it.

example: framing-palette doctor --catalog catalog --bundle problem.zip"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    add_catalogue(parser, required=False)
    parser.add_argument(
        "--jobs",
        metavar="ADDRESS",
        help="file or database address of the shop's jobs (default: this computer's own file)",
    )
    parser.add_argument(
        "--bundle",
        type=Path,
        metavar="FILE",
        help="write a report of a problem, without anything personal, to this zip file",
    )
    add_json(parser)


def run(arguments: argparse.Namespace) -> int:
    """Look and print; 2 when something needs attention.

    Raises
    ------
    FramingPaletteError
        When the installation has lost its shipped catalogue, or the report cannot be written.
    """
    from framing_palette.jobs import examine, shipped_folder
    from framing_palette.jobs.problem_files import write_problem_file

    folder: Path = arguments.catalog or shipped_folder("catalog")
    findings = examine(folder, arguments.jobs)
    if arguments.bundle is not None:
        names = [str(folder), *([str(arguments.jobs)] if arguments.jobs else [])]
        tell(f"Wrote {write_problem_file(arguments.bundle, findings, names=names)}.")
    if arguments.json:
        report: dict[str, Any] = {
            "schema": "framing-palette/doctor@1",
            "sound": all(finding.sound for finding in findings),
            "findings": [
                {"what": finding.what, "found": finding.found, "sound": finding.sound}
                for finding in findings
            ],
        }
        print_json(report)
    else:
        for finding in findings:
            print(f"{'ok ' if finding.sound else 'NOT'}  {finding.what}: {finding.found}")
    return 0 if all(finding.sound for finding in findings) else 2
