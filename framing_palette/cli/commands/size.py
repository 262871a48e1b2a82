"""``framing-palette size``: every size of a design, exact."""

import argparse
from pathlib import Path
from typing import Any

from framing_palette.cli.inputs import add_catalogue, add_json, read_catalogue
from framing_palette.cli.printing import print_json

SUMMARY = "work out every size, the depth and the weight of a design"
EXPLANATION = """\
Read a design (TOML) and work out the openings, outer sizes, rails, depth in the rabbet and weight,
with the cautions that apply.

example: framing-palette size design.toml --json"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    parser.add_argument("design", type=Path, metavar="DESIGN.toml", help="the design")
    add_catalogue(parser, required=False)
    add_json(parser)


def run(arguments: argparse.Namespace) -> None:
    """Size and print.

    Raises
    ------
    FramingPaletteError
        When the design or the catalogue cannot be used.
    """
    from framing_palette.design import read_size_report

    catalogue = read_catalogue(arguments.catalog, measure=False) if arguments.catalog else None
    report = read_size_report(arguments.design, catalogue)
    if arguments.json:
        print_json(report)
    else:
        _print_report(report)


def _print_report(report: dict[str, Any]) -> None:
    for number, layer in enumerate(report["layers"], start=1):
        label = f"layer {number}, {layer['kind']} {layer['code'] or ''}".rstrip()
        print(f"{label}: opening {_size(layer['opening'])}, outer {_size(layer['outer'])}")
    for name in ("glazing", "rabbet_size", "sight_size"):
        if report.get(name):
            print(f"{name.replace('_', ' ')}: {_size(report[name])}")
    for rail in report["rails"]:
        print(f"rail {rail['side']}: long point {rail['long_point_in']} in")
    print(f"stack depth: {report['stack_depth_mm']} mm of {report['rabbet_depth_mm']} mm rabbet")
    for caution in report["cautions"]:
        print(f"caution: {caution}")


def _size(size: dict[str, Any] | None) -> str:
    return "none" if size is None else f"{size['width_in']} x {size['height_in']} in"
