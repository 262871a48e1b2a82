"""A rainy street at lamp-lighting time, as a black-and-white photograph."""

from __future__ import annotations

from typing import TYPE_CHECKING

import cv2
import numpy as np

from sample_images.materials.curves import trace
from sample_images.materials.noise import Field, fractal, grain, smoothstep
from sample_images.materials.pigment import as_u8
from sample_images.scenes.street_things import glow_of_mist, laid_over, standing
from sample_images.scenes.street_walls import LAMPS_M, LEFT_M, RIGHT_M, Street

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from sample_images.scenes.street_people import Card

HEIGHT = 2 / 3
EYE_M = 1.55
FOCAL = 0.92
HORIZON = 0.40
HAZE = 0.0125
KERBS_M = (-3.4, 4.15)
PASSES = 4
Rays = tuple[Field, Field, Field]


def paint(width_px: int, seed: int) -> NDArray[np.uint8]:
    """The photograph, 3 wide by 2 high, neutral grey."""
    rng = np.random.default_rng(seed)
    shape = (round(width_px * HEIGHT), width_px)
    small = (round(shape[0] * 0.75), round(shape[1] * 0.75))
    scene = Scene(rng)
    light = sum(scene.exposed(small, rng) for _ in range(PASSES)) / PASSES
    light = cv2.resize(np.asarray(light, np.float32), shape[::-1], interpolation=cv2.INTER_CUBIC)
    light = np.clip(light, 0, None)
    light = _wires(light)
    light = _rain(light, rng)
    return as_u8(np.repeat(_developed(light, rng)[..., None], 3, axis=2))


