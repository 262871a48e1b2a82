"""A catalogue as columns."""

import numpy as np
import pytest

from framing_palette.catalogue import Catalogue, Finish, Kind, Surface
from framing_palette.catalogue.columns import columns_from, lazy_catalogue
from framing_palette.picture import Texture
from framing_palette.ranking import columns_of, rank
from tests.ranking.by_hand import BOAT, SEA, findings, lch, sample

WEAVE = Texture(lightness_contrast=(1.0, 2.0, 3.0, 2.0, 1.0, 0.5), sparkle=0.1, mm_per_px=0.2)
RACK = (
    sample("plain", lch(40, 20, 30)),
    sample("none"),
    sample("mottled", (lch(30, 10, 90), 0.75), (lch(70, 10, 90), 0.25), kind=Kind.MOULDING),
    sample("woven", lch(60, 5, 80), surface=Surface.LINEN, finish=Finish.MATT, texture=WEAVE),
    sample(
        "leaf", lch(70, 30, 85), surface=Surface.LEAF, finish=Finish.METALLIC, kind=Kind.MOULDING
    ),
)


def test_each_row_finds_its_own_sample_and_colourless_ones_are_left_out():
    columns = columns_of(RACK)
    codes = [columns.sample(row).code for row in range(len(columns))]
    assert codes == ["plain", "mottled", "woven", "leaf"]


def test_the_mean_colour_is_weighed_by_share():
    assert columns_of(RACK).mean_lab[1] == pytest.approx(lch(40, 10, 90))


def test_shares_that_do_not_add_up_are_scaled_and_zero_ones_count_alike():
    odd = (
        sample("double", (lch(20, 0, 0), 1.5), (lch(80, 0, 0), 0.5)),
        sample("zero", (lch(20, 0, 0), 0.0), (lch(80, 0, 0), 0.0)),
    )
    columns = columns_of(odd)
    assert columns.share.tolist() == pytest.approx([0.75, 0.25, 0.5, 0.5])


def test_shine_hardens_and_glitters():
    columns = columns_of(RACK)
    assert columns.softness[2] > columns.softness[3]
    assert columns.glitter[3] > columns.glitter[1] == 0.0
    assert np.isnan(columns.softness[0])


def test_measured_light_points_glitter():
    assert columns_of(RACK).glitter[2] == pytest.approx(0.8)


def test_only_kinds_asked_for_are_left():
    columns = columns_of(RACK, (Kind.MOULDING,))
    assert [columns.sample(row).code for row in range(len(columns))] == ["mottled", "leaf"]
    assert columns.lab.shape == (3, 3)


def test_rows_may_be_picked_in_any_order():
    columns = columns_of(RACK).at(np.array([3, 1]))
    assert [columns.sample(row).code for row in range(2)] == ["leaf", "mottled"]
    assert columns.lab.tolist() == [
        list(lch(70, 30, 85)),
        list(lch(30, 10, 90)),
        list(lch(70, 10, 90)),
    ]


def test_a_catalogue_kept_as_arrays_is_ranked_exactly_like_its_samples():
    found = findings(SEA, focus=BOAT, texture=WEAVE)
    kept = lazy_catalogue(columns_from(RACK))
    one, two = rank(found, Catalogue(RACK)), rank(found, kept)
    assert [line.sample.code for line in one] == [line.sample.code for line in two]
    assert [line.score for line in one] == pytest.approx([line.score for line in two])
    assert [line.reasons for line in one] == [line.reasons for line in two]


def test_the_columns_of_a_catalogue_are_made_once():
    catalogue = Catalogue(RACK)
    assert columns_of(catalogue) is columns_of(catalogue)


def test_a_list_that_changes_is_read_anew():
    rack = list(RACK)
    before = len(columns_of(rack))
    rack.append(sample("new", lch(50, 5, 5)))
    assert len(columns_of(rack)) == before + 1


def test_an_empty_catalogue_has_columns_of_no_rows():
    columns = columns_of(())
    assert len(columns) == 0
    assert columns.mean_lab.shape == (0, 3)
    assert columns.per_sample(np.zeros(0)).shape == (0,)
    assert columns.strongest(np.zeros(0)).shape == (0,)


def test_a_telling_part_counts_in_full_and_a_fleck_by_its_share():
    rack = [
        sample("s", (lch(40, 0, 0), 0.7), (lch(50, 50, 40), 0.3)),
        sample("f", (lch(40, 0, 0), 0.9), (lch(50, 50, 40), 0.1)),
    ]
    strongest = columns_of(rack).strongest(np.array([0.0, 1.0, 0.0, 1.0]))
    assert strongest.tolist() == pytest.approx([1.0, 0.4])
