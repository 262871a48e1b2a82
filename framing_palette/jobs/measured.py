"""Measuring within a job: two independent readings, and the designs that follow what they say."""

from dataclasses import replace

from framing_palette.design import AgreedSize, Reading, agree, with_measured_art
from framing_palette.errors import FieldError, MeasurementError, MeasurementsMissingError
from framing_palette.jobs.jobs import Job, Option
from framing_palette.units import Length, LengthUnit


def with_reading(job: Job, reading: Reading, *, tolerance: Length, unit: LengthUnit) -> Job:
    """Return the job with one more measurement; two that agree give every design its size.

    Raises
    ------
    FieldError
        When the reading names no hand or no size, when the job has two already, or when a design
        cannot be built round art of the agreed size.
    """
    if not reading.by.strip():
        raise FieldError("initials", got="empty", wanted="say who measured")
    for field, length in (("width", reading.width), ("height", reading.height)):
        if length.mm <= 0:
            raise FieldError(field, got=length.show(unit), wanted="give a length above zero")
    number = len(job.measurements) + 1
    measured = replace(job, measurements=(*job.measurements, reading)).with_event(
        reading.at, f"Measurement {number} of 2 taken by {reading.by}."
    )
    if number < 2:
        return measured
    try:
        size = agreed_size(measured, tolerance=tolerance, unit=unit)
    except MeasurementError:
        return measured
    options = tuple(_measured(option, size) for option in job.options)
    return replace(measured, art_size=(size.width, size.height), options=options)


def without_readings(job: Job) -> Job:
    """Return the job ready to be measured again."""
    return replace(job, measurements=())


def agreed_size(job: Job, *, tolerance: Length, unit: LengthUnit) -> AgreedSize:
    """Return what both measurements of a job agree on.

    Raises
    ------
    MeasurementsMissingError
        When there are not two.
    MeasurementError
        When they disagree, naming the side, or are not independent.
    """
    if len(job.measurements) != 2:
        raise MeasurementsMissingError(len(job.measurements))
    first, second = job.measurements
    return agree(first, second, tolerance, unit)


def _measured(option: Option, size: AgreedSize) -> Option:
    return replace(option, design=with_measured_art(option.design, size))
