"""Five hundred whole jobs in one process: the memory after the first fifty must not grow by 5 %.

A whole job: photograph and regions read, looked at, all samples ranked, whole designs searched,
the best composed, priced and drawn, proposal and ticket set, the job stored with its photograph,
changed, opened again and sent as one file. The pictures are the shipped ones in turn, reduced so that
five hundred jobs take minutes, each time with another few rows cut off, so that nothing kept by
content fits twice.

Run with ``python tests/benchmarks/bench_soak.py [--jobs N]``, or by pytest with all other
benchmarks. The reference is the same process after fifty jobs.

Measured: see DEVELOPERS.md.
"""

import argparse
import gc
import json
import os
import subprocess
import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PICTURES = (
    "ferry_at_dusk", "briar_rose", "poster_fish", "rainy_street", "slate_and_rust", "sleeping_greyhound",
)  # fmt: skip
EARLY, TOLD_EVERY, MOST_GROWTH = 50, 25, 0.05
PREVIEW_WIDTH_PX = 400
SIDE_PX = 480


def resident_mb() -> float:
    """Return what the process holds in memory now."""
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 1e6


class Shop:
    """One counter that does job after job."""

    def __init__(self, folder: Path) -> None:
        from framing_palette.catalogue import read_catalogue_folder
        from framing_palette.design import example_price_book
        from framing_palette.jobs import shipped_folder
        from framing_palette.jobs.handing_over import DEMO_SHOP
        from framing_palette.jobs.handing_over_files import PaperWishes
        from framing_palette.jobs.store import JobStore

        self.folder = folder
        self.rack = read_catalogue_folder(shipped_folder("catalog"))[0]
        self.wishes = PaperWishes(shop=DEMO_SHOP, book=example_price_book())
        self.store = JobStore(folder / "jobs.sqlite")

    def do(self, number: int) -> None:
        """Do one whole job."""
        from framing_palette.design import search_designs
        from framing_palette.jobs import (
            DEMO_LAYERS,
            PackedJob,
            demo_job,
            picture_of_file,
            read_job_file,
            shipped_picture,
            write_job_file,
        )
        from framing_palette.jobs.handing_over_files import write_proposal, write_ticket
        from framing_palette.picture import read_findings, read_picture_file, read_regions_file
        from framing_palette.preview import write_preview_file
        from framing_palette.ranking import rank

        shipped = shipped_picture(PICTURES[number % len(PICTURES)])
        path = cut(shipped.picture_path, self.folder / "picture.png", number)
        regions = read_regions_file(shipped.regions_path)
        picture = read_picture_file(path).with_true_size(shipped.width, shipped.height)
        findings = read_findings(picture, regions)
        assert len(rank(findings, self.rack)) == len(self.rack)
        designs = search_designs(findings, self.rack, DEMO_LAYERS, top=3).designs
        content, named = picture_of_file(path)
        job = demo_job(shipped, named, regions, designs, catalogue_name=self.rack.name)
        job = replace(job, number=f"S-{number}")
        version = self.store.save(job, picture=content)
        for change in range(3):
            job = replace(job, note=f"change {change}")
            version = self.store.save(job, version=version)
        found = self.store.packed(self.store.open(job.number).job)
        sent = self.folder / "sent.framejob"
        write_job_file(sent, PackedJob(found.job, found.picture))
        packed = read_job_file(sent, self.rack)
        design = packed.job.options[0].design
        write_preview_file(
            self.folder / "preview.png", design, picture, self.rack, width_px=PREVIEW_WIDTH_PX
        )
        write_proposal(packed, sent, self.rack, self.folder, self.wishes)
        write_ticket(packed, self.rack, self.folder, self.wishes)
        assert self.store.lines(limit=50)[0].number


def cut(source: Path, target: Path, number: int) -> Path:
    """Write the picture reduced, with its last rows missing, a few more each time."""
    from PIL import Image

    with Image.open(source) as image:
        image.draft("RGB", (2 * SIDE_PX, 2 * SIDE_PX))
        image.thumbnail((SIDE_PX, SIDE_PX))
        image.crop((0, 0, image.width, image.height - 1 - number % 97)).save(target)
    return target


def soak(jobs: int) -> dict[str, float]:
    """Do the jobs; return the memory after the first fifty and at the end, in MB."""
    found: dict[str, float] = {}
    begun_s = time.process_time()
    with tempfile.TemporaryDirectory() as folder:
        shop = Shop(Path(folder))
        for number in range(jobs):
            shop.do(number)
            done = number + 1
            if done % TOLD_EVERY == 0 or done == jobs:
                gc.collect()
                found[str(done)] = round(resident_mb(), 1)
                spent_s = time.process_time() - begun_s
                print(f"{done} jobs, {found[str(done)]} MB, {spent_s / done:.2f} s each", file=sys.stderr, flush=True)  # fmt: skip
        shop.store.close()
    return found


def growth(found: dict[str, float]) -> float:
    """Return how much larger the end is than the memory after the first fifty jobs."""
    return list(found.values())[-1] / found[str(EARLY)] - 1


@pytest.mark.timeout(4 * 3600)
@pytest.mark.skipif(not Path("/proc/self/statm").exists(), reason="reads its memory from /proc")
def test_five_hundred_whole_jobs_leave_the_memory_as_it_was():
    words = [sys.executable, __file__, "--jobs", os.environ.get("FRAMING_PALETTE_SOAK", "500")]
    done = subprocess.run(words, cwd=ROOT, stdout=subprocess.PIPE, text=True, check=True)
    found = json.loads(done.stdout)
    print(f"\nresident after {EARLY} jobs {found[str(EARLY)]} MB, then {growth(found):+.1%}")
    assert growth(found) < MOST_GROWTH


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--jobs", type=int, default=500)
    sys.path.insert(0, str(ROOT))
    print(json.dumps(soak(parser.parse_args().jobs)))
