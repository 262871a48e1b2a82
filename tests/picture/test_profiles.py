"""ICC profiles of every kind, through LittleCMS to CIELAB D50."""

import io
import struct

import numpy as np
import pytest
import tifffile
from PIL import Image

from framing_palette.colour import delta_e_2000, srgb_u8_to_lab_d50
from framing_palette.errors import PictureFileError
from framing_palette.picture import read_picture_file
from framing_palette.picture.photographs import Ink
from framing_palette.picture.profiles import ProfileFault, checked_space, profile_name

D65, D50 = (0.3127, 0.3290), (0.3457, 0.3585)
ADOBE_PRIMARIES = (0.64, 0.33, 0.21, 0.71, 0.15, 0.06)
RNG = np.random.default_rng(3)
BLOCKS = np.kron(RNG.integers(0, 65536, (4, 6, 3)), np.ones((8, 8, 1))).astype(np.uint16)


def rgb_profile(primaries, gamma):
    import imagecodecs

    return imagecodecs.cms_profile("rgb", whitepoint=D65, primaries=primaries, gamma=gamma)


def grey_profile(gamma):
    import imagecodecs

    return imagecodecs.cms_profile("gray", whitepoint=D50, gamma=gamma)


def lab_by_definition(rgb, primaries, gamma):
    """CIELAB D50 from the definition of an RGB space: primaries, white D65, Bradford.

    Bradford matrix: ICC.1:2022, annex E.
    """
    xy = np.array([*zip(primaries[::2], primaries[1::2], strict=True)])
    columns = np.stack([xy[:, 0], xy[:, 1], 1 - xy.sum(axis=1)]) / xy[:, 1]
    white = np.array([D65[0], D65[1], 1 - sum(D65)]) / D65[1]
    to_xyz = columns * np.linalg.solve(columns, white)
    bradford = np.array(
        [[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]]
    )
    white_50 = np.array([0.9642, 1.0, 0.8249])
    gain = (bradford @ white_50) / (bradford @ white)
    adapt = np.linalg.solve(bradford, gain[:, None] * bradford)
    ratio = ((rgb**gamma) @ (adapt @ to_xyz).T) / white_50
    f = np.where(ratio > 216 / 24389, np.cbrt(ratio), (24389 / 27 * ratio + 16) / 116)
    return np.stack(
        [116 * f[..., 1] - 16, 500 * (f[..., 0] - f[..., 1]), 200 * (f[..., 1] - f[..., 2])], -1
    )


def cmyk_profile():
    """A printing profile whose 16 full-ink corners are given, ICC.1:2022 lut16Type (mft2)."""
    corners = np.zeros((2, 2, 2, 2, 3))
    for c, m, y, k in np.ndindex(2, 2, 2, 2):
        lightness = 96 * (1 - 0.4 * c) * (1 - 0.5 * m) * (1 - 0.08 * y) * (1 - 0.9 * k)
        left = 1 - 0.9 * k
        corners[c, m, y, k] = (
            lightness,
            left * (-36 * c + 72 * m - 4 * y),
            left * (-48 * c - 4 * m + 88 * y),
        )
    encoded = np.empty_like(corners)
    encoded[..., 0] = corners[..., 0] / 100 * 0xFF00
    encoded[..., 1:] = (corners[..., 1:] + 128) * 256
    table = struct.pack(">2H", 0, 65535)
    lut = b"mft2" + bytes(4) + bytes([4, 3, 2, 0])
    lut += struct.pack(">9i", *(65536 * np.eye(3, dtype=int)).ravel())
    lut += struct.pack(">2H", 2, 2) + table * 4
    lut += np.round(encoded).astype(">u2").tobytes() + table * 3
    name = b"Invented press\0"
    desc = b"desc" + bytes(4) + struct.pack(">I", len(name)) + name + bytes(78)
    white = b"XYZ " + bytes(4) + struct.pack(">3i", 63190, 65536, 54061)
    rights = b"text" + bytes(4) + b"Invented for a test.\0"
    tags = [(b"desc", desc), (b"cprt", rights), (b"wtpt", white), (b"A2B0", lut)]
    start = 128 + 4 + 12 * len(tags)
    entries, body = b"", b""
    for signature, data in tags:
        padded = data + bytes(-len(data) % 4)
        entries += signature + struct.pack(">2I", start + len(body), len(padded))
        body += padded
    header = struct.pack(
        ">I4sI4s4s4s", start + len(body), b"none", 0x02400000, b"prtr", b"CMYK", b"Lab "
    )
    header += struct.pack(">6H", 2026, 1, 1, 0, 0, 0) + b"acsp" + bytes(28)
    header += struct.pack(">3i", 63190, 65536, 54061) + bytes(48)
    return header + struct.pack(">I", len(tags)) + entries + body, corners


def test_a_wide_gamut_picture_in_16_bits_keeps_its_colours(tmp_path):
    profile = rgb_profile(ADOBE_PRIMARIES, 563 / 256)
    path = tmp_path / "wide.tif"
    tifffile.imwrite(path, BLOCKS, photometric="rgb", iccprofile=profile)
    picture = read_picture_file(path)
    wanted = lab_by_definition(BLOCKS / 65535, ADOBE_PRIMARIES, 563 / 256)
    assert delta_e_2000(picture.lab_d50, wanted).max() < 0.05
    assert picture.colour_trust.method == "profile"


