"""The form of the shop's database: which it has, and the steps to the present one."""

from pathlib import Path
from typing import TYPE_CHECKING, Final

from sqlalchemy import inspect, text

if TYPE_CHECKING:
    from sqlalchemy import Connection

SCHEMA_FORM: Final = "1"
_STEPS: Final = Path(__file__).parent / "migrations"
_LOCK: Final = 46_120_712  # any number of our own: two counters never take the steps at once


def found_form(connection: "Connection") -> str:
    """Return the form that a database has, empty for one without jobs."""
    if not inspect(connection).has_table("alembic_version"):
        return ""
    found = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
    return str(found or "")


def is_known(form: str) -> bool:
    """Return whether this program can bring a database of that form to the present one."""
    return form == "" or (form.isdecimal() and int(form) <= int(SCHEMA_FORM))


def take_steps(connection: "Connection") -> None:
    """Bring a database to the present form, within the transaction that is open.

    The database must have a form that `is_known`.
    """
    from alembic.operations import Operations
    from alembic.runtime.migration import MigrationContext
    from alembic.script import ScriptDirectory

    if connection.dialect.name == "postgresql":
        connection.execute(text("SELECT pg_advisory_xact_lock(:lock)"), {"lock": _LOCK})
    steps = ScriptDirectory(str(_STEPS))
    context = MigrationContext.configure(connection)
    missing = list(steps.iterate_revisions(SCHEMA_FORM, found_form(connection) or "base"))
    with Operations.context(context):
        for step in reversed(missing):
            step.module.upgrade()
            context.stamp(steps, step.revision)
