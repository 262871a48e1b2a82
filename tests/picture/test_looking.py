"""The whole reading of a picture: from a file to its findings."""

import json
from pathlib import Path

import numpy as np
import pytest

from framing_palette.colour import delta_e_2000, srgb_u8_to_lab_d50
from framing_palette.errors import FieldError
from framing_palette.picture import (
    ColourTrust,
    Part,
    Picture,
    Region,
    Role,
    TrustGrade,
    palette_report,
    read_findings,
    read_picture_file,
    read_region,
    rectangle,
    regions_report,
    survey_picture,
)

TRUST = ColourTrust(method="assumed", grade=TrustGrade.UNKNOWN, words="Made for a test.")


def picture_of(srgb_u8, *, mm_per_px=None):
    lab = srgb_u8_to_lab_d50(np.asarray(srgb_u8, dtype=np.uint8))
    return Picture(lab, mm_per_px, TRUST, lab.shape[1], lab.shape[0])


def two_halves():
    pixels = np.zeros((80, 120, 3), np.uint8)
    pixels[:, :60] = (200, 40, 40)
    pixels[:, 60:] = (40, 60, 160)
    return picture_of(pixels)


def china() -> Path:
    import sklearn.datasets

    return Path(sklearn.datasets.__file__).parent / "images" / "china.jpg"


LEFT = Region("left", Role.FOCUS, (Part(rectangle(0, 0, 0.5, 1)),))
RIGHT = Region("right", Role.GROUND, (Part(rectangle(0.5, 0, 1, 1)),))


def test_a_region_lists_the_colours_inside_it_and_none_from_outside():
    found = read_findings(two_halves(), (LEFT, RIGHT))
    red = srgb_u8_to_lab_d50(np.array([200, 40, 40], np.uint8))
    (colour,) = found.regions[0].colours
    assert colour.share == pytest.approx(1.0)
    assert delta_e_2000(colour.lab, red) < 0.01
    assert found.regions[0].share == pytest.approx(0.5)


def test_whole_and_rim_follow_the_drawn_regions():
    found = read_findings(two_halves(), (LEFT, RIGHT))
    assert [region.name for region in found.regions] == ["left", "right", "rim", "whole"]
    assert [region.role for region in found.regions][-2:] == [Role.RIM, Role.WHOLE]
    assert {round(colour.share, 3) for colour in found.whole.colours} == {0.5}


def test_without_a_focus_one_is_guessed_and_said_to_be_a_guess():
    found = read_findings(two_halves(), (RIGHT,))
    assert found.focus_guessed
    assert "guess" in found.by_role(Role.FOCUS)[0].name
    assert not read_findings(two_halves(), (LEFT,)).focus_guessed


def test_focus_strength_weighs_several_focus_regions_by_their_area():
    small = Region("small", Role.FOCUS, (Part(rectangle(0.5, 0, 0.55, 0.2)),))
    found = read_findings(two_halves(), (LEFT, small))
    first, second = found.by_role(Role.FOCUS)
    wanted = (first.strength * first.share + second.strength * second.share) / (
        first.share + second.share
    )
    assert found.focus_strength == pytest.approx(wanted)


def test_the_same_picture_read_twice_gives_the_same_to_the_last_digit():
    picture = read_picture_file(china(), mm_per_px=0.8)
    reports = [json.dumps(palette_report(picture, read_findings(picture))) for _ in range(2)]
    assert reports[0] == reports[1]


def test_a_real_photograph_has_two_to_eight_colours_whose_shares_sum_to_one():
    found = read_findings(read_picture_file(china()), (LEFT, RIGHT))
    for region in found.regions:
        assert 2 <= len(region.colours) <= 8
        assert sum(colour.share for colour in region.colours) == pytest.approx(1.0)
        shares = [colour.share for colour in region.colours]
        assert shares == sorted(shares, reverse=True)


def test_following_a_drag_gives_the_same_colours_as_the_full_reading():
    survey = survey_picture(read_picture_file(china()))
    quick = read_region(survey, LEFT, with_texture=False)
    full = read_region(survey, LEFT)
    assert quick.colours == full.colours
    assert quick.strength == full.strength


def test_a_region_outside_the_picture_is_refused_by_name():
    outside = Region("gone", Role.SUPPORT, (Part(rectangle(1.2, 1.2, 1.4, 1.4)),))
    with pytest.raises(FieldError, match='region "gone" is empty inside the picture'):
        read_findings(two_halves(), (outside,))


@pytest.mark.parametrize("value", [0, 119, 255])
def test_a_picture_of_one_flat_colour_has_that_colour_and_no_accent(value):
    found = read_findings(picture_of(np.full((40, 60, 3), value)))
    assert len(found.whole.colours) == 1
    assert found.accents == ()
    assert found.focus_strength == pytest.approx(0, abs=1e-3)


def test_a_picture_of_pure_noise_and_one_of_sixteen_pixels_can_be_read():
    noise = np.random.default_rng(0).integers(0, 256, (64, 64, 3))
    assert 2 <= len(read_findings(picture_of(noise)).whole.colours) <= 8
    assert read_findings(picture_of(noise[:16, :16])).whole.share == 1.0
    assert read_findings(picture_of(noise[:1, :1])).rim.share == 1.0


def test_the_strength_of_a_region_too_small_for_the_attention_map_is_that_of_its_place():
    pixels = np.full((900, 1200, 3), 120, np.uint8)
    pixels[:, 600:] = (200, 40, 40)
    survey = survey_picture(picture_of(pixels))
    for x, side in ((0.3, slice(0, 190)), (0.8, slice(210, 400))):
        speck = Region("speck", Role.FOCUS, (Part(rectangle(x, 0.5, x + 0.0005, 0.5005)),))
        wanted = survey.strength[:, side].mean()
        assert read_region(survey, speck, with_texture=False).strength == pytest.approx(
            wanted, abs=0.1
        )


def test_the_rim_is_as_deep_as_asked():
    picture = two_halves()
    assert read_findings(picture).rim.share == pytest.approx(1 - 70 * 110 / 9600)
    assert read_findings(picture, rim_depth=0.25).rim.share == pytest.approx(1 - 40 * 80 / 9600)
    with pytest.raises(FieldError, match="depth of the rim"):
        read_findings(picture, rim_depth=0.7)


def test_the_regions_part_of_the_report_lists_every_region_in_order():
    found = read_findings(two_halves(), (LEFT, RIGHT))
    listed = regions_report(found)
    assert [entry["name"] for entry in listed] == ["left", "right", "rim", "whole"]
    assert [entry["role"] for entry in listed] == ["focus", "ground", "rim", "whole"]
    assert all(sum(c["share"] for c in e["colours"]) == pytest.approx(1) for e in listed)


def test_the_report_is_plain_json_without_nan():
    picture = two_halves()
    report = palette_report(picture, read_findings(picture, (LEFT,)))
    text = json.dumps(report, allow_nan=False)
    assert json.loads(text)["schema"] == "framing-palette/palette@1"
    assert report["regions"][0]["colours"][0]["name"]
    assert report["attention"]["grey_pulls"][0]["lightness"] == 0
