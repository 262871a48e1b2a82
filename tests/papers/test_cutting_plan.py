"""The cutting plan: every piece of several jobs once, in its stock, called by its job."""

from dataclasses import replace

import pytest

from framing_palette.catalogue import Catalogue
from framing_palette.design import plan_day, sizes_of
from framing_palette.errors import MeasurementsMissingError
from framing_palette.jobs.handing_over_ticket import cutting_plan
from framing_palette.papers import CuttingPlan, Notation, cutting_plan_pdf
from framing_palette.papers.cutting_plan import cutting_plan_pages
from tests.jobs.test_handing_over import job_of
from tests.papers.layouts import outside, overlaps
from tests.papers.made_up import NOON, SAMPLES, SHOP, all_designs, plain, rich, words_of

BOTH = Notation("in", "mm")
RACK = Catalogue(tuple(SAMPLES.values()))


def plan_of(*named) -> CuttingPlan:
    jobs = tuple((number, f"Title of {number}") for number, _ in named)
    return CuttingPlan(jobs, plan_day(named), SHOP, BOTH, NOON)


@pytest.mark.parametrize("page", ["A4", "Letter"])
def test_words_lie_apart_and_inside_the_page(page):
    for drawing in cutting_plan_pages(plan_of(*all_designs().items()), page=page):
        assert not overlaps(drawing)
        assert not outside(drawing)


def test_every_piece_of_every_job_stands_on_it_with_its_length():
    words = words_of(cutting_plan_pdf(plan_of(("J-1", plain()), ("J-2", rich()))))
    notation = Notation("in")
    for number, design in (("J-1", plain()), ("J-2", rich())):
        for rail in sizes_of(design).frame.rails:
            assert f"{number}, {rail.side} rail {notation.figures(rail.long_point.value)}" in words
    assert "J-1, layer 1" in words
    assert "J-2, layer 6" in words
    assert "Title of J-2" in words


def test_like_boards_and_mouldings_share_their_stock():
    plan = plan_of(("J-1", plain()), ("J-2", replace(plain(), name="again")))
    (sticks,) = [found for sticks, found in plan.day.sticks if sticks.name == "R-ONE"]
    assert sum(len(stick.pieces) for stick in sticks.sticks) == 8
    ((sheets, found),) = plan.day.sheets
    assert sheets.name == "M-ONE"
    names = [placed.blank.name for sheet in found.sheets for placed in sheet.placed]
    assert sorted(names) == ["J-1, layer 1", "J-2, layer 1"]
    words = words_of(cutting_plan_pdf(plan))
    for number, name in enumerate(names, start=1):
        assert f"{number} {name}: " in words


def test_what_has_no_known_stock_is_named():
    words = words_of(cutting_plan_pdf(plan_of(("J-1", all_designs()["by hand"]))))
    assert "NOT PLANNED" in words
    assert "J-1, moulding has no known stick length" in words


def test_a_plan_is_made_of_jobs_that_could_have_a_ticket():
    first, second = job_of(plain()), replace(job_of(plain()), number="2026-0148")
    plan = cutting_plan([first, second], RACK, shop=SHOP)
    assert plan.jobs == (("2026-0147", first.title), ("2026-0148", second.title))
    assert plan.at == first.changed
    with pytest.raises(MeasurementsMissingError):
        cutting_plan([first, replace(second, measurements=())], RACK)


def test_the_same_plan_gives_the_same_bytes():
    plan = plan_of(("J-1", plain()))
    assert cutting_plan_pdf(plan) == cutting_plan_pdf(plan)
