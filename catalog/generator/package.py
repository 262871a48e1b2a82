"""The description of the folder's tables: a tabular Data Package with units and meanings."""

import json
from pathlib import Path

_LENGTH = {"type": "number", "unit": "mm", "constraints": {"minimum": 0}}
_KINDS = ["mat", "wrapped_fillet", "wood_fillet", "liner", "moulding"]
_SURFACES = [
    "smooth", "linen", "suede", "silk", "mottled", "leaf", "brushed_metal", "plain_wood",
    "distressed_wood",
]  # fmt: skip

_SAMPLE_FIELDS: dict[str, tuple[str, dict[str, object]]] = {
    "code": ("the shop's code of the sample",
             {"constraints": {"required": True, "unique": True}}),
    "name": ("what to call it at the counter", {"constraints": {"required": True}}),
    "kind": ("what sort of sample it is", {"constraints": {"required": True, "enum": _KINDS}}),
    "surface": ("the look of the surface", {"constraints": {"enum": _SURFACES}}),
    "material": ("what it is made of", {}),
    "finish": ("matt, satin, gloss or metallic",
               {"constraints": {"enum": ["matt", "satin", "gloss", "metallic"]}}),
    "face_mm": ("width seen from the front; for a strip the most that can show", _LENGTH),
    "thickness_mm": ("thickness of a board or strip; greatest height of a moulding", _LENGTH),
    "bevel_mm": ("width of the sloped cut that shows", _LENGTH),
    "rabbet_width_mm": ("how far the rabbet's lip covers the stack, per side", _LENGTH),
    "rabbet_depth_mm": ("depth that the rabbet offers to the stack", _LENGTH),
    "stick_mm": ("length of a stick as sold", _LENGTH),
    "sheet_w_mm": ("width of a sheet as sold", _LENGTH),
    "sheet_h_mm": ("height of a sheet as sold", _LENGTH),
    "density_kg_m3": ("mass of a cubic metre of the filled outline, hollows included",
                      {"type": "number", "unit": "kg/m3", "constraints": {"minimum": 0}}),
    "join": ("how corners of a strip meet", {"constraints": {"enum": ["mitre", "butt"]}}),
    "texture": ("file in textures/; empty means CODE.png", {}),
    "texture_mm_per_px": ("physical size of one pixel of the texture",
                          {"type": "number", "unit": "mm/px", "constraints": {"minimum": 0}}),
    "price": ("price before tax of one price_per; invented",
              {"type": "number", "unit": "US dollars", "constraints": {"minimum": 0}}),
    "price_per": ("what the price buys", {"constraints": {"enum": ["sheet", "metre"]}}),
    "in_stock": ("true when it lies in the rack", {"type": "boolean"}),
    "conservation": ("what is claimed, in plain words; invented", {}),
    "collection": ("the rack it hangs in", {}),
    "tags": ("the shop's own words, separated by semicolons", {}),
}  # fmt: skip

SAMPLE_COLUMNS = tuple(_SAMPLE_FIELDS)


def cell(value: object) -> str:
    """A value as it stands in the table; empty is unknown."""
    if isinstance(value, bool):
        return "true" if value else "false"
    return f"{value:g}" if isinstance(value, int | float) else str(value)


def _field(name: str, description: str, **rest: object) -> dict[str, object]:
    return {"name": name, "type": "string", "description": description, **rest}


def _resource(
    name: str, title: str, fields: list[dict[str, object]], **schema: object
) -> dict[str, object]:
    return {
        "name": name, "title": title, "path": f"{name}.csv", "profile": "tabular-data-resource",
        "format": "csv", "mediatype": "text/csv", "encoding": "utf-8",
        "schema": {"fields": fields, "missingValues": [""], **schema},
    }  # fmt: skip


def _code_key() -> list[dict[str, object]]:
    return [{"fields": "code", "reference": {"resource": "samples", "fields": "code"}}]


def _code_field() -> dict[str, object]:
    return _field("code", "code of the sample", constraints={"required": True})


def _samples() -> dict[str, object]:
    fields = [_field(name, text, **dict(rest)) for name, (text, rest) in _SAMPLE_FIELDS.items()]
    return _resource(
        "samples", "One row a sample; an empty cell is unknown", fields, primaryKey="code"
    )


def _colours() -> dict[str, object]:
    number = {"type": "number", "constraints": {"required": True}}
    fields = [
        _code_field(),
        _field("share", "share of the surface", type="number", unit="1",
               constraints={"required": True, "minimum": 0, "maximum": 1}),
        _field("L", "CIELAB lightness, D50, 2 degree", unit="CIELAB", **number),
        _field("a", "CIELAB a*, D50, 2 degree", unit="CIELAB", **number),
        _field("b", "CIELAB b*, D50, 2 degree", unit="CIELAB", **number),
    ]  # fmt: skip
    return _resource("colours", "One row a colour of a sample, largest share first", fields,
                     foreignKeys=_code_key())  # fmt: skip


def _spectra() -> dict[str, object]:
    share = {"type": "number", "unit": "1", "constraints": {"minimum": 0, "maximum": 1}}
    fields = [
        _code_field(),
        _field(
            "colour",
            "which colour of the sample: 1 is its first row in colours.csv",
            type="integer",
        ),
        *(_field(f"nm{nm}", f"reflectance at {nm} nm", **share) for nm in range(380, 731, 10)),
    ]
    return _resource("spectra", "Reflectance of each colour", fields, primaryKey=["code", "colour"],
                     foreignKeys=_code_key())  # fmt: skip


def _profiles() -> dict[str, object]:
    fields = [
        _code_field(),
        _field("order", "place of the point in the line", type="integer"),
        _field("x_mm", "distance outward from the sight edge", type="number", unit="mm"),
        _field(
            "height_mm", "height of the front surface over the back plane", type="number", unit="mm"
        ),
    ]
    return _resource("profiles", "Cross-sections of strips, liners and mouldings", fields,
                     primaryKey=["code", "order"], foreignKeys=_code_key())  # fmt: skip


def write(path: Path) -> None:
    """Write datapackage.json."""
    described = {
        "profile": "tabular-data-package",
        "name": "invented-sample-rack",
        "title": "An invented rack of framing samples",
        "description": "Every name, colour, size and price is invented. Pictures lie in textures/: "
        "grey ones are tone around the sample's own colour with mean 128, coloured ones are the "
        "surface itself.",
        "version": "1.0.0",
        "licenses": [
            {
                "name": "CC0-1.0",
                "title": "CC0 1.0",
                "path": "https://creativecommons.org/publicdomain/zero/1.0/",
            }
        ],
        "resources": [_samples(), _colours(), _spectra(), _profiles()],
    }
    path.write_text(json.dumps(described, indent=1) + "\n", encoding="utf-8")
