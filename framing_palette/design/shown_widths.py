"""What is seen of each part from the front, on the right-hand side, from the art outward."""

from framing_palette.design.checks import Cuttable
from framing_palette.design.designs import Design
from framing_palette.design.layers import Layer
from framing_palette.units import ZERO, Length


def shown_widths(cuttable: Cuttable) -> tuple[Length, ...]:
    """Return the visible widths side by side: each layer's, then the frame's whole face.

    Without any layer the first is what the frame's edge leaves of the art's surroundings, negative
    when it covers the art.
    """
    design, sizes = cuttable.design, cuttable.sizes
    widths = [size.reveal.right for size in sizes.layers[:-1] if size.reveal]
    last = design.layers[-1] if design.layers else None
    hidden = _hidden(design)
    whole = _whole(last) if last else ZERO
    if whole is not None and (last is not None or design.moulding):
        widths.append(whole - hidden)
    if design.moulding:
        widths.append(design.moulding.face)
    return tuple(widths)


def _hidden(design: Design) -> Length:
    """Return how much of the stack the frame's edge hides on each side."""
    moulding = design.moulding
    return moulding.rabbet_width - moulding.allowance / 2 if moulding else ZERO


def _whole(layer: Layer) -> Length | None:
    return layer.borders.right if layer.borders else layer.strip_width
