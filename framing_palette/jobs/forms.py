"""The forms that a job's document has had, and how an older one is lifted to the present one.

- ``framing-palette/job@1``: as first released; two measurements of one piece of art.
- ``framing-palette/job@2``: every measurement names its ``piece``, so that several pieces of art in
  one frame are each measured twice; ``desk`` tells how things lay when the job was left.

A lift changes plain data alone and is never changed itself once its form was released.
"""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any, Final

from framing_palette.errors import JobFileError

JOB_FORM: Final = "framing-palette/job@2"
_NAME: Final = "framing-palette/job@"

Document = dict[str, Any]


def lifted(text: str, path: Path | str) -> str:
    """Return a document in the present form, lifted from an older one if need be.

    What is no job at all is given back as it is, for its fields to be refused by name.

    Raises
    ------
    JobFileError
        When it is of a form that this version does not know yet.
    """
    try:
        document = json.loads(text)
    except (ValueError, RecursionError):
        return text
    form = document.get("form") if isinstance(document, dict) else None
    if not isinstance(form, str) or form == JOB_FORM:
        return text
    forms = [known for known, _ in _LIFTS]
    if form not in forms:
        raise JobFileError(
            path,
            problem=f"has the form {form!r}, which this version does not know",
            todo="open it with a newer version of the program",
        )
    for _, lift in _LIFTS[forms.index(form) :]:
        document = lift(document)
    return json.dumps(document, ensure_ascii=False)


def _to_2(document: Document) -> Document:
    """Let every measurement be of the first piece, the only one there was."""
    readings = document.get("measurements", [])
    if isinstance(readings, list):
        readings = [
            {"piece": 0, **reading} if isinstance(reading, dict) else reading
            for reading in readings
        ]
    return {**document, "form": f"{_NAME}2", "measurements": readings}


# Oldest first.
_LIFTS: Final[tuple[tuple[str, Callable[[Document], Document]], ...]] = ((f"{_NAME}1", _to_2),)
