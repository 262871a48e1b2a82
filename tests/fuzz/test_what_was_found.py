"""What spoilt files brought to light, each in its smallest form, so that it never comes back."""

import json
import os
import subprocess
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import tifffile
from PIL import Image

from framing_palette.catalogue import read_catalogue_folder, read_measurement_file
from framing_palette.catalogue.exchange_files import samples_from_file
from framing_palette.catalogue.problems import ProblemList
from framing_palette.catalogue.samples import Kind
from framing_palette.catalogue.surface_files import read_surface_table, read_texture_picture
from framing_palette.catalogue.swatch_intake_files import read_results
from framing_palette.catalogue.table_files import open_table
from framing_palette.design import read_design, read_price_book
from framing_palette.errors import (
    CatalogueError,
    ExchangeFileError,
    FramingPaletteError,
    PictureFileError,
)
from framing_palette.jobs import read_job_file
from framing_palette.jobs.log_files import log_tail
from framing_palette.jobs.place_files import shop_place
from framing_palette.jobs.store import JobStore
from framing_palette.papers.shop_files import read_shop
from framing_palette.papers.vocabulary_files import read_vocabulary
from framing_palette.picture import read_picture_file
from framing_palette.picture.intake_files import read_corners_file
from framing_palette.picture.labels import LabelFault, read_label
from framing_palette.picture.regions_files import read_regions_file
from framing_palette.preview.texture_files import read_texture
from framing_palette.ranking import read_taste_file
from framing_palette.window.preference_files import read_preferences
from framing_palette.window.preferences import Preferences

from . import seeds

TOML: list[Callable[[Path], object]] = [read_design, read_price_book, read_shop, read_vocabulary]
JSON: list[Callable[[Path], object]] = [read_regions_file, read_corners_file]
OTHERS: list[Callable[[Path], object]] = [
    read_taste_file,
    read_job_file,
    read_measurement_file,
    read_picture_file,
    read_texture,
    read_texture_picture,
    lambda path: samples_from_file(path, Kind.MAT),
    lambda path: open_table(path, ProblemList()),
    lambda path: tuple(read_results(path)),
]


@pytest.fixture
def little_memory() -> Iterator[None]:
    """Leave two gigabytes, so that reading without end fails instead of filling the machine."""
    import resource

    pages = int(Path("/proc/self/statm").read_text().split()[0]) if Path("/proc").is_dir() else 0
    before = resource.getrlimit(resource.RLIMIT_AS)
    room = pages * resource.getpagesize() + (2 << 30) if pages else before[0]
    resource.setrlimit(resource.RLIMIT_AS, (room, before[1]))
    yield
    resource.setrlimit(resource.RLIMIT_AS, before)


def check_refused(read: Callable[[Path], object], path: Path) -> str:
    with pytest.raises(FramingPaletteError) as caught:
        read(path)
    assert str(caught.value).endswith(".")
    return str(caught.value)


def written(folder: Path, content: bytes | str, name: str = "a.csv") -> Path:
    path = folder / name
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return path


@pytest.mark.parametrize("read", TOML)
@pytest.mark.parametrize("value", ["9" * 5000, "[" * 3000, "{a=" * 2000])
def test_thousands_of_digits_or_brackets_in_a_toml_file_are_refused(
    tmp_path: Path, read: Callable[[Path], object], value: str
) -> None:
    check_refused(read, written(tmp_path, f"name = {value}\n"))


@pytest.mark.parametrize("read", JSON)
@pytest.mark.parametrize("point", ["9" * 400, "9" * 5000, "[" * 3000, "1e999", "NaN"])
def test_a_coordinate_that_is_no_place_on_a_picture_is_refused(
    tmp_path: Path, read: Callable[[Path], object], point: str
) -> None:
    ring = f"[[{point}, 0.1], [0.9, 0.1], [0.9, 0.9], [0.1, 0.9]]"
    text = f'{{"corners": {ring}, "regions": [{{"name": "a", "polygon": {ring}}}]}}'
    check_refused(read, written(tmp_path, text))


@pytest.mark.parametrize("text", ["[" * 3000, '{"a":' * 3000, "9" * 5000, "\xff", "[]"])
def test_preferences_that_cannot_be_read_are_the_usual_ones(tmp_path: Path, text: str) -> None:
    assert read_preferences(written(tmp_path, text)) == Preferences()


