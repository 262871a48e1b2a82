"""The tables of a design file as they stand in it: texts and choices, nothing worked out."""

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field

from framing_palette.catalogue import Kind
from framing_palette.design.layers import Shape


def _as_written(value: object) -> str:
    """Take a text or an exact number; a table or a truth value is not a length."""
    if isinstance(value, str):
        return value
    if isinstance(value, int | Decimal) and not isinstance(value, bool):
        return str(value)
    message = 'write a length such as "16 3/8"'
    raise ValueError(message)


def _as_written_sides(value: object) -> tuple[str, ...]:
    """Take one length for all sides, or four: top, right, bottom, left."""
    if isinstance(value, list):
        if len(value) != 4:
            message = "write one length, or four: top, right, bottom, left"
            raise ValueError(message)
        return tuple(_as_written(side) for side in value)
    return (_as_written(value),)


def _as_written_size(value: object) -> tuple[str, str]:
    if isinstance(value, list) and len(value) == 2:
        return _as_written(value[0]), _as_written(value[1])
    message = "write two lengths: width, height"
    raise ValueError(message)


Written = Annotated[str, BeforeValidator(_as_written)]
WrittenSides = Annotated[tuple[str, ...], BeforeValidator(_as_written_sides)]
WrittenSize = Annotated[tuple[str, str], BeforeValidator(_as_written_size)]
DensityField = Annotated[float, Field(gt=0, lt=25_000, allow_inf_nan=False)]


class _Table(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class ArtTable(_Table):
    """``[art]``."""

    width: Written | None = None
    height: Written | None = None
    thickness: Written | None = None
    overlap: Written | None = None
    shape: Shape = Shape.RECTANGLE
    mass_kg: float | None = None
    friable: bool = False


class LayerTable(_Table):
    """One ``[[layer]]``."""

    kind: Kind | None = None
    code: str = ""
    thickness: Written | None = None
    reveal: WrittenSides | None = None
    flat: WrittenSides | None = None
    borders: WrittenSides | None = None
    outer: WrittenSize | None = None
    weighting: Written | None = None
    face: Written | None = None
    bevel: Written | None = None
    rabbet_width: Written | None = None
    rabbet_depth: Written | None = None
    join: Literal["mitre", "butt"] | None = None
    material: str = ""
    density_kg_m3: DensityField | None = None
    sheet: WrittenSize | None = None
    stick: Written | None = None


class GlazingTable(_Table):
    """``[glazing]``."""

    material: Literal["glass", "acrylic"]
    thickness: Written


class BoardTable(_Table):
    """``[backing]`` and ``[mount]``."""

    thickness: Written
    material: str = ""
    density_kg_m3: DensityField | None = None


class SpacerTable(_Table):
    """``[spacer]``."""

    thickness: Written


class MouldingTable(_Table):
    """``[moulding]``."""

    code: str = ""
    face: Written | None = None
    rabbet_width: Written | None = None
    rabbet_depth: Written | None = None
    allowance: Written | None = None
    clearance: Written | None = None
    height: Written | None = None
    material: str = ""
    density_kg_m3: DensityField | None = None
    stick: Written | None = None


class WindowTable(_Table):
    """One ``[[arrangement.window]]``."""

    width: Written | None = None
    height: Written | None = None
    shape: Shape | None = None
    x: Written | None = None
    y: Written | None = None


class ArrangementTable(_Table):
    """``[arrangement]``: a grid of ``columns`` (and ``rows`` of equal windows), or free places."""

    columns: Annotated[int, Field(ge=1, le=100)] | None = None
    rows: Annotated[int, Field(ge=1, le=100)] | None = None
    gap: Written | None = None
    window: tuple[WindowTable, ...] = ()


class DesignTable(_Table):
    """The whole file."""

    name: str = ""
    unit: Literal["in", "mm", "cm"] | None = None
    hidden_overlap: Written | None = None
    art: ArtTable
    layer: tuple[LayerTable, ...] = ()
    glazing: GlazingTable | None = None
    mount: BoardTable | None = None
    backing: BoardTable | None = None
    spacer: SpacerTable | None = None
    moulding: MouldingTable | None = None
    arrangement: ArrangementTable | None = None
