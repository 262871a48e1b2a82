import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette import colour
from framing_palette.errors import FieldError, ShapeError

CHANNEL = st.floats(0, 1)
SRGB = st.tuples(CHANNEL, CHANNEL, CHANNEL)

EVERY_CONVERSION = [
    colour.srgb_to_linear,
    colour.linear_to_srgb,
    colour.srgb_to_lab_d50,
    colour.linear_srgb_to_lab_d50,
    colour.lab_d50_to_srgb,
    colour.lab_d50_to_linear_srgb,
    colour.lab_d50_to_xyz_d50,
    colour.xyz_d50_to_lab_d50,
    colour.lab_d50_to_srgb_u8,
    colour.srgb_gamut_excess,
]


def random_srgb(*shape, seed=1):
    return np.random.default_rng(seed).random((*shape, 3))


@pytest.fixture
def reference_lab(science, white_d50):
    """The general route of an independent library: sRGB, Bradford to D50, CIELAB."""

    def convert(srgb):
        return science.XYZ_to_Lab(science.sRGB_to_XYZ(srgb, white_d50, "Bradford"), white_d50)

    return convert


def test_srgb_to_lab_agrees_with_an_independent_library(reference_lab):
    srgb = random_srgb(2_000)
    assert np.abs(colour.srgb_to_lab_d50(srgb) - reference_lab(srgb)).max() < 1e-9


def test_lab_to_srgb_agrees_with_an_independent_library(science, white_d50):
    lab = colour.srgb_to_lab_d50(random_srgb(2_000))
    theirs = science.XYZ_to_sRGB(science.Lab_to_XYZ(lab, white_d50), white_d50, "Bradford")
    # Their inverse matrix is the four-decimal one of the standard; ours inverts exactly.
    assert np.abs(colour.lab_d50_to_srgb(lab, clip=False) - theirs).max() < 5e-4


def test_the_transfer_curve_agrees_with_an_independent_library(science):
    srgb = np.linspace(0, 1, 3_000).reshape(-1, 3)
    assert colour.srgb_to_linear(srgb) == pytest.approx(science.models.eotf_sRGB(srgb), abs=1e-12)
    assert colour.linear_to_srgb(srgb) == pytest.approx(
        science.models.eotf_inverse_sRGB(srgb), abs=1e-12
    )


def test_lab_and_xyz_agree_with_an_independent_library(science, white_d50):
    xyz = random_srgb(2_000) ** 3
    lab = colour.xyz_d50_to_lab_d50(xyz)
    assert np.abs(lab - science.XYZ_to_Lab(xyz, white_d50)).max() < 1e-9
    assert np.abs(colour.lab_d50_to_xyz_d50(lab) - science.Lab_to_XYZ(lab, white_d50)).max() < 1e-12


def test_srgb_blue_is_told_under_d50_and_not_under_d65():
    # The usual slip is to leave out the adaptation: a* is then 79.2, not 68.3.
    blue = colour.srgb_to_lab_d50([0, 0, 1])
    assert blue == pytest.approx([29.57, 68.30, -112.03], abs=0.02)
    assert abs(blue[1] - 79.19) > 10


def test_srgb_white_and_grey_have_no_colour():
    greys = colour.srgb_to_lab_d50([[1, 1, 1], [0.5, 0.5, 0.5], [0, 0, 0]])
    # The standard's four-decimal matrix leaves 0.009 of chroma in white.
    assert np.abs(greys[:, 1:]).max() < 0.01
    assert greys[:, 0] == pytest.approx([100, 53.389, 0], abs=2e-3)


@given(SRGB)
def test_srgb_comes_back_from_lab(srgb):
    assert colour.lab_d50_to_srgb(colour.srgb_to_lab_d50(srgb)) == pytest.approx(srgb, abs=1e-7)


@given(st.tuples(st.floats(0, 100), st.floats(-120, 120), st.floats(-120, 120)))
def test_lab_comes_back_from_unclipped_linear_light(lab):
    back = colour.linear_srgb_to_lab_d50(colour.lab_d50_to_linear_srgb(lab))
    assert back == pytest.approx(lab, abs=1e-8)


@given(SRGB)
def test_light_comes_back_from_the_transfer_curve(linear):
    back = colour.srgb_to_linear(colour.linear_to_srgb(linear))
    assert back == pytest.approx(linear, abs=1e-7)


def test_every_step_of_every_8_bit_channel_comes_back():
    levels = np.arange(256, dtype=np.uint8)
    zeros, full = np.zeros_like(levels), np.full_like(levels, 255)
    pixels = np.concatenate(
        [
            np.stack(mix, axis=-1)
            for mix in [(levels,) * 3, (levels, zeros, full), (full, levels, zeros)]
        ]
    )
    assert np.array_equal(colour.lab_d50_to_srgb_u8(colour.srgb_u8_to_lab_d50(pixels)), pixels)


def test_8_bit_pixels_agree_with_the_exact_route_within_a_thousandth(reference_lab):
    pixels = np.random.default_rng(2).integers(0, 256, (300, 300, 3), dtype=np.uint8)
    pixels[:100] //= 16  # the dark end, where CIELAB turns into a straight line
    lab = colour.srgb_u8_to_lab_d50(pixels)
    assert lab.dtype == np.float32
    assert colour.delta_e_2000(lab, reference_lab(pixels / 255)).max() < 1e-3


