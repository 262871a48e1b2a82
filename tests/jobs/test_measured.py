from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.design import Arrangement, Art, Design, Reading, Window, compose
from framing_palette.design.arranging import Layout, layout_of
from framing_palette.errors import (
    FieldError,
    MeasurementsDisagreeError,
    MeasurementsMissingError,
)
from framing_palette.jobs import Job, Option, Status
from framing_palette.jobs.measured import (
    agreed_size,
    is_measured,
    pieces_of,
    readings_of,
    with_pieces_of_art,
    with_reading,
    without_readings,
)
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


ARRANGED = replace(
    DESIGN, arrangement=Arrangement((Window(inch(5), inch(7)), Window(inch(8), inch(10))), 2, inch(1))
)  # fmt: skip
BOTH = replace(JOB, options=(Option(ARRANGED),))


def of(piece: int, width: str, by: str = "AB") -> Reading:
    return replace(reading(width, "7" if piece == 0 else "10", by, 5 * len(by)), piece=piece)


def test_each_of_several_pieces_has_its_own_pair_and_its_own_size() -> None:
    job = BOTH
    assert pieces_of(job) == 2
    for one in (of(0, "5"), of(1, "8"), of(0, "5 1/32", "CDE"), of(1, "7 31/32", "CDE")):
        assert not is_measured(job, tolerance=TOLERANCE, unit="in")
        job = with_reading(job, one, tolerance=TOLERANCE, unit="in")
    assert is_measured(job, tolerance=TOLERANCE, unit="in")
    assert [window.width for window in job.options[0].design.windows] == [inch(5), inch("7 31/32")]
    assert job.options[0].design.art.width == inch(5)
    assert job.art_size == BOTH.art_size
    assert job.history[-1].words == "Measurement 2 of 2 of art 2 taken by CDE."
    again = without_readings(job, 0)
    assert (len(readings_of(again, 0)), len(readings_of(again, 1))) == (0, 2)


def test_a_third_reading_of_one_piece_is_refused_by_its_name() -> None:
    job = BOTH
    for one in (of(0, "5"), of(1, "8"), of(0, "5", "CDE")):
        job = with_reading(job, one, tolerance=TOLERANCE, unit="in")
    with pytest.raises(FieldError, match="art 1 takes two independent ones"):
        with_reading(job, of(0, "5", "FGHI"), tolerance=TOLERANCE, unit="in")


def test_a_piece_before_the_first_is_refused() -> None:
    with pytest.raises(FieldError, match="counted from 0"):
        replace(JOB, measurements=(replace(reading("16"), piece=-1),))


def test_a_design_of_one_piece_takes_nothing_from_another_piece() -> None:
    job = replace(JOB, options=(Option(ARRANGED), Option(DESIGN)), chosen=None)
    for one in (of(1, "8"), of(1, "7 31/32", "CDE")):
        job = with_reading(job, one, tolerance=TOLERANCE, unit="in")
    assert job.options[1].design == DESIGN
    assert job.options[0].design.windows[1].width == inch("7 31/32")


def test_every_design_of_a_job_can_frame_several_pieces_and_one_again() -> None:
    two = with_pieces_of_art(JOB, 2, Layout.COLUMN, inch(1))
    assert [len(option.design.windows) for option in two.options] == [2]
    assert two.options[0].design.arrangement is not None
    assert two.options[0].design.arrangement.columns == 1
    assert (two.chosen, JOB.chosen) == (None, 0)
    measured_two = replace(two, measurements=(of(0, "5"), of(1, "8")))
    one = with_pieces_of_art(measured_two, 1, Layout.ROW, inch(1))
    assert one.options == JOB.options
    assert [reading.piece for reading in one.measurements] == [0]
    assert with_pieces_of_art(one, 1, Layout.ROW, inch(1)) is one


def test_an_agreed_job_is_proposed_again_when_its_pieces_change() -> None:
    agreed = replace(JOB, status=Status.AGREED)
    assert with_pieces_of_art(agreed, 2, Layout.ROW, inch(1)).status is Status.PROPOSED


@pytest.mark.parametrize(
    ("job", "count", "layout", "words"),
    [
        (JOB, 0, Layout.ROW, "1 to 12"),
        (JOB, 13, Layout.ROW, "1 to 12"),
        (JOB, 3, Layout.TWO_ROWS, "even number"),
        (replace(JOB, options=(), chosen=None), 2, Layout.ROW, "build one first"),
        (
            replace(JOB, options=(Option(Design(Art(inch(16), inch(20)))),)),
            2,
            Layout.ROW,
            "need a mat",
        ),
    ],
)
def test_pieces_that_cannot_stand_so_are_refused(
    job: Job, count: int, layout: Layout, words: str
) -> None:
    with pytest.raises(FieldError, match=words):
        with_pieces_of_art(job, count, layout, inch(1))


def test_a_gap_of_nothing_is_refused_by_its_name() -> None:
    with pytest.raises(FieldError, match="gap between openings"):
        with_pieces_of_art(JOB, 2, Layout.ROW, inch(0))


@pytest.mark.parametrize("layout", Layout)
def test_the_layout_that_was_chosen_is_the_one_that_is_told(layout: Layout) -> None:
    design = with_pieces_of_art(JOB, 4, layout, inch(1)).options[0].design
    assert layout_of(design) is layout
    assert layout_of(DESIGN) is Layout.ROW
