"""More pictures for the second set of planted cases: painted scenes, and parts of photographs."""

from collections.abc import Callable
from functools import cache

import cv2
import numpy as np

from framing_palette.colour import lab_d50_to_srgb, srgb_u8_to_lab_d50
from framing_palette.picture import Findings, read_findings
from tests.judgement.pictures import (
    FOCUS,
    Box,
    Image,
    blob,
    box,
    frame_line,
    ground,
    mosaic,
    photograph,
    picture_of,
)
from tests.ranking.by_hand import lch

MIDDLE: Box = (0.25, 0.2, 0.75, 0.8)


def _lighthouse(rng):
    image = ground(rng, lch(63, 8, 245))
    image = blob(rng, image, lch(46, 12, 225), (0.5, 0.95, 0.7, 0.28))
    image = blob(rng, image, lch(84, 4, 90), (0.55, 0.5, 0.05, 0.28))
    return blob(rng, image, lch(40, 46, 30), (0.55, 0.24, 0.045, 0.05)), (0.4, 0.1, 0.7, 0.8)


def _raincoat(rng):
    image = ground(rng, lch(48, 3, 250))
    image = blob(rng, image, lch(28, 3, 260), (0.5, 0.95, 0.8, 0.25))
    return blob(rng, image, lch(72, 62, 84), (0.42, 0.58, 0.04, 0.09)), (0.3, 0.35, 0.6, 0.8)


def _blue_door(rng):
    image = ground(rng, lch(82, 13, 80))
    image = blob(rng, image, lch(66, 20, 62), (0.5, 0.98, 0.8, 0.16))
    return blob(rng, image, lch(36, 36, 272), (0.5, 0.62, 0.06, 0.16), soft=1), (0.3, 0.3, 0.7, 0.9)


def _poppies(rng):
    leaves = (lch(48, 26, 122), lch(62, 26, 108), lch(36, 20, 130))
    image = mosaic(rng, leaves, (0.4, 0.1, 0.2), size=5)
    for _ in range(7):
        place = (*rng.uniform(0.15, 0.85, 2), 0.022, 0.03)
        image = blob(rng, image, lch(46, 66, 36), place, soft=1)
    return image, MIDDLE


def _woodland(rng):
    leaves = (lch(38, 20, 150), lch(52, 22, 135), lch(25, 10, 150), lch(34, 16, 60))
    return mosaic(rng, leaves, (0.5, 0.3, 0.3, 0.1), size=7), MIDDLE


def _ferns(rng):
    leaves = (lch(46, 38, 122), lch(60, 42, 112), lch(30, 26, 130), lch(22, 8, 90))
    return mosaic(rng, leaves, (0.4, 0.1, 0.4, 0.2), size=5), MIDDLE


def _olive_grove(rng):
    leaves = (lch(50, 16, 112), lch(64, 12, 105), lch(36, 14, 85), lch(74, 14, 88))
    return mosaic(rng, leaves, (0.4, 0.3, 0.2, 0.1), size=8), MIDDLE


def _kitten(rng):
    image = ground(rng, lch(82, 5, 85), grain=0.5)
    image = blob(rng, image, lch(70, 4, 70), (0.5, 0.54, 0.26, 0.28), soft=8, grain=0.8)
    return frame_line(rng, image, lch(34, 44, 24), off=0.05), MIDDLE


def _dove(rng):
    image = ground(rng, lch(76, 5, 250), grain=0.5)
    image = blob(rng, image, lch(86, 3, 80), (0.5, 0.5, 0.24, 0.22), soft=8, grain=0.8)
    return frame_line(rng, image, lch(44, 28, 150), off=0.05), MIDDLE


def _cradle(rng):
    image = ground(rng, lch(80, 9, 60), grain=0.5)
    image = blob(rng, image, lch(74, 15, 42), (0.5, 0.5, 0.22, 0.24), soft=8, grain=0.8)
    return frame_line(rng, image, lch(38, 26, 215), off=0.05), MIDDLE


