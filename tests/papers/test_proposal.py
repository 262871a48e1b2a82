"""The proposal: one page that a client can read, with nothing cut off and nothing private."""

from dataclasses import fields, replace
from io import BytesIO

import numpy as np
import pytest

from framing_palette.errors import FieldError
from framing_palette.papers import ProposalOption, proposal_pdf
from framing_palette.papers.proposal import panel_sizes, proposal_pages
from framing_palette.papers.proposal_contents import PublicPrice
from framing_palette.papers.proposal_parts import ON_COLOUR
from framing_palette.papers.shapes import Photo
from tests.papers.layouts import outside, overlaps
from tests.papers.made_up import PRICE, REASONS, SHOP, option, proposal_of, words_of

LONG = "A very long title that its owner never shortened, written in full as it stands on the back"
MANY = tuple(option(name, price=PRICE) for name in ("One mat", "Two mats", "A line of gilt"))


@pytest.mark.parametrize("page", ["A4", "Letter"])
@pytest.mark.parametrize("count", [1, 2, 3])
@pytest.mark.parametrize("price", [None, PRICE])
def test_it_is_one_page_with_words_apart_and_inside_the_paper(page, count, price):
    options = tuple(replace(each, price=price) for each in MANY[:count])
    (drawing,) = proposal_pages(proposal_of(*options), page=page)
    assert not overlaps(drawing)
    assert not outside(drawing)


@pytest.mark.parametrize("count", [1, 3])
def test_all_words_are_on_it(count):
    contents = proposal_of(*MANY[:count])
    words = words_of(proposal_pdf(contents))
    for told in (
        contents.title, contents.client, contents.number, contents.validity, contents.art,
        SHOP.name, *SHOP.lines, *REASONS, *contents.care, "Gesso white, cotton rag board",
        "22 × 26 1/2 in", "4 March 2026", ON_COLOUR, "243.89 USD",
    ):  # fmt: skip
        assert told in words


def test_an_invented_shop_is_marked_on_the_page_and_a_real_one_is_not():
    assert "Invented shop" in words_of(proposal_pdf(proposal_of()))
    real = proposal_of(shop=replace(SHOP, is_invented=False))
    assert "Invented shop" not in words_of(proposal_pdf(real))


def test_a_proposal_has_no_field_that_could_hold_what_is_private():
    names = {field.name for field in fields(PublicPrice)} | {f.name for f in fields(ProposalOption)}
    assert not any("private" in name or "purchase" in name for name in names)
    assert all(isinstance(part, str) for line in PRICE.lines for part in line)


def test_prices_are_left_out_when_none_are_wished():
    words = words_of(proposal_pdf(proposal_of(option(price=None))))
    assert "PRICE" not in words
    assert "USD" not in words


def test_the_lead_is_shown_largest_and_every_option_once():
    contents = proposal_of(*MANY, lead=1)
    (page,) = proposal_pages(contents)
    photos = [shape for shape in page.shapes if isinstance(shape, Photo)]
    assert [photo.alt for photo in photos] == ["Two mats", "One mat", "A line of gilt"]
    areas = [photo.width * photo.height for photo in photos]
    assert areas[0] > 2 * max(areas[1:])


@pytest.mark.parametrize("shape", [(200, 40), (40, 200), (90, 90)])
def test_pictures_keep_their_proportions(shape):
    contents = proposal_of(option(srgb=np.zeros((*shape, 3), np.uint8)))
    (page,) = proposal_pages(contents)
    photo = next(s for s in page.shapes if isinstance(s, Photo))
    assert photo.width / photo.height == pytest.approx(shape[1] / shape[0])