def test_a_saturated_green_outside_srgb_is_not_cut_to_it(tmp_path):
    green = np.zeros((8, 8, 3), np.uint8)
    green[..., 1] = 255
    path = tmp_path / "green.png"
    Image.fromarray(green).save(path, icc_profile=rgb_profile(ADOBE_PRIMARIES, 2.2))
    chroma = np.hypot(*read_picture_file(path).lab_d50[4, 4, 1:])
    srgb_chroma = np.hypot(*srgb_u8_to_lab_d50(green)[4, 4, 1:])
    assert chroma > srgb_chroma + 20


def test_an_8_bit_jpeg_follows_its_profile_too(tmp_path):
    grey = np.full((64, 64, 3), 100, np.uint8)
    path = tmp_path / "steep.jpg"
    Image.fromarray(grey).save(path, icc_profile=rgb_profile(ADOBE_PRIMARIES, 3.0), quality=100)
    wanted = lab_by_definition(np.array([100 / 255] * 3), ADOBE_PRIMARIES, 3.0)
    assert delta_e_2000(read_picture_file(path).lab_d50, wanted).max() < 0.1


def test_steps_finer_than_eight_bits_survive_the_profile(tmp_path):
    ramp = np.broadcast_to(np.arange(20000, 20064, dtype=np.uint16)[None, :, None], (4, 64, 3))
    path = tmp_path / "ramp.tif"
    tifffile.imwrite(
        path, ramp.copy(), photometric="rgb", iccprofile=rgb_profile(ADOBE_PRIMARIES, 2.2)
    )
    assert (np.diff(read_picture_file(path).lab_d50[0, :, 0]) > 0).all()


def test_a_grey_picture_follows_its_grey_profile(tmp_path):
    path = tmp_path / "grey.png"
    Image.fromarray(np.full((8, 8), 128, np.uint8)).save(path, icc_profile=grey_profile(1.8))
    luminance = (128 / 255) ** 1.8
    wanted = 116 * np.cbrt(luminance) - 16
    lab = read_picture_file(path).lab_d50
    assert np.abs(lab - [wanted, 0, 0]).max() < 0.05


def test_a_grey_picture_with_an_rgb_profile_is_taken_as_equal_channels(tmp_path):
    path = tmp_path / "grey.png"
    profile = rgb_profile(ADOBE_PRIMARIES, 2.2)
    Image.fromarray(np.full((8, 8), 128, np.uint8)).save(path, icc_profile=profile)
    wanted = lab_by_definition(np.full(3, 128 / 255), ADOBE_PRIMARIES, 2.2)
    assert delta_e_2000(read_picture_file(path).lab_d50, wanted).max() < 0.05


@pytest.mark.parametrize("suffix", ["tif", "jpg"])
def test_cmyk_follows_its_printing_profile_at_every_overprint_of_full_inks(tmp_path, suffix):
    profile, corners = cmyk_profile()
    inks = np.array(list(np.ndindex(2, 2, 2, 2)))
    pixels = np.kron((inks * 255).reshape(4, 4, 4), np.ones((16, 16, 1))).astype(np.uint8)
    path = tmp_path / f"press.{suffix}"
    options = {"quality": 100, "subsampling": 0} if suffix == "jpg" else {}
    Image.fromarray(pixels, mode="CMYK").save(path, icc_profile=profile, **options)
    lab = read_picture_file(path).lab_d50[8::16, 8::16].reshape(-1, 3)
    wanted = np.stack([corners[tuple(ink)] for ink in inks])
    assert delta_e_2000(lab, wanted).max() < (0.1 if suffix == "tif" else 1.0)


def test_cmyk_without_a_profile_is_read_and_said_to_be_a_guess(tmp_path):
    path = tmp_path / "press.tif"
    Image.fromarray(np.zeros((8, 8, 4), np.uint8), mode="CMYK").save(path)
    picture = read_picture_file(path)
    assert np.abs(picture.lab_d50 - [100, 0, 0]).max() < 0.01  # no ink is white paper
    assert "rough guess" in picture.colour_trust.words


@pytest.mark.parametrize(
    ("spoil", "said"),
    [
        (lambda p: p[:60], "broken"),
        (lambda p: p[:200], "cut short"),
        (lambda p: p[:36] + b"xxxx" + p[40:], "broken"),
        (lambda p: p[:12] + b"link" + p[16:], "class that is not meant for pictures"),
        (lambda p: p[:16] + b"HSV " + p[20:], "colour space that pictures seldom use"),
        (lambda p: p[:128] + b"\xff" * (len(p) - 128), "broken"),
    ],
)
def test_a_broken_or_unfit_profile_is_refused_in_one_sentence(tmp_path, spoil, said):
    profile = spoil(rgb_profile(ADOBE_PRIMARIES, 2.2))
    path = tmp_path / "odd.tif"
    tifffile.imwrite(path, BLOCKS, photometric="rgb", iccprofile=profile)
    with pytest.raises(PictureFileError, match=said) as caught:
        read_picture_file(path)
    assert "odd.tif" in str(caught.value)
    assert str(caught.value).endswith("assumed.")


def test_a_profile_for_other_channels_than_the_pixels_is_refused(tmp_path):
    path = tmp_path / "mixed.tif"
    tifffile.imwrite(path, BLOCKS, photometric="rgb", iccprofile=cmyk_profile()[0])
    with pytest.raises(
        PictureFileError, match="rgb pixels but an embedded colour profile for cmyk"
    ):
        read_picture_file(path)


def test_the_trust_names_the_profile(tmp_path):
    stream = io.BytesIO(cmyk_profile()[0]).getvalue()
    assert profile_name(stream) == "Invented press"
    assert profile_name(b"nothing") == "unnamed"
    assert checked_space(stream) is Ink.CMYK
    with pytest.raises(ProfileFault):
        checked_space(b"")
