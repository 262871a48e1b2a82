"""Pictures for the planted cases: photographs that ship with libraries, and painted scenes.

Every picture is read once per test run, at a small size, with its focus drawn.
"""

from collections.abc import Callable
from functools import cache
from pathlib import Path

import cv2
import numpy as np

from framing_palette.colour import lab_d50_to_srgb, srgb_to_lab_d50, srgb_u8_to_lab_d50
from framing_palette.picture import (
    ColourTrust,
    Findings,
    Part,
    Picture,
    Region,
    Role,
    TrustGrade,
    read_findings,
    read_picture_file,
    read_regions_file,
)
from tests.ranking.by_hand import lch

LONG_SIDE_PX = 320
SHIPPED_SIDE_PX = 600  # their small accents need more than the photographs do
SAMPLE_IMAGES = Path(__file__).parents[2] / "sample_images"
SHIPPED = (
    "briar_rose", "ferry_at_dusk", "poster_fish", "rainy_street", "slate_and_rust",
    "sleeping_greyhound",
)  # fmt: skip
TRUST = ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells.")
Box = tuple[float, float, float, float]
Image = np.ndarray

FOCUS: dict[str, Box] = {
    "astronaut": (0.30, 0.05, 0.65, 0.45),
    "cat": (0.30, 0.10, 0.75, 0.75),
    "coffee": (0.30, 0.15, 0.75, 0.75),
    "rocket": (0.40, 0.15, 0.60, 0.85),
    "retina": (0.60, 0.35, 0.85, 0.65),
    "tissue": (0.20, 0.20, 0.70, 0.70),
    "galaxies": (0.40, 0.40, 0.70, 0.70),
    "motorcycle": (0.25, 0.30, 0.80, 0.95),
    "temple": (0.25, 0.15, 0.75, 0.65),
    "flower": (0.35, 0.10, 0.75, 0.80),
    "cameraman": (0.25, 0.15, 0.65, 0.90),
    "coins": (0.20, 0.20, 0.80, 0.80),
    "moon": (0.30, 0.30, 0.70, 0.70),
    "brick": (0.25, 0.25, 0.75, 0.75),
}
COLOURED = (
    "astronaut", "cat", "coffee", "rocket", "retina", "tissue", "motorcycle", "temple", "flower",
    "galaxies",
)  # fmt: skip
BLACK_AND_WHITE = ("cameraman", "coins", "moon", "brick")


@cache
def photograph(name: str) -> Image:
    """A photograph that scikit-image or scikit-learn ships, sRGB, shape (rows, columns, 3)."""
    from skimage import data
    from sklearn.datasets import load_sample_image

    shipped = {
        "cat": data.chelsea,
        "tissue": data.immunohistochemistry,
        "galaxies": data.hubble_deep_field,
        "cameraman": data.camera,
        "motorcycle": lambda: data.stereo_motorcycle()[0],
        "temple": lambda: load_sample_image("china.jpg"),
        "flower": lambda: load_sample_image("flower.jpg"),
    }
    image = shipped.get(name, getattr(data, name, None))()
    image = np.dstack([image] * 3) if image.ndim == 2 else image[..., :3]
    scale = LONG_SIDE_PX / max(image.shape[:2])
    size = (round(image.shape[1] * scale), round(image.shape[0] * scale))
    return cv2.resize(np.ascontiguousarray(image), size, interpolation=cv2.INTER_AREA)


def box(x0: float, y0: float, x1: float, y1: float, name: str = "subject", role: Role = Role.FOCUS):
    return Region(name, role, (Part(((x0, y0), (x1, y0), (x1, y1), (x0, y1))),))


def picture_of(srgb_u8: Image, mm_per_px: float | None = None) -> Picture:
    lab = np.asarray(srgb_u8_to_lab_d50(np.ascontiguousarray(srgb_u8)), dtype=np.float32)
    return Picture(lab, mm_per_px, TRUST, srgb_u8.shape[1], srgb_u8.shape[0])


@cache
def reading(name: str) -> Findings:
    """The findings of a photograph or of a painted scene, by its name."""
    if name in SHIPPED:
        regions = read_regions_file(SAMPLE_IMAGES / f"{name}.regions.json")
        shown_at = read_picture_file(SAMPLE_IMAGES / f"{name}.jpg", max_side=SHIPPED_SIDE_PX)
        return read_findings(shown_at, regions)
    if name in FOCUS:
        return read_findings(picture_of(photograph(name)), (box(*FOCUS[name]),))
    lab, focus = SCENES[name](np.random.default_rng(sum(map(ord, name))))
    srgb = (np.asarray(lab_d50_to_srgb(lab)) * 255 + 0.5).astype(np.uint8)
    return read_findings(picture_of(srgb), (box(*focus),))