@pytest.mark.parametrize("page", ["A4", "Letter"])
def test_a_picture_rendered_for_its_panel_fills_it(page):
    contents = proposal_of(*MANY)
    (width, height), _ = panel_sizes(contents, page=page)
    filling = np.zeros((round(height * 4), round(width * 4), 3), np.uint8)
    options = (replace(MANY[0], srgb=filling), *MANY[1:])
    (drawing,) = proposal_pages(replace(contents, options=options), page=page)
    photo = next(s for s in drawing.shapes if isinstance(s, Photo))
    assert (photo.width, photo.height) == pytest.approx((width, height), rel=0.01)


def test_options_begin_level_side_by_side():
    uneven = (replace(MANY[0], reasons=REASONS * 2), *MANY[1:])
    (page,) = proposal_pages(proposal_of(*uneven))
    for head in ("WHY IT SUITS", "MADE OF", "PRICE"):
        heights = {round(text.at[1], 6) for text in page.texts if text.words == head}
        assert len(heights) == 1


def test_the_agreed_option_is_named_as_agreed():
    words = words_of(proposal_pdf(proposal_of(*MANY, lead=2, is_agreed=True)))
    assert "C A line of gilt, agreed" in words
    assert words.count("agreed") == 1
    assert "agreed design" in words_of(proposal_pdf(proposal_of(is_agreed=True)))


def test_a_long_title_is_set_smaller_and_kept_whole():
    short, long = (
        max(text.size for text in proposal_pages(proposal_of(title=title))[0].texts)
        for title in ("Ferry", LONG)
    )
    assert long < short
    assert LONG in words_of(proposal_pdf(proposal_of(title=LONG)))


@pytest.mark.parametrize("count", [1, 3])
def test_too_many_words_for_one_page_go_on_further_ones_whole(count):
    wordy = tuple(replace(each, reasons=REASONS * 25) for each in MANY[:count])
    contents = proposal_of(*wordy, title=LONG)
    pages = proposal_pages(contents)
    assert len(pages) > 1
    assert not any(overlaps(page) or outside(page) for page in pages)
    words = words_of(proposal_pdf(contents))
    assert all(note in words for note in contents.care)
    assert words.count("Settles into the picture's edge.") == 25 * count


def test_sums_give_way_before_the_type_becomes_small():
    roomy = words_of(proposal_pdf(proposal_of(option())))
    assert "about 2.6 m and 20 % waste" in roomy
    lines = PublicPrice(PRICE.lines * 9, PRICE.total)
    tight = words_of(proposal_pdf(proposal_of(option(price=lines))))
    assert "about 2.6 m and 20 % waste" not in tight
    assert tight.count("154.27 USD") == 9


def test_without_a_shop_the_page_says_what_it_is():
    from framing_palette.papers import Shop

    assert words_of(proposal_pdf(proposal_of(shop=Shop()))).startswith("Framing proposal")


@pytest.mark.parametrize("count", [0, 4])
def test_none_or_more_than_three_options_are_refused(count):
    contents = proposal_of()
    with pytest.raises(FieldError, match="number of options"):
        proposal_pages(replace(contents, options=(option(),) * count))


def test_the_same_contents_give_the_same_bytes():
    assert proposal_pdf(proposal_of(*MANY)) == proposal_pdf(proposal_of(*MANY))


def test_pictures_keep_their_colour():
    from pypdf import PdfReader

    red = np.zeros((80, 120, 3), np.uint8)
    red[..., 0] = 200
    reader = PdfReader(BytesIO(proposal_pdf(proposal_of(option(srgb=red)))))
    image = np.asarray(reader.pages[0].images[0].image)
    assert np.abs(image.reshape(-1, 3).mean(axis=0) - [200, 0, 0]).max() < 4


def test_nothing_on_the_page_but_the_pictures_has_a_colour():
    from pypdf import PdfReader

    stream = PdfReader(BytesIO(proposal_pdf(proposal_of()))).pages[0].get_contents().get_data()
    operators = {token for token in stream.split() if token.isalpha()}
    assert not operators & {b"rg", b"RG", b"k", b"K", b"sc", b"SC", b"scn", b"SCN"}
