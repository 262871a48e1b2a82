"""What is true of the sizes of any stack, exactly."""

import json
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from framing_palette.catalogue import Kind
from framing_palette.design import (
    Art,
    Board,
    Design,
    Glazing,
    Moulding,
    Sides,
    depth_of,
    design_from_text,
    design_text,
    size_report,
    sizes_of,
    strip_frames,
    weight_of,
)
from framing_palette.units import ZERO, Length, total
from tests.design.random_stacks import HIDDEN, designs, lengths

many = settings(max_examples=50, deadline=None)


def all_figures(sizes):
    """Every figure of a design's sizes, so that a property can be asked of each."""
    rectangles = [sizes.outer, sizes.contents]
    for layer in sizes.layers:
        rectangles += [opening.size for opening in layer.openings]
        rectangles += [opening.strips for opening in layer.openings if opening.strips]
        rectangles += [layer.outer] if layer.outer else []
    figures = []
    if sizes.frame:
        rectangles += [sizes.frame.rabbet, sizes.frame.sight]
        figures = [rail.long_point for rail in sizes.frame.rails] + [sizes.frame.moulding_length]
    return figures + [figure for size in rectangles for figure in (size.width, size.height)]


def all_lengths(sizes):
    return [figure.value for figure in all_figures(sizes)]


@many
@given(designs(layered=True))
def test_openings_grow_outward_by_twice_the_reveal_beneath(design):
    for below, above in pairwise(sizes_of(design).layers):
        if len(below.openings) != len(above.openings):
            continue
        for inner, outer in zip(below.openings, above.openings, strict=True):
            (inner_w, inner_h), (outer_w, outer_h) = inner.size.lengths, outer.size.lengths
            assert outer_w - inner_w == below.reveal.horizontal > ZERO
            assert outer_h - inner_h == below.reveal.vertical > ZERO


@many
@given(designs(layered=True))
def test_the_innermost_opening_is_the_art_less_twice_the_overlap(design):
    first = sizes_of(design).layers[0]
    if len(first.openings) == len(design.windows):
        for window, opening in zip(design.windows, first.openings, strict=True):
            assert opening.size.lengths == (
                window.width - 2 * design.art.overlap,
                window.height - 2 * design.art.overlap,
            )


@many
@given(designs(layered=True))
def test_every_opening_lies_within_the_one_above_by_its_reveals(design):
    for below, above in pairwise(sizes_of(design).layers):
        for place, inner in enumerate(below.openings):
            if len(above.openings) == len(below.openings):
                outer = above.openings[place]
                assert inner.left - outer.left == below.reveal.left
                assert inner.top - outer.top == below.reveal.top


@many
@given(designs(layered=True))
def test_every_opening_lies_within_the_contents(design):
    sizes = sizes_of(design)
    across, down = sizes.contents.lengths
    for layer in sizes.layers:
        for opening in layer.openings:
            width, height = opening.size.lengths
            assert opening.left >= ZERO
            assert opening.top >= ZERO
            assert opening.left + width <= across
            assert opening.top + height <= down


@many
@given(designs(layered=True, arranged=False))
def test_borders_and_opening_add_up_to_the_outside_of_mats_and_panes(design):
    sizes = sizes_of(design)
    place = design.outermost_mat
    if place is not None and design.layers[place].borders:
        borders = design.layers[place].borders
        width, height = sizes.layers[place].opening.size.lengths
        assert sizes.contents.lengths == (width + borders.horizontal, height + borders.vertical)


@many
@given(designs(layered=True))
def test_all_mats_are_cut_to_the_size_of_panes_and_boards(design):
    sizes = sizes_of(design)
    for layer in sizes.layers:
        if layer.layer.kind is Kind.MAT:
            assert layer.outer.lengths == sizes.contents.lengths


@many
@given(designs(layered=True))
def test_every_hidden_edge_is_covered_by_the_hidden_overlap(design):
    for below, above in pairwise(sizes_of(design).layers):
        if above.layer.kind is not Kind.LINER:
            assert below.hidden.smallest >= HIDDEN


