from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.design import Art, Reading, compose
from framing_palette.errors import (
    FieldError,
    MeasurementsDisagreeError,
    MeasurementsMissingError,
)
from framing_palette.jobs import Job, Option
from framing_palette.jobs.measured import agreed_size, with_reading, without_readings
from framing_palette.units import Length

inch = Length.inches
AT = datetime(2026, 1, 15, 10, 0, tzinfo=UTC)
TOLERANCE = inch("1/32")
MAT = Sample("m", "Mat", Kind.MAT, (SampleColour((90.0, 0.0, 0.0), 1.0),), thickness=inch("1/16"))
DESIGN = compose((MAT,), Art(inch(16), inch(20), overlap=inch("1/8")))
JOB = Job("1", "Boat", AT, AT, art_size=(inch(16), inch(20)), options=(Option(DESIGN),), chosen=0)


def reading(width: str, height: str = "20", by: str = "AB", minutes: int = 0) -> Reading:
    return Reading(inch(width), inch(height), by, AT + timedelta(minutes=minutes))


def measured(*readings: Reading) -> Job:
    job = JOB
    for one in readings:
        job = with_reading(job, one, tolerance=TOLERANCE, unit="in")
    return job


def test_one_measurement_changes_no_design() -> None:
    job = measured(reading("16 1/32"))
    assert job.options == JOB.options
    with pytest.raises(MeasurementsMissingError):
        agreed_size(job, tolerance=TOLERANCE, unit="in")


def test_two_that_agree_give_every_design_the_smaller_size_and_keep_what_was_agreed() -> None:
    job = measured(reading("16 1/32"), reading("16", by="CD", minutes=9))
    assert job.art_size == (inch(16), inch(20))
    assert job.options[0].design.art.width == inch(16)
    assert job.agreed is job.options[0]
    assert [event.words for event in job.history] == [
        "Measurement 1 of 2 taken by AB.",
        "Measurement 2 of 2 taken by CD.",
    ]


def test_two_that_disagree_stay_on_the_job_and_change_no_design() -> None:
    job = measured(reading("16"), reading("16 1/8", by="CD", minutes=9))
    assert len(job.measurements) == 2
    assert job.options == JOB.options
    with pytest.raises(MeasurementsDisagreeError, match="width"):
        agreed_size(job, tolerance=TOLERANCE, unit="in")
    assert without_readings(job).measurements == ()


@pytest.mark.parametrize(
    ("wrong", "field"),
    [(replace(reading("16"), by="  "), "initials"), (reading("0"), "width")],
)
def test_a_reading_without_hand_or_size_is_refused_by_its_field(wrong: Reading, field: str) -> None:
    with pytest.raises(FieldError, match=field):
        measured(wrong)


def test_a_third_measurement_is_refused() -> None:
    with pytest.raises(FieldError, match="two independent"):
        measured(reading("16"), reading("16", by="CD", minutes=9), reading("16", minutes=12))
