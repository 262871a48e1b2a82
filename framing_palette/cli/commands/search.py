"""``framing-palette search``: the best whole designs for a picture."""

import argparse
from typing import TYPE_CHECKING

from framing_palette.cli.inputs import (
    KINDS,
    add_catalogue,
    add_json,
    add_picture,
    read_catalogue,
    read_picture,
)
from framing_palette.cli.printing import measures_in_words, print_json, progress

if TYPE_CHECKING:
    from collections.abc import Sequence

    from framing_palette.catalogue import Catalogue

SUMMARY = "find the best whole designs for a picture"
EXPLANATION = """\
Search every combination of samples for the given layers, from the art outward, and show the best
few that differ from each other, each with its reasons.

example: framing-palette search picture.jpg --regions regions.json --catalog catalog \\
             --layers mat,wrapped_fillet,moulding --top 3"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    add_picture(parser)
    add_catalogue(parser)
    parser.add_argument(
        "--layers",
        default="mat,wrapped_fillet,moulding",
        metavar="KINDS",
        help=f"kinds from the art outward, with commas (default: %(default)s); of {KINDS}",
    )
    parser.add_argument("--top", type=int, default=3, metavar="N", help="how many (default: 3)")
    parser.add_argument(
        "--keep",
        action="append",
        default=[],
        metavar="CODE",
        help="a sample that every design must use; may be given several times",
    )
    parser.add_argument(
        "--exclude",
        action="append",
        default=[],
        metavar="CODE",
        help="a sample that no design may use; may be given several times",
    )
    parser.add_argument(
        "--explain", action="store_true", help="add every layer's measures and what decided"
    )
    add_json(parser)


def run(arguments: argparse.Namespace) -> None:
    """Search and print.

    Raises
    ------
    FramingPaletteError
        When an input cannot be used or no design is possible.
    """
    from framing_palette.catalogue import Kind
    from framing_palette.design import search_designs, search_report
    from framing_palette.errors import FieldError
    from framing_palette.ranking.explaining import decided_in_words

    names = [name.strip() for name in arguments.layers.split(",")]
    unknown = [name for name in names if name not in KINDS]
    if unknown:
        raise FieldError("--layers", got=repr(unknown[0]), wanted=f"use {', '.join(KINDS)}")
    if arguments.top < 1:
        raise FieldError("--top", got=arguments.top, wanted="give 1 or more")
    _, findings = read_picture(arguments)
    catalogue = read_catalogue(arguments.catalog)
    _check_codes("--keep", arguments.keep, catalogue)
    _check_codes("--exclude", arguments.exclude, catalogue)
    with progress("Searching whole designs"):
        result = search_designs(
            findings,
            catalogue,
            tuple(Kind(name) for name in names),
            top=arguments.top,
            keep=tuple(arguments.keep),
            exclude=tuple(arguments.exclude),
        )
    if arguments.json:
        print_json(search_report(result))
        return
    for place, design in enumerate(result.designs, start=1):
        codes = " + ".join(f"{sample.code} ({sample.name})" for sample in design.layers)
        print(f"{place}.  {design.score:.3f}  {codes}")
        for reason in design.reasons:
            print(f"    {reason}")
        for line in design.ranked if arguments.explain else ():
            print(f"    {line.sample.code}, {line.verdict.value}: {measures_in_words(line)}")
            print(f"      {decided_in_words(line)}")
    print(f"{result.candidates_considered:,} combinations considered.")


def _check_codes(option: str, codes: "Sequence[str]", catalogue: "Catalogue") -> None:
    from framing_palette.errors import FieldError, UnknownSampleError

    for code in codes:
        try:
            _ = catalogue[code]
        except UnknownSampleError as error:
            got = f"{code}, which is not in the catalogue"
            near = f", such as {', '.join(error.near)}" if error.near else ""
            wanted = f"give a code that samples.csv lists{near}, or leave {option} {code} out"
            raise FieldError(option, got=got, wanted=wanted) from error
