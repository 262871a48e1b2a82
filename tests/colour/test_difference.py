import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from framing_palette.colour import delta_e_2000, delta_e_2000_matrix
from framing_palette.errors import ShapeError

LAB = arrays(
    np.float64,
    3,
    elements=st.floats(-128, 128, allow_nan=False),
).map(lambda lab: np.array([abs(lab[0]) * 100 / 128, lab[1], lab[2]]))


def random_lab(count, seed=1):
    rng = np.random.default_rng(seed)
    return rng.random((count, 3)) * [100, 240, 240] - [0, 120, 120]


@pytest.fixture
def reference(science):
    return science.difference.delta_E_CIE2000


def test_it_agrees_with_an_independent_implementation_on_random_pairs(reference):
    lab_1, lab_2 = random_lab(60_000), random_lab(60_000, seed=2)
    assert np.abs(delta_e_2000(lab_1, lab_2) - reference(lab_1, lab_2)).max() < 1e-9


def test_it_agrees_with_an_independent_implementation_on_close_pairs(reference):
    lab_1 = random_lab(20_000)
    lab_2 = lab_1 + np.random.default_rng(3).normal(0, 0.5, lab_1.shape)
    assert np.abs(delta_e_2000(lab_1, lab_2) - reference(lab_1, lab_2)).max() < 1e-9


def test_it_agrees_with_an_independent_implementation_on_nearly_opposite_hues(reference):
    rng = np.random.default_rng(4)
    lab_1 = random_lab(20_000)
    lab_2 = lab_1 * [1, -1, -1] * rng.uniform(0.2, 3, (20_000, 1))
    lab_2 += rng.normal(0, 1, lab_2.shape) * 10.0 ** rng.integers(-5, 1, (20_000, 1))
    assert np.abs(delta_e_2000(lab_1, lab_2) - reference(lab_1, lab_2)).max() < 1e-6


@given(LAB, LAB)
def test_swapping_the_colours_changes_nothing(lab_1, lab_2):
    assert float(delta_e_2000(lab_1, lab_2)) == float(delta_e_2000(lab_2, lab_1))


@given(LAB)
def test_a_colour_does_not_differ_from_itself(lab):
    assert float(delta_e_2000(lab, lab)) == 0.0


@given(LAB, LAB)
def test_a_difference_is_never_negative_nor_lost(lab_1, lab_2):
    assert float(delta_e_2000(lab_1, lab_2)) >= 0.0


@given(LAB, LAB)
def test_mirroring_both_colours_in_lightness_about_50_changes_nothing(lab_1, lab_2):
    mirror = [[100.0, 0.0, 0.0]], [[-1.0, 1.0, 1.0]]
    turned = delta_e_2000(mirror[0] + mirror[1] * lab_1, mirror[0] + mirror[1] * lab_2)
    assert float(turned[0]) == pytest.approx(float(delta_e_2000(lab_1, lab_2)), abs=1e-9)


@given(st.floats(0, 100), st.floats(0, 100))
def test_greys_differ_by_weighted_lightness_alone(light_1, light_2):
    mean = (light_1 + light_2) / 2 - 50
    weight = 1 + 0.015 * mean**2 / np.sqrt(20 + mean**2)
    grey = float(delta_e_2000([light_1, 0, 0], [light_2, 0, 0]))
    assert grey == pytest.approx(abs(light_1 - light_2) / weight, abs=1e-12)


@settings(max_examples=30)
@given(LAB, st.floats(-0.02, 0.02), st.floats(-0.02, 0.02))
def test_a_colour_far_from_a_seam_moves_smoothly(lab, step_a, step_b):
    vivid = np.add(lab, [0, 200, 0])
    moved = delta_e_2000(vivid, np.add(vivid, [0, step_a, step_b]))
    assert float(moved) <= 0.03


def test_any_leading_axes_broadcast():
    lab_1, lab_2 = random_lab(24).reshape(2, 3, 4, 3), random_lab(4, seed=5)
    difference = delta_e_2000(lab_1, lab_2)
    assert difference.shape == (2, 3, 4)
    for index in np.ndindex(2, 3, 4):
        assert difference[index] == delta_e_2000(lab_1[index], lab_2[index[2]])


