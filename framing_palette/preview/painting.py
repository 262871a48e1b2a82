"""Painting: a plan turned into pieces, layer by layer from the wall to the art."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace

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
    """Where the painter gets surfaces of a wanted size, and the picture behind each window."""

    surface: Callable[[Skin, Extent], Surface]
    image: Callable[[int, int], ArtImage]


@dataclass(frozen=True, slots=True)
class Coat:
    """One layer's worth of drawing: a key that tells whether it would differ, and the drawing."""

    key: tuple[object, ...]
    draw: Callable[[], Iterator[Piece]]


def coats(frames: tuple[Hung, ...], view: View, sight: Sight, supplies: Supplies) -> Iterator[Coat]:
    """Yield what must be drawn, in the order in which it is laid: wall, frame, layers, art."""
    if sight.wall is not None:
        yield _wall_coat(frames, view, sight, sight.wall)
    for place, hung in enumerate(frames):
        own = _Job(place, hung.plan, hung.on(view.grid), view.box, view.whole, sight, supplies)
        common = (place, own.grid, view.box, view.whole, sight.light, sight.largest_sheet_px)
        for coat in _frame_coats(own):
            yield replace(coat, key=(*coat.key, *common))


def _wall_coat(frames: tuple[Hung, ...], view: View, sight: Sight, wall: Wall) -> Coat:
    forms = tuple(
        (hung.extent, _form(hung.plan.layers[-1:], hung.plan.wall_z_mm)) for hung in frames
    )
    return Coat(
        ("wall", wall, forms, view, sight.light),
        lambda: wall_pieces(frames, wall, sight.light, view.grid, box=view.box, whole=view.whole),
    )


@dataclass(frozen=True, slots=True)
class _Job:
    """What the coats of one frame have in common."""

    place: int
    plan: Plan
    grid: Grid
    box: Box
    whole: Box
    sight: Sight
    supplies: Supplies

    def site(self, window: int) -> Site:
        return Site(self.plan, window, self.grid, self.sight.light, self.whole)


def _frame_coats(job: _Job) -> Iterator[Coat]:
    for number in reversed(range(len(job.plan.layers))):
        yield from _layer_coats(job, number)
    for window in range(len(job.plan.arts)):
        yield from _art_coats(job, window)
    pane = job.sight.pane
    if pane is not Pane.NONE and job.plan.pane_below:
        yield Coat(
            ("pane", pane, job.plan.extent, _form(job.plan.layers[job.plan.pane_below :], 0.0)),
            lambda: pane_pieces(job.plan, pane, job.grid, job.box),
        )


def _form(layers: tuple[LayerPlan, ...], level_mm: float) -> tuple[object, ...]:
    """Return what of some layers throws shade onto a level, their looks left out.

    Heights count from that level, so that what only lies higher as a whole stays the same.
    """
    return tuple(
        (layer.build, layer.holes, round(layer.base_mm - level_mm, 6), layer.profile)
        for layer in layers
    )


def _layer_coats(job: _Job, number: int) -> Iterator[Coat]:
    plan, layer = job.plan, job.plan.layers[number]
    for window in range(len(layer.holes)):
        site, clip = job.site(window), _clip(plan, number, window)
        form = _form(plan.layers[number:], layer.base_mm)
        key = ("layer", number, window, layer.skin, layer.outer, clip, form)
        if layer.build is Build.SHEET:
            if window == 0 or clip_is_own(site, number):
                yield Coat((*key, "flat"), _flat_drawing(job, site, number, clip))
            cut = ("bevel", number, window, layer.skin.core_lab, layer.bevel_mm, form)
            yield Coat(cut, _bevel_drawing(site, number, job.box))
        else:
            yield Coat(key, _strip_drawing(job, site, number, clip))


def _clip(plan: Plan, number: int, window: int) -> Hole:
    above = plan.layers[number + 1 :]
    return above[0].hole(window) if above else Hole(plan.layers[number].outer)


def _flat_drawing(job: _Job, site: Site, number: int, clip: Hole) -> Callable[[], Iterator[Piece]]:
    layer = site.layer(number)

    def draw() -> Iterator[Piece]:
        extent = sheet_extent(layer.outer, site, job.sight.largest_sheet_px)
        return flat_pieces(site, number, clip, job.supplies.surface(layer.skin, extent), job.box)

    return draw


def _bevel_drawing(site: Site, number: int, box: Box) -> Callable[[], Iterator[Piece]]:
    return lambda: bevel_pieces(site, number, box)


def _strip_drawing(job: _Job, site: Site, number: int, clip: Hole) -> Callable[[], Iterator[Piece]]:
    layer, hole = site.layer(number), site.layer(number).hole(site.window)

    def draw() -> Iterator[Piece]:
        extent = strip_extent(clip.rect, hole.rect, site)
        surface = job.supplies.surface(layer.skin, extent)
        ring = Ring(site, number, hole.rect, clip.rect, surface)
        if hole.oval or clip.oval:
            return oval_ring_pieces(ring, clip, job.box)
        return ring_pieces(ring, job.box)

    return draw


def _art_coats(job: _Job, window: int) -> Iterator[Coat]:
    plan, site = job.plan, job.site(window)
    art, form = plan.arts[window], _form(plan.layers, 0.0)
    sight = plan.layers[0].hole(window) if plan.layers else Hole(plan.extent)
    if not _holds(art, sight.rect):
        yield Coat(("ground", window, plan.ground, art, form), _ground_drawing(job, site, sight))
    image = job.supplies.image(job.place, window)
    yield Coat(
        ("art", window, image, art, form),
        lambda: art_pieces(site, image.linear, sight, job.box),
    )


def _ground_drawing(job: _Job, site: Site, sight: Hole) -> Callable[[], Iterator[Piece]]:
    """Draw what the art lies on: a level sheet whose only opening is the art itself."""
    plan = site.plan
    ground = LayerPlan(
        plan.ground, Build.SHEET, (Hole(plan.arts[site.window]),), sight.rect,
        base_mm=0.0, profile=((0.0, 0.0),),
    )  # fmt: skip
    under = replace(site, plan=replace(plan, layers=(ground, *plan.layers)))

    def draw() -> Iterator[Piece]:
        extent = sheet_extent(sight.rect, site, job.sight.largest_sheet_px)
        return flat_pieces(under, 0, sight, job.supplies.surface(plan.ground, extent), job.box)

    return draw


def _holds(outer: Rect, inner: Rect) -> bool:
    slack = 1e-6
    return (
        outer.left <= inner.left + slack
        and outer.top <= inner.top + slack
        and outer.right >= inner.right - slack
        and outer.bottom >= inner.bottom - slack
    )
