"""One door for every picture file."""

import numpy as np
import pytest
import tifffile
from PIL import Image

from framing_palette.colour import delta_e_2000, srgb_to_lab_d50, srgb_u8_to_lab_d50
from framing_palette.errors import FieldError, PictureFileError
from framing_palette.picture import read_picture_file
from framing_palette.units import Length

RNG = np.random.default_rng(7)
BLOCKS = np.kron(RNG.integers(0, 256, (4, 6, 3)), np.ones((16, 16, 1))).astype(np.uint8)


@pytest.mark.parametrize("suffix", ["png", "tif", "webp", "bmp"])
def test_lossless_files_give_the_colours_that_they_hold(tmp_path, suffix):
    path = tmp_path / f"blocks.{suffix}"
    Image.fromarray(BLOCKS).save(path, **({"lossless": True} if suffix == "webp" else {}))
    picture = read_picture_file(path)
    assert picture.lab_d50.shape == BLOCKS.shape
    assert delta_e_2000(picture.lab_d50, srgb_u8_to_lab_d50(BLOCKS)).max() < 0.01
    assert picture.colour_trust.method == "assumed"


def test_sixteen_bit_tiff_and_png_keep_steps_finer_than_eight_bits(tmp_path):
    import imagecodecs

    ramp = np.broadcast_to(
        np.arange(30000, 30064, dtype=np.uint16)[np.newaxis, :, np.newaxis], (4, 64, 3)
    ).copy()
    tifffile.imwrite(tmp_path / "ramp.tif", ramp, photometric="rgb")
    (tmp_path / "ramp.png").write_bytes(imagecodecs.png_encode(ramp))
    wanted = srgb_to_lab_d50(ramp / 65535.0)
    for name in ("ramp.tif", "ramp.png"):
        lab = read_picture_file(tmp_path / name).lab_d50
        assert (np.diff(lab[0, :, 0]) > 0).all()
        assert delta_e_2000(lab, wanted).max() < 0.001


@pytest.mark.parametrize("orientation", range(1, 9))
def test_exif_orientation_turns_the_picture_upright(tmp_path, orientation):
    path = tmp_path / "turned.png"
    exif = Image.Exif()
    exif[0x0112] = orientation
    Image.fromarray(BLOCKS).save(path, exif=exif)
    from PIL import ImageOps

    with Image.open(path) as image:
        wanted = np.asarray(ImageOps.exif_transpose(image))
    picture = read_picture_file(path)
    assert delta_e_2000(picture.lab_d50, srgb_u8_to_lab_d50(wanted)).max() < 0.01
    assert (picture.full_width_px, picture.full_height_px) == (wanted.shape[1], wanted.shape[0])


def test_a_large_photograph_is_reduced_and_keeps_its_true_scale(tmp_path):
    path = tmp_path / "large.jpg"
    Image.new("RGB", (4000, 2000), (90, 120, 150)).save(path)
    picture = read_picture_file(path, mm_per_px=0.1)
    assert (picture.columns, picture.rows) == (1600, 800)
    assert picture.mm_per_px == pytest.approx(0.25)


def test_fine_black_and_white_stripes_average_as_light_does(tmp_path):
    stripes = np.zeros((64, 3200, 3), np.uint8)
    stripes[:, ::2] = 255
    path = tmp_path / "stripes.png"
    Image.fromarray(stripes).save(path)
    lightness = read_picture_file(path, max_side=800).lab_d50[..., 0]
    half_light = srgb_to_lab_d50(np.full(3, 0.7354))[0]  # half of the light is sRGB 0.7354
    assert np.abs(lightness - half_light).max() < 1.0  # within the stand-in curve


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("empty.jpg", b"", "is empty"),
        ("words.jpg", b"Dear customer, the picture follows.", "is not a picture"),
        ("cut.jpg", b"\xff\xd8\xff\xe0\x00\x10JFIF", "damaged or cut short"),
        ("cut.png", b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00", "damaged or cut short"),
        ("cut.tif", b"II*\x00\x08\x00\x00\x00", "damaged or cut short"),
        ("cut.webp", b"RIFF\x10\x00\x00\x00WEBPVP8 ", "damaged or cut short"),
        ("cut.heic", b"\x00\x00\x00\x18ftypheic\x00\x00\x00\x00", "damaged or cut short"),
        ("cut.avif", b"\x00\x00\x00\x18ftypavif\x00\x00\x00\x00", "damaged or cut short"),
        ("cut.nef", b"MM\x00*\x00\x00\x00\x08", "damaged or cut short"),
    ],
)
def test_a_bad_file_is_told_in_one_sentence_that_names_it(tmp_path, name, content, said):
    path = tmp_path / name
    path.write_bytes(content)
    with pytest.raises(PictureFileError, match=said) as caught:
        read_picture_file(path)
    sentence = str(caught.value)
    assert name in sentence
    assert sentence.endswith(".")
    assert "\n" not in sentence


def test_a_missing_file_and_a_folder_are_told_apart(tmp_path):
    with pytest.raises(PictureFileError, match="does not exist"):
        read_picture_file(tmp_path / "none.jpg")
    with pytest.raises(PictureFileError, match="is a folder"):
        read_picture_file(tmp_path)


def test_a_scale_of_zero_is_refused(tmp_path):
    path = tmp_path / "blocks.png"
    Image.fromarray(BLOCKS).save(path)
    with pytest.raises(FieldError, match="mm_per_px is 0"):
        read_picture_file(path, mm_per_px=0)


def test_true_size_gives_the_scale_and_warns_when_proportions_differ(tmp_path):
    path = tmp_path / "blocks.png"
    Image.fromarray(BLOCKS).save(path)
    picture = read_picture_file(path)
    right = picture.with_true_size(Length.mm_of(192), Length.mm_of(128))
    assert right.mm_per_px == pytest.approx(2.0)
    assert right.notices == ()
    wrong = picture.with_true_size(Length.mm_of(192), Length.mm_of(120))
    assert "7% wider" in wrong.notices[0]


def test_an_art_of_no_width_and_a_working_size_of_nothing_are_refused(tmp_path):
    path = tmp_path / "blocks.png"
    Image.fromarray(BLOCKS).save(path)
    with pytest.raises(FieldError, match=r"the art's width is 0\.0"):
        read_picture_file(path).with_true_size(Length.mm_of(0), Length.mm_of(100))
    with pytest.raises(FieldError, match="max_side is 0"):
        read_picture_file(path, max_side=0)


def test_a_file_that_may_not_be_opened_is_told(tmp_path, monkeypatch):
    from pathlib import Path

    path = tmp_path / "blocks.png"
    Image.fromarray(BLOCKS).save(path)

    def refuse(*_arguments, **_options):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    with pytest.raises(
        PictureFileError, match=r"cannot be opened \(Permission denied\): check that"
    ):
        read_picture_file(path)


def test_clipped_pixels_are_counted_before_anything_is_averaged(tmp_path):
    pixels = np.full((100, 100, 3), 100, np.uint8)
    pixels[:10] = 255, 100, 100
    path = tmp_path / "clipped.png"
    Image.fromarray(pixels).save(path)
    assert read_picture_file(path, max_side=50).colour_trust.clipped_share == pytest.approx(0.1)
