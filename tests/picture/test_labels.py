"""The label of a written picture: what it says comes back, and nothing false is believed."""

import json
import struct
import zlib
from dataclasses import asdict, replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest
import tifffile
from hypothesis import given
from hypothesis import strategies as st

from framing_palette.colour.charts import chart_lab, chart_names
from framing_palette.picture import (
    ColourTrust,
    PatchError,
    Picture,
    TrustGrade,
    read_picture_file,
    write_picture_file,
)
from framing_palette.picture.label_files import LABEL_KEYWORD, LABEL_TAG, png_chunk
from framing_palette.picture.labels import (
    LABEL_SCHEMA,
    MOST_LABEL_BYTES,
    LabelFault,
    digest_of,
    label_text,
    read_label,
)
from framing_palette.picture.trust import GREY_WORDS, grade_of

ENDINGS = (".png", ".tif")


def chart_trust(errors: np.ndarray) -> ColourTrust:
    names, reference = chart_names(), chart_lab()
    mean, p95 = float(errors.mean()), float(np.percentile(errors, 95))
    patches = tuple(
        PatchError(
            names[place],
            tuple((reference[place] + error).tolist()),
            tuple(reference[place].tolist()),
            float(error),
        )
        for place, error in enumerate(errors)
    )
    words = f"Colours good to about {mean:.1f} ΔE00: invented for a test."
    return ColourTrust(
        "chart", grade_of(mean, p95), words, mean, p95, float(errors.max()), 0.25, patches
    )


@cache
def trusted() -> ColourTrust:
    return chart_trust(np.random.default_rng(8).uniform(2.0, 6.0, 24))


def picture(trust: ColourTrust, mm_per_px: float | None = 0.2, side: int = 40) -> Picture:
    rng = np.random.default_rng(side)
    lab = rng.uniform((20, -30, -30), (90, 30, 30), (side, side + 20, 3)).astype(np.float32)
    return Picture(lab, mm_per_px, trust, side + 20, side, notices=("The light is even.",))


def document(**changes: object) -> dict:
    found = json.loads(label_text(picture(trusted()), "0" * 32))
    return found | changes


def trust_with(**changes: object) -> dict:
    return document(colour_trust=document()["colour_trust"] | changes)


@pytest.mark.parametrize("ending", ENDINGS)
@pytest.mark.parametrize(
    "trust",
    [
        trusted(),
        ColourTrust("grey", TrustGrade.FAMILIES, GREY_WORDS),
        ColourTrust("assumed", TrustGrade.UNKNOWN, "Nothing tells."),
    ],
    ids=lambda trust: trust.method,
)
def test_a_written_picture_reads_back_with_the_same_trust_and_scale(
    tmp_path: Path, ending: str, trust: ColourTrust
) -> None:
    path = write_picture_file(tmp_path / f"picture{ending}", picture(trust))
    back = read_picture_file(path)
    assert back.colour_trust == trust
    assert back.mm_per_px == pytest.approx(0.2, rel=1e-12)
    assert back.notices == ("The light is even.",)


def test_a_picture_of_unknown_scale_stays_of_unknown_scale(tmp_path: Path) -> None:
    path = write_picture_file(tmp_path / "picture.png", picture(trusted(), None))
    assert read_picture_file(path).mm_per_px is None


@pytest.mark.parametrize("ending", ENDINGS)
def test_the_scale_follows_a_picture_that_is_read_smaller(tmp_path: Path, ending: str) -> None:
    path = write_picture_file(tmp_path / f"picture{ending}", picture(trusted(), 0.2, 80))
    half = read_picture_file(path, max_side=50)
    assert half.mm_per_px == pytest.approx(0.4)
    assert half.columns == 50


def test_a_scale_that_is_told_by_hand_goes_before_the_label(tmp_path: Path) -> None:
    path = write_picture_file(tmp_path / "picture.png", picture(trusted()))
    assert read_picture_file(path, mm_per_px=0.7).mm_per_px == pytest.approx(0.7)


