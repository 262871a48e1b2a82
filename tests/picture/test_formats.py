"""Every kind of pixel that picture files hold, and files that are damaged."""

import struct
import sys
import zlib

import numpy as np
import pytest
import tifffile
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image

from framing_palette.colour import (
    delta_e_2000,
    linear_srgb_to_lab_d50,
    srgb_to_lab_d50,
    srgb_u8_to_lab_d50,
)
from framing_palette.errors import PictureFileError
from framing_palette.picture import limits, read_picture_file
from framing_palette.picture.reduction import upright

RNG = np.random.default_rng(5)
BLOCKS = np.kron(RNG.integers(0, 256, (4, 6, 3)), np.ones((16, 16, 1))).astype(np.uint8)
GREYS = BLOCKS[..., 0]


def lab_of(greys):
    return srgb_u8_to_lab_d50(np.stack([greys] * 3, axis=-1).astype(np.uint8))


def read(path):
    return read_picture_file(path).lab_d50


@pytest.mark.parametrize("suffix", ["png", "tif", "bmp", "gif", "jpg"])
def test_grey_pictures_are_neutral_and_right(tmp_path, suffix):
    path = tmp_path / f"grey.{suffix}"
    Image.fromarray(GREYS).save(path, **({"quality": 100} if suffix == "jpg" else {}))
    assert delta_e_2000(read(path), lab_of(GREYS)).max() < (0.6 if suffix == "jpg" else 0.01)


@pytest.mark.parametrize("suffix", ["png", "tif", "gif"])
def test_palette_pictures_show_their_palette(tmp_path, suffix):
    path = tmp_path / f"indexed.{suffix}"
    image = Image.fromarray(BLOCKS).quantize(32)
    image.save(path)
    wanted = srgb_u8_to_lab_d50(np.asarray(image.convert("RGB")))
    assert delta_e_2000(read(path), wanted).max() < 0.01


@pytest.mark.parametrize("suffix", ["png", "tif", "webp"])
def test_transparent_parts_lie_on_white_paper(tmp_path, suffix):
    pixels = np.dstack([BLOCKS, np.full(BLOCKS.shape[:2], 255, np.uint8)])
    pixels[:, :48, 3] = 0
    pixels[:, 48:64, 3] = 128
    path = tmp_path / f"clear.{suffix}"
    Image.fromarray(pixels).save(path, **({"lossless": True} if suffix == "webp" else {}))
    lab = read(path)
    assert np.abs(lab[:, :48] - [100, 0, 0]).max() < 0.02
    assert delta_e_2000(lab[:, 64:], srgb_u8_to_lab_d50(BLOCKS[:, 64:])).max() < 0.01
    half = srgb_u8_to_lab_d50(BLOCKS[:, 48:64])[..., 0]
    assert (lab[:, 48:64, 0] > half).all()


def test_grey_with_transparency_and_one_bit_pictures_are_read(tmp_path):
    clear = np.dstack([GREYS, np.full(GREYS.shape, 255, np.uint8)])
    clear[:8, :, 1] = 0
    Image.fromarray(clear).save(tmp_path / "la.png")
    lab = read(tmp_path / "la.png")
    assert lab[:8, :, 0].min() > 99.9
    assert delta_e_2000(lab[8:], lab_of(GREYS[8:])).max() < 0.01
    bits = Image.fromarray(GREYS > 127)
    for name in ("bits.png", "bits.tif"):
        bits.save(tmp_path / name)
        assert np.abs(read(tmp_path / name)[..., 0] - np.where(GREYS > 127, 100, 0)).max() < 0.01


def test_a_single_transparent_colour_of_a_png_lies_on_white(tmp_path):
    path = tmp_path / "keyed.png"
    Image.fromarray(BLOCKS).save(path, transparency=tuple(BLOCKS[0, 0].tolist()))
    assert read(path)[0, 0, 0] > 99.9


def test_sixteen_bit_grey_keeps_its_depth(tmp_path):
    import imagecodecs

    ramp = np.broadcast_to(np.arange(30000, 30064, dtype=np.uint16), (16, 64)).copy()
    tifffile.imwrite(tmp_path / "ramp.tif", ramp, photometric="minisblack")
    (tmp_path / "ramp.png").write_bytes(imagecodecs.png_encode(ramp))
    wanted = srgb_to_lab_d50(np.stack([ramp / 65535] * 3, axis=-1))
    for name in ("ramp.tif", "ramp.png"):
        assert delta_e_2000(read(tmp_path / name), wanted).max() < 0.001