def _etching(rng):
    image = ground(rng, lch(83, 20, 84), grain=0.8)
    for _ in range(9):
        place = (*rng.uniform(0.25, 0.75, 2), 0.03, rng.uniform(0.03, 0.12))
        image = blob(rng, image, lch(20, 4, 70), place, soft=1)
    return image, (0.2, 0.2, 0.8, 0.8)


def _old_letter(rng):
    image = ground(rng, lch(76, 24, 78), grain=1.0)
    for line in range(6):
        image = blob(rng, image, lch(34, 14, 55), (0.5, 0.2 + 0.11 * line, 0.3, 0.015), soft=1)
    return image, (0.2, 0.15, 0.8, 0.85)


def _pen_on_white(rng):
    image = ground(rng, lch(94, 2, 100), grain=0.4)
    for _ in range(9):
        place = (*rng.uniform(0.25, 0.75, 2), 0.03, rng.uniform(0.03, 0.12))
        image = blob(rng, image, lch(22, 2, 270), place, soft=1)
    return image, (0.2, 0.2, 0.8, 0.8)


def _harbour_wash(rng):
    """A cool watercolour: blue and grey washes on a white sheet."""
    image = ground(rng, lch(91, 4, 250), grain=0.6)
    image = blob(rng, image, lch(68, 18, 250), (0.5, 0.8, 0.6, 0.2), soft=6)
    return blob(rng, image, lch(46, 24, 262), (0.45, 0.5, 0.16, 0.14)), (0.25, 0.3, 0.7, 0.75)


def _desert(rng):
    """Warm land under a large pale sky that is hardly cool."""
    image = ground(rng, lch(86, 5, 235), grain=0.6)
    image = blob(rng, image, lch(60, 34, 62), (0.5, 1.0, 0.9, 0.36))
    return blob(rng, image, lch(42, 40, 48), (0.45, 0.74, 0.2, 0.14)), (0.2, 0.5, 0.75, 0.95)


def _harvest(rng):
    image = ground(rng, lch(88, 4, 220), grain=0.6)
    image = blob(rng, image, lch(68, 42, 80), (0.5, 1.0, 0.9, 0.42))
    return blob(rng, image, lch(36, 24, 60), (0.6, 0.62, 0.12, 0.12)), (0.4, 0.4, 0.8, 0.9)


def _winter_barn(rng):
    image = ground(rng, lch(90, 4, 255), grain=0.6)
    image = blob(rng, image, lch(40, 42, 32), (0.55, 0.5, 0.16, 0.18))
    return blob(rng, image, lch(50, 6, 260), (0.2, 0.5, 0.1, 0.26)), (0.35, 0.3, 0.75, 0.7)


def _sitter(rng):
    """A portrait out of the dark: brown shadows, a lit face."""
    image = ground(rng, lch(18, 9, 62))
    image = blob(rng, image, lch(30, 22, 40), (0.5, 0.95, 0.34, 0.36), soft=5)
    return blob(rng, image, lch(68, 24, 58), (0.5, 0.4, 0.11, 0.17), soft=5), (
        0.35,
        0.2,
        0.65,
        0.65,
    )


def _tulips(rng):
    image = ground(rng, lch(42, 14, 145))
    for x in (0.3, 0.45, 0.6, 0.72):
        image = blob(rng, image, lch(43, 56, 27), (x, 0.45, 0.06, 0.1))
    return image, (0.2, 0.3, 0.8, 0.65)


def _brick_alley(rng):
    image = mosaic(
        rng, (lch(44, 30, 44), lch(52, 26, 52), lch(34, 20, 40)), (0.4, 0.1, 0.2), size=4
    )
    return blob(rng, image, lch(64, 6, 240), (0.5, 0.1, 0.3, 0.16)), (0.25, 0.3, 0.75, 0.8)


def _teal_bay(rng):
    image = ground(rng, lch(52, 28, 212))
    image = blob(rng, image, lch(74, 16, 205), (0.5, 0.15, 0.7, 0.2))
    return blob(rng, image, lch(58, 40, 55), (0.5, 0.56, 0.14, 0.12)), (0.3, 0.4, 0.7, 0.75)


