"""What a framer says of a stack against its rabbet."""

from framing_palette.design.depth import Depth
from framing_palette.design.spoken import said, said_at_least


def depth_mark(depth: Depth) -> str:
    """Return the same in a word or two, to be written on the line of the rabbet's depth."""
    if depth.rabbet_depth is None:
        return ""
    if depth.fits:
        return f"{said(depth.rabbet_depth - depth.stack.value, depth.unit)} to spare"
    return f"{said_at_least(depth.shortfall, depth.unit)} missing"


def depth_words(depth: Depth) -> str:
    """Return whether the stack fits and by how much, in one short sentence.

    Examples
    --------
    >>> from framing_palette.design.figures import Figure
    >>> from framing_palette.units import Length
    >>> stack = Figure.start(Length.inches("1/2"), "stack")
    >>> depth_words(Depth(stack, Length.inches("1/8"), Length.inches("3/4")))
    'Fits the rabbet, 1/4 in to spare.'
    >>> depth_words(Depth(stack, Length.inches("1/8"), Length.inches("9/16")))
    'Too deep by 1/16 in: 1/8 in is to stay free behind the stack.'
    >>> depth_words(Depth(stack, Length.inches("1/8"), Length.inches("3/8")))
    'Too deep by 1/4 in: the stack stands out of the rabbet by 1/8 in.'
    """
    stack = depth.stack.value
    if depth.rabbet_depth is None:
        return f"The stack is {said(stack, depth.unit)} deep; no frame is chosen yet."
    spare = depth.rabbet_depth - stack
    if depth.fits:
        return f"Fits the rabbet, {said(spare, depth.unit)} to spare."
    short = f"Too deep by {said_at_least(depth.shortfall, depth.unit)}"
    if spare.mm < 0:
        stands_out = said_at_least(-spare, depth.unit)
        return f"{short}: the stack stands out of the rabbet by {stands_out}."
    return f"{short}: {said(depth.clearance, depth.unit)} is to stay free behind the stack."
