"""``framing-palette preview``: the border as it will look, as a picture file."""

import argparse
from pathlib import Path

from framing_palette.cli.inputs import add_catalogue, add_json, read_catalogue
from framing_palette.cli.printing import print_json, progress, tell

SUMMARY = "render a design around a picture at true scale"
EXPLANATION = """\
Render the design with its real widths, surfaces and cross-sections around the picture. The ending
of FILE says the form: .png, .tif or .html (one page that needs nothing else).

example: framing-palette preview design.toml --picture picture.jpg --catalog catalog --out p.png"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    parser.add_argument("design", type=Path, metavar="DESIGN.toml", help="the design")
    parser.add_argument(
        "--picture", type=Path, required=True, metavar="PICTURE", help="photograph of the art"
    )
    add_catalogue(parser)
    parser.add_argument("--out", type=Path, required=True, metavar="FILE", help="where to write")
    parser.add_argument(
        "--width-px",
        type=int,
        default=1600,
        metavar="N",
        help="width of the rendered picture in pixels (default: %(default)s)",
    )
    add_json(parser)


def run(arguments: argparse.Namespace) -> None:
    """Render and write.

    Raises
    ------
    FramingPaletteError
        When an input cannot be used or the file cannot be written.
    """
    from framing_palette.design import read_design
    from framing_palette.picture import read_picture_file
    from framing_palette.preview import write_preview_file

    catalogue = read_catalogue(arguments.catalog, measure=False)
    design = read_design(arguments.design, catalogue)
    with progress(f"Reading {arguments.picture}"):
        picture = read_picture_file(arguments.picture, max_side=max(1600, arguments.width_px))
    with progress("Rendering the preview"):
        rendering = write_preview_file(
            arguments.out, design, picture, catalogue, width_px=arguments.width_px
        )
    for notice in rendering.notices:
        tell(notice)
    if arguments.json:
        rows, columns = rendering.srgb.shape[:2]
        print_json(
            {
                "schema": "framing-palette/preview@1",
                "out": str(arguments.out),
                "width_px": columns,
                "height_px": rows,
                "out_of_gamut_share": rendering.clipped_share,
                "notices": list(rendering.notices),
            },
        )
