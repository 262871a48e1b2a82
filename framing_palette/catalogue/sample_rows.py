"""Sample rows: one row of samples.csv as a sample without colours, and the other way round."""

from collections.abc import Callable, Iterable, Sequence
from typing import Any

from framing_palette.catalogue.cells import (
    RowReader,
    joined_tags,
    length_text,
    number_text,
    split_tags,
)
from framing_palette.catalogue.samples import Finish, Kind, PriceBasis, Sample, Surface
from framing_palette.catalogue.table_files import guarded

_LENGTHS = {
    "face_mm": "face",
    "thickness_mm": "thickness",
    "bevel_mm": "bevel",
    "rabbet_width_mm": "rabbet_width",
    "rabbet_depth_mm": "rabbet_depth",
    "stick_mm": "stick",
    "sheet_w_mm": "sheet_w",
    "sheet_h_mm": "sheet_h",
}
SAMPLE_COLUMNS = (
    "code",
    "name",
    "kind",
    "surface",
    "material",
    "finish",
    *_LENGTHS,
    "density_kg_m3",
    "join",
    "texture",
    "texture_mm_per_px",
    "price",
    "price_per",
    "in_stock",
    "conservation",
    "collection",
    "tags",
)
RARE_SAMPLE_COLUMNS = ("colour_origin",)
"""Columns that a folder has only where a sample says something in them."""

REQUIRED_SAMPLE_COLUMNS = ("code", "kind")
LEFT_OUT = "; this row is left out"
_PRICED_BY = {
    "m": PriceBasis.METRE,
    "meter": PriceBasis.METRE,
    "ft": PriceBasis.FOOT,
    "length": PriceBasis.STICK,
    "each": PriceBasis.PIECE,
    "ea": PriceBasis.PIECE,
    "board": PriceBasis.SHEET,
}


def read_sample_row(row: RowReader) -> Sample | None:
    """Return the sample of a row, or None when it has no usable code or kind, which is told.

    Any other bad cell is told, too, and what it should say is unknown.
    """
    code, kind = row.code(so=LEFT_OUT), row.word("kind", Kind, so=LEFT_OUT)
    if kind is None and not row.text("kind"):
        row.tell("kind", f"the kind is missing; write one of {', '.join(Kind)}{LEFT_OUT}")
    facts: dict[str, Any] = {
        **{name: row.length(column) for column, name in _LENGTHS.items()},
        "surface": row.word("surface", Surface),
        "finish": row.word("finish", Finish),
        "material": row.common_text("material"),
        "density_kg_m3": row.number("density_kg_m3", least=1, most=30_000),
        "texture_file": _texture_name(row),
        "texture_mm_per_px": row.number("texture_mm_per_px", least=1e-4, most=100),
        "price": row.price("price"),
        "price_per": row.word("price_per", PriceBasis, others=_PRICED_BY),
        "in_stock": row.truth("in_stock"),
        "join": _join(row),
        "conservation": row.common_text("conservation"),
        "collection": row.common_text("collection"),
        "tags": split_tags(row.text("tags")),
        "colour_origin": row.common_text("colour_origin"),
    }
    _check_rabbet(row, facts)
    if not code or kind is None:
        return None
    return Sample(code=code, name=row.text("name") or code, kind=kind, colours=(), **facts)


def usable_code(row: RowReader) -> str:
    """Return the code of a row that gives a sample, an empty text for any other row."""
    return row.code() if row.word("kind", Kind) is not None else ""


def columns_for(samples: Iterable[Sample]) -> tuple[str, ...]:
    """Return the columns that a table of some samples needs."""
    rare = set(RARE_SAMPLE_COLUMNS)
    for sample in samples:
        rare = {column for column in rare if not getattr(sample, column)}
        if not rare:
            break
    return (*SAMPLE_COLUMNS, *(column for column in RARE_SAMPLE_COLUMNS if column not in rare))


def sample_cells(sample: Sample, columns: Sequence[str] = SAMPLE_COLUMNS) -> tuple[str, ...]:
    """Return a sample as cells; reading those of `columns_for` it gives the same sample."""
    return tuple(_WRITERS[column](sample) for column in columns)


def _texture_name(row: RowReader) -> str:
    name = row.text("texture")
    if "/" in name or "\\" in name or name in {".", ".."}:
        row.tell("texture", f'"{name}" is a path; name a file of the folder textures')
        return ""
    return name


def _join(row: RowReader) -> str:
    join = row.text("join").lower()
    if join not in {"", "mitre", "butt"}:
        row.tell("join", f'"{join}" is neither mitre nor butt')
        return ""
    return join


def _check_rabbet(row: RowReader, facts: dict[str, Any]) -> None:
    """Make a rabbet as wide as its face unknown, and remark on one deeper than its moulding."""
    if row.text("kind") == Kind.WOOD_FILLET:
        return  # its rabbet is a tail beside the face, not under it
    face, width = facts["face"], facts["rabbet_width"]
    if face is not None and width is not None and width >= face:
        row.tell("rabbet_width_mm", "the rabbet is as wide as the face or wider")
        facts["rabbet_width"] = None
    height, depth = facts["thickness"], facts["rabbet_depth"]
    if height is not None and depth is not None and depth > height:
        reason = "the rabbet is deeper than the moulding is thick; check both figures"
        row.tell("rabbet_depth_mm", reason, is_notice=True)


def _text_writer(name: str) -> Callable[[Sample], str]:
    return lambda sample: guarded(str(getattr(sample, name) or ""))


def _length_writer(name: str) -> Callable[[Sample], str]:
    return lambda sample: length_text(getattr(sample, name))


_WRITERS: dict[str, Callable[[Sample], str]] = {
    **{column: _text_writer(column) for column in (*SAMPLE_COLUMNS, *RARE_SAMPLE_COLUMNS)},
    **{column: _length_writer(name) for column, name in _LENGTHS.items()},
    "density_kg_m3": lambda sample: number_text(sample.density_kg_m3),
    "texture": lambda sample: guarded(sample.texture_file),
    "texture_mm_per_px": lambda sample: number_text(sample.texture_mm_per_px),
    "price": lambda sample: "" if sample.price is None else str(sample.price),
    "in_stock": lambda sample: "" if sample.in_stock is None else str(sample.in_stock).lower(),
    "tags": lambda sample: guarded(joined_tags(sample.tags)),
}