def shown(lab) -> tuple[float, float, float]:
    """The nearest colour that a screen picture can hold, so that samples are of this world."""
    held = srgb_to_lab_d50(np.asarray(lab_d50_to_srgb(np.array(lab, dtype=np.float64))))
    return tuple(map(float, np.asarray(held)))


# --- painted scenes: ground, then blobs with soft edges, grain at two scales -----------------


def _noise(rng, rows: int, columns: int, sigma: float) -> Image:
    field = cv2.GaussianBlur(rng.normal(size=(rows, columns)).astype(np.float32), (0, 0), sigma)
    return field / field.std()


def ground(rng, lab, *, rows: int = 210, columns: int = 280, grain: float = 1.5) -> Image:
    image = np.zeros((rows, columns, 3), np.float32) + np.float32(lab)
    image[..., 0] += 3 * _noise(rng, rows, columns, 10) + grain * _noise(rng, rows, columns, 1)
    image[..., 1:] += _noise(rng, rows, columns, 12)[..., None]
    return image


def blob(rng, image, lab, box_xy: Box, *, soft: float = 2.0, grain: float = 2.0) -> Image:
    """Paint an uneven ellipse with centre and radii (x, y, rx, ry), all 0..1."""
    x, y, rx, ry = box_xy
    rows, columns = image.shape[:2]
    down, across = np.mgrid[:rows, :columns]
    reach = ((across / columns - x) / rx) ** 2 + ((down / rows - y) / ry) ** 2
    reach = reach + 0.08 * _noise(rng, rows, columns, 8)
    cover = cv2.GaussianBlur((reach < 1).astype(np.float32), (0, 0), soft)[..., None]
    tone = _noise(rng, rows, columns, 3)[..., None] * np.float32([grain, 0.5, 0.5])
    return image * (1 - cover) + (np.float32(lab) + tone) * cover


def frame_line(rng, image, lab, *, off: float = 0.04, depth: float = 0.05) -> Image:
    """Paint a border inside the picture, off the edge, both as parts of the height."""
    rows, columns = image.shape[:2]
    first, last = round(off * rows), round((off + depth) * rows)
    cover = np.zeros((rows, columns, 1), np.float32)
    cover[first : rows - first, first : columns - first] = 1
    cover[last : rows - last, last : columns - last] = 0
    return image * (1 - cover) + np.float32(lab) * cover


def mosaic(rng, labs, lean, *, rows: int = 210, columns: int = 280, size: float = 6) -> Image:
    """Patches of several colours, like leaves; ``lean`` says how common each is."""
    fields = [_noise(rng, rows, columns, size) + part for part in lean]
    image = np.float32(labs)[np.stack(fields, axis=-1).argmax(axis=-1)]
    image[..., 0] += 2 * _noise(rng, rows, columns, 1)
    return cv2.GaussianBlur(image, (0, 0), 0.8)


def _red_boat(rng):
    image = ground(rng, lch(58, 9, 235))
    image = blob(rng, image, lch(34, 8, 240), (0.5, 0.9, 0.6, 0.16))
    return blob(rng, image, lch(44, 54, 34), (0.5, 0.52, 0.2, 0.2)), (0.3, 0.3, 0.7, 0.74)


def _buoy(rng):
    image = ground(rng, lch(60, 7, 230))
    image = blob(rng, image, lch(38, 8, 250), (0.5, 0.65, 0.3, 0.2))
    return blob(rng, image, lch(42, 40, 38), (0.56, 0.5, 0.06, 0.07)), (0.3, 0.3, 0.8, 0.85)


def _night_ferry(rng):
    image = ground(rng, lch(20, 15, 268))
    image = blob(rng, image, lch(34, 14, 45), (0.5, 0.62, 0.22, 0.09))
    return blob(rng, image, lch(78, 42, 78), (0.5, 0.5, 0.1, 0.1), soft=6), (0.35, 0.35, 0.65, 0.72)


def _sunlit_field(rng):
    image = ground(rng, lch(66, 44, 86))
    image = blob(rng, image, lch(74, 14, 240), (0.5, 0.1, 0.7, 0.16))
    return blob(rng, image, lch(30, 16, 140), (0.5, 0.5, 0.2, 0.24)), (0.3, 0.26, 0.7, 0.74)


