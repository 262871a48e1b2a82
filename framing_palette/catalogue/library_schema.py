"""The form of the shop's library: which it has, and the steps to the present one."""

from pathlib import Path
from typing import TYPE_CHECKING, Final

from sqlalchemy import inspect, text

from framing_palette import schema_steps

if TYPE_CHECKING:
    from sqlalchemy import Connection

SCHEMA_FORM: Final = "1"
FORM_TABLE: Final = "library_form"  # its own, so that jobs may lie in the same database
_STEPS: Final = Path(__file__).parent / "migrations"
_LOCK: Final = 46_120_713  # any number of our own: two counters never take the steps at once


def found_form(connection: "Connection") -> str:
    """Return the form that a library has, empty for a database without one.

    The first libraries kept their form among their facts alone.
    """
    tables = set(inspect(connection).get_table_names())
    if FORM_TABLE in tables:
        statement = text(f"SELECT version_num FROM {FORM_TABLE}")  # noqa: S608 - our own name
        return str(connection.execute(statement).scalar() or "")
    if "library_facts" in tables:
        statement = text("SELECT value FROM library_facts WHERE name = 'version'")
        return str(connection.execute(statement).scalar() or "1")
    return ""


def is_known(form: str) -> bool:
    """Return whether this program can bring a library of that form to the present one."""
    return schema_steps.is_known(form, SCHEMA_FORM)


def is_present(connection: "Connection") -> bool:
    """Return whether a library has the present form, written where the steps look for it."""
    return FORM_TABLE in inspect(connection).get_table_names() and (
        found_form(connection) == SCHEMA_FORM
    )


def take_steps(connection: "Connection") -> None:
    """Bring a library to the present form, within the transaction that is open.

    Counters that open a new library at once wait for each other here.
    """
    schema_steps.wait_for_turn(connection, _LOCK)
    if connection.dialect.name != "postgresql":
        connection.exec_driver_sql("BEGIN IMMEDIATE")
    form = found_form(connection)
    if is_known(form):
        schema_steps.climb(connection, _STEPS, found=form, present=SCHEMA_FORM, table=FORM_TABLE)
