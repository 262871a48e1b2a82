"""Painting: a plan turned into pieces, layer by layer from the wall to the art."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace

from framing_palette.preview.art import ArtImage, art_pieces
from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.lights import Light
from framing_palette.preview.ovals import oval_ring_pieces
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import Build, Hole, LayerPlan, Plan, Rect
from framing_palette.preview.sections import Site
from framing_palette.preview.sheets import bevel_pieces, clip_is_own, flat_pieces, sheet_extent
from framing_palette.preview.skins import Skin
from framing_palette.preview.strips import Ring, ring_pieces, strip_extent
from framing_palette.preview.surfaces import Surface
from framing_palette.preview.tiling import Extent
from framing_palette.preview.walls import Wall, wall_pieces


@dataclass(frozen=True, slots=True)
class View:
    """What is drawn: a block of a grid.

    Parameters
    ----------
    whole
        The full picture that ``box`` is a part of; the wall's light runs over it.
    """

    grid: Grid
    box: Box
    whole: Box


@dataclass(frozen=True, slots=True)
class Sight:
    """Under which circumstances it is seen."""

    light: Light = field(default_factory=Light)
    wall: Wall = field(default_factory=Wall)


@dataclass(frozen=True, slots=True)
class Supplies:
    """Where the painter gets surfaces of a wanted size, and the picture behind each window."""

    surface: Callable[[Skin, Extent], Surface]
    image: Callable[[int], ArtImage]


@dataclass(frozen=True, slots=True)
class Coat:
    """One layer's worth of drawing: a key that tells whether it would differ, and the drawing."""

    key: tuple[object, ...]
    draw: Callable[[], Iterator[Piece]]


def coats(plan: Plan, view: View, sight: Sight, supplies: Supplies) -> Iterator[Coat]:
    """Yield what must be drawn, in the order in which it is laid: wall, frame, layers, art."""
    wall = (sight.wall, plan.extent, _form(plan.layers[-1:]), plan.wall_z_mm)
    yield Coat(
        ("wall", wall, view, sight.light),
        lambda: wall_pieces(
            plan, sight.wall, sight.light, view.grid, box=view.box, whole=view.whole
        ),
    )
    for number in reversed(range(len(plan.layers))):
        for coat in _layer_coats(plan, number, view, sight.light, supplies):
            yield replace(coat, key=(*coat.key, view, sight.light))
    for window in range(len(plan.arts)):
        site = Site(plan, window, view.grid, sight.light)
        for coat in _art_coats(site, view.box, supplies):
            yield replace(coat, key=(*coat.key, view, sight.light))


def _form(layers: tuple[LayerPlan, ...]) -> tuple[object, ...]:
    """Return what of some layers throws shade, their looks left out."""
    return tuple((layer.build, layer.holes, layer.base_mm, layer.profile) for layer in layers)


def _layer_coats(
    plan: Plan, number: int, view: View, light: Light, supplies: Supplies
) -> Iterator[Coat]:
    layer = plan.layers[number]
    for window in range(len(layer.holes)):
        site = Site(plan, window, view.grid, light)
        clip = _clip(plan, number, window)
        key = ("layer", number, window, layer, clip, _form(plan.layers[number + 1 :]))
        if layer.build is Build.SHEET:
            if window == 0 or clip_is_own(site, number):
                yield Coat((*key, "flat"), _flat_drawing(site, number, clip, view.box, supplies))
            yield Coat((*key, "bevel"), _bevel_drawing(site, number, view.box))
        else:
            yield Coat(key, _strip_drawing(site, number, clip, view.box, supplies))


def _clip(plan: Plan, number: int, window: int) -> Hole:
    above = plan.layers[number + 1 :]
    return above[0].hole(window) if above else Hole(plan.layers[number].outer)


def _flat_drawing(
    site: Site, number: int, clip: Hole, box: Box, supplies: Supplies
) -> Callable[[], Iterator[Piece]]:
    layer = site.layer(number)

    def draw() -> Iterator[Piece]:
        extent = sheet_extent(layer.outer, site.grid.px_per_mm)
        return flat_pieces(site, number, clip, supplies.surface(layer.skin, extent), box)

    return draw


def _bevel_drawing(site: Site, number: int, box: Box) -> Callable[[], Iterator[Piece]]:
    return lambda: bevel_pieces(site, number, box)


def _strip_drawing(
    site: Site, number: int, clip: Hole, box: Box, supplies: Supplies
) -> Callable[[], Iterator[Piece]]:
    layer, hole = site.layer(number), site.layer(number).hole(site.window)

    def draw() -> Iterator[Piece]:
        extent = strip_extent(clip.rect, hole.rect, site.grid.px_per_mm)
        ring = Ring(site, number, hole.rect, clip.rect, supplies.surface(layer.skin, extent))
        if hole.oval or clip.oval:
            return oval_ring_pieces(ring, clip, box)
        return ring_pieces(ring, box)

    return draw


def _art_coats(site: Site, box: Box, supplies: Supplies) -> Iterator[Coat]:
    plan, window = site.plan, site.window
    art, form = plan.arts[window], _form(plan.layers)
    sight = plan.layers[0].hole(window) if plan.layers else Hole(plan.extent)
    if not _holds(art, sight.rect):
        yield Coat(
            ("ground", window, plan.ground, art, form), _ground_drawing(site, sight, box, supplies)
        )
    yield Coat(
        ("art", window, supplies.image(window), art, form),
        lambda: art_pieces(site, supplies.image(window).linear, sight, box),
    )


def _ground_drawing(
    site: Site, sight: Hole, box: Box, supplies: Supplies
) -> Callable[[], Iterator[Piece]]:
    """Draw what the art lies on: a level sheet whose only opening is the art itself."""
    plan = site.plan
    ground = LayerPlan(
        plan.ground, Build.SHEET, (Hole(plan.arts[site.window]),), sight.rect,
        base_mm=0.0, profile=((0.0, 0.0),),
    )  # fmt: skip
    under = replace(site, plan=replace(plan, layers=(ground, *plan.layers)))

    def draw() -> Iterator[Piece]:
        extent = sheet_extent(sight.rect, site.grid.px_per_mm)
        return flat_pieces(under, 0, sight, supplies.surface(plan.ground, extent), box)

    return draw


def _holds(outer: Rect, inner: Rect) -> bool:
    slack = 1e-6
    return (
        outer.left <= inner.left + slack
        and outer.top <= inner.top + slack
        and outer.right >= inner.right - slack
        and outer.bottom >= inner.bottom - slack
    )
