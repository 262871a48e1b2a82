"""The lit ferry and the red buoy: flat shapes that the brushes later break up."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from sample_images.materials.curves import Points, filled, patch, ribbon, spline
from sample_images.materials.pigment import Image, blend, lay, lay_line, rgb, softened

WATERLINE = 0.372


@dataclass(frozen=True, slots=True)
class Light:
    """One lamp or window: its middle and half size in picture widths, and its colour."""

    x: float
    y: float
    w: float
    h: float
    colour: str


HULL = spline(
    [
        (0.282, 0.338),
        (0.34, 0.3395),
        (0.45, 0.340),
        (0.56, 0.337),
        (0.62, 0.331),
        (0.662, 0.320),
    ],
    per_span=12,
)


def hull_outline() -> Points:
    """Sheer line, raked bow, waterline and stern, clockwise from the stern."""
    bow = [(0.655, 0.336), (0.643, 0.356), (0.636, WATERLINE)]
    stern = [(0.292, WATERLINE), (0.286, 0.358)]
    return np.vstack([HULL, bow, stern])


def house_outlines() -> list[tuple[Points, str]]:
    """Superstructure from the lowest deck up, each outline with its colour in the dusk."""
    boxes = [
        ([(0.300, 0.339), (0.302, 0.311), (0.594, 0.309), (0.606, 0.334)], "8d8ba0"),
        ([(0.322, 0.311), (0.324, 0.286), (0.560, 0.284), (0.573, 0.309)], "a39cab"),
        ([(0.470, 0.285), (0.472, 0.263), (0.538, 0.262), (0.552, 0.284)], "98929f"),
        ([(0.316, 0.288), (0.316, 0.283), (0.566, 0.281), (0.567, 0.286)], "4d4f6a"),
        ([(0.466, 0.265), (0.466, 0.2605), (0.549, 0.2595), (0.549, 0.2635)], "454862"),
        ([(0.382, 0.286), (0.388, 0.236), (0.425, 0.236), (0.430, 0.286)], "3b3d57"),
        ([(0.3862, 0.254), (0.388, 0.243), (0.4255, 0.243), (0.427, 0.254)], "9c5a48"),
        ([(0.3885, 0.238), (0.389, 0.2335), (0.4245, 0.2335), (0.425, 0.238)], "25263b"),
    ]
    return [(np.array(points), colour) for points, colour in boxes]


def lights(rng: np.random.Generator) -> list[Light]:
    """Two rows of cabin windows, the bridge, and the lamps."""
    row = []
    for x in np.arange(0.316, 0.588, 0.0128):
        warm = rng.choice(["ffd98a", "ffc766", "f9b04f", "ffe6ad"])
        if rng.uniform() > 0.08:
            row.append(Light(x, 0.3225, 0.0041, 0.0058, warm))
    for x in np.arange(0.336, 0.554, 0.0112):
        warm = rng.choice(["ffd27a", "ffbf5c", "ffe2a0"])
        if rng.uniform() > 0.14 and not 0.378 < x < 0.434:
            row.append(Light(x, 0.2975, 0.0034, 0.0052, warm))
    row += [Light(x, 0.272, 0.0042, 0.0042, "ffe9b8") for x in np.arange(0.481, 0.542, 0.0125)]
    row += [
        Light(0.5065, 0.205, 0.0026, 0.0026, "fff6dd"),
        Light(0.337, 0.262, 0.0022, 0.0022, "fff0cc"),
        Light(0.6575, 0.314, 0.0022, 0.0022, "ffe9b8"),
    ]
    return row


def paint_boat(picture: Image, rng: np.random.Generator) -> list[Light]:
    """Lay the ferry on the target in place, lamps and glow last, and return the lamps."""
    width = picture.shape[1]
    y, x = (
        axis.astype(np.float32) / width
        for axis in np.mgrid[0 : picture.shape[0], 0 : picture.shape[1]]
    )
    dusk = np.clip((x - 0.30) / 0.30, 0, 1)[..., None]
    for outline, colour in house_outlines():
        tint = rgb(colour) * (1.14 - 0.30 * dusk) + (0.05, 0.01, -0.04) * (1 - dusk)
        _lay_shaded(picture, tint.astype(np.float32), outline * width)
    shade = np.clip((y - 0.335) / (WATERLINE - 0.335), 0, 1)[..., None]
    hull = rgb("27304a") * (1 - shade) + rgb("12182b") * shade
    _lay_shaded(picture, hull, hull_outline() * width)
    lay(picture, rgb("d9cfc8"), np.vstack([HULL, HULL[::-1] + np.array([0, 0.0042])]) * width)
    boot = np.array([(0.2885, 0.366), (0.6385, 0.366), (0.636, WATERLINE), (0.292, WATERLINE)])
    lay(picture, rgb("5e2f35"), boot * width)
    _lay_lifeboats(picture)
    _lay_rigging(picture)
    lamps = lights(rng)
    _light_up(picture, lamps)
    return lamps


def _lay_shaded(picture: Image, colours: Image, outline: Points) -> None:
    part, local = patch(picture.shape, outline, 2)
    below = picture[part]
    picture[part] = blend(below, colours[part], filled(below.shape[:2], local))


def _lay_rigging(picture: Image) -> None:
    width = picture.shape[1]
    thick = max(1, round(width * 0.0016))
    for line in (
        [(0.5065, 0.263), (0.5065, 0.203)],
        [(0.499, 0.224), (0.514, 0.224)],
        [(0.337, 0.287), (0.337, 0.262)],
        [(0.6575, 0.324), (0.6575, 0.314)],
    ):
        lay_line(picture, rgb("2c2c42"), np.array(line) * width, thick)
    for line in ([(0.5065, 0.207), (0.6575, 0.316)], [(0.5065, 0.207), (0.337, 0.264)]):
        stay = np.array(line) * width
        lay_line(picture, rgb("3a3950"), stay, max(1, thick // 2), strength=0.55)


def _lay_lifeboats(picture: Image) -> None:
    width = picture.shape[1]
    for x in (0.345, 0.446):
        keel = [(x + 0.009, 0.2855), (x - 0.009, 0.2855)]
        boat = spline([(x - 0.013, 0.279), (x, 0.2775), (x + 0.013, 0.279), *keel], closed=True)
        lay(picture, rgb("c9905f"), boat * width)
        rim = np.array([(x - 0.013, 0.2795), (x + 0.013, 0.2795)])
        lay_line(picture, rgb("f0dcc0"), rim * width, max(1, round(width * 0.0012)))


def _light_up(picture: Image, lamps: list[Light]) -> None:
    """Windows and lamps, then the halo that they throw into the damp air."""
    width = picture.shape[1]
    glow = np.zeros(picture.shape, np.float32)
    for lamp in lamps:
        corners = np.array([(-1, -1), (1, -1), (1, 1), (-1, 1)]) * (lamp.w, lamp.h)
        box = (corners + np.array([lamp.x, lamp.y])) * width
        lay(picture, rgb(lamp.colour), box)
        lay(glow, rgb(lamp.colour), box)
    halo = 1.6 * softened(glow, width * 0.005) + 0.9 * softened(glow, width * 0.018)
    picture[:] = 1 - (1 - picture) * (1 - np.clip(halo * 0.36, 0, 0.8))


def paint_buoy(picture: Image) -> None:
    """One small red buoy, its lean and its broken reflection."""
    width = picture.shape[1]
    x, y = 0.782, 0.560
    rise = np.array(
        [
            (-0.0125, 0),
            (-0.0085, -0.017),
            (-0.0015, -0.034),
            (0.0050, -0.0335),
            (0.0085, -0.016),
            (0.0120, 0),
            (0, 0.004),
        ]
    )
    body = spline(rise + np.array([x, y]), closed=True)
    for dy, half, strength in ((0.014, 0.010, 0.85), (0.030, 0.007, 0.7), (0.047, 0.004, 0.5)):
        dab = spline(_diamond(half, 0.005) + np.array([x, y + dy]), closed=True)
        lay(picture, rgb("a52a26"), dab * width, strength=strength)
    foam = spline([(x - 0.019, y + 0.003), (x, y + 0.007), (x + 0.020, y + 0.002)])
    lay_line(picture, rgb("cfc0c4"), foam * width, max(1, round(width * 0.002)))
    lay(picture, rgb("d8331f"), body * width)
    shadow = np.vstack([body[body[:, 0] > x + 0.001], [(x + 0.002, y + 0.003)]])
    lay(picture, rgb("8f1f22"), shadow * width, soft_px=width * 0.001)
    lit = np.array([(x - 0.0075, y - 0.006), (x - 0.0035, y - 0.027), (x - 0.001, y - 0.006)])
    lay(picture, rgb("f4694a"), lit * width, soft_px=width * 0.0008)
    mast = np.array([(x + 0.0018, y - 0.033), (x + 0.0026, y - 0.047)])
    lay_line(picture, rgb("2b2538"), mast * width, max(1, round(width * 0.0018)))
    lamp = spline(_diamond(0.0028, 0.0028) + np.array([x + 0.0026, y - 0.048]), closed=True)
    lay(picture, rgb("ffd9a0"), lamp * width)


def _diamond(half_w: float, half_h: float) -> Points:
    return np.array([(-half_w, 0), (0, -half_h), (half_w, 0), (0, half_h)])


def paint_posts(picture: Image) -> None:
    """Three leaning mooring posts in the near water, dark against the glow."""
    for x, top, foot, lean, thick in (
        (0.072, 0.432, 0.590, 0.010, 0.0150),
        (0.112, 0.455, 0.604, -0.006, 0.0165),
        (0.163, 0.486, 0.572, 0.004, 0.0125),
    ):
        _paint_post(
            picture, np.array([(x + lean, top), (x + lean / 2, (top + foot) / 2), (x, foot)]), thick
        )


def _paint_post(picture: Image, axis: Points, thick: float) -> None:
    width = picture.shape[1]
    (head_x, top), (x, foot) = axis[0], axis[-1]
    wave = np.linspace(0, 1, 22)
    swing = 0.0035 * np.sin(wave * 38 + x * 90) * (0.4 + wave)
    mirror = np.stack([x + (head_x - x) * wave * 0.7 + swing, foot + wave * (foot - top) * 0.62], 1)
    shadow = ribbon(mirror, thick * (1.05 - 0.55 * wave))
    lay(picture, rgb("1a2036"), shadow * width, soft_px=width * 0.0012, strength=0.8)
    lay(picture, rgb("232032"), ribbon(axis, np.array([0.85, 1.0, 1.08]) * thick) * width)
    lit = ribbon(axis + np.array([thick * 0.3, 0]), np.full(3, thick * 0.3))
    lay(picture, rgb("8a6058"), lit * width, soft_px=width * 0.001)
    cap = spline(_diamond(thick * 0.5, 0.0035) + np.array([head_x, top]), closed=True)
    lay(picture, rgb("8c7478"), cap * width)
    foam = spline([(x - thick, foot + 0.002), (x, foot + 0.005), (x + thick, foot + 0.001)])
    lay_line(picture, rgb("b7a6b0"), foam * width, max(1, round(width * 0.0016)), strength=0.9)
