"""A sample measured from its photograph."""

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from framing_palette.catalogue import Finish, Kind, Sample, Surface
from framing_palette.catalogue.swatch import (
    SurfaceGuess,
    guess_finish,
    guess_surface,
    measure_swatch,
    swatch_report,
)
from framing_palette.colour import delta_e_2000, lab_d50_to_srgb_u8
from framing_palette.errors import FieldError
from framing_palette.picture import (
    ColourTrust,
    PaletteColour,
    Picture,
    Texture,
    TrustGrade,
    read_picture_file,
    rectangle,
)

TRUST = ColourTrust("chart", TrustGrade.HUES, "good", p95_delta_e=1.5)
UNKNOWN = ColourTrust("assumed", TrustGrade.UNKNOWN, "nobody knows")


def picture(lab: np.ndarray, trust: ColourTrust = TRUST, mm_per_px: float | None = 0.2) -> Picture:
    pixels = np.ascontiguousarray(lab, dtype=np.float32)
    return Picture(pixels, mm_per_px, trust, pixels.shape[1], pixels.shape[0])


def noisy(lab: tuple[float, float, float], size: int = 120, noise: float = 0.8) -> np.ndarray:
    rng = np.random.default_rng(5)
    return np.array(lab) + rng.normal(0, noise, (size, size, 3)) * [1, 0.3, 0.3]


def test_one_colour_is_measured_within_half_a_delta_e() -> None:
    swatch = measure_swatch(picture(noisy((62, 14, 30))))
    (colour,) = swatch.colours
    assert colour.share == 1
    assert delta_e_2000(colour.lab, (62, 14, 30)) < 0.5
    assert swatch.repeatability_delta_e < 0.2
    assert swatch.sample_colours()[0].lab == colour.lab


def test_shares_of_a_two_colour_swatch_are_those_that_were_painted() -> None:
    lab = noisy((75, 5, 40))
    lab[:, :36] += np.array([-35, 25, -15])
    swatch = measure_swatch(picture(lab))
    assert [colour.share for colour in swatch.colours] == pytest.approx([0.7, 0.3], abs=0.01)


def test_the_outline_alone_is_measured() -> None:
    lab = noisy((50, 0, 0), 200)
    lab[50:150, 50:150] = noisy((30, 40, 20), 100)
    inner = rectangle(0.25, 0.25, 0.75, 0.75)
    (colour,) = measure_swatch(picture(lab), inner).colours
    assert delta_e_2000(colour.lab, (30, 40, 20)) < 1


def test_uncertainty_grows_with_the_chart_and_with_uneven_light_and_is_unknown_without_chart() -> (
    None
):
    even = noisy((60, 5, 5))
    slope = even + np.linspace(-5, 5, 120)[:, np.newaxis, np.newaxis] * [1, 0, 0]
    flat = measure_swatch(picture(even))
    tilted = measure_swatch(picture(slope))
    assert flat.uncertainty_delta_e is not None
    assert tilted.uncertainty_delta_e is not None
    assert 1.5 <= flat.uncertainty_delta_e < 1.7 < tilted.uncertainty_delta_e
    assert tilted.unevenness == pytest.approx(10, abs=0.3)
    assert "falls unevenly: 10" in tilted.notices[0]
    unknown = measure_swatch(picture(even, UNKNOWN, None))
    assert unknown.uncertainty_delta_e is None
    assert any("no colour chart" in notice for notice in unknown.notices)
    assert any("scale is not known" in notice for notice in unknown.notices)


def test_too_small_an_outline_is_refused() -> None:
    tiny = rectangle(0.5, 0.5, 0.51, 0.51)
    with pytest.raises(FieldError, match="draw an outline of 64 pixels or more"):
        measure_swatch(picture(noisy((50, 0, 0))), tiny)


def test_a_narrow_slanting_outline_still_gets_a_texture() -> None:
    corner = ((0.0, 0.0), (0.05, 0.0), (0.0, 0.05))
    swatch = measure_swatch(picture(noisy((50, 0, 0), 900)), corner)
    assert swatch.texture.mm_per_px == 0.2


def test_a_thin_sliver_is_measured_without_parts_to_compare() -> None:
    corners = ((0.0, 0.0), (0.012, 0.0), (0.012, 0.012), (0.0, 0.012))
    swatch = measure_swatch(picture(noisy((50, 0, 0), 900)), corners)
    assert swatch.repeatability_delta_e == 0
    assert swatch.unevenness >= 0


