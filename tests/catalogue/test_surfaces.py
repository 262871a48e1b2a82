"""Measured texture pictures, the table that keeps them, and what they mean on a sample."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from framing_palette.catalogue import Kind, Sample, SampleColour, read_catalogue_folder
from framing_palette.catalogue.surface_files import (
    checksum_of,
    measure_surface_file,
    measure_surfaces,
    read_texture_picture,
    with_measured_surfaces,
    write_surface_table,
)
from framing_palette.catalogue.surfaces import MeasuredSurface, texture_in_colour, wear
from framing_palette.catalogue.texture_numbers import (
    texture_from_numbers,
    texture_names,
    texture_numbers,
)
from framing_palette.colour import lab_d50_to_srgb, srgb_u8_to_lab_d50
from framing_palette.errors import CatalogueError
from framing_palette.picture import Texture, measure_texture

from .folders import errors, notices, write_folder

SAMPLES = "code,kind,texture,texture_mm_per_px\nA1,mat,grain.png,0.1\nB2,mat,paint.png,0.2\n"
COLOURS = "code,L,a,b\nA1,70,10,30\nB2,40,0,0\n"


@pytest.fixture
def tile() -> np.ndarray:
    rows, columns = np.mgrid[0:96, 0:96]
    wave = 10 * np.sin(2 * np.pi * columns / 12) + 6 * np.sin(2 * np.pi * rows / 24)
    return (128 + wave).astype(np.uint8)


@pytest.fixture
def folder(tmp_path: Path, tile: np.ndarray) -> Path:
    write_folder(tmp_path, samples=SAMPLES, colours=COLOURS)
    (tmp_path / "textures").mkdir()
    Image.fromarray(tile).save(tmp_path / "textures" / "grain.png")
    Image.fromarray(np.stack([tile, tile, tile // 2], -1)).save(tmp_path / "textures" / "paint.png")
    return tmp_path


def test_surfaces_measured_and_written_come_back_with_the_samples(folder: Path) -> None:
    catalogue, problems = read_catalogue_folder(folder)
    assert problems == ()
    assert catalogue["A1"].texture is None
    steps: list[tuple[int, int]] = []
    surfaces, unmeasured = measure_surfaces(catalogue, tell=lambda i, n: steps.append((i, n)))
    assert unmeasured == ()
    assert steps == [(0, 2), (1, 2)]
    assert [surface.is_relief for surface in surfaces] == [True, False]
    write_surface_table(folder / "textures.csv", surfaces)
    catalogue, problems = read_catalogue_folder(folder)
    assert problems == ()
    found = catalogue["B2"].texture
    assert found is not None
    assert texture_numbers(found) == pytest.approx(
        texture_numbers(surfaces[1].texture), rel=1e-5, nan_ok=True
    )
    assert catalogue["A1"].texture is not None


def test_a_picture_changed_since_it_was_measured_is_told_and_unknown(folder: Path) -> None:
    catalogue, _ = read_catalogue_folder(folder)
    write_surface_table(folder / "textures.csv", measure_surfaces(catalogue)[0])
    Image.new("L", (64, 64), 128).save(folder / "textures" / "grain.png")
    catalogue, problems = read_catalogue_folder(folder)
    assert catalogue["A1"].texture is None
    assert "has changed since it was measured" in notices(problems)[0]


def test_a_bad_row_or_a_foreign_picture_in_the_table_is_left_out(folder: Path) -> None:
    catalogue, _ = read_catalogue_folder(folder)
    write_surface_table(folder / "textures.csv", measure_surfaces(catalogue)[0])
    table = folder / "textures.csv"
    lines = table.read_text().splitlines()
    lines[1] = lines[1].replace(",true,", ",perhaps,")
    lines.append(lines[2].replace("paint.png", "../samples.csv"))
    table.write_text("\n".join(lines) + "\n")
    catalogue, problems = read_catalogue_folder(folder)
    assert "neither true nor false" in errors(problems)[0]
    assert catalogue["A1"].texture is None
    assert catalogue["B2"].texture is not None


def test_a_relief_on_a_colour_is_what_measuring_the_tinted_picture_gives(
    folder: Path, tile: np.ndarray
) -> None:
    grey = measure_surface_file(folder / "textures" / "grain.png", 0.1).texture
    lab = (70.0, 10.0, 30.0)
    tinted = np.clip(lab_d50_to_srgb(np.array(lab)) * tile[..., np.newaxis] / 128, 0, 1)
    pixels = srgb_u8_to_lab_d50(np.round(tinted * 255).astype(np.uint8))
    truth, guess = measure_texture(pixels, 0.1), texture_in_colour(grey, lab)
    assert guess.lightness_contrast == pytest.approx(truth.lightness_contrast, rel=0.1, nan_ok=True)
    assert guess.chroma_contrast == pytest.approx(truth.chroma_contrast, rel=0.15, nan_ok=True)


def test_a_surface_of_another_scale_or_a_sample_without_colour_wears_nothing(folder: Path) -> None:
    surface = measure_surface_file(folder / "textures" / "grain.png", 0.1)
    sample = Sample("A", "A", Kind.MAT, (SampleColour((50, 0, 0), 1),), texture_mm_per_px=0.1)
    assert wear(sample, surface).texture is not None
    assert wear(replace(sample, texture_mm_per_px=0.2), surface).texture is None
    assert wear(replace(sample, colours=()), surface).texture is None
    own = MeasuredSurface("x.png", is_relief=False, checksum="", texture=surface.texture)
    assert wear(sample, own).texture == surface.texture


def test_what_is_no_picture_is_one_sentence_and_measuring_goes_on(folder: Path) -> None:
    (folder / "textures" / "grain.png").write_text("a letter")
    catalogue, _ = read_catalogue_folder(folder)
    surfaces, problems = measure_surfaces(catalogue)
    assert [surface.texture_file for surface in surfaces] == ["paint.png"]
    assert "textures/grain.png: is not a readable picture" in str(problems[0])


def test_a_huge_texture_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("framing_palette.catalogue.surface_files.LARGEST_SIDE_PX", 4)
    Image.new("L", (8, 2)).save(tmp_path / "x.png")
    with pytest.raises(CatalogueError, match="has 8 x 2 pixels"):
        read_texture_picture(tmp_path / "x.png")


def test_the_checksum_follows_the_content(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"123456789")
    assert checksum_of(tmp_path / "a") == "cbf43926"  # the published check value of CRC-32


def test_a_texture_as_numbers_comes_back_whole_and_every_number_has_its_name(
    folder: Path,
) -> None:
    texture = measure_surface_file(folder / "textures" / "paint.png", 0.2).texture
    numbers = texture_numbers(texture)
    assert repr(texture_from_numbers(numbers)) == repr(texture)
    assert len(set(texture_names())) == len(numbers)
    assert numbers[texture_names().index("sparkle")] == texture.sparkle
    assert numbers[texture_names().index("lightness_contrast_2mm")] == texture.lightness_contrast[2]
    unknown = Texture()
    assert texture_from_numbers(texture_numbers(unknown)).mm_per_px is None


def test_textures_without_a_table_are_measured_when_asked_and_known_ones_left(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    catalogue, _ = read_catalogue_folder(folder)
    measured, problems = with_measured_surfaces(catalogue)
    assert problems == ()
    assert all(sample.texture is not None for sample in measured.samples)
    again, _ = with_measured_surfaces(measured)
    assert again is measured
    monkeypatch.setattr("framing_palette.catalogue.surface_files.MEASURED_AT_ONCE", 1)
    assert with_measured_surfaces(catalogue)[0] is catalogue


def test_a_texture_that_cannot_be_measured_leaves_its_sample_as_it_was(folder: Path) -> None:
    (folder / "textures" / "grain.png").write_text("a letter")
    catalogue, _ = read_catalogue_folder(folder)
    measured, problems = with_measured_surfaces(catalogue)
    assert measured["A1"].texture is None
    assert measured["B2"].texture is not None
    assert len(problems) == 1


def test_of_a_large_texture_the_middle_is_measured(tmp_path: Path, tile: np.ndarray) -> None:
    large = np.full((1440, 2016), 20, dtype=np.uint8)
    middle = np.tile(tile, (13, 13))[:1200, :1200]
    large[120:1320, 408:1608] = middle
    Image.fromarray(large).save(tmp_path / "large.png")
    Image.fromarray(middle).save(tmp_path / "middle.png")
    found, wanted = (
        measure_surface_file(tmp_path / name, 0.1).texture for name in ("large.png", "middle.png")
    )
    assert texture_numbers(found) == pytest.approx(texture_numbers(wanted), nan_ok=True)


def test_a_texture_finer_than_needed_is_reduced_and_measures_the_same(tmp_path: Path) -> None:
    columns = np.arange(2000) * 0.03  # millimetres
    line = 128 + 12 * np.sin(2 * np.pi * columns / 2) + 8 * np.sin(2 * np.pi * columns / 16)
    picture = np.tile(np.round(line).astype(np.uint8), (2000, 1))
    Image.fromarray(picture).save(tmp_path / "fine.png")
    found = measure_surface_file(tmp_path / "fine.png", 0.03).texture
    relief = np.repeat(picture[..., np.newaxis], 3, axis=2)
    wanted = measure_texture(srgb_u8_to_lab_d50(relief), 0.03)
    assert found.mm_per_px == 0.03
    assert found.lightness_contrast[2:] == pytest.approx(wanted.lightness_contrast[2:], rel=0.05)
    assert found.lightness_contrast[5] > 1  # the 16 mm wave, wider than 1200 px would hold
    assert found.direction_deg == pytest.approx(90, abs=1)
