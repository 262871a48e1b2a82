"""``framing-palette catalog``: look after a catalogue folder."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from framing_palette.cli.inputs import KINDS, add_json
from framing_palette.cli.printing import print_json, progress, tell

if TYPE_CHECKING:
    from collections.abc import Sequence

    from framing_palette.catalogue import CellProblem, Conditions

SUMMARY = "check a catalogue folder, bring samples in, give colours out"
EXPLANATION = """\
check: read the folder as every other command does, and list all that is wrong with it, each line
with file, row and column. Rows that are good are counted.
import: merge a spreadsheet or an instrument's export (CGATS, CxF3) into a catalogue by code and
write the whole as a new folder; with --preview only tell what would change.
export: write the colours as CGATS (.txt), CxF3 (.cxf) or a palette for drawing programs (.gpl).

example: framing-palette catalog check catalog
example: framing-palette catalog import supplier.csv --catalog catalog --kind mat --out new_catalog
example: framing-palette catalog export catalog --out rack.cxf"""

BAD_CELLS = 2
OBSERVERS_DEG = (2, 10)
LINES_TOLD = 40


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    actions = parser.add_subparsers(dest="action", metavar="ACTION", required=True)
    check = actions.add_parser("check", help="list everything that is wrong in a folder")
    check.add_argument("folder", type=Path, metavar="DIR", help="the catalogue folder")
    add_json(check)
    _add_import(actions.add_parser("import", help="merge samples of a file into a catalogue"))
    export = actions.add_parser("export", help="write the colours for other programs")
    export.add_argument("folder", type=Path, metavar="DIR", help="the catalogue folder")
    export.add_argument(
        "--out", type=Path, required=True, metavar="FILE", help="ending in .txt, .cxf or .gpl"
    )
    add_json(export)


def run(arguments: argparse.Namespace) -> int:
    """Do what was asked; 2 when a cell needs a change.

    Raises
    ------
    FramingPaletteError
        When a folder or a file cannot be used.
    """
    actions = {"check": _check, "import": _import, "export": _export}
    return actions[arguments.action](arguments)


def _add_import(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("file", type=Path, metavar="FILE", help="spreadsheet, CGATS or CxF3 file")
    parser.add_argument("--catalog", type=Path, metavar="DIR", help="merge into this catalogue")
    parser.add_argument(
        "--kind", choices=KINDS, default="mat", help="of samples that tell none (default: mat)"
    )
    parser.add_argument(
        "--light", metavar="NAME", help="light of Lab figures when the file tells none, as D50"
    )
    parser.add_argument(
        "--observer",
        type=int,
        choices=OBSERVERS_DEG,
        help="observer of Lab figures, in degrees, when the file tells none",
    )
    ends = parser.add_mutually_exclusive_group(required=True)
    ends.add_argument("--out", type=Path, metavar="DIR", help="write the whole as this folder")
    ends.add_argument("--preview", action="store_true", help="only tell what would change")
    add_json(parser)


def _check(arguments: argparse.Namespace) -> int:
    from framing_palette.catalogue import read_catalogue_folder

    catalogue, problems = read_catalogue_folder(arguments.folder)
    wrong = [problem for problem in problems if not problem.is_notice]
    if arguments.json:
        print_json(_check_report(arguments.folder, len(catalogue), problems))
    else:
        for problem in problems:
            print(problem)
        tell(f"{len(catalogue)} good samples; {len(wrong)} problems.")
    return BAD_CELLS if wrong else 0


def _check_report(
    folder: Path, good_samples: int, problems: "Sequence[CellProblem]"
) -> dict[str, object]:
    return {
        "schema": "framing-palette/catalog-check@1",
        "folder": str(folder),
        "good_samples": good_samples,
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
    }


def _import(arguments: argparse.Namespace) -> int:
    from framing_palette.catalogue import (
        Catalogue,
        Kind,
        merged_samples,
        read_catalogue_folder,
        samples_from_file,
        write_catalogue_folder,
    )

    with progress(f"Reading {arguments.file}"):
        incoming, notices = samples_from_file(
            arguments.file, Kind(arguments.kind), assumed=_assumed(arguments)
        )
    whole = Catalogue(())
    if arguments.catalog:
        whole, problems = read_catalogue_folder(arguments.catalog)
        notices += tuple(str(problem) for problem in problems)
    merged, changes = merged_samples(whole.samples, incoming)
    new = len(merged) - len(whole.samples)
    if arguments.out:
        write_catalogue_folder(arguments.out, Catalogue(merged, whole.textures_dir, whole.name))
    for notice in notices:
        tell(notice)
    if arguments.json:
        report = {
            "schema": "framing-palette/catalog-import@1",
            "out": None if arguments.preview else str(arguments.out),
            "read": len(incoming),
            "new": new,
            "changes": [str(change) for change in changes],
            "notices": list(notices),
        }
        print_json(report)
        return 0
    for change in changes[:LINES_TOLD]:
        print(change)
    if len(changes) > LINES_TOLD:
        print(f"... and {len(changes) - LINES_TOLD} more changes")
    print(f"{len(incoming)} samples read: {new} new, {len(changes)} facts changed.")
    return 0


def _assumed(arguments: argparse.Namespace) -> "Conditions":
    from framing_palette.catalogue import Conditions

    return Conditions(arguments.light or "", arguments.observer)


def _export(arguments: argparse.Namespace) -> int:
    from datetime import UTC, datetime

    from framing_palette.catalogue import export_catalogue, read_catalogue_folder

    catalogue, problems = read_catalogue_folder(arguments.folder)
    for problem in problems:
        tell(str(problem))
    export_catalogue(arguments.out, catalogue, created=datetime.now(UTC))
    colours = sum(len(sample.colours) for sample in catalogue.samples)
    if arguments.json:
        report = {"schema": "framing-palette/catalog-export@1", "out": str(arguments.out)}
        print_json({**report, "colours": colours})
    else:
        print(f"{colours} colours written to {arguments.out}")
    return 0
