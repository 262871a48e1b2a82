"""``framing-palette catalog``: look after a catalogue folder."""

import argparse
from pathlib import Path

from framing_palette.cli.inputs import add_json
from framing_palette.cli.printing import print_json, tell

SUMMARY = "check a catalogue folder"
EXPLANATION = """\
check: read the folder as every other command does, and list all that is wrong with it, each line
with file, row and column. Rows that are good are counted.

example: framing-palette catalog check catalog"""

BAD_CELLS = 2


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    actions = parser.add_subparsers(dest="action", metavar="ACTION", required=True)
    check = actions.add_parser("check", help="list everything that is wrong in a folder")
    check.add_argument("folder", type=Path, metavar="DIR", help="the catalogue folder")
    add_json(check)


def run(arguments: argparse.Namespace) -> int:
    """Check and print; 2 when a cell needs a change.

    Raises
    ------
    CatalogueError
        When nothing in the folder can be used.
    """
    from framing_palette.catalogue import read_catalogue_folder

    catalogue, problems = read_catalogue_folder(arguments.folder)
    wrong = [problem for problem in problems if not problem.is_notice]
    if arguments.json:
        print_json(
            {
                "schema": "framing-palette/catalog-check@1",
                "folder": str(arguments.folder),
                "good_samples": len(catalogue),
                "problems": [
                    {
                        "file": problem.file,
                        "row": problem.row,
                        "column": problem.column,
                        "reason": problem.reason,
                        "is_notice": problem.is_notice,
                    }
                    for problem in problems
                ],
            },
        )
    else:
        for problem in problems:
            print(problem)
        tell(f"{len(catalogue)} good samples; {len(wrong)} problems.")
    return BAD_CELLS if wrong else 0
