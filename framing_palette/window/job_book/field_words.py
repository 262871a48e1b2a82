"""What the fields of a job are called, and what a job says of them, in a few words."""

from PySide6.QtCore import QCoreApplication

from framing_palette.jobs import Job
from framing_palette.jobs.agreeing import STATUS_WORDS
from framing_palette.window.preferences import Preferences


def field_name(field: str) -> str:
    """Return what a field is called in the middle of a sentence."""
    return {
        "title": _tr("the title"),
        "client": _tr("the client"),
        "picture": _tr("the photograph"),
        "intake": _tr("the intake"),
        "regions": _tr("the regions"),
        "art_size": _tr("the size"),
        "measurements": _tr("the measurements"),
        "options": _tr("the designs"),
        "chosen": _tr("the choice"),
        "status": _tr("the status"),
        "kept": _tr("what is kept"),
        "catalogue": _tr("the catalogue"),
        "note": _tr("the note"),
    }.get(field, field.replace("_", " "))


def changed_fields(before: Job, after: Job) -> tuple[str, ...]:
    """Return the fields that differ and have a name."""
    fields = (
        "title",
        "client",
        "picture",
        "intake",
        "regions",
        "art_size",
        "measurements",
        "options",
        "chosen",
        "status",
        "kept",
        "note",
    )
    return tuple(name for name in fields if getattr(before, name) != getattr(after, name))


def field_told(job: Job, field: str, preferences: Preferences) -> str:
    """Return what a job says of a field."""
    said = {
        "client": _client,
        "status": lambda job, _preferences: STATUS_WORDS[job.status],
        "art_size": _size,
        "chosen": _chosen,
        "options": _designs,
        "measurements": _measurements,
        "regions": lambda job, _preferences: ", ".join(region.name for region in job.regions),
        "picture": lambda job, _preferences: job.picture.name if job.picture else "",
        "intake": _intake,
    }.get(field, lambda job, _preferences: str(getattr(job, field)))(job, preferences)
    return said or _tr("nothing")


def _client(job: Job, _preferences: Preferences) -> str:
    return ", ".join(
        text for text in (job.client.name, job.client.contact, job.client.note) if text
    )


def _size(job: Job, preferences: Preferences) -> str:
    if job.art_size is None:
        return ""
    width, height = job.art_size
    unit, fraction = preferences.unit, preferences.denominator
    return f"{width.figures(unit, fraction)} × {height.show(unit, fraction)}"


def _chosen(job: Job, _preferences: Preferences) -> str:
    agreed = job.agreed
    return _tr("no design agreed on") if agreed is None else agreed.design.name


def _designs(job: Job, _preferences: Preferences) -> str:
    return ", ".join(option.design.name for option in job.options)


def _measurements(job: Job, preferences: Preferences) -> str:
    unit, fraction = preferences.unit, preferences.denominator
    return "; ".join(
        f"{reading.by} {reading.width.figures(unit, fraction)} × "
        f"{reading.height.show(unit, fraction)}"
        for reading in job.measurements
    )


def _intake(job: Job, _preferences: Preferences) -> str:
    return "" if job.intake is None else _tr("corners and chart of its own")


def _tr(text: str) -> str:
    return QCoreApplication.translate("JobFields", text)
