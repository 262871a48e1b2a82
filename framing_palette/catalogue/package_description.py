"""The description of a catalogue folder: what each column means, its unit and its limits.

References
----------
Frictionless Data, Tabular Data Package specification, version 1: https://specs.frictionlessdata.io
"""

import re
from collections.abc import Collection
from typing import Any

from framing_palette.catalogue.conservation_rows import CONSERVATION_COLUMNS
from framing_palette.catalogue.palette_rows import (
    COLOUR_COLUMNS,
    PROFILE_COLUMNS,
    SPECTRUM_COLUMNS,
    WAVELENGTH_COLUMNS,
)
from framing_palette.catalogue.sample_rows import SAMPLE_COLUMNS
from framing_palette.catalogue.samples import ClaimScope, Finish, Kind, PriceBasis, Surface
from framing_palette.catalogue.surfaces import SURFACE_COLUMNS
from framing_palette.catalogue.texture_numbers import texture_names

Field = dict[str, Any]

_MEANING = {
    "code": "the shop's code of the sample",
    "name": "what to call it at the counter",
    "kind": "what sort of sample it is",
    "surface": "the look of the surface",
    "material": "what it is made of",
    "finish": "how the surface returns light",
    "face_mm": "width seen from the front; for a strip the most that can show",
    "thickness_mm": "thickness of a board or strip; greatest height of a moulding",
    "bevel_mm": "width of the sloped cut that shows",
    "rabbet_width_mm": "how far the lip covers the stack, per side; wood fillets: the tail",
    "rabbet_depth_mm": "depth that the rabbet offers to the stack",
    "stick_mm": "length of a stick as sold",
    "sheet_w_mm": "width of a sheet as sold",
    "sheet_h_mm": "height of a sheet as sold",
    "density_kg_m3": "mass of a cubic metre of the filled outline, hollows included",
    "join": "how corners of a strip meet",
    "texture": "file in textures/; empty means CODE.png",
    "texture_mm_per_px": "physical size of one pixel of the texture",
    "price": "price before tax of one price_per, in the shop's currency",
    "price_per": "what the price buys",
    "claim": "what is claimed of its safety for art",
    "scope": "what the claim holds for",
    "date": "when it was made or tested",
    "source": "who says so",
    "relief": "true for a grey picture, whose tone goes around the sample's own colour",
    "checksum": "CRC-32 of the picture that was measured",
    "direction_deg": "direction of the grain, 0 along the rows, counter-clockwise",
    "direction_strength": "0 no direction, 1 all parallel",
    "regularity": "0 random, 1 repeating",
    "sparkle": "share of points far lighter than what lies round them",
    "mm_per_px": "scale at which it was measured",
    "mean_lightness": "mean L* of the picture",
    "in_stock": "true when it lies in the rack",
    "conservation": "what the maker claims, in plain words",
    "collection": "the family it belongs to",
    "tags": "the shop's own words, separated by semicolons",
    "colour_origin": "where its colours come from, and what was stated of them, in words",
    "share": "share of the surface",
    "L": "CIELAB lightness, D50, 2 degree observer",
    "a": "CIELAB a*, D50, 2 degree observer",
    "b": "CIELAB b*, D50, 2 degree observer",
    "colour": "which colour of the sample: 1 is its first row in colours.csv",
    "order": "place of the point in the line",
    "x_mm": "distance outward from the sight edge",
    "height_mm": "height of the front surface over the back plane; fillets: over what they lie on",
}
_WORDS: dict[str, list[str]] = {
    "kind": list(Kind),
    "surface": list(Surface),
    "finish": list(Finish),
    "price_per": list(PriceBasis),
    "join": ["mitre", "butt"],
    "scope": list(ClaimScope),
}
_OPTIONAL = (
    ("spectra", SPECTRUM_COLUMNS, "code colour"),
    ("profiles", PROFILE_COLUMNS, "code order"),
    ("conservation", CONSERVATION_COLUMNS, ""),
    ("textures", SURFACE_COLUMNS, "texture mm_per_px"),
)
_NUMBERS = frozenset({"L", "a", "b", "share", "price", "density_kg_m3", "texture_mm_per_px"})
_REQUIRED = frozenset({"code", "name", "kind", "L", "a", "b", "claim"})
_UNITS = {
    "density_kg_m3": "kg/m3",
    "texture_mm_per_px": "mm/px",
    "mm_per_px": "mm/px",
    "direction_deg": "degree",
    "price": "the shop's currency",
    "share": "1",
}


