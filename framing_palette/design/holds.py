"""Whether every hidden edge is held: enough of each layer must run under the one above it."""

from itertools import pairwise

from framing_palette.catalogue import Kind
from framing_palette.design.designs import Design
from framing_palette.design.figures import RectangleFigure
from framing_palette.design.size_parts import LayerSize
from framing_palette.design.stacks import Stack
from framing_palette.errors import FieldError
from framing_palette.units import ZERO


def check_holds(stack: Stack, layers: tuple[LayerSize, ...], contents: RectangleFigure) -> None:
    """Refuse a design in which a layer, a strip or the art would not be held.

    A liner holds by its rabbet like a moulding, so that the hidden overlap is not asked of what
    lies in it.

    Raises
    ------
    FieldError
        Naming the layer.
    """
    for number, (size, above) in enumerate(pairwise(layers), start=1):
        if above.layer.kind is not Kind.LINER:
            _check_hidden(stack.design, f"layer {number}", size)
    _check_liner(stack, layers)
    _check_art(stack, layers[0], contents)
    _check_bridge(stack, layers)


def _check_hidden(design: Design, name: str, size: LayerSize) -> None:
    for side, hidden in size.hidden.named if size.hidden else ():
        if hidden < design.hidden_overlap:
            least = design.said_at_least(design.hidden_overlap)
            wanted = f"at least {least} must run under the layer above; widen its borders there"
            raise FieldError(f"{name} hidden part, {side}", got=design.said(hidden), wanted=wanted)


def _check_art(stack: Stack, first: LayerSize, contents: RectangleFigure) -> None:
    """Refuse borders so narrow that the art would reach beyond the boards that hold it."""
    across, down = contents.lengths
    for opening in first.openings:
        width, height = opening.size.lengths
        right, below = across - opening.left - width, down - opening.top - height
        margin = min(opening.left, opening.top, right, below)
        if margin < stack.overlap:
            reach = stack.design.said(margin)
            wanted = f"the boards reach only {reach} beyond the opening; widen the borders"
            raise FieldError("art overlap", got=stack.design.said(stack.overlap), wanted=wanted)


def _check_bridge(stack: Stack, layers: tuple[LayerSize, ...]) -> None:
    """Refuse openings so near that the hidden parts of two strips would meet between them."""
    bridge = stack.narrowest_bridge()
    if bridge is None:
        return
    for number, size in enumerate(layers, start=1):
        if not (size.layer.is_fillet and size.hidden):
            continue
        both = max(size.hidden.horizontal, size.hidden.vertical)
        if both > bridge:
            room = stack.design.said_at_least(both)
            wanted = f"the hidden strips of layer {number} need {room} between two openings"
            raise FieldError("arrangement gap", got=stack.design.said(bridge), wanted=wanted)


def _check_liner(stack: Stack, layers: tuple[LayerSize, ...]) -> None:
    liner = layers[-1].layer
    if liner.kind is not Kind.LINER or liner.rabbet_width is None:
        return
    if 2 * liner.rabbet_width <= stack.design.allowance:
        wanted = (
            f"it must hide more than half the play of {stack.design.said(stack.design.allowance)}"
        )
        field = f"layer {len(layers)} rabbet_width"
        raise FieldError(field, got=stack.design.said(liner.rabbet_width), wanted=wanted)
    if len(layers) == 1 and stack.overlap > liner.rabbet_width - stack.design.allowance / 2:
        room = max(ZERO, liner.rabbet_width - stack.design.allowance / 2)
        wanted = f"the liner's rabbet has room for {stack.design.said(room)} on each side"
        raise FieldError("art overlap", got=stack.design.said(stack.overlap), wanted=wanted)