def test_tiff_ways_of_storing_give_the_same_picture(tmp_path):
    wanted = srgb_u8_to_lab_d50(BLOCKS)
    planes = np.moveaxis(BLOCKS, -1, 0)
    tifffile.imwrite(tmp_path / "a.tif", planes, photometric="rgb", planarconfig="separate")
    tifffile.imwrite(
        tmp_path / "b.tif", BLOCKS, photometric="rgb", compression="zlib", tile=(16, 16)
    )
    tifffile.imwrite(tmp_path / "c.tif", BLOCKS, photometric="rgb", bigtiff=True, byteorder=">")
    tifffile.imwrite(tmp_path / "d.tif", (BLOCKS / 255).astype(np.float32), photometric="rgb")
    for name in "abcd":
        assert delta_e_2000(read(tmp_path / f"{name}.tif"), wanted).max() < 0.01
    tifffile.imwrite(tmp_path / "e.tif", 255 - GREYS, photometric="miniswhite")
    assert delta_e_2000(read(tmp_path / "e.tif"), lab_of(GREYS)).max() < 0.01


def test_premultiplied_transparency_is_undone(tmp_path):
    alpha = np.full(GREYS.shape, 128, np.uint8)
    alpha[:, 48:] = 255
    pixels = np.dstack([(BLOCKS * (alpha[..., None] / 255)).round().astype(np.uint8), alpha])
    path = tmp_path / "premultiplied.tif"
    tifffile.imwrite(path, pixels, photometric="rgb", extrasamples=["assocalpha"])
    straight = tmp_path / "straight.tif"
    tifffile.imwrite(
        straight, np.dstack([BLOCKS, alpha]), photometric="rgb", extrasamples=["unassalpha"]
    )
    assert delta_e_2000(read(path), read(straight)).max() < 1.0


def test_tiff_orientation_and_several_pages(tmp_path):
    path = tmp_path / "turned.tif"
    tifffile.imwrite(
        path, np.stack([BLOCKS, BLOCKS]), photometric="rgb", extratags=[(274, 3, 1, 6, True)]
    )
    picture = read_picture_file(path)
    assert (picture.full_width_px, picture.full_height_px) == (64, 96)
    wanted = srgb_u8_to_lab_d50(np.rot90(BLOCKS, -1))
    assert delta_e_2000(picture.lab_d50, wanted).max() < 0.01
    assert "several pictures" in picture.notices[0]


@pytest.mark.parametrize(
    ("photometric", "shape"), [("cielab", (16, 16, 3)), ("logluv", (16, 16, 3))]
)
def test_colour_stored_in_ways_that_are_not_read_is_named(tmp_path, photometric, shape):
    path = tmp_path / "lab.tif"
    tifffile.imwrite(
        path, np.zeros(shape, np.uint8), photometric=photometric, planarconfig="contig"
    )
    with pytest.raises(PictureFileError, match="which is not read: save it as"):
        read_picture_file(path)


def test_tiff_pixels_of_other_kinds_are_named(tmp_path):
    inks = tmp_path / "inks.tif"
    tifffile.imwrite(inks, np.zeros((16, 16, 4), np.uint8), photometric="separated")
    data = inks.read_bytes()
    for kind, said in ((2, ""), (6, "colour stored as YCbCr")):  # RGB, YCbCr
        old = struct.pack("<HHIHH", 262, 3, 1, 5, 0)  # the tag PhotometricInterpretation
        assert old in data
        inks.write_bytes(data.replace(old, struct.pack("<HHIHH", 262, 3, 1, kind, 0)))
        if said:
            with pytest.raises(PictureFileError, match=said):
                read_picture_file(inks)
        else:
            assert read(inks).shape == (16, 16, 3)  # a fourth channel of no known use is left out
    one = tmp_path / "one.tif"
    tifffile.imwrite(one, np.zeros((16, 16), np.uint8), photometric="minisblack")
    old = struct.pack("<HHIHH", 262, 3, 1, 1, 0)
    one.write_bytes(one.read_bytes().replace(old, struct.pack("<HHIHH", 262, 3, 1, 2, 0)))
    with pytest.raises(PictureFileError, match="1 channels"):
        read_picture_file(one)