@given(
    errors=st.lists(st.floats(0, 60), min_size=20, max_size=24),
    scale=st.none() | st.floats(1e-3, 50),
)
def test_every_label_that_is_written_is_believed_when_read(
    errors: list[float], scale: float | None
) -> None:
    given_picture = picture(chart_trust(np.array(errors)), scale)
    label = read_label(label_text(given_picture, "ab" * 16).encode())
    assert label.colour_trust == given_picture.colour_trust
    assert label.mm_per_px == scale
    assert asdict(label)["digest"] == "ab" * 16


@given(st.binary(max_size=300) | st.text(max_size=300).map(str.encode))
def test_no_bytes_whatever_do_more_than_being_refused(content: bytes) -> None:
    with pytest.raises(LabelFault):
        read_label(content)


@given(st.data())
def test_no_value_in_any_place_does_more_than_being_refused(data: st.DataObject) -> None:
    plain = st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5)
    value = data.draw(plain | st.lists(plain, max_size=4) | st.dictionaries(st.text(), plain))
    found = document()
    where = data.draw(
        st.sampled_from([found, found["colour_trust"], *found["colour_trust"]["patches"]])
    )
    where[data.draw(st.sampled_from(sorted(where)))] = value
    try:
        label = read_label(json.dumps(found).encode())
    except LabelFault:
        return
    trust = label.colour_trust
    assert trust.grade is grade_of(trust.mean_delta_e or 0, trust.p95_delta_e or 0)


@pytest.mark.parametrize(
    ("found", "said"),
    [
        (document(schema="framing-palette/label@2"), "not of the form"),
        (document(mm_per_px=0), "zero"),
        (document(mm_per_px=-1), "mm_per_px"),
        (document(mm_per_px=True), "mm_per_px"),
        (document(mm_per_px="0.2"), "mm_per_px"),
        (document(colour_trust=None), "no colour_trust"),
        (document(notices="all is well"), "no short list"),
        (document(notices=["one\ntwo"]), "plain words"),
        (document(notices=["one"] * 21), "no short list"),
        (document(digest=None), "digest"),
        (trust_with(method="certified"), "unknown method"),
        (trust_with(grade="perfect"), "unknown grade"),
        (trust_with(grade="whites"), "do not bear out"),
        (trust_with(mean_delta_e=0.1), "not those of its patches"),
        (trust_with(mean_delta_e=None), "mean_delta_e"),
        (trust_with(words="x" * 1001), "plain words"),
        (trust_with(clipped_share=1.5), "clipped_share"),
        (trust_with(patches=[]), "without a chart"),
        (trust_with(patches=[{}] * 25), "no list of a chart"),
        (trust_with(patches=[{"name": "ultraviolet"}]), "the chart does not have"),
        (trust_with(patches=[{"name": chart_names()[0], "measured_lab": [1, 2]}]), "three"),
        (trust_with(method="grey"), "without a chart"),
        (trust_with(method="assumed", patches=[], mean_delta_e=None), "more about its colours"),
    ],
)
def test_a_label_that_is_wrong_is_refused_saying_where(found: dict, said: str) -> None:
    with pytest.raises(LabelFault, match=said):
        read_label(json.dumps(found).encode())


@pytest.mark.parametrize("number", ["NaN", "Infinity", "-Infinity", "1e999"])
def test_numbers_that_are_none_are_refused(number: str) -> None:
    text = json.dumps(document(mm_per_px=0.5)).replace('"mm_per_px": 0.5', f'"mm_per_px": {number}')
    with pytest.raises(LabelFault):
        read_label(text.encode())


def test_the_digest_is_that_of_values_shape_and_profile_in_any_byte_order() -> None:
    samples = np.arange(24, dtype=np.uint16).reshape(2, 4, 3)
    digest = digest_of(samples, b"profile")
    assert digest_of(samples.astype(">u2"), b"profile") == digest
    assert digest_of(samples[:, ::-1][:, ::-1], b"profile") == digest
    others = [
        digest_of(samples.reshape(4, 2, 3), b"profile"),
        digest_of(samples, b"another"),
        digest_of(samples.astype(np.uint8), b"profile"),
        digest_of(samples + 1, b"profile"),
    ]
    assert digest not in others


