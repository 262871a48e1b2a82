"""From one hand-written line to one sample: code, sizes, price, stock, conservation, tags."""

import re
import zlib
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

T = TypeVar("T")
TABLES = Path(__file__).parent / "tables"
PREFIXES = {
    "mats": "M",
    "wrapped_fillets": "WF",
    "wood_fillets": "F",
    "liners": "L",
    "mouldings": "R",
}
KINDS = {
    "mats": "mat", "wrapped_fillets": "wrapped_fillet", "wood_fillets": "wood_fillet",
    "liners": "liner", "mouldings": "moulding",
}  # fmt: skip

# kg/m3, air-dry, rounded: the order of magnitude that timber handbooks print; metal and plaster
# grounds are given for the filled outline, hollows included.
DENSITY = {
    "basswood": 415, "pine": 500, "oak": 720, "quartered_oak": 720, "ash": 680, "walnut": 640,
    "cherry": 580, "maple": 705, "sapele": 670, "zebrano": 740, "weathered": 480,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a table: lightness, chroma, hue and share of every colour, and options."""

    code: str
    name: str
    kind: str
    surface: str
    colours: tuple[tuple[float, float, float, float], ...]
    options: dict[str, str]


def read_lines() -> list[Line]:
    """All lines of all tables, in rack order."""
    return [line for table in PREFIXES for line in _read_table(table)]


def _read_table(table: str) -> list[Line]:
    text = (TABLES / f"{table}.txt").read_text(encoding="utf-8")
    return [_parse(table, row) for row in text.splitlines() if row and not row.startswith("#")]


def _parse(table: str, row: str) -> Line:
    name, surface, colours, *rest = (part.strip() for part in row.split("|"))
    slug = re.sub(r"[^A-Z0-9]+", "-", name.upper()).strip("-")
    parts = [[float(x) for x in colour.split()] for colour in colours.split("/")]
    shared = tuple((p[0], p[1], p[2], p[3] / 100 if len(p) > 3 else 1.0) for p in parts)
    options = dict(pair.split("=") for pair in " ".join(rest).split())
    return Line(f"{PREFIXES[table]}-{slug}", name, KINDS[table], surface, shared, options)


def pick(code: str, salt: str, values: tuple[T, ...]) -> T:
    """One of the values, always the same for a code."""
    return values[zlib.crc32(f"{code}/{salt}".encode()) % len(values)]


def sample_row(line: Line) -> dict[str, str | float | int | bool]:
    """The columns of samples.csv that do not depend on the tile."""
    sizes = {
        "mat": _mat, "wrapped_fillet": _wrapped_fillet, "wood_fillet": _wood_fillet,
        "liner": _liner, "moulding": _moulding,
    }[line.kind](line)  # fmt: skip
    return {
        "code": line.code, "name": line.name, "kind": line.kind,
        "surface": "smooth" if line.surface == "painted" else line.surface,
        "finish": _finish(line), "in_stock": pick(line.code, "stock", tuple(range(14))) > 0,
        "collection": _collection(line), "tags": ";".join(_tags(line)), **sizes,
    }  # fmt: skip


def _mat(line: Line) -> dict[str, str | float | int]:
    rag = line.options.get("grade") == "rag"
    thick = 2.8 if line.options.get("ply") == "8" else 1.4
    large = pick(line.code, "size", (0, 0, 0, 1)) and line.surface == "smooth"
    width, height = (1016, 1524) if large else (813, 1016)
    cost = {"smooth": 11.5, "linen": 24, "suede": 27, "silk": 29, "mottled": 16}[line.surface]
    cost *= (2.1 if rag else 1) * (1.9 if thick > 2 else 1) * (1.85 if large else 1)
    return {
        "material": "cotton rag board" if rag else "alpha cellulose board", "density_kg_m3": 640,
        "thickness_mm": thick, "bevel_mm": thick, "sheet_w_mm": width, "sheet_h_mm": height,
        "price": round(cost + pick(line.code, "price", (0, 0.4, 0.9, 1.3)), 2),
        "price_per": "sheet",
        "conservation": "acid free, lignin free, buffered; PAT result invented"
        if rag or line.surface == "smooth" else "acid free facing and core; cloth dyes not tested",
    }  # fmt: skip


def _wrapped_fillet(line: Line) -> dict[str, str | float | int]:
    dear = {"smooth": 3.2, "mottled": 4.6, "linen": 4.4, "suede": 4.8, "silk": 5.0, "leaf": 4.9}
    return {
        "material": "board strip, wrapped", "density_kg_m3": 660,
        "face_mm": pick(line.code, "face", (25, 32, 38)),
        "thickness_mm": pick(line.code, "thick", (2.6, 2.8, 3.0, 3.2)),
        "bevel_mm": pick(line.code, "bevel", (3, 4, 5, 6, 8)),
        "stick_mm": 1016, "join": "mitre", "price": dear[line.surface], "price_per": "metre",
        "conservation": "acid free board and paper; face may touch the art only through a spacer",
    }  # fmt: skip


def _wood_fillet(line: Line) -> dict[str, str | float | int]:
    species = line.options.get("species", "basswood")
    metal = line.surface == "brushed_metal"
    dear = {
        "plain_wood": 5.4,
        "painted": 5.8,
        "leaf": 9.6,
        "distressed_wood": 7.2,
        "brushed_metal": 6.6,
    }
    return {
        "material": "aluminium" if metal else _timber(line),
        "density_kg_m3": 2700 if metal else DENSITY[species],
        "face_mm": pick(line.code, "face", (5, 6, 7, 8, 10)),
        "thickness_mm": (thickness := pick(line.code, "thick", (4.5, 5.5, 6.5, 7.5))),
        "bevel_mm": 0,
        # The tail that lies under the mat: 7 mm wide, 1.2 mm thick, beside the face.
        "rabbet_width_mm": 7, "rabbet_depth_mm": round(thickness - 1.2, 2),
        "stick_mm": 2440, "join": pick(line.code, "join", ("mitre", "mitre", "butt")),
        "price": dear[line.surface] + pick(line.code, "price", (0, 0.4, 0.9)), "price_per": "metre",
        "conservation": "wood: seal or line before it stands near paper",
    }  # fmt: skip


def _liner(line: Line) -> dict[str, str | float | int]:
    face, height = float(line.options["face"]), float(line.options["height"])
    return {
        "material": "basswood, covered", "density_kg_m3": 430,
        "face_mm": face, "thickness_mm": height,
        "rabbet_width_mm": 6.5, "rabbet_depth_mm": round(height * 0.45, 1), "stick_mm": 2740,
        "join": "mitre", "price": round(9 + face * 0.22, 2), "price_per": "metre",
        "conservation": "wood under the cover: use a sealed rabbet with works on paper",
    }  # fmt: skip


def _moulding(line: Line) -> dict[str, str | float | int]:
    face, height = float(line.options["face"]), float(line.options["height"])
    species = line.options.get("species", "basswood")
    metal = line.surface == "brushed_metal"
    rate = {
        "plain_wood": 0.42,
        "painted": 0.40,
        "distressed_wood": 0.5,
        "leaf": 1.05,
        "brushed_metal": 0.6,
    }
    return {
        "material": "aluminium, hollow" if metal else _timber(line),
        "density_kg_m3": 760 if metal else DENSITY[species],
        "face_mm": face, "thickness_mm": height, "join": "mitre",
        "stick_mm": 3050 if metal else 2740,
        "price": round(4.5 + rate[line.surface] * face + 0.12 * height, 2), "price_per": "metre",
        "conservation": "metal: no acids of its own" if metal
        else "seal the rabbet for works on paper",
    }  # fmt: skip


def _timber(line: Line) -> str:
    wood = {"quartered_oak": "quartered oak", "weathered": "weathered pine"}
    species = line.options.get("species", "basswood")
    dressed = {"painted": ", painted", "leaf": ", gessoed and gilded", "distressed_wood": ", aged"}
    return wood.get(species, species) + dressed.get(line.surface, "")


def claims(line: Line) -> list[tuple[str, str, str, str]]:
    """Claims about a board with their scope, date and source: all invented."""
    if line.kind not in ("mat", "wrapped_fillet"):
        return []
    year, month = (
        2019 + pick(line.code, "year", tuple(range(7))),
        pick(line.code, "month", tuple(range(1, 13))),
    )
    when = f"{year}-{month:02d}-15"
    rag = line.options.get("grade") == "rag"
    core = "cotton fibre, alpha cellulose over 90 %" if rag else "alpha cellulose, acid free"
    found = [(core, "core", when, "invented maker")]
    if rag or (line.surface == "smooth" and pick(line.code, "pat", (True, True, False))):
        found.append(
            ("passes the photographic activity test", "colour", when, "invented laboratory")
        )
    return found


def _finish(line: Line) -> str:
    if "finish" in line.options:
        return line.options["finish"]
    if line.surface in ("leaf", "brushed_metal"):
        return "metallic"
    if line.surface in ("silk", "plain_wood"):
        return "satin"
    if line.surface == "painted":
        return "satin" if pick(line.code, "gloss", (0, 0, 1)) == 0 else "gloss"
    return "matt"


def _collection(line: Line) -> str:
    if line.kind == "mat":
        return (
            "Rag boards"
            if line.options.get("grade") == "rag"
            else f"{line.surface.capitalize()} boards"
        )
    return {
        "smooth": "Papers", "linen": "Cloths", "suede": "Cloths", "silk": "Cloths",
        "mottled": "Papers",
        "plain_wood": "Timber yard", "painted": "Paint shop", "leaf": "Gilder's bench",
        "distressed_wood": "Old barn", "brushed_metal": "Metal works",
    }[line.surface]  # fmt: skip


def _tags(line: Line) -> list[str]:
    lightness, colour = line.colours[0][0], line.colours[0][1]
    tags = ["neutral" if colour < 8 else "muted" if colour < 25 else "strong"]
    tags.append("light" if lightness > 80 else "middle" if lightness > 42 else "dark")
    if line.surface == "distressed_wood":
        tags.append("rustic")
    if line.surface == "leaf" and line.kind in ("moulding", "wood_fillet"):
        tags.append("formal")
    if line.options.get("profile") in ("flat", "shadow", "metal"):
        tags.append("plain")
    return tags
