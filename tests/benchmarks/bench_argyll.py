"""The chart correction against an independent one: Debian's argyll (scanin, colprof -am).

Run with ``pytest tests/benchmarks/bench_argyll.py -s``; without argyll it is skipped. argyll is run
as a program and ships with nothing of ours. The photographs are simulated counters, and those of a
folder when ``CHART_PHOTOGRAPHS`` names one. Both sides see the same linear light and the same
published patches, and both are asked for patches that the fit has not seen: every patch is left
out in turn, and of a simulated counter the painting too.
"""

import os
import re
import shutil
import subprocess
from pathlib import Path

import numpy as np
import pytest
import tifffile

from framing_palette.colour import delta_e_2000, lab_d50_to_linear_srgb
from framing_palette.colour.charts import chart_lab
from framing_palette.picture import INTAKE_SIDE, Picture, read_picture_file
from framing_palette.picture.chart_finding import find_chart
from framing_palette.picture.chart_layout import sampled_patches, unit_to
from framing_palette.picture.correction import fit_correction, read_patches
from tests.picture.counters import ART_COLUMNS, ART_ROWS, counter
from tests.picture.test_intake import photograph

MOST_TIMES = 1.15  # of argyll's error
LIGHTS = ("D50", "D65", "A", "LED-B1", "LED-B3", "F11")
LAYOUT = Path("/usr/share/color/argyll/ref/ColorChecker.cht")
FIDUCIALS = np.array([[10.0, 9.75], [321.25, 9.75], [321.26, 217.0], [10.0, 217.0]])
PATCHES = np.array([[12.0, 11.5], [320.0, 11.5], [320.0, 215.0], [12.0, 215.0]])  # of LAYOUT

pytestmark = pytest.mark.skipif(
    shutil.which("scanin") is None or not LAYOUT.is_file(), reason="argyll is not installed"
)


def run(*words: object, given: str = "", folder: Path) -> str:
    done = subprocess.run(
        [str(word) for word in words],
        input=given,
        capture_output=True,
        text=True,
        cwd=folder,
        check=True,
        timeout=120,
    )
    return done.stdout


def write_reference(folder: Path, lab: np.ndarray) -> None:
    """Write the published patches that both sides are fitted to, as a CGATS file."""
    rows = [
        f"{'ABCD'[place // 6]}{place % 6 + 1:02d} {one[0]:.4f} {one[1]:.4f} {one[2]:.4f}"
        for place, one in enumerate(lab)
    ]
    head = "IT8.7/2\nNUMBER_OF_FIELDS 4\nBEGIN_DATA_FORMAT\nSAMPLE_ID LAB_L LAB_A LAB_B\n"
    head += "END_DATA_FORMAT\nNUMBER_OF_SETS 24\nBEGIN_DATA\n"
    (folder / "chart.cie").write_text(head + "\n".join(rows) + "\nEND_DATA\n")


def scanned(folder: Path, linear: np.ndarray, corners: np.ndarray) -> list[str]:
    """Return the lines of scanin's readings, having told it where the chart lies."""
    rows, columns = linear.shape[:2]
    peak = 65535 / max(1.0, float(linear.max()))
    tifffile.imwrite(
        folder / "photo.tif",
        np.rint(np.clip(linear, 0, None) * peak).astype(np.uint16),
        photometric="rgb",
    )
    # Outer corners of the corner patches, from our finding, to the layout's own fiducial marks.
    share = (FIDUCIALS - PATCHES[0]) / (PATCHES[2] - PATCHES[0])
    ahead = np.column_stack([share, np.ones(4)]) @ unit_to(corners).T
    marks = ahead[:, :2] / ahead[:, 2:] * (columns, rows)
    told = ",".join(f"{value:.2f}" for value in marks.ravel())
    run("scanin", "-p", "-G", "1.0", "-F", told, "photo.tif", LAYOUT, "chart.cie", folder=folder)
    return (folder / "photo.ti3").read_text().splitlines()


def profiled(folder: Path, lines: list[str], without: int | None) -> None:
    """Let colprof fit a matrix, with one patch left out."""
    start = lines.index("BEGIN_DATA") + 1
    end = lines.index("END_DATA")
    rows = [line for place, line in enumerate(lines[start:end]) if place != without]
    head = [
        re.sub(r"NUMBER_OF_SETS \d+", f"NUMBER_OF_SETS {len(rows)}", line) for line in lines[:start]
    ]
    (folder / "fit.ti3").write_text("\n".join([*head, *rows, *lines[end:]]) + "\n")
    run("colprof", "-am", "-ua", "fit", folder=folder)


def predicted(folder: Path, device: np.ndarray) -> np.ndarray:
    """Return Lab D50 of device values (n, 3), 0..1, through the profile that was fitted last."""
    given = "\n".join(" ".join(f"{value:.7f}" for value in one) for one in device)
    told = run("xicclu", "-ff", "-ir", "-pl", "fit.icc", given=given + "\n", folder=folder)
    return np.array(
        [
            [float(value) for value in line.split("->")[-1].split("[")[0].split()]
            for line in told.splitlines()
            if "->" in line
        ]
    )


