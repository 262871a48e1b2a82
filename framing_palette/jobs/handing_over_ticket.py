"""From a job to the contents of its ticket: what the workshop gets to read."""

from collections.abc import Mapping, Sequence

from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.design import (
    Blank,
    Cuttable,
    Piece,
    StickPlan,
    check_cuttable,
    default_tolerance,
    plan_day,
    plan_sheets,
    plan_sticks,
    weight_of,
)
from framing_palette.errors import CuttingError, NotAgreedError
from framing_palette.jobs.handing_over import NO_SHOP, samples_of
from framing_palette.jobs.jobs import Job
from framing_palette.jobs.measured import measured_design, piece_words
from framing_palette.papers import (
    CuttingPlan,
    MeasuredArt,
    Notation,
    Shop,
    StockSheets,
    TicketContents,
)
from framing_palette.units import Length


def ticket_contents(
    job: Job,
    catalogue: Catalogue,
    *,
    shop: Shop = NO_SHOP,
    notation: Notation | None = None,
    tolerance: Length | None = None,
    out_of_rabbet: bool = False,
) -> TicketContents:
    """Return what the workshop reads.

    Parameters
    ----------
    job, catalogue
        With an agreed design, and every piece of art measured twice; where its samples still are.
    shop, notation
        Who hands it over; how lengths are written, in the design's own unit when None.
    tolerance
        How far two measurements of a side may differ; the usual one of the design's unit when None.
    out_of_rabbet
        Whether the framer has agreed to a stack that stands out behind the frame.

    Raises
    ------
    NotAgreedError
        When no design was agreed on.
    MeasurementsMissingError, MeasurementError
        When a piece of art was not measured twice, or the measurements do not agree.
    UnknownSampleError, StackTooDeepError, FieldError
        When the design cannot be cut as it is.
    """
    if job.agreed is None:
        raise NotAgreedError(job.number, wanted="a design that was agreed on")
    design = job.agreed.design
    allowed = default_tolerance(design.unit) if tolerance is None else tolerance
    design, pairs = measured_design(job, design, tolerance=allowed)
    cuttable = check_cuttable(design, catalogue, out_of_rabbet=out_of_rabbet)
    samples = samples_of(design, catalogue)
    sticks, stick_remarks = _sticks(cuttable)
    sheets, sheet_remarks = _sheets(cuttable, samples)
    return TicketContents(
        number=job.number,
        title=job.title,
        client=job.client.name,
        shop=shop,
        cuttable=cuttable,
        measured=tuple(
            MeasuredArt.of(pair, allowed, design.unit, of=piece_words(place, len(pairs)))
            for place, pair in enumerate(pairs)
        ),
        at=job.changed,
        samples=samples,
        notation=notation or Notation(design.unit),
        sticks=sticks,
        sheets=sheets,
        weight=weight_of(design, cuttable.sizes),
        note=job.note,
        remarks=(*stick_remarks, *sheet_remarks),
    )


def cutting_plan(
    jobs: Sequence[Job],
    catalogue: Catalogue,
    *,
    shop: Shop = NO_SHOP,
    notation: Notation | None = None,
    tolerance: Length | None = None,
) -> CuttingPlan:
    """Return the pieces of several jobs together out of their stock.

    Raises
    ------
    NotAgreedError, MeasurementError, UnknownSampleError, FieldError
        When one of the jobs cannot be cut as it is, as for its ticket.
    CuttingError
        When a piece does not fit its stock.
    """
    designs = [
        ticket_contents(job, catalogue, tolerance=tolerance, out_of_rabbet=True).design
        for job in jobs
    ]
    named = [(job.number, design) for job, design in zip(jobs, designs, strict=True)]
    return CuttingPlan(
        jobs=tuple((job.number, job.title) for job in jobs),
        day=plan_day(named),
        shop=shop,
        notation=notation or Notation(designs[0].unit),
        at=max(job.changed for job in jobs),
    )


def _sticks(cuttable: Cuttable) -> tuple[StickPlan | None, tuple[str, ...]]:
    """Return the rails' sticks, or why they cannot be cut from the moulding's own."""
    frame, moulding = cuttable.sizes.frame, cuttable.design.moulding
    if frame is None or moulding is None or moulding.stick is None:
        return None, ()
    pieces = [Piece(f"{rail.side} rail", rail.long_point.value) for rail in frame.rails]
    try:
        return plan_sticks(pieces, [moulding.stick]), ()
    except CuttingError as error:
        return None, (str(error),)


def _sheets(
    cuttable: Cuttable, samples: Mapping[str, Sample]
) -> tuple[tuple[StockSheets, ...], tuple[str, ...]]:
    """Return the mats on their stock sheets, like boards together, or why one does not fit."""
    blanks: dict[tuple[str, Length, Length], list[Blank]] = {}
    numbers = dict[str, int]()
    for number, (layer, size) in enumerate(
        zip(cuttable.design.layers, cuttable.sizes.layers, strict=True), start=1
    ):
        if layer.kind is Kind.MAT and layer.sheet_w and layer.sheet_h and size.outer:
            stock = layer.code or f"mat {number}", layer.sheet_w, layer.sheet_h
            blank = Blank(f"cut {number}", *size.outer.lengths)
            blanks.setdefault(stock, []).append(blank)
            numbers[blank.name] = number
    planned, remarks = list[StockSheets](), list[str]()
    for (code, width, height), todo in blanks.items():
        name = samples[code].name if code in samples else ""
        try:
            plan = plan_sheets(todo, (width, height))
        except CuttingError as error:
            remarks.append(str(error))
        else:
            words = "  ".join(word for word in (code, name) if word)
            planned.append(StockSheets(words, plan, numbers))
    return tuple(planned), tuple(remarks)
