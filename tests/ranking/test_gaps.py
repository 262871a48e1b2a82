from dataclasses import replace

import numpy as np
import pytest

from framing_palette.catalogue import Kind, Sample, SampleColour
from framing_palette.catalogue.rack_map import rack_points
from framing_palette.colour import chroma, delta_e_2000_matrix
from framing_palette.picture import Accent, ColourTrust, Findings, PaletteColour, Role
from framing_palette.picture.findings import RegionFinding, Texture
from framing_palette.picture.pictures import TrustGrade
from framing_palette.ranking.gaps import NEAR_ENOUGH, Relation, reaches, wanted_colours

SEA, BOAT, BUOY = (45.0, -4.0, -25.0), (42.0, 52.0, 34.0), (75.0, 20.0, 70.0)


def region(name: str, role: Role, *colours: tuple[tuple[float, float, float], float]):  # type: ignore[no-untyped-def]
    palette = tuple(PaletteColour(lab, share) for lab, share in colours)
    return RegionFinding(name, role, 0.5, palette, (), colours[0][0], Texture(), 1.0)


FINDINGS = Findings(
    regions=(
        region("boat", Role.FOCUS, (BOAT, 1.0)),
        region("rim", Role.RIM, (SEA, 1.0)),
        region("whole", Role.WHOLE, (SEA, 0.9), (BOAT, 0.1)),
    ),
    accents=(Accent(BUOY, 0.01, 0.5, 0.5, 40.0, 1.0),),
    mean_lab=SEA,
    focus_strength=1.0,
    chroma_range=(0.0, 60.0),
    lightness_range=(30.0, 80.0),
    colour_trust=ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells."),
    mm_per_px=None,
    focus_guessed=False,
)


def board(code: str, lab: tuple[float, float, float], *, in_stock: bool | None = None) -> Sample:
    return Sample(code, code, Kind.MAT, (SampleColour(lab, 1.0),), in_stock=in_stock)


def test_the_pictures_own_colours_come_first_each_once() -> None:
    wanted = wanted_colours(FINDINGS)
    own = [one.lab for one in wanted if one.relation is Relation.SAME]
    assert own == [SEA, BOAT, BUOY]
    assert [one.relation for one in wanted[:3]] == [Relation.SAME] * 3
    assert wanted[0].share == 0.9 * 0.5


def test_no_two_wanted_colours_are_twins() -> None:
    lab = np.array([one.lab for one in wanted_colours(FINDINGS)])
    apart = np.asarray(delta_e_2000_matrix(lab, lab)) + 100 * np.eye(len(lab))
    assert apart.min() >= 5.0


def test_quieter_relations_are_weaker_paler_or_deeper_and_keep_the_hue() -> None:
    wanted = wanted_colours(
        replace(
            FINDINGS,
            accents=(),
            regions=(*FINDINGS.regions[:1], region("whole", Role.WHOLE, (BOAT, 1.0))),
        )
    )
    told = {one.relation: one.lab for one in wanted}
    assert set(told) == set(Relation)
    for relation in (Relation.QUIETER, Relation.PALER, Relation.DEEPER):
        assert chroma(told[relation]) < chroma(BOAT)
        assert told[relation][2] / told[relation][1] == pytest.approx(BOAT[2] / BOAT[1])
    assert told[Relation.QUIETER][0] == BOAT[0]
    assert told[Relation.DEEPER][0] < BOAT[0] < told[Relation.PALER][0]


def test_a_gap_is_where_nothing_in_stock_comes_near() -> None:
    points = rack_points((board("sea", SEA), board("boat", BOAT, in_stock=False)))
    found = {one.lab: one for one in reaches(FINDINGS, points)}
    assert not found[SEA].is_gap
    assert found[SEA].delta_e == pytest.approx(0.0, abs=1e-6)
    assert found[BOAT].is_gap  # its only match is out of stock
    assert found[BOAT].row == 0
    assert found[BOAT].delta_e > NEAR_ENOUGH
    answered = {one.lab: one for one in reaches(FINDINGS, points, only=np.array([True, True]))}
    assert not answered[BOAT].is_gap


def test_an_empty_rack_leaves_everything_open_without_a_nearest() -> None:
    for points in (rack_points(()), rack_points((board("sea", SEA, in_stock=False),))):
        found = reaches(FINDINGS, points)
        assert found
        assert all(one.is_gap and one.row == -1 for one in found)


def test_one_more_sample_never_opens_a_gap() -> None:
    few = (board("sea", SEA),)
    many = (*few, board("buoy", BUOY), board("other", (70.0, -40.0, 30.0)))
    before, after = (reaches(FINDINGS, rack_points(rack)) for rack in (few, many))
    for one, other in zip(before, after, strict=True):
        assert other.delta_e <= one.delta_e
