"""The reflectance model."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.catalogue import Finish
from framing_palette.preview.lights import Light, body_light, lambert, leaf, sheen

LEVEL = np.array([[0.0, 0.0, 1.0]])
lights = st.builds(
    Light,
    azimuth_deg=st.floats(0, 360),
    elevation_deg=st.floats(20, 89),
    radius_deg=st.floats(1, 30),
    room=st.floats(0, 1),
)


def tilted(toward_deg, by_deg):
    """A normal that leans toward a direction, clockwise from the top."""
    turn, lean = np.radians(toward_deg), np.radians(by_deg)
    return np.array([np.sin(turn) * np.sin(lean), -np.cos(turn) * np.sin(lean), np.cos(lean)])


@given(light=lights, finish=st.sampled_from(list(Finish)))
def test_a_level_surface_returns_its_own_colour_under_any_light(light, finish):
    assert body_light(LEVEL, finish, light) == pytest.approx(1.0)
    assert sheen(LEVEL, finish, light) == pytest.approx(0.0)


@given(light=lights)
def test_leaning_toward_the_lamp_is_brighter_than_leaning_away(light):
    toward, away = tilted(light.azimuth_deg, 15), tilted(light.azimuth_deg + 180, 15)
    both = np.stack([toward, away])
    for returned in (lambert(both, light), leaf(both, light)):
        assert returned[0] > returned[1]


def test_a_facet_that_faces_the_lamp_follows_lamberts_cosine_law():
    light = Light(azimuth_deg=0.0, elevation_deg=30.0)
    # Lambert 1760: the lamp stands 60 degrees from the level normal, so cos 0 / cos 60 = 2.
    assert lambert(tilted(0.0, 60.0)[None], light) == pytest.approx(2.0)
    assert lambert(tilted(180.0, 40.0)[None], light) == pytest.approx(0.0)


def test_gloss_gleams_where_the_lamp_is_mirrored_and_matt_never():
    light = Light(azimuth_deg=0.0, elevation_deg=50.0)
    mirrored = tilted(0.0, 20.0)[None]  # half of the 40 degrees between lamp and viewer
    assert sheen(mirrored, Finish.GLOSS, light) > sheen(mirrored, Finish.SATIN, light) > 0
    assert sheen(mirrored, Finish.MATT, light) == 0
    assert sheen(tilted(180.0, 20.0)[None], Finish.GLOSS, light) == pytest.approx(0.0)


def test_leaf_mirrors_the_lamp_more_than_twice_as_bright_as_a_level_leaf():
    light = Light(azimuth_deg=0.0, elevation_deg=50.0)
    assert leaf(tilted(0.0, 20.0)[None], light)[0] > 2.0


def test_the_direction_is_a_unit_vector_to_the_upper_left():
    x, y, z = Light(azimuth_deg=315.0, elevation_deg=45.0).direction
    assert (x, y, z) == pytest.approx((-0.5, -0.5, np.sqrt(0.5)))
