"""Whatever lies in a job's document, job file or database: it opens, or one sentence says why not.

Every refusal is a FramingPaletteError; anything else that escapes is a defect and fails here. The
counts are kept small for every day; FRAMING_PALETTE_FUZZ multiplies them.
"""

import json
import os
import random
import sqlite3
from collections.abc import Callable
from contextlib import closing, suppress
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from framing_palette.errors import FramingPaletteError
from framing_palette.jobs import Job, job_from_text, job_text, read_job_file
from framing_palette.jobs.job_lines import Wanted
from framing_palette.jobs.log_files import log_tail
from framing_palette.jobs.store import JobStore
from tests.jobs.test_documents import whole_job
from tests.jobs.test_store import job

FILES = Path(__file__).parents[1] / "files"
TIMES = int(os.environ.get("FRAMING_PALETTE_FUZZ", "1"))
DOCUMENT = json.loads(job_text(read_job_file(FILES / "job_1" / "demo.framejob").job))
PACKED = (FILES / "job_1" / "demo.framejob").read_bytes()
DATABASE = (FILES / "jobs_1" / "jobs.sqlite").read_bytes()

quiet = settings(
    deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow]
)


def lesser(count: int) -> settings:
    return settings(quiet, max_examples=count * TIMES)


JSON = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats()
    | st.text(max_size=20)
    | st.sampled_from(["", "1/0", "-1", "1e999", "9" * 400, "NaN", "../x", "\0", "\ud800", "²"]),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3)
    ),
    max_leaves=6,
)


def places(value: Any, place: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    inner = (
        value.items()
        if isinstance(value, dict)
        else enumerate(value)
        if isinstance(value, list)
        else ()
    )
    return [place, *(deep for key, child in inner for deep in places(child, (*place, key)))]


PLACES = [place for place in places(DOCUMENT) if place]


def with_change(value: Any, place: tuple[Any, ...], new: Any) -> Any:
    if not place:
        return new
    first, *rest = place
    copied = value.copy()
    copied[first] = with_change(value[first], tuple(rest), new)
    return copied


def check_opened_or_refused(work: Callable[[], object]) -> str:
    try:
        work()
    except FramingPaletteError as error:
        sentence = str(error)
        assert sentence.endswith(".")
        assert "Traceback" not in sentence
        return "refused"
    return "opened"


@lesser(150)
@given(place=st.sampled_from(PLACES), new=JSON)
def test_a_document_with_anything_in_any_field_opens_or_is_refused(
    place: tuple[Any, ...], new: Any
) -> None:
    text = json.dumps(with_change(DOCUMENT, place, new))

    def read() -> None:
        again = job_from_text(text, "x")
        assert isinstance(again, Job)
        job_from_text(job_text(again), "x")

    check_opened_or_refused(read)


@lesser(100)
@given(st.text(max_size=200) | JSON.map(json.dumps) | st.just("[" * 100_000))
def test_any_text_as_a_document_is_refused(text: str) -> None:
    assert check_opened_or_refused(lambda: job_from_text(text, "x")) == "refused"


def mutated(content: bytes, seed: int) -> bytes:
    """Return bytes with some turned, cut out, doubled or cut short, as disks and senders do."""
    rng = random.Random(seed)  # noqa: S311
    made = bytearray(content)
    for _ in range(rng.choice((1, 1, 2, 5, 20))):
        at = rng.randrange(max(len(made), 1))
        length = rng.choice((1, 1, 2, 8, 100, 4096))
        what = rng.randrange(5)
        if what == 0:
            made[at : at + 1] = bytes([rng.randrange(256)])
        elif what == 1:
            made[at : at + length] = rng.randbytes(len(made[at : at + length]))
        elif what == 2:
            del made[at : at + length]
        elif what == 3:
            made[at:at] = made[at : at + length]
        elif rng.random() < 0.2:
            del made[at:]
    return bytes(made)


@lesser(150)
@given(st.integers(0, 2**32))
def test_a_job_file_with_turned_bytes_opens_whole_or_is_refused(tmp_path: Path, seed: int) -> None:
    path = tmp_path / "a.framejob"
    path.write_bytes(mutated(PACKED, seed))
    whole = read_job_file(FILES / "job_1" / "demo.framejob")

    def read() -> None:
        assert read_job_file(path).job == whole.job

    check_opened_or_refused(read)


def use_all(store: JobStore) -> None:
    """Do with a database what a counter does, each step refused or done."""
    steps: list[Callable[[], object]] = [
        store.lines,
        store.count,
        store.clients,
        lambda: store.lines(Wanted(words="a", sample="M-FAWN")),
        lambda: store.open("J-7"),
        lambda: store.open("DEMO-1"),
        lambda: store.save(whole_job(), version=2),
        lambda: store.save(job("new")),
        lambda: store.erase_jobs_of("Ada Example"),
        store.take_backup,
    ]
    for step in steps:
        check_opened_or_refused(step)


@lesser(30)
@given(st.integers(0, 2**32))
def test_a_database_with_turned_bytes_is_used_or_refused(
    tmp_path_factory: pytest.TempPathFactory, seed: int
) -> None:
    path = tmp_path_factory.mktemp("shop") / "jobs.sqlite"
    path.write_bytes(mutated(DATABASE, seed))

    def use() -> None:
        with JobStore(path) as store:
            use_all(store)

    check_opened_or_refused(use)


COLUMNS = [
    "number",
    "title",
    "client",
    "client_key",
    "status",
    "created",
    "changed",
    "search",
    "picture",
    "version",
    "document",
]
CELLS = (
    st.integers(-(2**63), 2**63 - 1)
    | st.floats(allow_nan=False)
    | st.binary(max_size=20)
    | st.text(st.characters(exclude_categories=["Cs"]), max_size=20)
)


@lesser(25)
@given(column=st.sampled_from(COLUMNS), cell=CELLS)
def test_a_database_with_anything_in_any_cell_is_used_or_refused(
    tmp_path_factory: pytest.TempPathFactory, column: str, cell: object
) -> None:
    path = tmp_path_factory.mktemp("shop") / "jobs.sqlite"
    path.write_bytes(DATABASE)
    with closing(sqlite3.connect(path)) as connection, suppress(sqlite3.IntegrityError), connection:
        connection.execute(f"UPDATE jobs SET {column} = ? WHERE number = 'J-7'", (cell,))  # noqa: S608

    def use() -> None:
        with JobStore(path) as store:
            use_all(store)
            assert store.open("DEMO-1").job.number == "DEMO-1"

    check_opened_or_refused(use)


@lesser(40)
@given(st.binary(max_size=500))
def test_any_bytes_as_a_log_can_be_reported(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "framing-palette.log").write_bytes(content)
    assert isinstance(log_tail(tmp_path), str)
