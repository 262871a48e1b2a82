"""The shade that two rails of a corner throw on each other."""

import numpy as np
import pytest

from framing_palette.catalogue import Kind, Profile
from framing_palette.preview import Light, Options, render
from framing_palette.preview.corners import corner_of
from framing_palette.preview.plans import Build, Hole, LayerPlan, Rect, Side
from framing_palette.preview.sections import Site, horizon_rad, ridges
from framing_palette.preview.skins import Skin
from tests.preview.frames import EVEN_WALL, GREY, SHOP, block, picture, sample, simple

SCOOP = tuple((30.0 * t, 12.0 + 18.0 * t * t) for t in np.linspace(0, 1, 13).tolist())
OPENING = Rect(0.0, 0.0, 200.0, 150.0)


def rail(profile):
    return LayerPlan(Skin("S", GREY), Build.MITRED, (Hole(OPENING),), OPENING.grown(30), 0, profile)


def test_at_the_mitre_both_rails_close_the_sky_to_the_same_height():
    from framing_palette.preview.grids import Box, Grid
    from framing_palette.preview.plans import Plan

    layer = rail(SCOOP)
    plan = Plan((OPENING,), (layer,), layer.outer, layer.skin)
    site = Site(plan, 0, Grid(0, 0, 1), Light(), Box(0, 1, 0, 1))
    across = np.linspace(1.0, 29.0, 15)
    z = np.interp(across, *np.transpose(SCOOP))
    own = horizon_rad(ridges(site, 0, Side.RIGHT), OPENING.right + across, z)
    corner = corner_of(layer, 10.0)
    left = corner.left(Side.TOP, Light(), across, across)  # as far beyond the corner as out
    at_mitre = left[np.arange(15), np.arange(15), 1]
    assert at_mitre == pytest.approx((1 + np.cos(own)) / 2, abs=0.02)


def test_the_shade_fades_along_the_rail_and_ends_at_its_reach():
    corner = corner_of(rail(SCOOP), 10.0)
    before = -np.linspace(0.0, corner.reach_mm * 1.5, 60)
    left = corner.left(Side.TOP, Light(), np.array([4.0]), before)[0]
    assert (np.diff(left, axis=0) >= -1e-6).all()
    assert left[0, 1] < 0.95
    assert left[-1] == pytest.approx([1.0, 1.0])


def test_no_lamp_is_taken_away_by_the_rail_on_the_far_side_of_it():
    corner = corner_of(rail(SCOOP), 10.0)
    left = corner.left(Side.BOTTOM, Light(azimuth_deg=0.0), np.array([4.0]), np.array([0.0]))
    assert left[0, 0, 0] == 1.0
    assert left[0, 0, 1] < 1.0


@pytest.mark.parametrize(
    "profile", [((0.0, 20.0), (30.0, 20.0)), ((0.0, 20.0), (30.0, 12.0)), ((0.0, 5.0),)]
)
def test_rails_that_do_not_rise_outward_throw_no_shade(profile):
    assert corner_of(rail(profile), 10.0) is None


def test_a_rise_thinner_than_pixels_is_left_out():
    assert corner_of(rail(SCOOP), 0.1) is None
    assert corner_of(rail(SCOOP), 1.0) is not None


def test_the_top_rail_of_a_scoop_darkens_the_upper_end_of_the_left_one():
    scoop = sample("SCOOP", Kind.MOULDING, GREY, profile=Profile(SCOOP))
    shop = type(SHOP)((*SHOP.samples, scoop))
    options = Options(light=Light(azimuth_deg=0.0, elevation_deg=28.0), wall=EVEN_WALL.wall)
    done = render(
        simple(moulding="SCOOP", shop=shop), picture(), shop, width_px=1200, options=options
    )
    sight = done.plan.layers[-1].holes[0].rect
    inner = (sight.left - 12, sight.left - 6)
    near = block(done, Rect(inner[0], sight.top - 4, inner[1], sight.top + 2)).mean()
    middle = block(done, Rect(inner[0], 90, inner[1], 110)).mean()
    low = block(done, Rect(inner[0], sight.bottom - 2, inner[1], sight.bottom + 4)).mean()
    assert near < 0.93 * middle
    assert near < low
