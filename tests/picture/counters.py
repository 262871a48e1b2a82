"""A simulated counter: chart and painting rendered spectrally under a lamp, seen by a camera.

Reflectances: the 24 patches as published with colour-science (ISO 17321-1 set), and for the
painting those of the invented catalogue, which no correction has seen. Lamps: CIE, as shipped.
Camera: measured sensitivities published with colour-science (NPL).
"""

import csv
import warnings
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

import numpy as np

from framing_palette.colour import spectrum_to_lab_d50
from framing_palette.colour.table_files import table

ROOT = Path(__file__).resolve().parents[2]
WAVELENGTHS = np.arange(380, 731, 10)
ART_COLUMNS, ART_ROWS = 8, 6


@cache
def _science() -> tuple[np.ndarray, np.ndarray]:
    """Return the chart's reflectances (24, 36) and the camera's sensitivities (36, 3)."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import colour

        patches = colour.SDS_COLOURCHECKERS["ISO 17321-1"]
        chart = np.array(
            [np.interp(WAVELENGTHS, sd.wavelengths, sd.values) for sd in patches.values()]
        )
        camera = next(iter(colour.MSDS_CAMERA_SENSITIVITIES.values()))
        seen = np.array(
            [
                np.interp(WAVELENGTHS, camera.wavelengths, camera.values[:, axis])
                for axis in range(3)
            ]
        )
    return chart, seen.T


@cache
def chart_reflectances() -> np.ndarray:
    return _science()[0]


@cache
def art_reflectances() -> np.ndarray:
    """Return 48 reflectances (48, 36) spread over the invented catalogue."""
    with (ROOT / "catalog" / "spectra.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.reader(file))[1:]
    every = np.array([[float(value) for value in row[2:]] for row in rows])
    return every[:: len(every) // (ART_COLUMNS * ART_ROWS)][: ART_COLUMNS * ART_ROWS]


def lamp(name: str) -> np.ndarray:
    columns = table("lights.csv")
    nm = np.asarray(columns["nm"], float)
    return np.interp(WAVELENGTHS, nm, np.asarray(columns[name], float))


@dataclass(frozen=True)
class Counter:
    """One simulated photograph: pixels, and the truth."""

    srgb_u8: np.ndarray
    art_corners: np.ndarray  # (4, 2), 0..1
    chart_corners: np.ndarray
    art_lab: np.ndarray = field(default_factory=lambda: spectrum_to_lab_d50(art_reflectances()))


def camera_rgb(reflectances: np.ndarray, light: str, *, balance: float = 1.0) -> np.ndarray:
    """Return linear camera values; ``balance`` 1 is balanced for the lamp, 0 for D50."""
    seen = _science()[1]
    white = lamp(light) @ seen
    usual = lamp("D50") @ seen
    scale = white**balance * (usual / usual.mean() * white.mean()) ** (1 - balance)
    # Camera values lie nearer to sRGB's after a matrix that keeps grey, as every camera applies.
    towards_srgb = np.array([[1.55, -0.45, -0.10], [-0.20, 1.50, -0.30], [0.02, -0.52, 1.50]])
    return (reflectances * lamp(light)) @ seen / scale @ towards_srgb.T


@cache
def counter(
    light: str = "D50",
    *,
    balance: float = 0.7,
    exposure: float = 0.82,
    turn: int = 0,
    vignette: float = 0.0,
    slant: float = 0.0,
    noise: float = 0.002,
    mirrored: bool = False,
    with_chart: bool = True,
    charts: int = 1,
    seed: int = 3,
) -> Counter:
    """Return a photograph of 1500 x 1000 px with the art at left and the chart at right."""
    rng = np.random.default_rng(seed)
    table_top = np.full((1000, 1500, 3), camera_rgb(np.full(36, 0.16), light, balance=balance))
    art = _tiles(camera_rgb(art_reflectances(), light, balance=balance), ART_COLUMNS, ART_ROWS, 0.0)
    art_corners = np.array([[90, 170], [800, 130], [830, 830], [60, 800]], float)
    _lay(table_top, art, art_corners)
    chart = _tiles(camera_rgb(chart_reflectances(), light, balance=balance), 6, 4, 0.1)
    lying = [[950, 300], [1380, 320], [1370, 620], [940, 590]]
    standing = [[1000, 200], [1290, 215], [1280, 640], [990, 620]]
    chart_corners = np.array(standing if turn % 2 else lying, float)
    if with_chart:
        _lay_card(table_top, chart, np.roll(chart_corners, -turn, axis=0), light, balance)
    if charts > 1:
        _lay_card(table_top, chart, chart_corners + np.array([0, 340]), light, balance)
    pixels = _photographed(table_top, fall_off(vignette, slant) * exposure, noise, rng)
    if mirrored:
        pixels = np.ascontiguousarray(pixels[:, ::-1])
    return Counter(
        pixels, art_corners / (1500, 1000), np.roll(chart_corners, -turn, axis=0) / (1500, 1000)
    )


def fall_off(vignette: float, slant: float) -> np.ndarray:
    """Return the light across the photograph: a lens that darkens outward, a lamp at one side."""
    y, x = np.mgrid[0:1000, 0:1500]
    away = ((x - 750) / 900) ** 2 + ((y - 500) / 900) ** 2
    return (1 - vignette * away) * (1 + slant * (x - 750) / 750)


@cache
def plain_sheet(
    light: str = "D50",
    *,
    balance: float = 0.7,
    exposure: float = 0.7,
    vignette: float = 0.0,
    slant: float = 0.0,
    noise: float = 0.002,
    marks: int = 0,
    covers: float = 1.0,
    grain: float = 0.0,
    second_light: str | None = None,
    seed: int = 5,
) -> np.ndarray:
    """Return the photograph of a plain grey sheet at the same place, half as large, 8-bit sRGB.

    ``marks`` dark blots lie on it, it covers a share of the photograph's width and height, has a
    coarse ``grain``, and a second lamp may take over towards the right.
    """
    import cv2

    rng = np.random.default_rng(seed)
    grey = np.full(36, 0.7)
    scene = np.full((500, 750, 3), camera_rgb(grey, light, balance=balance))
    if second_light is not None:
        other = camera_rgb(grey, second_light, balance=0.0)
        share = np.linspace(0, 1, 750)[None, :, None]
        scene = scene * (1 - share) + other * share
    if grain:
        coarse = rng.normal(0, grain, (25, 38)).astype(np.float32)
        scene = (
            scene * (1 + cv2.resize(coarse, (750, 500), interpolation=cv2.INTER_CUBIC))[..., None]
        )
    for _ in range(marks):
        x, y = int(rng.integers(50, 700)), int(rng.integers(50, 450))
        cv2.circle(scene, (x, y), int(rng.integers(8, 30)), (0.05, 0.05, 0.06), -1)
    bare = np.full(scene.shape, camera_rgb(np.full(36, 0.16), light, balance=balance))
    edge_x, edge_y = round(375 * (1 - covers)), round(250 * (1 - covers))
    bare[edge_y : 500 - edge_y, edge_x : 750 - edge_x] = scene[
        edge_y : 500 - edge_y, edge_x : 750 - edge_x
    ]
    return _photographed(bare, fall_off(vignette, slant)[::2, ::2] * exposure, noise, rng)


def _photographed(
    scene: np.ndarray, light: np.ndarray, noise: float, rng: np.random.Generator
) -> np.ndarray:
    import cv2

    lit = cv2.GaussianBlur(scene * light[..., None], (0, 0), 0.8)
    lit = lit + rng.normal(0, noise, lit.shape)
    encoded = np.where(
        lit <= 0.0031308, 12.92 * lit, 1.055 * np.maximum(lit, 1e-9) ** (1 / 2.4) - 0.055
    )
    return np.rint(np.clip(encoded, 0, 1) * 255).astype(np.uint8)


def _tiles(colours: np.ndarray, columns: int, rows: int, gap: float) -> np.ndarray:
    side, between = 40, round(40 * gap)
    pitch = side + between
    sheet = np.full((rows * pitch - between, columns * pitch - between, 3), 0.02)
    for place, colour in enumerate(colours):
        row, column = divmod(place, columns)
        sheet[row * pitch : row * pitch + side, column * pitch : column * pitch + side] = colour
    return sheet


def _lay_card(
    scene: np.ndarray, chart: np.ndarray, corners: np.ndarray, light: str, balance: float
) -> None:
    dark = np.full(
        (chart.shape[0] + 40, chart.shape[1] + 40, 3),
        camera_rgb(np.full(36, 0.035), light, balance=balance),
    )
    dark[20:-20, 20:-20] = np.where(chart == 0.02, dark[20:-20, 20:-20], chart)
    middle = corners.mean(axis=0)
    grow = np.array([dark.shape[1] / chart.shape[1], dark.shape[0] / chart.shape[0]])
    _lay(scene, dark, middle + (corners - middle) * grow.mean())


def _lay(scene: np.ndarray, sheet: np.ndarray, corners: np.ndarray) -> None:
    import cv2

    rows, columns = sheet.shape[:2]
    own = np.array([[0, 0], [columns, 0], [columns, rows], [0, rows]], np.float32)
    matrix = cv2.getPerspectiveTransform(own, corners.astype(np.float32))
    size = scene.shape[1], scene.shape[0]
    laid = cv2.warpPerspective(sheet, matrix, size, flags=cv2.INTER_LINEAR)
    mask = cv2.warpPerspective(np.ones(sheet.shape[:2]), matrix, size, flags=cv2.INTER_LINEAR)
    scene[:] = np.where(mask[..., None] > 0.5, laid / np.maximum(mask, 0.5)[..., None], scene)
