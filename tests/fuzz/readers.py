"""Every reader of a file that somebody else may have made, as one call that opens it or refuses.

A reader takes the bytes of a file. Whatever they are, it ends in a value or in one sentence for
the person at the counter; anything else that escapes is a defect.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from framing_palette.errors import FramingPaletteError

from . import seeds

Work = Callable[[bytes, Path], Any]


@dataclass(frozen=True, slots=True)
class Reader:
    """One reader.

    Parameters
    ----------
    name
        As on the command line of the fuzzing.
    read
        Takes the bytes and an empty folder of its own.
    seeds
        Sound files.
    """

    name: str
    read: Work
    seeds: Callable[[], Sequence[bytes]]


def outcome(reader: Reader, content: bytes, folder: Path) -> str:
    """Return "opened" or "refused"; what is neither is raised."""
    try:
        reader.read(content, folder)
    except FramingPaletteError as refusal:
        sentence = str(refusal)
        if not sentence.endswith(".") or "Traceback" in sentence:
            raise AssertionError(f"no sentence: {sentence!r}") from refusal
        return "refused"
    return "opened"


def _file(content: bytes, folder: Path, name: str) -> Path:
    path = folder / name
    path.write_bytes(content)
    return path


def _picture(content: bytes, folder: Path, name: str = "a.bin") -> None:
    import numpy as np

    from framing_palette.picture import read_picture_file

    picture = read_picture_file(_file(content, folder, name), max_side=16)
    assert picture.lab_d50.ndim == 3
    assert max(picture.lab_d50.shape[:2]) <= 16
    assert np.isfinite(picture.lab_d50).all(), "a colour that is no number"


def _raw(content: bytes, folder: Path) -> None:
    _picture(content, folder, "a.dng")


def _texture(content: bytes, folder: Path) -> None:
    from framing_palette.catalogue.surface_files import read_texture_picture
    from framing_palette.preview.texture_files import read_texture

    path = _file(content, folder, "a.png")
    srgb, _ = read_texture_picture(path)
    assert srgb.shape[2] == 3
    assert read_texture(path).linear.max() <= 1.0


def _profile(content: bytes, folder: Path) -> None:
    import numpy as np

    from framing_palette.picture.photographs import Ink
    from framing_palette.picture.profiles import (
        ProfileFault,
        checked_space,
        profile_name,
        to_lab_d50,
    )

    try:
        ink = checked_space(content)
        ramp = np.linspace(0, 1, 8 * ink.channels, dtype=np.float32).reshape(2, 4, ink.channels)
        lab = to_lab_d50(ramp, Ink(ink), content)
    except ProfileFault:
        return
    assert lab.shape == (2, 4, 3)
    assert profile_name(content)


def _regions(content: bytes, folder: Path) -> None:
    from framing_palette.picture.masks import region_mask
    from framing_palette.picture.regions_files import read_regions_file

    for region in read_regions_file(_file(content, folder, "a.json")):
        assert region_mask(region, 12, 16).shape == (12, 16)


def _corners(content: bytes, folder: Path) -> None:
    from framing_palette.picture.intake_files import read_chart_file, read_corners_file

    path = _file(content, folder, "a.json")
    assert len(read_chart_file(path)) == 4
    assert len(read_corners_file(path)) == 4


def _rack(name: str) -> Work:
    def read(content: bytes, folder: Path) -> None:
        from framing_palette.catalogue import read_catalogue_folder

        for kind in ("samples", "colours", "spectra", "profiles", "conservation"):
            (folder / f"{kind}.csv").write_bytes(seeds.table(kind))
        (folder / "datapackage.json").write_bytes(b"{}")
        (folder / name).write_bytes(content)
        catalogue, problems = read_catalogue_folder(folder)
        for sample in catalogue.samples:
            assert sample.code
            assert not {"/", "\\", "\n"} & set(sample.code)
            assert all(0 <= colour.lab[0] <= 100 for colour in sample.colours)
        assert all(str(problem).endswith(".") for problem in problems)

    return read


def _surfaces(content: bytes, folder: Path) -> None:
    from framing_palette.catalogue.problems import ProblemList
    from framing_palette.catalogue.surface_files import read_surface_table

    textures = folder / "textures"
    textures.mkdir(exist_ok=True)
    tuple(read_surface_table(_file(content, folder, "textures.csv"), textures, ProblemList()))


def _export(content: bytes, folder: Path) -> None:
    from framing_palette.catalogue import read_measurement_file

    for measured in read_measurement_file(_file(content, folder, "a.txt")):
        for one in measured.measurements:
            assert -0.01 <= one.lab[0] <= 121
            assert one.spectrum is None or len(one.spectrum) == 36


def _spreadsheet(content: bytes, folder: Path) -> None:
    from framing_palette.catalogue import Kind
    from framing_palette.catalogue.exchange_files import samples_from_file

    samples, _ = samples_from_file(_file(content, folder, "a.csv"), Kind.MAT)
    assert len({sample.code for sample in samples}) == len(samples)


def _design(content: bytes, folder: Path) -> None:
    from framing_palette.design import read_design, read_size_report
    from framing_palette.design.design_writing import design_text

    path = _file(content, folder, "a.toml")
    design = read_design(path, _catalogue())
    again = _file(design_text(design).encode(), folder, "b.toml")
    assert read_design(again, _catalogue()) == design
    read_size_report(path, _catalogue())


def _catalogue() -> Any:
    from framing_palette.catalogue import read_catalogue_folder

    if not _RACK:
        _RACK.append(read_catalogue_folder(seeds.CATALOGUE)[0])
    return _RACK[0]


_RACK: list[Any] = []


def _price_book(content: bytes, folder: Path) -> None:
    from framing_palette.design import price_book_from_text, price_book_text, read_price_book

    book = read_price_book(_file(content, folder, "a.toml"))
    assert price_book_from_text(price_book_text(book), "again") == book


def _job_document(content: bytes, folder: Path) -> None:
    from framing_palette.jobs import job_from_text, job_text

    job = job_from_text(content.decode("utf-8", "replace"), "a job")
    job_from_text(job_text(job), "again")


def _job_file(content: bytes, folder: Path) -> None:
    from framing_palette.jobs import read_job_file

    before = sorted(folder.iterdir())
    path = _file(content, folder, "a.framejob")
    read_job_file(path)
    assert sorted(folder.iterdir()) in (before, sorted([*before, path]))


def _job_archive(content: bytes, folder: Path) -> None:
    """Put a spoilt document into a sound archive whose checksums agree with it."""
    import hashlib
    import json
    import zipfile

    path = folder / "a.framejob"
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("job.json", content)
        sums = {"job.json": hashlib.sha256(content).hexdigest()}
        archive.writestr("checksums.json", json.dumps(sums))
    from framing_palette.jobs import read_job_file

    read_job_file(path)


def _preferences(content: bytes, folder: Path) -> None:
    from framing_palette.window.preference_files import read_preferences, write_preferences

    found = read_preferences(_file(content, folder, "window.json"))
    write_preferences(found, folder / "again.json")
    assert read_preferences(folder / "again.json") == found


def _shop(content: bytes, folder: Path) -> None:
    from framing_palette.papers.shop_files import read_shop

    read_shop(_file(content, folder, "shop.toml"))


def _vocabulary(content: bytes, folder: Path) -> None:
    from framing_palette.papers.vocabulary_files import read_vocabulary

    read_vocabulary(_file(content, folder, "words.toml"))


def _taste(content: bytes, folder: Path) -> None:
    from framing_palette.ranking import read_taste_file, write_taste_file

    read = read_taste_file(_file(content, folder, "taste.json"))
    write_taste_file(folder / "again.json", read.taste)
    assert read_taste_file(folder / "again.json").taste == read.taste


def _label(content: bytes, folder: Path) -> None:
    from framing_palette.picture.labels import LabelFault, read_label

    try:
        read_label(content)
    except LabelFault as fault:
        assert str(fault)


def _place(content: bytes, folder: Path) -> None:
    from framing_palette.jobs.place_files import shop_place

    place = shop_place(_file(content, folder, "jobs.json"))
    assert isinstance(place.shown, str)
    assert isinstance(place.folder, Path)


def _unsent(content: bytes, folder: Path) -> None:
    from framing_palette.jobs.keeping_files import unsent_base

    _file(content, folder, "a.base")
    unsent_base(folder / "a.framejob")


def _intake_results(content: bytes, folder: Path) -> None:
    from framing_palette.catalogue.swatch_intake_files import read_results

    tuple(read_results(_file(content, folder, "results.jsonl")))


def _database(content: bytes, folder: Path) -> None:
    from framing_palette.jobs.store import JobStore

    for left in folder.iterdir():
        if left.is_file():
            left.unlink()
    with JobStore(_file(content, folder, "jobs.sqlite")) as store:
        for work in (store.lines, store.clients, lambda: store.open("J-7")):
            try:
                work()
            except FramingPaletteError:
                continue


def _log(content: bytes, folder: Path) -> None:
    from framing_palette.jobs.log_files import log_tail

    _file(content, folder, "framing-palette.log")
    assert len(log_tail(folder).encode()) <= 3 * 200_000


READERS = (
    Reader("jpeg", _picture, seeds.jpegs),
    Reader("png", _picture, seeds.pngs),
    Reader("tiff", _picture, seeds.tiffs),
    Reader("stills", _picture, seeds.other_stills),
    Reader("avif", _picture, seeds.avifs),
    Reader("heic", _picture, seeds.heics),
    Reader("raw", _raw, seeds.raws),
    Reader("texture", _texture, lambda: [*seeds.pngs(), *seeds.tiffs(), *seeds.other_stills()]),
    Reader("profile", _profile, seeds.profiles),
    Reader("regions", _regions, seeds.regions),
    Reader("corners", _corners, seeds.corners),
    Reader("samples", _rack("samples.csv"), lambda: [seeds.table("samples")]),
    Reader("colours", _rack("colours.csv"), lambda: [seeds.table("colours")]),
    Reader("spectra", _rack("spectra.csv"), lambda: [seeds.table("spectra")]),
    Reader("sections", _rack("profiles.csv"), lambda: [seeds.table("profiles")]),
    Reader("conservation", _rack("conservation.csv"), lambda: [seeds.table("conservation")]),
    Reader("datapackage", _rack("datapackage.json"), seeds.datapackage),
    Reader("surfaces", _surfaces, lambda: [seeds.table("textures")]),
    Reader("export", _export, seeds.exports),
    Reader("spreadsheet", _spreadsheet, seeds.spreadsheets),
    Reader("design", _design, seeds.designs),
    Reader("price_book", _price_book, seeds.price_books),
    Reader("job_document", _job_document, seeds.job_documents),
    Reader("job_archive", _job_archive, seeds.job_documents),
    Reader("job_file", _job_file, seeds.job_files),
    Reader("preferences", _preferences, seeds.preferences),
    Reader("shop", _shop, seeds.shops),
    Reader("vocabulary", _vocabulary, seeds.vocabularies),
    Reader("taste", _taste, seeds.tastes),
    Reader("label", _label, seeds.labels),
    Reader("place", _place, seeds.places),
    Reader("unsent", _unsent, seeds.unsent),
    Reader("intake_results", _intake_results, seeds.intake_results),
    Reader("database", _database, seeds.databases),
    Reader("log", _log, seeds.logs),
)
BY_NAME = {reader.name: reader for reader in READERS}
