"""Finding the 24-patch colour chart in a photograph, and knowing when it is not one.

OpenCV's detector proposes; nothing that it proposes is believed before the 24 colours fit the
published ones through a plain linear map. The same check finds which way up the chart lies and
whether the photograph is mirrored.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from framing_palette.arrays import Float64Array, FloatArray, UInt8Array
from framing_palette.colour import delta_e_2000, lab_d50_to_xyz_d50, xyz_d50_to_lab_d50
from framing_palette.colour.charts import CHART_COLUMNS, CHART_ROWS, chart_lab
from framing_palette.errors import ChartError
from framing_palette.picture.chart_grids import grid_proposals
from framing_palette.picture.chart_layout import (
    Corners,
    corners_through,
    glimpsed_patches,
    mapped,
    patch_points,
    unit_to,
)

LARGEST_MISFIT: Final = 12.0
"""Mean ΔE00 of a linear map to the reference above which a grid is not the chart.

Between the two groups of a trial on photographs: true charts stayed at or under 8.1, false finds
at or over 16.9.
"""

LARGEST_MISFIT_CUT: Final = 5.0  # stricter, since fewer patches fit more easily
LEAST_PATCHES: Final = 16

_MOST_CHARTS = 3
_SETTLED_SHARE = 0.9  # of a patch's side that must look even
_ROOM = 0.25  # of its own size, around the chart, that is looked at while its corners settle

# Looks in turn until one gives a chart: longest side in pixels, then the power that brightens or
# darkens the photograph first and the seed of OpenCV's own random choices; no power for the way by
# grids of squares.
_LOOKS: Final[tuple[tuple[int, float | None, int], ...]] = (
    (1400, None, 0),
    (1400, 1.0, 1),
    (800, 1.0, 1),
    (2000, None, 0),
    (1400, 0.5, 2),
    (1400, 2.0, 3),
)
_SECOND_LOOKS: Final = 2


@dataclass(frozen=True, slots=True)
class Chart:
    """A chart in a photograph.

    Parameters
    ----------
    corners
        Outer corners of the four corner patches in the order of the chart itself: upper left
        (dark skin), upper right, lower right (black), lower left (white); 0..1 across the
        photograph.
    misfit
        Mean ΔE00 of the plain linear map that was used to believe in it.
    """

    corners: Corners
    misfit: float


def find_chart(srgb_u8: UInt8Array, linear: FloatArray) -> Chart | None:
    """Return the chart in a photograph, or None when there is none to be believed in.

    Parameters
    ----------
    srgb_u8
        Shape (rows, columns, 3): what the detector looks at.
    linear
        Same rows and columns, linear light: what is measured.

    Raises
    ------
    ChartError
        When there are two charts, one that is cut by the edge, or a mirrored one.
    """
    chart = _first_chart(srgb_u8, linear, _LOOKS)
    if chart is None:
        return None
    rest = _blanked(srgb_u8, chart)
    if _first_chart(rest, linear, _LOOKS[:_SECOND_LOOKS], other_than=chart) is not None:
        raise ChartError(
            "two colour charts are in the photograph",
            todo="leave one of them and take the photograph again, or mark the corners of one",
        )
    return chart


def _first_chart(
    srgb_u8: UInt8Array,
    linear: FloatArray,
    looks: Sequence[tuple[int, float | None, int]],
    other_than: Chart | None = None,
) -> Chart | None:
    for longest_px, power, seed in looks:
        found = [
            chart
            for box in _proposals(srgb_u8, longest_px, power, seed)
            if (chart := _believed(box, linear)) is not None
            and (other_than is None or not _overlap(chart, other_than))
        ]
        if found:
            return min(found, key=lambda one: one.misfit)
    return None


def _overlap(one: Chart, other: Chart) -> bool:
    low, high = np.min(other.corners, axis=0), np.max(other.corners, axis=0)
    middle = np.mean(one.corners, axis=0)
    return bool((middle > low).all() and (middle < high).all())


def _blanked(srgb_u8: UInt8Array, chart: Chart) -> UInt8Array:
    """Return the photograph with the chart painted over."""
    import cv2

    rows, columns = srgb_u8.shape[:2]
    outline = np.rint(np.asarray(chart.corners) * (columns, rows)).astype(np.int32)
    return np.asarray(cv2.fillConvexPoly(srgb_u8.copy(), outline, (90, 90, 90)), dtype=np.uint8)


def chart_at(corners: Corners, linear: FloatArray) -> Chart:
    """Return the chart between four corners that the designer marked, whichever way up it lies.

    Raises
    ------
    ChartError
        When what lies there is not the chart, or lies outside the photograph.
    """
    chart = _believed(np.asarray(corners, dtype=np.float64), linear)
    if chart is None:
        raise ChartError(
            "what lies between the marked corners does not look like the 24-patch chart",
            todo="mark the outer corners of its four corner patches",
        )
    return chart


def _proposals(
    srgb_u8: UInt8Array, longest_px: int, power: float | None, seed: int
) -> list[Float64Array]:
    """Return where a chart may lie: corners in 0..1, in any turn."""
    import cv2

    rows, columns = srgb_u8.shape[:2]
    scale = longest_px / max(rows, columns)
    size = max(1, round(columns * scale)), max(1, round(rows * scale))
    way = cv2.INTER_AREA if scale < 1 else cv2.INTER_CUBIC
    small = np.asarray(cv2.resize(srgb_u8, size, interpolation=way), dtype=np.uint8)
    if power is None:
        return [box / size for box in grid_proposals(small)]
    ramp = np.rint(255 * np.linspace(0, 1, 256) ** power).astype(np.uint8)
    return [box / size for box in _detected(ramp[small], seed)]


def _detected(rgb_u8: UInt8Array, seed: int) -> list[Float64Array]:
    """Return what OpenCV's detector takes for charts: corners in pixels."""
    import cv2

    detector = cv2.mcc.CCheckerDetector.create()
    # WORKAROUND OpenCV 5.0.0 leaves the kind of chart unset, and then finds one only by luck.
    if hasattr(detector, "setColorChartType"):
        detector.setColorChartType(cv2.mcc.MCC24)
    threads = cv2.getNumThreads()
    cv2.setNumThreads(1)  # its random choices are the same again only on one thread
    cv2.setRNGSeed(seed)
    try:
        is_found = detector.process(np.ascontiguousarray(rgb_u8[..., ::-1]), _MOST_CHARTS)
    finally:
        cv2.setNumThreads(threads)
    if not is_found:
        return []
    cells = (
        np.asarray(checker.getColorCharts(), dtype=np.float64).reshape(-1, 4, 2)
        for checker in detector.getListColorChecker()
    )
    return [
        corners_through(found.mean(axis=1))
        for found in cells
        if len(found) == CHART_ROWS * CHART_COLUMNS
    ]


