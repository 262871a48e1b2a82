"""From the tables of a design file to a design: every text read, every code looked up."""

from dataclasses import dataclass, replace
from typing import Final

from framing_palette.catalogue import Catalogue, Kind, Sample
from framing_palette.design.arrangements import Arrangement, Window
from framing_palette.design.borders import fitted_to_outer
from framing_palette.design.design_tables import (
    ArrangementTable,
    ArtTable,
    BoardTable,
    DesignTable,
    LayerTable,
    MouldingTable,
    WindowTable,
)
from framing_palette.design.designs import Design
from framing_palette.design.layers import (
    DEFAULT_ALLOWANCE,
    DEFAULT_CLEARANCE,
    DEFAULT_HIDDEN_OVERLAP,
    Art,
    Board,
    Glazing,
    Layer,
    Moulding,
    Sides,
)
from framing_palette.design.sample_parts import layer_of
from framing_palette.errors import FieldError, UnknownFactError
from framing_palette.units import ZERO, Length, LengthUnit

BEVEL_ONLY: Final = "bevel"


@dataclass(frozen=True, slots=True)
class Reader:
    """Reads texts in one unit and codes from one catalogue.

    ``unit`` None means that a bare number cannot be read; ``catalogue`` None that codes are kept
    but not looked up.
    """

    unit: LengthUnit | None
    catalogue: Catalogue | None

    def length(self, text: str | None, field: str) -> Length | None:
        """Read an optional length."""
        return None if text is None else self.needed(text, field)

    def needed(self, text: str | None, field: str) -> Length:
        """Read a length that must be there.

        Raises
        ------
        LengthError
            When the text is not a length.
        FieldError
            When it is missing, or bare while the file names no unit.
        """
        if text is None:
            raise FieldError(field, got="missing", wanted="write a length")
        if self.unit is not None:
            return Length.parse(text, self.unit, field=field)
        length = Length.parse(text, "in", field=field)
        if length and length != Length.parse(text, "mm", field=field):
            wanted = 'write its unit, or unit = "in" or "mm" at the top of the file'
            raise FieldError(field, got=f'"{text}"', wanted=wanted)
        return length

    def sides(self, texts: tuple[str, ...] | None, field: str) -> Sides | None:
        """Read one length for all sides, or four."""
        if texts is None:
            return None
        if len(texts) == 1:
            return Sides.all_round(self.needed(texts[0], field))
        names = ("top", "right", "bottom", "left")
        return Sides(
            *(
                self.needed(text, f"{field}, {name}")
                for name, text in zip(names, texts, strict=True)
            )
        )

    def sample(self, code: str) -> Sample | None:
        """Look a code up; None without a code or a catalogue.

        Raises
        ------
        UnknownSampleError
            When the catalogue has no such code.
        """
        return self.catalogue[code] if code and self.catalogue is not None else None


def design_from(table: DesignTable, catalogue: Catalogue | None) -> Design:
    """Make the design that a file describes.

    Raises
    ------
    FieldError, LengthError, UnknownSampleError, UnknownFactError
        Naming the field or the code.
    """
    reader = Reader(table.unit, catalogue)
    arrangement = _arrangement(reader, table.arrangement, table.art) if table.arrangement else None
    glazing, spacer = table.glazing, table.spacer
    hidden_overlap = reader.length(table.hidden_overlap, "hidden_overlap")
    design = Design(
        art=_art(reader, table.art, arrangement),
        layers=tuple(_layer(reader, place, row) for place, row in enumerate(table.layer, start=1)),
        glazing=Glazing(glazing.material, reader.needed(glazing.thickness, "glazing thickness"))
        if glazing
        else None,
        mount=_board(reader, table.mount, "mount"),
        backing=_board(reader, table.backing, "backing"),
        spacer=reader.needed(spacer.thickness, "spacer thickness") if spacer else ZERO,
        moulding=_moulding(reader, table.moulding) if table.moulding else None,
        arrangement=arrangement,
        hidden_overlap=DEFAULT_HIDDEN_OVERLAP if hidden_overlap is None else hidden_overlap,
        unit=table.unit or "in",
        name=table.name,
    )
    return _fitted(reader, table, design)


