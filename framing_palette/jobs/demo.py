"""The demo job: the invented picture, measured and designed, as if a client stood at the counter.

Everything in it is invented and says so: the client, the measurements and their initials.
"""

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from typing import Final

from framing_palette.catalogue import Kind
from framing_palette.design import Art, FoundDesign, compose, usual_overlap
from framing_palette.jobs.jobs import (
    Client,
    Event,
    Job,
    Measurement,
    Option,
    PictureFile,
    Status,
)
from framing_palette.jobs.shipped_files import ShippedPicture
from framing_palette.picture import Region

DEMO_LAYERS: Final = (Kind.WRAPPED_FILLET, Kind.MAT, Kind.MOULDING)
DEMO_UNIT: Final = "in"
DEMO_RULE: Final = 16  # the invented shop reads its rule to a sixteenth
_OPENED: Final = datetime(2026, 1, 15, 10, 0, tzinfo=UTC)  # invented, so that papers stay the same


def demo_job(
    shipped: ShippedPicture,
    picture: PictureFile,
    regions: Sequence[Region],
    designs: Sequence[FoundDesign],
    *,
    catalogue_name: str = "",
) -> Job:
    """Return the demo job with the found designs composed round the art, the first agreed on.

    Raises
    ------
    UnknownFactError
        When the catalogue leaves a measure empty that a design needs.
    """
    width, height = (side.rounded(DEMO_UNIT, DEMO_RULE) for side in (shipped.width, shipped.height))
    art = Art(width, height, overlap=usual_overlap(DEMO_UNIT))
    names = ("First", "Second", "Third")
    options = tuple(
        Option(
            compose(found.layers, art, unit=DEMO_UNIT, name=f"{names[place]} design"), found.reasons
        )
        for place, found in enumerate(designs[: len(names)])
    )
    return Job(
        number="DEMO-1",
        title=shipped.title,
        created=_OPENED,
        changed=_OPENED + timedelta(minutes=25),
        client=Client("Invented client (demo)", note="Everything in this job is invented."),
        status=Status.AGREED if options else Status.OPEN,
        picture=picture,
        art_size=(width, height),
        regions=tuple(regions),
        measurements=(
            Measurement(width, height, "DE", _OPENED + timedelta(minutes=5)),
            Measurement(width, height, "MO", _OPENED + timedelta(minutes=20)),
        ),
        options=options,
        chosen=0 if options else None,
        catalogue=catalogue_name,
        history=(
            Event(_OPENED, "Opened on the invented demo picture."),
            Event(_OPENED + timedelta(minutes=25), "Agreed on the first design."),
        ),
    )
