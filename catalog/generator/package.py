"""The description of the folder's tables, in the form that the program itself writes."""

import json
from pathlib import Path

from framing_palette.catalogue.package_description import describe_package

_DESCRIPTION = (
    "Every name, colour, size, price and claim is invented; prices are in US dollars. Pictures lie "
    "in textures/: grey ones are tone around the sample's own colour with mean 128, coloured ones "
    "are the surface itself."
)
_LICENCE = {
    "name": "CC0-1.0",
    "title": "CC0 1.0",
    "path": "https://creativecommons.org/publicdomain/zero/1.0/",
}


def cell(value: object) -> str:
    """A value as it stands in the table; empty is unknown."""
    if isinstance(value, bool):
        return "true" if value else "false"
    return f"{value:g}" if isinstance(value, int | float) else str(value)


def write(path: Path) -> None:
    """Write datapackage.json."""
    described = describe_package(
        name="invented-sample-rack",
        title="An invented rack of framing samples",
        description=_DESCRIPTION,
        optional=("spectra", "profiles", "conservation", "textures"),
    )
    described["licenses"] = [_LICENCE]
    path.write_text(json.dumps(described, indent=1) + "\n", encoding="utf-8")
