"""Whatever is fed in, the answer is a catalogue with its problems or one sentence, never a crash."""

import signal
import subprocess
import sys
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from framing_palette.catalogue import Kind, read_catalogue_folder, read_measurement_file
from framing_palette.catalogue.exchange_files import samples_from_file
from framing_palette.catalogue.store import Library
from framing_palette.errors import FramingPaletteError

from .folders import COLOURS, SAMPLES, write_folder

ROOT = Path(__file__).parents[2]
CGATS = (
    'CGATS.17\nILLUMINANT "D50"\nOBSERVER 2\nNUMBER_OF_FIELDS 4\nBEGIN_DATA_FORMAT\n'
    "SAMPLE_ID LAB_L LAB_A LAB_B\nEND_DATA_FORMAT\nNUMBER_OF_SETS 2\nBEGIN_DATA\n"
    '1 95.1 0.2 3.4\n"2 b" 20 0 0\nEND_DATA\n'
)
CXF = (
    '<CxF xmlns="http://colorexchangeformat.com/CxF3-core"><Resources><ObjectCollection>'
    '<Object ObjectType="Standard" Name="one" Id="1"><ColorValues>'
    '<ReflectanceSpectrum StartWL="380" ColorSpecification="S">'
    + " ".join(["0.2"] * 36)
    + "</ReflectanceSpectrum></ColorValues></Object></ObjectCollection></Resources></CxF>"
)
SCRAPS = ['"', ",", "\n", ";", "\t", "\0", "=", "../", "-", "1e999", "nan", "é", "\ufeff", "#", "'"]


def damaged(text: str) -> st.SearchStrategy[bytes]:
    """The text with a few scraps put in and pieces cut out, in some encoding."""
    place = st.integers(0, len(text))
    cuts = st.lists(st.tuples(place, st.integers(0, 30), st.sampled_from(SCRAPS)), max_size=4)

    def cut(edits: list[tuple[int, int, str]], encoding: str) -> bytes:
        result = text
        for start, length, scrap in edits:
            result = result[:start] + scrap + result[start + length :]
        return result.encode(encoding, errors="replace")

    encodings = st.sampled_from(["utf-8", "utf-16", "latin-1", "utf-8-sig"])
    return st.builds(cut, cuts, encodings) | st.binary(max_size=200)


hostile = settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@hostile
@given(damaged(SAMPLES), damaged(COLOURS))
def test_a_damaged_folder_gives_its_good_rows_or_one_sentence(
    tmp_path: Path, samples: bytes, colours: bytes
) -> None:
    folder = write_folder(tmp_path / "rack", samples=samples, colours=colours)
    try:
        catalogue, _ = read_catalogue_folder(folder)
    except FramingPaletteError as error:
        assert "\n" not in str(error).replace(str(folder), "")
        return
    for sample in catalogue.samples:
        assert sample.code
        assert not {"/", "\\", "\n"} & set(sample.code)
        assert all(0 <= colour.lab[0] <= 100 for colour in sample.colours)


@hostile
@given(damaged(CGATS) | damaged(CXF))
def test_a_damaged_export_gives_possible_colours_or_one_sentence(
    tmp_path: Path, content: bytes
) -> None:
    (tmp_path / "x").write_bytes(content)
    try:
        found = read_measurement_file(tmp_path / "x")
    except FramingPaletteError:
        return
    for measured in found:
        for one in measured.measurements:
            assert -0.01 <= one.lab[0] <= 121
            assert one.spectrum is None or len(one.spectrum) == 36


@hostile
@given(damaged("sku,description,thickness mm,L*,a*,b*\nA1,chalk,1.4,95,0,3\nB2,oak,2,60,8,22\n"))
def test_a_damaged_spreadsheet_gives_samples_or_one_sentence(
    tmp_path: Path, content: bytes
) -> None:
    (tmp_path / "x.csv").write_bytes(content)
    try:
        samples, _ = samples_from_file(tmp_path / "x.csv", Kind.MAT)
    except FramingPaletteError:
        return
    assert len({sample.code for sample in samples}) == len(samples)


def test_an_import_killed_outright_leaves_the_library_as_it_was(tmp_path: Path) -> None:
    program = f"""
import os, signal, sys
from pathlib import Path
from framing_palette.catalogue import library_tables, read_catalogue_folder
from framing_palette.catalogue.store import Library
samples = read_catalogue_folder(Path({str(ROOT / "catalog")!r}))[0].samples
library = Library({str(tmp_path / "shop.sqlite")!r})
library.apply_import(library.preview_import(samples[:10], "first"))
plan = library.preview_import(samples, "second")
real, calls = library_tables.digest_of, []
def kill(text):
    calls.append(text)
    if len(calls) == 200:
        os.kill(os.getpid(), signal.SIGKILL)
    return real(text)
library_tables.digest_of = kill
import framing_palette.catalogue.store as store
store.CHUNK = 50
library.apply_import(plan)
"""
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, check=False
    )
    assert done.returncode == -signal.SIGKILL, done.stderr.decode()
    with Library(tmp_path / "shop.sqlite") as library:
        assert len(list(library.entries())) == 10
        assert [note.source for note in library.imports()] == ["first"]
