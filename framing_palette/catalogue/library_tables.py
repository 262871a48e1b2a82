"""The tables of the shop's library, and every statement that touches them."""

import uuid
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from sqlalchemy import (
    Boolean,
    Column,
    Connection,
    Engine,
    Index,
    Integer,
    MetaData,
    Select,
    Table,
    Text,
    bindparam,
    create_engine,
    event,
    func,
    insert,
    or_,
    select,
    update,
)
from sqlalchemy.engine import make_url
from sqlalchemy.exc import ArgumentError, NoSuchModuleError
from sqlalchemy.pool import NullPool

from framing_palette.catalogue.library_schema import (
    SCHEMA_FORM,
    found_form,
    is_present,
    take_steps,
)
from framing_palette.catalogue.merging import digest_of
from framing_palette.errors import LibraryError

BUSY_SECONDS = 15

_metadata = MetaData()
_facts = Table(
    "library_facts", _metadata, Column("name", Text, primary_key=True), Column("value", Text)
)
_samples = Table(
    "library_samples",
    _metadata,
    Column("code", Text, primary_key=True),
    Column("place", Integer, nullable=False),
    Column("record", Text, nullable=False),
    Column("digest", Text, nullable=False),
    Column("edits", Text, nullable=False, default=""),
    Column("favourite", Boolean, nullable=False, default=False),
    Column("discontinued", Boolean, nullable=False, default=False),
    Column("hidden", Boolean, nullable=False, default=False),
    Column("removed", Boolean, nullable=False, default=False),
    Column("revision", Integer, nullable=False, default=1),
    Index("library_samples_place", "place"),
)
_imports = Table(
    "library_imports",
    _metadata,
    Column("number", Integer, primary_key=True),
    Column("at", Text, nullable=False),
    Column("source", Text, nullable=False),
    Column("summary", Text, nullable=False),
    Column("undone", Boolean, nullable=False, default=False),
)
_changes = Table(
    "library_changes",
    _metadata,
    Column("import_number", Integer, primary_key=True),
    Column("code", Text, primary_key=True),
    Column("before", Text),  # the record; none when the import brought the sample
    Column("was_discontinued", Boolean),  # none when the import did not touch it
)
_there = _samples.c.removed.is_(False)


def open_engine(address: str | Path) -> tuple[Engine, str]:
    """Return the engine for an address and the address as it may be shown.

    Raises
    ------
    LibraryError
        When the address is none, or its driver is not installed.
    """
    text = str(address)
    try:
        url = make_url(text if "://" in text else f"sqlite:///{text}")
        engine = create_engine(url, poolclass=NullPool if url.drivername == "sqlite" else None)
    except (ArgumentError, NoSuchModuleError, ImportError) as error:
        raise LibraryError(
            text.rpartition("@")[2],
            problem="is no address of a library that can be opened here",
            todo="name a file, or install the driver for the address",
        ) from error
    if url.drivername.startswith("sqlite"):
        event.listen(engine, "connect", _set_up_sqlite)
    return engine, url.render_as_string(hide_password=True).removeprefix("sqlite:///")


def _set_up_sqlite(connection: Any, _record: object) -> None:
    """Wait for other counters, and write ahead so that reading goes on while one writes."""
    cursor = connection.cursor()
    cursor.execute(f"PRAGMA busy_timeout = {BUSY_SECONDS * 1000}")
    cursor.execute("PRAGMA journal_mode = WAL")
    cursor.execute("PRAGMA synchronous = NORMAL")
    cursor.close()


def prepare(connection: Connection) -> str:
    """Bring the tables to the present form and return the form that they have then.

    Tables of a newer program stay as they are.
    """
    if is_present(connection):
        return SCHEMA_FORM
    take_steps(connection)
    form = found_form(connection)
    if form == SCHEMA_FORM:
        facts = {"version": SCHEMA_FORM, "revision": "0", "identity": uuid.uuid4().hex}
        missing = {name: value for name, value in facts.items() if _fact(connection, name) is None}
        if missing:
            connection.execute(
                insert(_facts), [{"name": name, "value": value} for name, value in missing.items()]
            )
        # An older program looks here to see that the form is too new for it.
        stated = update(_facts).where(_facts.c.name == "version").values(value=SCHEMA_FORM)
        connection.execute(stated)
    return form


def revision(connection: Connection) -> int:
    """Return how often imports have changed the library."""
    return int(_fact(connection, "revision") or 0)


def raise_revision(connection: Connection) -> None:
    """Count one more change by an import."""
    changed = str(revision(connection) + 1)
    connection.execute(update(_facts).where(_facts.c.name == "revision").values(value=changed))


def identity(connection: Connection) -> str:
    """Return what tells this library from every other."""
    return str(_fact(connection, "identity"))


def select_digests() -> Select[Any]:
    """Return code, digest and edits of every sample that is there."""
    return select(_samples.c.code, _samples.c.digest, _samples.c.edits).where(_there)


def select_record(code: str) -> Select[Any]:
    """Return the record of one sample."""
    return select(_samples.c.record).where(_samples.c.code == code)


def select_entry(code: str) -> Select[Any]:
    """Return all of one sample that is there."""
    return select(_samples).where(_samples.c.code == code, _there)


def select_entries(*, changed_only: bool) -> Select[Any]:
    """Return all samples that are there, in their order."""
    statement = select(_samples).where(_there).order_by(_samples.c.place, _samples.c.code)
    if not changed_only:
        return statement
    marks = (_samples.c.favourite, _samples.c.discontinued, _samples.c.hidden)
    return statement.where(or_(_samples.c.edits != "", *(mark.is_(True) for mark in marks)))


