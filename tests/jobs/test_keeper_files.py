"""One counter's way to the shop's jobs: saved, safe here, or refused, and never lost."""

import zipfile
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from framing_palette.errors import JobStoreDamagedError, JobStoreError, OutputError
from framing_palette.jobs import (
    Client,
    DeskState,
    Measurement,
    PackedJob,
    PictureFile,
    Status,
    StoredJob,
)
from framing_palette.jobs.backup_files import take_backup
from framing_palette.jobs.book_files import backups, bring_in, copy_job, report_problem
from framing_palette.jobs.fates import Fate
from framing_palette.jobs.job_files import digest
from framing_palette.jobs.job_lines import Wanted
from framing_palette.jobs.keeper_files import Keeper
from framing_palette.jobs.keeping_files import keep_unsent, unsent
from framing_palette.jobs.numbers import new_number, next_number
from framing_palette.jobs.place_files import ShopPlace
from framing_palette.jobs.store import NEW
from framing_palette.units import Length
from tests.jobs.test_store import DAY, PHOTOGRAPH, START, job

NAMED = PictureFile("boat.jpg", digest(PHOTOGRAPH))


def new(number: str, **values: object) -> tuple[StoredJob, PackedJob]:
    made = replace(job(number), **values)
    return StoredJob(made, NEW), PackedJob(made)


