"""A design as the text of a design file, every length exact."""

from collections.abc import Iterator

from framing_palette.catalogue import Kind
from framing_palette.design.arrangements import Arrangement
from framing_palette.design.designs import Design
from framing_palette.design.layers import Art, Board, Layer, Moulding, Shape, Sides
from framing_palette.design.toml_files import quoted
from framing_palette.units import ZERO, Length

Value = str | bool | float | int | list[str] | None


def design_text(design: Design) -> str:
    """Write a design so that reading it gives the same design to the last digit."""
    tables: list[str] = [_table("", _head(design)), _table("[art]", _art(design.art))]
    tables += [_table("[[layer]]", _layer(layer)) for layer in design.layers]
    if design.glazing:
        glazing: dict[str, Value] = {
            "material": design.glazing.material,
            "thickness": exact_text(design.glazing.thickness),
        }
        tables.append(_table("[glazing]", glazing))
    if design.spacer:
        tables.append(_table("[spacer]", {"thickness": exact_text(design.spacer)}))
    for name, board in (("[mount]", design.mount), ("[backing]", design.backing)):
        if board:
            tables.append(_table(name, _board(board)))
    if design.moulding:
        tables.append(_table("[moulding]", _moulding(design.moulding)))
    if design.arrangement:
        tables += _arrangement(design.arrangement)
    return "\n".join(tables)


def exact_text(length: Length) -> str:
    """Write a length with its unit and without rounding.

    Inches when a sixty-fourth is fine enough, else millimetres as a decimal or a fraction.
    """
    if length.is_shown_exactly("in", 64):
        return length.show("in", 64)
    if length.is_shown_exactly("mm", decimals=6):
        return length.show("mm", decimals=6)
    sign, size = ("-" if length < ZERO else ""), abs(length.mm)
    whole, rest = divmod(size, 1)
    return f"{sign}{whole} {rest} mm" if whole else f"{sign}{rest} mm"


def _table(title: str, values: dict[str, Value]) -> str:
    lines = [title] if title else []
    lines += [f"{key} = {_value(value)}" for key, value in values.items() if _is_told(value)]
    return "\n".join(lines) + "\n"


def _is_told(value: Value) -> bool:
    return value is not None and value is not False and value != ""


def _value(value: Value) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, list):
        return "[" + ", ".join(quoted(item) for item in value) + "]"
    return quoted(value) if isinstance(value, str) else repr(value)


def _optional(length: Length | None) -> str | None:
    return None if length is None else exact_text(length)


def _sides(sides: Sides | None) -> Value:
    if sides is None:
        return None
    texts = [exact_text(length) for _, length in sides.named]
    return texts[0] if len(set(texts)) == 1 else texts


def _head(design: Design) -> dict[str, Value]:
    return {
        "name": design.name,
        "unit": design.unit,
        "hidden_overlap": exact_text(design.hidden_overlap),
    }


def _art(art: Art) -> dict[str, Value]:
    return {
        "width": exact_text(art.width),
        "height": exact_text(art.height),
        "thickness": exact_text(art.thickness),
        "overlap": _optional(art.overlap),
        "shape": None if art.shape is Shape.RECTANGLE else str(art.shape),
        "mass_kg": art.mass_kg,
        "friable": art.friable,
    }


def _layer(layer: Layer) -> dict[str, Value]:
    sheet: Value = None
    if layer.sheet_w is not None and layer.sheet_h is not None:
        sheet = [exact_text(layer.sheet_w), exact_text(layer.sheet_h)]
    return {
        "kind": str(layer.kind),
        "code": layer.code,
        "thickness": _optional(layer.thickness),
        "reveal": _sides(layer.reveal),
        "borders": _sides(layer.borders),
        "face": _optional(layer.face),
        "bevel": _optional(layer.bevel),
        "rabbet_width": _optional(layer.rabbet_width),
        "rabbet_depth": _optional(layer.rabbet_depth),
        "join": None if layer.kind in (Kind.MAT, Kind.LINER) else layer.join,
        "material": layer.material,
        "density_kg_m3": layer.density_kg_m3,
        "sheet": sheet,
        "stick": _optional(layer.stick),
    }


def _board(board: Board) -> dict[str, Value]:
    return {
        "thickness": exact_text(board.thickness),
        "material": board.material,
        "density_kg_m3": board.density_kg_m3,
    }


def _moulding(moulding: Moulding) -> dict[str, Value]:
    return {
        "code": moulding.code,
        "face": exact_text(moulding.face),
        "rabbet_width": exact_text(moulding.rabbet_width),
        "rabbet_depth": exact_text(moulding.rabbet_depth),
        "allowance": exact_text(moulding.allowance),
        "clearance": exact_text(moulding.clearance),
        "height": _optional(moulding.height),
        "material": moulding.material,
        "density_kg_m3": moulding.density_kg_m3,
        "stick": _optional(moulding.stick),
    }


def _arrangement(arrangement: Arrangement) -> Iterator[str]:
    head: dict[str, Value] = {"columns": arrangement.columns, "gap": exact_text(arrangement.gap)}
    yield _table("[arrangement]", head)
    for window in arrangement.windows:
        values: dict[str, Value] = {
            "width": exact_text(window.width),
            "height": exact_text(window.height),
            "shape": str(window.shape),
            "x": _optional(window.x),
            "y": _optional(window.y),
        }
        yield _table("[[arrangement.window]]", values)
