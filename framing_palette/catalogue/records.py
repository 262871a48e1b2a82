"""Records: a sample as one line of JSON and back, exactly; for the library and the disk cache."""

import json
from collections.abc import Mapping, Sequence
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Any

from framing_palette.catalogue.samples import (
    ClaimScope,
    ConservationFact,
    Finish,
    Kind,
    PriceBasis,
    Profile,
    Sample,
    SampleColour,
    Surface,
)
from framing_palette.catalogue.texture_numbers import texture_from_numbers, texture_numbers
from framing_palette.picture import Texture
from framing_palette.units import Length

LENGTH_FACTS = (
    "face", "thickness", "bevel", "rabbet_width", "rabbet_depth", "stick", "sheet_w", "sheet_h",
)  # fmt: skip
PLAIN_FACTS = (
    "material", "density_kg_m3", "texture_file", "texture_mm_per_px", "in_stock", "join",
    "conservation", "collection", "colour_origin",
)  # fmt: skip
WORD_FACTS: Mapping[str, Any] = {"surface": Surface, "finish": Finish, "price_per": PriceBasis}


_TEXT_FACTS = (*WORD_FACTS, "price")


def record_of(sample: Sample, *, with_colours: bool = True) -> dict[str, Any]:
    """Return a sample as plain data; facts that are unknown or empty are left out.

    Parameters
    ----------
    sample
        Any sample.
    with_colours
        False leaves the colours out, for a store that keeps them as arrays.
    """
    record: dict[str, Any] = {"code": sample.code, "name": sample.name, "kind": str(sample.kind)}
    lengths = ((name, getattr(sample, name)) for name in LENGTH_FACTS)
    record |= {name: str(length.mm) for name, length in lengths if length is not None}
    record |= _known(sample, PLAIN_FACTS)
    record |= {name: str(value) for name, value in _known(sample, _TEXT_FACTS).items()}
    if sample.tags:
        record["tags"] = list(sample.tags)
    if sample.conservation_facts:
        record["conservation_facts"] = [
            [fact.claim, fact.scope, fact.when and fact.when.isoformat(), fact.source]
            for fact in sample.conservation_facts
        ]
    if sample.profile is not None:
        record["profile"] = [list(point) for point in sample.profile.points]
    if with_colours:
        record["colours"] = [record_of_colour(colour) for colour in sample.colours]
        if sample.texture is not None:
            record["texture"] = _texture_record(sample.texture)
    return record


def sample_of(
    record: Mapping[str, Any],
    colours: tuple[SampleColour, ...] | None = None,
    texture: Texture | None = None,
) -> Sample:
    """Return the sample of a record, with its own colours and texture unless others are given."""
    facts: dict[str, Any] = {name: record[name] for name in PLAIN_FACTS if name in record}
    facts |= {name: Length(Fraction(record[name])) for name in LENGTH_FACTS if name in record}
    facts |= {name: word(record[name]) for name, word in WORD_FACTS.items() if name in record}
    if "price" in record:
        facts["price"] = Decimal(record["price"])
    if "profile" in record:
        facts["profile"] = Profile(tuple((x, height) for x, height in record["profile"]))
    if texture is None and "texture" in record:
        texture = texture_from_numbers([_number(x) for x in record["texture"]])
    if colours is None:
        colours = tuple(colour_of_record(one) for one in record.get("colours", ()))
    return Sample(
        code=record["code"],
        name=record["name"],
        kind=Kind(record["kind"]),
        colours=colours,
        tags=tuple(record.get("tags", ())),
        texture=texture,
        conservation_facts=tuple(_fact(*one) for one in record.get("conservation_facts", ())),
        **facts,
    )


def record_text(record: Mapping[str, Any]) -> str:
    """Return a record as one line of JSON, the same text for the same record."""
    return json.dumps(record, ensure_ascii=False, sort_keys=True, separators=(",", ":"))


def read_record(text: str | bytes) -> dict[str, Any]:
    """Return the record of `record_text`'s line."""
    record: dict[str, Any] = json.loads(text)
    return record


def _fact(claim: str, scope: str | None, when: str | None, source: str) -> ConservationFact:
    return ConservationFact(
        claim,
        ClaimScope(scope) if scope else None,
        date.fromisoformat(when) if when else None,
        source,
    )


def _known(sample: Sample, names: Sequence[str]) -> dict[str, Any]:
    facts = ((name, getattr(sample, name)) for name in names)
    return {name: fact for name, fact in facts if fact is not None and fact != ""}


def record_of_colour(colour: SampleColour) -> dict[str, Any]:
    """Return one colour of a sample as plain data."""
    record: dict[str, Any] = {"lab": list(colour.lab), "share": colour.share}
    if colour.spectrum is not None:
        record["spectrum"] = list(colour.spectrum)
    return record


def colour_of_record(record: Mapping[str, Any]) -> SampleColour:
    """Return the colour of `record_of_colour`."""
    lightness, a, b = record["lab"]
    spectrum = record.get("spectrum")
    return SampleColour((lightness, a, b), record["share"], tuple(spectrum) if spectrum else None)


def _texture_record(texture: Texture) -> list[float | None]:
    values = texture_numbers(texture)
    return [None if value != value else value for value in values]  # noqa: PLR0124 (nan)


def _number(value: float | None) -> float:
    return float("nan") if value is None else value
