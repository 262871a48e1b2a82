"""The cutting plan of several jobs: their rails, strips and mats together out of their stock."""

from dataclasses import dataclass
from datetime import datetime
from typing import Final

from framing_palette.design import DayPlan
from framing_palette.papers.contents import Notation, PageName, Shop
from framing_palette.papers.paper_pdf import pdf_bytes
from framing_palette.papers.paper_sizes import PAPERS, Group, Paper, poured
from framing_palette.papers.setting import Style, above, beside, listed, paragraph, ruled, space
from framing_palette.papers.shapes import Drawing, joined
from framing_palette.papers.sheet_drawing import Stock, sheet_rows
from framing_palette.papers.stick_drawing import stick_bars
from framing_palette.papers.ticket_parts import BODY, HEAD, SMALL, headed

TITLE: Final = Style(20, "bold", leading=1.05)
BETWEEN: Final = 5.0
FOOT: Final = 6.0


@dataclass(frozen=True, slots=True)
class CuttingPlan:
    """What is cut together.

    Parameters
    ----------
    jobs
        Number and title of each job.
    day
        Where every piece comes from; its names begin with the job's number.
    shop, notation
        Who cuts, and how lengths are written.
    at
        When the newest of the jobs was last changed.
    """

    jobs: tuple[tuple[str, str], ...]
    day: DayPlan
    shop: Shop
    notation: Notation
    at: datetime


def cutting_plan_pdf(plan: CuttingPlan, *, page: PageName = "A4") -> bytes:
    """Return the cutting plan as a PDF."""
    numbers = ", ".join(number for number, _ in plan.jobs)
    return pdf_bytes(
        cutting_plan_pages(plan, page=page),
        title=f"Cutting plan {numbers}",
        author=plan.shop.name,
        subject="Rails, strips and mats of several jobs out of their stock",
        at=plan.at,
    )


def cutting_plan_pages(plan: CuttingPlan, *, page: PageName = "A4") -> tuple[Drawing, ...]:
    """Return the pages of the cutting plan."""
    paper = PAPERS[page]
    width = paper.inner_width
    rows = sheet_rows(_stocks(plan.day), plan.notation, width)
    unplanned = [above(listed([s], BODY, width, mark="!"), space(0.6)) for s in plan.day.unplanned]
    groups = (
        Group((_head(plan, width),)),
        *_sticks(plan, width),
        _group("MATS OUT OF SHEETS", width, rows, aside="grey is left over"),
        _group("NOT PLANNED", width, unplanned),
    )
    bodies = poured(groups, paper.inner_height - FOOT, BETWEEN)
    return tuple(
        _sheet(plan, paper, body, f"{number} of {len(bodies)}")
        for number, body in enumerate(bodies, start=1)
    )


def _head(plan: CuttingPlan, width: float) -> Drawing:
    at = plan.at
    jobs = [f"{number}  {title}" for number, title in plan.jobs]
    invented = "invented shop, for demonstration only" if plan.shop.is_invented else ""
    shop = ", ".join(part for part in (plan.shop.name, invented) if part)
    caution = "Each job's ticket says what it is measured by: cut by a plan only with it at hand."
    return above(
        paragraph("CUTTING PLAN", HEAD, width),
        space(1.2),
        paragraph(f"{len(jobs)} jobs, {at.day} {at:%B %Y}", TITLE, width),
        paragraph(shop, SMALL, width),
        space(1.2),
        *(paragraph(job, BODY, width) for job in jobs),
        space(1.2),
        listed([caution], BODY, width, mark="!"),
    )


def _sticks(plan: CuttingPlan, width: float) -> tuple[Group, ...]:
    return tuple(
        _group(
            f"STICKS OF {sticks.name}",
            width,
            stick_bars(found, plan.notation, width),
            aside=f"each cut takes {plan.notation.said(found.kerf_along)} along the stick",
        )
        for sticks, found in plan.day.sticks
    )


def _stocks(day: DayPlan) -> list[Stock]:
    stocks = list[Stock]()
    for sheets, found in day.sheets:
        names = [placed.blank.name for sheet in found.sheets for placed in sheet.placed]
        numbers = {name: number for number, name in enumerate(names, start=1)}
        stocks += [
            Stock(sheets.name, number, len(found.sheets), sheet, numbers, {})
            for number, sheet in enumerate(found.sheets, start=1)
        ]
    return stocks


def _group(head: str, width: float, blocks: list[Drawing], *, aside: str = "") -> Group:
    continued = headed(f"{head}, CONTINUED", width, aside=aside)
    return Group(tuple(blocks), headed(head, width, aside=aside), continued)


def _sheet(plan: CuttingPlan, paper: Paper, body: Drawing, place: str) -> Drawing:
    width = paper.inner_width
    room = SMALL.width(place) + 4.0
    legend = paragraph(plan.notation.legend, SMALL, width - room)
    row = beside(legend, paragraph(place, SMALL, room, "end"))
    foot = above(ruled(width), space(1.0), row)
    top = paper.height - paper.foot - foot.height
    placed = [body.moved(paper.side, paper.top), foot.moved(paper.side, top)]
    return joined(paper.width, paper.height, placed)
