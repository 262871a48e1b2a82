"""Paint every sample picture of this folder from its seed.

Run from the folder above: `python -m sample_images.generate [NAME ...] [--out DIR] [--scale S]`.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from sample_images.picture_files import write_facts, write_jpeg, write_json
from sample_images.regions import regions_of
from sample_images.scenes import abstract, botanical, counter, ferry, fish, greyhound, street

Painter = Callable[[int, int], NDArray[np.uint8]]
COUNTER_PHOTO = "ferry_counter_photo"


@dataclass(frozen=True, slots=True)
class Sample:
    """One picture: what it is, how large, and who paints it."""

    name: str
    title: str
    medium: str
    width_px: int
    width_mm: int
    height_mm: int
    paint: Painter
    seed: int
    most_bytes: int = 1_550_000


SAMPLES = (
    Sample("ferry_at_dusk", "Ferry at Dusk", "oil on canvas", 2400, 600, 420, ferry.paint, 7),
    Sample(
        "sleeping_greyhound",
        "Sleeping Greyhound",
        "soft pastel on toned paper",
        2400,
        480,
        360,
        greyhound.paint,
        7,
    ),
    Sample(
        "slate_and_rust", "Slate and Rust", "oil on coarse linen", 1920, 480, 600, abstract.paint, 7
    ),
    Sample(
        "briar_rose",
        "Briar Rose",
        "pen, ink and watercolour on cream paper",
        1800,
        270,
        360,
        botanical.paint,
        7,
    ),
    Sample(
        "rainy_street",
        "Rainy Street",
        "black-and-white photograph",
        2400,
        360,
        240,
        street.paint,
        7,
    ),
    Sample("poster_fish", "My Fish", "poster paint on sugar paper", 2100, 420, 297, fish.paint, 7),
)


def main(arguments: list[str] | None = None) -> int:
    """Paint the named pictures, or all of them, and say so as each is done."""
    names = [sample.name for sample in SAMPLES] + [COUNTER_PHOTO]
    parser = argparse.ArgumentParser(description="Paint the invented sample pictures.")
    parser.add_argument("names", nargs="*", metavar="NAME", help=f"any of: {', '.join(names)}")
    parser.add_argument("--out", type=Path, default=Path(__file__).parent, help="folder to fill")
    parser.add_argument("--scale", type=float, default=1.0, help="smaller than 1 for a quick proof")
    options = parser.parse_args(arguments)
    unknown = sorted(set(options.names) - set(names))
    if unknown:
        parser.error(f"no picture called {', '.join(unknown)}; choose from {', '.join(names)}")
    options.out.mkdir(parents=True, exist_ok=True)
    wanted = options.names or names
    painted: dict[str, NDArray[np.uint8]] = {}
    for sample in SAMPLES:
        if sample.name in wanted or (sample is SAMPLES[0] and COUNTER_PHOTO in wanted):
            painted[sample.name] = sample.paint(round(sample.width_px * options.scale), sample.seed)
        if sample.name in wanted:
            _save(sample, painted[sample.name], options.out)
    if COUNTER_PHOTO in wanted:
        _save_counter_photo(painted[SAMPLES[0].name], options.out, options.scale)
    return 0


def _save(sample: Sample, picture: NDArray[np.uint8], folder: Path) -> None:
    """The picture, its regions and its facts."""
    height_px, width_px = picture.shape[:2]
    quality = write_jpeg(folder / f"{sample.name}.jpg", picture, sample.most_bytes)
    write_json(folder / f"{sample.name}.regions.json", regions_of(sample.name))
    write_facts(
        folder / f"{sample.name}.toml",
        {
            "title": sample.title,
            "medium": sample.medium,
            "width": f"{sample.width_mm} mm",
            "height": f"{sample.height_mm} mm",
            "mm_per_px": sample.width_mm / width_px,
            "width_px": width_px,
            "height_px": height_px,
            "seed": sample.seed,
            "invented": True,
        },
    )
    sys.stderr.write(f"{sample.name}: {width_px} x {height_px}, quality {quality}\n")


def _save_counter_photo(art: NDArray[np.uint8], folder: Path, scale: float) -> None:
    """The first picture on the counter, and the truth about the photograph."""
    size_mm = (float(SAMPLES[0].width_mm), float(SAMPLES[0].height_mm))
    photo, truth = counter.photograph(art, size_mm, scale, seed=11)
    quality = write_jpeg(folder / f"{COUNTER_PHOTO}.jpg", photo, 2_300_000)
    write_json(folder / f"{COUNTER_PHOTO}.truth.json", truth)
    sys.stderr.write(f"{COUNTER_PHOTO}: {photo.shape[1]} x {photo.shape[0]}, quality {quality}\n")


if __name__ == "__main__":
    sys.exit(main())