@many
@given(designs(layered=True))
def test_the_art_lies_within_the_boards_that_hold_it(design):
    sizes = sizes_of(design)
    across, down = sizes.contents.lengths
    first = sizes.layers[0]
    if len(first.openings) == len(design.windows):
        for window, opening in zip(design.windows, first.openings, strict=True):
            left, top = (
                opening.left - design.art.overlap,
                opening.top - design.art.overlap,
            )
            assert min(left, top) >= ZERO
            assert left + window.width <= across
            assert top + window.height <= down


@many
@given(designs(framed=True))
def test_the_sum_of_the_long_points_follows_the_published_rule(design):
    sizes, moulding = sizes_of(design), design.moulding
    width, height = sizes.outer.lengths
    extra = 4 * moulding.allowance + 8 * (moulding.face - moulding.rabbet_width)
    assert sizes.frame.moulding_length.value == 2 * (width + height) + extra


@many
@given(designs(framed=True))
def test_the_rabbet_is_the_stack_and_its_play(design):
    sizes = sizes_of(design)
    play = design.moulding.allowance
    width, height = sizes.outer.lengths
    assert sizes.frame.rabbet.lengths == (width + play, height + play)


@many
@given(designs(framed=True))
def test_sight_rabbet_and_outside_of_the_frame_lie_in_each_other(design):
    frame, moulding = sizes_of(design).frame, design.moulding
    for axis, side in enumerate(("top", "right")):
        rail = next(rail for rail in frame.rails if rail.side == side)
        sight, rabbet = frame.sight.lengths[axis], frame.rabbet.lengths[axis]
        assert rabbet - sight == 2 * moulding.rabbet_width
        assert rail.short_point.value == sight
        assert rail.long_point.value - sight == 2 * moulding.face


@many
@given(designs(framed=True))
def test_opposite_rails_are_equal(design):
    rails = {rail.side: rail.long_point.value for rail in sizes_of(design).frame.rails}
    assert rails["top"] == rails["bottom"]
    assert rails["left"] == rails["right"]


@many
@given(designs())
def test_a_quarter_turn_turns_every_figure(design):
    sizes, turned = sizes_of(design), sizes_of(design.turned())
    for name in ("outer", "contents"):
        assert getattr(turned, name).lengths == getattr(sizes, name).lengths[::-1]
    down = sizes.contents.lengths[1]
    for layer, other in zip(sizes.layers, turned.layers, strict=True):
        places = {
            (
                down - opening.top - opening.size.lengths[1],
                opening.left,
                *opening.size.lengths[::-1],
            )
            for opening in layer.openings
        }
        assert places == {
            (opening.left, opening.top, *opening.size.lengths) for opening in other.openings
        }
    if sizes.frame:
        assert turned.frame.sight.lengths == sizes.frame.sight.lengths[::-1]
        assert turned.frame.moulding_length.value == sizes.frame.moulding_length.value


@many
@given(designs())
def test_four_quarter_turns_give_the_design_back(design):
    if design.arrangement is None:
        assert design.turned().turned().turned().turned() == design
    assert all_lengths(sizes_of(design.turned().turned().turned().turned())) == all_lengths(
        sizes_of(design)
    )


@many
@given(designs())
def test_depth_and_weight_do_not_change_when_the_design_is_turned(design):
    turned = design.turned()
    assert depth_of(turned).stack.value == depth_of(design).stack.value
    likely = [weight_of(d, sizes_of(d)).likely_kg for d in (design, turned)]
    assert abs(likely[0] - likely[1]) < 1e-9


@many
@given(designs())
def test_writing_and_reading_a_design_changes_nothing(design):
    assert design_from_text(design_text(design), "design.toml") == design


@many
@given(designs(), st.sampled_from(["in", "mm", "cm"]))
def test_no_figure_depends_on_the_unit_that_a_design_is_spoken_in(design, unit):
    other = replace(design, unit=unit)
    reread = design_from_text(design_text(other), "design.toml")
    assert all_lengths(sizes_of(reread)) == all_lengths(sizes_of(design))


@many
@given(designs())
def test_the_sum_in_words_adds_up_to_the_figure_wherever_nothing_was_rounded(design):
    for figure in all_figures(sizes_of(design)):
        words = figure.how("mm")
        if "about" in words:
            words = figure.how("in", 64)
        if "about" not in words:
            assert total(_summand(part) for part in words.split(", ")) == figure.value


