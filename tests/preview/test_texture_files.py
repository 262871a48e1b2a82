"""Texture files of every kind."""

import numpy as np
import pytest
from PIL import Image

from framing_palette.errors import CatalogueError
from framing_palette.preview import texture_files
from framing_palette.preview.texture_files import read_texture


def saved(folder, pixels, name="t.png", mode=None):
    path = folder / name
    Image.fromarray(np.asarray(pixels, np.uint8), mode).save(path)
    return path


def test_a_grey_file_is_a_relief_and_a_coloured_one_the_surface(tmp_path):
    grey = read_texture(saved(tmp_path, np.full((4, 5), 128)))
    coloured = read_texture(saved(tmp_path, np.full((4, 5, 3), 128), "c.png"))
    assert grey.linear.shape == (4, 5)
    assert coloured.linear.shape == (4, 5, 3)
    # IEC 61966-2-1: the light of the level 128 is 0.2159.
    assert grey.linear[0, 0] == pytest.approx(0.2159, abs=5e-5)


def test_a_texture_of_one_pixel_is_read(tmp_path):
    assert read_texture(saved(tmp_path, [[200]])).linear.shape == (1, 1)


def test_a_large_texture_is_averaged_down_in_linear_light(tmp_path, monkeypatch):
    monkeypatch.setattr(texture_files, "_KEPT_PX", 100)
    stripes = np.zeros((260, 310, 3), np.uint8)
    stripes[::2] = 255
    texture = read_texture(saved(tmp_path, stripes))
    assert texture.reduced == 4
    assert texture.linear.shape == (65, 77, 3)
    assert texture.linear.mean() == pytest.approx(0.5, abs=0.01)
    assert texture.linear.std() < 0.01
    assert read_texture(saved(tmp_path, stripes[..., 0], "g.png")).linear.shape == (65, 77)


def test_a_huge_texture_is_refused_before_it_is_decoded(tmp_path, monkeypatch):
    monkeypatch.setattr(texture_files, "MOST_PIXELS", 1000)
    with pytest.raises(CatalogueError, match=r"t\.png is a texture of 50 x 40 pixels: reduce it"):
        read_texture(saved(tmp_path, np.zeros((40, 50))))


@pytest.mark.parametrize("content", [b"", b"not a picture", b"\x89PNG\r\n\x1a\n broken"])
def test_a_broken_texture_is_told_by_name(tmp_path, content):
    path = tmp_path / "broken.png"
    path.write_bytes(content)
    with pytest.raises(CatalogueError, match=r"broken\.png cannot be read as a texture"):
        read_texture(path)


def test_a_missing_texture_is_told_by_name(tmp_path):
    with pytest.raises(CatalogueError, match=r"none\.png"):
        read_texture(tmp_path / "none.png")


def test_a_truncated_texture_is_told_by_name(tmp_path):
    path = saved(tmp_path, np.random.default_rng(0).integers(0, 255, (90, 90, 3)))
    path.write_bytes(path.read_bytes()[:2000])
    with pytest.raises(CatalogueError, match=r"t\.png"):
        read_texture(path)


def test_palette_and_alpha_images_are_surfaces(tmp_path):
    rgba = np.zeros((6, 6, 4), np.uint8)
    rgba[..., 0] = 255
    assert read_texture(saved(tmp_path, rgba)).linear.shape == (6, 6, 3)
    Image.fromarray(rgba[..., :3]).quantize(4).save(tmp_path / "p.png")
    assert read_texture(tmp_path / "p.png").linear[0, 0].tolist() == pytest.approx([1, 0, 0])
