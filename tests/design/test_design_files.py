"""Design files."""

import json

import pytest

from framing_palette.catalogue import Kind
from framing_palette.design import (
    Arrangement,
    Art,
    Shape,
    Sides,
    Window,
    design_from_text,
    design_text,
    read_design,
    read_size_report,
    size_report,
    write_design,
)
from framing_palette.design.design_writing import exact_text
from framing_palette.errors import DesignFileError, OutputError
from framing_palette.units import ZERO, Length
from tests.design.shop import DESIGN_TOML, SHOP, all_round, double_mat, inch, mm


def read(text, catalogue=None):
    return design_from_text(text, "design.toml", catalogue)


def refusal(text, catalogue=None):
    with pytest.raises(DesignFileError) as caught:
        design_from_text(text, "design.toml", catalogue, checked=True)
    sentence = str(caught.value)
    assert sentence.startswith("design.toml ")
    assert sentence.endswith(".")
    return sentence


@pytest.mark.parametrize("catalogue", [None, SHOP])
def test_the_handbooks_design_file_reads_as_it_stands_with_and_without_a_catalogue(catalogue):
    assert read(DESIGN_TOML, catalogue) == double_mat()


def test_the_report_of_the_handbooks_file_holds_every_agreed_key(tmp_path):
    path = tmp_path / "design.toml"
    path.write_text(DESIGN_TOML, encoding="utf-8")
    report = json.loads(json.dumps(read_size_report(path, SHOP)))
    assert report["schema"] == "framing-palette/size@1"
    assert report["layers"][0]["opening"] | {"how": None} == {
        "width_mm": 400.05, "height_mm": 501.65, "width_in": "15 3/4", "height_in": "19 3/4",
        "how": None,
    }  # fmt: skip
    assert (report["layers"][0]["kind"], report["layers"][0]["code"]) == ("mat", None)
    assert report["layers"][1]["outer"]["width_in"] == "21 1/4"
    assert report["glazing"]["height_mm"] == 654.05
    assert report["rabbet_size"]["width_in"] == "21 3/8"
    assert report["sight_size"]["height_in"] == "25 3/8"
    rails = [
        (rail["side"], rail["long_point_in"], rail["long_point_mm"]) for rail in report["rails"]
    ]
    assert rails == [
        ("top", "23 7/8", 606.425), ("right", "28 3/8", 720.725), ("bottom", "23 7/8", 606.425),
        ("left", "28 3/8", 720.725),
    ]  # fmt: skip
    assert report["moulding_length_mm"] == 2654.3
    assert report["stack_depth_mm"] == 11.525
    assert report["clearance_mm"] == 3.175
    assert report["rabbet_depth_mm"] == 15.875
    assert report["depth_ok"] is True
    assert report["weight_low_kg"] < report["weight_kg"] < report["weight_high_kg"]
    assert all(isinstance(caution, str) for caution in report["cautions"])


def test_what_a_design_lacks_is_none_in_its_report():
    report = size_report(read('unit="mm"\nart = {width = 300, height = 400, thickness = 2}'))
    for key in ("glazing", "backing", "rabbet_size", "sight_size", "moulding_length_mm"):
        assert report[key] is None
    assert report["rails"] == []
    assert report["depth_ok"] is True


def test_a_stack_that_does_not_fit_is_reported_with_the_mouldings_that_would():
    report = size_report(read(DESIGN_TOML.replace('"5/8"', '"3/8"')), SHOP.samples)
    assert report["depth_ok"] is False
    assert report["depth_shortfall_mm"] == 5.175
    assert any("R-DEEP, R-DEEPER" in caution for caution in report["cautions"])


def test_bare_toml_numbers_are_exact_and_taken_in_the_files_unit():
    design = read('unit = "cm"\n[art]\nwidth = 41.6\nheight = 50\noverlap = 0')
    assert (design.art.width, design.art.height) == (mm(416), mm(500))
    assert design.unit == "cm"


def test_a_file_without_a_unit_reads_lengths_that_name_theirs_and_refuses_bare_ones():
    assert read('[art]\nwidth = "416 mm"\nheight = "16 in"\noverlap = 0').art.height == inch(16)
    sentence = refusal('[art]\nwidth = "416"\nheight = "16 in"')
    assert 'art width is "416"; write its unit, or unit = "in" or "mm" at the top' in sentence


