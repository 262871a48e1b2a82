from decimal import Decimal
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from framing_palette.catalogue import Catalogue, Kind, Sample, SampleColour, Swatch
from framing_palette.catalogue.incoming_files import HowToRead
from framing_palette.catalogue.rack_places import default_libraries, library_place
from framing_palette.catalogue.shop_edits import Marks, Said, ShopEdits, with_own_facts
from framing_palette.catalogue.shop_rack_files import (
    bring_in,
    look_at_file,
    open_shop_rack,
    plan_samples,
    say,
    take_out,
)
from framing_palette.catalogue.shop_swatch_files import (
    measured_photograph,
    open_swatch_photograph,
    sample_of_swatch,
)
from framing_palette.errors import (
    ExchangeFileError,
    FieldError,
    ImportPlanError,
    LibraryError,
    SampleChangedError,
)
from framing_palette.units import Length


def board(code: str, lightness: float = 50.0, **facts: object) -> Sample:
    colours = (SampleColour((lightness, 5.0, 5.0), 1.0),)
    return Sample(code, code.title(), Kind.MAT, colours, **facts)  # type: ignore[arg-type]


RACK = Catalogue((board("chalk", 92.0), board("slate", 40.0)), "textures", "Invented rack")
OUT = Said(edits=ShopEdits(in_stock=False))


@pytest.fixture
def place(tmp_path: Path) -> Path:
    return library_place(tmp_path / "racks", RACK)


def test_each_catalogue_has_a_place_of_its_own(tmp_path: Path) -> None:
    other = Catalogue(RACK.samples, "elsewhere", RACK.name)
    assert library_place(tmp_path, RACK) != library_place(tmp_path, other)
    assert default_libraries().name == "racks"


def test_a_rack_of_which_nothing_was_said_is_the_folder(place: Path) -> None:
    rack = open_shop_rack(place, RACK)
    assert rack.catalogue == RACK
    assert not rack.said
    assert rack.of("chalk") == Said()


def test_what_was_said_holds_when_the_rack_is_opened_again_and_can_be_taken_back(
    place: Path,
) -> None:
    said = say(place, RACK, "chalk", Said(), OUT)
    assert said.catalogue["chalk"].in_stock is False
    assert open_shop_rack(place, RACK) == said
    assert say(place, RACK, "chalk", OUT, Said()).catalogue == RACK


def test_hidden_samples_leave_the_catalogue_and_favourites_are_named(place: Path) -> None:
    say(place, RACK, "slate", Said(), Said(marks=Marks(hidden=True)))
    rack = say(place, RACK, "chalk", Said(), Said(marks=Marks(favourite=True)))
    assert [sample.code for sample in rack.catalogue.samples] == ["chalk"]
    assert [sample.code for sample in rack.hidden] == ["slate"]
    assert rack.liked == {"chalk"}


def test_a_change_by_another_counter_is_not_overwritten(place: Path) -> None:
    say(place, RACK, "chalk", Said(), OUT)
    with pytest.raises(SampleChangedError, match="chalk"):
        say(place, RACK, "chalk", Said(), Said(marks=Marks(hidden=True)))
    assert open_shop_rack(place, RACK).of("chalk") == OUT


def test_an_edited_folder_is_taken_in_anew_and_the_shops_words_stay(place: Path) -> None:
    say(place, RACK, "chalk", Said(), OUT)
    edited = Catalogue((board("chalk", 90.0), *RACK.samples[1:]), RACK.textures_dir, RACK.name)
    rack = open_shop_rack(place, edited)
    assert rack.catalogue["chalk"].colours[0].lab[0] == 90.0
    assert rack.catalogue["chalk"].in_stock is False