def check_is_left_out(path: Path, said: str) -> None:
    back = read_picture_file(path)
    assert back.mm_per_px is None
    assert back.colour_trust.grade is TrustGrade.UNKNOWN
    assert len(back.notices) == 1
    assert said in back.notices[0]
    assert path.name in back.notices[0]


def relabelled(path: Path, text: bytes) -> Path:
    """Put another label into a PNG of ours, with a true checksum."""
    content = path.read_bytes()
    start = content.index(b"iTXt") - 4
    end = start + 12 + int.from_bytes(content[start : start + 4], "big")
    body = LABEL_KEYWORD.encode() + bytes(5) + text
    path.write_bytes(content[:start] + png_chunk(b"iTXt", body) + content[end:])
    return path


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (b"", "is not JSON"),
        (b"{", "is not JSON"),
        (b"[" * 60_000, "is not JSON"),
        (b"\xff\xfe", "is not JSON"),
        (b" " * (MOST_LABEL_BYTES + 1), "more than"),
        (json.dumps({"schema": LABEL_SCHEMA}).encode(), "digest"),
    ],
)
def test_a_damaged_label_is_said_and_the_picture_still_read(
    tmp_path: Path, text: bytes, said: str
) -> None:
    path = write_picture_file(tmp_path / "picture.png", picture(trusted()))
    relabelled(path, text)
    if text:
        check_is_left_out(path, said)
    else:
        assert read_picture_file(path).notices == ()


def test_a_label_on_other_pixels_is_not_believed(tmp_path: Path) -> None:
    first = write_picture_file(tmp_path / "first.tif", picture(trusted()))
    with tifffile.TiffFile(first) as file:
        page = file.pages[0]
        samples, label, profile = page.asarray(), page.tags[LABEL_TAG].value, page.iccprofile
    samples[0, 0, 0] ^= 1
    other = tmp_path / "other.tif"
    tifffile.imwrite(
        other,
        samples,
        photometric="rgb",
        iccprofile=profile,
        extratags=[(LABEL_TAG, "s", len(label) + 1, label, True)],
    )
    check_is_left_out(other, "changed since")


def test_a_tag_of_another_kind_in_our_place_is_said(tmp_path: Path) -> None:
    path = tmp_path / "other.tif"
    tifffile.imwrite(
        path,
        np.zeros((8, 8, 3), np.uint16),
        photometric="rgb",
        extratags=[(LABEL_TAG, "I", 1, 4_000_000_000, True)],
    )
    check_is_left_out(path, "is not JSON")


def test_text_of_other_programs_is_passed_over(tmp_path: Path) -> None:
    path = write_picture_file(tmp_path / "picture.png", picture(trusted()))
    content = path.read_bytes()
    foreign = png_chunk(b"iTXt", b"Comment" + bytes(5) + b"hello") + png_chunk(b"tEXt", b"a\x00b")
    path.write_bytes(content[:33] + foreign + content[33:])
    assert read_picture_file(path).colour_trust == trusted()


def test_the_label_is_a_chunk_that_any_reader_of_png_understands(tmp_path: Path) -> None:
    from PIL import Image

    path = write_picture_file(tmp_path / "picture.png", picture(trusted()))
    with Image.open(path) as image:
        image.load()
        found = json.loads(image.info[LABEL_KEYWORD])
    assert found["schema"] == LABEL_SCHEMA
    content = path.read_bytes()
    place = content.index(b"iTXt")
    (length,) = struct.unpack(">I", content[place - 4 : place])
    told = struct.unpack(">I", content[place + 4 + length : place + 8 + length])[0]
    assert told == zlib.crc32(content[place : place + 4 + length])


def test_the_same_picture_gives_the_same_file_to_the_last_byte(tmp_path: Path) -> None:
    from framing_palette.picture.picture_files import wide_profile

    first = write_picture_file(tmp_path / "first.png", picture(trusted())).read_bytes()
    wide_profile.cache_clear()
    assert write_picture_file(tmp_path / "second.png", picture(trusted())).read_bytes() == first


def test_a_pictures_further_notices_are_left_out_of_its_label() -> None:
    many = replace(picture(trusted()), notices=tuple(f"Notice {n}." for n in range(30)))
    assert len(read_label(label_text(many, "0" * 32).encode()).notices) == 20
