"""The steps of assembly name what this design has, and nothing else."""

import pytest

from framing_palette.papers.assembly import assembly
from framing_palette.papers.cut_list import cut_list
from tests.papers.made_up import all_designs, inch, plain, rich, ticket_of


def steps_of(design):
    contents = ticket_of(design)
    cuts = cut_list(contents.cuttable, contents.samples)
    return assembly(contents.cuttable, cuts, contents.notation, contents.weight)


def words_of_steps(design):
    return " ".join(step.words for step in steps_of(design))


def test_a_rich_stack_is_filled_from_the_front_to_the_back():
    assert (
        "glazing, spacer, mat 6, mat 5, wood fillet 4, mat 3, wrapped fillet 2, mat 1, art, "
        "mount board, backing"
    ) in words_of_steps(rich())


def test_steps_for_strips_carry_the_number_of_their_cut():
    numbers = {step.number for step in steps_of(rich()) if step.number}
    assert numbers == {2, 4, 10}


def test_a_canvas_is_neither_hinged_nor_glazed():
    words = words_of_steps(all_designs()["canvas"])
    assert "Hinge" not in words
    assert "Clean the" not in words
    assert "offset clips" in words


def test_glass_and_acrylic_are_each_handled_their_own_way():
    assert "gloves and goggles" in words_of_steps(plain())
    assert "peel both films" in words_of_steps(rich())


def test_a_stack_too_deep_for_its_rabbet_says_by_how_much_to_build_up():
    contents = ticket_of(rich())
    assert contents.cuttable.depth.shortfall > inch("19/32")
    shortfall = "≈ 5/8 in"  # rounded up, because at least that much is needed
    assert f"build up the back of the frame by at least {shortfall}" in words_of_steps(rich())


def test_a_floated_picture_is_centred_by_its_margin():
    assert "Centre the art: 1 cm must show" in words_of_steps(all_designs()["floated"])


def test_a_mat_without_a_frame_ends_with_its_stack():
    words = words_of_steps(all_designs()["unframed"])
    assert words.endswith("Stack from the front: mat 1, art, backing.")


@pytest.mark.parametrize("name", all_designs())
def test_no_step_is_told_twice_for_one_cut(name):
    steps = steps_of(all_designs()[name])
    assert len(set(steps)) == len(steps)


def test_a_liner_comes_first_into_the_rabbet():
    assert "face down: liner 2, glazing, mat 1, art" in words_of_steps(all_designs()["lined mat"])


def test_without_a_weight_nothing_is_said_about_hanging():
    contents = ticket_of(plain())
    cuts = cut_list(contents.cuttable, contents.samples)
    steps = assembly(contents.cuttable, cuts, contents.notation, None)
    assert not any("hangers" in step.words for step in steps)


def test_the_pull_of_a_wire_is_told_by_its_angle():
    """Statics: T = W g / (2 sin a); at 30 degrees each half pulls with the whole weight."""
    contents = ticket_of(plain())
    weight_n = contents.weight.high_kg * 9.80665
    words = words_of_steps(plain())
    assert f"{weight_n:.0f} N at 30 degrees" in words
    assert f"{weight_n / (2 * 0.8660254):.0f} N at 60 degrees" in words
    assert f"{weight_n / (2 * 0.2588190):.0f} N at 15 degrees" in words
