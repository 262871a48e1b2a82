"""The shop's library: every sample with the shop's own edits, in SQLite or PostgreSQL.

Imports happen whole or not at all, and are undone from the latest back. An edit names the
version it was made on, so that two counters never overwrite each other unseen.
"""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any, Self

from sqlalchemy.exc import SQLAlchemyError

from framing_palette.catalogue import library_tables as tables
from framing_palette.catalogue.library_schema import SCHEMA_FORM
from framing_palette.catalogue.merging import (
    Change,
    ImportPlan,
    changes_between,
    digest_of,
    imported_text,
)
from framing_palette.catalogue.records import read_record, record_text, sample_of
from framing_palette.catalogue.samples import Sample
from framing_palette.catalogue.shop_edits import Entry, Marks, ShopEdits
from framing_palette.errors import (
    ImportPlanError,
    LibraryError,
    SampleChangedError,
    UnknownSampleError,
)

if TYPE_CHECKING:
    from sqlalchemy import Connection, Row

CHUNK = 2000
MOST_CHANGES_TOLD = 5000


@dataclass(frozen=True, slots=True)
class ImportNote:
    """One line of the history of imports."""

    number: int
    at: str
    source: str
    summary: str
    is_undone: bool


class Library:
    """An open library; close it, or use it in a ``with`` statement.

    Parameters
    ----------
    address
        A file path for SQLite, or an SQLAlchemy address such as
        ``postgresql+psycopg://user@host/shop``.

    Raises
    ------
    LibraryError
        When it cannot be opened or was made by a newer program.
    """

    def __init__(self, address: str | Path) -> None:
        self._engine, self._shown = tables.open_engine(address)
        with self._translated():
            self._prepare()

    def __enter__(self) -> Self:
        """Return the library itself."""
        return self

    def __exit__(self, *_: object) -> None:
        """Close the library."""
        self.close()

    def close(self) -> None:
        """Let go of the file or the server."""
        self._engine.dispose()

    def preview_import(self, samples: Sequence[Sample], source: str) -> ImportPlan:
        """Return what importing samples would change; the library stays as it is.

        Raises
        ------
        LibraryError
            When the library cannot be read.
        """
        with self._reading() as connection:
            known = {
                code: (digest, bool(edits))
                for code, digest, edits in connection.execute(tables.select_digests())
            }
            new, changed, edited, changes = [], [], [], list[Change]()
            for place, sample in enumerate(samples):
                if sample.code not in known:
                    new.append(place)
                    continue
                text = imported_text(sample)
                digest, has_edits = known.pop(sample.code)
                if digest == digest_of(text):
                    continue
                changed.append(place)
                if has_edits:
                    edited.append(sample.code)
                if len(changes) < MOST_CHANGES_TOLD:
                    before = connection.execute(tables.select_record(sample.code)).scalar_one()
                    changes += changes_between(read_record(before), read_record(text))
            return ImportPlan(
                samples=samples,
                source=source,
                new=tuple(new),
                changed=tuple(changed),
                unchanged=len(samples) - len(new) - len(changed),
                missing=tuple(sorted(known)),
                edited=tuple(edited),
                changes=tuple(changes),
                library_revision=self._revision(connection),
            )

    def apply_import(self, plan: ImportPlan, *, discontinue_missing: bool = False) -> int:
        """Import as planned, whole or not at all, and return the number of the import.

        Parameters
        ----------
        plan
            Made by `preview_import` for the library as it is now.
        discontinue_missing
            Mark the samples that the import no longer has as discontinued.

        Raises
        ------
        ImportPlanError
            When the library has changed since the preview.
        LibraryError
            When it cannot be written; then nothing is changed.
        """
        with self._writing() as connection:
            found = self._revision(connection)
            if found != plan.library_revision:
                raise ImportPlanError(
                    "The library has changed since the preview", todo="preview the import again"
                )
            now = datetime.now(UTC).isoformat(timespec="seconds")
            number = tables.add_import(connection, now, plan.source, plan.summary)
            for places in _chunks(plan.new):
                texts = [imported_text(plan.samples[place]) for place in places]
                codes = [plan.samples[place].code for place in places]
                tables.add_samples(connection, number, places, codes, texts)
            for places in _chunks(plan.changed):
                texts = [imported_text(plan.samples[place]) for place in places]
                codes = [plan.samples[place].code for place in places]
                tables.change_samples(connection, number, codes, texts)
            if discontinue_missing:
                for missing in _chunks(plan.missing):
                    tables.discontinue(connection, number, missing)
            tables.raise_revision(connection)
            return number

    def undo_import(self, number: int) -> None:
        """Put the samples back as they were before an import, keeping the shop's own edits.

        A sample that the import brought goes out of sight; what the shop said of it comes back
        with it when it is imported again.

        Raises
        ------
        ImportPlanError
            When a later import stands, or this one is unknown or undone already.
        """
        with self._writing() as connection:
            latest = tables.latest_import(connection)
            if latest != number:
                todo = f"undo import {latest} first" if latest else "there is nothing to undo"
                raise ImportPlanError(f"Import {number} is not the latest", todo=todo)
            tables.undo(connection, number)
            tables.raise_revision(connection)

    def undo_back_to(self, number: int) -> tuple[Sample, ...]:
        """Undo an import and every later one, latest first, whole or not at all.

        Returns
        -------
        The samples that they had brought or changed, as their makers say, for whoever wants them
        back.

        Raises
        ------
        ImportPlanError
            When the import is unknown or undone already.
        """
        with self._writing() as connection:
            standing = [
                row.number for row in connection.execute(tables.select_imports()) if not row.undone
            ]
            if number not in standing:
                raise ImportPlanError(
                    f"Import {number} does not stand", todo="look at the imports again"
                )
            touched = tables.touched_codes(connection, number)
            entries = [
                connection.execute(tables.select_entry(code)).one_or_none() for code in touched
            ]
            for one in standing[: standing.index(number) + 1]:
                tables.undo(connection, one)
            tables.raise_revision(connection)
        return tuple(_entry(entry).imported for entry in entries if entry is not None)

    def imports(self) -> tuple[ImportNote, ...]:
        """Return the history of imports, latest first."""
        with self._reading() as connection:
            return tuple(ImportNote(*row) for row in connection.execute(tables.select_imports()))

    def entry(self, code: str) -> Entry:
        """Return one sample with the shop's own edits.

        Raises
        ------
        UnknownSampleError
            When there is none.
        """
        with self._reading() as connection:
            row = connection.execute(tables.select_entry(code)).one_or_none()
        if row is None:
            raise UnknownSampleError(code)
        return _entry(row)

    def edit(
        self,
        code: str,
        *,
        revision: int,
        edits: ShopEdits | None = None,
        marks: Marks | None = None,
    ) -> int:
        """Write a shop's own edits or marks of a sample and return its new revision.

        Parameters
        ----------
        code
            Which sample.
        revision
            Of the entry that the edit was made on.
        edits, marks
            Replace the old ones as a whole; None leaves them.

        Raises
        ------
        UnknownSampleError
            When there is no such sample.
        SampleChangedError
            When someone else has changed it since; nothing is written.
        """
        values: dict[str, Any] = {}
        if edits is not None:
            values["edits"] = "" if edits.is_empty else record_text(edits.record())
        if marks is not None:
            values |= {
                "favourite": marks.favourite,
                "discontinued": marks.discontinued,
                "hidden": marks.hidden,
            }
        with self._writing() as connection:
            if not tables.write_edit(connection, code, revision, values):
                found = connection.execute(tables.select_entry(code)).one_or_none()
                if found is None:
                    raise UnknownSampleError(code)
                raise SampleChangedError(code, seen=revision, found=found.revision)
        return revision + 1

    def entries(self, *, changed_only: bool = False) -> Iterator[Entry]:
        """Return all samples in their order, or those alone that the shop has edited or marked."""
        with self._reading() as connection:
            statement = tables.select_entries(changed_only=changed_only)
            for row in connection.execution_options(yield_per=CHUNK).execute(statement):
                yield _entry(row)

    def key(self) -> str:
        """Return a mark of the imported samples' state: it changes with imports, not with edits."""
        with self._reading() as connection:
            identity = tables.identity(connection)
            return f"{identity}-{self._revision(connection)}"

    def _prepare(self) -> None:
        with self._engine.begin() as connection:
            form = tables.prepare(connection)
        if form != SCHEMA_FORM:
            self.close()
            raise LibraryError(
                self._shown,
                problem=f"was made by a newer program (form {form})",
                todo="update the program at this counter",
            )

    @staticmethod
    def _revision(connection: "Connection") -> int:
        return tables.revision(connection)

    @contextmanager
    def _reading(self) -> Iterator["Connection"]:
        with self._translated(), self._engine.connect() as connection:
            yield connection

    @contextmanager
    def _writing(self) -> Iterator["Connection"]:
        with self._translated(), self._engine.begin() as connection:
            yield connection

    @contextmanager
    def _translated(self) -> Iterator[None]:
        try:
            yield
        except SQLAlchemyError as error:
            cause = str(getattr(error, "orig", None) or error).strip().splitlines()[0]
            self._engine.dispose()
            raise LibraryError(
                self._shown,
                problem=f"cannot be used ({cause})",
                todo="check the address, that no other program holds it, and the disk",
            ) from error


def _entry(row: "Row[Any]") -> Entry:
    return Entry(
        imported=sample_of(read_record(row.record)),
        edits=ShopEdits.of_record(read_record(row.edits)) if row.edits else ShopEdits(),
        marks=Marks(bool(row.favourite), bool(row.discontinued), bool(row.hidden)),
        revision=row.revision,
    )


def _chunks(values: Sequence[Any]) -> Iterator[Sequence[Any]]:
    for start in range(0, len(values), CHUNK):
        yield values[start : start + CHUNK]