@pytest.mark.parametrize("text", ["[" * 3000, '{"texture": [1], "mm_per_px": 1, "file": "a"}'])
def test_a_line_of_an_intake_that_cannot_be_read_is_passed_over(tmp_path: Path, text: str) -> None:
    good = seeds.intake_results()[0].decode()
    found = tuple(read_results(written(tmp_path, f"{text}\n{good}")))
    assert [result.file for result, _ in found] == ["a.png", "b.png"]


def test_a_description_nested_without_end_leaves_the_tables_readable(tmp_path: Path) -> None:
    for name in ("samples", "colours"):
        written(tmp_path, seeds.table(name), f"{name}.csv")
    written(tmp_path, "[" * 3000, "datapackage.json")
    catalogue, problems = read_catalogue_folder(tmp_path)
    assert catalogue.samples
    assert any("is not readable JSON" in str(problem) for problem in problems)


def test_a_texture_name_longer_than_any_file_name_is_passed_over(tmp_path: Path) -> None:
    line = seeds.table("textures").decode().splitlines()
    long = line[1].replace(line[1].split(",")[0], "a" * 5000)
    path = written(tmp_path, f"{line[0]}\n{long}\n", "textures.csv")
    assert tuple(read_surface_table(path, tmp_path, ProblemList())) == ()


def cxf(spectrum: str = "", head: str = "") -> str:
    return (
        f'{head}<CxF xmlns="http://colorexchangeformat.com/CxF3-core"><Resources><ObjectCollection>'
        f'<Object ObjectType="Standard" Name="one" Id="1"><ColorValues>{spectrum}</ColorValues>'
        "</Object></ObjectCollection></Resources></CxF>"
    )


def test_a_wavelength_beyond_every_machine_number_is_refused(tmp_path: Path) -> None:
    figures = (
        f'<ReflectanceSpectrum StartWL="{"9" * 30}">{" ".join(["0.2"] * 36)}</ReflectanceSpectrum>'
    )
    told = check_refused(read_measurement_file, written(tmp_path, cxf(figures)))
    assert "wavelengths that nobody measures" in told


def test_an_encoding_that_nobody_knows_is_refused(tmp_path: Path) -> None:
    head = '<?xml version="1.0" encoding="UTaF-8"?>'
    assert "not a readable CxF3" in check_refused(
        read_measurement_file, written(tmp_path, cxf(head=head))
    )


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
def test_entities_are_refused_in_every_encoding(tmp_path: Path, encoding: str) -> None:
    head = '<!DOCTYPE x [<!ENTITY a "b">]>'
    # In UTF-16 the name of the form is not found as bytes; these signs spell it all the same.
    disguise = b"colorexchangeformat.com/CxF3-core ".decode("utf-16-le")
    document = cxf(head=head).replace("<Resources>", f"<!--{disguise}--><Resources>")
    told = check_refused(
        read_measurement_file, written(tmp_path, document.encode(encoding), "a.cxf")
    )
    if encoding == "utf-8":
        assert "defines its own entities" in told


def test_utf16_cxf_with_entities_never_reaches_the_parser(tmp_path: Path) -> None:
    from framing_palette.catalogue.cxf import parse_cxf

    disguise = b"colorexchangeformat.com/CxF3-core ".decode("utf-16-le")
    document = cxf(head='<!DOCTYPE x [<!ENTITY a "b">]>').replace("<Res", f"<!--{disguise}--><Res")
    with pytest.raises(ExchangeFileError, match="defines its own entities"):
        parse_cxf(b"\xff\xfe" + document.encode("utf-16-le"), Path("a.cxf"))


def test_elements_within_elements_without_end_are_refused(tmp_path: Path) -> None:
    told = check_refused(read_measurement_file, written(tmp_path, cxf("<a>" * 50_000)))
    assert "more than 100 deep" in told


def test_a_table_of_thousands_of_columns_is_refused_at_once(tmp_path: Path) -> None:
    path = written(tmp_path, ",".join(f"c{i}" for i in range(20_000)))
    with pytest.raises(CatalogueError, match="names 20000 columns: keep at most 2000 of them"):
        open_table(path, ProblemList())


def test_a_tiff_of_32_bit_whole_numbers_has_the_colours_of_its_16_bit_twin(tmp_path: Path) -> None:
    deep = seeds.block().astype(np.uint16) * 257
    wide = deep.astype(np.uint32) * 65537
    for name, pixels in (("deep", deep), ("wide", wide)):
        tifffile.imwrite(tmp_path / f"{name}.tif", pixels, photometric="rgb")
    found = [read_picture_file(tmp_path / f"{name}.tif").lab_d50 for name in ("deep", "wide")]
    assert np.abs(found[0] - found[1]).max() < 0.01