def test_measures_come_from_the_catalogue_when_a_code_is_given():
    design = read(
        """
        unit = "mm"
        art = {width = 300, height = 400, overlap = 3}
        layer = [{code = "W-1", reveal = "bevel"}, {code = "M-1", borders = 60}]
        moulding = {code = "R-DEEP"}
        """,
        SHOP,
    )
    fillet, mat = design.layers
    assert (fillet.kind, fillet.face, fillet.join) == (Kind.WRAPPED_FILLET, mm(32), "butt")
    assert fillet.reveal == Sides.all_round(mm(6))
    assert (mat.thickness, mat.density_kg_m3, mat.sheet_w) == (mm("1.4"), 640.0, mm(813))
    assert (design.moulding.rabbet_depth, design.moulding.stick) == (mm(25), mm(2740))
    assert design.moulding.allowance == inch("1/8")
    assert design.codes == ("W-1", "M-1", "R-DEEP")


def test_measures_in_the_file_win_over_the_catalogues():
    design = read(
        """
        unit = "mm"
        art = {width = 300, height = 400, overlap = 3}
        layer = [{code = "M-1", thickness = 3, borders = 60, material = "rag"}]
        moulding = {code = "R-UNKNOWN", rabbet_width = 5, material = "oak", height = 30}
        """,
        SHOP,
    )
    assert (design.layers[0].thickness, design.layers[0].material) == (mm(3), "rag")
    assert (design.moulding.rabbet_width, design.moulding.face) == (mm(5), mm(20))
    assert (design.moulding.material, design.moulding.height) == ("oak", mm(30))


def test_a_code_without_a_catalogue_is_a_label_when_the_measures_are_there():
    text = DESIGN_TOML.replace('kind = "mat"', 'kind = "mat"\ncode = "M-77"', 1)
    assert read(text).layers[0].code == "M-77"


def test_a_reveal_may_be_the_bevel_alone_or_the_bevel_and_a_flat():
    text = DESIGN_TOML.replace('reveal = "1/4"', 'reveal = "bevel"')
    assert read(text).layers[0].reveal == all_round("1/16")
    text = DESIGN_TOML.replace('reveal = "1/4"', 'flat = "1/8"')
    assert read(text).layers[0].reveal == all_round("3/16")
    text = DESIGN_TOML.replace('reveal = "1/4"', 'flat = ["0", "1/8", "0", "1/8"]')
    assert read(text).layers[0].reveal.right == inch("3/16")


def test_an_outer_size_stands_for_the_borders():
    text = DESIGN_TOML.replace(
        'borders = ["2 1/2", "2 1/2", "3", "2 1/2"]',
        'outer = ["21 1/4", "25 3/4"]\nweighting = "1/2"',
    )
    assert read(text) == double_mat()


def test_windows_are_arranged_in_grids_rows_columns_and_free_places():
    head = 'unit = "in"\nart = {width = 4, height = 6, overlap = "1/8"}\n'
    head += 'layer = [{kind = "mat", thickness = "1/16", borders = 2}]\n'
    window = Window(inch(4), inch(6))
    grid = read(head + "arrangement = {rows = 2, columns = 3, gap = 1}").arrangement
    assert grid == Arrangement((window,) * 6, 3, inch(1))
    row = read(head + "arrangement = {gap = 1, window = [{}, {width = 5}, {}]}").arrangement
    assert row.columns == 3
    assert row.windows[1] == Window(inch(5), inch(6))
    column = read(head + "arrangement = {rows = 3, gap = 1}").arrangement
    assert (column.columns, len(column.windows)) == (1, 3)
    free = read(
        head + 'arrangement = {window = [{x = 0, y = 0}, {x = 9, y = 1, shape = "oval"}]}'
    ).arrangement
    assert free.columns is None
    assert free.windows[1].shape is Shape.OVAL