def test_colours_become_the_nearest_8_bit_values_of_the_exact_route():
    rng = np.random.default_rng(5)
    lab = rng.random((200, 300, 3)) * [110, 240, 240] - [5, 120, 120]
    exact = colour.lab_d50_to_srgb(lab) * 255
    off = np.abs(colour.lab_d50_to_srgb_u8(lab) - exact)
    assert off.max() <= 0.5 + 1 / 30


def test_8_bit_pixels_in_a_strided_view_agree_with_a_copy():
    pixels = np.random.default_rng(3).integers(0, 256, (40, 60, 4), dtype=np.uint8)
    view = pixels[::2, ::-1, :3]
    assert np.array_equal(
        colour.srgb_u8_to_lab_d50(view), colour.srgb_u8_to_lab_d50(np.ascontiguousarray(view))
    )


def test_8_bit_pixels_come_out_the_same_on_one_thread_and_on_several():
    pixels = np.random.default_rng(4).integers(0, 256, (200_000, 3), dtype=np.uint8)
    together = colour.srgb_u8_to_lab_d50(pixels)
    apart = np.concatenate([colour.srgb_u8_to_lab_d50(part) for part in np.split(pixels, 10)])
    assert np.abs(together - apart).max() < 1e-4


def test_no_pixels_give_no_colours():
    assert colour.srgb_u8_to_lab_d50(np.empty((0, 7, 3), np.uint8)).shape == (0, 7, 3)


def test_pixels_that_are_not_8_bit_are_refused():
    with pytest.raises(FieldError, match=r"float64.*8-bit"):
        colour.srgb_u8_to_lab_d50(np.zeros((2, 3)))


@pytest.mark.parametrize("shape", [(), (4,), (3, 2)])
def test_pixels_of_a_wrong_shape_are_refused(shape):
    with pytest.raises(ShapeError, match="srgb_u8"):
        colour.srgb_u8_to_lab_d50(np.zeros(shape, np.uint8))


def test_a_colour_outside_the_screen_is_clipped_only_on_request():
    lab = [60, -110, 30]
    assert colour.lab_d50_to_srgb(lab, clip=False).min() < 0
    assert colour.lab_d50_to_srgb(lab).min() == 0
    assert colour.srgb_gamut_excess(lab) > 0


@given(SRGB)
def test_a_colour_from_the_screen_has_no_gamut_excess(srgb):
    assert colour.srgb_gamut_excess(colour.srgb_to_lab_d50(srgb)) < 1e-7


@given(st.floats(0.01, 0.5))
def test_the_gamut_excess_is_the_overshoot_of_the_worst_channel(overshoot):
    lab = colour.linear_srgb_to_lab_d50(colour.srgb_to_linear([1 + overshoot, 0.5, 1.0]))
    assert colour.srgb_gamut_excess(lab) == pytest.approx(overshoot, abs=1e-7)


@pytest.mark.parametrize("convert", EVERY_CONVERSION)
def test_any_leading_axes_are_kept(convert):
    values = random_srgb(2, 4)
    together = convert(values)
    assert together.shape[:2] == (2, 4)
    assert together[1, 2] == pytest.approx(convert(values[1, 2]), abs=1e-9)


@pytest.mark.parametrize("convert", EVERY_CONVERSION)
@pytest.mark.parametrize("shape", [(), (4,), (3, 2)])
def test_a_wrong_shape_is_refused_with_the_shape_it_got(convert, shape):
    with pytest.raises(ShapeError) as refused:
        convert(np.zeros(shape))
    assert str(shape) in str(refused.value)


@pytest.mark.parametrize("convert", EVERY_CONVERSION)
def test_no_colours_give_no_colours(convert):
    assert convert(np.empty((0, 3))).shape[0] == 0


@pytest.mark.parametrize("convert", [*EVERY_CONVERSION[:8], colour.srgb_gamut_excess])
def test_a_nan_stays_a_nan_and_spoils_no_neighbour(convert):
    values = random_srgb(2)
    whole = convert(values)
    values[0] = np.nan
    spoilt = convert(values)
    assert np.isnan(spoilt[0]).all()
    assert np.array_equal(spoilt[1], whole[1])


def test_a_nan_is_shown_as_black_and_infinite_light_as_white():
    assert colour.lab_d50_to_srgb_u8([np.nan, 0, 0]).tolist() == [0, 0, 0]
    assert colour.lab_d50_to_srgb_u8([1e9, 0, 0]).tolist() == [255, 255, 255]
    assert colour.lab_d50_to_srgb_u8([np.inf, 0, 0]).tolist() in ([0, 0, 0], [255, 255, 255])


@pytest.mark.parametrize("convert", EVERY_CONVERSION)
def test_the_input_is_left_as_it_was(convert):
    values = random_srgb(50)
    kept = values.copy()
    convert(values)
    assert np.array_equal(values, kept)


@pytest.mark.parametrize("convert", EVERY_CONVERSION)
def test_a_view_turned_about_converts_like_its_copy(convert):
    values = random_srgb(6, 7).transpose(1, 0, 2)[::-1]
    assert np.array_equal(convert(values), convert(np.ascontiguousarray(values)))


def test_black_is_black_both_ways():
    assert colour.srgb_to_lab_d50([0, 0, 0]).tolist() == [0, 0, 0]
    assert colour.lab_d50_to_srgb_u8([0, 0, 0]).tolist() == [0, 0, 0]


@pytest.mark.parametrize("convert", EVERY_CONVERSION[:8])
def test_float32_stays_float32(convert):
    values = random_srgb(50).astype(np.float32)
    assert convert(values).dtype == np.float32
    assert convert(values) == pytest.approx(convert(values.astype(float)), abs=2e-4)
