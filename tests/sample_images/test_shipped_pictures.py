"""The finished files: sizes, profiles, outlines, and the truth of the counter photograph."""

from __future__ import annotations

import io
import json
import tomllib
from pathlib import Path

import cv2
import numpy as np
import pytest
from PIL import Image, ImageCms

FOLDER = Path(__file__).resolve().parents[2] / "sample_images"
NAMES = (
    "ferry_at_dusk",
    "sleeping_greyhound",
    "slate_and_rust",
    "briar_rose",
    "rainy_street",
    "poster_fish",
)
PHOTO = "ferry_counter_photo"


def facts(name: str) -> dict:
    return tomllib.loads((FOLDER / f"{name}.toml").read_text(encoding="utf-8"))


def regions(name: str) -> list[dict]:
    return json.loads((FOLDER / f"{name}.regions.json").read_text(encoding="utf-8"))["regions"]


@pytest.fixture(scope="module")
def truth() -> dict:
    return json.loads((FOLDER / f"{PHOTO}.truth.json").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def photo() -> np.ndarray:
    return cv2.imread(str(FOLDER / f"{PHOTO}.jpg"))


def pixels(name: str, long_side: int) -> np.ndarray:
    with Image.open(FOLDER / f"{name}.jpg") as picture:
        picture.draft("RGB", (long_side, long_side))
        picture.thumbnail((long_side, long_side))
        return np.asarray(picture.convert("RGB"))


@pytest.mark.parametrize("name", NAMES)
def test_the_true_size_has_the_proportions_of_the_pixels(name: str) -> None:
    known = facts(name)
    with Image.open(FOLDER / f"{name}.jpg") as picture:
        size = picture.size
    millimetres = [float(known[side].removesuffix(" mm")) for side in ("width", "height")]
    assert size == (known["width_px"], known["height_px"])
    assert millimetres == pytest.approx([known["mm_per_px"] * side for side in size], rel=1e-12)
    assert 2000 <= max(size) <= 2400
    assert known["invented"] is True


@pytest.mark.parametrize("name", [*NAMES, PHOTO])
def test_every_file_carries_an_srgb_profile_and_stays_small(name: str) -> None:
    path = FOLDER / f"{name}.jpg"
    with Image.open(path) as picture:
        profile = ImageCms.ImageCmsProfile(io.BytesIO(picture.info["icc_profile"]))
    assert "sRGB" in ImageCms.getProfileDescription(profile)
    assert 600_000 < path.stat().st_size < 3_000_000


def test_the_whole_folder_stays_under_fourteen_megabytes() -> None:
    shipped = [p for p in FOLDER.rglob("*") if p.is_file() and "__pycache__" not in p.parts]
    assert sum(p.stat().st_size for p in shipped) < 14_000_000


@pytest.mark.parametrize("name", NAMES)
def test_outlines_lie_inside_the_picture_and_never_cross_themselves(name: str) -> None:
    roles = {region["role"] for region in regions(name)}
    assert roles == {"focus", "support", "ground"}
    for region in regions(name):
        corners = np.array(region["polygon"])
        assert ((corners >= 0) & (corners <= 1)).all(), region["name"]
        assert cv2.contourArea(corners.astype(np.float32)) > 0.0005, region["name"]
        assert not crossings(corners), region["name"]


def crossings(corners: np.ndarray) -> list[tuple[int, int]]:
    """Pairs of edges of a closed outline that properly cross."""
    ends = np.roll(corners, -1, axis=0)

    def side(a: np.ndarray, b: np.ndarray, p: np.ndarray) -> float:
        return float(np.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])))

    found = []
    for i, (a, b) in enumerate(zip(corners, ends, strict=True)):
        for j in range(i + 1, len(corners)):
            c, d = corners[j], ends[j]
            if side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0:
                found.append((i, j))
    return found


def test_a_crossed_outline_is_noticed() -> None:
    assert crossings(np.array([(0, 0), (1, 1), (1, 0), (0, 1)], float))


def test_the_buoy_is_the_reddest_thing_on_the_estuary() -> None:
    picture = cv2.cvtColor(pixels("ferry_at_dusk", 600).astype(np.float32) / 255, cv2.COLOR_RGB2Lab)
    redness = {}
    for region in regions("ferry_at_dusk"):
        mask = np.zeros(picture.shape[:2], np.uint8)
        outline = np.array(region["polygon"]) * picture.shape[1::-1]
        cv2.fillPoly(mask, [np.round(outline).astype(np.int32)], 1)
        redness[region["name"]] = np.percentile(picture[..., 1][mask > 0], 75)
    assert max(redness, key=redness.get) == "buoy"
    assert redness["buoy"] > 25


