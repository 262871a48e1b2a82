"""The form of the shop's database: which it has, and the steps to the present one."""

from pathlib import Path
from typing import TYPE_CHECKING, Final

from sqlalchemy import inspect, text

from framing_palette import schema_steps

if TYPE_CHECKING:
    from sqlalchemy import Connection

SCHEMA_FORM: Final = "1"
_FORM_TABLE: Final = "alembic_version"
_STEPS: Final = Path(__file__).parent / "migrations"
_LOCK: Final = 46_120_712  # any number of our own: two counters never take the steps at once


def found_form(connection: "Connection") -> str:
    """Return the form that a database has, empty for one without jobs."""
    if not inspect(connection).has_table(_FORM_TABLE):
        return ""
    statement = text(f"SELECT version_num FROM {_FORM_TABLE}")  # noqa: S608 - our own name
    found = connection.execute(statement).scalar()
    return str(found or "")


def is_known(form: str) -> bool:
    """Return whether this program can bring a database of that form to the present one."""
    return schema_steps.is_known(form, SCHEMA_FORM)


def take_steps(connection: "Connection") -> None:
    """Bring a database to the present form, within the transaction that is open.

    The database must have a form that `is_known`.
    """
    schema_steps.wait_for_turn(connection, _LOCK)
    schema_steps.climb(
        connection,
        _STEPS,
        found=found_form(connection),
        present=SCHEMA_FORM,
        table=_FORM_TABLE,
    )
