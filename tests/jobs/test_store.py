"""The shop's jobs, in a file and on a PostgreSQL server alike."""

import os
import sqlite3
import stat
import threading
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from framing_palette.errors import (
    FramingPaletteError,
    JobChangedElsewhereError,
    JobNumberTakenError,
    JobStoreError,
    UnknownJobError,
)
from framing_palette.jobs import Client, Job, PictureFile, Status
from framing_palette.jobs.job_files import digest
from framing_palette.jobs.job_lines import Wanted, key_of_client, samples_used
from framing_palette.jobs.store import JobStore
from tests.jobs.test_documents import whole_job

PHOTOGRAPH = bytes(range(256)) * 8
DAY = timedelta(days=1)
START = datetime(2026, 3, 1, 9, 30, tzinfo=UTC)


def job(number: str, client: str = "Ada Example", day: int = 0, **values: object) -> Job:
    at = START + day * DAY
    made = Job(number, f"Title of {number}", created=at, changed=at, client=Client(client))
    return replace(made, **values)


def numbers(store: JobStore, **wanted: object) -> list[str]:
    return [line.number for line in store.lines(Wanted(**wanted))]


def test_a_whole_job_comes_back_to_the_last_digit(store: JobStore) -> None:
    assert store.save(whole_job()) == 1
    found = store.open("J-7")
    assert (found.job, found.version) == (whole_job(), 1)


def test_the_program_opened_again_finds_the_same_job(address: str, tmp_path: Path) -> None:
    for expected in (1, 2):
        with JobStore(address, photographs=tmp_path) as store:
            assert store.save(whole_job(), version=expected - 1) == expected
    with JobStore(address, photographs=tmp_path) as store:
        assert store.open("J-7").version == 2


def test_a_save_on_an_older_version_overwrites_nothing_and_tells_both(store: JobStore) -> None:
    store.save(job("1"))
    mine, theirs = job("1", note="mine"), job("1", note="theirs")
    store.save(theirs, version=1)
    with pytest.raises(JobChangedElsewhereError, match="version 1, it is now 2") as told:
        store.save(mine, version=1)
    assert (told.value.seen, told.value.found) == (1, 2)
    assert (told.value.mine, told.value.theirs) == (mine, theirs)
    assert store.open("1").job == theirs


def test_a_save_that_came_through_unheard_can_be_repeated(store: JobStore) -> None:
    store.save(job("1"))
    assert store.save(job("1", note="x"), version=1) == 2
    assert store.save(job("1", note="x"), version=1) == 2


def test_a_second_new_job_of_the_same_number_is_refused(store: JobStore) -> None:
    store.save(job("1", note="first"))
    with pytest.raises(JobNumberTakenError, match="another job 1"):
        store.save(job("1", note="second"))
    assert store.open("1").job.note == "first"


def test_a_job_that_is_not_there_is_named(store: JobStore) -> None:
    with pytest.raises(UnknownJobError, match="no job 9"):
        store.open("9")
    with pytest.raises(UnknownJobError, match="no job 9"):
        store.save(job("9"), version=4)


def test_the_list_shows_the_job_changed_last_first(store: JobStore) -> None:
    for number, day in (("a", 1), ("b", 3), ("c", 2)):
        store.save(job(number, day=day))
    assert numbers(store) == ["b", "c", "a"]
    assert [line.number for line in store.lines(limit=2)] == ["b", "c"]
    line = store.lines(limit=1)[0]
    assert (line.title, line.client, line.status) == ("Title of b", "Ada Example", Status.OPEN)
    assert (line.created, line.version) == (START + 3 * DAY, 1)


