"""The cut list holds every figure of the sizes, numbered as the drawings number them."""

from hypothesis import HealthCheck, given, settings

from framing_palette.design import check_cuttable, strip_frames
from framing_palette.papers.cut_list import cut_list, sample_words
from framing_palette.papers.face_drawing import moulding_number
from tests.design.random_stacks import designs
from tests.papers.made_up import SAMPLES, all_designs, plain, rich, several

QUICK = settings(
    max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large]
)  # fmt: skip


def lengths_of(cuts):
    return {sized.length for cut in cuts for measure in cut.measures for sized in measure.sizes}


def sizes_in(cuttable):
    """Every length that the workshop cuts by."""
    sizes = cuttable.sizes
    for size in sizes.layers:
        for opening in size.openings:
            yield from opening.size.lengths
        yield from size.outer.lengths if size.outer else ()
    if cuttable.design.glazing or cuttable.design.backing or cuttable.design.mount:
        yield from sizes.contents.lengths
    for frame in strip_frames(sizes):
        for strip in frame.strips:
            yield from (strip.long_side.value, strip.short_side.value)
        yield from (*frame.joined.lengths, *frame.trimmed.lengths)
    for rail in sizes.frame.rails if sizes.frame else ():
        yield from (rail.long_point.value, rail.short_point.value)


@QUICK
@given(designs())
def test_every_length_that_is_cut_stands_in_the_list(design):
    cuttable = check_cuttable(design, out_of_rabbet=True)
    assert set(sizes_in(cuttable)) <= lengths_of(cut_list(cuttable, {}))


@QUICK
@given(designs())
def test_cuts_are_numbered_from_one_and_the_moulding_is_last(design):
    cuttable = check_cuttable(design, out_of_rabbet=True)
    cuts = cut_list(cuttable, {})
    assert [cut.number for cut in cuts] == list(range(1, len(cuts) + 1))
    if design.moulding:
        assert cuts[-1].part == "Moulding"
        assert cuts[-1].number == moulding_number(cuttable)
    else:
        assert moulding_number(cuttable) is None


def test_unequal_borders_are_told_side_by_side():
    cuts = cut_list(check_cuttable(plain()), SAMPLES)
    words = [
        (sized.word, sized.length.show("in"))
        for measure in cuts[0].measures
        if measure.name == "borders"
        for sized in measure.sizes
    ]
    assert words == [
        ("top", "2 1/2 in"), ("bottom", "3 in"), ("left", "2 1/2 in"), ("right", "2 1/2 in"),
    ]  # fmt: skip


def test_each_of_several_openings_says_where_it_begins():
    cuts = cut_list(check_cuttable(several()), SAMPLES)
    names = [measure.name for measure in cuts[0].measures]
    assert [f"opening {n} begins" for n in range(1, 7)] == [n for n in names if "begins" in n]


def test_butted_strips_have_one_length_and_mitred_ones_two():
    cuts = cut_list(check_cuttable(rich(), out_of_rabbet=True), SAMPLES)
    strips = {
        cut.number: [len(m.sizes) for m in cut.measures if "strips" in m.name] for cut in cuts
    }
    assert strips[2] == [2, 2]
    assert strips[4] == [1, 1]


def test_an_oval_opening_is_called_oval():
    cuts = cut_list(check_cuttable(all_designs()["oval"]), SAMPLES)
    assert "opening, oval" in [measure.name for measure in cuts[0].measures]


def test_a_sample_is_spoken_of_by_code_and_name():
    assert sample_words("M-ONE", SAMPLES) == "M-ONE  m one"
    assert sample_words("M-GONE", SAMPLES) == "M-GONE"


def test_a_fillet_round_an_oval_is_cut_as_one_piece_with_its_lengths():
    cuttable = check_cuttable(all_designs()["oval fillet"], out_of_rabbet=True)
    cut = cut_list(cuttable, SAMPLES)[0]
    lines = {
        measure.name: tuple(sized.figure.value.figures("mm") for sized in measure.sizes)
        for measure in cut.measures
    }
    assert cut.remark == "one bent piece round an oval"
    assert lines["opening, oval"] == ("294", "394")
    assert lines["one piece, outside"] == ("334", "434")
    assert lines["along it"] == ("1086.5", "1211.5")
    assert not any("strips" in name for name in lines)
