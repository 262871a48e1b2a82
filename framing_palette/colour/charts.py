"""The classic 24-patch colour chart: the published colours of its patches."""

from typing import Final, Literal

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.colour.table_files import table

Vintage = Literal["before", "after"]

VINTAGES: Final[tuple[Vintage, ...]] = ("before", "after")
"""Charts made before and after November 2014, when the pigments changed slightly."""

CHART_ROWS: Final = 4
CHART_COLUMNS: Final = 6
NEUTRAL_PATCHES: Final = slice(18, 24)


def chart_names() -> tuple[str, ...]:
    """Return the 24 names, row by row from the upper left, the neutral row last."""
    return table("chart_24.csv")["name"]


def chart_lab(vintage: Vintage = "before") -> Float64Array:
    """Return the patches' colours, shape (24, 3), CIELAB D50, 2 degree.

    References
    ----------
    Averages published for charts made before and after November 2014, as carried by
    colour-science 0.4; see the head of ``tables/chart_24.csv``.
    """
    columns = table("chart_24.csv")
    return np.stack(
        [np.asarray(columns[f"{vintage}_{axis}"], dtype=np.float64) for axis in "Lab"], axis=-1
    )
