"""What the fields of a job are called, and what a job says of them, in a few words."""

from PySide6.QtCore import QCoreApplication

from framing_palette.jobs import Job
from framing_palette.jobs.agreeing import STATUS_WORDS
from framing_palette.window.languages import told as in_language
from framing_palette.window.preferences import Preferences

tell = QCoreApplication.translate


def field_name(field: str) -> str:
    """Return what a field is called in the middle of a sentence."""
    return {
        "title": tell("JobFields", "the title"),
        "client": tell("JobFields", "the client"),
        "picture": tell("JobFields", "the photograph"),
        "intake": tell("JobFields", "the intake"),
        "regions": tell("JobFields", "the regions"),
        "art_size": tell("JobFields", "the size"),
        "measurements": tell("JobFields", "the measurements"),
        "options": tell("JobFields", "the designs"),
        "chosen": tell("JobFields", "the choice"),
        "status": tell("JobFields", "the status"),
        "kept": tell("JobFields", "what is kept"),
        "catalogue": tell("JobFields", "the catalogue"),
        "note": tell("JobFields", "the note"),
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
        "status": lambda job, _preferences: in_language(STATUS_WORDS[job.status]),
        "art_size": _size,
        "chosen": _chosen,
        "options": _designs,
        "measurements": _measurements,
        "regions": lambda job, _preferences: ", ".join(region.name for region in job.regions),
        "picture": lambda job, _preferences: job.picture.name if job.picture else "",
        "intake": _intake,
    }.get(field, lambda job, _preferences: str(getattr(job, field)))(job, preferences)
    return said or tell("JobFields", "nothing")


def _client(job: Job, _preferences: Preferences) -> str:
    return ", ".join(
        text for text in (job.client.name, job.client.contact, job.client.note) if text
    )


def _size(job: Job, preferences: Preferences) -> str:
    if job.art_size is None:
        return ""
    width, height = job.art_size
    unit, fraction = preferences.unit, preferences.denominator
    return in_language(f"{width.figures(unit, fraction)} × {height.show(unit, fraction)}")


def _chosen(job: Job, _preferences: Preferences) -> str:
    agreed = job.agreed
    return tell("JobFields", "no design agreed on") if agreed is None else agreed.design.name


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
    return "" if job.intake is None else tell("JobFields", "corners and chart of its own")