def _summand(words):
    sign = -1 if words.startswith("less ") else 1
    words = words.removeprefix("less ").removeprefix("plus ")
    times, _, rest = words.partition(" x ") if " x " in words else ("1", "", words)
    unit = next(unit for unit in (" mm", " in") if unit in rest)
    return Length.parse(rest[: rest.index(unit) + 3]) * (sign * int(times))


@many
@given(designs(layered=True), lengths(0, 2))
def test_hiding_more_of_the_art_shrinks_every_opening_and_the_frame_alike(design, more):
    if len(design.layers) == 1 and design.layers[0].kind is Kind.LINER:
        return
    art = replace(design.art, overlap=design.art.overlap + more)
    before, after = sizes_of(design), sizes_of(replace(design, art=art))
    if design.arrangement:
        return
    for one, other in zip(before.layers, after.layers, strict=True):
        lengths_before, lengths_after = one.opening.size.lengths, other.opening.size.lengths
        assert [a - b for a, b in zip(lengths_before, lengths_after, strict=True)] == [2 * more] * 2
    assert before.outer.lengths[0] - after.outer.lengths[0] == 2 * more


@many
@given(designs(layered=True, arranged=False), lengths(0, 4), st.data())
def test_showing_more_of_a_layer_moves_all_above_it_and_nothing_below(design, more, data):
    shown = [place for place, layer in enumerate(design.layers[:-1]) if layer.reveal]
    if not shown:
        return
    place = data.draw(st.sampled_from(shown))
    layers = list(design.layers)
    grown = layers[place].reveal.plus(more)
    face = layers[place].face + more if layers[place].face else None
    layers[place] = replace(layers[place], reveal=grown, face=face)
    before, after = sizes_of(design), sizes_of(replace(design, layers=tuple(layers)))
    for number, (one, other) in enumerate(zip(before.layers, after.layers, strict=True)):
        moved = 2 * more if number > place else ZERO
        assert other.opening.size.lengths[0] - one.opening.size.lengths[0] == moved


@many
@given(designs(framed=True), st.fractions(1, 5, max_denominator=4))
def test_scaling_every_measure_scales_every_figure(design, factor):
    scaled = _scaled(design, factor)
    expected = [length * factor for length in all_lengths(sizes_of(design))]
    assert all_lengths(sizes_of(scaled)) == expected
    assert depth_of(scaled).needed == depth_of(design).needed * factor


def _scaled(value, factor):
    if isinstance(value, Length):
        return value * factor
    if isinstance(value, tuple):
        return tuple(_scaled(item, factor) for item in value)
    if hasattr(value, "__dataclass_fields__"):
        names = value.__dataclass_fields__
        return replace(value, **{name: _scaled(getattr(value, name), factor) for name in names})
    return value


@many
@given(designs(layered=True))
def test_seen_in_a_mirror_every_opening_keeps_its_size_and_swaps_its_margins(design):
    if design.arrangement:
        return
    mirrored = replace(design, layers=tuple(_mirrored(layer) for layer in design.layers))
    sizes, others = sizes_of(design), sizes_of(mirrored)
    across = sizes.contents.lengths[0]
    for one, other in zip(sizes.layers, others.layers, strict=True):
        width = one.opening.size.lengths[0]
        assert other.opening.size.lengths == one.opening.size.lengths
        assert other.opening.left == across - width - one.opening.left


def _mirrored(layer):
    def swap(sides):
        return sides and Sides(sides.top, sides.left, sides.bottom, sides.right)

    return replace(layer, reveal=swap(layer.reveal), borders=swap(layer.borders))


@many
@given(designs(arranged=True))
def test_neighbouring_openings_of_a_grid_are_never_nearer_than_the_gap(design):
    openings = sizes_of(design).layers[design.outermost_mat].openings
    for one, other in pairwise(openings):
        across = max(one.left, other.left) - min(
            one.left + one.size.lengths[0], other.left + other.size.lengths[0]
        )
        down = max(one.top, other.top) - min(
            one.top + one.size.lengths[1], other.top + other.size.lengths[1]
        )
        assert max(across, down) >= design.arrangement.gap


