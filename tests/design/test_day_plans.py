"""A day's cutting."""

from dataclasses import replace

from framing_palette.design import (
    Art,
    Design,
    layer_of,
    moulding_of,
    plan_day,
    sizes_of,
)
from tests.design.shop import DEEP, FILLET, MAT, Sides, double_mat, mm


def small_job(width, height, fillet=FILLET):
    return Design(
        Art(mm(width), mm(height), mm(1), overlap=mm(3)),
        (
            layer_of(fillet, reveal=Sides.all_round(mm(6))),
            layer_of(MAT, borders=Sides.all_round(mm(60))),
        ),
        moulding=moulding_of(DEEP),
    )


def test_jobs_share_sticks_and_sheets_of_the_same_code():
    jobs = [("job 1", small_job(200, 250)), ("job 2", small_job(200, 300))]
    plan = plan_day(jobs)
    ((sticks, stick_plan),) = plan.sticks
    assert (sticks.name, sticks.length, sticks.mitred) == ("R-DEEP", mm(2740), True)
    alone = [plan_day([job]).sticks[0][1] for job in jobs]
    assert stick_plan.bought <= alone[0].bought + alone[1].bought
    assert sum(len(stick.pieces) for stick in stick_plan.sticks) == 8
    ((sheets, sheet_plan),) = plan.sheets
    assert (sheets.name, sheets.size) == ("M-1", (mm(813), mm(1016)))
    assert len(sheet_plan.sheets) == 1
    names = {placed.blank.name for placed in sheet_plan.sheets[0].placed}
    assert names == {"job 1, layer 2", "job 2, layer 2"}


def test_what_has_no_known_stock_is_named():
    plan = plan_day([("job 1", small_job(200, 250))])
    assert plan.unplanned == ("W-1 has no known stick length: its pieces are not planned.",)
    plain = plan_day([("job 7", double_mat())])
    assert plain.sticks == plain.sheets == ()
    assert plain.unplanned == (
        "job 7, moulding has no known stick length: its pieces are not planned.",
        "job 7, layer 1 has no known sheet size: its pieces are not planned.",
        "job 7, layer 2 has no known sheet size: its pieces are not planned.",
    )


def test_butted_strips_are_cut_square():
    fillet = replace(FILLET, stick=mm(1016))
    plan = plan_day([("job 1", small_job(200, 250, fillet))], kerf=mm(3))
    sticks, strips = next(pair for pair in plan.sticks if pair[0].name == "W-1")
    assert not sticks.mitred
    assert strips.kerf_along == mm(3)
    names = sorted(piece.name for stick in strips.sticks for piece in stick.pieces)
    assert names[0] == "job 1, layer 1, opening 1, bottom strip"
    assert len(names) == 4


def test_parts_without_a_code_share_only_with_their_own_job():
    bare = double_mat(moulding=replace(double_mat().moulding, stick=mm(2740)))
    plan = plan_day([("job 1", bare), ("job 2", bare)])
    assert [sticks.name for sticks, _ in plan.sticks] == ["job 1, moulding", "job 2, moulding"]


def test_a_piece_too_large_for_its_stock_is_named_with_its_job():
    day = plan_day([("job 8", small_job(300, 400)), ("job 9", small_job(900, 950))])
    assert any(sentence.startswith("job 9, layer 2 needs") for sentence in day.unplanned)
    lying = {one.blank.name for _, plan in day.sheets for s in plan.sheets for one in s.placed}
    assert "job 8, layer 2" in lying
    assert "job 9, layer 2" not in lying


def test_a_day_whose_every_board_is_too_large_has_no_sheet_of_it():
    day = plan_day([("job 9", small_job(900, 950))])
    lying = {one.blank.name for _, plan in day.sheets for s in plan.sheets for one in s.placed}
    assert "job 9, layer 2" not in lying


def test_a_plan_of_one_job_is_the_plan_of_its_pieces():
    design = small_job(300, 400)
    frame = sizes_of(design).frame
    assert plan_day([("job", design)]).sticks[0][1].used == frame.moulding_length.value
