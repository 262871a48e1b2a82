"""House fronts, sky and far end of the rainy street, as light seen along any ray."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from sample_images.materials.noise import Field, fractal, smoothstep

LEFT_M, RIGHT_M, END_M = -6.2, 6.8, 120.0
LAMPS_M = [(-3.3, 5.0, z) for z in (9.0, 31.0, 53.0, 76.0)] + [
    (4.0, 5.0, z) for z in (20.0, 42.0, 64.0, 90.0)
]


@dataclass(frozen=True, slots=True)
class Row:
    """One side of the street: where each house starts along z, and what it is like."""

    starts: Field
    heights: Field
    tones: Field
    storeys: Field
    pitch: Field
    shop: Field
    awning: Field
    dice: Field


def row(rng: np.random.Generator) -> Row:
    """Draw the houses of one side."""
    count = 18
    starts = np.cumsum(rng.uniform(6.0, 11.0, count)).astype(np.float32) - 9.0
    storey = rng.uniform(3.0, 3.6, count).astype(np.float32)
    floors = rng.integers(2, 5, count)
    heights = (4.2 + storey * floors + rng.uniform(0.8, 1.3, count)).astype(np.float32)
    return Row(
        starts,
        heights,
        rng.uniform(0.16, 0.48, count).astype(np.float32),
        storey,
        rng.uniform(2.0, 2.7, count).astype(np.float32),
        np.where(rng.uniform(size=count) < 0.75, rng.uniform(0.9, 1.9, count), 0.05).astype(
            np.float32
        ),
        (rng.uniform(size=count) < 0.45).astype(np.float32),
        rng.uniform(size=(count, 8, 8)).astype(np.float32),
    )


class Street:
    """Everything that a ray can meet, except the ground and what stands on it."""

    def __init__(self, rng: np.random.Generator) -> None:
        self.left, self.right = row(rng), row(rng)
        self.stain = fractal((512, 512), rng, cell=120, octaves=6, gain=0.6)
        self.lights = {
            -1: self._wall_light(LEFT_M),
            1: self._wall_light(RIGHT_M),
        }
        self.skyline = (7 + 3.2 * fractal((1, 400), rng, cell=30, octaves=3)[0]).astype(np.float32)

    def _wall_light(self, x: float) -> Field:
        """Lamp light on a wall, on a grid of quarter metres over z and y."""
        y, z = np.mgrid[0:24:0.25, -10:130:0.25].astype(np.float32)
        total = np.full(y.shape, 0.10, np.float32)
        for lamp_x, lamp_y, lamp_z in LAMPS_M:
            away = abs(lamp_x - x)
            total += 7.0 * away / ((y - lamp_y) ** 2 + (z - lamp_z) ** 2 + away**2) ** 1.5
        return total

    def seen(
        self, origin: tuple[Field, Field, Field], way: tuple[Field, Field, Field]
    ) -> tuple[Field, Field]:
        """Light along rays, and the distance along z that they went."""
        light = self._sky(way)
        far = np.full(light.shape, 400.0, np.float32)
        self._end(origin, way, light, far)
        for side, x, houses in ((-1, LEFT_M, self.left), (1, RIGHT_M, self.right)):
            toward = way[0] * side > 1e-5
            t = np.where(toward, (x - origin[0]) / np.where(toward, way[0], 1), -1.0)
            y, z = origin[1] + way[1] * t, origin[2] + way[2] * t
            house = np.clip(np.searchsorted(houses.starts, z) - 1, 0, len(houses.starts) - 1)
            met = (t > 0) & (y >= 0) & (y < houses.heights[house]) & (z < END_M) & (z > -8)
            if met.any():
                light[met] = self._wall(side, houses, house[met], y[met], z[met])
                far[met] = (t * way[2])[met]
        return light, far

    def _sky(self, way: tuple[Field, Field, Field]) -> Field:
        length = np.sqrt(way[0] ** 2 + way[1] ** 2 + way[2] ** 2)
        up = np.clip(way[1] / length, 0, 1)
        return (0.42 * np.exp(-up * 4.5) + 0.17 + 0.05 * np.sin(way[0] * 5 + up * 9)).astype(
            np.float32
        )

    def _end(
        self,
        origin: tuple[Field, Field, Field],
        way: tuple[Field, Field, Field],
        light: Field,
        far: Field,
    ) -> None:
        t = (END_M - origin[2]) / np.maximum(way[2], 1e-3)
        x, y = origin[0] + way[0] * t, origin[1] + way[1] * t
        roofs = self.skyline[np.clip((x + 40) * 5, 0, 399).astype(int)]
        tower = np.where(np.abs(x - 1.2) < 2.6, 24.0, 0.0)
        spire = 24.0 + np.clip(1 - np.abs(x - 1.2) / 2.9, 0, 1) * 17.0
        top = np.maximum(roofs, np.where(np.abs(x - 1.2) < 2.9, np.maximum(tower, spire), 0.0))
        met = (t > 0) & (y < top)
        light[met] = 0.03
        far[met] = END_M

    def _wall(self, side: int, houses: Row, house: Field, y: Field, z: Field) -> Field:
        grid = self.lights[side]
        lamp = grid[
            np.clip(y * 4, 0, grid.shape[0] - 1).astype(int),
            np.clip((z + 10) * 4, 0, grid.shape[1] - 1).astype(int),
        ]
        stain = self.stain[(y * 29).astype(int) % 512, (z * 31).astype(int) % 512]
        damp = self.stain[(y * 5).astype(int) % 512, (z * 60).astype(int) % 512]
        albedo = houses.tones[house] * (1 + 0.13 * stain) * (1 - 0.12 * np.clip(damp, 0, 2))
        courses = (np.abs((y * 3.3) % 1 - 0.5) > 0.46) * 0.10
        light = albedo * (1 - courses) * lamp
        light = self._upper(houses, house, y, z, light=light, lamp=lamp)
        return self._shop(houses, house, y, z, light=light, lamp=lamp)

    def _upper(
        self, houses: Row, house: Field, y: Field, z: Field, *, light: Field, lamp: Field
    ) -> Field:
        """Windows with frames and sills, string courses and the cornice."""
        storey = houses.storeys[house]
        floor_no, up = np.divmod((y - 4.2) / storey, 1)
        column, across = np.divmod((z - houses.starts[house]) / houses.pitch[house], 1)
        above = (y > 4.2) & (y < houses.heights[house] - 1.0)
        wide, low, high = 0.24, 0.20, 0.80
        off = np.abs(across - 0.5)
        surround = above & (off < wide + 0.05) & (up > low - 0.05) & (up < high + 0.08)
        light = np.where(surround, light * 1.35 + 0.02, light)
        glass = above & (off < wide) & (up > low) & (up < high)
        dice = houses.dice[house, floor_no.astype(int) % 8, column.astype(int) % 8]
        curtain = 0.55 + 0.45 * smoothstep(0.02, 0.10, np.abs(off - 0.13))
        glow = np.where(dice < 0.26, (0.7 + 2.2 * dice) * curtain * (1.1 - 0.5 * up), 0.0)
        pane = 0.035 + 0.10 * lamp * dice + 0.10 * smoothstep(0.2, 0.9, up) * dice + glow
        light = np.where(glass, pane, light)
        bars = glass & ((off < 0.016) | (np.abs(up - 0.56) < 0.014) | (off > wide - 0.02))
        light = np.where(bars, 0.35 * lamp + 0.02, light)
        reveal = glass & (across < 0.5 - wide + 0.045)
        light = np.where(reveal, light * 0.35, light)
        sill = above & (off < wide + 0.07) & (np.abs(up - low + 0.03) < 0.028)
        light = np.where(sill, 0.55 * lamp + 0.05, light)
        crown = houses.heights[house] - y
        light = np.where(crown < 0.75, light * 1.5 + 0.05, light)
        light = np.where((crown > 0.75) & (crown < 1.05), light * 0.35, light)
        return np.where((y > 4.0) & (y < 4.2), light * 1.5 + 0.03, light)

    def _shop(
        self, houses: Row, house: Field, y: Field, z: Field, *, light: Field, lamp: Field
    ) -> Field:
        """Lit or shuttered fronts at the pavement, doors, fascias and awnings."""
        ground = y < 4.0
        bay, across = np.divmod((z - houses.starts[house]) / (houses.pitch[house] * 1.25), 1)
        dice = houses.dice[house, 0, bay.astype(int) % 8]
        lit = houses.shop[house]
        goods = self.stain[(y * 90).astype(int) % 512, (z * 90).astype(int) % 512]
        inside = lit * (0.55 + 0.75 * smoothstep(0.6, 2.9, y)) * (1 + 0.22 * goods * (y < 1.9))
        glass = ground & (y > 0.55) & (y < 3.0) & (np.abs(across - 0.5) < 0.44)
        door = ground & (dice < 0.25) & (np.abs(across - 0.5) < 0.36) & (y < 2.5)
        light = np.where(ground, (0.10 + 0.10 * dice) * lamp + 0.01, light)
        light = np.where(glass, inside + 0.04 * lamp, light)
        light = np.where(door, 0.25 * inside + 0.02, light)
        bars = glass & ((np.abs(across - 0.5) < 0.012) | (np.abs(y - 2.45) < 0.04))
        light = np.where(bars, 0.06 * lamp + 0.01, light)
        fascia = (y > 3.05) & (y < 3.75)
        light = np.where(fascia, (0.12 + 0.25 * dice) * lamp, light)
        hem = 2.35 + 0.10 * np.abs(np.sin(z * 6.0))
        shade = (houses.awning[house] > 0) & (y > hem) & (y < 3.15)
        stripe = np.where(np.sin(z * 9.0) > 0, 0.55, 0.16)
        return np.where(shade, stripe * (0.5 * lamp + 0.22 * lit), light)