def _art(reader: Reader, table: ArtTable, arrangement: Arrangement | None) -> Art:
    first = arrangement.windows[0] if arrangement else None
    width = first.width if first else reader.needed(table.width, "art width")
    height = first.height if first else reader.needed(table.height, "art height")
    return Art(
        width,
        height,
        thickness=reader.length(table.thickness, "art thickness") or ZERO,
        overlap=reader.length(table.overlap, "art overlap"),
        shape=table.shape,
        mass_kg=table.mass_kg,
        friable=table.friable,
    )


def _layer(reader: Reader, place: int, table: LayerTable) -> Layer:
    """Make one layer; whatever is refused is told with the layer's name before the field."""
    name = f"layer {place}"
    try:
        return _named_layer(reader, name, table)
    except FieldError as error:
        if error.field.startswith(name):
            raise
        field = f"{name} {error.field}"
        raise FieldError(field, got=error.got, wanted=error.wanted) from error


def _named_layer(reader: Reader, name: str, table: LayerTable) -> Layer:
    sample = reader.sample(table.code)
    kind = _kind(name, table, sample)
    base = layer_of(sample) if sample else Layer(kind, None, code=table.code)
    width, height = table.sheet or (None, None)

    def told(text: str | None, field: str, otherwise: Length | None) -> Length | None:
        length = reader.length(text, f"{name} {field}")
        return otherwise if length is None else length

    layer = Layer(
        kind=kind,
        thickness=told(table.thickness, "thickness", base.thickness),
        code=table.code,
        borders=reader.sides(table.borders, f"{name} borders"),
        face=told(table.face, "face", base.face),
        bevel=told(table.bevel, "bevel", base.bevel),
        rabbet_width=told(table.rabbet_width, "rabbet_width", base.rabbet_width),
        rabbet_depth=told(table.rabbet_depth, "rabbet_depth", base.rabbet_depth),
        join=table.join or base.join,
        material=table.material or base.material,
        density_kg_m3=table.density_kg_m3 or base.density_kg_m3,
        sheet_w=told(width, "sheet, width", base.sheet_w),
        sheet_h=told(height, "sheet, height", base.sheet_h),
        stick=told(table.stick, "stick", base.stick),
    )
    return replace(layer, reveal=_reveal(reader, name, table, layer))


def _kind(name: str, table: LayerTable, sample: Sample | None) -> Kind:
    if sample and table.kind and sample.kind is not table.kind:
        wanted = f"{sample.code} is a {sample.kind} in the catalogue"
        raise FieldError(f"{name} kind", got=table.kind, wanted=wanted)
    kind = table.kind or (sample.kind if sample else None)
    if kind is None:
        wanted = "write it, or name the catalogue that holds the code"
        raise FieldError(f"{name} kind", got="missing", wanted=wanted)
    return kind


def _reveal(reader: Reader, name: str, table: LayerTable, layer: Layer) -> Sides | None:
    """Read a reveal: a width, the word ``bevel``, or the bevel and a chosen flat."""
    if table.reveal and table.flat:
        wanted = "write the whole reveal or the flat alone"
        raise FieldError(f"{name} flat", got="given beside a reveal", wanted=wanted)
    flat = reader.sides(table.flat, f"{name} flat")
    if flat is None and table.reveal != (BEVEL_ONLY,):
        return reader.sides(table.reveal, f"{name} reveal")
    if layer.bevel_width is None:
        wanted = "write it to show the bevel"
        raise FieldError(f"{name} bevel", got="missing", wanted=wanted)
    return (flat or Sides.all_round(ZERO)).plus(layer.bevel_width)


def _board(reader: Reader, table: BoardTable | None, name: str) -> Board | None:
    if table is None:
        return None
    thickness = reader.needed(table.thickness, f"{name} thickness")
    return Board(thickness, table.material, table.density_kg_m3)