def describe_package(
    *,
    name: str,
    title: str,
    description: str,
    columns: tuple[str, ...] = SAMPLE_COLUMNS,
    optional: Collection[str],
) -> dict[str, Any]:
    """Return the content of datapackage.json for the tables that a folder has.

    Parameters
    ----------
    name
        Lower-case letters, digits and hyphens.
    title, description
        For people.
    columns
        Of samples.csv.
    optional
        Which of spectra, profiles, conservation and textures have a table in the folder.
    """
    tables = [("samples", columns, "code"), ("colours", COLOUR_COLUMNS, "")]
    tables += [table for table in _OPTIONAL if table[0] in optional]
    return {
        "profile": "tabular-data-package",
        "name": name,
        "title": title,
        "description": description,
        "resources": [_resource(table, columns, keys) for table, columns, keys in tables],
    }


def _resource(name: str, columns: tuple[str, ...], keys: str) -> dict[str, Any]:
    schema: dict[str, Any] = {
        "fields": [_field(column) for column in columns],
        "missingValues": [""],
    }
    if keys:
        schema["primaryKey"] = keys.split()
    if "code" in columns and name != "samples":
        reference = {"resource": "samples", "fields": ["code"]}
        schema["foreignKeys"] = [{"fields": ["code"], "reference": reference}]
    return {
        "name": name,
        "path": f"{name}.csv",
        "profile": "tabular-data-resource",
        "format": "csv",
        "mediatype": "text/csv",
        "encoding": "utf-8",
        "schema": schema,
    }


def _field(column: str) -> Field:
    if column in WAVELENGTH_COLUMNS:
        meaning = f"reflectance at {column.removeprefix('nm')} nm"
        limits = {"minimum": 0, "maximum": 1.2}
        return _described(column, "number", meaning, unit="1", constraints=limits)
    if column in SURFACE_COLUMNS and column not in _MEANING:
        return _described(column, "number", _measure_meaning(column), unit="", constraints={})
    constraints: dict[str, Any] = {"required": True} if column in _REQUIRED else {}
    kind, unit = _type_of(column), _UNITS.get(column, "mm" if column.endswith("_mm") else "")
    if kind == "number" and (unit or column == "L"):
        constraints["minimum"] = 0
    if column in _WORDS:
        constraints["enum"] = _WORDS[column]
    return _described(column, kind, _MEANING[column], unit=unit, constraints=constraints)


def _measure_meaning(column: str) -> str:
    """Return what a measure by octave of wavelength is, from its name."""
    measure, band, *count = re.split(r"_([\d.]+mm)", column)
    meaning = measure.replace("_", " ")
    if band:
        meaning += f" at a wavelength of {band.removesuffix('mm')} mm"
    return f"{meaning}, no. {count[0].strip('_')}" if any(count) else meaning


def _type_of(column: str) -> str:
    if column in {"in_stock", "relief"}:
        return "boolean"
    if column == "date":
        return "date"
    if column in {"colour", "order"}:
        return "integer"
    if column in _NUMBERS or column in texture_names() or column.endswith("_mm"):
        return "number"
    return "string"


def _described(name: str, kind: str, meaning: str, *, unit: str, constraints: Field) -> Field:
    field: Field = {"name": name, "type": kind, "description": meaning}
    if unit:
        field["unit"] = unit
    if constraints:
        field["constraints"] = constraints
    return field