def test_jobs_are_found_by_client_status_date_and_sample(store: JobStore) -> None:
    store.save(job("a", "Ada Example", 0, kept=("MAT-1",)))
    store.save(job("b", "Élise Probe", 1, status=Status.READY, kept=("MAT-1", "MAT-2")))
    store.save(whole_job())
    assert numbers(store, client="éLISE") == ["b"]
    assert numbers(store, status=Status.READY) == ["b"]
    assert numbers(store, begun_from=START + DAY, begun_before=START + 2 * DAY) == ["b"]
    assert numbers(store, begun_before=START + DAY) == ["a"]
    assert numbers(store, sample="MAT-1") == ["b", "a"]
    assert numbers(store, sample="MAT") == []
    assert numbers(store, sample="MAT-1", client="ada") == ["a"]
    assert numbers(store, words="harbour ada") == ["J-7"]
    assert store.count(Wanted(sample="MAT-1")) == 2
    assert store.count() == 3


def test_a_time_in_another_zone_is_the_same_moment(store: JobStore) -> None:
    store.save(whole_job())  # begun at noon, two hours east
    moment = whole_job().created.astimezone(UTC)
    assert numbers(store, begun_from=moment) == ["J-7"]
    assert numbers(store, begun_before=moment) == []


@pytest.mark.parametrize("sign", ["%", "_", "\\", "'", '"', ";--"])
def test_signs_that_mean_something_to_a_database_are_looked_for_as_they_are(
    store: JobStore, sign: str
) -> None:
    store.save(job("with", f"Ada {sign} Example"))
    store.save(job("without", "Ada Example"))
    assert numbers(store, client=sign) == numbers(store, words=sign) == ["with"]


def test_a_sample_that_a_job_no_longer_uses_no_longer_finds_it(store: JobStore) -> None:
    store.save(job("1", kept=("A", "B")))
    store.save(job("1", kept=("B", "C")), version=1)
    assert [numbers(store, sample=code) for code in "ABC"] == [[], ["1"], ["1"]]


def test_samples_of_designs_count_as_used() -> None:
    made = whole_job()
    option = made.options[0]
    layers = tuple(replace(layer, code="MAT-9") for layer in option.design.layers)
    assert option.design.moulding is not None
    moulding = replace(option.design.moulding, code="OAK-1")
    design = replace(option.design, layers=layers, moulding=moulding)
    used = samples_used(replace(made, options=(replace(option, design=design),), kept=("K", "")))
    assert used == {"MAT-9", "OAK-1", "K"}


def test_clients_are_one_whatever_the_case_and_spacing(store: JobStore) -> None:
    for number, name in (("1", "Ada  Example"), ("2", "ADA example"), ("3", "Bo Probe"), ("4", "")):
        store.save(job(number, name))
    assert [(client.name.casefold().split(), client.jobs) for client in store.clients()] == [
        (["ada", "example"], 2),
        (["bo", "probe"], 1),
    ]
    assert store.numbers_of_client(" ada EXAMPLE ") == ("1", "2")
    assert key_of_client("  A\t b ") == "a b"


def test_a_photograph_is_kept_once_and_comes_back_byte_for_byte(store: JobStore) -> None:
    named = PictureFile("a.jpg", digest(PHOTOGRAPH))
    for number in "12":
        store.save(job(number, picture=named), picture=PHOTOGRAPH)
    assert store.packed(store.open("1").job).picture == PHOTOGRAPH
    assert store.packed(job("3")).picture is None
    kept = [path for path in store.photographs.folder.rglob("*") if path.is_file()]
    assert [path.name for path in kept] == [named.sha256]
    if os.name != "nt":
        assert stat.S_IMODE(kept[0].stat().st_mode) == 0o600
        assert stat.S_IMODE(kept[0].parent.stat().st_mode) == 0o700


def test_a_missing_or_damaged_photograph_is_told_and_kept_anew(store: JobStore) -> None:
    made = job("1", picture=PictureFile("a.jpg", digest(PHOTOGRAPH)))
    with pytest.raises(JobStoreError, match="missing from the photographs"):
        store.packed(made)
    store.save(made, picture=PHOTOGRAPH)
    place = next(path for path in store.photographs.folder.rglob("*") if path.is_file())
    place.write_bytes(b"x" * len(PHOTOGRAPH))
    with pytest.raises(JobStoreError, match="is damaged"):
        store.packed(made)
    store.save(made, version=1, picture=PHOTOGRAPH)
    assert store.packed(made).picture == PHOTOGRAPH


