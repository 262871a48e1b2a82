"""How a job's photograph is taken in: where the art's corners are, which chart, which grey."""

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from framing_palette.picture import LightField, Picture, chart_size
from framing_palette.units import Length

if TYPE_CHECKING:
    from framing_palette.picture.intake import IntakeWishes

Point = tuple[float, float]
Corners = tuple[Point, Point, Point, Point]


@dataclass(frozen=True, slots=True)
class HowTaken:
    """What the designer wants of the intake, as the job keeps it.

    Parameters
    ----------
    corners
        Of the art, 0..1 across the photograph; found by the program when None.
    chart
        "auto" looks for the colour chart, "none" ignores it, four corners say where it is.
    grey
        A place that should be neutral, 0..1; used when there is no chart.
    light
        What a photographed plain sheet told of the light; "auto" asks the table around the art,
        "none" leaves uneven light alone.
    chart_width
        True width of the chart's patches where it lies level with the art: it gives the scale, or
        checks a typed size.
    """

    corners: Corners | None = None
    chart: Literal["auto", "none"] | Corners = "auto"
    grey: Point | None = None
    light: Literal["auto", "none"] | LightField = "auto"
    chart_width: Length | None = None

    def wishes(self, art_size: tuple[Length, Length] | None) -> "IntakeWishes":
        """Return the same for the intake of art of a size."""
        from framing_palette.picture.intake import IntakeWishes

        known = chart_size(self.chart_width) if self.chart_width is not None else None
        return IntakeWishes(self.corners, self.chart, self.grey, art_size, known, light=self.light)


def taken_in(
    photograph: Picture, how: HowTaken | None, art_size: tuple[Length, Length] | None
) -> Picture:
    """Return the picture that a photograph becomes; without a wish it stays as the file says.

    Raises
    ------
    ChartError, CornersError
        When chart, grey or corners cannot be used.
    """
    if how is None:
        return photograph
    from framing_palette.picture.intake import take_in

    return take_in(photograph, how.wishes(art_size)).picture
