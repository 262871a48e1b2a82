"""A new season's catalogue against all open jobs: the same lines, whoever does the work.

That processes give them too is checked where they are measured, in tests/benchmarks.
"""

import shutil
import warnings
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from framing_palette.catalogue import Kind, read_catalogue_folder
from framing_palette.errors import CatalogueError
from framing_palette.jobs import Job, Status, read_job_file
from framing_palette.jobs.season_files import rerank_open_jobs
from framing_palette.jobs.store import JobStore
from framing_palette.ranking import Verdict

ROOT = Path(__file__).resolve().parents[2]
PACKED = read_job_file(ROOT / "tests" / "files" / "job_1" / "demo.framejob")
SMALL = 120


def lines_of(path: Path) -> list[str]:
    return path.read_text(encoding="utf-8").splitlines(keepends=True)


@pytest.fixture(scope="module")
def season(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A catalogue of every third sample of the shipped one."""
    folder = tmp_path_factory.mktemp("season") / "rack"
    folder.mkdir()
    head, *rows = lines_of(ROOT / "catalog" / "samples.csv")
    (folder / "samples.csv").write_text(head + "".join(rows[::3]), encoding="utf-8")
    shutil.copy(ROOT / "catalog" / "colours.csv", folder)
    return folder


@pytest.fixture(scope="module")
def store(tmp_path_factory: pytest.TempPathFactory) -> Iterator[JobStore]:
    with JobStore(tmp_path_factory.mktemp("shop") / "jobs.sqlite") as made:
        for number, status in (("1", Status.OPEN), ("2", Status.PROPOSED), ("3", Status.AGREED)):
            made.save(job(number, status), picture=PACKED.picture)
        made.save(replace(job("4", Status.OPEN), picture=None))
        yield made


def job(number: str, status: Status) -> Job:
    return replace(PACKED.job, number=number, status=status)


def test_every_undecided_job_gets_its_line_and_a_bad_one_its_problem(
    store: JobStore, season: Path
) -> None:
    steps: list[tuple[int, int]] = []
    catalogue = read_catalogue_folder(season)[0]
    old = frozenset(sample.code for sample in catalogue.samples[:SMALL])
    found = rerank_open_jobs(
        store, season, top=3, before=old, backend="threading", jobs=1,
        tell=lambda done, of: steps.append((done, of)),
    )  # fmt: skip
    assert [line.number for line in found] == ["1", "2", "4"]
    assert steps == [(1, 3), (2, 3), (3, 3)]
    assert "holds no photograph" in found[2].problem
    first = found[0]
    assert not first.problem
    kinds = [sample.kind for sample in first.best]
    assert set(kinds) == {Kind.WRAPPED_FILLET, Kind.MAT, Kind.MOULDING}
    assert all(kinds.count(kind) == 3 for kind in set(kinds))
    for sample in first.best:
        assert sample.code in catalogue
        assert sample.is_new == (sample.code not in old)
    for kind in set(kinds):
        scores = [sample.score for sample in first.best if sample.kind is kind]
        assert scores == sorted(scores, reverse=True)


def test_what_the_job_used_is_gone_or_still_there(store: JobStore, season: Path) -> None:
    from framing_palette.jobs.job_lines import samples_used

    codes = {line.split(",")[0] for line in lines_of(season / "samples.csv")[1:]}
    (line,) = rerank_open_jobs(store, season, statuses={Status.AGREED}, backend="threading", jobs=1)
    assert set(line.gone) == samples_used(PACKED.job) - codes
    assert line.gone
    assert set(line.clashing) <= codes


def test_a_sample_that_clashes_now_is_told(store: JobStore, tmp_path: Path) -> None:
    """The same codes in a new catalogue, each turned into a glaring green."""
    folder = tmp_path / "rack"
    folder.mkdir()
    shutil.copy(ROOT / "catalog" / "samples.csv", folder)
    codes = [line.split(",")[0] for line in lines_of(ROOT / "catalog" / "samples.csv")[1:]]
    rows = "".join(f"{code},1,88,-80,80\n" for code in codes)
    (folder / "colours.csv").write_text(f"code,share,L,a,b\n{rows}")
    found = rerank_open_jobs(store, folder, backend="threading", jobs=1)
    assert found[0].gone == ()
    assert len(found[0].clashing) >= 3
    assert {sample.verdict for sample in found[0].best} == {Verdict.CLASH}


def test_a_cluster_gives_the_same_lines(store: JobStore, season: Path) -> None:
    distributed = pytest.importorskip("distributed")
    plain = rerank_open_jobs(store, season, backend="threading", jobs=1)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # the cluster warns about ports and the machine's memory
        with (
            distributed.LocalCluster(
                n_workers=1, threads_per_worker=2, processes=False, dashboard_address=None
            ) as cluster,
            distributed.Client(cluster),
        ):
            assert rerank_open_jobs(store, season, backend="dask") == plain


def test_a_catalogue_that_cannot_be_used_is_refused_once_and_no_job_is_asked_for(
    store: JobStore, tmp_path: Path
) -> None:
    with pytest.raises(CatalogueError, match="is not there"):
        rerank_open_jobs(store, tmp_path / "none")


def test_without_a_job_to_look_at_there_is_no_line(season: Path, tmp_path: Path) -> None:
    with JobStore(tmp_path / "jobs.sqlite") as empty:
        assert rerank_open_jobs(empty, season) == ()


def test_a_job_whose_document_is_unreadable_gives_its_problem(
    season: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from framing_palette.errors import JobFileError

    with JobStore(tmp_path / "jobs.sqlite") as shop:
        shop.save(job("1", Status.OPEN), picture=PACKED.picture)

        def broken(number: str) -> None:
            raise JobFileError(f"job {number}", problem="is not a whole job", todo="open a backup")

        monkeypatch.setattr(shop, "open", broken)
        (line,) = rerank_open_jobs(shop, season, backend="threading", jobs=1)
    assert line.problem == "job 1 is not a whole job: open a backup."
