"""Libraries that earlier programs have made open for ever, with all that the shop had said."""

import shutil
import sqlite3
from decimal import Decimal
from pathlib import Path
from threading import Thread

import pytest
from sqlalchemy import MetaData, create_engine, inspect
from sqlalchemy.schema import CreateTable

from framing_palette.catalogue.library_schema import SCHEMA_FORM
from framing_palette.catalogue.library_tables import _metadata
from framing_palette.catalogue.store import Library
from framing_palette.errors import LibraryError

FILES = Path(__file__).parents[1] / "files"


@pytest.fixture
def released(tmp_path: Path) -> Path:
    return Path(shutil.copy(FILES / "library_1" / "shop.sqlite", tmp_path / "shop.sqlite"))


def form_in(path: Path) -> str:
    with sqlite3.connect(path) as connection:
        (form,) = connection.execute("SELECT version_num FROM library_form").fetchone()
    connection.close()
    return str(form)


def test_a_library_from_before_the_steps_opens_and_gets_the_present_form(released: Path) -> None:
    for _ in range(2):
        with Library(released) as library:
            entries = {entry.imported.code: entry for entry in library.entries()}
            assert set(entries) == set("ABCD")
            first = entries["A"]
            assert (first.imported.price, first.sample.price) == (Decimal(12), Decimal("9.99"))
            assert (first.edits.note, first.marks.favourite) == ("window", True)
            assert entries["C"].marks.hidden
            assert entries["B"].marks.discontinued
            assert entries["D"].imported.colours[0].spectrum == tuple([0.25] * 36)
            sources = [(note.source, note.is_undone) for note in library.imports()]
            assert sources == [
                ("by mistake", True),
                ("second season", False),
                ("first season", False),
            ]
        assert form_in(released) == SCHEMA_FORM


def test_an_import_of_an_old_library_is_still_undone(released: Path) -> None:
    with Library(released) as library:
        library.undo_back_to(2)
        assert library.entry("A").imported.price == Decimal(10)
        assert not library.entry("B").marks.discontinued


def test_the_steps_make_the_tables_that_the_program_describes(tmp_path: Path) -> None:
    path = tmp_path / "new.sqlite"
    Library(path).close()
    engine = create_engine(f"sqlite:///{path}")
    made = MetaData()
    made.reflect(engine, only=[table.name for table in _metadata.sorted_tables])
    for table in _metadata.sorted_tables:
        ours = {c.name: (str(c.type), c.nullable, c.primary_key) for c in table.columns}
        theirs = {
            c.name: (str(c.type), c.nullable, c.primary_key)
            for c in made.tables[table.name].columns
        }
        assert ours == theirs, CreateTable(table)
    indexes = {index["name"] for index in inspect(engine).get_indexes("library_samples")}
    assert indexes == {"library_samples_place"}
    engine.dispose()


def test_a_library_of_a_newer_form_is_left_as_it_is(released: Path) -> None:
    Library(released).close()
    with sqlite3.connect(released) as connection:
        connection.execute("UPDATE library_form SET version_num = '7'")
    connection.close()
    with pytest.raises(LibraryError, match=r"newer program \(form 7\)"):
        Library(released)
    assert form_in(released) == "7"


def test_counters_that_open_a_new_library_at_once_wait_for_each_other(tmp_path: Path) -> None:
    faults: list[Exception] = []

    def open_it() -> None:
        try:
            Library(tmp_path / "shop.sqlite").close()
        except LibraryError as error:
            faults.append(error)

    threads = [Thread(target=open_it) for _ in range(6)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert faults == []
    with Library(tmp_path / "shop.sqlite") as library:
        assert library.imports() == ()