class Scene:
    """The street, what stands in it, and its wet ground."""

    def __init__(self, rng: np.random.Generator) -> None:
        self.street = Street(rng)
        self.cards: list[Card] = standing()
        self.pools = fractal((700, 1600), rng, cell=110, octaves=5, gain=0.55)
        self.rough = fractal((700, 1600), rng, cell=30, octaves=6, gain=0.7)
        self.slope_x, self.slope_z, self.joint = self._setts(rng)
        self.lamp_light = self._ground_light()

    def exposed(self, shape: tuple[int, int], rng: np.random.Generator) -> Field:
        """One pass of jittered rays."""
        rows, width = shape
        y, x = np.mgrid[0:rows, 0:width].astype(np.float32)
        x = (x + rng.uniform(size=shape).astype(np.float32)) / width
        y = (y + rng.uniform(size=shape).astype(np.float32)) / rows
        way_x = ((x - 0.5) / FOCAL).ravel()
        way_y = (-(y - HORIZON) * HEIGHT / FOCAL).ravel()
        zero = np.zeros_like(way_x)
        eye: Rays = (zero, zero + np.float32(EYE_M), zero)
        way: Rays = (way_x, way_y, zero + 1)
        light, far = self.street.seen(eye, way)
        light = _hazed(light, far)
        reach = np.where(way_y < -1e-4, -EYE_M / np.minimum(way_y, -1e-4), 1e4).astype(np.float32)
        ground = np.flatnonzero(reach < far)
        light[ground] = self._ground(way_x[ground], way_y[ground], reach[ground], rng)
        far[ground] = reach[ground]
        laid_over(self.cards, eye, way, light, far, haze=HAZE)
        return light.reshape(shape) + glow_of_mist(x, y)

    def _ground(self, way_x: Field, way_y: Field, reach: Field, rng: np.random.Generator) -> Field:
        x, z = way_x * reach, reach
        row = np.clip((x + 7) * 50, 0, 699).astype(int)
        column = (z * 50).astype(int) % 1600
        road = (x > KERBS_M[0]) & (x < KERBS_M[1])
        pool = smoothstep(
            0.15, 0.75, self.pools[row, column] + 0.35 * np.exp(-((np.abs(x - 0.4) - 3.2) ** 2))
        )
        near = np.clip(14 / z, 0, 1)
        stone = 1 - 0.85 * pool
        size = z.shape
        spread = (0.010 + 0.030 * stone).astype(np.float32)
        tilt_x = rng.normal(0, 1, size).astype(np.float32) * spread * 0.45
        tilt_z = rng.normal(0, 1, size).astype(np.float32) * spread
        grid = np.where(road, 1.0, 0.25) * stone * near
        tilt_x += self.slope_x[row, column] * grid
        tilt_z += self.slope_z[row, column] * grid
        mirrored = self._mirrored(x, z, (way_x, way_y), (tilt_x, tilt_z))
        slant = np.clip(-way_y / np.sqrt(way_x**2 + way_y**2 + 1), 0, 1)
        shine = 0.07 + 0.93 * (1 - slant) ** 2.9
        shine = shine * (0.46 + 0.50 * pool)
        joints = 1 - 0.62 * self.joint[row, column] * road * near * stone
        albedo = np.where(road, 0.085, 0.13) * (1 + 0.25 * self.rough[row, column]) * joints
        kerb = np.exp(-(((x - KERBS_M[0]) / 0.07) ** 2)) + np.exp(-(((x - KERBS_M[1]) / 0.07) ** 2))
        lamp = self.lamp_light[
            np.clip((x + 8) * 4, 0, 63).astype(int), np.clip(z * 4, 0, 519).astype(int)
        ]
        own = (albedo * (1 - 0.6 * pool) + 0.16 * kerb) * lamp
        return _hazed(own * (1 - shine) + mirrored * shine, z)

    def _mirrored(
        self, x: Field, z: Field, way: tuple[Field, Field], tilt: tuple[Field, Field]
    ) -> Field:
        """Light from the way that the wet ground throws a ray."""
        norm = 1 + tilt[0] ** 2 + tilt[1] ** 2
        along = 2 * (way[0] * tilt[0] + way[1] + tilt[1]) / norm
        out_x = way[0] - along * tilt[0]
        out_y = np.maximum(way[1] - along, 0.001)
        out_z = np.maximum(1 - along * tilt[1], 0.02)
        origin: Rays = (x, np.full_like(x, 0.001), z)
        light, far = self.street.seen(origin, (out_x, out_y, out_z))
        light = _hazed(light, far)
        laid_over(self.cards, origin, (out_x, out_y, out_z), light, far, haze=HAZE)
        return np.minimum(light, 3.2)

    def _setts(self, rng: np.random.Generator) -> tuple[Field, Field, Field]:
        """Slopes and joints of a paving of small rounded stones, 50 samples a metre."""
        across, along = np.mgrid[0:700, 0:1600].astype(np.float32)
        bow = 5.0 * np.cos((across / 50 - 7.4) * np.pi / 7.5)
        course = (along + bow + 1.3 * self.rough) / 5.5 + 20
        slide = rng.uniform(0, 1, 600).astype(np.float32)
        shifted = (across + 0.8 * self.pools) / 7.5 + slide[course.astype(int) % 600] + 20
        u, v = shifted % 1 - 0.5, course % 1 - 0.5
        stone = (shifted.astype(int) * 73 + course.astype(int) * 199) % 997
        lean = rng.normal(0, 0.045, (2, 997)).astype(np.float32)
        dome = 1.9
        joint = smoothstep(0.36, 0.47, np.maximum(np.abs(u), np.abs(v)))
        return (lean[0][stone] + dome * u**3, lean[1][stone] + dome * v**3, joint)

    def _ground_light(self) -> Field:
        x, z = np.mgrid[-8:8:0.25, 0:130:0.25].astype(np.float32)
        total = np.full(x.shape, 0.22, np.float32)
        for lamp_x, lamp_y, lamp_z in LAMPS_M:
            total += 7.0 * lamp_y / ((x - lamp_x) ** 2 + (z - lamp_z) ** 2 + lamp_y**2) ** 1.5 * 6
        for side, houses in ((LEFT_M, self.street.left), (RIGHT_M, self.street.right)):
            middles = houses.starts + 4.0
            for middle, glow in zip(middles, houses.shop, strict=True):
                total += 2.6 * glow / ((x - side) ** 2 + ((z - middle) / 1.6) ** 2 + 1.5)
        return total


