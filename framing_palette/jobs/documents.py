"""A job as a JSON document and back: the form in which jobs are stored and sent.

Designs are kept as the text of their design file, lengths with their unit and without rounding,
times with their zone. A document of an older form is lifted to the present one before it is read.
"""

import json
from dataclasses import asdict
from datetime import datetime
from pathlib import Path
from typing import Any

from pydantic import AwareDatetime, BaseModel, ConfigDict, NonNegativeInt, ValidationError

from framing_palette.catalogue import Catalogue
from framing_palette.design import design_from_text, design_text
from framing_palette.design.design_writing import exact_text
from framing_palette.errors import FramingPaletteError, JobFileError
from framing_palette.jobs.desk_states import DeskModel
from framing_palette.jobs.forms import JOB_FORM, lifted
from framing_palette.jobs.intake_documents import IntakeModel, how_taken, intake_document
from framing_palette.jobs.jobs import (
    Client,
    Event,
    Job,
    Measurement,
    Option,
    PictureFile,
    Status,
)
from framing_palette.picture import Part, Region, Role
from framing_palette.units import Length


class _Model(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class ClientModel(_Model):
    """Who the job is for."""

    name: str = ""
    contact: str = ""
    note: str = ""


class PictureModel(_Model):
    """The photograph."""

    name: str
    sha256: str


class PartModel(_Model):
    """One outline."""

    polygon: tuple[tuple[float, float], ...]
    subtract: bool = False


class RegionModel(_Model):
    """One region."""

    name: str
    role: Role
    parts: tuple[PartModel, ...]


class MeasurementModel(_Model):
    """One measurement."""

    width: str
    height: str
    by: str
    at: AwareDatetime
    diagonals: tuple[str, str] | None = None
    piece: NonNegativeInt = 0


class OptionModel(_Model):
    """One design that was shown."""

    design: str
    reasons: tuple[str, ...] = ()
    note: str = ""


class EventModel(_Model):
    """One line of history."""

    at: AwareDatetime
    words: str


class JobModel(_Model):
    """The whole document."""

    form: str
    number: str
    title: str
    created: AwareDatetime
    changed: AwareDatetime
    client: ClientModel = ClientModel()
    status: Status = Status.OPEN
    picture: PictureModel | None = None
    art_size: tuple[str, str] | None = None
    intake: IntakeModel | None = None
    regions: tuple[RegionModel, ...] = ()
    measurements: tuple[MeasurementModel, ...] = ()
    options: tuple[OptionModel, ...] = ()
    chosen: int | None = None
    kept: tuple[str, ...] = ()
    catalogue: str = ""
    note: str = ""
    history: tuple[EventModel, ...] = ()
    desk: DeskModel = DeskModel()


def job_text(job: Job) -> str:
    """Write a job as a JSON document; reading it gives the same job to the last digit.

    Half characters, which come from file names in a foreign encoding, become question marks.
    """
    text = json.dumps(_document(job), ensure_ascii=False, indent=1)
    return text.encode("utf-8", "replace").decode("utf-8")


def job_from_text(text: str, path: Path | str, catalogue: Catalogue | None = None) -> Job:
    """Read a job's document.

    Parameters
    ----------
    text
        What ``job_text`` wrote.
    path
        Names the document in a refusal.
    catalogue
        Where design files may look up codes; not needed for documents that we wrote, which carry
        every measure.

    Raises
    ------
    JobFileError
        When it is not a job, or one of its fields cannot be used; the sentence names the field.
        When it is of a newer form than this version knows.
    """
    try:
        model = JobModel.model_validate_json(lifted(text, path))
    except ValidationError as error:
        fault = error.errors()[0]
        place = ".".join(str(step) for step in fault["loc"]) or "the document"
        raise _refused(path, f"{place}: {fault['msg']}") from error
    try:
        return _job(model, path, catalogue)
    except FramingPaletteError as error:
        raise _refused(path, str(error).rstrip(".")) from error


def _refused(path: Path | str, fault: str) -> JobFileError:
    return JobFileError(
        path,
        problem=f"is not a whole job ({fault})",
        todo="open a backup of it, or the job file that it was sent with",
    )


def _document(job: Job) -> dict[str, Any]:
    return {
        "form": JOB_FORM,
        "number": job.number,
        "title": job.title,
        "created": _time(job.created),
        "changed": _time(job.changed),
        "client": {
            "name": job.client.name,
            "contact": job.client.contact,
            "note": job.client.note,
        },
        "status": job.status.value,
        "picture": None
        if job.picture is None
        else {"name": job.picture.name, "sha256": job.picture.sha256},
        "art_size": None if job.art_size is None else [exact_text(side) for side in job.art_size],
        "intake": None if job.intake is None else intake_document(job.intake),
        "regions": [_region_document(region) for region in job.regions],
        "measurements": [_measurement_document(reading) for reading in job.measurements],
        "options": [
            {
                "design": design_text(option.design),
                "reasons": list(option.reasons),
                "note": option.note,
            }
            for option in job.options
        ],
        "chosen": job.chosen,
        "kept": list(job.kept),
        "catalogue": job.catalogue,
        "note": job.note,
        "history": [{"at": _time(event.at), "words": event.words} for event in job.history],
        "desk": asdict(job.desk),
    }


def _time(at: datetime) -> str:
    return at.isoformat()


def _region_document(region: Region) -> dict[str, Any]:
    return {
        "name": region.name,
        "role": region.role.value,
        "parts": [
            {"polygon": [list(point) for point in part.polygon], "subtract": part.subtract}
            for part in region.parts
        ],
    }


def _measurement_document(reading: Measurement) -> dict[str, Any]:
    diagonals = reading.diagonals
    return {
        "width": exact_text(reading.width),
        "height": exact_text(reading.height),
        "by": reading.by,
        "at": _time(reading.at),
        "diagonals": None if diagonals is None else [exact_text(length) for length in diagonals],
        "piece": reading.piece,
    }


def _job(model: JobModel, path: Path | str, catalogue: Catalogue | None) -> Job:
    return Job(
        number=model.number,
        title=model.title,
        created=model.created,
        changed=model.changed,
        client=Client(model.client.name, model.client.contact, model.client.note),
        status=model.status,
        picture=PictureFile(model.picture.name, model.picture.sha256) if model.picture else None,
        art_size=_pair(model.art_size, "art_size"),
        intake=None if model.intake is None else how_taken(model.intake),
        regions=tuple(_region(region) for region in model.regions),
        measurements=tuple(_measurement(reading) for reading in model.measurements),
        options=tuple(
            Option(design_from_text(option.design, path, catalogue), option.reasons, option.note)
            for option in model.options
        ),
        chosen=model.chosen,
        kept=model.kept,
        catalogue=model.catalogue,
        note=model.note,
        history=tuple(Event(event.at, event.words) for event in model.history),
        desk=model.desk.desk(),
    )


def _pair(texts: tuple[str, str] | None, field: str) -> tuple[Length, Length] | None:
    if texts is None:
        return None
    return Length.parse(texts[0], field=field), Length.parse(texts[1], field=field)


def _region(model: RegionModel) -> Region:
    parts = tuple(Part(part.polygon, part.subtract) for part in model.parts)
    return Region(model.name, model.role, parts)


def _measurement(model: MeasurementModel) -> Measurement:
    return Measurement(
        width=Length.parse(model.width, field="measurement width"),
        height=Length.parse(model.height, field="measurement height"),
        by=model.by,
        at=model.at,
        diagonals=_pair(model.diagonals, "measurement diagonals"),
        piece=model.piece,
    )