SCENES: dict[str, Callable] = {
    "lighthouse": _lighthouse,
    "raincoat": _raincoat,
    "blue door": _blue_door,
    "poppies": _poppies,
    "woodland": _woodland,
    "ferns": _ferns,
    "olive grove": _olive_grove,
    "kitten": _kitten,
    "dove": _dove,
    "cradle": _cradle,
    "etching": _etching,
    "old letter": _old_letter,
    "pen on white": _pen_on_white,
    "harbour wash": _harbour_wash,
    "desert": _desert,
    "harvest": _harvest,
    "winter barn": _winter_barn,
    "sitter": _sitter,
    "tulips": _tulips,
    "brick alley": _brick_alley,
    "teal bay": _teal_bay,
}
PARTS: dict[str, tuple[str, Box, Box]] = {  # photograph, the part of it, the focus within the part
    "flag and suit": ("astronaut", (0.0, 0.35, 0.55, 1.0), (0.3, 0.1, 0.9, 0.8)),
    "roof edge": ("temple", (0.05, 0.0, 0.6, 0.55), (0.2, 0.2, 0.8, 0.9)),
    "leaves behind": ("flower", (0.0, 0.0, 0.45, 1.0), (0.3, 0.2, 0.8, 0.7)),
    "cup": ("coffee", (0.25, 0.1, 0.85, 0.9), (0.2, 0.2, 0.8, 0.8)),
    "whiskers": ("cat", (0.3, 0.25, 0.9, 0.95), (0.2, 0.2, 0.8, 0.8)),
}


@cache
def second_reading(name: str) -> Findings:
    """The findings of a painted scene, or of a part of a photograph, by its name."""
    if name.startswith("turned "):
        whole = name.removeprefix("turned ")
        return read_findings(picture_of(_turned(photograph(whole))), (box(*FOCUS[whole]),))
    if name in PARTS:
        whole, part, focus = PARTS[name]
        return read_findings(picture_of(_cut(photograph(whole), part)), (box(*focus),))
    if name == "photograph on aged paper":
        return read_findings(picture_of(_on_aged_paper(photograph("cameraman"))), (box(*MIDDLE),))
    if name == "cool print":
        return read_findings(picture_of(_cooled(photograph("coins"))), (box(*MIDDLE),))
    lab, focus = SCENES[name](np.random.default_rng(sum(map(ord, name))))
    return read_findings(picture_of(_srgb(lab)), (box(*focus),))


def _srgb(lab: Image) -> Image:
    return (np.asarray(lab_d50_to_srgb(lab)) * 255 + 0.5).astype(np.uint8)


def _cut(image: Image, part: Box) -> Image:
    rows, columns = image.shape[:2]
    x0, y0, x1, y1 = part
    cut = image[round(y0 * rows) : round(y1 * rows), round(x0 * columns) : round(x1 * columns)]
    return cv2.resize(np.ascontiguousarray(cut), (280, round(280 * cut.shape[0] / cut.shape[1])))


def _turned(image: Image) -> Image:
    """The photograph with every hue turned by 140 degrees: the same light, other colours."""
    lab = np.asarray(srgb_u8_to_lab_d50(image), np.float32)
    a, b = lab[..., 1].copy(), lab[..., 2].copy()
    cosine, sine = np.cos(np.radians(140)), np.sin(np.radians(140))
    lab[..., 1], lab[..., 2] = cosine * a - sine * b, sine * a + cosine * b
    return _srgb(lab)


def _on_aged_paper(image: Image) -> Image:
    """A black-and-white photograph pasted on a yellowed sheet."""
    lab = np.asarray(srgb_u8_to_lab_d50(cv2.resize(image, (200, 200))), np.float32)
    sheet = np.zeros((280, 280, 3), np.float32) + np.float32(lch(84, 18, 82))
    lab[..., 1:] += np.float32(lch(0, 7, 75)[1:]) * (lab[..., :1] / 100)
    sheet[40:240, 40:240] = lab
    return _srgb(sheet)


def _cooled(image: Image) -> Image:
    lab = np.asarray(srgb_u8_to_lab_d50(image), np.float32)
    lab[..., 1:] += np.float32([-1.0, -5.0]) * (0.4 + 0.6 * lab[..., :1] / 100)
    return _srgb(lab)
