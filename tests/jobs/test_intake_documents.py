"""How a photograph is taken in, kept with the job: the light of a plain sheet comes back exactly."""

import json
from dataclasses import replace

import pytest

from framing_palette.errors import JobFileError
from framing_palette.jobs import Job, job_from_text, job_text
from framing_palette.jobs.taking_in import HowTaken
from framing_palette.picture import LightField
from tests.jobs.test_documents import whole_job

FIELD = LightField(
    (0.01, 1 / 3, -0.2, -0.1, 0.05, 1e-9), ((0.0, 0.1), (1.0, 0.0), (0.9, 1.0)), 1.5, 1.75
)


def job_with(how: HowTaken) -> Job:
    return replace(whole_job(), intake=how)


@pytest.mark.parametrize("light", ["auto", "none", FIELD])
def test_what_was_said_of_the_light_comes_back_exactly(light: LightField | str) -> None:
    how = HowTaken(((0.1, 0.1), (0.9, 0.1), (0.9, 0.9), (0.1, 0.9)), "none", (0.5, 0.5), light)
    assert job_from_text(job_text(job_with(how)), "job").intake == how


def test_a_job_without_a_word_on_the_light_has_the_form_that_older_programs_read() -> None:
    assert set(json.loads(job_text(job_with(HowTaken())))["intake"]) == {"corners", "chart", "grey"}


@pytest.mark.parametrize(
    "changes",
    [
        {"coefficients": [0.1, 0.2]},
        {"coefficients": ["dark"]},
        {"coefficients": [0.0] * 101},
        {"area": [[0, 0]]},
        {"proportions": 0},
        {"fall_off": -1},
        {"lamp": "left"},
    ],
)
def test_a_light_that_is_none_is_refused_by_name(changes: dict) -> None:
    document = json.loads(job_text(job_with(HowTaken(light=FIELD))))
    document["intake"]["light"] |= changes
    with pytest.raises(JobFileError, match=r"^job "):
        job_from_text(json.dumps(document), "job")


def test_the_wishes_for_the_intake_name_the_light() -> None:
    assert HowTaken(light=FIELD).wishes(None).light == FIELD