def test_a_digest_that_is_a_path_reads_nothing(store: JobStore, tmp_path: Path) -> None:
    (tmp_path / "secret").write_bytes(b"secret")
    for name in ("../secret", str(tmp_path / "secret"), "", "AB" * 32):
        with pytest.raises(JobStoreError, match="no SHA-256"):
            store.packed(job("1", picture=PictureFile("a.jpg", name)))


def test_two_counters_that_add_the_same_number_at_once_get_one_job(
    address: str, tmp_path: Path
) -> None:
    stores = [JobStore(address, photographs=tmp_path) for _ in range(4)]
    together = threading.Barrier(4)
    ended = run_at_once(
        [lambda store=store: (together.wait(), store.save(job("1")))[1] for store in stores]
    )
    for store in stores:
        store.close()
    assert sorted(map(str, ended)).count("1") == 1
    assert sum(isinstance(end, JobNumberTakenError) for end in ended) == 3


def test_two_counters_that_open_a_new_database_at_once_both_can(
    address: str, tmp_path: Path
) -> None:
    together = threading.Barrier(3)

    def open_and_save(number: str) -> int:
        together.wait()
        with JobStore(address, photographs=tmp_path) as store:
            return store.save(job(number))

    ended = run_at_once([lambda number=number: open_and_save(number) for number in "abc"])
    assert ended == [1, 1, 1]


def test_many_counters_open_many_new_files_at_once(tmp_path: Path) -> None:
    together = threading.Barrier(6)

    def open_new(turn: int) -> int:
        together.wait()
        with JobStore(tmp_path / str(turn) / "jobs.sqlite", photographs=tmp_path) as store:
            return store.count()

    for turn in range(30):  # one in ten of such openings failed once
        ended = run_at_once([lambda turn=turn: open_new(turn)] * 6)
        assert ended == [0] * 6


def test_no_change_is_lost_between_counters_that_look_again_and_repeat(
    address: str, tmp_path: Path
) -> None:
    with JobStore(address, photographs=tmp_path) as store:
        store.save(job("1"))

    def write_notes(hand: str) -> int:
        refused = 0
        with JobStore(address, photographs=tmp_path) as store:
            for number in range(40):
                while True:
                    found = store.open("1")
                    note = f"{found.job.note} {hand}{number}"
                    try:
                        store.save(replace(found.job, note=note), version=found.version)
                        break
                    except JobChangedElsewhereError:
                        refused += 1
        return refused

    ended = run_at_once([lambda hand=hand: write_notes(hand) for hand in "xy"])
    assert all(isinstance(end, int) for end in ended), ended
    with JobStore(address, photographs=tmp_path) as store:
        found = store.open("1")
    assert found.version == 81
    assert sorted(found.job.note.split()) == sorted(f"{h}{n}" for h in "xy" for n in range(40))


def run_at_once(works: list[Callable[[], object]]) -> list[object]:
    ended: list[object] = [None] * len(works)

    def run(place: int) -> None:
        try:
            ended[place] = works[place]()
        except FramingPaletteError as error:
            ended[place] = error

    threads = [threading.Thread(target=run, args=(place,)) for place in range(len(works))]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return ended


def test_a_job_with_an_unreadable_document_is_told_by_its_number(tmp_path: Path) -> None:
    with JobStore(tmp_path / "j.sqlite") as store:
        store.save(job("1"))
        store.save(job("2"))
        with closing(sqlite3.connect(tmp_path / "j.sqlite")) as connection, connection:
            connection.execute("UPDATE jobs SET document = '{' WHERE number = '1'")
        with pytest.raises(FramingPaletteError, match="job 1 is not a whole job"):
            store.open("1")
        assert store.open("2").job == job("2")