@many
@given(designs(), lengths(1, 5))
def test_a_thicker_backing_deepens_the_stack_by_as_much(design, more):
    # A liner deeper than all it holds hides a little of the change.
    thicker = replace(design, backing=Board(more + (_thickness(design.backing))))
    plain = replace(design, backing=Board(_thickness(design.backing)) if design.backing else None)
    deeper = depth_of(thicker).stack.value - depth_of(plain).stack.value
    has_liner = any(layer.kind is Kind.LINER for layer in design.layers)
    assert deeper <= more if has_liner else deeper == more


def _thickness(board):
    return board.thickness if board else ZERO


@many
@given(designs(), lengths(0, 9))
def test_a_thicker_part_never_makes_the_stack_shallower(design, more):
    art = replace(design.art, thickness=design.art.thickness + more)
    deeper = depth_of(replace(design, art=art)).stack.value - depth_of(design).stack.value
    assert ZERO <= deeper <= more


@many
@given(designs())
def test_the_depth_does_not_depend_on_how_large_the_art_is(design):
    if design.arrangement:
        return
    art = replace(design.art, width=design.art.width * 2, height=design.art.height * 3)
    assert depth_of(replace(design, art=art)).stack.value == depth_of(design).stack.value


@many
@given(designs(framed=True))
def test_a_stack_fits_exactly_when_it_and_its_clearance_are_within_the_rabbet(design):
    depth = depth_of(design)
    assert depth.fits == (depth.stack.value + depth.clearance <= design.moulding.rabbet_depth)
    if not depth.fits:
        deeper = replace(
            design.moulding, rabbet_depth=design.moulding.rabbet_depth + depth.shortfall
        )
        assert depth_of(replace(design, moulding=deeper)).fits


@many
@given(designs())
def test_a_weight_lies_between_its_ends_and_a_pane_of_glass_adds_to_it(design):
    sizes = sizes_of(design)
    bare = weight_of(replace(design, glazing=None), sizes)
    glazed = weight_of(replace(design, glazing=Glazing("glass", Length.mm_of(2))), sizes)
    assert bare.low_kg <= bare.likely_kg <= bare.high_kg
    width, height = (length.as_float_mm() for length in sizes.contents.lengths)
    pane_kg = width * height * 2e-9 * 2500
    assert abs(glazed.likely_kg - bare.likely_kg - pane_kg) < 1e-9


@many
@given(designs(layered=True))
def test_mitred_strips_reach_the_outside_corners_and_butted_ones_close_the_frame(design):
    sizes = sizes_of(design)
    for frame in strip_frames(sizes):
        layer = sizes.layers[frame.layer_number - 1]
        opening = layer.openings[frame.opening_number - 1].size.lengths
        width = layer.layer.strip_width
        longest = [strip.long_side.value for strip in frame.strips]
        outside = [opening[0] + 2 * width, opening[1] + 2 * width]
        assert list(frame.joined.lengths) == outside
        uprights = outside[1] if frame.join == "mitre" else opening[1]
        assert longest == [outside[0], uprights, outside[0], uprights]
        trimmed = zip(frame.trimmed.lengths, outside, sizes.contents.lengths, strict=True)
        for after, before, contents in trimmed:
            assert after == before or after == contents < before


@many
@given(designs())
def test_the_report_says_the_same_sizes_and_can_be_printed_as_json(design):
    sizes, report = sizes_of(design), json.loads(json.dumps(size_report(design)))
    assert report["outer"]["width_mm"] == sizes.outer.lengths[0].as_float_mm()
    for told, layer in zip(report["layers"], sizes.layers, strict=True):
        width = layer.opening.size.lengths[0]
        assert told["opening"]["width_mm"] == width.as_float_mm()
        nearest = Length.parse(told["opening"]["width_in"], "in")
        assert 2 * abs(nearest - width) <= Length.inches(Fraction(1, 32))
    assert report["depth_ok"] == depth_of(design).fits


@many
@given(lengths(60, 900), lengths(60, 900), lengths(0, 4))
def test_without_a_layer_the_frame_is_sized_on_the_art_and_no_overlap_is_asked(
    width, height, allowance
):
    moulding = Moulding(Length.mm_of(30), Length.mm_of(6), Length.mm_of(20), allowance)
    bare = sizes_of(Design(Art(width, height), moulding=moulding))
    assert bare.outer.lengths == (width, height)
    assert bare.frame.rabbet.lengths == (width + allowance, height + allowance)
    assert bare.layers == ()