def readings(lines: list[str]) -> np.ndarray:
    """Return the device values of the 24 patches as scanin read them, 0..1."""
    fields = lines[lines.index("BEGIN_DATA_FORMAT") + 1].split()
    place = [fields.index(name) for name in ("RGB_R", "RGB_G", "RGB_B")]
    rows = lines[lines.index("BEGIN_DATA") + 1 : lines.index("END_DATA")]
    return np.array([[float(row.split()[one]) for one in place] for row in rows]) / 100


def compared(picture: Picture, folder: Path, art: np.ndarray | None) -> tuple[np.ndarray, ...]:
    """Return leave-one-out errors of argyll, of ours, uncorrected, and of the art by both."""
    linear = np.asarray(lab_d50_to_linear_srgb(picture.lab_d50), np.float32)
    from framing_palette.colour import lab_d50_to_srgb_u8

    chart = find_chart(lab_d50_to_srgb_u8(picture.lab_d50), linear)
    assert chart is not None
    patches = read_patches(sampled_patches(chart.corners, linear))
    ours = fit_correction(patches)
    lab = chart_lab(ours.vintage)
    write_reference(folder, lab)
    lines = scanned(folder, linear, np.asarray(chart.corners))
    device = readings(lines)
    theirs = []
    for place in ours.places:
        profiled(folder, lines, place)
        theirs.append(predicted(folder, device[place : place + 1])[0])
    places = list(ours.places)
    from framing_palette.colour import linear_srgb_to_lab_d50

    before = delta_e_2000(linear_srgb_to_lab_d50(patches.linear[places]), lab[places])
    found = delta_e_2000(np.array(theirs), lab[places]), ours.errors, before
    if art is None:
        return found
    profiled(folder, lines, None)
    scale = 1 / max(1.0, float(linear.max()))
    tiles = art_light(linear, art)
    return *found, predicted(folder, tiles * scale), np.asarray(ours(tiles))


def art_light(linear: np.ndarray, corners: np.ndarray) -> np.ndarray:
    """Return the median light of every tile of the painted art."""
    rows, columns = linear.shape[:2]
    to_photo = unit_to(corners)
    found = []
    for row in range(ART_ROWS):
        for column in range(ART_COLUMNS):
            spots = [
                ((column + x) / ART_COLUMNS, (row + y) / ART_ROWS, 1.0)
                for x in np.linspace(0.3, 0.7, 7)
                for y in np.linspace(0.3, 0.7, 7)
            ]
            ahead = np.array(spots) @ to_photo.T
            at = (ahead[:, :2] / ahead[:, 2:] * (columns, rows)).astype(int)
            found.append(np.median(linear[at[:, 1], at[:, 0]], axis=0))
    return np.array(found, dtype=np.float64)


def test_on_simulated_counters_the_error_is_about_argylls(tmp_path: Path) -> None:
    told = {}
    for light in LIGHTS:
        scene = counter(light)
        theirs, ours, before, their_art, our_art = compared(
            photograph(scene.srgb_u8), tmp_path, scene.art_corners
        )
        art = delta_e_2000(their_art, scene.art_lab), delta_e_2000(our_art, scene.art_lab)
        told[light] = theirs.mean(), ours.mean(), art[0].mean(), art[1].mean()
        print(
            f"{light}: uncorrected {before.mean():.2f}; left out, argyll {theirs.mean():.2f}, ours "
            f"{ours.mean():.2f}; painting, argyll {art[0].mean():.2f}, ours {art[1].mean():.2f}"
        )
    mean = np.mean(list(told.values()), axis=0)
    print("mean: left out, argyll {:.2f}, ours {:.2f}; painting {:.2f}, {:.2f}".format(*mean))
    assert mean[1] < MOST_TIMES * mean[0]
    assert mean[3] < MOST_TIMES * mean[2]


@pytest.mark.skipif("CHART_PHOTOGRAPHS" not in os.environ, reason="no folder of photographs named")
def test_on_real_photographs_the_error_is_about_argylls(tmp_path: Path) -> None:
    means = []
    for path in sorted(Path(os.environ["CHART_PHOTOGRAPHS"]).iterdir()):
        picture = read_picture_file(path, max_side=INTAKE_SIDE)
        theirs, ours, before = compared(picture, tmp_path, None)
        means.append((theirs.mean(), ours.mean(), before.mean()))
        print(
            f"{path.name}: uncorrected {before.mean():.2f}, argyll {theirs.mean():.2f}, "
            f"ours {ours.mean():.2f} ({len(ours)} patches)"
        )
    mean = np.mean(means, axis=0)
    print("mean: argyll {:.2f}, ours {:.2f}, uncorrected {:.2f}".format(*mean))
    assert mean[1] < MOST_TIMES * mean[0]
    assert mean[1] < mean[2] / 4