def _hazed(light: Field, far: Field) -> Field:
    clear = np.exp(-HAZE * np.minimum(far, 160))
    return (light * clear + 0.36 * (1 - clear)).astype(np.float32)


def _projected(point: tuple[float, float, float], shape: tuple[int, ...]) -> tuple[float, float]:
    x, y, z = point
    return (
        (0.5 + FOCAL * x / z) * shape[1],
        (HORIZON - (y - EYE_M) * FOCAL / z / HEIGHT) * shape[0],
    )


def _wires(light: Field) -> Field:
    """Span wires from house to house, sagging, thinner with distance."""
    mask = np.zeros(light.shape, np.uint8)
    for z, height in ((7.5, 7.4), (16.0, 7.8), (27.0, 7.6), (40.0, 7.9)):
        t = np.linspace(0, 1, 40)
        span = [
            _projected(
                (LEFT_M + (RIGHT_M - LEFT_M) * u, height - 2.2 * u * (1 - u), z), light.shape
            )
            for u in t
        ]
        tone = int(np.clip(230 * np.exp(-z / 30), 60, 255))
        thick = 2 if z < 12 and light.shape[1] > 1500 else 1
        trace(mask, span, tone, thick)
    for x in (-1.2, 1.5):
        run = [_projected((x, 6.7, z), light.shape) for z in np.geomspace(4.2, 90, 60)]
        trace(mask, run, 170, 1)
    cover = cv2.GaussianBlur(mask, (0, 0), 0.7).astype(np.float32) / 255
    return light * (1 - 0.8 * cover)


def _rain(light: Field, rng: np.random.Generator) -> Field:
    """Falling streaks, seen where there is light behind them."""
    rows, width = light.shape
    mask = np.zeros(light.shape, np.uint8)
    for _ in range(900):
        x, y = rng.uniform(0, width), rng.uniform(-0.05, 1.0) * rows
        length = rng.exponential(0.014) * width + 0.004 * width
        end = (x - 0.10 * length + rng.normal(0, 0.3), y + length)
        trace(mask, [(x, y), end], int(rng.integers(25, 120)), 1)
    streaks = cv2.GaussianBlur(mask, (0, 0), max(0.5, width / 2600)).astype(np.float32) / 255
    behind = cv2.GaussianBlur(np.minimum(light, 3), (0, 0), width * 0.02)
    return light + streaks * (0.05 + 0.42 * behind)


def _developed(light: Field, rng: np.random.Generator) -> Field:
    """Lens bloom, exposure, film curve, vignette and grain."""
    rows, width = light.shape
    bright = np.clip(light - 0.9, 0, 14)
    for sigma, weight in ((0.0022, 0.22), (0.009, 0.10), (0.035, 0.06), (0.09, 0.035)):
        light = light + weight * cv2.GaussianBlur(bright, (0, 0), sigma * width)
    y, x = np.mgrid[0:rows, 0:width].astype(np.float32)
    away = ((x / width - 0.5) ** 2 + ((y / rows - 0.5) * HEIGHT) ** 2) / 0.36
    light = light * (1 - 0.55 * away)
    tone = (1 - np.exp(-2.2 * light)) ** (1 / 1.5)
    tone = np.clip((tone - 0.115) / 0.885, 0, 1)
    tone = tone + 0.10 * np.sin(2 * np.pi * (tone - 0.5)) * 0.55
    tone = cv2.GaussianBlur(tone.astype(np.float32), (0, 0), max(0.4, width / 3400))
    speck = 0.65 * grain(light.shape, rng, blur_px=0.75) + 0.5 * grain(
        light.shape, rng, blur_px=1.4
    )
    strength = 0.012 + 0.040 * np.sqrt(np.clip(tone * (1 - tone), 0, 0.25))
    return np.clip(0.012 + 0.975 * tone + speck * strength, 0, 1).astype(np.float32)