def test_optional_parts_of_the_file_reach_the_design():
    design = read(
        """
        name = "Blue boat"
        unit = "mm"
        hidden_overlap = 4
        spacer = {thickness = 6}
        mount = {thickness = 1.5, material = "cotton board", density_kg_m3 = 600}
        [art]
        width = 300
        height = 300
        overlap = 3
        shape = "round"
        mass_kg = 0.4
        friable = true
        [[layer]]
        kind = "wood_fillet"
        face = 20
        reveal = 8
        thickness = 6
        rabbet_width = 7
        bevel = 1
        join = "butt"
        density_kg_m3 = 500
        sheet = [800, 1000]
        stick = 2440
        [[layer]]
        kind = "mat"
        thickness = 1.5
        borders = 70
        """
    )
    assert (design.name, design.hidden_overlap, design.spacer) == ("Blue boat", mm(4), mm(6))
    assert design.mount.density_kg_m3 == 600
    assert (design.art.shape, design.art.mass_kg, design.art.friable) == (Shape.ROUND, 0.4, True)
    assert (design.layers[0].join, design.layers[0].sheet_h) == ("butt", mm(1000))
    assert design.layers[0].stick == mm(2440)
    assert read(design_text(design)) == design


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        (('width = "16"', 'width = "wide"'), 'cannot be used: art width: "wide" is not a length'),
        (('width = "16"', "width = true"), 'has art width = True: write a length such as "16 3/8"'),
        (('width = "16"', ""), "cannot be used: art width is missing"),
        (('width = "16"', 'width = "-16"'), "cannot be used: art width is -16 in; give a length"),
        (('overlap = "1/8"', 'overlap = "9"'), "cannot be used: art overlap is 9 in; it must be less"),
        (('kind = "mat"', 'kind = "matt"'), "has layer 1 kind = 'matt': input should be 'mat'"),
        (('kind = "mat"', ""), "cannot be used: layer 1 kind is missing"),
        (('reveal = "1/4"', 'reveals = "1/4"'), "has an unknown layer 1 reveals: perhaps reveal is"),
        (('reveal = "1/4"', 'reveal = ["1", "2"]'), "write one length, or four: top, right, bottom"),
        (('reveal = "1/4"', 'reveal = "1/4"\nflat = "1/8"'), "layer 1 flat is given beside a reveal"),
        (('reveal = "1/4"', 'zzz = "1/4"'), "has an unknown layer 1 zzz: take it out"),
        (('material = "glass"', 'material = "ice"'), "has glazing material = 'ice'"),
        (('material = "glass"', ""), "has no glazing material: add it"),
        (('rabbet_width = "1/4"', ""), "moulding rabbet_width is missing; write it, or name the"),
        (('unit = "in"', 'unit = "ell"'), "has unit = 'ell'"),
        (("[art]", "[art"), "is not valid TOML"),
        (("[art]", "[arts]"), "has no art: add it"),
        (('face = "1 1/2"', 'face = {a = 1}'), "has moulding face = {'a': 1}"),
        (('reveal = "1/4"', 'reveal = "1/4"\ndensity_kg_m3 = -3'), "has layer 1 density_kg_m3"),
        (('reveal = "1/4"', 'reveal = "1/4"\nouter = ["9", "9"]'), "layer 1 outer is given; only the"),
        (('reveal = "1/4"', 'reveal = "1/4"\nouter = "9"'), "write two lengths: width, height"),
        (('reveal = "1/4"', 'reveal = "1/4"\nweighting = "1"'), "layer 1 weighting is given; it goes"),
    ],
)  # fmt: skip
def test_a_mistake_in_the_file_is_told_by_file_and_field(change, sentence):
    assert DESIGN_TOML.count(change[0]) >= 1
    assert sentence in refusal(DESIGN_TOML.replace(*change, 1))


@pytest.mark.parametrize(
    ("lines", "sentence"),
    [
        ('layer = [{code = "M-9", borders = 60}]', "no sample M-9 in the catalogue; the nearest"),
        ('layer = [{code = "R-DEEP", borders = 60}]', "sample R-DEEP is a moulding"),
        ('layer = [{code = "M-1", kind = "liner", borders = 60}]', "M-1 is a mat in the catalogue"),
        ('moulding = {code = "M-1"}', "moulding code is M-1; M-1 is a mat in the catalogue"),
        ('moulding = {code = "R-UNKNOWN"}', "R-UNKNOWN has no rabbet width, which is needed for"),
        ('layer = [{code = "W-1", reveal = "bevel", face = "7 mm"}, {code = "M-1", borders = 60}]',
         "1 mm would be hidden but 6 mm must be"),
        ('layer = [{kind = "wood_fillet", thickness = 4, face = 20, reveal = "bevel"}]',
         "layer 1 bevel is missing; write it to show the bevel"),
        ('arrangement = {rows = 2, window = [{}, {}, {}]}', "3 windows are listed; leave rows out"),
    ],
)  # fmt: skip
def test_a_mistake_about_samples_is_told_by_code_and_field(lines, sentence):
    head = 'unit = "mm"\nart = {width = 300, height = 400, overlap = 3}\n'
    assert sentence in refusal(head + lines, SHOP)


