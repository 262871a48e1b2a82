"""A job's document: reading it back gives the same job, and a broken one is refused by name."""

import json
from dataclasses import replace
from datetime import UTC, datetime, timedelta, timezone
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.catalogue import Kind
from framing_palette.design import Art, Design, Glazing, Layer, Moulding, Sides
from framing_palette.errors import JobFileError
from framing_palette.jobs import (
    Client,
    DeskState,
    Event,
    Job,
    Measurement,
    OnRail,
    Option,
    PictureFile,
    SentAway,
    Status,
    job_from_text,
    job_text,
)
from framing_palette.picture import Part, Region, Role
from framing_palette.ranking.strips import Strip
from framing_palette.units import Length

inch = Length.inches
NOON = datetime(2026, 3, 4, 12, 0, 0, 123456, tzinfo=timezone(timedelta(hours=2)))


def whole_job() -> Job:
    design = Design(
        art=Art(inch(16), inch(20), overlap=inch(Fraction(1, 8))),
        layers=(Layer(Kind.MAT, Length.mm_of(Fraction(14, 10)), borders=Sides.all_round(inch(3))),),
        glazing=Glazing("acrylic", Length.mm_of(2)),
        moulding=Moulding(inch(1), inch(Fraction(1, 4)), inch(Fraction(5, 8))),
        name="Quiet one",
    )
    return Job(
        number="J-7",
        title="Harbour at dusk",
        created=NOON,
        changed=NOON + timedelta(minutes=3),
        client=Client("Ada Example", "ada@example.invalid", "comes on Fridays"),
        status=Status.PROPOSED,
        picture=PictureFile("harbour.jpg", "ab" * 32),
        art_size=(inch(16), inch(Fraction(641, 32))),
        regions=(
            Region(
                "boat",
                Role.FOCUS,
                (
                    Part(((0.1, 0.2), (0.4, 0.2), (0.3, 0.5))),
                    Part(((0.2, 0.25), (0.3, 0.25), (0.25, 1 / 3)), subtract=True),
                ),
            ),
        ),
        measurements=(
            Measurement(inch(16), inch(20), "AE", NOON),
            Measurement(
                inch(16),
                inch(Fraction(639, 32)),
                "BX",
                NOON + timedelta(hours=1),
                (inch(Fraction(819, 32)), inch(Fraction(820, 32))),
            ),
        ),
        options=(Option(design, ("Repeats the red of the buoy.",), "the client liked this"),),
        chosen=0,
        kept=("M-ONE", "M-TWO"),
        catalogue="spring rack",
        note="do not fold",
        history=(Event(NOON, "opened"),),
    )


def test_a_job_read_back_from_its_document_is_the_same_job() -> None:
    job = whole_job()
    assert job_from_text(job_text(job), "job.json") == job


@given(
    number=st.text(min_size=1).filter(str.strip),
    title=st.text(),
    note=st.text(),
    width=st.fractions(min_value=Fraction(1, 64), max_value=10_000),
    at=st.datetimes(timezones=st.just(UTC)),
)
def test_any_text_and_any_exact_length_survive_the_document(
    number: str, title: str, note: str, width: Fraction, at: datetime
) -> None:
    job = replace(
        whole_job(),
        number=number,
        title=title,
        note=note,
        art_size=(Length.mm_of(width), inch(1)),
        created=at,
    )
    assert job_from_text(job_text(job), "job.json") == job


def test_a_job_read_back_lies_on_the_desk_as_it_was_left() -> None:
    desk = DeskState(
        laid=("M-ONE", "R-ONE"),
        strips=(Strip(3, "M-TWO", 0.1, 1 / 3, 250.0, 63.5, 12.25, bent=True),),
        rail=(OnRail(("M-ONE", "R-ONE"), "The first one", "the client liked this"),),
        away=(SentAway("M-SIX", "too bright"),),
    )
    job = replace(whole_job(), desk=desk)
    assert job_from_text(job_text(job), "job.json") == job


def test_a_strip_that_is_nowhere_is_refused_by_its_field() -> None:
    job = replace(whole_job(), desk=DeskState(strips=(Strip(1, "A", 0.0, 0.0, 1.0, 1.0),)))
    text = job_text(job).replace('"x_mm": 0.0', '"x_mm": NaN')
    with pytest.raises(JobFileError, match=r"desk\.strips\.0\.x_mm"):
        job_from_text(text, "job.json")


@pytest.mark.parametrize("field", ["number", "title", "created", "form"])
def test_a_document_without_a_needed_field_is_refused_by_its_name(field: str) -> None:
    document = json.loads(job_text(whole_job()))
    del document[field]
    with pytest.raises(JobFileError, match=field):
        job_from_text(json.dumps(document), "job.json")


def test_a_document_of_form_1_is_lifted_its_measurements_of_the_only_piece() -> None:
    document = json.loads(job_text(whole_job())) | {"form": "framing-palette/job@1"}
    for reading in document["measurements"]:
        del reading["piece"]
    del document["desk"]
    assert job_from_text(json.dumps(document), "job.json") == whole_job()


def test_the_pieces_of_measurements_survive_the_document() -> None:
    first, second = whole_job().measurements
    others = (replace(first, piece=1), replace(second, piece=1))
    job = replace(whole_job(), measurements=(first, second, *others))
    assert job_from_text(job_text(job), "job.json") == job
    document = json.loads(job_text(job))
    document["measurements"][0]["piece"] = -1
    with pytest.raises(JobFileError, match="piece"):
        job_from_text(json.dumps(document), "job.json")


def test_a_newer_document_with_fields_that_are_not_known_still_says_what_to_do() -> None:
    document = json.loads(job_text(whole_job())) | {"form": "framing-palette/job@99", "more": 1}
    with pytest.raises(JobFileError, match="newer version"):
        job_from_text(json.dumps(document), "job.json")


def test_a_document_of_a_newer_form_is_refused_and_says_what_to_do() -> None:
    document = json.loads(job_text(whole_job())) | {"form": "framing-palette/job@99"}
    with pytest.raises(JobFileError, match="newer version"):
        job_from_text(json.dumps(document), "job.json")


@pytest.mark.parametrize("text", ["", "[]", "null", "{", '{"form": 1}', "\x00"])
def test_what_is_not_a_job_is_refused_with_the_documents_name(text: str) -> None:
    with pytest.raises(JobFileError, match=r"job\.json"):
        job_from_text(text, Path("job.json"))


def test_a_measurement_that_is_no_length_is_refused_by_its_field() -> None:
    document = json.loads(job_text(whole_job()))
    document["measurements"][0]["width"] = "wide"
    with pytest.raises(JobFileError, match="measurement width"):
        job_from_text(json.dumps(document), "job.json")


def test_a_chosen_option_that_is_not_there_is_refused() -> None:
    document = json.loads(job_text(whole_job())) | {"chosen": 5}
    with pytest.raises(JobFileError, match="chosen"):
        job_from_text(json.dumps(document), "job.json")
