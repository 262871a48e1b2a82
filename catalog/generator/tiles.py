"""Which tile each sample wears: shared grey relief tiles, or its own picture of several colours."""

import zlib
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from . import gilding, mottles, naps, painting, weaves, woods
from .noise import Field, Rng, relief, smooth_noise
from .rows import Line

BOARD = (384, 384)
STICK = (256, 384)
BOARD_MM_PER_PX = 0.1
STICK_MM_PER_PX = 0.3


@dataclass(frozen=True, slots=True)
class ReliefTile:
    """A grey tile shared by many samples; `contrast` is one deviation in grey levels of 255."""

    draw: Callable[[Rng], Field]
    contrast: float
    mm_per_px: float
    step: int = 2


def _wood(species: str) -> Callable[[Rng], Field]:
    return lambda rng: woods.grain(rng, STICK, woods.SPECIES[species]).tone


RELIEF_TILES = {
    "smooth-plate": ReliefTile(lambda rng: naps.paper(rng, BOARD, 0.5), 1.6, BOARD_MM_PER_PX, 1),
    "smooth-tooth": ReliefTile(lambda rng: naps.paper(rng, BOARD, 1.0), 2.6, BOARD_MM_PER_PX, 1),
    "smooth-pulp": ReliefTile(lambda rng: naps.fibre_paper(rng, BOARD), 2.0, BOARD_MM_PER_PX, 1),
    "linen-fine": ReliefTile(
        lambda rng: weaves.linen(rng, BOARD, (64, 64), 0.25), 6.5, BOARD_MM_PER_PX
    ),
    "linen-coarse": ReliefTile(
        lambda rng: weaves.linen(rng, BOARD, (46, 46), 0.45), 8, BOARD_MM_PER_PX
    ),
    "linen-slub": ReliefTile(
        lambda rng: weaves.linen(rng, BOARD, (56, 52), 0.85), 8, BOARD_MM_PER_PX
    ),
    "suede-short": ReliefTile(lambda rng: naps.suede(rng, BOARD, 0.35), 6.5, BOARD_MM_PER_PX),
    "suede-brushed": ReliefTile(lambda rng: naps.suede(rng, BOARD, 1.0), 8, BOARD_MM_PER_PX),
    "silk-plain": ReliefTile(lambda rng: weaves.silk(rng, BOARD, 0.5, 0.0), 7.5, BOARD_MM_PER_PX),
    "silk-slub": ReliefTile(lambda rng: weaves.silk(rng, BOARD, 1.6, 0.0), 9, BOARD_MM_PER_PX),
    "silk-watered": ReliefTile(lambda rng: weaves.silk(rng, BOARD, 0.4, 0.9), 9, BOARD_MM_PER_PX),
    "mottled-cloud": ReliefTile(lambda rng: naps.cloudy(rng, BOARD, 40), 8, BOARD_MM_PER_PX),
    "leaf-plain": ReliefTile(lambda rng: gilding.leaf(rng, STICK, 0.06)[1], 7, STICK_MM_PER_PX, 3),
    "metal-brushed": ReliefTile(lambda rng: gilding.brushed(rng, STICK), 9, STICK_MM_PER_PX, 3),
    "metal-satin": ReliefTile(lambda rng: gilding.brushed(rng, STICK), 4.5, STICK_MM_PER_PX),
    "paint-level": ReliefTile(
        lambda rng: gilding.brushed_paint(rng, STICK, 0.7), 1.6, STICK_MM_PER_PX, 1
    ),
    "paint-brushed": ReliefTile(
        lambda rng: gilding.brushed_paint(rng, STICK, 1.0), 3.0, STICK_MM_PER_PX
    ),
    "distressed-worn": ReliefTile(
        lambda rng: gilding.worn_paint(rng, STICK, 0.2, 0.15, "oak")[1], 12, STICK_MM_PER_PX, 3
    ),
    "wood-maple": ReliefTile(_wood("maple"), 7, STICK_MM_PER_PX),
    "wood-cherry": ReliefTile(_wood("cherry"), 9, STICK_MM_PER_PX, 3),
    "wood-basswood": ReliefTile(_wood("basswood"), 7, STICK_MM_PER_PX),
    "wood-sapele": ReliefTile(_wood("sapele"), 11, STICK_MM_PER_PX, 3),
    "wood-ash": ReliefTile(_wood("ash"), 14, STICK_MM_PER_PX, 3),
    "wood-oak": ReliefTile(_wood("oak"), 14, STICK_MM_PER_PX, 3),
}

