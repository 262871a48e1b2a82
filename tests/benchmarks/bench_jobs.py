"""Ten thousand jobs: listed, searched, opened and saved; and two counters on one server.

Each time stands beside a named reference in the same run: reading the same rows or writing the
same bytes durably without the program. Targets, by the clock of an idle machine: list and search
under 100 ms, open under 300 ms without the photograph, save under 50 ms; 500 jobs in one process
without the memory growing by more than 5 % after the first 50.

Measured on 2 cores shared with other work (load 8 to 11), 10,000 jobs of three designs each, 99 MB:
all of them listed in 58 ms by the clock (37 ms of the processor), a screenful of 200 in 1 ms;
searched by words, client, status, date or sample in 1 to 9 ms; opened in 2 ms; saved in 3 to 8 ms;
started in 0.4 s, nearly all of it the check of the file; backed up in 0.9 s. Two counters on one
PostgreSQL server: 10,000 saves in 301 s, 4,261 of them met another's and were merged, none lost.
"""

import os
import random
import sqlite3
import subprocess
import sys
import time
from contextlib import closing
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from framing_palette.jobs import Client, Status, job_text, read_job_file
from framing_palette.jobs.database_files import fault_of
from framing_palette.jobs.job_lines import Wanted
from framing_palette.jobs.merging import merged
from framing_palette.jobs.store import JobStore
from tests.catalogue.conftest import postgresql_address as _server
from tests.jobs.test_store import START, job

ROOT = Path(__file__).parents[2]
COUNT = 10_000
postgresql_address = _server  # a fixture
DEMO = read_job_file(ROOT / "tests" / "files" / "job_1" / "demo.framejob").job
FIRST = ("Ada", "Bo", "Cleo", "Dov", "Eli", "Fay", "Gus", "Hana", "Ivo", "June")
LAST = ("Example", "Probe", "Sample", "Muster", "Invented", "Placeholder")


def ms(work, rounds=15):
    """The best of some rounds by the clock, in milliseconds: the least disturbed one."""
    times = []
    for _ in range(rounds):
        start = time.perf_counter()
        result = work()
        times.append((time.perf_counter() - start) * 1000)
    return min(times), result


def processor_ms(work, rounds=15):
    """The best of some rounds by what this process used, whatever else the machine does."""
    times = []
    for _ in range(rounds):
        start = time.process_time()
        work()
        times.append((time.process_time() - start) * 1000)
    return min(times)


def shop_job(number):
    rng = random.Random(number)  # noqa: S311
    at = START - timedelta(hours=number)
    return replace(
        DEMO,
        number=f"{number:06d}",
        title=f"{rng.choice(('Harbour', 'Portrait', 'Print', 'Map'))} {number}",
        client=Client(f"{rng.choice(FIRST)} {rng.choice(LAST)}", f"c{number}@example.invalid"),
        status=rng.choice([status for status in Status if status is not Status.OPEN]),
        created=at,
        changed=at,
        kept=tuple(rng.sample([f"M-{code:03d}" for code in range(300)], 3)),
    )


@pytest.fixture(scope="module")
def path(tmp_path_factory):
    found = tmp_path_factory.mktemp("shop") / "jobs.sqlite"
    with JobStore(found) as store:
        with store._writing() as connection:
            from framing_palette.jobs import job_tables

            for number in range(COUNT):
                job_tables.add_job(connection, shop_job(number))
        assert store.count() == COUNT
    print(f"\n{COUNT} jobs: {found.stat().st_size / 1e6:.0f} MB")
    return found


@pytest.fixture
def store(path):
    with JobStore(path) as opened:
        yield opened


def rows(path, statement, *words):
    with closing(sqlite3.connect(path)) as connection:
        return connection.execute(statement, words).fetchall()


PLAIN_LIST = "SELECT number, title, client, status, created, changed, version FROM jobs ORDER BY changed DESC"


@pytest.mark.parametrize(
    ("what", "wanted", "limit"),
    [
        ("list, all of it", Wanted(), None),
        ("list, a screenful", Wanted(), 200),
        ("words", Wanted(words="harbour probe"), 200),
        ("client", Wanted(client="ada example"), None),
        ("status", Wanted(status=Status.READY), 200),
        ("dates", Wanted(begun_from=START - timedelta(days=30), begun_before=START), None),
        ("sample", Wanted(sample="M-123"), None),
        ("nothing found", Wanted(words="nosuchword"), None),
    ],
)
def test_listing_and_searching(store, path, what, wanted, limit):
    time_ms, found = ms(lambda: store.lines(wanted, limit=limit))
    assert bool(found) == (what != "nothing found")
    used_ms = processor_ms(lambda: store.lines(wanted, limit=limit))
    plain_ms, _ = ms(lambda: rows(path, PLAIN_LIST))
    print(
        f"{what}: {len(found)} found in {time_ms:.1f} ms by the clock, {used_ms:.1f} ms of the "
        f"processor (target 100), {time_ms / plain_ms:.2f} of reading all rows plainly ({plain_ms:.1f} ms)"
    )
    assert time_ms < 6 * plain_ms + 5


