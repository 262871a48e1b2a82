"""``framing-palette swatch``: measure samples from their photographs."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from framing_palette.cli.inputs import add_json
from framing_palette.cli.printing import print_json, progress, tell

if TYPE_CHECKING:
    from framing_palette.catalogue import Swatch
    from framing_palette.catalogue.swatch_intake_files import SwatchResult

SUMMARY = "measure photographed swatches: colours with shares, texture, finish"
EXPLANATION = """\
Read the photograph of one swatch that fills the frame, and measure its colours with their shares
and its texture at true scale. Finish and surface are guesses and are called so. The colours are as
good as the photograph: see its colour trust.

With --outline only what lies inside is measured, with --chart a 24-patch colour chart that lies
beside the swatch corrects the colours, and with --codes the photograph is a sheet of many swatches,
each found and measured under its code. A folder is measured photograph by photograph, several at
once; what --results holds already is not measured again.

example: framing-palette swatch linen.jpg --mm-per-px 0.05 --json
example: framing-palette swatch sheet.jpg --chart --codes M-1,M-2,M-3
example: framing-palette swatch season_photos --results season.jsonl"""
BACKENDS = ("loky", "threading", "dask")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    parser.add_argument(
        "photo", type=Path, metavar="PHOTO", help="photograph, or a folder of photographs"
    )
    parser.add_argument(
        "--mm-per-px",
        type=float,
        metavar="X",
        help="millimetres on the swatch per pixel of the photograph; without it the texture has "
        "no scale and is left unknown",
    )
    parser.add_argument("--chart", action="store_true", help="a colour chart lies in it: use it")
    what = parser.add_mutually_exclusive_group()
    what.add_argument(
        "--outline",
        metavar="X,Y X,Y ...",
        help="corners round the swatch, 0 to 1 across the photograph",
    )
    what.add_argument(
        "--codes", metavar="CODE,CODE...", help="of a sheet's swatches, row by row from the left"
    )
    parser.add_argument(
        "--results", type=Path, metavar="FILE", help="keeps what was measured of a folder"
    )
    parser.add_argument(
        "--backend",
        choices=BACKENDS,
        default="loky",
        help="what measures a folder: processes, threads, or an open Dask client (default: loky)",
    )
    add_json(parser)


def run(arguments: argparse.Namespace) -> None:
    """Measure and print.

    Raises
    ------
    FramingPaletteError
        When the photograph, the folder or a wish cannot be used.
    """
    if arguments.photo.is_dir():
        _measure_folder(arguments)
    elif arguments.codes is not None:
        _measure_sheet(arguments)
    else:
        _measure_one(arguments)


def _measure_one(arguments: argparse.Namespace) -> None:
    from framing_palette.catalogue import measure_swatch, swatch_report
    from framing_palette.catalogue.shop_swatch_files import (
        open_swatch_photograph,
        outline_of_text,
    )
    from framing_palette.picture import read_picture_file

    outline = outline_of_text(arguments.outline) if arguments.outline is not None else None
    with progress(f"Reading {arguments.photo}"):
        if arguments.chart:
            opened = open_swatch_photograph(arguments.photo, mm_per_px=arguments.mm_per_px)
            picture, outline = opened.picture, outline or opened.single
        else:
            picture = read_picture_file(arguments.photo, mm_per_px=arguments.mm_per_px)
    swatch = measure_swatch(picture, outline)
    if arguments.json:
        print_json(swatch_report(swatch))
        return
    _print(swatch)
    for notice in swatch.notices:
        tell(notice)


def _measure_sheet(arguments: argparse.Namespace) -> None:
    from framing_palette.catalogue import swatch_report
    from framing_palette.catalogue.shop_swatch_files import (
        listed_codes,
        measured_sheet,
        open_swatch_photograph,
    )

    with progress(f"Reading {arguments.photo}"):
        opened = open_swatch_photograph(
            arguments.photo, mm_per_px=arguments.mm_per_px, uses_chart=arguments.chart
        )
    found = measured_sheet(opened, opened.swatches, listed_codes(arguments.codes))
    if arguments.json:
        swatches = [
            {"code": one.code, "outline": one.outline, **swatch_report(one.swatch)} for one in found
        ]
        print_json({"schema": "framing-palette/swatches@1", "swatches": swatches})
        return
    for one in found:
        print(one.code)
        _print(one.swatch)


def _measure_folder(arguments: argparse.Namespace) -> None:
    from framing_palette.catalogue.shop_swatch_files import folder_results
    from framing_palette.catalogue.swatch_intake_files import measure_swatch_folder

    results = arguments.results or folder_results(arguments.photo.parent, arguments.photo)
    with progress(f"Measuring {arguments.photo}"):
        found = measure_swatch_folder(
            arguments.photo, results, mm_per_px=arguments.mm_per_px, backend=arguments.backend
        )
    if arguments.json:
        print_json({"schema": "framing-palette/swatches@1", "swatches": [_facts(f) for f in found]})
        return
    for one in found:
        colours = ", ".join(
            f"{c.share:.0%} L*a*b* {c.lab[0]:.1f} {c.lab[1]:.1f} {c.lab[2]:.1f}"
            for c in one.colours
        )
        print(f"{one.file}: {one.problem or colours}")
    tell(f"Kept in {results}.")


def _facts(one: "SwatchResult") -> dict[str, object]:
    return {
        "file": one.file,
        "colours": [{"lab": list(c.lab), "share": c.share} for c in one.colours],
        "finish": one.finish,
        "uncertainty_delta_e": one.uncertainty_delta_e,
        "problem": one.problem,
    }


def _print(swatch: "Swatch") -> None:
    for colour in swatch.colours:
        lab = "  ".join(f"{value:6.1f}" for value in colour.lab)
        print(f"{colour.share:6.1%}  L*a*b* {lab}  {colour.name}")
    print(f"finish, a guess: {swatch.finish.finish.value} ({swatch.finish.reason})")
    if swatch.uncertainty_delta_e is not None:
        print(f"colours good to about {swatch.uncertainty_delta_e:.1f} ΔE00")