_VARIANTS = {
    "smooth": ("smooth-plate", "smooth-tooth", "smooth-pulp"),
    "linen": ("linen-fine", "linen-coarse", "linen-slub"),
    "suede": ("suede-short", "suede-brushed"),
    "silk": ("silk-plain", "silk-slub", "silk-watered"),
    "brushed_metal": ("metal-brushed", "metal-satin"),
    "painted": ("paint-level", "paint-brushed"),
}


_TILE = (256, 256)
_PATTERNS: dict[str, Callable[[Rng, float, float], gilding.Mix]] = {
    "weave": lambda rng, _second, _third: mottles.weave(rng, _TILE, (44, 44)),
    "cloud": lambda rng, second, third: mottles.cloud(rng, _TILE, second, third),
    "vein": lambda rng, second, third: mottles.vein(rng, _TILE, second, third),
    "fleck": lambda rng, second, third: mottles.fleck(rng, _TILE, second, third),
    "foil": lambda rng, second, _third: gilding.foil(rng, _TILE, second),
    "tortoise": lambda rng, second, third: gilding.tortoise(rng, STICK, second, third),
    "rubbed_edge": lambda rng, second, third: gilding.rubbed_edge(rng, STICK, second, third),
}


def seeded(code: str) -> Rng:
    """The random source of one code."""
    return np.random.default_rng(zlib.crc32(code.encode()))


def relief_name(line: Line) -> str:
    """The shared tile that a one-colour sample wears."""
    if "species" in line.options:
        return f"wood-{line.options['species']}"
    variants = _VARIANTS[line.surface]
    return variants[zlib.crc32(line.code.encode()) % len(variants)]


def draw_relief(name: str) -> painting.Bytes:
    """The bytes of a shared tile."""
    tile = RELIEF_TILES[name]
    return painting.relief_tile(tile.draw(seeded(name)), tile.contrast, tile.step)


def own_mm_per_px(line: Line, face_mm: float) -> float:
    """Scale of a sample's own picture; one with gilded edges is as high as its face."""
    if line.options.get("pattern") == "rubbed_edge":
        return round(face_mm / STICK[0], 5)
    boards = ("mat", "wrapped_fillet", "liner")
    return BOARD_MM_PER_PX if line.kind in boards and line.surface != "leaf" else STICK_MM_PER_PX


def draw_own(line: Line) -> painting.Bytes:
    """The picture of a sample of several colours."""
    lab = painting.lch_to_lab(np.array([colour[:3] for colour in line.colours]))
    lab = np.stack([painting.within_gamut(one) for one in lab])
    weights, tone = _own_mix(line, seeded(line.code))
    if len(weights) == 2 and len(lab) == 3:
        lab = lab[[0, 2]]
    count = 32
    return painting.few_colours(painting.mix(lab, weights, tone), count)


def _own_mix(line: Line, rng: Rng) -> gilding.Mix:
    shares = [colour[3] for colour in line.colours]
    second, third = shares[1], shares[2] if len(shares) > 2 else 0.0
    pattern = line.options.get("pattern", "")
    if pattern in _PATTERNS:
        return _PATTERNS[pattern](rng, second, third)
    if line.surface == "leaf":
        return gilding.leaf(rng, STICK, third)
    if line.surface == "distressed_wood" and line.options["species"] != "weathered":
        return gilding.worn_paint(rng, STICK, second, third, line.options["species"])
    return _wood_mix(line, rng)


def _wood_mix(line: Line, rng: Rng) -> gilding.Mix:
    """Early wood, late wood, and the third colour in pores, rays or lime."""
    name = line.options["species"]
    grain = woods.grain(rng, STICK, woods.SPECIES[name])
    late = np.clip(grain.late * 1.15, 0, 1)
    third = grain.rays if name == "quartered_oak" else grain.pores
    if name in ("weathered", "zebrano"):
        third = np.clip(grain.late**2 * 1.1, 0, 1)
    if len(line.colours) == 2:
        third = np.zeros_like(late)
    weights = np.stack([(1 - late) * (1 - third), late * (1 - third), third])
    tone = (grain.tone + 0.5 * (grain.late - grain.late.mean())) * 5
    if name == "weathered":
        tone = tone + relief(smooth_noise(rng, STICK, 1.0, 40)) * 6
    return weights[: len(line.colours)], tone