def test_one_bit_tiff_with_white_as_zero_is_turned_over(tmp_path):
    path = tmp_path / "bits.tif"
    tifffile.imwrite(path, GREYS <= 127, photometric="miniswhite")
    assert np.abs(read(path)[..., 0] - np.where(GREYS > 127, 100, 0)).max() < 0.01


def test_a_palette_with_eight_bit_entries_is_understood(tmp_path):
    path = tmp_path / "low.tif"
    colours = np.zeros((3, 256), np.uint16)
    colours[:, :2] = [[0, 200], [0, 100], [0, 50]]
    tifffile.imwrite(path, np.ones((8, 8), np.uint8), photometric="palette", colormap=colours)
    wanted = srgb_u8_to_lab_d50(np.array([200, 100, 50], np.uint8))
    assert delta_e_2000(read(path), wanted).max() < 0.01


def test_moving_pictures_give_their_first_one(tmp_path):
    path = tmp_path / "moving.gif"
    first, second = Image.fromarray(GREYS), Image.fromarray(255 - GREYS)
    first.save(path, save_all=True, append_images=[second])
    picture = read_picture_file(path)
    assert delta_e_2000(picture.lab_d50, lab_of(GREYS)).max() < 0.01
    assert "first one" in picture.notices[0]


def heif(path, bits=8, **options):
    import pillow_heif

    if bits == 8:
        file = pillow_heif.from_pillow(Image.fromarray(BLOCKS))
    else:
        data = (BLOCKS.astype(np.uint16) * 257).tobytes()
        file = pillow_heif.from_bytes(mode="RGB;16", size=BLOCKS.shape[1::-1], data=data)
    file.save(path, quality=-1, chroma=444, **options)


def test_heic_is_read_in_eight_and_in_more_bits(tmp_path):
    for bits in (8, 10):
        path = tmp_path / f"phone{bits}.heic"
        heif(path, bits)
        assert delta_e_2000(read(path), srgb_u8_to_lab_d50(BLOCKS)).max() < 1.0


def test_heic_in_display_p3_is_more_colourful_than_in_srgb(tmp_path):
    plain, wide = tmp_path / "plain.heic", tmp_path / "wide.heic"
    heif(plain)
    heif(wide, color_primaries=12, transfer_characteristics=13, matrix_coefficients=0)
    chroma = [np.hypot(read(path)[..., 1], read(path)[..., 2]).mean() for path in (plain, wide)]
    assert chroma[1] > 1.1 * chroma[0]


def camera_raw(path, linear_u16):
    """Write an uncompressed DNG of an invented camera whose colours are linear sRGB."""
    mosaic = linear_u16[..., 1].copy()
    mosaic[0::2, 0::2] = linear_u16[0::2, 0::2, 0]
    mosaic[1::2, 1::2] = linear_u16[1::2, 1::2, 2]
    # XYZ to linear sRGB, IEC 61966-2-1
    matrix = [3.2406, -1.5372, -0.4986, -0.9689, 1.8758, 0.0415, 0.0557, -0.2040, 1.0570]
    pairs = [part for value in matrix for part in (round(value * 10000), 10000)]
    tags = [
        (50706, 1, 4, bytes([1, 4, 0, 0]), True),
        (50708, 2, 0, "Invented", True),
        (33421, 3, 2, (2, 2), True),
        (33422, 1, 4, bytes([0, 1, 1, 2]), True),
        (50721, 10, 9, pairs, True),
        (50728, 5, 3, [1, 1] * 3, True),
        (50778, 3, 1, 21, True),
        (50714, 3, 1, 0, True),
        (50717, 4, 1, 65535, True),
        (271, 2, 0, "Invented", True),
        (272, 2, 0, "Invented", True),
    ]
    tifffile.imwrite(path, mosaic, photometric=32803, extratags=tags, metadata=None)


def test_camera_raw_gives_the_colours_that_the_sensor_saw(tmp_path):
    linear = np.zeros((64, 96, 3), np.uint16)
    linear[:] = 20000, 30000, 12000
    linear[:, 48:] = 8000, 9000, 30000
    path = tmp_path / "shot.dng"
    camera_raw(path, linear)
    lab = read(path)
    wanted = linear_srgb_to_lab_d50(linear / 65535)
    for column in (20, 80):
        assert delta_e_2000(lab[32, column], wanted[32, column]) < 0.1
    assert "camera maker's figures" in read_picture_file(path).colour_trust.words


