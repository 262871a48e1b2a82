"""Every size that the workshop cuts, from the art outward, each with its sum.

All sums are exact. An opening is measured at its innermost visible edge: the foot of a bevel. Oval
and round openings are given by their width and height; growing both by a reveal keeps that reveal
exact at the four ends of the axes.
"""

from framing_palette.catalogue import Kind
from framing_palette.design.designs import Design
from framing_palette.design.figures import RectangleFigure
from framing_palette.design.frames import frame_sizes
from framing_palette.design.holds import check_holds
from framing_palette.design.order import check_order
from framing_palette.design.size_parts import FrameSizes, Sizes
from framing_palette.design.stacks import Stack, art_size


def sizes_of(design: Design) -> Sizes:
    """Work out every size of a design.

    Raises
    ------
    FieldError
        When the layers cannot stand in their order, a measure is missing or a size comes out
        impossible; the sentence names the layer and the field.
    """
    check_order(design)
    if not design.layers:
        outer = art_size(design)
        return Sizes((), outer, outer, _frame(design, outer))
    stack = Stack.of(design)
    contents = stack.contents()
    outer = stack.outer() if design.layers[-1].kind is Kind.LINER else contents
    layers = tuple(stack.layer_size(place, contents) for place in range(len(design.layers)))
    check_holds(stack, layers, contents)
    return Sizes(layers, outer, contents, _frame(design, outer))


def _frame(design: Design, outer: RectangleFigure) -> FrameSizes | None:
    return frame_sizes(design.moulding, outer) if design.moulding else None
