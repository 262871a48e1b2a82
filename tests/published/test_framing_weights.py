"""Published figures of material and statics, against the weight of a frame."""

import pytest

from framing_palette.design import (
    Art,
    Design,
    Glazing,
    Weight,
    WeightPart,
    fixing_rating_kg,
    sizes_of,
    weight_of,
    wire_tension_n,
)
from framing_palette.design.densities import ACRYLIC, GLASS, WOOD_GRAVITY, wood_density
from framing_palette.units import Length


@pytest.mark.parametrize(("material", "kg"), [("glass", 1.03), ("acrylic", 0.49)])
def test_a_pane_of_16_by_20_inches_and_2_mm_weighs_as_derived(material, kg):
    """EN 572-1 (float glass 2500 kg/m3) and material tables (cast acrylic 1190 kg/m3)."""
    art = Art(Length.inches(16), Length.inches(20))
    design = Design(art, glazing=Glazing(material, Length.mm_of(2)))
    pane = weight_of(design, sizes_of(design)).parts[-1]
    assert abs(pane.likely_kg - kg) <= 0.005
    assert pane.low_kg < kg < pane.high_kg


def test_one_millimetre_of_glass_weighs_two_and_a_half_kilograms_a_square_metre():
    """EN 572-1."""
    assert GLASS.likely * 0.001 == 2.5
    assert ACRYLIC.likely == 1190


@pytest.mark.parametrize(
    ("angle_deg", "times_weight"), [(15, 1.93), (30, 1.00), (45, 0.71), (90, 0.50)]
)
def test_a_wire_pulls_as_statics_says(angle_deg, times_weight):
    """Statics: T = W / (2 sin a), the wire's angle from the horizontal."""
    weight_n = 4 * 9.80665
    assert abs(wire_tension_n(4, angle_deg) / weight_n - times_weight) <= 0.005


@pytest.mark.parametrize(
    ("name", "gravity"),
    [
        ("basswood", 0.37), ("red alder", 0.41), ("yellow-poplar", 0.42), ("cherry", 0.50),
        ("walnut", 0.55), ("white ash", 0.60), ("red oak", 0.63), ("beech", 0.64), ("white oak", 0.68),
    ],
)  # fmt: skip
def test_a_named_wood_has_the_density_of_its_specific_gravity_within_a_tenth(name, gravity):
    """After the USDA Wood Handbook, from memory: about 1000 x G x 1.12 kg/m3 at 12 % moisture."""
    density = wood_density(f"{name}, stained")
    assert WOOD_GRAVITY[name] == gravity
    assert density.likely == pytest.approx(1120 * gravity)
    assert (density.low, density.high) == pytest.approx((1008 * gravity, 1232 * gravity))


def test_each_fixing_is_rated_for_twice_the_heavy_end():
    """Common practice: fixings rated for at least twice the weight."""
    weight = Weight((WeightPart("all", 3.0, 4.0, 5.5, "test"),))
    assert fixing_rating_kg(weight) == 11.0
