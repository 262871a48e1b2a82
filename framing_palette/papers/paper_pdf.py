"""Pages as a PDF: fonts embedded, text selectable, the same bytes for the same pages."""

from collections.abc import Sequence
from datetime import datetime
from io import BytesIO
from typing import TYPE_CHECKING, Any

from framing_palette.papers.font_files import font_name
from framing_palette.papers.shapes import (
    MM_PER_PT,
    Drawing,
    Line,
    Oval,
    Pen,
    Photo,
    Point,
    Polygon,
    Shape,
    Text,
)
from framing_palette.papers.type_runs import line_width, runs_of

if TYPE_CHECKING:
    from reportlab.pdfgen.canvas import Canvas


def pdf_bytes(
    pages: Sequence[Drawing], *, title: str, author: str, subject: str, at: datetime
) -> bytes:
    """Return a PDF with one page for each drawing, dated ``at`` and never by the clock."""
    from reportlab import rl_config
    from reportlab.pdfgen.canvas import Canvas

    rl_config.useA85 = 0  # pictures as they are, not as a quarter more of text
    stream = BytesIO()
    settings: dict[str, Any] = {
        "invariant": 1,  # no clock and no random mark: the same pages give the same bytes
        "pageCompression": 1,
        "pdfVersion": (1, 7),
        "lang": "en",
        "initialFontName": font_name("regular"),  # else a font that is not embedded is named
    }
    canvas = Canvas(stream, **settings)
    canvas.setTitle(title)
    canvas.setAuthor(author)
    canvas.setSubject(subject)
    canvas.setCreator("Framing Palette")
    canvas.setProducer("Framing Palette")
    zone = f"{at:%z}" or "+0000"
    canvas.setDateFormatter(lambda *_clock: f"D:{at:%Y%m%d%H%M%S}{zone[:3]}'{zone[3:5]}'")
    for page in pages:
        canvas.setPageSize((page.width / MM_PER_PT, page.height / MM_PER_PT))
        for shape in page.shapes:
            _Easel(canvas, page.height).draw(shape)
        canvas.showPage()
    canvas.save()
    return stream.getvalue()


class _Easel:
    """Draws shapes on one page, whose points run upward from its foot."""

    def __init__(self, canvas: "Canvas", height: float) -> None:
        self._canvas: Any = canvas
        self._height = height

    def draw(self, shape: Shape) -> None:
        if isinstance(shape, Text):
            self._text(shape)
        elif isinstance(shape, Line):
            self._pen(shape.pen)
            self._canvas.line(*self._at(shape.start), *self._at(shape.end))
        elif isinstance(shape, Polygon):
            self._polygon(shape)
        elif isinstance(shape, Oval):
            self._oval(shape)
        else:
            self._photo(shape)

    def _at(self, point: Point) -> Point:
        return point[0] / MM_PER_PT, (self._height - point[1]) / MM_PER_PT

    def _pen(self, pen: Pen) -> None:
        self._canvas.setLineWidth(pen.width / MM_PER_PT)
        self._canvas.setStrokeGray(pen.grey)
        self._canvas.setDash([part / MM_PER_PT for part in pen.dashes])

    def _inks(self, shape: Polygon | Oval) -> dict[str, int]:
        if shape.pen is not None:
            self._pen(shape.pen)
        if shape.fill is not None:
            self._canvas.setFillGray(shape.fill)
        return {"stroke": int(shape.pen is not None), "fill": int(shape.fill is not None)}

    def _polygon(self, shape: Polygon) -> None:
        path = self._canvas.beginPath()
        first, *rest = shape.points
        path.moveTo(*self._at(first))
        for point in rest:
            path.lineTo(*self._at(point))
        path.close()
        self._canvas.drawPath(path, **self._inks(shape))

    def _oval(self, shape: Oval) -> None:
        x, y = shape.centre
        one = self._at((x - shape.width / 2, y - shape.height / 2))
        two = self._at((x + shape.width / 2, y + shape.height / 2))
        self._canvas.ellipse(*one, *two, **self._inks(shape))

    def _text(self, shape: Text) -> None:
        before = {"start": 0.0, "middle": 0.5, "end": 1.0}[shape.anchor] * line_width(shape)
        canvas = self._canvas
        canvas.saveState()
        canvas.translate(*self._at(shape.at))
        if shape.turned:
            canvas.rotate(90)
        canvas.setFillGray(shape.grey)
        written = canvas.beginText(-before / MM_PER_PT, 0)
        written.setCharSpace(shape.spacing / MM_PER_PT)
        for run in runs_of(shape):
            written.setFont(font_name(shape.face), run.size / MM_PER_PT)
            written.setRise(run.rise / MM_PER_PT)
            written.textOut(run.words)
        canvas.drawText(written)
        canvas.restoreState()

    def _photo(self, shape: Photo) -> None:
        from reportlab.lib.utils import ImageReader

        left, foot = self._at((shape.left, shape.top + shape.height))
        size = shape.width / MM_PER_PT, shape.height / MM_PER_PT
        self._canvas.drawImage(ImageReader(BytesIO(shape.jpeg)), left, foot, *size)
