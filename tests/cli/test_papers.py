"""``framing-palette papers``: both papers from a job file, or one sentence why not."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from framing_palette.design import design_from_text
from framing_palette.jobs import (
    Client,
    Job,
    Measurement,
    Option,
    PackedJob,
    PictureFile,
    write_job_file,
)
from framing_palette.jobs.job_files import digest
from framing_palette.units import Length
from tests.cli.conftest import DESIGN, Command
from tests.papers.made_up import words_of

NOON = datetime(2026, 3, 4, 12, tzinfo=UTC)
inch = Length.inches


def job_of(picture: Path) -> PackedJob:
    design = design_from_text(DESIGN, "design.toml")
    content = picture.read_bytes()
    job = Job(
        number="2026-0147",
        title="Ferry at dusk",
        created=NOON,
        changed=NOON,
        client=Client("Ada Example"),
        picture=PictureFile(picture.name, digest(content)),
        options=(Option(design, ("Settles into the picture's edge.",)),),
        chosen=0,
        measurements=(
            Measurement(inch(16), inch(20), "AE", NOON),
            Measurement(inch(16), inch(20), "BX", NOON + timedelta(hours=1)),
        ),
    )
    return PackedJob(job, content)


@pytest.fixture
def job_file(tmp_path: Path, picture: Path) -> Path:
    path = tmp_path / "ferry.framejob"
    write_job_file(path, job_of(picture))
    return path


def unmeasured(tmp_path: Path, picture: Path) -> Path:
    packed = job_of(picture)
    path = tmp_path / "once.framejob"
    once = replace(packed.job, measurements=packed.job.measurements[:1])
    write_job_file(path, replace(packed, job=once))
    return path


def test_both_papers_are_written_and_named(
    command: Command, job_file: Path, rack: Path, tmp_path: Path
) -> None:
    out = tmp_path / "papers"
    ended = command("papers", job_file, "--out", out, "--catalog", rack, "--json")
    assert ended.code == 0
    assert ended.json == {
        "schema": "framing-palette/papers@1",
        "page": "A4",
        "proposal": str(out / "proposal.pdf"),
        "ticket": str(out / "ticket.pdf"),
        "drawings": [],
    }
    assert "Ferry at dusk" in words_of((out / "proposal.pdf").read_bytes())
    assert "19 3/4 high" in words_of((out / "ticket.pdf").read_bytes())


def test_without_json_the_paths_are_printed(
    command: Command, job_file: Path, rack: Path, tmp_path: Path
) -> None:
    ended = command("papers", job_file, "--out", tmp_path, "--catalog", rack, "--drawings")
    assert ended.code == 0
    lines = ended.out.splitlines()
    assert lines[:2] == [str(tmp_path / "proposal.pdf"), str(tmp_path / "ticket.pdf")]
    assert len(lines) == 2 + 2 * 4  # face, section and two mats, each twice
    assert all(Path(line).exists() for line in lines)


def test_an_unmeasured_job_gets_its_proposal_and_no_ticket(
    command: Command, picture: Path, rack: Path, tmp_path: Path
) -> None:
    job = unmeasured(tmp_path, picture)
    ended = command("papers", job, "--out", tmp_path / "out", "--catalog", rack)
    assert ended.code == 2
    assert "There are 1 measurements where 2 are needed" in ended.err
    assert f"Written: {tmp_path / 'out' / 'proposal.pdf'}" in ended.err
    assert [path.name for path in (tmp_path / "out").iterdir()] == ["proposal.pdf"]


@pytest.mark.parametrize("only", ["proposal", "ticket"])
def test_one_paper_alone_can_be_asked_for(
    command: Command, job_file: Path, rack: Path, tmp_path: Path, only: str
) -> None:
    out = tmp_path / "out"
    ended = command("papers", job_file, "--out", out, "--catalog", rack, "--only", only, "--json")
    assert [path.name for path in out.iterdir()] == [f"{only}.pdf"]
    assert {key for key in ("proposal", "ticket") if ended.json[key]} == {only}


def test_units_page_shop_words_and_prices_are_as_wished(
    command: Command, job_file: Path, rack: Path, tmp_path: Path
) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text('name = "Anyone"\nlines = ["1 Some Street"]\n')
    words = tmp_path / "words.toml"
    words.write_text("word = []\n")
    book = tmp_path / "book.toml"
    book.write_text(PRICES)
    ended = command(
        "papers", job_file, "--out", tmp_path, "--catalog", rack, "--page", "Letter",
        "--units", "mm,in", "--shop", shop, "--vocabulary", words, "--price-book", book, "--json",
        "--valid-days", 10,
    )  # fmt: skip
    assert ended.code == 0, ended.err
    assert ended.json["page"] == "Letter"
    proposal = words_of((tmp_path / "proposal.pdf").read_bytes())
    assert "Anyone" in proposal
    assert "Valid until 14 March 2026" in proposal
    assert "Invented shop" not in proposal
    assert "USD" in proposal
    assert "CUTS millimetres" in words_of((tmp_path / "ticket.pdf").read_bytes())


PRICES = """
currency = "USD"
[[charge]]
title = "Mat"
part = "mat"
by = "each"
rate = "20.00"
[[charge]]
title = "Glass"
part = "glazing"
by = "each"
rate = "20.00"
[[charge]]
title = "Back"
part = "backing"
by = "each"
rate = "20.00"
[[charge]]
title = "Frame"
part = "moulding"
by = "each"
rate = "20.00"
"""


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--shop", "none.toml"), "none.toml cannot be read"),
        (("--vocabulary", "none.toml"), "none.toml cannot be read"),
        (("--price-book", "none.toml"), "none.toml"),
        (("--catalog", "none"), "none"),
        (("--valid-days", "0"), "--valid-days is 0"),
    ],
)
def test_a_missing_input_is_one_sentence(
    command: Command, job_file: Path, tmp_path: Path, words: tuple[str, ...], told: str
) -> None:
    ended = command("papers", job_file, "--out", tmp_path / "out", *words)
    assert ended.code == 2
    assert told in ended.err
    assert "Traceback" not in ended.err
    assert not (tmp_path / "out").exists()


def test_a_file_that_is_no_job_is_told(command: Command, rack: Path, tmp_path: Path) -> None:
    path = tmp_path / "notes.framejob"
    path.write_text("not a job")
    ended = command("papers", path, "--out", tmp_path / "out", "--catalog", rack)
    assert ended.code == 2
    assert "notes.framejob" in ended.err


def test_an_unknown_unit_is_refused_before_anything_is_read(
    command: Command, job_file: Path, tmp_path: Path
) -> None:
    assert command("papers", job_file, "--out", tmp_path, "--units", "ft").code == 2


def test_jobs_are_planned_together_out_of_their_stock(
    command: Command, job_file: Path, rack: Path, tmp_path: Path, picture: Path
) -> None:
    packed = job_of(picture)
    other = tmp_path / "other.framejob"
    write_job_file(other, replace(packed, job=replace(packed.job, number="2026-0148")))
    out = tmp_path / "papers"
    ended = command(
        "papers", job_file, "--with", other, "--out", out, "--catalog", rack, "--only", "ticket"
    )
    assert ended.code == 0
    assert ended.out.splitlines()[-1] == str(out / "cutting.pdf")
    words = words_of((out / "cutting.pdf").read_bytes())
    assert "2026-0147" in words
    assert "2026-0148" in words


def test_a_job_that_is_not_measured_cannot_be_planned_with_another(
    command: Command, job_file: Path, rack: Path, tmp_path: Path, picture: Path
) -> None:
    once, out = unmeasured(tmp_path, picture), tmp_path / "papers"
    ended = command(
        "papers", job_file, "--with", once, "--out", out, "--catalog", rack, "--only", "ticket"
    )
    assert ended.code == 2
    assert "where 2 are needed" in ended.err
