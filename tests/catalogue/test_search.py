"""Finding samples by words and limits."""

from decimal import Decimal
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.catalogue import (
    Finish,
    Kind,
    Sample,
    SampleColour,
    Surface,
    read_catalogue_folder,
)
from framing_palette.catalogue.columns import CatalogueColumns, columns_from
from framing_palette.catalogue.search import (
    HUE_FAMILIES_DEG,
    SampleFilter,
    find_samples,
    nearest_delta_e,
)
from framing_palette.catalogue.wording import plain_words, search_words
from framing_palette.colour import chroma, delta_e_2000, hue_deg
from framing_palette.errors import FieldError
from framing_palette.units import Length

RACK = read_catalogue_folder(Path(__file__).parents[2] / "catalog")[0]
COLUMNS = columns_from(RACK.samples)


def codes(wanted: SampleFilter, columns: CatalogueColumns = COLUMNS) -> list[str]:
    all_codes = columns.code_list()
    return [all_codes[place] for place in find_samples(columns, wanted)]


@given(st.sampled_from(["gold", "GOLD leaf", "linen mat", "a", "é", "nothing at all", "x-1", "  "]))
def test_text_finds_exactly_the_samples_whose_words_hold_every_word(text: str) -> None:
    words = plain_words(text).split()
    expected = [
        sample.code
        for sample in RACK.samples
        if all(word in search_words(sample) for word in words)
    ]
    assert codes(SampleFilter(text=text)) == expected


def test_words_never_run_from_one_sample_into_the_next() -> None:
    columns = columns_from([Sample("AB", "", Kind.MAT, ()), Sample("CD", "", Kind.MAT, ())])
    border = search_words(Sample("AB", "", Kind.MAT, ()))[-1] + "cd"
    assert codes(SampleFilter(text=border), columns) == []
    assert codes(SampleFilter(text="cd"), columns) == ["CD"]


def test_accents_and_case_do_not_matter() -> None:
    columns = columns_from([Sample("A", "Crème Brûlée", Kind.MAT, ())])
    assert codes(SampleFilter(text="creme BRULEE"), columns) == ["A"]
    assert codes(SampleFilter(text="crème"), columns) == ["A"]


def test_every_limit_agrees_with_looking_at_each_sample() -> None:
    wanted = SampleFilter(
        kinds=frozenset({Kind.MOULDING}),
        surfaces=frozenset({Surface.LEAF, Surface.PLAIN_WOOD}),
        finishes=frozenset({Finish.METALLIC}),
        lightness=(40, 80),
        face_mm=(20, None),
        price=(None, 60),
        in_stock=True,
    )
    expected = [
        sample.code
        for sample in RACK.of_kind(Kind.MOULDING)
        if sample.surface in wanted.surfaces
        and sample.finish in wanted.finishes
        and 40 <= sample.mean_lab[0] <= 80
        and sample.face is not None
        and sample.face >= Length.mm_of(20)
        and sample.price is not None
        and sample.price <= 60
        and sample.in_stock is not False
    ]
    assert expected
    assert codes(wanted) == expected


@pytest.mark.parametrize("family", [*HUE_FAMILIES_DEG, "neutral"])
def test_the_hue_families_part_the_whole_rack(family: str) -> None:
    others = [f for f in (*HUE_FAMILIES_DEG, "neutral") if f != family]
    mine = set(codes(SampleFilter(hue_family=family)))
    assert mine
    assert not mine & {code for other in others for code in codes(SampleFilter(hue_family=other))}
    if family not in {"neutral", "pink"}:
        start, stop = HUE_FAMILIES_DEG[family]
        for code in mine:
            assert start - 0.1 <= hue_deg(RACK[code].mean_lab) <= stop + 0.1
            assert chroma(RACK[code].mean_lab) > 7.9


def test_the_families_together_hold_every_sample() -> None:
    families = (*HUE_FAMILIES_DEG, "neutral")
    assert sum(len(codes(SampleFilter(hue_family=family))) for family in families) == len(RACK)
    with pytest.raises(FieldError, match="choose one of pink"):
        codes(SampleFilter(hue_family="plaid"))


def test_near_a_colour_come_the_nearest_first_and_slivers_do_not_count() -> None:
    target = (45.0, 35.0, 25.0)
    expected = []
    for sample in RACK.samples:
        plain = [colour.lab for colour in sample.colours if colour.share >= 0.1]
        distance = float(delta_e_2000(plain, target).min())
        if distance <= 8:
            expected.append((distance, sample.code))
    found = codes(SampleFilter(near_lab=target, within_delta_e=8))
    assert found == [code for _, code in sorted(expected, key=lambda pair: pair[0])]


def test_a_sample_without_colours_is_near_nothing() -> None:
    columns = columns_from(
        [Sample("A", "", Kind.MAT, ()), Sample("B", "", Kind.MAT, (SampleColour((50, 0, 0), 1),))]
    )
    distance = nearest_delta_e(columns, (50, 0, 0), np.array([0, 1]))
    assert distance.tolist() == [np.inf, 0]
    assert codes(SampleFilter(near_lab=(50, 0, 0)), columns) == ["B"]
    assert codes(SampleFilter(near_lab=(50, 0, 0), text="zzz"), columns) == []


def test_unknown_figures_fit_no_limit_but_unknown_stock_stays() -> None:
    columns = columns_from(
        [
            Sample("A", "", Kind.MAT, ()),
            Sample("B", "", Kind.MAT, (), price=Decimal(3), in_stock=False),
        ]
    )
    assert codes(SampleFilter(price=(0, 10)), columns) == ["B"]
    assert codes(SampleFilter(in_stock=True), columns) == ["A"]
    assert codes(SampleFilter(), columns) == ["A", "B"]


def test_an_empty_catalogue_has_nothing_to_find() -> None:
    assert codes(SampleFilter(text="a"), columns_from([])) == []
