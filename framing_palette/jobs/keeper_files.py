"""The keeper: one counter's way to the shop's jobs, whatever the state of disk and network.

What it is given is in the shop's jobs when it returns, or safe on this computer with the reason
why, or refused with the reason why. Nothing of another counter is overwritten.
"""

from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from threading import RLock

from framing_palette.errors import (
    FramingPaletteError,
    JobChangedElsewhereError,
    JobNumberTakenError,
    JobStoreError,
    OutputError,
    UnknownJobError,
)
from framing_palette.jobs.fates import Fate, FoldedIn, Kept
from framing_palette.jobs.job_files import PackedJob, read_job_file
from framing_palette.jobs.job_lines import StoredJob, key_of_client
from framing_palette.jobs.jobs import Job
from framing_palette.jobs.keeping_files import (
    keep_unsent,
    let_go,
    save_merged,
    unsent,
    unsent_base,
)
from framing_palette.jobs.merging import merged
from framing_palette.jobs.numbers import next_number
from framing_palette.jobs.personal_files import Erased, erase_client
from framing_palette.jobs.photograph_files import Photographs
from framing_palette.jobs.place_files import ShopPlace
from framing_palette.jobs.restoring_files import Restored, restore
from framing_palette.jobs.store import NEW, JobStore


class Keeper:
    """Keeps jobs; any thread may use it."""

    def __init__(self, place: ShopPlace) -> None:
        self.place = place
        self._store: JobStore | None = None
        self._lock = RLock()
        self.writing = RLock()  # nothing is written while a backup is put back
        self._kept_here: dict[str, Job] = {}  # by this program, not by another at this computer

    def store(self) -> JobStore:
        """Return the shop's jobs, opened and checked the first time.

        Raises
        ------
        JobStoreDamagedError
            When the file is damaged; it names the newest whole backup.
        JobStoreError
            When it cannot be opened.
        """
        with self._lock:
            if self._store is None:
                self._store = JobStore(self.place.address, photographs=self.place.photographs)
            return self._store

    def close(self) -> None:
        """Let go of the shop's jobs; they are opened again when they are needed."""
        with self._lock:
            if self._store is not None:
                self._store.close()
            self._store = None

    def keep(self, base: StoredJob, packed: PackedJob) -> Kept:
        """Save a job with what others did to it, or hold it on this computer meanwhile.

        Parameters
        ----------
        base
            As it was opened or last saved; its version is 0 when it never was.
        packed
            As it is to be, with the bytes of its photograph when it has one.

        Raises
        ------
        OutputError
            When it can be saved neither there nor here.
        """
        try:
            with self.writing:
                if self.place.is_server:  # a server may take long to be given up
                    self.hold(base, packed)
                saved = self._save(base, packed)
        except JobChangedElsewhereError as error:
            self.hold(base, packed)
            joined = merged(base.job, packed.job, error.theirs)
            theirs = StoredJob(error.theirs, error.found)
            return Kept(Fate.UNDECIDED, base, theirs, joined.undecided, str(error))
        except UnknownJobError as error:
            self._let_go(packed.job.number)
            return Kept(Fate.ERASED, base, why=str(error))
        except (JobStoreError, OutputError) as error:
            self.hold(base, packed)
            return Kept(Fate.HERE, base, why=str(error))
        self._let_go(packed.job.number)
        return Kept(Fate.SAVED, saved)

    def newer(self, base: StoredJob) -> StoredJob | None:
        """Return a job as another counter has saved it since, None when none has.

        Raises
        ------
        UnknownJobError
            When it was erased.
        JobStoreError
            When the jobs cannot be read.
        """
        found = self.store().open(base.job.number)
        return found if found.version > base.version else None

    def opened(self, number: str) -> tuple[StoredJob, PackedJob, str]:
        """Return a job as it is saved, as it lies on this computer, and what is wrong with it.

        A job that waits here is taken as it waits, on what it was made from. A lost photograph is
        said and the job opens without it.

        Raises
        ------
        UnknownJobError
            When there is none.
        JobStoreError, JobFileError
            When it cannot be read.
        """
        waiting = self._waiting(number)
        if waiting is not None:
            base, job = waiting
            self._kept_here[number] = job
            return base, *self._packed(job)
        stored = self.store().open(number)
        return stored, *self._packed(stored.job)

    def looked_up(self, number: str) -> Job:
        """Return a job as it lies on this computer or else as it is saved, to look at.

        Raises
        ------
        UnknownJobError
            When there is none.
        JobStoreError, JobFileError
            When it cannot be read.
        """
        waiting = self._waiting(number)
        return waiting[1] if waiting is not None else self.store().open(number).job

    def fold_in(self, *, leave: str = "") -> FoldedIn:
        """Save what waits on this computer, but the job of a number that is worked on.

        Raises
        ------
        JobStoreError
            When the shop's jobs cannot be reached.
        """
        self.store()
        saved, waiting = list[str](), list[str]()
        for path in unsent(self.place.unsent_folder):
            try:
                packed = read_job_file(path)
            except FramingPaletteError:
                waiting.append(path.stem)
                continue
            number = packed.job.number
            if number == leave:
                continue
            self._kept_here[number] = packed.job
            base = unsent_base(path) or StoredJob(packed.job, NEW)
            with self.writing:
                is_saved = self._fold(base, packed)
            (saved if is_saved else waiting).append(number)
        return FoldedIn(tuple(saved), tuple(waiting))

    def erase_client(self, name: str) -> Erased:
        """Erase every job of one client, here, in the backups and among what waits, for ever.

        Raises
        ------
        JobStoreError
            When the jobs cannot be written; then nothing is erased.
        """
        with self.writing:
            for path in unsent(self.place.unsent_folder):
                with suppress(FramingPaletteError):
                    job = read_job_file(path).job
                    if key_of_client(job.client.name) == key_of_client(name):
                        self._kept_here[job.number] = job
                        self._let_go(job.number)
            return erase_client(self.store(), name, unsent_folder=self.place.unsent_folder)

    def restore(self, backup: Path | None, *, bring_over: bool) -> Restored:
        """Put a backup in the place of the shop's jobs, which are closed for it.

        Raises
        ------
        JobStoreError, OutputError
            When it cannot be done; what was there is still there.
        """
        path = self.place.file
        if path is None:
            raise JobStoreError(
                self.place.shown,
                problem="is a server",
                todo="have its keeper restore it by its own means",
            )
        with self.writing, self._lock:
            self.close()
            return restore(path, backup, bring_over=bring_over)

    def _save(self, base: StoredJob, packed: PackedJob) -> StoredJob:
        store, job = self.store(), packed.job
        picture = packed.picture if self._is_new_picture(base, job) else None
        while True:
            try:
                return save_merged(store, base, job, picture=picture)
            except JobNumberTakenError:
                found = store.open(job.number)
                if found.job == job:  # it came through although nobody was told so
                    return found
                job = replace(job, number=next_number(job.number))
                base = StoredJob(job, NEW)

    def _fold(self, base: StoredJob, packed: PackedJob) -> bool:
        with suppress(UnknownJobError):  # erased: it goes here too
            try:
                self._save(base, packed)
            except (JobChangedElsewhereError, JobStoreError, OutputError):
                return False
        self._let_go(packed.job.number)
        return True

    def hold(self, base: StoredJob, packed: PackedJob) -> None:
        """Keep a job on this computer, its photograph among the photographs if that can be.

        Raises
        ------
        OutputError
            When it cannot be written.
        """
        if self._kept_here.get(packed.job.number) == packed.job:
            return
        light = packed
        if packed.picture is not None:
            with suppress(FramingPaletteError):
                Photographs(self.place.photographs_folder).keep(packed.picture)
                light = PackedJob(packed.job)
        known = base if base.version > NEW else None
        keep_unsent(light, self.place.unsent_folder, base=known)
        self._kept_here[packed.job.number] = packed.job

    def _let_go(self, number: str) -> None:
        if self._kept_here.pop(number, None) is not None:
            let_go(number, self.place.unsent_folder)

    def _waiting(self, number: str) -> tuple[StoredJob, Job] | None:
        for path in unsent(self.place.unsent_folder):
            with suppress(FramingPaletteError):
                job = read_job_file(path).job
                if job.number == number:
                    return unsent_base(path) or StoredJob(job, NEW), job
        return None

    def _packed(self, job: Job) -> tuple[PackedJob, str]:
        if job.picture is None:
            return PackedJob(job), ""
        try:
            content = Photographs(self.place.photographs_folder).content(job.picture.sha256)
        except JobStoreError as error:
            return PackedJob(job), str(error)
        return PackedJob(job, content), ""

    @staticmethod
    def _is_new_picture(base: StoredJob, job: Job) -> bool:
        return base.version <= NEW or base.job.picture != job.picture
