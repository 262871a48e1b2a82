from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.design import Art, check_cuttable, compose
from framing_palette.design.shown_widths import shown_widths
from framing_palette.units import Length, total

inch = Length.inches
ART = Art(inch(16), inch(20), overlap=inch("1/8"))
INNER, OUTER = (
    Sample(code, code, Kind.MAT, (SampleColour((50.0, 0.0, 0.0), 1.0),), thickness=inch("1/16"))
    for code in ("inner", "outer")
)
FRAME = Sample(
    "frame",
    "frame",
    Kind.MOULDING,
    (SampleColour((30.0, 0.0, 0.0), 1.0),),
    face=inch("1 1/2"),
    rabbet_width=inch("1/4"),
    rabbet_depth=inch("5/8"),
)


def test_the_widths_from_the_opening_to_the_frame_add_up_to_half_of_sight_less_opening() -> None:
    cuttable = check_cuttable(compose((INNER, OUTER, FRAME), ART))
    widths = shown_widths(cuttable)
    assert cuttable.sizes.frame is not None
    sight = cuttable.sizes.frame.sight.width.value
    opening = cuttable.sizes.layers[0].opening.size.width.value
    assert total(widths[:-1]) * 2 == sight - opening
    assert widths[-1] == inch("1 1/2")


def test_without_a_frame_the_whole_border_is_seen() -> None:
    cuttable = check_cuttable(compose((INNER, OUTER), ART), out_of_rabbet=True)
    assert shown_widths(cuttable) == (inch("1/4"), inch(3))


def test_without_a_layer_the_frame_covers_the_art_by_its_rabbet_less_half_the_play() -> None:
    cuttable = check_cuttable(compose((FRAME,), ART), out_of_rabbet=True)
    assert shown_widths(cuttable) == (-inch("3/16"), inch("1 1/2"))
