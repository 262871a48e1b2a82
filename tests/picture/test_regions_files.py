"""The regions file: what it holds comes back, and every mistake is named."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.errors import OutputError, RegionsFileError
from framing_palette.picture import (
    DRAWN_ROLES,
    Part,
    Region,
    Role,
    read_regions_file,
    rectangle,
    write_regions_file,
)
from framing_palette.picture.outlines import outline_fault

TRIANGLE = [[0.1, 0.1], [0.5, 0.1], [0.3, 0.6]]


def written(path, regions):
    path.write_text(json.dumps({"regions": regions}), encoding="utf-8")
    return path


def test_a_plain_file_gives_its_regions_in_order(tmp_path):
    path = written(
        tmp_path / "regions.json",
        [
            {"name": "boat", "role": "focus", "polygon": TRIANGLE},
            {"name": "sea", "role": "ground", "polygon": [[0, 0.5], [1, 0.5], [1, 1], [0, 1]]},
        ],
    )
    boat, sea = read_regions_file(path)
    assert (boat.name, boat.role) == ("boat", Role.FOCUS)
    assert boat.parts == (Part(((0.1, 0.1), (0.5, 0.1), (0.3, 0.6))),)
    assert sea.role is Role.GROUND


def test_name_and_role_may_be_left_out(tmp_path):
    (region,) = read_regions_file(written(tmp_path / "r.json", [{"polygon": TRIANGLE}]))
    assert (region.name, region.role) == ("region 1", Role.SUPPORT)


corner = st.floats(0, 1, allow_subnormal=False)
outline = st.lists(st.tuples(corner, corner), min_size=3, max_size=8).map(tuple)
usable = outline.filter(lambda points: outline_fault(points) is None)
regions = st.lists(
    st.builds(
        Region,
        name=st.text(st.characters(codec="utf-8"), min_size=1).map(str.strip).filter(bool),
        role=st.sampled_from(DRAWN_ROLES),
        parts=st.tuples(st.builds(Part, usable), st.builds(Part, usable, st.booleans())),
    ),
    max_size=4,
    unique_by=lambda region: region.name,
)


@given(regions)
def test_what_is_written_is_read_back_to_the_last_digit(tmp_path_factory, drawn):
    path = tmp_path_factory.mktemp("regions") / "r.json"
    write_regions_file(path, drawn)
    assert read_regions_file(path) == tuple(drawn)


@pytest.mark.parametrize(
    ("entry", "said"),
    [
        (
            {"name": "a", "role": "hero", "polygon": TRIANGLE},
            "the role 'hero': choose one of focus, support, ground",
        ),
        ({"name": "a", "role": "rim", "polygon": TRIANGLE}, "the role 'rim'"),
        ({"name": "a", "role": [], "polygon": TRIANGLE}, r"the role \[\]"),
        ({"name": "", "polygon": TRIANGLE}, "region 1 without a name"),
        ({"name": 7, "polygon": TRIANGLE}, "region 1 without a name"),
        ({"name": "a"}, r'region 1 \("a"\) without a polygon'),
        ({"name": "a", "polygon": "round"}, "without a polygon"),
        ({"name": "a", "polygon": []}, "has 0 points: give it at least three"),
        ({"name": "a", "polygon": TRIANGLE[:2]}, "has 2 points"),
        ({"name": "a", "polygon": [[0, 0], [0.5, 0.5], [1, 1]]}, "has no area"),
        ({"name": "a", "polygon": [[0.2, 0.2]] * 5}, "has no area"),
        (
            {"name": "a", "polygon": [[1.1, 0.1], [1.4, 0.1], [1.2, 0.6]]},
            "lies wholly outside the picture",
        ),
        (
            {"name": "a", "polygon": [[100, 100], [500, 100], [300, 600]]},
            "reaches to 600: give x and y from 0 to 1",
        ),
        ({"name": "a", "polygon": [[0, 0], [1, "x"], [1, 1]]}, r"a point 2 that is not \[x, y\]"),
        ({"name": "a", "polygon": [[0, 0], [1, True], [1, 1]]}, "a point 2"),
        ({"name": "a", "polygon": [[0, 0], [1], [1, 1]]}, "a point 2"),
        ({"name": "a", "parts": {}}, "parts that are not a list of objects"),
        ({"name": "a", "parts": []}, "without any outline"),
        ({"name": "a", "parts": [{"polygon": TRIANGLE, "subtract": True}]}, "without any outline"),
        ("boat", "a region 1 that is not an object"),
    ],
)
def test_a_bad_region_is_told_in_one_sentence_with_what_to_do(tmp_path, entry, said):
    path = written(tmp_path / "regions.json", [entry])
    with pytest.raises(RegionsFileError, match=said) as caught:
        read_regions_file(path)
    sentence = str(caught.value)
    assert sentence.startswith(str(path))
    assert sentence.endswith(".")
    assert "\n" not in sentence


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", r"is not JSON \(line 1\)"),
        (b"boat", "is not JSON"),
        (b'{"regions": [\n{"name": }]}', r"is not JSON \(line 2\)"),
        (b"\xff\xfe\x00", "is not JSON"),
        (b"[" * 100_000, "is not JSON"),
        (b"[]", 'has no list "regions"'),
        (b'{"regions": 3}', 'has no list "regions"'),
        (b'{"regions": [{"polygon": [[NaN, 0], [1, 0], [1, 1]]}]}', "a point 1"),
    ],
)
def test_a_file_that_is_no_regions_file_is_refused(tmp_path, content, said):
    path = tmp_path / "regions.json"
    path.write_bytes(content)
    with pytest.raises(RegionsFileError, match=said):
        read_regions_file(path)


def test_two_regions_of_one_name_too_many_regions_and_points_are_refused(tmp_path):
    path = tmp_path / "r.json"
    boat = {"name": "boat", "polygon": TRIANGLE}
    with pytest.raises(RegionsFileError, match='two regions named "boat": rename'):
        read_regions_file(written(path, [boat, boat]))
    with pytest.raises(RegionsFileError, match="has 501 regions: keep at most 500"):
        read_regions_file(written(path, [boat] * 501))
    with pytest.raises(RegionsFileError, match="give it at most 100000"):
        read_regions_file(written(path, [{"polygon": TRIANGLE * 33_334}]))
    path.write_bytes(b" " * 20_000_001)
    with pytest.raises(RegionsFileError, match="has 20 MB"):
        read_regions_file(path)


def test_a_missing_file_a_folder_and_an_unwritable_place_are_told(tmp_path):
    with pytest.raises(RegionsFileError, match="does not exist"):
        read_regions_file(tmp_path / "none.json")
    with pytest.raises(RegionsFileError, match="cannot be opened"):
        read_regions_file(tmp_path)
    whole = Region("a", Role.FOCUS, (Part(rectangle(0, 0, 1, 1)),))
    with pytest.raises(OutputError, match="cannot be written"):
        write_regions_file(tmp_path / "none" / "r.json", [whole])