def _moulding(reader: Reader, table: MouldingTable) -> Moulding:
    sample = reader.sample(table.code)
    if sample is not None and sample.kind is not Kind.MOULDING:
        wanted = f"{sample.code} is a {sample.kind.replace('_', ' ')} in the catalogue"
        raise FieldError("moulding code", got=table.code, wanted=wanted)

    def told(text: str | None, field: str, otherwise: Length | None) -> Length | None:
        length = reader.length(text, f"moulding {field}")
        return otherwise if length is None else length

    def needed(text: str | None, field: str, otherwise: Length | None, use: str) -> Length:
        length = told(text, field, otherwise)
        if length is None and sample is not None:
            raise UnknownFactError(sample.code, fact=field.replace("_", " "), needed_for=use)
        if length is None:
            source = f"holds {table.code}" if table.code else "holds its code"
            wanted = f"write it, or name the catalogue that {source}"
            raise FieldError(f"moulding {field}", got="missing", wanted=wanted)
        return length

    facts = sample or _NOTHING_KNOWN
    return Moulding(
        face=needed(table.face, "face", facts.face, "the rails' lengths"),
        rabbet_width=needed(
            table.rabbet_width, "rabbet_width", facts.rabbet_width, "the frame's sight size"
        ),
        rabbet_depth=needed(
            table.rabbet_depth, "rabbet_depth", facts.rabbet_depth, "the depth of the stack"
        ),
        allowance=told(table.allowance, "allowance", DEFAULT_ALLOWANCE) or ZERO,
        clearance=told(table.clearance, "clearance", DEFAULT_CLEARANCE) or ZERO,
        code=table.code,
        height=told(table.height, "height", facts.thickness),
        material=table.material or facts.material,
        density_kg_m3=table.density_kg_m3 or facts.density_kg_m3,
        stick=told(table.stick, "stick", facts.stick),
    )


_NOTHING_KNOWN: Final = Sample(code="", name="", kind=Kind.MOULDING, colours=())


def _arrangement(reader: Reader, table: ArrangementTable, art: ArtTable) -> Arrangement:
    """Read windows listed one by one, or ``rows`` times ``columns`` of the art's own size.

    Without columns, windows that all have x and y lie free, and others in one row.
    """
    count = len(table.window)
    if count and table.rows and count != table.rows * (table.columns or 1):
        wanted = f"{count} windows are listed; leave rows out or make them agree"
        raise FieldError("arrangement rows", got=table.rows, wanted=wanted)
    rows = table.window or (WindowTable(),) * ((table.columns or 1) * (table.rows or 1))
    windows = tuple(
        Window(
            reader.needed(row.width or art.width, f"window {number} width"),
            reader.needed(row.height or art.height, f"window {number} height"),
            row.shape or art.shape,
            reader.length(row.x, f"window {number} x"),
            reader.length(row.y, f"window {number} y"),
        )
        for number, row in enumerate(rows, start=1)
    )
    columns = table.columns or (1 if table.rows else None)
    if columns is None and not all(row.x and row.y for row in rows):
        columns = len(windows)
    gap = reader.length(table.gap, "arrangement gap")
    return Arrangement(windows, columns, ZERO if gap is None else gap)


def _fitted(reader: Reader, table: DesignTable, design: Design) -> Design:
    """Choose the borders for a mat that names its outside size instead of them."""
    for place, row in enumerate(table.layer, start=1):
        name = f"layer {place}"
        if row.weighting and not row.outer:
            wanted = "it goes with an outer size"
            raise FieldError(f"{name} weighting", got="given", wanted=wanted)
        if not row.outer:
            continue
        if row.borders or place - 1 != design.outermost_mat:
            wanted = "only the outermost mat, without borders, is cut to an outside size"
            raise FieldError(f"{name} outer", got="given", wanted=wanted)
        outer = tuple(reader.needed(text, f"{name} outer") for text in row.outer)
        weighting = reader.length(row.weighting, f"{name} weighting") or ZERO
        design = fitted_to_outer(design, (outer[0], outer[1]), weighting)
    return design