@pytest.fixture
def place(address: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> ShopPlace:
    """A file or a server, with this computer's own folder in a place of the test."""
    import platformdirs

    monkeypatch.setattr(platformdirs, "user_data_path", lambda *_, **__: tmp_path / "own")
    return ShopPlace(address, tmp_path / "photographs")


@pytest.fixture
def keeper(place: ShopPlace) -> Keeper:
    return Keeper(place)


def test_a_job_with_its_photograph_is_saved_and_opens_with_it(keeper: Keeper) -> None:
    made = job("1", picture=NAMED)
    kept = keeper.keep(StoredJob(made, NEW), PackedJob(made, PHOTOGRAPH))
    assert (kept.fate, kept.base) == (Fate.SAVED, StoredJob(made, 1))
    assert keeper.opened("1") == (StoredJob(made, 1), PackedJob(made, PHOTOGRAPH), "")
    assert unsent(keeper.place.unsent_folder) == ()
    keeper.close()


def test_a_lost_photograph_is_said_and_the_job_opens_without_it(keeper: Keeper) -> None:
    made = job("1", picture=NAMED)
    keeper.keep(StoredJob(made, NEW), PackedJob(made, PHOTOGRAPH))
    for photograph in keeper.place.photographs_folder.rglob("*"):
        if photograph.is_file():
            photograph.unlink()
    _stored, packed, fault = keeper.opened("1")
    assert packed == PackedJob(made)
    assert "is missing from the photographs" in fault
    keeper.close()


def test_two_counters_see_what_the_other_did_and_both_changes_stay(
    keeper: Keeper, place: ShopPlace
) -> None:
    other = Keeper(place)
    base = keeper.keep(*new("1")).base
    assert other.newer(base) is None
    theirs = other.keep(base, PackedJob(replace(base.job, title="Theirs"))).base
    assert keeper.newer(base) == theirs
    kept = keeper.keep(base, PackedJob(replace(base.job, note="mine")))
    assert kept.fate is Fate.SAVED
    assert (kept.base.job.title, kept.base.job.note) == ("Theirs", "mine")
    other.close()
    keeper.close()


def test_what_both_changed_waits_here_until_somebody_decides(
    keeper: Keeper, place: ShopPlace
) -> None:
    other = Keeper(place)
    base = keeper.keep(*new("1")).base
    theirs = other.keep(base, PackedJob(replace(base.job, note="theirs"))).base
    mine = replace(base.job, note="mine")
    kept = keeper.keep(base, PackedJob(mine))
    assert (kept.fate, kept.base, kept.theirs) == (Fate.UNDECIDED, base, theirs)
    assert kept.undecided == ("note",)
    keeper.close()
    again = Keeper(place)
    assert again.fold_in().waiting == ("1",)
    assert again.opened("1") == (base, PackedJob(mine), "")
    decided = again.keep(theirs, PackedJob(mine))
    assert decided.fate is Fate.SAVED
    assert other.store().open("1").job.note == "mine"
    assert again.fold_in().waiting == ()
    for one in (other, again):
        one.close()


def test_a_job_erased_at_the_other_counter_does_not_come_back_from_here(
    keeper: Keeper, place: ShopPlace
) -> None:
    base = keeper.keep(*new("1")).base
    keeper.store().erase_jobs_of("Ada Example")
    kept = keeper.keep(base, PackedJob(replace(base.job, note="mine")))
    assert kept.fate is Fate.ERASED
    keep_unsent(PackedJob(replace(base.job, note="x")), place.unsent_folder, base=base)
    assert keeper.fold_in().saved == ("1",)
    assert keeper.store().count() == 0
    assert unsent(place.unsent_folder) == ()
    keeper.close()


def test_a_new_job_whose_number_was_taken_gets_the_next(keeper: Keeper, place: ShopPlace) -> None:
    other = Keeper(place)
    other.keep(*new("7", note="theirs"))
    first = keeper.keep(*new("7", note="mine")).base
    second = keeper.keep(*new("7", note="mine too")).base
    assert (first.job.number, second.job.number) == ("7.2", "7.3")
    assert keeper.store().open("7").job.note == "theirs"
    other.close()
    keeper.close()


def test_a_save_of_a_new_job_that_came_through_unheard_makes_no_second_one(
    keeper: Keeper,
) -> None:
    for _ in range(2):
        assert keeper.keep(*new("7")).base.version == 1
    assert keeper.store().count() == 1
    keeper.close()


def test_a_job_from_a_file_comes_in_once_and_never_over_another(keeper: Keeper) -> None:
    made = job("7", picture=NAMED)
    packed = PackedJob(made, PHOTOGRAPH)
    for _ in range(2):
        assert bring_in(keeper, packed) == (StoredJob(made, 1), "")
    other = replace(made, note="another")
    for _ in range(2):
        stored, _said = bring_in(keeper, PackedJob(other, PHOTOGRAPH))
        assert stored == StoredJob(replace(other, number="7.2"), 1)
    _stored, said = bring_in(keeper, PackedJob(replace(made, note="a third")))
    assert said.endswith("so this one came in as 7.3.")
    assert keeper.store().count() == 3
    keeper.close()


def test_a_copy_is_open_and_unmeasured_and_says_where_it_is_from(keeper: Keeper) -> None:
    size = Length.mm_of(300), Length.mm_of(200)
    reading = Measurement(*size, "AE", START)
    made = job("1", status=Status.PROPOSED, measurements=(reading,), art_size=size, picture=NAMED)
    keeper.keep(StoredJob(made, NEW), PackedJob(made, PHOTOGRAPH))
    at = datetime(2026, 4, 1, 9, 0, tzinfo=UTC)
    copied = copy_job(keeper, "1", "1", at)
    assert copied.job.number == "1.2"
    assert (copied.job.status, copied.job.measurements) == (Status.OPEN, ())
    assert [event.words for event in copied.job.history] == ["Copied from job 1."]
    assert copied.job.art_size == size
    assert keeper.opened("1.2")[1].picture == PHOTOGRAPH
    keeper.close()


def test_a_sample_on_a_kept_design_is_found(keeper: Keeper) -> None:
    from framing_palette.jobs import OnRail

    keeper.keep(*new("1", desk=DeskState(rail=(OnRail(("M-1", "R-1")),))))
    assert [line.number for line in keeper.store().lines(Wanted(sample="R-1"))] == ["1"]
    keeper.close()


def out_of_reach(tmp_path: Path) -> ShopPlace:
    """A server that is not there, with this computer's folder in a place of the test."""
    return ShopPlace(f"postgresql+psycopg://shop@/postgres?host={tmp_path}", tmp_path / "shared")


def test_while_the_server_is_away_work_is_kept_here_and_folded_in_when_it_is_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, postgresql_address: str
) -> None:
    import platformdirs

    computer = {"folder": tmp_path / "other"}
    monkeypatch.setattr(platformdirs, "user_data_path", lambda *_, **__: computer["folder"])
    there = ShopPlace(postgresql_address, tmp_path / "shared")
    shop = Keeper(there)
    base = shop.keep(*new("old")).base
    computer["folder"] = tmp_path / "own"
    away = Keeper(out_of_reach(tmp_path))
    fresh = job("fresh", picture=NAMED)
    kept = away.keep(StoredJob(fresh, NEW), PackedJob(fresh, PHOTOGRAPH))
    assert kept.fate is Fate.HERE
    assert "shop@/postgres" in kept.why
    older = replace(base.job, note="done while it was away")
    assert away.keep(base, PackedJob(older)).fate is Fate.HERE
    assert away.opened("old") == (base, PackedJob(older), "")
    assert away.opened("fresh")[1].picture == PHOTOGRAPH
    with pytest.raises(JobStoreError):
        away.fold_in()
    computer["folder"] = tmp_path / "other"
    shop.keep(base, PackedJob(replace(base.job, title="Meanwhile")))
    computer["folder"] = tmp_path / "own"
    back = Keeper(there)
    assert back.fold_in(leave="fresh").saved == ("old",)
    assert back.fold_in().saved == ("fresh",)
    found = back.store().open("old").job
    assert (found.title, found.note) == ("Meanwhile", "done while it was away")
    assert back.opened("fresh") == (StoredJob(fresh, 1), PackedJob(fresh, PHOTOGRAPH), "")
    assert unsent(there.unsent_folder) == ()
    shop.store().erase_jobs_of("Ada Example")
    for one in (shop, away, back):
        one.close()


