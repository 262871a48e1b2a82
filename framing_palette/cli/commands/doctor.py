"""``framing-palette doctor``: whether this installation is sound."""

import argparse
from typing import TYPE_CHECKING, Any

from framing_palette.cli.inputs import add_catalogue, add_json
from framing_palette.cli.printing import print_json

if TYPE_CHECKING:
    from pathlib import Path

SUMMARY = "check this installation: versions, display, colour engine, catalogue"
EXPLANATION = """\
Look at everything that a working day rests on and say what is not in order: the versions of the
libraries, the display, the colour engine against published values, and a catalogue's health.

example: framing-palette doctor --catalog catalog"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    add_catalogue(parser, required=False)
    add_json(parser)


def run(arguments: argparse.Namespace) -> int:
    """Look and print; 2 when something needs attention.

    Raises
    ------
    FramingPaletteError
        When the installation has lost its shipped catalogue.
    """
    from framing_palette.jobs import examine, shipped_folder

    folder: Path = arguments.catalog or shipped_folder("catalog")
    findings = examine(folder)
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
