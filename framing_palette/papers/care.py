"""Care and conservation: what the client should know to keep the art well.

Light levels are museum practice as the Canadian Conservation Institute teaches it; hinging follows
the matting guide of the Library of Congress; the rest is common practice. For art of value a
conservator, and for the wall a qualified installer, come first.
"""

from collections.abc import Iterator, Mapping

from framing_palette.catalogue import Kind, Sample
from framing_palette.design import Design, cautions_of


def care_notes(design: Design, samples: Mapping[str, Sample]) -> tuple[str, ...]:
    """Return sentences on care for one design, the most needed first.

    Raises
    ------
    FieldError
        When the design cannot be sized.
    """
    return tuple(
        dict.fromkeys(
            (
                *_light(design),
                *_cleaning(design),
                *_hinging(design),
                *_boards(design, samples),
                *_told(design),
            )
        )
    )


def _light(design: Design) -> Iterator[str]:
    slows = "; UV glazing slows fading but does not stop it" if design.glazing else ""
    yield (
        "Hang it out of the sun and away from heat and damp. Sensitive works bear about 50 lux, "
        f"robust ones 150 to 300{slows}."
    )


def _cleaning(design: Design) -> Iterator[str]:
    if design.glazing is None:
        yield "Its surface is open: dust it with a soft, dry brush and never wipe it."
    elif design.glazing.material == "glass":
        yield "Clean the glass with a damp cloth; spray nothing onto the pane."
    else:
        yield (
            "Clean the acrylic with a soft, damp cloth and mild soap, without ammonia; a dry cloth "
            "scratches it and draws dust."
        )


def _hinging(design: Design) -> Iterator[str]:
    if any(layer.kind is Kind.MAT for layer in design.layers):
        yield (
            "Works on paper are hinged with tissue and starch paste, so that they can be taken out "
            "again; nothing is glued to art of value."
        )


def _boards(design: Design, samples: Mapping[str, Sample]) -> Iterator[str]:
    """Yield what the makers state about conservation, each statement once with who it is about."""
    stated: dict[str, list[str]] = {}
    for code in design.codes:
        sample = samples[code]
        if sample.conservation.strip():
            stated.setdefault(sample.conservation.strip().rstrip("."), []).append(sample.name)
    for statement, names in stated.items():
        yield f"{', '.join(dict.fromkeys(names))}, as the catalogue states: {statement}."


def _told(design: Design) -> Iterator[str]:
    """Yield the design's own cautions about the art and its hanging."""
    for caution in cautions_of(design):
        if caution.topic in ("art", "hanging"):
            yield caution.sentence
