"""Written renderings: PNG, TIFF and one HTML page."""

import re
import struct
from base64 import b64decode
from io import BytesIO

import numpy as np
import pytest
import tifffile
from PIL import Image, ImageCms

from framing_palette.colour import srgb_to_linear
from framing_palette.errors import OutputError
from framing_palette.preview import (
    png_bytes,
    render,
    write_html,
    write_png,
    write_preview_file,
    write_tiff,
)
from tests.preview.frames import SHOP, picture, simple

PIXELS = np.random.default_rng(0).integers(0, 256, (20, 30, 3), dtype=np.uint8)


def chunks(data):
    place, found = 8, {}
    while place < len(data):
        length, kind = struct.unpack(">I4s", data[place : place + 8])
        found[kind] = data[place + 8 : place + 8 + length]
        place += 12 + length
    return found


def test_a_png_holds_the_pixels_and_says_that_it_is_srgb(tmp_path):
    path = write_png(tmp_path / "p.png", PIXELS, px_per_mm=10.0)
    assert np.array_equal(np.asarray(Image.open(path)), PIXELS)
    found = chunks(path.read_bytes())
    assert found[b"sRGB"] == b"\x00"
    assert struct.unpack(">I", found[b"gAMA"])[0] == 45455
    assert struct.unpack(">IIB", found[b"pHYs"]) == (10_000, 10_000, 1)
    assert list(found).index(b"sRGB") < list(found).index(b"IDAT")


def test_a_png_without_scale_claims_no_resolution():
    assert b"pHYs" not in chunks(png_bytes(PIXELS))


def test_a_tiff_holds_sixteen_bits_a_profile_and_the_true_resolution(tmp_path):
    linear = srgb_to_linear(np.linspace(0, 1, 60 * 3).reshape(6, 10, 3)).astype(np.float32)
    path = write_tiff(tmp_path / "t.tif", linear, px_per_mm=11.811)
    with tifffile.TiffFile(path) as file:
        page = file.pages[0]
        assert page.dtype == np.uint16
        numerator, denominator = page.tags["XResolution"].value
        assert numerator / denominator == pytest.approx(118.11, abs=0.01)
        profile = page.tags["InterColorProfile"].value
        levels = page.asarray()
    assert np.abs(levels / 65535 - np.linspace(0, 1, 180).reshape(6, 10, 3)).max() < 1e-4
    described = ImageCms.getProfileDescription(ImageCms.ImageCmsProfile(BytesIO(profile)))
    assert "sRGB" in described


def test_a_page_holds_its_images_and_fetches_nothing(tmp_path):
    path = write_html(
        tmp_path / "p.html",
        [("First <b>", PIXELS), ("Second", PIXELS)],
        title="Two & more",
        notes=["A note"],
    )
    page = path.read_text()
    assert "<b>" not in page
    assert "Two &amp; more" in page
    assert "<li>A note</li>" in page
    assert not re.search(r"(https?:)?//|@import|<script|<link", page.replace("data:image", ""))
    images = re.findall(r"base64,([A-Za-z0-9+/=]+)", page)
    assert len(images) == 2
    assert np.array_equal(np.asarray(Image.open(BytesIO(b64decode(images[0])))), PIXELS)


@pytest.mark.parametrize("ending", ["png", "tif", "html"])
def test_a_design_is_written_as_the_ending_says(tmp_path, ending):
    path = tmp_path / f"preview.{ending}"
    done = write_preview_file(path, simple(), picture(), SHOP, width_px=160)
    start = path.read_bytes()[:4]
    assert start in {"png": [b"\x89PNG"], "tif": [b"II*\x00"], "html": [b"<!DO"]}[ending]
    assert done.srgb.shape[1] == 160


def test_the_tiff_shows_what_the_png_shows(tmp_path):
    write_preview_file(tmp_path / "p.tif", simple(), picture(), SHOP, width_px=160)
    done = write_preview_file(tmp_path / "p.png", simple(), picture(), SHOP, width_px=160)
    levels = tifffile.imread(tmp_path / "p.tif")
    assert np.abs(levels / 257.0 - done.srgb).max() <= 1.0


def test_another_ending_is_refused(tmp_path):
    with pytest.raises(OutputError, match=r"p\.bmp has no ending that says its form"):
        write_preview_file(tmp_path / "p.bmp", simple(), picture(), SHOP, width_px=160)


def test_a_folder_that_is_not_there_is_told_by_name(tmp_path):
    with pytest.raises(OutputError, match=r"none/p\.png cannot be written"):
        write_png(tmp_path / "none" / "p.png", PIXELS)


def test_nothing_is_rendered_for_a_folder_that_is_not_there(tmp_path, monkeypatch):
    monkeypatch.setattr("framing_palette.preview.output_files.render", None)
    with pytest.raises(OutputError, match="none is not a folder"):
        write_preview_file(tmp_path / "none" / "p.png", simple(), picture(), SHOP, width_px=160)


def test_a_failed_write_leaves_the_earlier_file_and_no_rubbish(tmp_path, monkeypatch):
    path = write_png(tmp_path / "p.png", PIXELS)
    before = path.read_bytes()

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("pathlib.Path.replace", full)
    with pytest.raises(OutputError, match="No space left on device"):
        write_png(path, 255 - PIXELS)
    assert path.read_bytes() == before
    assert [item.name for item in tmp_path.iterdir()] == ["p.png"]


def test_a_written_rendering_is_the_rendering(tmp_path):
    rendering = render(simple(), picture(), SHOP, width_px=120)
    path = write_png(tmp_path / "p.png", rendering.srgb)
    assert np.array_equal(np.asarray(Image.open(path)), rendering.srgb)
