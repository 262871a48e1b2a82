from datetime import UTC, datetime, timedelta

import pytest

from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.design import Art, compose
from framing_palette.errors import FieldError, NotAgreedError
from framing_palette.jobs import Job, Option, Status
from framing_palette.jobs.agreeing import STATUS_WORDS, with_choice, with_status
from framing_palette.units import Length

AT = datetime(2026, 1, 15, 10, 0, tzinfo=UTC)
LATER = AT + timedelta(hours=1)
MAT = Sample(
    "m", "Mat", Kind.MAT, (SampleColour((90.0, 0.0, 0.0), 1.0),), thickness=Length.mm_of(1)
)
ART = Art(Length.inches(16), Length.inches(20), overlap=Length.inches("1/8"))
JOB = Job(
    "1",
    "Boat",
    AT,
    AT,
    options=tuple(Option(compose((MAT,), ART, name=name)) for name in ("Quiet", "Bold")),
)


def test_choosing_a_design_agrees_the_job_and_says_when() -> None:
    job = with_choice(JOB, 1, LATER)
    assert (job.status, job.chosen, job.changed) == (Status.AGREED, 1, LATER)
    assert job.history[-1].words == "Agreed on: Bold."


def test_another_choice_in_the_workshop_does_not_move_the_job_back() -> None:
    job = with_status(with_choice(JOB, 0, AT), Status.WORKSHOP, AT)
    assert with_choice(job, 1, LATER).status is Status.WORKSHOP


def test_a_design_that_is_not_there_cannot_be_chosen() -> None:
    with pytest.raises(FieldError, match="one of the 2 designs"):
        with_choice(JOB, 2, AT)


@pytest.mark.parametrize("status", [Status.AGREED, Status.WORKSHOP, Status.READY])
def test_nothing_goes_on_before_a_design_is_agreed_on(status: Status) -> None:
    with pytest.raises(NotAgreedError):
        with_status(JOB, status, AT)


def test_a_job_that_is_only_proposed_again_has_nothing_agreed() -> None:
    job = with_status(with_choice(JOB, 0, AT), Status.PROPOSED, LATER)
    assert job.agreed is None
    assert job.history[-1].words == "Proposed."


def test_the_same_status_again_is_no_event() -> None:
    assert with_status(JOB, Status.OPEN, LATER) is JOB


def test_every_status_has_its_words() -> None:
    assert set(STATUS_WORDS) == set(Status)
