"""Every form of job file and database that was ever released opens, for ever.

A new form adds a folder to tests/files and a test here; what is there is never written again.
"""

import shutil
from pathlib import Path

from framing_palette.design import Shape, design_text
from framing_palette.jobs import Status, job_text, read_job_file
from framing_palette.jobs.job_lines import Wanted
from framing_palette.jobs.store import JobStore
from framing_palette.units import Length
from tests.jobs.test_documents import whole_job

FILES = Path(__file__).parents[1] / "files"
CODES = ["WF-SAND", "M-WET-SAND", "R-CHAMPAGNE-NARROW"]


def test_a_job_file_of_form_1_opens_with_all_that_was_agreed() -> None:
    packed = read_job_file(FILES / "job_1" / "demo.framejob")
    job = packed.job
    assert (job.number, job.title, job.status) == ("DEMO-1", "Ferry at Dusk", Status.AGREED)
    assert job.client.name == "Invented client (demo)"
    assert job.art_size == (Length.mm_of(600), Length.mm_of(420))
    assert [region.name for region in job.regions[:3]] == ["ferry", "lights in the water", "buoy"]
    assert [reading.by for reading in job.measurements] == ["DE", "MO"]
    assert [len(job.options), job.chosen, len(job.history)] == [3, 0, 2]
    agreed = job.agreed
    assert agreed is not None
    assert agreed.design.moulding is not None
    codes = [*(layer.code for layer in agreed.design.layers), agreed.design.moulding.code]
    assert codes == CODES
    assert agreed.reasons
    assert packed.picture is not None
    assert len(packed.picture) == 7390


def test_a_job_file_of_form_2_opens_with_both_readings_of_both_pieces_and_its_desk() -> None:
    job = read_job_file(FILES / "job_2" / "two_pieces.framejob").job
    assert (job.number, job.title, job.chosen) == ("DEMO-2", "Two invented pieces", 0)
    assert [(reading.piece, reading.by) for reading in job.measurements] == [
        (0, "DE"), (0, "MO"), (1, "DE"), (1, "MO"),
    ]  # fmt: skip
    assert job.measurements[3].width == Length.mm_of(180)
    agreed = job.agreed
    assert agreed is not None
    assert [window.height for window in agreed.design.windows] == [
        Length.inches(11), Length.mm_of(240),
    ]  # fmt: skip
    assert [window.shape for window in agreed.design.windows] == [Shape.RECTANGLE, Shape.OVAL]
    assert job.desk.laid == ("M-WET-SAND",)
    assert [kept.note for kept in job.desk.rail] == ["liked"]
    assert [away.reason for away in job.desk.away] == ["too bright"]


def test_a_database_of_form_1_opens_with_every_job(tmp_path: Path) -> None:
    path = shutil.copy(FILES / "jobs_1" / "jobs.sqlite", tmp_path / "jobs.sqlite")
    with JobStore(path) as store:
        assert [line.number for line in store.lines()] == ["J-7", "DEMO-1"]
        assert store.open("J-7").version == 2
        assert store.open("J-7").job == whole_job()
        demo = store.open("DEMO-1").job
        assert store.count(Wanted(sample=CODES[-1], client="invented")) == 1
    sent = read_job_file(FILES / "job_1" / "demo.framejob").job
    assert job_text(demo) == job_text(sent)
    assert [design_text(option.design) for option in demo.options] == [
        design_text(option.design) for option in sent.options
    ]
