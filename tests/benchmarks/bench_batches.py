"""Batches: a new season's catalogue against a chain's open jobs, with one worker and with two.

The reference is the same work done plainly, one job after another in this process. Whoever works,
the lines are the same. Starting two processes costs some seconds of importing, so that two workers
pay from a few dozen jobs on; the ratio is told for as many jobs as one asks for with
FRAMING_PALETTE_BATCH.

Measured: see DEVELOPERS.md.
"""

import os
import time
from dataclasses import replace
from pathlib import Path

import pytest

from framing_palette.catalogue.swatch_intake_files import measure_swatch_folder
from framing_palette.jobs import Status, read_job_file
from framing_palette.jobs.season_files import rerank_open_jobs
from framing_palette.jobs.store import JobStore

ROOT = Path(__file__).resolve().parents[2]
JOBS = int(os.environ.get("FRAMING_PALETTE_BATCH", "24"))


def timed(work):
    """Return the seconds by the clock, those of this process and its finished children, and the result."""
    begun_s, used_before_s = time.perf_counter(), used_s()
    result = work()
    return time.perf_counter() - begun_s, used_s() - used_before_s, result


def used_s():
    times = os.times()
    return times.user + times.system + times.children_user + times.children_system


@pytest.mark.timeout(3600)
def test_a_season_with_one_and_two_workers(tmp_path):
    packed = read_job_file(ROOT / "tests" / "files" / "job_1" / "demo.framejob")
    rack = ROOT / "catalog"
    with JobStore(tmp_path / "jobs.sqlite") as store:
        for number in range(JOBS):
            job = replace(packed.job, number=f"{number:04}", status=Status.OPEN)
            store.save(job, picture=packed.picture)
        rerank_open_jobs(store, rack, backend="threading", jobs=1)  # what is imported late
        plain_s, plain_used_s, plain = timed(
            lambda: rerank_open_jobs(store, rack, backend="threading", jobs=1)
        )
        print(
            f"\n{JOBS} jobs plainly: {plain_s:.1f} s, {plain_used_s / JOBS:.2f} s of the processor each"
        )
        for workers in (1, 2):
            cold_s, _, _ = timed(
                lambda n=workers: rerank_open_jobs(store, rack, backend="loky", jobs=n)
            )
            warm_s, _, found = timed(
                lambda n=workers: rerank_open_jobs(store, rack, backend="loky", jobs=n)
            )
            assert found == plain
            print(
                f"{workers} in processes: {warm_s:.1f} s, ratio {plain_s / warm_s:.2f}; started anew {cold_s:.1f} s"
            )


@pytest.mark.timeout(3600)
def test_a_folder_of_swatches_with_one_and_two_workers(tmp_path):
    from PIL import Image

    folder = tmp_path / "photos"
    folder.mkdir()
    textures = sorted((ROOT / "catalog" / "textures").glob("*.png"))
    for number in range(JOBS):
        with Image.open(textures[number % len(textures)]) as image:
            image.convert("RGB").save(folder / f"{number:04}.png")
    plain_s, used, plain = timed(
        lambda: measure_swatch_folder(
            folder, tmp_path / "plain", mm_per_px=0.1, backend="threading", jobs=1
        )
    )
    print(f"\n{JOBS} swatches plainly: {plain_s:.1f} s, {used / JOBS:.2f} s of the processor each")
    for workers in (1, 2):
        for state in ("cold", "warm"):
            results = tmp_path / f"{workers}{state}"
            clock_s, _, found = timed(
                lambda n=workers, path=results: measure_swatch_folder(
                    folder, path, mm_per_px=0.1, jobs=n
                )
            )
        assert repr(found) == repr(plain)
        print(f"{workers} in processes: {clock_s:.1f} s, ratio {plain_s / clock_s:.2f}")