def _sleeping_dog(rng):
    image = ground(rng, lch(79, 8, 70), grain=0.6)
    image = blob(rng, image, lch(72, 9, 62), (0.5, 0.52, 0.28, 0.28), soft=7, grain=1)
    image = blob(rng, image, lch(60, 10, 60), (0.45, 0.5, 0.12, 0.14), soft=7, grain=1)
    return frame_line(rng, image, lch(35, 34, 262)), (0.25, 0.2, 0.75, 0.8)


def _pale_rose(rng):
    image = ground(rng, lch(84, 6, 80), grain=0.6)
    image = blob(rng, image, lch(76, 14, 15), (0.5, 0.5, 0.24, 0.28), soft=7, grain=1)
    return frame_line(rng, image, lch(38, 44, 20), off=0.05), (0.25, 0.2, 0.75, 0.8)


def _foliage(rng):
    leaves = (lch(34, 24, 132), lch(54, 32, 114), lch(28, 14, 68), lch(70, 32, 94))
    return mosaic(rng, leaves, (0.6, 0.4, 0.15, -0.4)), (0.25, 0.25, 0.75, 0.75)


def _autumn(rng):
    leaves = (lch(42, 40, 55), lch(60, 48, 78), lch(28, 22, 45), lch(38, 18, 120))
    return mosaic(rng, leaves, (0.5, 0.3, 0.3, -0.2)), (0.25, 0.25, 0.75, 0.75)


def _old_print(rng):
    image = ground(rng, lch(86, 17, 86), grain=1.0)
    for _ in range(6):
        place = (*rng.uniform(0.2, 0.8, 2), *rng.uniform(0.03, 0.1, 2))
        image = blob(rng, image, lch(rng.uniform(22, 45), 9, 62), place, soft=1)
    return image, (0.2, 0.2, 0.8, 0.8)


def _toned(rng, a: float, b: float):
    rows, columns = 210, 280
    tone = _noise(rng, rows, columns, 20) + 0.6 * _noise(rng, rows, columns, 5)
    tone = (tone - tone.min()) / np.ptp(tone)
    image = np.zeros((rows, columns, 3), np.float32)
    image[..., 0] = 10 + 80 * tone
    image[..., 1:] = np.float32([a, b]) * (0.5 + 0.5 * tone)[..., None]
    return image, (0.3, 0.3, 0.7, 0.7)


def _snow(rng):
    image = ground(rng, lch(84, 7, 245))
    image = blob(rng, image, lch(35, 18, 258), (0.5, 0.5, 0.2, 0.25))
    return blob(rng, image, lch(94, 3, 250), (0.3, 0.3, 0.12, 0.1)), (0.3, 0.25, 0.7, 0.75)


def _clay_pots(rng):
    image = ground(rng, lch(68, 20, 72))
    image = blob(rng, image, lch(86, 13, 84), (0.28, 0.3, 0.12, 0.12))
    return blob(rng, image, lch(42, 36, 46), (0.52, 0.5, 0.2, 0.25)), (0.3, 0.25, 0.72, 0.75)


def _pastel_portrait(rng):
    image = ground(rng, lch(78, 7, 72), grain=0.6)
    return blob(rng, image, lch(68, 13, 52), (0.5, 0.5, 0.24, 0.28), soft=10, grain=0.8), (
        0.25, 0.2, 0.75, 0.8,
    )  # fmt: skip


def _poster_fish(rng):
    image = ground(rng, lch(50, 38, 258))
    image = blob(rng, image, lch(64, 62, 62), (0.5, 0.5, 0.24, 0.2))
    return blob(rng, image, lch(30, 20, 280), (0.2, 0.85, 0.2, 0.1)), (0.25, 0.28, 0.75, 0.72)


def _slate_and_rust(rng):
    parts = (lch(42, 12, 255), lch(40, 36, 50), lch(66, 8, 250))
    return mosaic(rng, parts, (0.7, 0.2, 0.0), size=14), (0.25, 0.25, 0.75, 0.75)


SCENES: dict[str, Callable] = {
    "red boat": _red_boat,
    "buoy": _buoy,
    "night ferry": _night_ferry,
    "sunlit field": _sunlit_field,
    "sleeping dog": _sleeping_dog,
    "pale rose": _pale_rose,
    "foliage": _foliage,
    "autumn": _autumn,
    "old print": _old_print,
    "sepia": lambda rng: _toned(rng, 4.0, 19.0),
    "selenium": lambda rng: _toned(rng, 1.0, -5.0),
    "grey print": lambda rng: _toned(rng, 0.0, 0.0),
    "snow": _snow,
    "clay pots": _clay_pots,
    "pastel portrait": _pastel_portrait,
    "painted fish": _poster_fish,
    "mosaic of slate and rust": _slate_and_rust,
}
