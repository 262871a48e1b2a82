"""Measuring within a job: two independent readings of every piece, and designs that follow them."""

from dataclasses import replace

from framing_palette.design import (
    AgreedSize,
    Design,
    Reading,
    agree,
    with_measured_pieces,
)
from framing_palette.design.arranging import Layout, with_pieces
from framing_palette.errors import FieldError, MeasurementError, MeasurementsMissingError
from framing_palette.jobs.jobs import Job, Option, Status
from framing_palette.units import Length, LengthUnit


def pieces_of(job: Job) -> int:
    """Return how many pieces of art the job's designs frame together; at least one."""
    if job.agreed is not None:
        return len(job.agreed.design.windows)
    return max((len(option.design.windows) for option in job.options), default=1)


def readings_of(job: Job, piece: int = 0) -> tuple[Reading, ...]:
    """Return the readings of one piece of art, counted from 0: none, one or two."""
    return tuple(reading for reading in job.measurements if reading.piece == piece)


def piece_words(piece: int, pieces: int) -> str:
    """Return what one of several pieces is called, counted from 1; nothing for the only one."""
    return f"art {piece + 1}" if pieces > 1 else ""


def with_reading(job: Job, reading: Reading, *, tolerance: Length, unit: LengthUnit) -> Job:
    """Return the job with one more measurement; two that agree give every design its size.

    Raises
    ------
    FieldError
        When the reading names no hand or no size, when its piece has two already, or when a design
        cannot be built round art of the agreed size.
    """
    if not reading.by.strip():
        raise FieldError("initials", got="empty", wanted="say who measured")
    for field, length in (("width", reading.width), ("height", reading.height)):
        if length.mm <= 0:
            raise FieldError(field, got=length.show(unit), wanted="give a length above zero")
    number, piece = len(readings_of(job, reading.piece)) + 1, reading.piece
    of = piece_words(piece, pieces_of(job))
    words = f"Measurement {number} of 2{of and f' of {of}'} taken by {reading.by}."
    measured = replace(job, measurements=(*job.measurements, reading))
    measured = measured.with_event(reading.at, words)
    if number < 2:
        return measured
    try:
        size = agreed_size(measured, tolerance=tolerance, unit=unit, piece=piece)
    except MeasurementError:
        return measured
    options = tuple(_measured(option, piece, size) for option in job.options)
    if pieces_of(job) > 1:
        return replace(measured, options=options)
    return replace(measured, art_size=(size.width, size.height), options=options)


def without_readings(job: Job, piece: int | None = None) -> Job:
    """Return the job ready to be measured again: one piece of it, or all."""
    kept = () if piece is None else tuple(r for r in job.measurements if r.piece != piece)
    return replace(job, measurements=kept)


def agreed_size(job: Job, *, tolerance: Length, unit: LengthUnit, piece: int = 0) -> AgreedSize:
    """Return what both measurements of a piece agree on.

    Raises
    ------
    MeasurementsMissingError
        When there are not two.
    MeasurementError
        When they disagree, naming the piece and the side, or are not independent.
    """
    readings = readings_of(job, piece)
    if len(readings) != 2:
        raise MeasurementsMissingError(len(readings))
    first, second = readings
    return agree(first, second, tolerance, unit, of=piece_words(piece, pieces_of(job)))


def is_measured(job: Job, *, tolerance: Length, unit: LengthUnit) -> bool:
    """Tell whether every piece of art was measured twice and agreed on."""
    try:
        for piece in range(pieces_of(job)):
            agreed_size(job, tolerance=tolerance, unit=unit, piece=piece)
    except MeasurementError:
        return False
    return True


def measured_design(
    job: Job, design: Design, *, tolerance: Length
) -> tuple[Design, tuple[tuple[Reading, Reading], ...]]:
    """Return a design for the art as it was measured, and both readings of each piece.

    Pieces that are all of one size may be measured once for all; the ticket then warns.

    Raises
    ------
    MeasurementsMissingError
        When a piece was not measured twice.
    MeasurementError
        When two readings disagree, naming the piece and the side, or are not independent.
    """
    pieces = len(design.windows)
    measured = sorted({reading.piece for reading in job.measurements if reading.piece < pieces})
    are_alike = len({(window.width, window.height) for window in design.windows}) == 1
    places = (0,) if are_alike and measured in ([], [0]) else range(pieces)
    sizes, pairs = dict[int, AgreedSize](), list[tuple[Reading, Reading]]()
    taken = sum(len(readings_of(job, place)) for place in places)
    for place in places:
        readings = readings_of(job, place)
        if len(readings) != 2:
            raise MeasurementsMissingError(taken, pieces=len(places))
        first, second = readings
        of = piece_words(place, pieces)
        sizes[place] = agree(first, second, tolerance, design.unit, of=of)
        pairs.append((first, second))
    if len(places) < pieces:
        sizes = dict.fromkeys(range(pieces), sizes[0])
    return with_measured_pieces(design, sizes), tuple(pairs)


def _measured(option: Option, piece: int, size: AgreedSize) -> Option:
    return replace(option, design=with_measured_pieces(option.design, {piece: size}))


def with_pieces_of_art(job: Job, count: int, layout: Layout, gap: Length) -> Job:
    """Return the job with every design framing so many pieces; what was agreed on is open again.

    Readings of pieces that are no longer there are taken away.

    Raises
    ------
    FieldError
        When there is no design yet, or one of them cannot frame so many.
    """
    if not job.options:
        raise FieldError("design", got="none", wanted="build one first; its mat holds the openings")
    options = tuple(
        replace(option, design=with_pieces(option.design, count, layout, gap))
        for option in job.options
    )
    if options == job.options:
        return job
    status = Status.PROPOSED if job.status is Status.AGREED else job.status
    kept = tuple(reading for reading in job.measurements if reading.piece < count)
    return replace(job, options=options, chosen=None, status=status, measurements=kept)
