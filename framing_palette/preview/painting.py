"""Painting: a plan turned into pieces, layer by layer from the wall to the art."""

from collections.abc import Callable, Hashable, Iterator
from dataclasses import dataclass, field, replace
from functools import cache

from framing_palette.preview.art import ArtImage, art_pieces
from framing_palette.preview.grids import Box, Grid, Hung
from framing_palette.preview.lights import Light
from framing_palette.preview.ovals import oval_ring_pieces
from framing_palette.preview.panes import pane_pieces
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import Build, Hole, LayerPlan, Pane, Plan, Rect
from framing_palette.preview.sections import Site
from framing_palette.preview.sheets import (
    LARGEST_SHEET_PX,
    bevel_pieces,
    bevel_ring,
    clip_is_own,
    flat_pieces,
    sheet_extent,
)
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
    """Under which circumstances it is seen.

    Parameters
    ----------
    largest_sheet_px
        A board's surface is made this large at most and then begins anew.
    """

    light: Light = field(default_factory=Light)
    wall: Wall | None = field(default_factory=Wall)
    pane: Pane = Pane.NONE
    largest_sheet_px: int = LARGEST_SHEET_PX


@dataclass(frozen=True, slots=True)
class Supplies:
    """Where the painter gets surfaces of a wanted size, and the picture behind each window.

    ``picture`` names a picture before it is made ready.
    """

    surface: Callable[[Skin, Extent], Surface]
    picture: Callable[[int, int], Hashable]
    image: Callable[[int, int], ArtImage]


Key = tuple[object, ...]


@dataclass(frozen=True, slots=True)
class Coat:
    """One layer's worth of drawing: a key that tells whether it would differ, and the drawing.

    What the blocks of a picture share is made by ``ready`` or with the first of them, and kept.
    """

    key: Key
    draw: Callable[[Box], Iterator[Piece]]
    ready: Callable[[], object] = lambda: None


def coats(frames: tuple[Hung, ...], view: View, sight: Sight, supplies: Supplies) -> Iterator[Coat]:
    """Yield what must be drawn, in the order in which it is laid: wall, frame, layers, art."""
    if sight.wall is not None:
        yield _wall_coat(frames, view, sight, sight.wall)
    for place, hung in enumerate(frames):
        own = _Job(place, hung.plan, hung.on(view.grid), view.whole, sight, supplies)
        common = (place, own.grid, view.whole, sight.light, sight.largest_sheet_px)
        for coat in _frame_coats(own):
            yield replace(coat, key=(*coat.key, *common))


def _wall_coat(frames: tuple[Hung, ...], view: View, sight: Sight, wall: Wall) -> Coat:
    forms = tuple(
        (hung.extent, _form(hung.plan.layers[-1:], hung.plan.wall_z_mm)) for hung in frames
    )
    return Coat(
        ("wall", wall, forms, view.grid, view.whole, sight.light),
        lambda box: wall_pieces(frames, wall, sight.light, view.grid, box=box, whole=view.whole),
    )


@dataclass(frozen=True, slots=True)
class _Job:
    """What the coats of one frame have in common."""

    place: int
    plan: Plan
    grid: Grid
    whole: Box
    sight: Sight
    supplies: Supplies

    def site(self, window: int) -> Site:
        return Site(self.plan, window, self.grid, self.sight.light, self.whole)


def _frame_coats(job: _Job) -> Iterator[Coat]:
    sites = [job.site(window) for window in range(len(job.plan.arts))]
    for number in reversed(range(len(job.plan.layers))):
        yield from _layer_coats(job, number, sites)
    for site in sites:
        yield from _art_coats(job, site)
    pane = job.sight.pane
    if pane is not Pane.NONE and job.plan.pane_below:
        yield Coat(
            ("pane", pane, job.plan.extent, _form(job.plan.layers[job.plan.pane_below :], 0.0)),
            lambda box: pane_pieces(job.plan, pane, job.grid, box),
        )


