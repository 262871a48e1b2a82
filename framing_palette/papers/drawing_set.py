"""The drawings of a ticket as files: face, section, and one sheet for each mat to be cut.

All are at true size in millimetres. A mat's sheet holds only what a computer-driven cutter cuts:
the outside, and each opening at the foot of its bevel, which is its innermost visible edge.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from framing_palette.catalogue import Kind
from framing_palette.papers.contents import TicketContents
from framing_palette.papers.drawing_dxf import dxf_bytes
from framing_palette.papers.drawing_svg import svg_text
from framing_palette.papers.face_drawing import full_size_face
from framing_palette.papers.outlines import outlines_of
from framing_palette.papers.section_drawing import section_drawing
from framing_palette.papers.shapes import Drawing, Oval, Pen, Shape, rectangle

CUT = Pen(0.2)


@dataclass(frozen=True, slots=True)
class NamedDrawing:
    """A drawing with the name of its file, without an ending, and a title."""

    name: str
    title: str
    drawing: Drawing

    def files(self) -> tuple[tuple[str, bytes], ...]:
        """Return names and contents of its SVG and DXF files."""
        return (
            (f"{self.name}.svg", svg_text(self.drawing, title=self.title).encode()),
            (f"{self.name}.dxf", dxf_bytes(self.drawing)),
        )


def drawing_set(contents: TicketContents) -> tuple[NamedDrawing, ...]:
    """Return every drawing of a ticket."""
    return tuple(_drawings(contents))


def _drawings(contents: TicketContents) -> Iterator[NamedDrawing]:
    about = f"{contents.number}, {contents.title}"
    face = full_size_face(contents.cuttable, contents.notation)
    yield NamedDrawing("face", f"Face of {about}", face)
    section = section_drawing(
        contents.cuttable, contents.samples, contents.notation, (0.0, 0.0), scale=1.0
    )
    yield NamedDrawing("section", f"Section of {about}", section.drawing)
    for number, layer in enumerate(contents.design.layers, start=1):
        if layer.kind is Kind.MAT:
            title = f"Mat {number} of {about}"
            yield NamedDrawing(f"mat-{number}", title, mat_sheet(contents, number))


def mat_sheet(contents: TicketContents, number: int) -> Drawing:
    """Return what is cut of one mat, by its number, at true size and nothing else."""
    outlines = outlines_of(contents.design, contents.cuttable.sizes)
    sheet = outlines.contents
    shapes: list[Shape] = [rectangle(0.0, 0.0, sheet.width, sheet.height, pen=CUT, part="outside")]
    for hole in outlines.holes[number - 1]:
        rect = hole.rect
        if hole.is_oval:
            shapes.append(Oval(rect.middle, rect.width, rect.height, CUT, None, "opening"))
        else:
            shapes.append(
                rectangle(rect.left, rect.top, rect.width, rect.height, pen=CUT, part="opening")
            )
    return Drawing(sheet.width, sheet.height, tuple(shapes))