def test_what_can_be_kept_nowhere_is_refused_in_a_sentence(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    keeper = Keeper(ShopPlace(tmp_path / "file" / "jobs.sqlite"))
    with pytest.raises(OutputError, match="cannot be made"):
        keeper.keep(*new("1"))


def test_a_file_that_waits_and_cannot_be_read_waits_on(tmp_path: Path) -> None:
    keeper = Keeper(ShopPlace(tmp_path / "jobs.sqlite"))
    keep_unsent(PackedJob(job("1")), keeper.place.unsent_folder)
    waiting = keeper.place.unsent_folder / "torn.framejob"
    waiting.write_bytes(b"PK")
    folded = keeper.fold_in()
    assert (folded.saved, folded.waiting) == (("1",), ("torn",))
    assert waiting.exists()
    keeper.close()


def test_a_damaged_file_takes_no_job_until_a_backup_is_back_and_then_all_are_there(
    tmp_path: Path,
) -> None:
    keeper = Keeper(ShopPlace(tmp_path / "jobs.sqlite"))
    keeper.keep(*new("1"))
    backup = keeper.store().take_backup()
    keeper.close()
    (tmp_path / "jobs.sqlite").write_bytes(b"not a database" * 300)
    with pytest.raises(JobStoreDamagedError):
        keeper.store()
    assert keeper.keep(*new("2")).fate is Fate.HERE
    restored = keeper.restore(backup, bring_over=True)
    assert restored.aside is not None
    assert restored.aside.read_bytes().startswith(b"not a database")
    assert keeper.fold_in().saved == ("2",)
    assert sorted(line.number for line in keeper.store().lines()) == ["1", "2"]
    keeper.close()


def test_a_server_is_not_restored_from_here(tmp_path: Path) -> None:
    with pytest.raises(JobStoreError, match="its keeper"):
        Keeper(out_of_reach(tmp_path)).restore(None, bring_over=True)


def test_numbers_go_on_where_one_is_taken() -> None:
    assert new_number(START) == "260301-093000"
    assert [next_number(number) for number in ("7", "7.2", "a.b")] == ["7.2", "7.3", "a.b.2"]


def test_backups_are_listed_with_their_time_newest_first_and_a_server_has_none(
    tmp_path: Path,
) -> None:
    keeper = Keeper(ShopPlace(tmp_path / "jobs.sqlite"))
    keeper.keep(*new("1"))
    older = take_backup(tmp_path / "jobs.sqlite", START)
    newer = take_backup(tmp_path / "jobs.sqlite", START + DAY)
    assert backups(keeper) == ((newer, START + DAY), (older, START))
    assert backups(Keeper(out_of_reach(tmp_path))) is None
    keeper.close()


def test_what_waits_here_of_a_client_is_erased_with_the_rest(keeper: Keeper) -> None:
    keeper.keep(*new("1"))
    keeper.keep(*new("2", client=Client("Bo Probe")))
    folder = keeper.place.unsent_folder
    keep_unsent(PackedJob(job("3")), folder)
    other = keep_unsent(PackedJob(job("4", "Bo Probe")), folder)
    erased = keeper.erase_client("ada  example")
    assert erased.numbers == ("1",)
    assert unsent(folder) == (other,)
    assert [line.number for line in keeper.store().lines()] == ["2"]
    keeper.store().erase_jobs_of("Bo Probe")
    keeper.close()


def test_a_report_names_no_client_and_no_place_of_the_shop(tmp_path: Path) -> None:
    keeper = Keeper(ShopPlace(tmp_path / "Ada's shop" / "jobs.sqlite"))
    keeper.keep(*new("1"))
    with zipfile.ZipFile(report_problem(keeper, tmp_path / "report.zip")) as archive:
        text = archive.read("health.json").decode()
    assert "1 in " in text
    assert "Ada" not in text
    assert str(tmp_path) not in text
    keeper.close()