def highlights(body: tuple[float, float, float], light: tuple[float, float, float]) -> np.ndarray:
    pixels = np.tile(np.array(body, dtype=np.float32), (1000, 1))
    pixels[:12] = light
    return pixels


@pytest.mark.parametrize(
    ("body", "light", "finish"),
    [
        ((60, 8, 36), (82, 8, 38), Finish.METALLIC),
        ((60, 8, 36), (92, 1, 6), Finish.GLOSS),
        ((40, 0, 0), (52, 0, 0), Finish.SATIN),
        ((40, 0, 0), (43, 0, 0), Finish.MATT),
    ],
)
def test_the_finish_is_guessed_from_what_highlights_do(
    body: tuple[float, float, float], light: tuple[float, float, float], finish: Finish
) -> None:
    guess = guess_finish(highlights(body, light), [PaletteColour(body, 1.0)])
    assert guess.finish is finish
    assert guess.reason


def test_a_light_colour_of_the_surface_is_no_highlight() -> None:
    body = (40.0, 0.0, 0.0)
    pixels = highlights(body, (90, 0, 0))
    both = [PaletteColour(body, 0.9), PaletteColour((90.0, 0.0, 0.0), 0.1)]
    assert guess_finish(pixels, both).finish is Finish.MATT


def test_leaf_in_flat_light_is_called_metallic_for_its_texture() -> None:
    body = (60.0, 8.0, 36.0)
    leaf = SurfaceGuess(Surface.LEAF, 0.8)
    assert guess_finish(highlights(body, body), [PaletteColour(body, 1)], leaf).finish is (
        Finish.METALLIC
    )


def texture(contrast: float) -> Texture:
    return Texture((contrast,) * 6, (contrast / 4,) * 6, mm_per_px=0.1)


def rack() -> list[Sample]:
    kinds = [(Surface.SMOOTH, 0.1), (Surface.LINEN, 2.0), (Surface.LEAF, 8.0)]
    return [
        Sample(f"{surface}{i}", "", Kind.MAT, (), surface=surface, texture_file=f"{surface}{i}",
               texture=texture(contrast * (1 + i / 10)))
        for surface, contrast in kinds
        for i in range(3)
    ]  # fmt: skip


def test_the_surface_is_that_of_the_most_alike_textures_each_picture_counted_once() -> None:
    guess = guess_surface(texture(2.1), rack())
    assert guess == SurfaceGuess(Surface.LINEN, 0.6)
    crowd = [replace(sample, code=f"{sample.code}x{i}") for sample in rack()[:1] for i in range(50)]
    assert guess_surface(texture(2.1), rack() + crowd) == guess


def test_without_scale_or_samples_there_is_no_guess() -> None:
    assert guess_surface(texture(2), []) is None
    assert guess_surface(replace(texture(2), mm_per_px=None), rack()) is None
    blank = [replace(sample, texture=Texture(mm_per_px=0.1)) for sample in rack()]
    assert guess_surface(texture(2), blank) is None


def test_the_report_is_plain_data_with_unknowns_as_null() -> None:
    swatch = measure_swatch(picture(noisy((62, 14, 30)), UNKNOWN), samples=rack())
    report = json.loads(json.dumps(swatch_report(swatch), allow_nan=False))
    assert report["schema"] == "framing-palette/swatch@1"
    assert report["uncertainty_delta_e"] is None
    assert report["surface_guess"]["surface"] in {"smooth", "linen", "leaf"}
    assert sum(colour["share"] for colour in report["colours"]) == pytest.approx(1, abs=1e-3)
    plain = swatch_report(measure_swatch(picture(noisy((62, 14, 30)))))
    assert plain["surface_guess"] is None
    assert plain["uncertainty_delta_e"] is not None


def test_a_photograph_on_disk_gives_the_colour_that_was_painted(tmp_path: Path) -> None:
    pixels = lab_d50_to_srgb_u8(noisy((55, -20, 10), 300))
    Image.fromarray(pixels).save(tmp_path / "swatch.png")
    swatch = measure_swatch(read_picture_file(tmp_path / "swatch.png", mm_per_px=0.1))
    assert delta_e_2000(swatch.colours[0].lab, (55, -20, 10)) < 0.5
    assert swatch.texture.mm_per_px == pytest.approx(0.1)
