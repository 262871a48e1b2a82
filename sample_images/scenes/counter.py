"""A picture on the shop counter, photographed at an angle under one warm lamp.

Beside it lie a 24-patch colour chart and a grey card; `photograph` returns the
picture together with the truth about everything in it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import cv2
import numpy as np

from sample_images.materials import spectral
from sample_images.materials.noise import Field, fractal, grain, smoothstep
from sample_images.materials.pigment import Image, ramp, to_linear, to_srgb
from sample_images.scenes.counter_set import (
    BALANCE_K,
    HEIGHT_PX,
    LAMP_K,
    LAMP_MM,
    WIDTH_PX,
    Card,
    Points,
    lamp_share,
    projected,
    projection,
    things,
)
from sample_images.scenes.counter_truth import truth

if TYPE_CHECKING:
    from numpy.typing import NDArray


def photograph(
    art_srgb: NDArray[np.uint8], art_mm: tuple[float, float], scale: float, seed: int
) -> tuple[NDArray[np.uint8], dict[str, Any]]:
    """The photograph at `scale` of its full size, and its truth."""
    rng = np.random.default_rng(seed)
    device = spectral.camera(BALANCE_K, 0.72)
    lamp = spectral.planck(LAMP_K)
    paint = device.response(lamp, spectral.painted_basis())
    view = projection(scale)
    shape = (round(HEIGHT_PX * scale), round(WIDTH_PX * scale))
    cards = things(art_srgb, art_mm, device, lamp, paint)
    linear = _counter_top(shape, view, paint, rng)
    for card in cards:
        linear = _shadowed(linear, card, view)
    for card in cards:
        linear = _laid(linear, card, view)
    fall = _illuminance(shape, view) * _vignette(shape)
    exposure = 0.88 / float((linear * (fall * _covered(shape, cards, view))[..., None]).max())
    seen = cv2.GaussianBlur(linear * (fall * exposure)[..., None], (0, 0), max(0.3, 0.85 * scale))
    return _read_out(seen, rng), truth(cards, view, scale, exposure, device)


def _counter_places(shape: tuple[int, int], view: Points) -> tuple[Field, Field]:
    """Millimetres on the counter under each pixel."""
    back = np.linalg.inv(view[:, [0, 1, 3]])
    rows, columns = np.mgrid[0 : shape[0], 0 : shape[1]].astype(np.float32)
    depth = back[2, 0] * columns + back[2, 1] * rows + back[2, 2]
    x = (back[0, 0] * columns + back[0, 1] * rows + back[0, 2]) / depth
    y = (back[1, 0] * columns + back[1, 1] * rows + back[1, 2]) / depth
    return x.astype(np.float32), y.astype(np.float32)


def _counter_top(
    shape: tuple[int, int], view: Points, paint: Points, rng: np.random.Generator
) -> Image:
    """Oiled boards with growth rings, pores and seams."""
    x, y = _counter_places(shape, view)
    board = np.floor((y + 300) / 145).astype(int)
    shift = rng.uniform(0, 4000, 40).astype(np.float32)[np.clip(board, 0, 39)]
    flow = fractal((600, 900), rng, cell=160, octaves=4, stretch=3)
    pores = fractal((900, 900), rng, cell=6, octaves=2, stretch=26)
    at = (((y * 2).astype(int)) % 600, ((x * 0.5 + shift).astype(int)) % 900)
    rings = np.sin((y + 26 * cv2.GaussianBlur(flow[at], (0, 0), 2.0)) * 0.42 + shift)
    fine = pores[((y * 6).astype(int)) % 900, ((x + shift).astype(int)) % 900]
    tone = 0.32 * rings + 0.20 * fine + 0.55 * np.sin(shift)
    wood = ramp(tone, [(-1.6, "4b3424"), (0.0, "6a4a31"), (1.6, "8a6544")])
    seam = np.abs((y + 300) / 145 - np.round((y + 300) / 145)) * 145
    wood = wood * (0.35 + 0.65 * smoothstep(0.3, 1.2, seam))[..., None]
    return (to_linear(wood) @ paint.astype(np.float32)).astype(np.float32)


def _shadowed(linear: Image, card: Card, view: Points) -> Image:
    """A soft shadow that the card's thickness throws away from the lamp."""
    corners = card.corners()
    lift = max(card.lift_mm, 1.0)
    away = (corners - LAMP_MM)[:, :2] / LAMP_MM[2] * lift * 1.8
    foot = np.column_stack([corners[:, :2] + away, np.zeros(4)])
    mask = np.zeros(linear.shape[:2], np.uint8)
    hull = cv2.convexHull(
        np.vstack([projected(view, foot), projected(view, corners * (1, 1, 0))]).astype(np.float32)
    )
    cv2.fillConvexPoly(mask, np.round(hull * 16).astype(np.int32), 255, cv2.LINE_AA, 4)
    soft = cv2.GaussianBlur(mask, (0, 0), max(0.6, 3.2 * linear.shape[1] / WIDTH_PX))
    return linear * (1 - 0.62 * soft.astype(np.float32) / 255)[..., None]