def test_a_spreadsheet_is_looked_at_first_then_brought_in_and_taken_out(
    place: Path, tmp_path: Path
) -> None:
    table = tmp_path / "prices.csv"
    table.write_text("sku,name,l,a,b\nchalk,Chalk,91,5,5\nfern,Fern,45,-20,20\n", encoding="utf-8")
    preview = look_at_file(place, RACK, table, HowToRead())
    assert (len(preview.plan.new), len(preview.plan.changed)) == (1, 1)
    assert open_shop_rack(place, RACK).catalogue == RACK
    number, rack = bring_in(place, RACK, preview.plan)
    assert {sample.code for sample in rack.catalogue.samples} == {"chalk", "slate", "fern"}
    assert take_out(place, RACK, number).catalogue == RACK
    with pytest.raises(ImportPlanError):
        take_out(place, RACK, number)


def test_what_a_file_leaves_unknown_stays_as_it_is(place: Path) -> None:
    rack = Catalogue((board("chalk", thickness=Length.mm_of(2)),), name="Invented")
    plan = plan_samples(place, rack, [board("chalk", 80.0)], "again")
    _, known = bring_in(place, rack, plan)
    assert known.catalogue["chalk"].thickness == Length.mm_of(2)
    assert known.catalogue["chalk"].colours[0].lab[0] == 80.0


def test_a_plan_of_yesterday_is_refused(place: Path) -> None:
    plan = plan_samples(place, RACK, [board("fern")], "first")
    bring_in(place, RACK, plan)
    with pytest.raises(ImportPlanError, match="preview the import again"):
        bring_in(place, RACK, plan)


def test_a_file_that_is_none_is_named(place: Path, tmp_path: Path) -> None:
    empty = tmp_path / "empty.txt"
    empty.write_text("", encoding="utf-8")
    with pytest.raises(ExchangeFileError, match=r"empty\.txt"):
        look_at_file(place, RACK, empty, HowToRead())


def test_a_place_that_cannot_be_made_is_named(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder", encoding="utf-8")
    with pytest.raises(LibraryError, match="cannot be made"):
        open_shop_rack(tmp_path / "file" / "rack.sqlite", RACK)


@pytest.fixture
def photograph(tmp_path: Path) -> Path:
    rows = np.full((80, 100, 3), (150, 90, 70), dtype=np.uint8)
    path = tmp_path / "brick.png"
    Image.fromarray(rows).save(path)
    return path


def measured(path: Path, width: Length | None) -> Swatch:
    opened = open_swatch_photograph(path, width)
    return measured_photograph(opened, opened.single)


def test_a_photographed_swatch_becomes_a_sample_at_true_scale(photograph: Path) -> None:
    swatch = measured(photograph, Length.mm_of(50))
    assert swatch.texture.mm_per_px == pytest.approx(0.5)
    sample = sample_of_swatch("brick", "Brick", Kind.LINER, swatch)
    assert (sample.code, sample.name, sample.kind) == ("brick", "Brick", Kind.LINER)
    assert sample.colours[0].share == pytest.approx(1.0)
    assert sample.texture is not None


def test_without_a_width_the_texture_stays_unknown(photograph: Path) -> None:
    swatch = measured(photograph, None)
    sample = sample_of_swatch("brick", "", Kind.MAT, swatch)
    assert sample.texture is None
    assert sample.name == "brick"


@pytest.mark.parametrize("code", ["", "../brick"])
def test_a_text_that_is_no_code_is_refused(photograph: Path, code: str) -> None:
    with pytest.raises(FieldError, match="code"):
        sample_of_swatch(code, "", Kind.MAT, measured(photograph, None))


def test_own_facts_are_only_what_differs_and_empty_ones_are_the_makers_again() -> None:
    sample = board("chalk", price=Decimal("9.50"))
    assert with_own_facts(Said(), sample, "Chalk", "9,50") == Said()
    own = with_own_facts(Said(), sample, "Lime chalk", "10")
    assert (own.edits.name, own.edits.price) == ("Lime chalk", Decimal(10))
    assert with_own_facts(own, own.edits.applied_to(sample), "", "") == Said()


@pytest.mark.parametrize("price", ["cheap", "-1", "nan", "inf"])
def test_a_price_that_is_no_amount_is_refused(price: str) -> None:
    with pytest.raises(FieldError, match="price"):
        with_own_facts(Said(), board("chalk"), "Chalk", price)