def test_a_missing_optional_package_is_named_with_what_to_do(tmp_path, monkeypatch):
    heif(tmp_path / "phone.heic")
    camera_raw(tmp_path / "shot.dng", np.full((64, 64, 3), 9000, np.uint16))
    monkeypatch.setitem(sys.modules, "pillow_heif", None)
    monkeypatch.setitem(sys.modules, "rawpy", None)
    with pytest.raises(PictureFileError, match=r"install framing-palette\[heic\]"):
        read_picture_file(tmp_path / "phone.heic")
    with pytest.raises(PictureFileError, match=r"install framing-palette\[raw\]"):
        read_picture_file(tmp_path / "shot.dng")


def claimed_size_png(path, width, height):
    def chunk(kind, data):
        return (
            struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        )

    header = struct.pack(">2I5B", width, height, 8, 2, 0, 0, 0)
    data = zlib.compress(bytes(100_000))
    path.write_bytes(
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", data) + chunk(b"IEND", b"")
    )


def test_a_decompression_bomb_is_refused_before_it_is_decoded(tmp_path):
    path = tmp_path / "bomb.png"
    claimed_size_png(path, 100_000, 100_000)
    with pytest.raises(PictureFileError, match="100000 x 100000 pixels, more than the 150 million"):
        read_picture_file(path)


def test_phone_and_camera_pictures_above_the_limit_are_refused(tmp_path, monkeypatch):
    heif(tmp_path / "phone.heic")
    camera_raw(tmp_path / "shot.dng", np.full((64, 64, 3), 9000, np.uint16))
    monkeypatch.setattr(limits, "MAX_PIXELS", 1000)
    for name in ("phone.heic", "shot.dng"):
        with pytest.raises(PictureFileError, match=f"{name} has .* pixels, more than"):
            read_picture_file(tmp_path / name)


def test_a_picture_without_pixels_is_refused(tmp_path):
    with pytest.raises(PictureFileError, match="has no pixels"):
        limits.refuse_too_many_pixels(tmp_path / "a.png", 0, 5, bytes_each=3)


def test_a_bomb_in_a_tiff_and_a_file_above_the_limit_are_refused(tmp_path, monkeypatch):
    path = tmp_path / "bomb.tif"
    tifffile.imwrite(path, BLOCKS, photometric="rgb", rowsperstrip=64)
    data = bytearray(path.read_bytes())
    at = data.index(struct.pack("<HHII", 256, 4, 1, 96))  # the tag ImageWidth
    data[at : at + 12] = struct.pack("<HHII", 256, 4, 1, 4_000_000)
    path.write_bytes(bytes(data))
    with pytest.raises(PictureFileError, match="4000000 x 64 pixels"):
        read_picture_file(path)
    monkeypatch.setattr(limits, "MAX_FILE_BYTES", 100)
    with pytest.raises(PictureFileError, match="more than the 0 MB"):
        read_picture_file(path)


@pytest.fixture(scope="module")
def good_files(tmp_path_factory):
    folder = tmp_path_factory.mktemp("good")
    for name in ("a.png", "a.jpg", "a.tif", "a.webp", "a.gif", "a.bmp", "a.avif"):
        Image.fromarray(BLOCKS).save(folder / name)
    heif(folder / "a.heic")
    return folder


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(data=st.data())
def test_a_damaged_file_is_read_or_refused_in_one_sentence_but_never_crashes(
    good_files, data, tmp_path
):
    source = data.draw(st.sampled_from(sorted(good_files.iterdir())))
    content = bytearray(source.read_bytes())
    for _ in range(data.draw(st.integers(0, 8))):
        content[data.draw(st.integers(0, len(content) - 1))] = data.draw(st.integers(0, 255))
    content = content[: data.draw(st.integers(1, len(content)))]
    path = tmp_path / source.name
    path.write_bytes(bytes(content))
    try:
        picture = read_picture_file(path)
    except PictureFileError as fault:
        assert str(fault).startswith(str(path))
        assert str(fault).endswith(".")
    else:
        assert np.isfinite(picture.lab_d50).all()


@given(st.integers(1, 8), st.integers(1, 5), st.integers(1, 5))
def test_turning_upright_keeps_every_sample(orientation, rows, columns):
    samples = np.arange(rows * columns * 3, dtype=np.float32).reshape(rows, columns, 3)
    turned = upright(samples, orientation)
    assert sorted(turned.ravel()) == sorted(samples.ravel())
    back = {6: 8, 8: 6}.get(orientation, orientation)
    assert np.array_equal(upright(turned, back), samples)