@pytest.mark.skipif(os.name == "nt", reason="Windows has no owner bits")
def test_the_file_and_what_lies_beside_it_are_readable_by_the_owner_alone(tmp_path: Path) -> None:
    folder = tmp_path / "shop"
    with JobStore(folder / "jobs.sqlite") as store:
        store.save(job("1"))
        beside = list(folder.iterdir())
        assert len(beside) == 3
        assert {stat.S_IMODE(path.stat().st_mode) for path in beside} == {0o600}
    (folder / "jobs.sqlite").chmod(0o644)
    with JobStore(folder / "jobs.sqlite"):
        assert stat.S_IMODE((folder / "jobs.sqlite").stat().st_mode) == 0o600


def test_each_connection_to_a_file_is_durable_and_keeps_its_foreign_keys(tmp_path: Path) -> None:
    with JobStore(tmp_path / "j.sqlite") as store, store._reading() as connection:
        asked = ("synchronous", "foreign_keys", "journal_mode", "secure_delete")
        found = [connection.exec_driver_sql(f"PRAGMA {name}").scalar() for name in asked]
    assert found == [2, 1, "wal", 1]  # 2 is FULL


def test_without_an_address_the_jobs_lie_in_the_platforms_data_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    import platformdirs

    monkeypatch.setattr(platformdirs, "user_data_path", lambda *_, **__: tmp_path / "data")
    with JobStore() as store:
        assert store.path == tmp_path / "data" / "jobs.sqlite"
        assert store.path.exists()


@pytest.mark.parametrize("address", ["nonsense://", "postgresql+nodriver://x", "::://"])
def test_an_address_that_is_none_is_told_in_a_sentence(address: str) -> None:
    with pytest.raises(JobStoreError, match="is no address"):
        JobStore(address)


def test_a_server_that_does_not_answer_is_told_without_its_password(tmp_path: Path) -> None:
    pytest.importorskip("psycopg")
    address = f"postgresql+psycopg://shop:topsecret@/shop?host={tmp_path}"
    with pytest.raises(JobStoreError, match="cannot be used") as told:
        JobStore(address, photographs=tmp_path)
    assert "topsecret" not in str(told.value)


def test_an_address_of_sqlite_names_its_file(tmp_path: Path) -> None:
    with JobStore(f"sqlite:///{tmp_path}/odd name.sqlite") as store:
        assert store.path == tmp_path / "odd name.sqlite"
        assert store.path.exists()


NAMES = st.text(st.characters(exclude_categories=()), min_size=0, max_size=12)


@settings(
    suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None, max_examples=40
)
@given(client=NAMES, title=NAMES, picture=NAMES)
def test_any_name_that_can_be_typed_is_saved_and_found(
    store: JobStore, client: str, title: str, picture: str
) -> None:
    made = job("1", client, title=title, picture=PictureFile(picture, "ab" * 32))
    try:
        version = store.open("1").version
    except UnknownJobError:
        version = 0
    store.save(made, version=version)
    found = store.open("1").job
    as_text = client.encode("utf-8", "replace").decode()
    assert found.client.name == as_text
    assert [line.number for line in store.lines()] == ["1"]
    if as_text.strip() and "\0" not in as_text:
        assert numbers(store, client=as_text) == ["1"]


def test_a_database_that_holds_what_cannot_be_listed_says_what_to_do(tmp_path: Path) -> None:
    with JobStore(tmp_path / "j.sqlite") as store:
        store.save(job("1"))
        with closing(sqlite3.connect(tmp_path / "j.sqlite")) as connection, connection:
            connection.execute("UPDATE jobs SET status = 'lost', version = 'x'")
        with pytest.raises(JobStoreError, match="in a line of its list: restore a backup"):
            store.lines()
        with pytest.raises(JobStoreError, match="in job 1: restore a backup"):
            store.open("1")