def _form(layers: tuple[LayerPlan, ...], level_mm: float) -> tuple[object, ...]:
    """Return what of some layers throws shade onto a level, their looks left out.

    Heights count from that level, so that what only lies higher as a whole stays the same.
    """
    return tuple(
        (layer.build, layer.holes, round(layer.base_mm - level_mm, 6), layer.profile)
        for layer in layers
    )


def _layer_coats(job: _Job, number: int, sites: list[Site]) -> Iterator[Coat]:
    plan, layer = job.plan, job.plan.layers[number]
    for window in range(len(layer.holes)):
        site, clip = sites[window], _clip(plan, number, window)
        form = _form(plan.layers[number:], layer.base_mm)
        key = ("layer", number, window, layer.skin, layer.outer, clip, form)
        if layer.build is Build.SHEET:
            if window == 0 or clip_is_own(site, number):
                yield _flat_coat((*key, "flat"), job, site, number, clip)
            cut = ("bevel", number, window, layer.skin.core_lab, layer.bevel_mm, form)
            yield _bevel_coat(cut, site, number)
        else:
            yield _strip_coat(key, job, site, number, clip)


def _clip(plan: Plan, number: int, window: int) -> Hole:
    above = plan.layers[number + 1 :]
    return above[0].hole(window) if above else Hole(plan.layers[number].outer)


def _flat_coat(key: Key, job: _Job, site: Site, number: int, clip: Hole) -> Coat:
    layer = site.layer(number)

    @cache
    def surface() -> Surface:
        extent = sheet_extent(layer.outer, site, job.sight.largest_sheet_px)
        return job.supplies.surface(layer.skin, extent)

    return Coat(key, lambda box: flat_pieces(site, number, clip, surface(), box), surface)


def _bevel_coat(key: Key, site: Site, number: int) -> Coat:
    bevel = bevel_ring(site, number)
    return Coat(key, lambda box: bevel_pieces(bevel, box))


def _strip_coat(key: Key, job: _Job, site: Site, number: int, clip: Hole) -> Coat:
    layer, hole = site.layer(number), site.layer(number).hole(site.window)

    @cache
    def ring() -> Ring:
        extent = strip_extent(clip.rect, hole.rect, site)
        surface = job.supplies.surface(layer.skin, extent)
        return Ring(site, number, hole.rect, clip.rect, surface)

    if hole.oval or clip.oval:
        return Coat(key, lambda box: oval_ring_pieces(ring(), clip, box), ring)
    return Coat(key, lambda box: ring_pieces(ring(), box), ring)


def _art_coats(job: _Job, site: Site) -> Iterator[Coat]:
    plan, window = job.plan, site.window
    art, form = plan.arts[window], _form(plan.layers, 0.0)
    sight = plan.layers[0].hole(window) if plan.layers else Hole(plan.extent)
    if not _holds(art, sight.rect):
        yield _ground_coat(("ground", window, plan.ground, art, form), job, site, sight)

    @cache
    def image() -> ArtImage:
        return job.supplies.image(job.place, window)

    yield Coat(
        ("art", window, job.supplies.picture(job.place, window), art, form),
        lambda box: art_pieces(site, image().linear, sight, box),
        image,
    )


def _ground_coat(key: Key, job: _Job, site: Site, sight: Hole) -> Coat:
    """Draw what the art lies on: a level sheet whose only opening is the art itself."""
    plan = site.plan
    ground = LayerPlan(
        plan.ground, Build.SHEET, (Hole(plan.arts[site.window]),), sight.rect,
        base_mm=0.0, profile=((0.0, 0.0),),
    )  # fmt: skip
    under = replace(site, plan=replace(plan, layers=(ground, *plan.layers)))

    @cache
    def surface() -> Surface:
        extent = sheet_extent(sight.rect, site, job.sight.largest_sheet_px)
        return job.supplies.surface(plan.ground, extent)

    return Coat(key, lambda box: flat_pieces(under, 0, sight, surface(), box), surface)


def _holds(outer: Rect, inner: Rect) -> bool:
    slack = 1e-6
    return (
        outer.left <= inner.left + slack
        and outer.top <= inner.top + slack
        and outer.right >= inner.right - slack
        and outer.bottom >= inner.bottom - slack
    )
