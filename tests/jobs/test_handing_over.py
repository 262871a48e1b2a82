"""From a job to its papers: the agreed design as measured, nothing private, nothing deleted."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from decimal import Decimal

import numpy as np
import pytest
from PIL import Image

from framing_palette.catalogue import Catalogue
from framing_palette.design import (
    Basis,
    Charge,
    Part,
    PriceBook,
    Window,
    sizes_of,
)
from framing_palette.errors import (
    JobFileError,
    MeasurementsDisagreeError,
    MeasurementsMissingError,
    NotAgreedError,
    PriceMissingError,
    StackTooDeepError,
    UnknownSampleError,
)
from framing_palette.jobs import Client, Job, Measurement, Option, PackedJob, PictureFile
from framing_palette.jobs.handing_over import DEMO_SHOP, proposal_contents
from framing_palette.jobs.handing_over_files import (
    PaperWishes,
    picture_of,
    write_proposal,
    write_ticket,
)
from framing_palette.jobs.handing_over_ticket import ticket_contents
from framing_palette.jobs.job_files import digest
from framing_palette.papers import Notation, proposal_pdf, ticket_pdf
from framing_palette.papers.proposal import panel_sizes
from framing_palette.picture import read_picture_file
from framing_palette.units import Length
from tests.papers.made_up import MAT, SAMPLES, plain, rich, several, words_of

NOON = datetime(2026, 3, 4, 12, tzinfo=UTC)
RACK = Catalogue(tuple(SAMPLES.values()))
inch = Length.inches


def job_of(*designs, chosen=0, **more) -> Job:
    designs = designs or (plain(),)
    first = designs[0]
    width, height = first.windows[0].width, first.windows[0].height
    facts = {
        "number": "2026-0147",
        "title": "Ferry at dusk",
        "created": NOON,
        "changed": NOON,
        "client": Client("Ada Example", "ada@example.invalid", "never print this"),
        "options": tuple(Option(design, ("Settles into the picture's edge.",)) for design in designs),
        "chosen": chosen,
        "measurements": (
            Measurement(width, height, "AE", NOON),
            Measurement(width, height - inch("1/32"), "BX", NOON + timedelta(hours=1)),
        ),
    }  # fmt: skip
    return Job(**{**facts, **more})


@pytest.fixture(scope="module")
def photograph(tmp_path_factory) -> bytes:
    path = tmp_path_factory.mktemp("picture") / "sea.png"
    rows = np.linspace(60, 180, 100).astype(np.uint8)
    Image.fromarray(np.repeat(rows[:, None, None], 120, axis=1).repeat(3, axis=2)).save(path)
    return path.read_bytes()


@pytest.fixture(scope="module")
def picture(tmp_path_factory, photograph):
    path = tmp_path_factory.mktemp("read") / "sea.png"
    path.write_bytes(photograph)
    return read_picture_file(path)


def packed(job: Job, photograph: bytes) -> PackedJob:
    return PackedJob(replace(job, picture=PictureFile("sea.png", digest(photograph))), photograph)


def test_the_ticket_is_cut_for_the_smaller_of_both_readings():
    contents = ticket_contents(job_of(), RACK)
    assert contents.design.art.height == inch(20) - inch("1/32")
    opening = contents.cuttable.sizes.layers[0].opening.size.lengths
    assert opening == (inch("15 3/4"), inch("19 3/4") - inch("1/32"))
    assert [measured.first.by for measured in contents.measured] == ["AE"]


def test_a_job_without_an_agreed_design_has_no_ticket():
    with pytest.raises(NotAgreedError, match="2026-0147"):
        ticket_contents(job_of(chosen=None), RACK)


@pytest.mark.parametrize("count", [0, 1])
def test_a_job_measured_less_than_twice_has_no_ticket(count):
    job = job_of()
    with pytest.raises(MeasurementsMissingError):
        ticket_contents(replace(job, measurements=job.measurements[:count]), RACK)


def test_measurements_that_disagree_stop_the_ticket():
    job = job_of()
    first, second = job.measurements
    wrong = replace(second, width=first.width + inch("1/4"))
    with pytest.raises(MeasurementsDisagreeError, match="width"):
        ticket_contents(replace(job, measurements=(first, wrong)), RACK)


def test_a_metric_design_allows_a_millimetre_between_the_readings():
    design = replace(plain(), unit="mm")
    job = job_of(design)
    first, _ = job.measurements
    other = replace(first, by="BX", width=first.width - Length.mm_of(1))
    assert ticket_contents(replace(job, measurements=(first, other)), RACK)
    with pytest.raises(MeasurementsDisagreeError):
        ticket_contents(job_of(measurements=(first, other)), RACK)


def test_a_deleted_sample_is_told_and_nothing_is_printed(picture):
    smaller = Catalogue(tuple(one for one in RACK.samples if one.code != MAT.code))
    with pytest.raises(UnknownSampleError, match="M-ONE"):
        ticket_contents(job_of(), smaller)
    with pytest.raises(UnknownSampleError, match="M-ONE"):
        proposal_contents(job_of(), picture, smaller)


def test_a_stack_too_deep_needs_the_framer_s_agreement():
    job = job_of(rich())
    with pytest.raises(StackTooDeepError):
        ticket_contents(job, RACK)
    contents = ticket_contents(job, RACK, out_of_rabbet=True)
    assert not contents.cuttable.depth.fits


def test_rails_are_planned_out_of_the_moulding_s_sticks():
    contents = ticket_contents(job_of(), RACK)
    assert {piece.name for stick in contents.sticks.sticks for piece in stick.pieces} == {
        "top rail", "right rail", "bottom rail", "left rail",
    }  # fmt: skip
    unframed = replace(plain(), moulding=None)
    assert ticket_contents(job_of(unframed), RACK).sticks is None


def test_a_frame_longer_than_any_stick_leaves_the_plan_out_and_says_so():
    long = replace(plain(), art=replace(plain().art, width=inch(120)))
    contents = ticket_contents(job_of(long), RACK)
    assert contents.sticks is None
    assert any("order a longer stick" in sentence for sentence in contents.cautions)


def test_equal_windows_take_the_measured_size_and_the_ticket_warns():
    contents = ticket_contents(job_of(several()), RACK)
    assert {window.height for window in contents.design.windows} == {inch(7) - inch("1/32")}
    assert contents.is_measured_for_all
    assert ticket_pdf(contents)


def test_unequal_windows_cannot_be_cut_by_one_measurement():
    design = several()
    windows = (*design.arrangement.windows[:5], Window(inch(6), inch(7)))
    mixed = replace(design, arrangement=replace(design.arrangement, windows=windows))
    with pytest.raises(MeasurementsMissingError, match="each of the 6"):
        ticket_contents(job_of(mixed), RACK)


def two_windows():
    """Two pieces of art of different sizes side by side in one mat."""
    design = several()
    windows = (Window(inch(5), inch(7)), Window(inch(8), inch("10 1/2")))
    return replace(design, arrangement=replace(design.arrangement, windows=windows, columns=2))


def of_both(first=("5", "7"), second=("8", "10 1/2"), apart="0") -> tuple[Measurement, ...]:
    """Two readings of each piece, the second of each ``apart`` wider."""
    return tuple(
        Measurement(
            inch(width) + (inch(apart) if by == "BX" else inch(0)),
            inch(height),
            by,
            NOON + timedelta(minutes=10 * piece),
            piece=piece,
        )
        for piece, (width, height) in enumerate((first, second))
        for by in ("AE", "BX")
    )


def test_two_different_windows_are_cut_each_by_its_own_pair_and_the_ticket_prints_both():
    measured = of_both(second=("7 15/16", "10 1/2"))
    contents = ticket_contents(job_of(two_windows(), measurements=measured), RACK)
    sizes = [(window.width, window.height) for window in contents.design.windows]
    assert sizes == [(inch(5), inch(7)), (inch("7 15/16"), inch("10 1/2"))]
    openings = [o.size.lengths for o in contents.cuttable.sizes.layers[0].openings]
    assert openings == [(inch("4 3/4"), inch("6 3/4")), (inch("7 11/16"), inch("10 1/4"))]
    words = words_of(ticket_pdf(contents))
    for told in ("Art 1 of 2", "Art 2 of 2", "5 × 7 in", "7 15/16 × 10 1/2 in"):
        assert told in words
    assert not contents.is_measured_for_all


def test_a_pair_that_disagrees_stops_the_ticket_and_names_the_piece_and_the_side():
    job = job_of(two_windows(), measurements=of_both(apart="1/16"))
    with pytest.raises(MeasurementsDisagreeError, match="The width of art 1 was measured as 5 in"):
        ticket_contents(job, RACK)
    second = (*of_both()[:2], *of_both(apart="1/16")[2:])
    with pytest.raises(MeasurementsDisagreeError, match="The width of art 2 was measured"):
        ticket_contents(replace(job, measurements=second), RACK)


def test_a_piece_measured_once_has_no_ticket():
    job = job_of(two_windows(), measurements=of_both()[:3])
    with pytest.raises(MeasurementsMissingError, match="3 measurements where 4 are needed"):
        ticket_contents(job, RACK)


def test_equal_windows_that_are_each_measured_need_no_warning():
    design = several()
    windows = design.arrangement.windows[:2]
    alike = replace(design, arrangement=replace(design.arrangement, windows=windows, columns=2))
    measured = of_both(second=("5", "6 15/16"))
    contents = ticket_contents(job_of(alike, measurements=measured), RACK)
    assert not contents.is_measured_for_all
    assert [window.height for window in contents.design.windows] == [inch(7), inch("6 15/16")]


def test_the_tolerance_of_the_shop_decides_and_not_the_usual_one():
    job = job_of()
    first, second = job.measurements
    apart = replace(job, measurements=(first, replace(second, width=first.width - inch("1/16"))))
    with pytest.raises(MeasurementsDisagreeError, match="1/32 in is allowed"):
        ticket_contents(apart, RACK)
    contents = ticket_contents(apart, RACK, tolerance=inch("1/16"))
    assert contents.design.art.width == first.width - inch("1/16")
    with pytest.raises(MeasurementsDisagreeError, match="1/64 in is allowed"):
        ticket_contents(job, RACK, tolerance=inch("1/64"))


def test_mats_are_laid_on_their_sheets_and_called_by_their_cuts():
    contents = ticket_contents(job_of(), RACK)
    (stock,) = contents.sheets
    assert stock.name == f"{MAT.code}  {MAT.name}"
    assert stock.numbers == {"cut 1": 1}
    (sheet,) = stock.plan.sheets
    assert [placed.blank.name for placed in sheet.placed] == ["cut 1"]
    assert sheet.placed[0].blank.width == contents.cuttable.sizes.contents.width.value
    assert (sheet.size[0].mm, sheet.size[1].mm) == (813, 1016)


def test_a_mat_larger_than_its_sheet_is_said_on_the_ticket():
    large = replace(plain(), art=replace(plain().art, width=inch(50)))
    contents = ticket_contents(job_of(large), RACK)
    assert contents.sheets == ()
    assert any("order an oversize sheet" in sentence for sentence in contents.cautions)


def test_the_pictures_can_show_the_client_s_light_and_the_page_says_so(picture):
    usual = proposal_contents(job_of(), picture, RACK)
    warm = proposal_contents(job_of(), picture, RACK, under="A")
    assert (usual.light, warm.light) == ("", "warm bulbs")
    assert "under warm bulbs" in words_of(proposal_pdf(warm))
    assert "under" not in words_of(proposal_pdf(usual)).split("MADE OF")[1]
    assert not np.array_equal(usual.options[0].srgb, warm.options[0].srgb)


def test_the_proposal_shows_every_option_with_its_words(picture):
    contents = proposal_contents(job_of(plain(), rich(), chosen=1), picture, RACK, shop=DEMO_SHOP)
    assert [option.name for option in contents.options] == [plain().name, rich().name]
    assert (contents.lead, contents.is_agreed) == (1, True)
    assert contents.options[0].reasons[0] == "Settles into the picture's edge."
    assert ("Frame", "r one, oak") in contents.options[0].parts
    assert contents.validity == "Valid until 3 April 2026"
    rails = sizes_of(plain()).frame.rails
    notation = Notation("in")
    expected = notation.pair(rails[0].long_point.value, rails[1].long_point.value)
    assert contents.options[0].outside == f"{expected} in"


def test_pictures_fill_the_panels_of_the_page(picture):
    for page in ("A4", "Letter"):
        contents = proposal_contents(job_of(plain(), rich()), picture, RACK, page=page)
        boxes = panel_sizes(contents, page=page)
        for option, (width, height) in zip(contents.options, boxes, strict=True):
            rows, columns = option.srgb.shape[:2]
            assert columns / rows == pytest.approx(width / height, rel=0.02)


def test_no_more_than_three_options_are_shown_and_the_agreed_one_is_among_them(picture):
    designs = [replace(plain(), name=f"Design {number}") for number in range(5)]
    contents = proposal_contents(job_of(*designs, chosen=4), picture, RACK)
    assert [option.name for option in contents.options] == ["Design 0", "Design 1", "Design 4"]
    assert contents.lead == 2
    first = proposal_contents(job_of(*designs, chosen=None), picture, RACK)
    assert (first.lead, first.is_agreed) == (0, False)


def test_a_job_without_a_design_has_no_proposal(picture):
    with pytest.raises(NotAgreedError, match="a design to show"):
        proposal_contents(job_of(options=(), chosen=None), picture, RACK)


def charge(part: Part, title: str, rate: str, **more) -> Charge:
    return Charge(title, part, Basis.EACH, Decimal(rate), **more)


BOOK = PriceBook(
    "USD",
    (
        charge(Part.MAT, "Mat", "20.00"),
        charge(Part.GLAZING, "Glass at the secret rate", "30.00", private=True),
        charge(Part.BACKING, "Back", "5.00"),
        charge(Part.MOULDING, "Frame", "90.00"),
        charge(Part.JOB, "Secret margin", "111.00", private=True),
    ),
    private_title="Workmanship",
)


def test_private_lines_reach_neither_the_contents_nor_the_page(picture):
    contents = proposal_contents(job_of(), picture, RACK, book=BOOK)
    price = contents.options[0].price
    assert ("Workmanship", "", "141.00 USD") in price.lines
    assert price.total == "256.00 USD"
    words = words_of(proposal_pdf(contents))
    for secret in ("Secret", "secret", "111.00", "never print this", "ada@example.invalid"):
        assert secret not in words
    assert "256.00 USD" in words


def test_a_missing_price_is_told_rather_than_left_out(picture):
    book = replace(BOOK, charges=BOOK.charges[1:])
    with pytest.raises(PriceMissingError, match="M-ONE"):
        proposal_contents(job_of(), picture, RACK, book=book)


def test_squares_are_written_as_people_expect_them(picture):
    area = replace(charge(Part.GLAZING, "Glass", "10.00"), basis=Basis.AREA, per="ft2")
    book = replace(BOOK, charges=(BOOK.charges[0], area, *BOOK.charges[2:]))
    lines = proposal_contents(job_of(), picture, RACK, book=book).options[0].price.lines
    assert any("ft²" in how for title, how, _ in lines if title == "Glass")


def test_several_pieces_are_counted_rather_than_sized(picture):
    contents = proposal_contents(job_of(several()), picture, RACK)
    assert contents.art == "6 pieces of art"


def test_what_had_to_be_assumed_for_the_pictures_is_told(tmp_path, photograph):
    told: list[str] = []
    job = packed(job_of(), photograph)  # its photograph is nearly square, its art is not
    write_proposal(job, "a.framejob", RACK, tmp_path, tell=told.append)
    assert any("proportions differ" in notice for notice in told)
    assert len(set(told)) == len(told)


def test_files_are_written_with_the_wishes_they_were_asked_for(tmp_path, photograph):
    job = packed(job_of(), photograph)
    wishes = PaperWishes("Letter", DEMO_SHOP, Notation("mm", "in"), BOOK)
    proposal = write_proposal(job, "a.framejob", RACK, tmp_path / "papers", wishes)
    ticket, *drawings = write_ticket(job, RACK, tmp_path / "papers", wishes, with_drawings=True)
    assert "256.00 USD" in words_of(proposal.read_bytes())
    words = words_of(ticket.read_bytes())
    assert "CUTS millimetres" in words
    assert "Lengths in millimetres and inches" in words
    assert {path.name for path in drawings} == {
        "face.svg", "face.dxf", "section.svg", "section.dxf", "mat-1.svg", "mat-1.dxf",
    }  # fmt: skip
    assert all(path.stat().st_size for path in drawings)


def test_the_same_job_gives_the_same_papers_to_the_byte(tmp_path, photograph):
    job = packed(job_of(plain(), rich()), photograph)
    written = []
    for name in ("one", "two"):
        folder = tmp_path / name
        proposal = write_proposal(job, "a.framejob", RACK, folder)
        paths = (proposal, *write_ticket(job, RACK, folder, with_drawings=True))
        written.append([path.read_bytes() for path in paths])
    assert written[0] == written[1]


def test_a_job_file_without_a_photograph_says_so():
    with pytest.raises(JobFileError, match="holds no photograph"):
        picture_of(PackedJob(job_of()), "a.framejob")


def test_the_picture_travels_through_the_job_file(photograph, picture):
    found = picture_of(packed(job_of(), photograph), "a.framejob")
    assert np.array_equal(found.lab_d50, picture.lab_d50)
