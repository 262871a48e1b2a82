"""A new season's catalogue against all open jobs of a shop or a chain, worked through side by side.

Which workers do it is a setting of joblib: processes of this machine, or a Dask cluster whose
client is open. The machines of a cluster need the catalogue folder and the photographs under the
same names.
"""

from collections.abc import Callable, Collection, Iterator, Sequence
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Final

from framing_palette.catalogue import Catalogue, open_catalogue_folder
from framing_palette.catalogue.column_files import content_key
from framing_palette.errors import FramingPaletteError
from framing_palette.jobs.handing_over_files import picture_of
from framing_palette.jobs.job_files import PackedJob
from framing_palette.jobs.job_lines import Wanted
from framing_palette.jobs.jobs import Job, Status
from framing_palette.jobs.photograph_files import Photographs
from framing_palette.jobs.season import NOBODYS, SeasonLine, season_line
from framing_palette.jobs.store import JobStore

if TYPE_CHECKING:
    from collections.abc import Set as AbstractSet

UNDECIDED: Final = frozenset({Status.OPEN, Status.PROPOSED})


def rerank_open_jobs(
    store: JobStore,
    catalogue_folder: Path,
    *,
    top: int = 5,
    before: Collection[str] = NOBODYS,
    statuses: "AbstractSet[Status]" = UNDECIDED,
    backend: str = "loky",
    jobs: int = -1,
    tell: Callable[[int, int], None] | None = None,
) -> tuple[SeasonLine, ...]:
    """Return what a new catalogue means for every job that is still undecided, by number.

    Nothing is changed in any job. A job that cannot be looked at gives its problem instead.

    Parameters
    ----------
    store
        The shop's or the chain's jobs.
    catalogue_folder
        The new catalogue.
    top
        How many samples of each kind.
    before
        Codes of the old catalogue, to tell what is new.
    statuses
        Which jobs.
    backend, jobs
        joblib's: ``loky`` (processes), ``threading`` or ``dask``; how many at once, -1 for all
        processors.
    tell
        Called with how many are done and how many there are.

    Raises
    ------
    CatalogueError
        When the catalogue cannot be used at all.
    JobStoreError
        When the jobs cannot be read.
    """
    season = _Season(catalogue_folder, content_key(catalogue_folder), top, frozenset(before))
    season.catalogue()  # a catalogue that cannot be used is refused here, once, and not by each job
    numbers = [line.number for status in statuses for line in store.lines(Wanted(status=status))]
    found: list[SeasonLine] = []
    for line in _worked(season, store, sorted(numbers), backend, jobs):
        found.append(line)
        if tell:
            tell(len(found), len(numbers))
    return tuple(sorted(found, key=lambda line: line.number))


class _Season:
    """What every worker needs to know."""

    def __init__(self, folder: Path, key: str, top: int, before: frozenset[str]) -> None:
        self._folder, self._key, self._top, self._before = folder, key, top, before

    def catalogue(self) -> Catalogue:
        """Return the catalogue; each process reads it once."""
        return _read_once(self._folder, self._key)

    def line(self, job: Job, photographs: Photographs) -> SeasonLine:
        """Look at one job."""
        try:
            content = None if job.picture is None else photographs.content(job.picture.sha256)
            picture = picture_of(PackedJob(job, content), f"job {job.number}")
            return season_line(job, picture, self.catalogue(), top=self._top, before=self._before)
        except FramingPaletteError as error:
            return SeasonLine(job.number, problem=str(error))


@lru_cache(maxsize=1)
def _read_once(folder: Path, key: str) -> Catalogue:  # noqa: ARG001 - another content is another key
    return open_catalogue_folder(folder)[0]


def _worked(
    season: _Season, store: JobStore, numbers: Sequence[str], backend: str, jobs: int
) -> Iterator[SeasonLine]:
    """Return lines as they come, in whatever order; jobs are read as workers ask for them."""
    if not numbers:
        return
    from joblib import Parallel, delayed, parallel_config

    unreadable: list[SeasonLine] = []
    # The configuration, unlike Parallel itself, knows where to find the backend of a cluster.
    with parallel_config(backend=backend, n_jobs=jobs):
        workers = Parallel(return_as="generator_unordered")
        tasks = (
            delayed(season.line)(job, store.photographs)
            for job in _opened(store, numbers, unreadable)
        )
        yield from workers(tasks)
    yield from unreadable


def _opened(store: JobStore, numbers: Sequence[str], unreadable: list[SeasonLine]) -> Iterator[Job]:
    for number in numbers:
        try:
            yield store.open(number).job
        except FramingPaletteError as error:
            unreadable.append(SeasonLine(number, problem=str(error)))