def select_imports() -> Select[Any]:
    """Return the history, latest first."""
    columns = (_imports.c.number, _imports.c.at, _imports.c.source, _imports.c.summary)
    return select(*columns, _imports.c.undone).order_by(_imports.c.number.desc())


def add_import(connection: Connection, at: str, source: str, summary: str) -> int:
    """Write the line of a new import and return its number."""
    number = int(connection.execute(select(func.max(_imports.c.number))).scalar() or 0) + 1
    values = {"number": number, "at": at, "source": source, "summary": summary}
    connection.execute(insert(_imports).values(**values))
    return number


def add_samples(
    connection: Connection,
    number: int,
    places: Sequence[int],
    codes: Sequence[str],
    texts: Sequence[str],
) -> None:
    """Bring samples in; one that an undo had put out of sight comes back with its edits."""
    gone = set(
        connection.execute(select(_samples.c.code).where(_samples.c.code.in_(codes))).scalars()
    )
    rows = [
        {"code": code, "place": place, "record": text, "digest": digest_of(text)}
        for place, code, text in zip(places, codes, texts, strict=True)
    ]
    fresh = [row for row in rows if row["code"] not in gone]
    if fresh:
        connection.execute(insert(_samples), fresh)
    for row in rows:
        if row["code"] in gone:
            back = update(_samples).where(_samples.c.code == row["code"])
            connection.execute(back.values(**row, removed=False, revision=_samples.c.revision + 1))
    notes = [{"import_number": number, "code": code, "before": None} for code in codes]
    connection.execute(insert(_changes), notes)


def change_samples(
    connection: Connection, number: int, codes: Sequence[str], texts: Sequence[str]
) -> None:
    """Write new records of samples and note the old ones."""
    wanted = select(_samples.c.code, _samples.c.record).where(_samples.c.code.in_(codes))
    before = {row.code: row.record for row in connection.execute(wanted)}
    notes = [{"import_number": number, "code": code, "before": before[code]} for code in codes]
    connection.execute(insert(_changes), notes)
    _write_records(connection, list(zip(codes, texts, strict=True)))


def discontinue(connection: Connection, number: int, codes: Sequence[str]) -> None:
    """Mark samples as discontinued, those that were not."""
    wanted = _samples.c.code.in_(codes) & _samples.c.discontinued.is_(False)
    found = connection.execute(select(_samples.c.code).where(wanted)).scalars().all()
    if not found:
        return
    connection.execute(
        insert(_changes),
        [{"import_number": number, "code": c, "was_discontinued": False} for c in found],
    )
    connection.execute(
        update(_samples)
        .where(_samples.c.code.in_(found))
        .values(discontinued=True, revision=_samples.c.revision + 1)
    )


def latest_import(connection: Connection) -> int | None:
    """Return the number of the latest import that stands."""
    statement = select(func.max(_imports.c.number)).where(_imports.c.undone.is_(False))
    return connection.execute(statement).scalar()


def touched_codes(connection: Connection, number: int) -> Sequence[str]:
    """Return the codes that an import or a later one that stands has touched."""
    standing = select(_imports.c.number).where(
        _imports.c.number >= number, _imports.c.undone.is_(False)
    )
    statement = select(_changes.c.code).where(_changes.c.import_number.in_(standing)).distinct()
    return connection.execute(statement.order_by(_changes.c.code)).scalars().all()


def undo(connection: Connection, number: int) -> None:
    """Put back what an import has changed."""
    mine = _changes.c.import_number == number
    mark = _changes.c.was_discontinued
    rows = connection.execute(
        select(_changes.c.code, _changes.c.before).where(mine, mark.is_(None))
    ).all()
    _write_records(connection, [(row.code, row.before) for row in rows if row.before is not None])
    brought = select(_changes.c.code).where(mine, mark.is_(None), _changes.c.before.is_(None))
    _touch(connection, brought, removed=True)
    _touch(connection, select(_changes.c.code).where(mine, mark.is_(False)), discontinued=False)
    connection.execute(update(_imports).where(_imports.c.number == number).values(undone=True))


def write_edit(
    connection: Connection, code: str, seen_revision: int, values: dict[str, Any]
) -> bool:
    """Write edits of a sample if it still has the revision that was seen."""
    statement = (
        update(_samples)
        .where(_samples.c.code == code, _there, _samples.c.revision == seen_revision)
        .values(**values, revision=_samples.c.revision + 1)
    )
    return connection.execute(statement).rowcount == 1


def _write_records(connection: Connection, records: Sequence[tuple[str, str]]) -> None:
    if not records:
        return
    statement = (
        update(_samples)
        .where(_samples.c.code == bindparam("which"))
        .values(
            record=bindparam("new_record"),
            digest=bindparam("new_digest"),
            revision=_samples.c.revision + 1,
        )
    )
    connection.execute(
        statement,
        [
            {"which": code, "new_record": text, "new_digest": digest_of(text)}
            for code, text in records
        ],
    )


def _touch(connection: Connection, codes: Select[Any], **values: Any) -> None:
    connection.execute(
        update(_samples)
        .where(_samples.c.code.in_(codes))
        .values(**values, revision=_samples.c.revision + 1)
    )


def _fact(connection: Connection, name: str) -> str | None:
    statement = select(_facts.c.value).where(_facts.c.name == name)
    return connection.execute(statement).scalar()
