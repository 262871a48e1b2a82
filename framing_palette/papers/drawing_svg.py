"""A drawing as SVG, in millimetres."""

from xml.sax.saxutils import escape, quoteattr

from framing_palette.papers.shapes import Drawing, Line, Oval, Pen, Polygon, Shape, Text
from framing_palette.papers.type_runs import runs_of

_WEIGHTS = {"light": 300, "regular": 400, "bold": 700}


def svg_text(drawing: Drawing, *, title: str) -> str:
    """Return an SVG document of the drawing at its true size; pictures are left out."""
    width, height = _number(drawing.width), _number(drawing.height)
    body = "\n".join(line for line in (_element(shape) for shape in drawing.shapes) if line)
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" font-family="Lato, sans-serif">\n'
        f"<title>{escape(title)}</title>\n{body}\n</svg>\n"
    )


def _element(shape: Shape) -> str:
    if isinstance(shape, Text):
        return _text(shape)
    if isinstance(shape, Line):
        (x1, y1), (x2, y2) = shape.start, shape.end
        ends = _attributes(x1=x1, y1=y1, x2=x2, y2=y2)
        return f"<line {ends}{_part(shape.part)}{_inks(shape.pen, None)}/>"
    if isinstance(shape, Polygon):
        points = " ".join(f"{_number(x)},{_number(y)}" for x, y in shape.points)
        return f'<polygon points="{points}"{_part(shape.part)}{_inks(shape.pen, shape.fill)}/>'
    if isinstance(shape, Oval):
        x, y = shape.centre
        place = _attributes(cx=x, cy=y, rx=shape.width / 2, ry=shape.height / 2)
        return f"<ellipse {place}{_part(shape.part)}{_inks(shape.pen, shape.fill)}/>"
    return ""


def _text(text: Text) -> str:
    """Return a line of text; its anchor holds whatever font the reader has in place of ours."""
    x, y = text.at
    turn = " rotate(-90)" if text.turned else ""
    spans, raised = [], 0.0
    for run in runs_of(text):
        shift = f' dy="{_number(raised - run.rise)}"' if raised != run.rise else ""
        spans.append(f'<tspan font-size="{_number(run.size)}"{shift}>{escape(run.words)}</tspan>')
        raised = run.rise
    return (
        f'<text transform="translate({_number(x)} {_number(y)}){turn}"{_part(text.part)} '
        f'text-anchor="{text.anchor}" font-weight="{_WEIGHTS[text.face]}" '
        f'fill="{_grey(text.grey)}" xml:space="preserve">{"".join(spans)}</text>'
    )


def _inks(pen: Pen | None, fill: float | None) -> str:
    painted = f' fill="{"none" if fill is None else _grey(fill)}"'
    if pen is None:
        return painted
    dashes = " ".join(_number(part) for part in pen.dashes)
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return f'{painted} stroke="{_grey(pen.grey)}" stroke-width="{_number(pen.width)}"{dashed}'


def _part(part: str) -> str:
    return f" class={quoteattr(part)}" if part else ""


def _grey(grey: float) -> str:
    level = round(255 * grey)
    return f"#{level:02x}{level:02x}{level:02x}"


def _attributes(**numbers: float) -> str:
    return " ".join(f'{name}="{_number(value)}"' for name, value in numbers.items())


def _number(value: float) -> str:
    return f"{value:.4f}".rstrip("0").rstrip(".") or "0"