def _laid(linear: Image, card: Card, view: Points) -> Image:
    """The card's surface and its near edge, seen in perspective."""
    shape = linear.shape[:2]
    top = projected(view, card.corners())
    rows, columns = card.surface.shape[:2]
    source = np.array([(0, 0), (columns, 0), (columns, rows), (0, rows)], np.float32) - 0.5
    zoom = np.hypot(*(top[1] - top[0])) / columns
    surface = card.surface
    if zoom < 1:
        surface = cv2.GaussianBlur(surface, (0, 0), max(0.3, 0.45 / zoom))
    matrix = cv2.getPerspectiveTransform(source, top.astype(np.float32))
    flags = cv2.INTER_LINEAR
    seen = cv2.warpPerspective(
        surface, matrix, shape[::-1], flags=flags, borderMode=cv2.BORDER_REPLICATE
    )
    below = projected(view, card.corners() * (1, 1, 0))
    side = np.array([top[3], top[2], below[2], below[3]])
    edge = _polygon(shape, side)[..., None]
    tone = surface.mean(axis=(0, 1)) * 0.35 + surface.max() * 0.18
    linear = linear * (1 - edge) + tone * edge
    cover = _polygon(shape, top)[..., None]
    return linear * (1 - cover) + seen * cover


def _polygon(shape: tuple[int, int], corners: Points) -> Field:
    mask = np.zeros(shape, np.uint8)
    cv2.fillPoly(mask, [np.round(corners * 16).astype(np.int32)], 255, cv2.LINE_AA, 4)
    return mask.astype(np.float32) / 255


def _illuminance(shape: tuple[int, int], view: Points) -> Field:
    return lamp_share(*_counter_places(shape, view))


def _vignette(shape: tuple[int, int]) -> Field:
    rows, columns = np.mgrid[0 : shape[0], 0 : shape[1]].astype(np.float32)
    radius = np.hypot(columns - shape[1] / 2, rows - shape[0] / 2) / np.hypot(*shape) * 2
    return 1 - 0.20 * radius**2


def _covered(shape: tuple[int, int], cards: list[Card], view: Points) -> Field:
    cover = np.zeros(shape, np.float32)
    for card in cards:
        cover = np.maximum(cover, _polygon(shape, projected(view, card.corners())))
    return cover


def _read_out(linear: Image, rng: np.random.Generator) -> NDArray[np.uint8]:
    """Photon and read noise, the sRGB curve, eight bits."""
    shot = np.sqrt(np.clip(linear, 0, None) * 1.6e-4 + 1.2e-6)
    noise = np.stack([grain(linear.shape[:2], rng, blur_px=0.45) for _ in range(3)], axis=-1)
    return np.round(to_srgb(linear + shot * noise) * 255).astype(np.uint8)