def _believed(box: Float64Array, linear: FloatArray) -> Chart | None:
    """Return the chart in the turn that fits the reference best, or None when none fits."""
    if not _is_convex(box):
        return None
    fits = [
        (_misfit(turned, linear), mirrored, turned)
        for mirrored, first in ((False, box), (True, box[[1, 0, 3, 2]]))
        for turned in (np.roll(first, turn, axis=0) for turn in range(4))
    ]
    misfit, mirrored, corners = min(fits, key=lambda fit: fit[0])
    is_cut = bool((corners < -0.002).any() or (corners > 1.002).any())
    if misfit > (LARGEST_MISFIT_CUT if is_cut else LARGEST_MISFIT):
        return None
    if is_cut:
        raise ChartError(
            "the colour chart is cut by the edge of the photograph",
            todo="take it again with the whole chart in sight",
        )
    if mirrored:
        raise ChartError(
            "the colour chart is mirrored, and so is the art", todo="flip the photograph first"
        )
    settled = _settled(corners, linear)
    listed = [(float(x), float(y)) for x, y in settled]
    return Chart((listed[0], listed[1], listed[2], listed[3]), _misfit(settled, linear))


def _settled(corners: Float64Array, linear: FloatArray) -> Float64Array:
    """Return the corners moved a little so that every patch is as even inside as it can be."""
    import cv2
    from scipy.optimize import minimize

    rows, columns = linear.shape[:2]
    left, top, right, low = _room_around(corners, rows, columns)
    # The cube root makes dark patches count as much as light ones.
    seen = np.cbrt(np.maximum(linear[top:low, left:right], 0.0)).astype(np.float32)
    grid = patch_points(7, _SETTLED_SHARE)
    reach = 0.03 * np.ptp(corners, axis=0).max()

    def unevenness(moves: Float64Array) -> float:
        at = mapped(grid, unit_to(corners + moves.reshape(4, 2) * reach))
        at = at * (columns, rows) - (left + 0.5, top + 0.5)
        found = cv2.remap(
            seen,
            at[:, 0].astype(np.float32),
            at[:, 1].astype(np.float32),
            cv2.INTER_LINEAR,
            borderMode=cv2.BORDER_REPLICATE,
        )
        spread = found.reshape(CHART_ROWS * CHART_COLUMNS, -1, 3).std(axis=1).mean(axis=1)
        return float(np.minimum(spread, 0.1).mean() + 0.002 * np.square(moves).mean())

    start = np.zeros(8)
    simplex = np.vstack([start, np.eye(8)])
    best = minimize(
        unevenness,
        start,
        method="Nelder-Mead",
        options={"initial_simplex": simplex, "maxfev": 600, "xatol": 0.02, "fatol": 1e-5},
    )
    return np.asarray(corners + best.x.reshape(4, 2) * reach, dtype=np.float64)


def _room_around(corners: Float64Array, rows: int, columns: int) -> tuple[int, int, int, int]:
    """Return left, top, right and low end in pixels of what is looked at while corners settle."""
    low, high = corners.min(axis=0), corners.max(axis=0)
    margin = _ROOM * (high - low)
    left, top = np.floor(np.clip(low - margin, 0, 1) * (columns, rows)).astype(int)
    right, bottom = np.ceil(np.clip(high + margin, 0, 1) * (columns, rows)).astype(int)
    return int(left), int(top), int(right), int(bottom)


def _is_convex(box: Float64Array) -> bool:
    edges = np.roll(box, -1, axis=0) - box
    following = np.roll(edges, -1, axis=0)
    turns = edges[:, 0] * following[:, 1] - edges[:, 1] * following[:, 0]
    return bool((turns > 0).all() or (turns < 0).all())


def _misfit(corners: Float64Array, linear: FloatArray) -> float:
    """Return the mean ΔE00 after the linear map with offset that fits the patches best."""
    places, seen = glimpsed_patches(corners, linear)
    if len(places) < LEAST_PATCHES:
        return float("inf")
    features = np.column_stack([seen, np.ones(len(seen))])
    reference = chart_lab()[places]
    wanted = lab_d50_to_xyz_d50(reference)
    # Relative errors count alike in dark and light patches, as the eye sees them.
    weight = 1.0 / (wanted[:, 1:2] + 0.02)
    solved, *_ = np.linalg.lstsq(features * weight, wanted * weight, rcond=None)
    lab = xyz_d50_to_lab_d50(features @ solved)
    return float(np.mean(delta_e_2000(lab, reference)))
