"""Drawings as SVG and DXF: read back at true size, the same bytes each time."""

from io import StringIO
from xml.etree import ElementTree as ET

import ezdxf
import pytest

from framing_palette.papers import dxf_bytes, svg_text
from framing_palette.papers.drawing_set import drawing_set, mat_sheet
from framing_palette.papers.shapes import Drawing, Line, Oval, Pen, Photo, Polygon, Text, rectangle
from tests.papers.made_up import all_designs, plain, rich, several, ticket_of

SVG = "{http://www.w3.org/2000/svg}"


def read_dxf(content: bytes):
    return ezdxf.read(StringIO(content.decode("utf-8")))


EVERYTHING = Drawing(
    100.0,
    60.0,
    (
        Line((0, 0), (100, 60), Pen(0.3, 0.5, (1.0, 0.5)), "cut"),
        rectangle(10, 10, 30, 20, part="a part"),
        rectangle(10, 10, 30, 20, pen=None, fill=0.5, part="only a fill"),
        Oval((50, 30), 40, 20, part="opening"),
        Oval((50, 30), 20, 40),
        Oval((50, 30), 20, 20, fill=0.0),
        Text((5, 5), "≈ 16 3/8 <&>", 4.0, "bold", "end", turned=True, part="words"),
        Photo(0, 0, 10, 10, b"not drawn"),
    ),
)


def test_an_svg_is_well_formed_and_as_large_as_its_drawing():
    root = ET.fromstring(svg_text(EVERYTHING, title="A <title>"))  # noqa: S314 - our own
    assert (root.get("width"), root.get("height")) == ("100mm", "60mm")
    assert root.get("viewBox") == "0 0 100 60"
    assert root.find(f"{SVG}title").text == "A <title>"
    assert len(root.findall(f"{SVG}ellipse")) == 3
    assert len(root.findall(f"{SVG}polygon")) == 2
    assert root.find(f"{SVG}line").get("stroke-dasharray") == "1 0.5"
    assert "".join(root.find(f"{SVG}text").itertext()) == "≈ 16 3/8 <&>"


def test_a_dxf_is_sound_in_millimetres_with_a_layer_for_each_part():
    document = read_dxf(dxf_bytes(EVERYTHING))
    assert not document.audit().errors
    assert document.units == ezdxf.units.MM
    layers = {layer.dxf.name for layer in document.layers}
    assert {"CUT", "A_PART", "OPENING", "WORDS", "DRAWING"} <= layers
    assert "ONLY_A_FILL" not in layers


def test_y_runs_upward_in_a_dxf():
    space = read_dxf(dxf_bytes(EVERYTHING)).modelspace()
    (line,) = space.query("LINE")
    assert tuple(line.dxf.start)[:2] == (0, 60)
    assert tuple(line.dxf.end)[:2] == (100, 0)


def test_ovals_are_true_ellipses_and_circles():
    space = read_dxf(dxf_bytes(EVERYTHING)).modelspace()
    wide, tall = space.query("ELLIPSE")
    assert (abs(wide.dxf.major_axis.x), wide.dxf.ratio) == (20, 0.5)
    assert (abs(tall.dxf.major_axis.y), tall.dxf.ratio) == (20, 0.5)
    assert [circle.dxf.radius for circle in space.query("CIRCLE")] == [10]


def test_words_keep_their_letters_and_their_turn():
    (text,) = read_dxf(dxf_bytes(EVERYTHING)).modelspace().query("TEXT")
    assert text.dxf.text == "≈ 16 3/8 <&>"
    assert text.dxf.rotation == 90


def test_the_same_drawing_gives_the_same_files():
    assert dxf_bytes(EVERYTHING) == dxf_bytes(EVERYTHING)
    assert not ezdxf.options.write_fixed_meta_data_for_testing


@pytest.mark.parametrize("name", ["plain", "several", "oval"])
def test_a_mat_sheet_holds_the_outside_and_each_opening_as_they_are_cut(name):
    contents = ticket_of(all_designs()[name])
    for number, size in enumerate(contents.cuttable.sizes.layers, start=1):
        space = read_dxf(dxf_bytes(mat_sheet(contents, number))).modelspace()
        outside = space.query('LWPOLYLINE[layer=="OUTSIDE"]')[0]
        corners = [point[:2] for point in outside.get_points()]
        width, height = (length.as_float_mm() for length in size.outer.lengths)
        assert outside.closed
        assert max(x for x, _ in corners) == pytest.approx(width, abs=1e-5)
        assert max(y for _, y in corners) == pytest.approx(height, abs=1e-5)
        openings = space.query('*[layer=="OPENING"]')
        assert len(openings) == len(size.openings)
        for entity, opening in zip(openings, size.openings, strict=True):
            across, down = (length.as_float_mm() for length in opening.size.lengths)
            if entity.dxftype() == "LWPOLYLINE":
                xs, ys = zip(*(p[:2] for p in entity.get_points()), strict=True)
                assert max(xs) - min(xs) == pytest.approx(across, abs=1e-5)
                assert max(ys) - min(ys) == pytest.approx(down, abs=1e-5)
                assert min(xs) == pytest.approx(opening.left.as_float_mm(), abs=1e-5)
                assert height - max(ys) == pytest.approx(opening.top.as_float_mm(), abs=1e-5)
            else:
                assert 2 * entity.dxf.major_axis.magnitude == pytest.approx(max(across, down))


def test_a_ticket_s_drawings_are_face_section_and_one_sheet_for_each_mat():
    names = [drawing.name for drawing in drawing_set(ticket_of(rich()))]
    assert names == ["face", "section", "mat-1", "mat-3", "mat-5", "mat-6"]
    files = [name for name, _ in drawing_set(ticket_of(plain()))[0].files()]
    assert files == ["face.svg", "face.dxf"]


def test_the_section_is_exported_at_true_size():
    section = drawing_set(ticket_of(several()))[1].drawing
    outline = next(
        s for s in section.shapes if isinstance(s, Polygon) and s.part == "moulding" and s.pen
    )
    xs = [x for x, _ in outline.points]
    assert max(xs) - min(xs) == pytest.approx(32.0)
