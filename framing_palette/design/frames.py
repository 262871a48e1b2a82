"""The moulding around what lies in it: rabbet and sight size, and its four mitred rails."""

from framing_palette.design.figures import Figure, RectangleFigure, sum_of
from framing_palette.design.layers import Moulding
from framing_palette.design.size_parts import FrameSizes, RailSize
from framing_palette.design.spoken import said
from framing_palette.errors import FieldError
from framing_palette.units import ZERO


def frame_sizes(moulding: Moulding, outer: RectangleFigure) -> FrameSizes:
    """Size the moulding around what lies in it.

    Raises
    ------
    FieldError
        When the rabbet would cover everything.
    """
    rabbet = RectangleFigure(
        *(
            Figure.start(figure.value, f"outer {axis}").plus(1, moulding.allowance, "allowance")
            for axis, figure in (("width", outer.width), ("height", outer.height))
        )
    )
    sight = RectangleFigure(
        *(_less_rabbet(figure, moulding) for figure in (rabbet.width, rabbet.height))
    )
    if min(sight.lengths) <= ZERO:
        wanted = "it covers the whole of what lies in it; take a narrower rabbet"
        raise FieldError("moulding rabbet_width", got=said(moulding.rabbet_width), wanted=wanted)
    rails = tuple(
        RailSize(side, figure.plus(2, moulding.face, "face"), figure)
        for side, figure in (
            ("top", sight.width),
            ("right", sight.height),
            ("bottom", sight.width),
            ("left", sight.height),
        )
    )
    length = sum_of((f"{rail.side} rail", rail.long_point) for rail in rails)
    return FrameSizes(rabbet, sight, rails, length)


def _less_rabbet(figure: Figure, moulding: Moulding) -> Figure:
    return figure.plus(-2, moulding.rabbet_width, "rabbet width")
