"""A database's form: whether this program knows it, and the steps from it to the present one.

Every database of the shop has steps, a table of its form and a lock of its own.
"""

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sqlalchemy import Connection


def is_known(form: str, present: str) -> bool:
    """Return whether a database of a form, empty for a new one, can be brought to the present."""
    return form == "" or (form.isdecimal() and int(form) <= int(present))


def wait_for_turn(connection: "Connection", lock: int) -> None:
    """Wait on a server until no other counter takes steps; the transaction's end lets go.

    Parameters
    ----------
    lock
        Any number that nothing else of ours locks by.
    """
    from sqlalchemy import text

    if connection.dialect.name == "postgresql":
        connection.execute(text("SELECT pg_advisory_xact_lock(:lock)"), {"lock": lock})


def climb(connection: "Connection", steps: Path, *, found: str, present: str, table: str) -> None:
    """Take the missing steps within the transaction that is open, and write each into the table.

    Parameters
    ----------
    steps
        Folder of the steps, as Alembic lays it out.
    found, present
        The form that the database has, empty for a new one, and the one that it gets.
    table
        Where its form is written; a form that was told elsewhere is written there first.
    """
    from alembic.operations import Operations
    from alembic.runtime.migration import MigrationContext
    from alembic.script import ScriptDirectory
    from sqlalchemy import inspect

    script = ScriptDirectory(str(steps))
    context = MigrationContext.configure(connection, opts={"version_table": table})
    if found and not inspect(connection).has_table(table):
        context.stamp(script, found)
    missing = list(script.iterate_revisions(present, found or "base"))
    with Operations.context(context):
        for step in reversed(missing):
            step.module.upgrade()
            context.stamp(script, step.revision)
