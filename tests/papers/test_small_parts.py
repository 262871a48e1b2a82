"""The small parts of the papers: the code of the job, files on the disc, the shop's details."""

import numpy as np
import pytest

from framing_palette.errors import OutputError, ShopFileError
from framing_palette.papers import Shop, write_paper
from framing_palette.papers.dimension_lines import (
    Lettering,
    dimension_room,
    level_dimension,
    texts_on_top,
    upright_dimension,
)
from framing_palette.papers.paper_files import paper_folder
from framing_palette.papers.qr_code import qr_code
from framing_palette.papers.shapes import Line, Polygon, Text
from framing_palette.papers.shop_files import read_shop
from framing_palette.papers.type_runs import box_of


@pytest.mark.parametrize("words", ["2026-0147", "J-7", "Zuschnitt Ł/2026 · 9"])
def test_the_code_reads_as_the_number_of_the_job(words):
    import cv2

    px = 8
    image = np.full((25 * px, 25 * px), 255, np.uint8)
    for dark in qr_code(words, 25.0).shapes:
        xs, ys = zip(*dark.points, strict=True)
        left, right, top, bottom = (round(v * px) for v in (min(xs), max(xs), min(ys), max(ys)))
        image[top:bottom, left:right] = 0
    found, _, _ = cv2.QRCodeDetector().detectAndDecode(image)
    assert found == words


def test_the_code_keeps_its_quiet_zone():
    drawing = qr_code("2026-0147", 25.0)
    xs = [x for shape in drawing.shapes for x, _ in shape.points]
    module = 25.0 / (21 + 8)
    assert min(xs) == pytest.approx(4 * module)
    assert max(xs) == pytest.approx(25.0 - 4 * module)


def test_a_paper_takes_the_place_of_an_older_one(tmp_path):
    path = tmp_path / "ticket.pdf"
    write_paper(path, b"old")
    assert write_paper(path, b"new") == path
    assert path.read_bytes() == b"new"
    assert [each.name for each in tmp_path.iterdir()] == ["ticket.pdf"]


def test_a_folder_that_is_missing_is_told(tmp_path):
    with pytest.raises(OutputError, match="cannot be written"):
        write_paper(tmp_path / "none" / "ticket.pdf", b"new")


def test_a_folder_is_made_when_it_can_be(tmp_path):
    assert paper_folder(tmp_path / "a" / "b").is_dir()
    (tmp_path / "file").write_text("x")
    with pytest.raises(OutputError, match="cannot be made"):
        paper_folder(tmp_path / "file" / "b")


def test_a_shop_file_gives_name_and_lines(tmp_path):
    path = tmp_path / "shop.toml"
    path.write_text('name = "Anyone"\nlines = ["1 Some Street", "any@one.example"]\n')
    assert read_shop(path) == Shop("Anyone", ("1 Some Street", "any@one.example"))


@pytest.mark.parametrize(
    ("text", "told"),
    [("name = ", "is not TOML"), ("lines = []", "name"), ('name = "x"\nphone = 1', "phone")],
)
def test_a_bad_shop_file_names_itself_and_the_field(tmp_path, text, told):
    path = tmp_path / "shop.toml"
    path.write_text(text)
    with pytest.raises(ShopFileError, match=r"shop\.toml") as caught:
        read_shop(path)
    assert told in str(caught.value)


def test_a_missing_shop_file_is_told(tmp_path):
    with pytest.raises(ShopFileError, match="cannot be read"):
        read_shop(tmp_path / "none.toml")


LETTERING = Lettering()


def texts(shapes):
    return [shape for shape in shapes if isinstance(shape, Text)]


def test_a_figure_stands_in_the_middle_of_its_dimension_when_it_fits():
    (text,) = texts(level_dimension((0, 0), (40, 0), 8.0, ("16 3/8", ""), LETTERING))
    assert text.at[0] == 20
    (text,) = texts(upright_dimension((0, 0), (0, 40), -8.0, ("16 3/8", ""), LETTERING))
    assert (text.at[1], text.turned) == (20, True)


def test_a_figure_too_wide_for_its_dimension_stands_beyond_it():
    (text,) = texts(level_dimension((0, 0), (3, 0), 8.0, ("16 3/8", ""), LETTERING))
    assert box_of(text).left > 3
    (text,) = texts(upright_dimension((0, 0), (0, 3), 8.0, ("16 3/8", ""), LETTERING))
    assert box_of(text).bottom < 0


def test_a_second_unit_stands_on_the_other_side_of_the_line():
    first, second = texts(level_dimension((0, 0), (40, 0), 8.0, ("16", "406.4 mm"), LETTERING))
    assert box_of(first).bottom < box_of(second).top + 0.6
    assert first.at[1] < 8.0 < second.at[1]
    assert dimension_room(("16", "mm"), LETTERING) > dimension_room(("16", ""), LETTERING)


def test_the_line_ends_exactly_at_the_points_it_measures():
    lines = [
        s
        for s in level_dimension((5, 0), (45, 0), 8.0, ("x", ""), LETTERING)
        if isinstance(s, Line)
    ]
    measured = [line for line in lines if line.start[1] == line.end[1] == 8.0]
    assert [(line.start[0], line.end[0]) for line in measured] == [(5, 45)]


def test_no_line_is_drawn_over_a_figure():
    shapes = list(texts_on_top(level_dimension((0, 0), (40, 0), 8.0, ("16", ""), LETTERING)))
    assert isinstance(shapes[-1], Text)
    ground = shapes[-2]
    assert isinstance(ground, Polygon)
    assert (ground.fill, ground.pen) == (1.0, None)


def test_a_lost_typeface_is_told_as_a_broken_installation(monkeypatch, tmp_path):
    from framing_palette.errors import FileProblemError
    from framing_palette.papers import font_files

    monkeypatch.setattr(font_files, "FOLDER", tmp_path)
    with pytest.raises(FileProblemError, match="install the program again"):
        font_files._registered.__wrapped__()