def test_a_tiff_that_is_no_flat_picture_is_refused(tmp_path: Path) -> None:
    solid = np.zeros((4, 9, 12), np.uint8)
    tifffile.imwrite(tmp_path / "a.tif", solid, photometric="minisblack", volumetric=True)
    with pytest.raises(PictureFileError):
        read_picture_file(tmp_path / "a.tif")


def test_a_rare_tiff_compression_is_refused_with_what_to_do(tmp_path: Path) -> None:
    Image.fromarray(seeds.block()).convert("1").save(tmp_path / "a.tif", compression="group4")
    told = check_refused(read_picture_file, tmp_path / "a.tif")
    assert "CCITTFAX4 compression, which is not read: save it again without compression" in told


def test_a_bitmap_that_claims_billions_of_pixels_is_refused(tmp_path: Path) -> None:
    content = bytearray(seeds.saved("BMP"))
    content[18:26] = (60_000).to_bytes(4, "little") * 2
    check_refused(read_picture_file, written(tmp_path, bytes(content), "a.bmp"))


def test_no_outside_program_is_started_for_a_texture(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def started(*_: Any, **__: Any) -> None:
        pytest.fail("a program was started")

    for name in ("Popen", "run", "check_call", "check_output"):
        monkeypatch.setattr(subprocess, name, started)
    page = b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 9 9\n%%EndComments\nshowpage\n%%EOF\n"
    for read in (read_texture, read_texture_picture):
        check_refused(read, written(tmp_path, page, "a.png"))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no pipes with a name")
@pytest.mark.parametrize("read", [*TOML, *JSON, *OTHERS])
@pytest.mark.timeout(20)
def test_a_pipe_or_a_device_is_refused_instead_of_waited_for(
    tmp_path: Path, read: Callable[[Path], object], little_memory: None
) -> None:
    os.mkfifo(tmp_path / "a.csv")
    for path in (tmp_path / "a.csv", Path("/dev/zero"), tmp_path):
        check_refused(read, path)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no pipes with a name")
@pytest.mark.timeout(20)
def test_preferences_in_a_pipe_are_the_usual_ones(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "window.json")
    assert read_preferences(tmp_path / "window.json") == Preferences()


@pytest.mark.parametrize(
    ("read", "most"),
    [
        *((read, 1_000_000) for read in TOML),
        (read_regions_file, 20_000_000),
        (read_corners_file, 100_000),
        (read_measurement_file, 256 << 20),
        (lambda path: tuple(read_results(path)), 256 << 20),
        (lambda path: open_table(path, ProblemList()), 4 << 30),
        (read_picture_file, 1_000_000_000),
    ],
)
def test_a_file_larger_than_its_reader_takes_is_refused_before_it_is_read(
    tmp_path: Path, read: Callable[[Path], object], most: int
) -> None:
    path = written(tmp_path, seeds.jpegs()[0] if most == 1_000_000_000 else b"")
    os.truncate(path, most + 1)  # a hole: it takes no room on the disk
    told = check_refused(read, path)
    assert any(word in told for word in (" MB", "MiB", "GiB", "bytes", "cannot be read"))


def test_a_number_too_large_for_a_label_is_refused() -> None:
    label = json.loads(seeds.labels()[0]) | {"mm_per_px": 10**400}
    with pytest.raises(LabelFault, match="mm_per_px that is no number"):
        read_label(json.dumps(label).encode())


@pytest.mark.parametrize(
    "address", ["postgresql+psycopg://host:port/shop", "sqlite://:x", "sqlite://", "a://["]
)
def test_an_address_that_is_none_is_shown_and_refused(tmp_path: Path, address: str) -> None:
    setting = written(tmp_path, json.dumps({"address": address}), "jobs.json")
    place = shop_place(setting)
    assert isinstance(place.shown, str)
    with pytest.raises(FramingPaletteError):
        JobStore(place.address)


def test_a_log_of_any_length_is_read_from_its_end_alone(tmp_path: Path) -> None:
    path = written(tmp_path, b"the end\n", "framing-palette.log")
    os.truncate(path, 4 << 30)  # a hole: it takes no room on the disk
    with path.open("ab") as file:
        file.write(b"the end\n")
    assert log_tail(tmp_path, most_bytes=8) == "the end\n"


def test_a_count_of_thousands_of_digits_is_refused(tmp_path: Path) -> None:
    text = seeds.exports()[0].decode().replace("NUMBER_OF_SETS 2", f"NUMBER_OF_SETS {'9' * 5000}")
    assert "states NUMBER_OF_SETS" in check_refused(read_measurement_file, written(tmp_path, text))
