"""How much lamp and sky a cross-section leaves."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.lights import Light
from framing_palette.preview.plans import Build, Hole, LayerPlan, Plan, Rect, Side
from framing_palette.preview.sections import (
    Ridges,
    Site,
    daylight,
    heights,
    horizon_rad,
    lamp_above,
    ridges,
    section,
)
from framing_palette.preview.shade import level_light
from framing_palette.preview.skins import Skin

WHOLE = Box(0, 100, 0, 100)


def wall_of(height, at=0.0):
    return Ridges(np.array([at]), np.array([height]))


def layer(profile, build=Build.MITRED, base=0.0, rect=None, *, oval=False):
    rect = rect or Rect(0.0, 0.0, 100.0, 100.0)
    return LayerPlan(
        Skin("S", (50.0, 0.0, 0.0)), build, (Hole(rect, oval),), rect.grown(40), base, profile
    )


def site(*layers, light=None):
    plan = Plan((Rect(0, 0, 100, 100),), layers, Rect(-40, -40, 140, 140), Skin("G", (90, 0, 0)))
    return Site(plan, 0, Grid(0.0, 0.0, 1.0), light or Light(), WHOLE)


@given(height=st.floats(0.1, 50), distance=st.floats(0.5, 200))
def test_a_wall_closes_the_sky_up_to_its_own_angle(height, distance):
    horizon = horizon_rad(wall_of(height), np.array([-distance]), np.zeros(1))
    assert horizon[0] == pytest.approx(np.arctan2(height, distance))


@given(height=st.floats(0.1, 50), distance=st.floats(0.5, 200))
def test_the_sky_beside_a_long_wall_is_half_of_one_plus_cosine(height, distance):
    # Oke 1981: the sky view factor beside one wall is (1 + cos a) / 2.
    light = daylight(wall_of(height), np.array([-distance]), 0.0, Side.RIGHT, Light())
    expected = (1 + np.cos(np.arctan2(height, distance))) / 2
    assert light.room[0] == pytest.approx(expected)


def test_without_walls_nothing_is_taken_away():
    nothing = Ridges(np.empty(0), np.empty(0))
    light = daylight(nothing, np.array([1.0, 2.0]), 0.0, Side.TOP, Light())
    assert light.lamp == pytest.approx(1.0)
    assert light.room == pytest.approx(1.0)


@given(height=st.floats(1, 20), azimuth=st.floats(0, 360))
def test_a_shadow_only_lightens_with_the_distance_from_its_wall(height, azimuth):
    at = -np.linspace(0.1, 80, 60)
    light = daylight(wall_of(height), at, 0.0, Side.LEFT, Light(azimuth_deg=azimuth))
    assert (np.diff(light.lamp) >= -1e-12).all()
    assert light.lamp[-1] == pytest.approx(1.0)


def test_a_lamp_on_the_other_side_is_not_hidden():
    light = Light(azimuth_deg=90.0)  # from the right
    left = daylight(wall_of(10.0), np.array([-1.0]), 0.0, Side.LEFT, light)
    right = daylight(wall_of(10.0), np.array([-1.0]), 0.0, Side.RIGHT, light)
    assert left.lamp[0] == 1.0
    assert right.lamp[0] == 0.0


def test_half_of_the_lamp_shows_when_its_middle_touches_the_horizon():
    light = Light(elevation_deg=40.0, azimuth_deg=0.0)
    altitude = np.arctan2(light.direction[2], -light.direction[1])
    share = lamp_above(np.array([altitude]), np.array(-light.direction[1]), light)
    assert share[0] == pytest.approx(0.5)


def test_a_profile_made_of_small_turns_is_shaded_as_a_curve():
    x = np.linspace(0, 30, 9)
    curve = layer(tuple(zip(x.tolist(), (20 + 6 * np.sin(x / 10)).tolist(), strict=True)))
    at = np.linspace(1, 29, 400)
    _, slope = heights(curve, at)
    assert np.abs(np.diff(slope)).max() < 0.02
    assert slope == pytest.approx(0.6 * np.cos(at / 10), abs=0.08)


def test_an_arris_stays_sharp_to_a_fraction_of_a_millimetre():
    step = layer(((0.0, 5.0), (10.0, 15.0), (20.0, 15.0)))
    _, slope = heights(step, np.array([9.0, 11.0]))
    assert slope == pytest.approx([1.0, 0.0])


def test_heights_are_counted_from_the_art_and_go_on_level_beyond_the_last_point():
    z, slope = heights(layer(((0.0, 0.0), (2.0, 2.0)), Build.SHEET, base=3.0), np.array([1.0, 9.0]))
    assert z == pytest.approx([4.0, 5.0])
    assert slope == pytest.approx([1.0, 0.0])


def test_every_layer_outward_may_stand_in_the_light():
    inner = layer(((0.0, 0.0), (1.0, 1.0)), Build.SHEET)
    outer = layer(((0.0, 9.0), (5.0, 9.0)), base=1.0, rect=Rect(-10, -10, 110, 110))
    both = ridges(site(inner, outer), 0, Side.LEFT)
    assert both.outward_mm.tolist() == [0.0, 1.0, 10.0, 15.0]
    assert both.z_mm.tolist() == [0.0, 1.0, 10.0, 10.0]


def test_a_level_top_far_from_walls_returns_everything():
    flat = layer(((0.0, 5.0), (40.0, 5.0)))
    response = section(site(flat), 0, Side.TOP, np.array([20.0]))
    assert response.lamp[0] + response.room[0] == pytest.approx(1.0)
    assert response.sheen[0] == 0.0


def test_the_light_under_an_oval_is_that_under_a_straight_wall_at_the_ends_of_its_axes():
    profile = ((0.0, 0.0), (6.0, 6.0))
    straight = level_light(site(layer(profile, Build.SHEET)), 0, 0.0, WHOLE)
    rounded = level_light(site(layer(profile, Build.SHEET, oval=True)), 0, 0.0, WHOLE)
    assert rounded[50, 1] == pytest.approx(straight[50, 1], abs=0.03)
    assert rounded[1, 50] == pytest.approx(straight[1, 50], abs=0.03)
    assert rounded[50, 50] == pytest.approx(1.0, abs=0.02)
