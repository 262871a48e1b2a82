import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from framing_palette.picture import Part, Region, Role, ellipse, rectangle, region_mask
from framing_palette.picture.reshaping import (
    LEAST_SIDE,
    Bounds,
    bounds,
    is_in_region,
    moved_region,
    stretched_region,
)

SHARES = st.floats(0.05, 0.95)


def box(left: float, top: float, right: float, bottom: float) -> Region:
    return Region("box", Role.FOCUS, (Part(rectangle(left, top, right, bottom)),))


@given(SHARES, SHARES, st.floats(-0.04, 0.04), st.floats(-0.04, 0.04))
def test_moving_pushes_every_point_alike(x: float, y: float, right: float, down: float) -> None:
    region = box(x - 0.02, y - 0.02, x + 0.02, y + 0.02)
    assume(0 <= x + right <= 1 and 0 <= y + down <= 1)
    before, after = bounds(region), bounds(moved_region(region, right=right, down=down))
    assert after.left - before.left == pytest.approx(right, abs=1e-9)
    assert after.bottom - before.bottom == pytest.approx(down, abs=1e-9)


def test_a_region_cannot_be_pushed_off_the_picture() -> None:
    far = bounds(moved_region(box(0.4, 0.4, 0.6, 0.6), right=9.0, down=-9.0))
    assert ((far.left + far.right) / 2, (far.top + far.bottom) / 2) == pytest.approx((1.0, 0.0))


@pytest.mark.parametrize("corner", range(4))
def test_stretching_moves_one_corner_and_keeps_the_opposite_one(corner: int) -> None:
    region = box(0.4, 0.4, 0.6, 0.6)
    kept = bounds(region).corners[(corner + 2) % 4]
    x, y = bounds(region).corners[corner]
    to = (x + (x - kept[0]) * 0.5, y + (y - kept[1]) * 0.25)
    after = bounds(stretched_region(region, corner, to)).corners
    assert after[corner] == pytest.approx(to)
    assert after[(corner + 2) % 4] == pytest.approx(kept)


def test_a_region_cannot_be_turned_inside_out_by_stretching() -> None:
    squeezed = bounds(stretched_region(box(0.4, 0.4, 0.6, 0.6), 2, (0.1, 0.1)))
    assert squeezed == Bounds(0.4, 0.4, 0.4 + LEAST_SIDE, 0.4 + LEAST_SIDE)


@given(st.floats(0.01, 0.99), st.floats(0.01, 0.99))
def test_a_place_is_in_a_region_exactly_where_its_mask_is(x: float, y: float) -> None:
    region = Region(
        "ring",
        Role.FOCUS,
        (Part(ellipse(0.1, 0.1, 0.9, 0.9)), Part(ellipse(0.3, 0.3, 0.7, 0.7), subtract=True)),
    )
    mask = region_mask(region, 400, 400)
    around = mask[max(0, int(y * 400) - 1) : int(y * 400) + 2, max(0, int(x * 400) - 1) :][:, :3]
    assume(around.all() or not around.any())  # not on the very edge
    assert is_in_region(region, x, y) == bool(mask[int(y * 400), int(x * 400)])