def test_opening_one(store, path):
    number = f"{COUNT // 2:06d}"
    time_ms, found = ms(lambda: store.open(number))
    assert found.job == shop_job(COUNT // 2)
    plain_ms, _ = ms(lambda: rows(path, "SELECT document FROM jobs WHERE number = ?", number))
    print(
        f"open one: {time_ms:.1f} ms (target 300), "
        f"{time_ms / plain_ms:.1f} of reading its row plainly ({plain_ms:.2f} ms)"
    )
    assert time_ms < 300 * plain_ms


def test_saving_one(store, tmp_path):
    number = f"{COUNT // 3:06d}"
    state = store.open(number)
    version = state.version

    def save():
        nonlocal version
        version = store.save(replace(state.job, note=f"{version}"), version=version)

    content = job_text(state.job).encode()

    def write_durably():
        with (tmp_path / "plain").open("wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())

    time_ms, _ = ms(save, rounds=30)
    plain_ms, _ = ms(write_durably, rounds=30)
    print(
        f"save one: {time_ms:.1f} ms (target 50), "
        f"{time_ms / plain_ms:.1f} of writing the same bytes durably ({plain_ms:.1f} ms)"
    )
    assert time_ms < 20 * plain_ms + 10


def test_starting_and_backing_up(path):
    def start():
        JobStore(path).close()

    start_ms, _ = ms(start, rounds=3)
    check_ms, _ = ms(lambda: fault_of(path), rounds=3)
    with JobStore(path) as store:
        backup_ms, backup = ms(store.take_backup, rounds=1)
    copy_ms, _ = ms(path.read_bytes, rounds=3)
    print(
        f"start {start_ms:.0f} ms, of that the check {check_ms:.0f} ms; backup {backup_ms:.0f} ms, "
        f"{backup_ms / copy_ms:.0f} of reading the file ({copy_ms:.0f} ms)"
    )
    assert backup.exists()


_COUNTER = """
import random, sys
from dataclasses import replace
from framing_palette.errors import JobChangedElsewhereError
from framing_palette.jobs.merging import merged
from framing_palette.jobs.store import JobStore

address, photographs, hand, steps, seed = sys.argv[1:]
rng, refused = random.Random(int(seed)), 0
held = {}
with JobStore(address, photographs=photographs) as store:
    for step in range(int(steps)):
        number = str(rng.randrange(5))
        base = held.get(number) if rng.random() < 0.7 else None  # often on an old version
        base = base or store.open(number)
        mine = replace(base.job, kept=(*base.job.kept, f"{hand}{step}"))
        version = base.version
        while True:
            try:
                version = store.save(mine, version=version)
                break
            except JobChangedElsewhereError as error:
                refused += 1
                joined = merged(base.job, mine, error.theirs)
                assert not joined.undecided
                mine, version = joined.job, error.found
                base = replace(base, job=error.theirs, version=error.found)
        held[number] = replace(base, job=mine, version=version)
print(refused)
"""
OPERATIONS = 10_000


@pytest.mark.timeout(1800)
def test_no_update_is_lost_between_two_counters_in_ten_thousand(postgresql_address, tmp_path):
    with JobStore(postgresql_address, photographs=tmp_path) as store:
        for number in range(5):
            store.save(job(str(number)))
    start = time.perf_counter()
    counters = [
        subprocess.Popen(
            [
                sys.executable,
                "-c",
                _COUNTER,
                postgresql_address,
                str(tmp_path),
                hand,
                str(OPERATIONS // 2),
                str(seed),
            ],
            cwd=ROOT,
            stdout=subprocess.PIPE,
            text=True,
        )
        for seed, hand in enumerate("xy")
    ]
    refused = [int(counter.communicate()[0]) for counter in counters]
    spent_s = time.perf_counter() - start
    with JobStore(postgresql_address, photographs=tmp_path) as store:
        kept = [code for number in range(5) for code in store.open(str(number)).job.kept]
        versions = sum(store.open(str(number)).version for number in range(5))
    wanted = {f"{hand}{step}" for hand in "xy" for step in range(OPERATIONS // 2)}
    assert len(kept) == len(set(kept))
    assert set(kept) == wanted
    assert versions == 5 + OPERATIONS
    assert sum(refused) > 100
    print(
        f"\n{OPERATIONS} saves of two counters in {spent_s:.0f} s, {sum(refused)} merged, none lost"
    )


def test_merging_is_nothing_beside_saving():
    base = shop_job(1)
    mine, theirs = replace(base, note="x"), replace(base, title="y")
    time_ms, found = ms(lambda: merged(base, mine, theirs))
    text_ms, _ = ms(lambda: job_text(base))
    assert (found.job.note, found.job.title) == ("x", "y")
    print(f"merge {time_ms:.3f} ms, {time_ms / text_ms:.2f} of writing the document")


_SOAK = """
import sys
from dataclasses import replace
from pathlib import Path
from framing_palette.jobs import read_job_file, write_job_file
from framing_palette.jobs.store import JobStore

source, folder = map(Path, sys.argv[1:])

def resident_kb():
    lines = Path("/proc/self/status").read_text().splitlines()
    return int(next(line for line in lines if line.startswith("VmRSS")).split()[1])

with JobStore(folder / "jobs.sqlite") as store:
    for number in range(500):
        packed = read_job_file(source)
        job = replace(packed.job, number=str(number))
        version = store.save(job, picture=packed.picture)
        for change in range(4):
            version = store.save(replace(job, note=f"{change}"), version=version)
        found = store.packed(store.open(str(number)).job)
        write_job_file(folder / "sent.framejob", found)
        store.lines(limit=200)
        if number in (49, 499):
            print(resident_kb())
"""


@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="reads its memory from /proc")
def test_five_hundred_jobs_in_one_process_leave_the_memory_as_it_was(tmp_path):
    source = ROOT / "tests" / "files" / "job_1" / "demo.framejob"
    done = subprocess.run(
        [sys.executable, "-c", _SOAK, str(source), str(tmp_path)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    early, late = map(int, done.stdout.split())
    print(
        f"\nresident after 50 jobs {early / 1024:.0f} MB, after 500 {late / early - 1:+.1%} (target 5 %)"
    )
    assert late < 1.05 * early
