"""``framing-palette palette``: what is in the picture, region by region."""

import argparse

from framing_palette.cli.inputs import add_json, add_picture, read_picture
from framing_palette.cli.printing import print_json

SUMMARY = "read the dominant colours, accents and texture of a picture's regions"
EXPLANATION = """\
Read each region's palette (colours with their shares), the small striking colours, the texture at
true scale, and where the eye goes first.

example: framing-palette palette picture.jpg --regions regions.json --art-width "20 in\""""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    add_picture(parser)
    add_json(parser)


def run(arguments: argparse.Namespace) -> None:
    """Look and print.

    Raises
    ------
    FramingPaletteError
        When the picture, the regions or the width cannot be used.
    """
    from framing_palette.picture import palette_report

    picture, findings = read_picture(arguments)
    if arguments.json:
        print_json(palette_report(picture, findings))
        return
    for region in findings.regions:
        print(f"{region.name} ({region.role.value}), {region.share:.0%} of the picture")
        for colour in region.colours:
            lab = "  ".join(f"{value:6.1f}" for value in colour.lab)
            print(f"  {colour.share:6.1%}  L*a*b* {lab}  {colour.name}")
        for accent in region.accents:
            print(f"  accent: {accent.name}, {accent.share:.2%} of the picture")
    if findings.focus_guessed:
        print("No focus was drawn: the focus above is the program's guess.")
