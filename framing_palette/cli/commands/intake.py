"""``framing-palette intake``: a photograph of the art, squared up and colour-corrected."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from framing_palette.cli.inputs import add_json, read_length
from framing_palette.cli.printing import print_json, progress, tell

if TYPE_CHECKING:
    from framing_palette.picture import IntakeWishes, LightField
    from framing_palette.units import Length

SUMMARY = "square up a photograph of the art and correct its colour"
EXPLANATION = """\
Find or take the art's corners, square it up, correct its colour by a 24-patch chart (or by a picked
grey), even out the light where something plain tells it, and write a 16-bit picture with its
profile, which also holds its scale and colour error. Says how good the colours are now, and what
for.
A corners file holds {"corners": [[x, y], [x, y], [x, y], [x, y]]}, x and y from 0 to 1.

example: framing-palette intake counter.jpg --width "60 cm" --height "42 cm" --out picture.png"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    parser.add_argument("photo", type=Path, metavar="PHOTO", help="photograph with the art in it")
    parser.add_argument(
        "--corners",
        type=Path,
        metavar="FILE",
        help="the art's four corners (JSON); found automatically when its edge is clear",
    )
    parser.add_argument(
        "--chart",
        default="auto",
        metavar="auto|FILE|none",
        help="auto uses the chart when there is one (default), a corners file says where it is, "
        "none ignores it",
    )
    parser.add_argument(
        "--grey", metavar="X,Y", help="a place that should be neutral, 0 to 1, if there is no chart"
    )
    parser.add_argument(
        "--plain",
        metavar="FILE|none",
        help="photograph of a plain white or grey sheet from the same place under the same light, "
        "which tells how the light falls off; without it a plain table around the art is asked, "
        "none leaves uneven light alone",
    )
    parser.add_argument("--width", metavar="LENGTH", help="true width of the art")
    parser.add_argument("--height", metavar="LENGTH", help="true height of the art")
    parser.add_argument(
        "--chart-width",
        metavar="LENGTH",
        help="true width of the chart's six columns, outer edge to outer edge, when it lies level "
        "with the art; gives the scale, or checks the art's size",
    )
    parser.add_argument(
        "--out", type=Path, required=True, metavar="PICTURE.png", help="where to write (.png, .tif)"
    )
    add_json(parser)


def run(arguments: argparse.Namespace) -> None:
    """Take the photograph in and write the picture.

    Raises
    ------
    FramingPaletteError
        When the photograph, the chart, the corners or a size cannot be used.
    """
    from framing_palette.picture import (
        INTAKE_SIDE,
        intake_report,
        read_picture_file,
        take_in,
        write_picture_file,
    )

    wishes = _wishes(arguments)
    with progress(f"Reading {arguments.photo}"):
        photograph = read_picture_file(arguments.photo, max_side=INTAKE_SIDE)
    with progress("Squaring up and correcting"):
        intake = take_in(photograph, wishes)
    write_picture_file(arguments.out, intake.picture)
    for notice in intake.picture.notices:
        tell(notice)
    if arguments.json:
        print_json(intake_report(intake))
    else:
        print(intake.picture.colour_trust.words)
        print(arguments.out)


def _wishes(arguments: argparse.Namespace) -> "IntakeWishes":
    from framing_palette.picture import (
        IntakeWishes,
        chart_size,
        read_chart_file,
        read_corners_file,
    )

    chart = arguments.chart
    return IntakeWishes(
        corners=read_corners_file(arguments.corners) if arguments.corners else None,
        chart=chart if chart in ("auto", "none") else read_chart_file(Path(chart)),
        grey=_place(arguments.grey),
        art_size=_art_size(arguments),
        chart_size=chart_size(width) if (width := _chart_width(arguments)) else None,
        light=_light(arguments.plain),
    )


def _chart_width(arguments: argparse.Namespace) -> "Length | None":
    return read_length(arguments.chart_width, field="--chart-width")


def _light(plain: str | None) -> 'LightField | Literal["auto", "none"]':
    from framing_palette.picture import read_light_file

    if plain is None:
        return "auto"
    if plain == "none":
        return "none"
    with progress(f"Reading {plain}"):
        return read_light_file(Path(plain))


def _place(text: str | None) -> tuple[float, float] | None:
    from framing_palette.errors import FieldError

    if text is None:
        return None
    try:
        x, y = (float(part) for part in text.split(","))
    except ValueError:
        raise FieldError("--grey", got=repr(text), wanted="write it like 0.25,0.9") from None
    return x, y


def _art_size(arguments: argparse.Namespace) -> "tuple[Length, Length] | None":
    from framing_palette.errors import FieldError

    width = read_length(arguments.width, field="--width")
    height = read_length(arguments.height, field="--height")
    if width is None and height is None:
        return None
    if width is None or height is None:
        missing = "--width" if width is None else "--height"
        raise FieldError(missing, got="missing", wanted="give both width and height, or neither")
    return width, height
