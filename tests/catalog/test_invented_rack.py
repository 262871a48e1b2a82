"""The invented catalogue that ships with the program is what its README says it is."""

from collections import Counter
from pathlib import Path

import frictionless
import numpy as np
import pytest
from PIL import Image

from framing_palette.catalogue import Catalogue, Kind, Surface, read_catalogue_folder
from framing_palette.colour import (
    delta_e_2000,
    delta_e_2000_matrix,
    spectrum_to_lab_d50,
    srgb_gamut_excess,
    srgb_u8_to_lab_d50,
)

FOLDER = Path(__file__).parents[2] / "catalog"


@pytest.fixture(scope="module")
def rack() -> Catalogue:
    catalogue, problems = read_catalogue_folder(FOLDER)
    assert problems == ()
    return catalogue


def test_it_holds_as_many_samples_of_each_kind_as_a_real_rack(rack: Catalogue) -> None:
    counts = Counter(sample.kind for sample in rack.samples)
    assert len(rack) >= 380
    assert counts[Kind.MAT] >= 160
    assert counts[Kind.WRAPPED_FILLET] >= 60
    assert counts[Kind.WOOD_FILLET] >= 40
    assert counts[Kind.MOULDING] >= 100
    assert counts[Kind.LINER] >= 10


def test_it_is_a_valid_data_package() -> None:
    report = frictionless.validate(str(FOLDER / "datapackage.json"))
    assert report.valid, report.flatten(["type", "message"])


def test_every_spectrum_gives_the_colour_beside_it(rack: Catalogue) -> None:
    colours = [colour for sample in rack.samples for colour in sample.colours]
    spectra = np.array([colour.spectrum for colour in colours])
    difference = delta_e_2000(spectrum_to_lab_d50(spectra), [colour.lab for colour in colours])
    assert difference.max() < 0.3
    assert np.abs(np.diff(spectra, axis=1)).max() < 0.1  # smooth, as paints and dyes are


def test_every_colour_can_be_shown_and_shares_add_up(rack: Catalogue) -> None:
    colours = np.array([colour.lab for sample in rack.samples for colour in sample.colours])
    assert srgb_gamut_excess(colours).max() < 0.02
    for sample in rack.samples:
        assert sum(colour.share for colour in sample.colours) == pytest.approx(1, abs=1e-6)


def test_the_smooth_whites_differ_and_are_white(rack: Catalogue) -> None:
    white = [
        sample.colours[0].lab
        for sample in rack.of_kind(Kind.MAT)
        if sample.surface is Surface.SMOOTH
        and sample.colours[0].lab[0] >= 90
        and np.hypot(*sample.colours[0].lab[1:]) < 8
    ]
    apart = delta_e_2000_matrix(white, white) + np.eye(len(white)) * 99
    assert len(white) >= 20
    assert apart.min() > 0.4


def test_textures_are_light_to_carry_and_meet_at_their_edges(rack: Catalogue) -> None:
    files = sorted((FOLDER / "textures").glob("*.png"))
    assert sum(path.stat().st_size for path in files) <= 9_000_000
    assert {path.name for path in files} >= {sample.texture_file for sample in rack.samples}
    for path in files:
        with Image.open(path) as image:
            tile = np.asarray(image.convert("RGB"), dtype=float)
        assert 256 <= min(tile.shape[:2]) <= max(tile.shape[:2]) <= 512
        for axis in (0, 1):
            inside = np.abs(np.diff(tile, axis=axis)).mean(axis=(1 - axis, 2))
            seam = np.abs(np.take(tile, 0, axis) - np.take(tile, -1, axis)).mean()
            assert seam <= 1.3 * inside.max() + 1, path.name


def test_a_grey_tile_has_the_neutral_mean_and_a_coloured_one_the_samples_own_palette(
    rack: Catalogue,
) -> None:
    for sample in rack.samples:
        with Image.open(FOLDER / "textures" / sample.texture_file) as image:
            tile = np.asarray(image)
        if tile.ndim == 2:
            assert len(sample.colours) == 1
            assert tile.mean() == pytest.approx(128, abs=0.6)
            continue
        mean = srgb_u8_to_lab_d50(tile).reshape(-1, 3).mean(axis=0)
        assert delta_e_2000(mean, sample.mean_lab) < 0.5, sample.code


def test_sizes_and_cross_sections_are_sensible(rack: Catalogue) -> None:
    for sample in rack.samples:
        if sample.kind is Kind.MAT:
            assert sample.thickness is not None
            assert sample.sheet_w is not None
            continue
        assert sample.profile is not None
        assert sample.face is not None
        x, height = np.array(sample.profile.points).T
        assert (x[0], x[-1]) == (0, pytest.approx(sample.face.as_float_mm()))
        assert (height >= 0).all()
        if sample.kind in {Kind.MOULDING, Kind.LINER}:
            assert sample.rabbet_width is not None
            assert sample.rabbet_depth is not None
            over = np.interp(np.linspace(0, sample.rabbet_width.as_float_mm(), 20), x, height)
            assert over.min() - sample.rabbet_depth.as_float_mm() > 1, sample.code


def test_every_sample_has_a_price_a_material_and_a_measured_surface(rack: Catalogue) -> None:
    for sample in rack.samples:
        assert sample.price is not None
        assert sample.price_per is not None
        assert sample.material
        assert sample.density_kg_m3 is not None
        assert sample.texture is not None
        assert sample.texture.mm_per_px == sample.texture_mm_per_px
