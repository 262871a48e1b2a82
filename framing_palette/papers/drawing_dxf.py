"""A drawing as DXF for computer-driven cutters and drawing programs, in millimetres at true size.

y runs upward from the drawing's foot, as those programs expect. Each part is a layer of its own;
outlines are closed polylines, ovals true ellipses.
"""

from io import StringIO
from typing import Any, Final

from framing_palette.papers.shapes import Drawing, Line, Oval, Point, Polygon, Shape, Text

VERSION: Final = "R2010"
_OTHER: Final = "DRAWING"
# Height of capitals to height of the type's body.
_CAPITALS: Final = 0.7
_ANCHORS: Final = {"start": "LEFT", "middle": "CENTER", "end": "RIGHT"}


def dxf_bytes(drawing: Drawing) -> bytes:
    """Return a DXF document of the drawing; fills and pictures are left out."""
    import ezdxf
    from ezdxf import units

    library: Any = ezdxf
    options = library.options
    before = options.write_fixed_meta_data_for_testing
    # No clock and no random mark in the file: the same drawing gives the same bytes.
    options.write_fixed_meta_data_for_testing = True
    try:
        document = library.new(VERSION, units=units.MM)
        drawn = [shape for shape in drawing.shapes if _has_line(shape)]
        for name in sorted({_layer(shape) for shape in drawn}):
            document.layers.add(name)
        space = document.modelspace()
        for shape in drawn:
            _draw(space, shape, drawing.height)
        stream = StringIO()
        document.write(stream)
    finally:
        options.write_fixed_meta_data_for_testing = before
    return stream.getvalue().encode(document.output_encoding)


def _has_line(shape: Shape) -> bool:
    """Tell whether a shape is more than a fill: a dot of a leader, too, is only a mark on paper."""
    if isinstance(shape, Polygon | Oval):
        return shape.pen is not None
    return isinstance(shape, Line | Text)


def _layer(shape: Shape) -> str:
    part = getattr(shape, "part", "")
    return part.upper().replace(" ", "_") or _OTHER


def _draw(space: Any, shape: Shape, height: float) -> None:
    attributes = {"layer": _layer(shape)}

    def up(point: Point) -> Point:
        return round(point[0], 6), round(height - point[1], 6)

    if isinstance(shape, Line):
        space.add_line(up(shape.start), up(shape.end), dxfattribs=attributes)
    elif isinstance(shape, Polygon):
        points = [up(point) for point in shape.points]
        space.add_lwpolyline(points, close=True, dxfattribs=attributes)
    elif isinstance(shape, Oval):
        _oval(space, shape, up(shape.centre), attributes)
    elif isinstance(shape, Text):
        from ezdxf.enums import TextEntityAlignment

        turn = {"rotation": 90.0 if shape.turned else 0.0}
        text = space.add_text(
            shape.words, height=shape.size * _CAPITALS, dxfattribs={**attributes, **turn}
        )
        align = TextEntityAlignment[_ANCHORS[shape.anchor]]
        text.set_placement(up(shape.at), align=align)


def _oval(space: Any, oval: Oval, centre: Point, attributes: dict[str, str]) -> None:
    across, down = oval.width / 2, oval.height / 2
    if across == down:
        space.add_circle(centre, across, dxfattribs=attributes)
    elif across > down:
        space.add_ellipse(centre, (across, 0.0), down / across, dxfattribs=attributes)
    else:
        space.add_ellipse(centre, (0.0, down), across / down, dxfattribs=attributes)
