"""The sizes of a design as plain data, for printing as JSON."""

from collections.abc import Iterable
from typing import Any, Final

from framing_palette.catalogue import Sample
from framing_palette.design.cautions import cautions_of
from framing_palette.design.depth import depth_of
from framing_palette.design.designs import Design
from framing_palette.design.figures import RectangleFigure
from framing_palette.design.size_parts import LayerSize, OpeningSize, RailSize
from framing_palette.design.sizes import sizes_of
from framing_palette.design.weight import weight_of
from framing_palette.units import Length, LengthUnit

SCHEMA: Final = "framing-palette/size@1"
DENOMINATOR: Final = 32


def size_report(design: Design, samples: Iterable[Sample] = ()) -> dict[str, Any]:
    """Return every size of a design as JSON-ready data.

    Millimetres are numbers; inches are texts to the nearest 1/32, which ``inches_rounded_to``
    says; each ``how`` tells the sum in the design's own unit. What a design lacks (glazing, a
    moulding, a fillet's unknown outside) is None. The catalogue's ``samples`` serve only to name
    deeper mouldings when the stack does not fit.

    Raises
    ------
    FieldError
        When a size or the depth cannot be worked out.
    """
    sizes, depth, unit = sizes_of(design), depth_of(design), design.unit
    weight, frame = weight_of(design, sizes), sizes.frame
    moulding = design.moulding
    return {
        "schema": SCHEMA,
        "name": design.name,
        "inches_rounded_to": f"1/{DENOMINATOR}",
        "layers": [_layer(size, unit) for size in sizes.layers],
        "glazing": _rectangle(sizes.contents, unit) if design.glazing else None,
        "backing": _rectangle(sizes.contents, unit) if design.backing else None,
        "outer": _rectangle(sizes.outer, unit),
        "rabbet_size": _rectangle(frame.rabbet, unit) if frame else None,
        "sight_size": _rectangle(frame.sight, unit) if frame else None,
        "rails": [_rail(rail, unit) for rail in frame.rails] if frame else [],
        "moulding_length_mm": _mm(frame.moulding_length.value) if frame else None,
        "stack_depth_mm": _mm(depth.stack.value),
        "clearance_mm": _mm(depth.clearance),
        "rabbet_depth_mm": _mm(moulding.rabbet_depth) if moulding else None,
        "depth_ok": depth.fits,
        "depth_shortfall_mm": _mm(depth.shortfall),
        "weight_kg": round(weight.likely_kg, 3),
        "weight_low_kg": round(weight.low_kg, 3),
        "weight_high_kg": round(weight.high_kg, 3),
        "cautions": [caution.sentence for caution in cautions_of(design, samples)],
    }


def _mm(length: Length) -> float:
    return length.as_float_mm()


def _rectangle(size: RectangleFigure, unit: LengthUnit) -> dict[str, Any]:
    width, height = size.lengths
    return {
        "width_mm": _mm(width),
        "height_mm": _mm(height),
        "width_in": width.figures("in", DENOMINATOR),
        "height_in": height.figures("in", DENOMINATOR),
        "how": {
            "width": size.width.how(unit, DENOMINATOR),
            "height": size.height.how(unit, DENOMINATOR),
        },
    }


def _layer(size: LayerSize, unit: LengthUnit) -> dict[str, Any]:
    return {
        "kind": str(size.layer.kind),
        "code": size.layer.code or None,
        "opening": _rectangle(size.opening.size, unit),
        "openings": [_opening(opening, unit) for opening in size.openings],
        "outer": _rectangle(size.outer, unit) if size.outer else None,
    }


def _opening(opening: OpeningSize, unit: LengthUnit) -> dict[str, Any]:
    place = {"left_mm": _mm(opening.left), "top_mm": _mm(opening.top)}
    return {"shape": str(opening.shape), **_rectangle(opening.size, unit), **place}


def _rail(rail: RailSize, unit: LengthUnit) -> dict[str, Any]:
    return {
        "side": rail.side,
        "long_point_mm": _mm(rail.long_point.value),
        "long_point_in": rail.long_point.value.figures("in", DENOMINATOR),
        "short_point_mm": _mm(rail.short_point.value),
        "short_point_in": rail.short_point.value.figures("in", DENOMINATOR),
        "how": rail.long_point.how(unit, DENOMINATOR),
    }
