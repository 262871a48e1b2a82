import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.catalogue import Catalogue, Kind, Sample, SampleColour
from framing_palette.catalogue.columns import columns_from, lazy_catalogue
from framing_palette.catalogue.rack_map import (
    RackPoints,
    distances,
    in_hue_order,
    neighbours,
    rack_points,
)
from framing_palette.colour import delta_e_2000
from framing_palette.errors import FieldError, ShapeError

RED, BLUE, GREY, GREEN = (
    (45.0, 45.0, 25.0),
    (45.0, -5.0, -35.0),
    (60.0, 1.0, 1.0),
    (55.0, -35.0, 25.0),
)
NUMBERS = st.floats(-60, 60)
COLOURS = st.tuples(st.floats(5, 98), NUMBERS, NUMBERS)


def sample(
    code: str,
    *colours: tuple[tuple[float, float, float], float],
    kind: Kind = Kind.MAT,
    in_stock: bool | None = None,
) -> Sample:
    shown = tuple(SampleColour(lab, share) for lab, share in colours)
    return Sample(code, code, kind, shown, in_stock=in_stock)


RACK = (
    sample("red", (RED, 1.0)),
    sample("bare"),
    sample("blue", (BLUE, 0.75), (GREY, 0.25), kind=Kind.MOULDING, in_stock=False),
    sample("grey", (GREY, 0.95), (RED, 0.05), in_stock=True),
)


def of_both_forms() -> list[RackPoints]:
    lazy = lazy_catalogue(columns_from(RACK))
    return [rack_points(RACK), rack_points(lazy.samples)]


@pytest.mark.parametrize("points", of_both_forms(), ids=["tuple", "lazy"])
def test_samples_stand_at_the_mean_of_their_colours_and_bare_ones_nowhere(
    points: RackPoints,
) -> None:
    assert points.place.tolist() == [0, 2, 3]
    assert len(points) == 3
    wanted = [one.mean_lab for one in RACK if one.colours]
    assert points.mean_lab == pytest.approx(np.array(wanted), abs=1e-5)
    assert points.is_there.tolist() == [True, False, True]


@pytest.mark.parametrize("points", of_both_forms(), ids=["tuple", "lazy"])
def test_a_distance_is_that_of_the_nearest_colour_that_covers_enough(points: RackPoints) -> None:
    found = distances(points, [RED, GREY])
    assert found.shape == (2, 3)
    assert found[0, 0] == pytest.approx(0.0, abs=1e-6)
    assert found[1, 1] == pytest.approx(0.0, abs=1e-6)  # a quarter of the blue one is grey
    assert found[0, 2] == pytest.approx(float(delta_e_2000(GREY, RED)))  # a speck does not count


def test_kinds_families_and_lightness_tell_samples_apart() -> None:
    points = rack_points(RACK)
    assert points.of_kinds(frozenset()).all()
    assert points.of_kinds(frozenset({Kind.MOULDING})).tolist() == [False, True, False]
    assert points.of_family("").all()
    assert points.of_family("neutral").tolist() == [False, False, True]
    assert points.of_family("red").tolist() == [True, False, False]
    assert points.between(50, 100).tolist() == [False, False, True]
    with pytest.raises(FieldError, match="beige"):
        points.of_family("beige")


def test_neighbours_come_nearest_first_and_only_from_where_they_are_wanted() -> None:
    points = rack_points(RACK)
    found = neighbours(points, GREY, within_delta_e=100.0)
    assert [row for row, _ in found][2:] == [0]
    assert [near for _, near in found] == sorted(near for _, near in found)
    only = neighbours(points, GREY, within_delta_e=100.0, only=points.is_there)
    assert [row for row, _ in only] == [2, 0]
    assert neighbours(points, GREEN, within_delta_e=5.0) == ()


def test_an_empty_rack_is_near_nothing() -> None:
    points = rack_points(())
    assert distances(points, [RED]).shape == (1, 0)
    assert neighbours(points, RED, within_delta_e=100.0) == ()
    assert len(in_hue_order(points)) == 0


def test_a_sample_of_specks_alone_is_infinitely_far() -> None:
    specks = sample("specks", *[(RED, 0.1)] * 10)
    assert distances(rack_points((specks,)), [RED])[0, 0] == np.inf


def test_shares_of_nothing_give_the_plain_mean() -> None:
    points = rack_points((sample("odd", (RED, 0.0), (GREY, 0.0)),))
    assert points.mean_lab[0] == pytest.approx((np.array(RED) + np.array(GREY)) / 2)


def test_a_wrong_shape_is_refused() -> None:
    with pytest.raises(ShapeError):
        distances(rack_points(RACK), [[1.0, 2.0]])


def test_hue_order_goes_round_from_pink_and_ends_with_the_neutral_ones_light_first() -> None:
    dark = sample("dark", ((20.0, 0.0, 0.0), 1.0))
    rack = (dark, *RACK, sample("green", (GREEN, 1.0)))
    points = rack_points(rack)
    codes = [rack[int(points.place[row])].code for row in in_hue_order(points)]
    assert codes == ["red", "green", "blue", "grey", "dark"]


@given(st.lists(COLOURS, min_size=1, max_size=40), st.lists(COLOURS, min_size=1, max_size=6))
def test_distances_of_all_at_once_are_those_of_each_alone(
    rack: list[tuple[float, float, float]], wanted: list[tuple[float, float, float]]
) -> None:
    points = rack_points(tuple(sample(str(at), (lab, 1.0)) for at, lab in enumerate(rack)))
    found = distances(points, wanted)
    one_by_one = [[float(delta_e_2000(lab, other)) for lab in rack] for other in wanted]
    assert found == pytest.approx(np.array(one_by_one), abs=1e-9)


def test_a_catalogue_of_nothing_but_bare_samples_has_no_points() -> None:
    lazy = lazy_catalogue(columns_from((sample("bare"),)))
    assert len(rack_points(lazy.samples)) == 0
    assert len(rack_points(Catalogue((sample("bare"),)).samples)) == 0