def test_large_shapes_that_broadcast_along_every_axis_agree_with_pair_by_pair_work():
    lab_1, lab_2 = random_lab(300)[:, None, :], random_lab(400, seed=6)[None]
    difference = delta_e_2000(lab_1, lab_2)
    rows, columns = np.indices(difference.shape).reshape(2, -1)
    pairwise = delta_e_2000(lab_1[rows, 0], lab_2[0, columns])
    assert np.array_equal(difference.ravel(), pairwise)


def test_one_pair_gives_one_number():
    assert delta_e_2000([50, 0, 0], [50, 0, 0]).shape == ()


def test_no_pairs_give_no_differences():
    assert delta_e_2000(np.empty((0, 3)), [50, 0, 0]).shape == (0,)
    assert delta_e_2000_matrix(np.empty((0, 3)), np.empty((5, 3))).shape == (0, 5)


def test_a_matrix_compares_each_with_each():
    lab_1, lab_2 = random_lab(7), random_lab(5, seed=8)
    matrix = delta_e_2000_matrix(lab_1, lab_2)
    assert matrix.shape == (7, 5)
    assert matrix[6, 2] == delta_e_2000(lab_1[6], lab_2[2])


def test_float32_colours_are_compared_in_float64():
    lab = random_lab(100).astype(np.float32)
    difference = delta_e_2000(lab, lab[::-1])
    assert difference.dtype == np.float64
    assert np.array_equal(difference, delta_e_2000(lab.astype(float), lab[::-1].astype(float)))


def test_the_inputs_are_left_as_they_were():
    lab_1, lab_2 = random_lab(100), random_lab(100, seed=9)
    kept = lab_1.copy(), lab_2.copy()
    delta_e_2000(lab_1, lab_2)
    assert np.array_equal(lab_1, kept[0])
    assert np.array_equal(lab_2, kept[1])


@pytest.mark.parametrize("grey", [[0, 0, 0], [50, 0, 0], [100, -0.0, 0.0]])
def test_greys_and_black_give_finite_differences_without_a_warning(grey, reference):
    against = np.array([[0, 0, 0], [50, 10, -20], [100, 0, 0], [20, 1e-300, -1e-300]], float)
    assert np.isfinite(delta_e_2000(grey, against)).all()
    assert delta_e_2000(grey, against) == pytest.approx(reference(np.array(grey), against))


def test_hostile_numbers_spoil_only_their_own_pair_and_warn_nobody():
    lab = np.array(
        [[np.nan, 0, 0], [50, np.inf, 0], [50, 10, -np.inf], [50, 1e300, 0], [50, 10, 10]]
    )
    difference = delta_e_2000(lab, [40, 0, 5])
    assert not np.isfinite(difference[:3]).any()
    assert difference[4] == delta_e_2000([50, 10, 10], [40, 0, 5])


@pytest.mark.parametrize("shape", [(), (2,), (4,), (3, 2)])
def test_a_wrong_last_axis_is_refused_with_the_shape_it_got(shape):
    with pytest.raises(ShapeError, match=str(shape).replace("(", r"\(").replace(")", r"\)")):
        delta_e_2000(np.zeros(shape), [0, 0, 0])


def test_shapes_that_do_not_broadcast_are_refused_by_name():
    with pytest.raises(ShapeError, match=r"lab_d50_2 .*\(5, 3\)"):
        delta_e_2000(np.zeros((4, 3)), np.zeros((5, 3)))


def test_a_matrix_of_anything_but_two_lists_is_refused():
    with pytest.raises(ShapeError, match="lab_d50_1"):
        delta_e_2000_matrix([1, 2, 3], [[1, 2, 3]])
    with pytest.raises(ShapeError, match="lab_d50_2"):
        delta_e_2000_matrix([[1, 2, 3]], np.zeros((2, 2, 3)))
