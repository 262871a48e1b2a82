"""Reading the published tables that are shipped beside the code."""

import csv
from functools import cache
from importlib.resources import files


@cache
def table(name: str) -> dict[str, tuple[str, ...]]:
    """Return a shipped table as columns of text.

    Parameters
    ----------
    name
        File name inside the folder of tables; lines that begin with # tell its source.
    """
    text = files("framing_palette.colour").joinpath("tables", name).read_text(encoding="utf-8")
    header, *rows = csv.reader(line for line in text.splitlines() if not line.startswith("#"))
    return dict(zip(header, zip(*rows, strict=True), strict=True))
