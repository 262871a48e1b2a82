import numpy as np
import pytest

from framing_palette.errors import FieldError
from framing_palette.picture import ColourTrust, Part, Picture, Region, Role, region_mask
from framing_palette.picture.growing import grown_outline
from framing_palette.picture.pictures import TrustGrade

TRUST = ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells.")


@pytest.fixture
def picture() -> Picture:
    """A red disc with a speckled surface, and a second one that does not touch it."""
    row, column = np.mgrid[:240, :320]
    lab = np.full((240, 320, 3), (60.0, 0.0, 0.0), dtype=np.float32)
    for middle in ((120, 90), (120, 240)):
        disc = (row - middle[0]) ** 2 + (column - middle[1]) ** 2 < 50**2
        lab[disc] = (42.0, 52.0, 34.0)
    lab += np.random.default_rng(3).normal(0, 1.5, lab.shape).astype(np.float32)
    return Picture(lab, 1.0, TRUST, 320, 240)


def mask_of(outline: tuple[tuple[float, float], ...]) -> np.ndarray:
    return region_mask(Region("a", Role.FOCUS, (Part(outline),)), 240, 320)


def test_growing_fills_the_thing_under_the_point_and_no_other(picture: Picture) -> None:
    mask = mask_of(grown_outline(picture, (90 / 320, 0.5)))
    assert mask.sum() == pytest.approx(np.pi * 50**2, rel=0.06)
    assert not mask[:, 170:].any()


def test_growing_on_the_ground_leaves_the_outline_of_the_ground(picture: Picture) -> None:
    mask = mask_of(grown_outline(picture, (0.5, 0.05)))
    assert mask.sum() > 0.95 * mask.size


def test_a_larger_tolerance_never_grows_less(picture: Picture) -> None:
    areas = [
        mask_of(grown_outline(picture, (90 / 320, 0.5), tolerance=tolerance)).sum()
        for tolerance in (3.0, 12.0, 40.0)
    ]
    assert areas == sorted(areas)


def test_the_corner_of_the_picture_can_be_grown_from(picture: Picture) -> None:
    assert len(grown_outline(picture, (1.0, 1.0), tolerance=2.0)) >= 3


@pytest.mark.parametrize("start", [(-0.1, 0.5), (0.5, 1.2)])
def test_a_point_off_the_picture_is_refused(picture: Picture, start: tuple[float, float]) -> None:
    with pytest.raises(FieldError, match="choose a point of the picture"):
        grown_outline(picture, start)


def test_a_tolerance_out_of_range_is_refused(picture: Picture) -> None:
    with pytest.raises(FieldError, match="choose 2 to 40"):
        grown_outline(picture, (0.5, 0.5), tolerance=0.5)
