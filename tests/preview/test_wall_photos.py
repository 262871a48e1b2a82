"""Designs on a photographed wall."""

import numpy as np
import pytest

from framing_palette.errors import FieldError
from framing_palette.preview import Easel, Light, Options, WallPhoto, render_on_wall
from framing_palette.preview.wall_photos import wall_homography
from tests.preview.frames import BLUE, SHOP, apart, picture, simple

ROWS, COLUMNS, FOCAL = 600, 900, 1000.0


def camera(turn_deg=25.0, tilt_deg=-8.0, distance_mm=2500.0):
    """A pinhole camera before a wall: the map from wall millimetres to pixels."""
    turn, tilt = np.radians(turn_deg), np.radians(tilt_deg)
    about_y = np.array(
        [[np.cos(turn), 0, np.sin(turn)], [0, 1, 0], [-np.sin(turn), 0, np.cos(turn)]]
    )
    about_x = np.array(
        [[1, 0, 0], [0, np.cos(tilt), -np.sin(tilt)], [0, np.sin(tilt), np.cos(tilt)]]
    )
    rotation = about_x @ about_y
    lens = np.array([[FOCAL, 0, COLUMNS / 2], [0, FOCAL, ROWS / 2], [0, 0, 1.0]])
    return lens @ np.column_stack([rotation[:, 0], rotation[:, 1], [0, 0, distance_mm]])


def seen(matrix, x, y):
    point = matrix @ [x, y, 1.0]
    return point[0] / point[2], point[1] / point[2]


def wall(matrix, left=-700.0, top=-300.0, width=420.0, height=594.0, **facts):
    corners = [(left, top), (left + width, top), (left + width, top + height), (left, top + height)]
    pixels = [seen(matrix, *corner) for corner in corners]
    shares = tuple((x / COLUMNS, y / ROWS) for x, y in pixels)
    photo = picture(ROWS, COLUMNS, lab=(80.0, 0.0, 5.0))
    return WallPhoto(photo, shares, width, **{"height_mm": height, **facts})


def test_the_frame_hangs_where_the_wall_says_in_true_perspective():
    matrix = camera()
    done = render_on_wall(simple(), picture(), SHOP, wall(matrix), middle_mm=(1000.0, 300.0))
    x, y = -700.0 + 1000.0, -300.0 + 300.0
    width, height = 310 + 2 * (60 - 6 + 25.4 / 16 + 30), 210 + 2 * (60 - 6 + 25.4 / 16 + 30)
    corners = [(-1, -1), (1, -1), (1, 1), (-1, 1)]
    expected = [seen(matrix, x + a * width / 2, y + b * height / 2) for a, b in corners]
    assert np.abs(np.asarray(done.outline) - expected).max() < 0.5


def test_the_pixels_of_the_frame_lie_within_its_outline():
    done = render_on_wall(
        simple(), picture(), SHOP, wall(camera()), middle_mm=(1000.0, 300.0),
        options=Options(light=Light(azimuth_deg=0.0)),
    )  # fmt: skip
    top_left, top_right, bottom_right, bottom_left = np.asarray(done.outline)
    middle = (top_left + top_right + bottom_right + bottom_left) / 4
    rail = middle + 0.93 * ((bottom_left + bottom_right) / 2 - middle)
    column, row = rail.astype(int)
    assert apart(done.srgb[row - 1 : row + 2, column - 4 : column + 5], BLUE) < 6
    assert done.srgb.shape == (ROWS, COLUMNS, 3)
    assert apart(done.srgb[5:20, 5:20], (80.0, 0.0, 5.0)) < 0.5


@pytest.mark.parametrize(("turn", "tilt"), [(25.0, -8.0), (-35.0, 12.0), (40.0, 15.0)])
def test_the_perspective_alone_tells_the_height(turn, tilt):
    photo = wall(camera(turn, tilt), height_mm=None)
    _, height, told = wall_homography(photo)
    assert height == pytest.approx(594.0, rel=0.002)
    assert told == ()


def test_a_square_view_tells_the_height_and_a_view_turned_one_way_says_that_it_assumes():
    _, height, told = wall_homography(wall(camera(0.0, 0.0), height_mm=None))
    assert height == pytest.approx(594.0, rel=0.001)
    assert told == ()
    _, height, told = wall_homography(wall(camera(30.0, 0.0), height_mm=None))
    assert "assumed" in told[0]
    assert height == pytest.approx(594.0, rel=0.1)


def test_the_exposure_darkens_the_frame_and_not_the_wall():
    easel = Easel()
    light, dark = (
        render_on_wall(
            simple(), picture(), SHOP, wall(camera(), exposure=exposure),
            middle_mm=(1000.0, 300.0), easel=easel,
        )
        for exposure in (1.0, 0.5)
    )  # fmt: skip
    column, row = np.asarray(light.outline).mean(axis=0).astype(int)
    assert dark.srgb[row, column].mean() < light.srgb[row, column].mean()
    assert np.array_equal(dark.srgb[:20, :20], light.srgb[:20, :20])


def test_the_shadow_on_the_photographed_wall_falls_away_from_the_light():
    options = Options(light=Light(azimuth_deg=0.0))
    done = render_on_wall(
        simple(), picture(), SHOP, wall(camera(0.0, 0.0)), middle_mm=(700.0, 300.0),
        options=options,
    )  # fmt: skip
    outline = np.asarray(done.outline)
    column = int(outline[:, 0].mean())
    below, above = int(outline[:, 1].max()) + 3, int(outline[:, 1].min()) - 3
    assert done.srgb[below, column].mean() < done.srgb[above, column].mean() - 10


@pytest.mark.parametrize(
    "corners",
    [
        ((0.1, 0.1), (0.3, 0.1), (0.3, 0.3)),
        ((0.1, 0.1), (0.3, 0.3), (0.3, 0.1), (0.1, 0.3)),
        ((0.1, 0.1), (0.1, 0.1), (0.3, 0.3), (0.1, 0.3)),
        ((0.1, 0.1), (0.1, 0.3), (0.3, 0.3), (0.3, 0.1)),
        ((0.1, float("nan")), (0.3, 0.1), (0.3, 0.3), (0.1, 0.3)),
    ],
)
def test_corners_that_cross_coincide_or_run_the_other_way_are_refused(corners):
    with pytest.raises(FieldError, match="corners"):
        WallPhoto(picture(), corners, 210.0)


@pytest.mark.parametrize("field", ["width_mm", "height_mm", "exposure"])
@pytest.mark.parametrize("size", [0.0, -1.0, float("nan")])
def test_an_impossible_size_is_refused_by_name(field, size):
    corners = ((0.1, 0.1), (0.3, 0.1), (0.3, 0.3), (0.1, 0.3))
    with pytest.raises(FieldError, match=field):
        WallPhoto(picture(), corners, **{"width_mm": 210.0, field: size})


@pytest.mark.parametrize("middle_mm", [(1e6, 0.0), (0.0, -9e5), (-60_000.0, 0.0)])
def test_a_place_outside_the_photograph_is_refused(middle_mm):
    with pytest.raises(FieldError, match="place"):
        render_on_wall(simple(), picture(), SHOP, wall(camera()), middle_mm=middle_mm)
