"""Changing a design: other samples, another order, other widths, everything else as it was.

What designer and client have settled stays: widths go with the sample they were given to, the
outermost mat keeps its borders, glazing, boards, play and overlap are never touched by the way.
"""

from collections.abc import Sequence
from dataclasses import replace

from framing_palette.catalogue import Catalogue, Sample
from framing_palette.design.composing import compose
from framing_palette.design.designs import Design
from framing_palette.design.layers import Art, Layer, Sides
from framing_palette.errors import FieldError
from framing_palette.units import ZERO, Length

OVERLAP = "art"
"""The part whose width is the overlap over the art."""


def samples_in_order(design: Design, catalogue: Catalogue) -> tuple[Sample, ...]:
    """Return the design's samples from the art outward, the moulding last.

    Raises
    ------
    FieldError
        When a layer was measured by hand and has no sample.
    UnknownSampleError
        When a sample is no longer in the catalogue.
    """
    parts = (*design.layers, *((design.moulding,) if design.moulding else ()))
    if any(not part.code for part in parts):
        wanted = "choose a sample for it first"
        raise FieldError("layers", got="one that was measured by hand", wanted=wanted)
    return tuple(catalogue[part.code] for part in parts)


def recomposed(design: Design, samples: Sequence[Sample]) -> Design:
    """Return the design with these samples in this order, its settled widths kept.

    Parameters
    ----------
    samples
        From the art outward; a moulding, if there is one, comes last.

    Raises
    ------
    FieldError
        When the samples cannot stand in this order.
    UnknownFactError
        When the catalogue leaves a measure empty that the design needs.
    """
    fresh = compose(
        samples,
        design.art,
        glazing=design.glazing,
        backing=design.backing,
        unit=design.unit,
        name=design.name,
    )
    outermost = fresh.outermost_mat
    layers = tuple(
        _settled(design, layer, place, is_outermost=place == outermost)
        for place, layer in enumerate(fresh.layers)
    )
    moulding = fresh.moulding
    if moulding is not None and design.moulding is not None:
        moulding = replace(
            moulding, allowance=design.moulding.allowance, clearance=design.moulding.clearance
        )
    return replace(design, layers=layers, moulding=moulding)


def _settled(design: Design, layer: Layer, place: int, *, is_outermost: bool) -> Layer:
    """Return a fresh layer with what was settled for it before."""
    if is_outermost:
        borders = borders_of(design)
        if borders is None:
            return layer
        return replace(
            layer,
            borders=borders if layer.borders else None,
            reveal=borders if layer.reveal else None,
        )
    if layer.reveal is None:
        return layer
    same = [old for old in design.layers if old.code == layer.code and old.reveal]
    here = design.layers[place] if place < len(design.layers) else None
    if not same and here and here.reveal and here.kind is layer.kind and not layer.is_fillet:
        same = [here] if place != design.outermost_mat else []
    return replace(layer, reveal=same[0].reveal) if same else layer


def borders_of(design: Design) -> Sides | None:
    """Return what the outermost mat shows all round; None without a mat."""
    place = design.outermost_mat
    if place is None:
        return None
    return design.layers[place].borders or design.layers[place].reveal


def shown_width(design: Design, part: str) -> Length | None:
    """Return the width on the right-hand side that can be set for a part, None where none can.

    Parameters
    ----------
    part
        ``layer 1`` and so on, counted from the art, or ``art`` for the overlap.
    """
    if part == OVERLAP:
        return design.art.overlap
    layer = dict(design.numbered()).get(part)
    sides = (layer.borders or layer.reveal) if layer else None
    return sides.right if sides else None


def with_shown_width(design: Design, part: str, width: Length) -> Design:
    """Return the design with another width; sides that differ go on differing by as much.

    Raises
    ------
    FieldError
        When the part has no width of its own, or a side would be left with nothing.
    """
    if part == OVERLAP:
        return replace(design, art=replace(design.art, overlap=width))
    layer = dict(design.numbered()).get(part)
    sides = (layer.borders or layer.reveal) if layer else None
    if layer is None or sides is None:
        wanted = "the moulding above it decides what shows; set the layer inside it"
        raise FieldError(f"{part} width", got=design.said(width), wanted=wanted)
    wider = sides.plus(width - sides.right)
    return _with_layer(design, part, _with_sides(layer, wider))


def with_foot(design: Design, more: Length) -> Design:
    """Return the design with the outermost mat's foot wider than its top by a length.

    Raises
    ------
    FieldError
        When there is no mat, or its foot would be left with nothing.
    """
    place, borders = design.outermost_mat, borders_of(design)
    if place is None or borders is None:
        wanted = "add a mat first"
        raise FieldError("foot", got=design.said(more), wanted=wanted)
    layer = _with_sides(design.layers[place], replace(borders, bottom=borders.top + more))
    return _with_layer(design, f"layer {place + 1}", layer)


def foot_of(design: Design) -> Length:
    """Return how much wider the outermost mat's foot is than its top."""
    borders = borders_of(design)
    return borders.bottom - borders.top if borders else ZERO


def with_art(design: Design, width: Length, height: Length) -> Design:
    """Return the design round art of another size."""
    art: Art = replace(design.art, width=width, height=height)
    return replace(design, art=art)


def _with_sides(layer: Layer, sides: Sides) -> Layer:
    if layer.borders:
        return replace(layer, borders=sides)
    return replace(layer, reveal=sides)


def _with_layer(design: Design, part: str, layer: Layer) -> Design:
    layers = tuple(layer if name == part else old for name, old in design.numbered())
    return replace(design, layers=layers)
