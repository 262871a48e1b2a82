import numpy as np
import pytest

from framing_palette.errors import ShapeError
from framing_palette.picture import ColourTrust, Picture
from framing_palette.picture.pictures import TrustGrade
from framing_palette.picture.places import colour_at, presence, spots

GREY, RED = (60.0, 0.0, 0.0), (42.0, 52.0, 34.0)
TRUST = ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells.")


@pytest.fixture
def picture() -> Picture:
    lab = np.full((120, 200, 3), GREY, dtype=np.float32)
    lab[30:60, 140:180] = RED
    lab[100, 5] = RED
    return Picture(lab, 1.0, TRUST, 200, 120)


def test_presence_is_full_where_the_colour_is_and_nothing_elsewhere(picture: Picture) -> None:
    here = presence(picture, RED)
    assert here.shape == (120, 200)
    assert here.dtype == np.float32
    assert here[30:60, 140:180].min() == 1.0
    assert here[:25].max() == 0.0


def test_presence_of_a_large_picture_is_shown_at_map_size() -> None:
    lab = np.full((800, 1600, 3), GREY, dtype=np.float32)
    here = presence(Picture(lab, 1.0, TRUST, 1600, 800), GREY)
    assert here.shape == (320, 640)
    assert here.min() == 1.0


def test_a_colour_is_pointed_at_where_most_of_it_gathers(picture: Picture) -> None:
    ((x, y),) = spots(picture, [RED])
    assert 0.7 <= x <= 0.9
    assert 0.25 <= y <= 0.5


def test_a_colour_far_from_all_gets_the_spot_of_the_nearest_pixel(picture: Picture) -> None:
    ((x, y),) = spots(picture, [(40.0, 200.0, 130.0)])
    assert 0.0 <= x <= 1.0
    assert 0.0 <= y <= 1.0
    assert x > 0.6


def test_no_colours_have_no_spots(picture: Picture) -> None:
    assert spots(picture, []) == ()


def test_a_wrong_shape_is_refused_with_the_shape_it_got(picture: Picture) -> None:
    with pytest.raises(ShapeError, match="got \\(2,\\)"):
        presence(picture, (1.0, 2.0))


def test_the_colour_at_a_place_is_that_of_its_surroundings_not_of_a_speck(picture: Picture) -> None:
    assert colour_at(picture, 5.5 / 200, 100.5 / 120) == pytest.approx(GREY)
    assert colour_at(picture, 0.8, 0.375) == pytest.approx(RED)
    assert colour_at(picture, 7.0, -3.0) == pytest.approx(GREY)
