"""``framing-palette swatch``: measure a sample from its photograph."""

import argparse
from pathlib import Path

from framing_palette.cli.inputs import add_json
from framing_palette.cli.printing import print_json, progress, tell

SUMMARY = "measure a photographed swatch: colours with shares, texture, finish"
EXPLANATION = """\
Read the photograph of one swatch that fills the frame, and measure its colours with their shares
and its texture at true scale. Finish and surface are guesses and are called so. The colours are as
good as the photograph: see its colour trust.

example: framing-palette swatch linen.jpg --mm-per-px 0.05 --json"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    parser.add_argument("photo", type=Path, metavar="PHOTO", help="photograph of the swatch")
    parser.add_argument(
        "--mm-per-px",
        type=float,
        metavar="X",
        help="millimetres on the swatch per pixel of the photograph; without it the texture has "
        "no scale and is left unknown",
    )
    add_json(parser)


def run(arguments: argparse.Namespace) -> None:
    """Measure and print.

    Raises
    ------
    FramingPaletteError
        When the photograph or the scale cannot be used.
    """
    from framing_palette.catalogue import measure_swatch, swatch_report
    from framing_palette.picture import read_picture_file

    with progress(f"Reading {arguments.photo}"):
        picture = read_picture_file(arguments.photo, mm_per_px=arguments.mm_per_px)
    swatch = measure_swatch(picture)
    if arguments.json:
        print_json(swatch_report(swatch))
        return
    for colour in swatch.colours:
        lab = "  ".join(f"{value:6.1f}" for value in colour.lab)
        print(f"{colour.share:6.1%}  L*a*b* {lab}  {colour.name}")
    print(f"finish, a guess: {swatch.finish.finish.value} ({swatch.finish.reason})")
    if swatch.uncertainty_delta_e is not None:
        print(f"colours good to about {swatch.uncertainty_delta_e:.1f} ΔE00")
    for notice in swatch.notices:
        tell(notice)
