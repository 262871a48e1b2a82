"""How long the intake of a 24-megapixel photograph takes, against decoding it alone.

Run with ``pytest tests/benchmarks/bench_intake.py -s``.
"""

from pathlib import Path
from time import perf_counter, process_time

import cv2
import numpy as np
import pytest
from PIL import Image

from framing_palette.picture import INTAKE_SIDE, IntakeWishes, read_picture_file, take_in
from tests.picture.counters import counter

MOST_TIMES = 20.0  # of the bare decoding


@pytest.fixture(scope="module")
def photo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    large = cv2.resize(counter("LED-B3").srgb_u8, (6000, 4000), interpolation=cv2.INTER_CUBIC)
    path = tmp_path_factory.mktemp("intake") / "large.jpg"
    Image.fromarray(large).save(path, quality=92)
    return path


def test_a_large_photograph_with_a_chart_is_taken_in_soon(photo: Path) -> None:
    take_in(read_picture_file(photo, max_side=400))  # libraries loaded
    begun = perf_counter()
    with Image.open(photo) as image:
        np.asarray(image.convert("RGB"))
    decoding = perf_counter() - begun
    begun, worked = perf_counter(), process_time()
    intake = take_in(read_picture_file(photo, max_side=INTAKE_SIDE), IntakeWishes())
    taken, work = perf_counter() - begun, process_time() - worked
    assert intake.chart is not None
    print(f"decoding alone {decoding:.2f} s; intake {taken:.2f} s ({work:.2f} s of processor time)")
    print(f"{taken / decoding:.1f} times")
    assert taken < MOST_TIMES * decoding