def test_the_rainy_street_has_no_colour_at_all() -> None:
    street = pixels("rainy_street", 800).astype(int)
    assert np.abs(np.diff(street, axis=2)).max() <= 2


def patch_centres(truth: dict) -> np.ndarray:
    return np.array([np.mean(p["corners_px"], axis=0) for p in truth["chart"]["patches"]])


def patch_colours(photo: np.ndarray, truth: dict) -> np.ndarray:
    return np.array(
        [
            photo[round(y) - 12 : round(y) + 13, round(x) - 12 : round(x) + 13].mean(axis=(0, 1))
            for x, y in patch_centres(truth)
        ]
    )


def test_the_chart_finder_meets_the_chart_where_the_truth_says_it_is(
    photo: np.ndarray, truth: dict
) -> None:
    finder = cv2.mcc.CCheckerDetector_create()
    finder.setColorChartType(cv2.mcc.MCC24)
    assert finder.process(photo, 1)
    box = np.array(finder.getBestColorChecker().getBox(), np.float32)
    # The finder's model of the chart: patches 2.5 wide, 0.25 apart.
    model = np.array([(0, 0), (16.75, 0), (16.75, 11.25), (0, 11.25)], np.float32)
    middles = [[(1.5 + 2.75 * k, 1.5 + 2.75 * r)] for r in range(4) for k in range(6)]
    seen = cv2.perspectiveTransform(
        np.array(middles, np.float32), cv2.getPerspectiveTransform(model, box)
    )
    off = np.linalg.norm(seen[:, 0] - patch_centres(truth), axis=1)
    assert off.max() < 12  # a tenth of a patch


def test_no_patch_is_clipped_and_the_light_is_warm(photo: np.ndarray, truth: dict) -> None:
    colours = patch_colours(photo, truth)
    assert colours.max() < 245
    assert colours.min() > 8
    greys = colours[18:]
    assert (np.diff(greys, axis=0) < 0).all()
    blue, green, red = greys[0]
    assert red > green > blue


def test_a_plain_matrix_from_the_patches_brings_their_lab_back(
    photo: np.ndarray, truth: dict
) -> None:
    encoded = patch_colours(photo, truth)[:, ::-1] / 255
    linear = np.where(encoded <= 0.04045, encoded / 12.92, ((encoded + 0.055) / 1.055) ** 2.4)
    lab = np.array([p["lab_d50"] for p in truth["chart"]["patches"]])
    fy = (lab[:, 0] + 16) / 116
    f = np.stack([fy + lab[:, 1] / 500, fy, fy - lab[:, 2] / 200], axis=1)
    xyz = np.where(f > 6 / 29, f**3, 3 * (6 / 29) ** 2 * (f - 4 / 29))
    # The lamp falls off across the chart, so the grey row and a slope ride along.
    x, y = (patch_centres(truth) / 3000).T
    design = np.concatenate([linear, linear * x[:, None], linear * y[:, None]], axis=1)
    fitted = design @ np.linalg.lstsq(design, xyz, rcond=None)[0]
    g = np.where(fitted > (6 / 29) ** 3, np.cbrt(fitted), fitted / (3 * (6 / 29) ** 2) + 4 / 29)
    back = np.stack([116 * g[:, 1] - 16, 500 * (g[:, 0] - g[:, 1]), 200 * (g[:, 1] - g[:, 2])], 1)
    assert np.linalg.norm(back - lab, axis=1).mean() < 4


def test_the_art_corners_square_the_photograph_onto_the_picture(
    photo: np.ndarray, truth: dict
) -> None:
    art = cv2.cvtColor(pixels("ferry_at_dusk", 600), cv2.COLOR_RGB2GRAY)
    rows, columns = art.shape
    square = np.array([(0, 0), (columns, 0), (columns, rows), (0, rows)], np.float32) - 0.5
    matrix = cv2.getPerspectiveTransform(np.array(truth["art"]["corners_px"], np.float32), square)
    flat = cv2.cvtColor(
        cv2.warpPerspective(photo, matrix, (columns, rows), flags=cv2.INTER_AREA),
        cv2.COLOR_BGR2GRAY,
    )
    assert np.corrcoef(art.ravel(), flat.ravel())[0, 1] > 0.9
    shift, _ = cv2.phaseCorrelate(art.astype(np.float32), flat.astype(np.float32))
    assert np.hypot(*shift) < 0.5