def test_a_design_that_is_still_being_made_is_read_as_it_is():
    unfinished = double_mat(layers=())
    assert read(design_text(unfinished)) == unfinished
    text = DESIGN_TOML.replace('reveal = "1/4"', "")
    assert read(text).layers[0].reveal is None
    assert "layer 1 reveal is missing" in refusal(text)


def test_a_code_that_lacks_measures_asks_for_them_or_for_the_catalogue():
    text = 'unit = "mm"\nart = {width = 300, height = 400}\nmoulding = {code = "R-DEEP"}'
    assert "or name the catalogue that holds R-DEEP" in refusal(text)


def test_a_deleted_sample_is_named_together_with_the_file(tmp_path):
    path = tmp_path / "old.toml"
    path.write_text(
        'unit = "mm"\nart = {width = 300, height = 400}\nmoulding = {code = "R-GONE"}',
        encoding="utf-8",
    )
    with pytest.raises(
        DesignFileError, match=r"old\.toml cannot be used: There is no sample R-GONE"
    ):
        read_design(path, SHOP)


def test_an_unknown_thickness_is_told_with_the_file_when_the_depth_needs_it(tmp_path):
    path = tmp_path / "design.toml"
    text = DESIGN_TOML.replace('kind = "mat"\nthickness = "1/16"', 'kind = "mat"', 1)
    path.write_text(text, encoding="utf-8")
    assert read_design(path).layers[0].thickness is None
    with pytest.raises(DesignFileError, match=r"design\.toml .*layer 1 thickness is missing"):
        read_size_report(path)


def test_a_file_that_is_not_there_or_not_text_or_too_large_is_refused(tmp_path):
    with pytest.raises(DesignFileError, match=r"cannot be read .*: name a file that exists"):
        read_design(tmp_path / "none.toml")
    binary = tmp_path / "picture.toml"
    binary.write_bytes(b"\xff\xfe\x00\x01\x80")
    with pytest.raises(DesignFileError, match="is not UTF-8 text"):
        read_design(binary)
    large = tmp_path / "large.toml"
    large.write_bytes(b"#" * 1_000_001)
    with pytest.raises(DesignFileError, match="is over 1 MB"):
        read_design(large)
    with pytest.raises(DesignFileError):
        read_design(tmp_path)


def test_a_written_design_reads_back_and_replaces_the_old_one_whole(tmp_path):
    path = tmp_path / "design.toml"
    path.write_text("old", encoding="utf-8")
    write_design(double_mat(name='Boat "Ä"\\\n\x7f'), path)
    assert read_design(path) == double_mat(name='Boat "Ä"\\\n\x7f')
    assert [file.name for file in tmp_path.iterdir()] == ["design.toml"]


def test_a_design_that_cannot_be_written_says_where(tmp_path):
    with pytest.raises(OutputError, match="cannot be written"):
        write_design(double_mat(), tmp_path / "no" / "design.toml")


@pytest.mark.parametrize(
    ("length", "text"),
    [
        (inch("16 3/8"), "16 3/8 in"), (mm("41.6"), "41.6 mm"), (mm(1) / 3, "1/3 mm"),
        (-mm(10) / 3, "-3 1/3 mm"), (ZERO, "0 in"),
    ],
)  # fmt: skip
def test_a_length_in_a_file_is_exact(length, text):
    assert exact_text(length) == text
    assert Length.parse(text) == length


def test_several_arts_take_their_size_from_the_first_window():
    design = read(
        'unit = "mm"\nart = {overlap = 3}\narrangement = {window = [{width = 90, height = 80}]}'
    )
    assert design.art == Art(mm(90), mm(80), overlap=mm(3))
