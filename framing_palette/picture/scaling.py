"""Scale: millimetres per pixel, from the typed size of the art or from a chart of known size."""

from dataclasses import replace
from typing import Final

import numpy as np

from framing_palette.picture.chart_finding import Chart
from framing_palette.picture.pictures import Picture
from framing_palette.picture.squaring import Corners
from framing_palette.units import Length

SIZES_WITHIN: Final = 0.05
"""Share by which typed size and chart may differ; the chart lies a little lower or higher."""

Size = tuple[Length, Length]


def scaled(
    picture: Picture,
    corners: Corners,
    chart: Chart | None,
    art_size: Size | None,
    chart_size: Size | None,
) -> Picture:
    """Return a squared picture with its scale, by the typed size or else by the chart's own.

    Parameters
    ----------
    picture
        Shows the art from edge to edge.
    corners
        Of the art in the photograph, 0..1.
    chart
        In the photograph.
    art_size, chart_size
        True width and height of the art, and of the chart's patches when it lies level with the
        art. Where both are known the chart checks the art's size.
    """
    by_chart = None
    if chart_size is not None and chart is not None:
        by_chart = _scale_by_chart(picture, corners, chart, chart_size)
    if art_size is None:
        return replace(picture, mm_per_px=by_chart)
    sized = picture.with_true_size(*art_size)
    if by_chart is None or sized.mm_per_px is None:
        return sized
    apart = sized.mm_per_px / by_chart - 1
    if abs(apart) <= SIZES_WITHIN:
        return sized
    words = (
        f"The typed size is {abs(apart):.0%} {'larger' if apart > 0 else 'smaller'} than the "
        "chart's own size says: measure the art again, and lay the chart level with it."
    )
    return replace(sized, notices=(*sized.notices, words))


def _scale_by_chart(
    picture: Picture, corners: Corners, chart: Chart, size: tuple[Length, Length]
) -> float:
    """Return mm per pixel from the chart's known size, seen through the art's own perspective."""
    import cv2

    square = np.array(
        [[0, 0], [picture.columns, 0], [picture.columns, picture.rows], [0, picture.rows]],
        np.float32,
    )
    homography = cv2.getPerspectiveTransform(np.asarray(corners, np.float32), square)
    flat = cv2.perspectiveTransform(
        np.asarray(chart.corners, np.float32).reshape(-1, 1, 2), homography
    ).reshape(4, 2)
    lengths = np.hypot(*(np.roll(flat, -1, axis=0) - flat).T)
    width, height = size[0].as_float_mm(), size[1].as_float_mm()
    known = np.array([width, height, width, height])
    return float(np.mean(known / lengths))
