"""Painting: a plan turned into pieces, layer by layer from the wall to the art."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace

from framing_palette.preview.art import ArtImage, art_pieces
from framing_palette.preview.grids import Box, Grid
from framing_palette.preview.lights import Light
from framing_palette.preview.pieces import Piece
from framing_palette.preview.plans import Build, LayerPlan, Plan, Rect
from framing_palette.preview.sheets import sheet_pieces
from framing_palette.preview.skins import Skin
from framing_palette.preview.strips import Ring, ring_boxes, ring_pieces
from framing_palette.preview.surfaces import Surface
from framing_palette.preview.walls import Wall, frame_shadow, wall_colour, wall_light


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
    wall: Wall | None = field(default_factory=Wall)


Surfaces = Callable[[Skin], Surface]
Images = Callable[[int], ArtImage]


@dataclass(frozen=True, slots=True)
class Coat:
    """One layer's worth of drawing: a key that tells whether it would differ, and the drawing."""

    key: tuple[object, ...]
    draw: Callable[[], Iterator[Piece]]


def coats(
    plan: Plan, view: View, sight: Sight, surfaces: Surfaces, images: Images
) -> Iterator[Coat]:
    """Yield what must be drawn, in the order in which it is laid: wall, frame, layers, art."""
    if sight.wall is not None:
        wall = sight.wall
        yield Coat(
            ("wall", wall, sight.light, view, plan.extent, _form(plan.layers[-1:]), plan.wall_z_mm),
            lambda: _wall_pieces(plan, view, sight, wall),
        )
    for number in reversed(range(len(plan.layers))):
        yield from _layer_coats(plan, number, view, sight.light, surfaces)
    for window in range(len(plan.arts)):
        yield from _art_coats(plan, window, view, sight.light, surfaces, images)


def _form(layers: tuple[LayerPlan, ...]) -> tuple[object, ...]:
    """Return what of some layers throws shade, their looks left out."""
    return tuple((layer.build, layer.holes, layer.base_mm, layer.profile) for layer in layers)


def _layer_coats(
    plan: Plan, number: int, view: View, light: Light, surfaces: Surfaces
) -> Iterator[Coat]:
    layer = plan.layers[number]
    for window in range(len(layer.holes)):
        clip = (
            plan.layers[number + 1].hole(window).rect if plan.layers[number + 1 :] else layer.outer
        )

        def draw(window: int = window, clip: Rect = clip) -> Iterator[Piece]:
            return _layer_pieces(plan, number, window, clip, surfaces(layer.skin), view, light)

        yield Coat(
            ("layer", number, window, layer, clip, _form(plan.layers[number + 1 :]), view, light),
            draw,
        )


def _layer_pieces(
    plan: Plan,
    number: int,
    window: int,
    clip: Rect,
    surface: Surface,
    view: View,
    light: Light,
) -> Iterator[Piece]:
    layer = plan.layers[number]
    if layer.build is Build.SHEET:
        return sheet_pieces(plan, number, window, clip, surface, view.grid, light, view.box)
    ring = Ring(plan, number, window, layer.hole(window).rect, clip, surface, view.grid, light)
    return ring_pieces(ring, view.box)


def _art_coats(
    plan: Plan, window: int, view: View, light: Light, surfaces: Surfaces, images: Images
) -> Iterator[Coat]:
    sight = plan.layers[0].hole(window).rect if plan.layers else plan.extent
    art = plan.arts[window]
    form = _form(plan.layers)
    if not _holds(art, sight):
        # The ground is drawn as a level sheet whose only opening is the art itself.
        ground = LayerPlan(
            plan.ground, Build.SHEET, (replace(plan.layers[0].hole(window), rect=art),), sight,
            base_mm=0.0, profile=((0.0, 0.0),),
        )  # fmt: skip
        under = replace(plan, layers=(ground, *plan.layers))
        yield Coat(
            ("ground", window, plan.ground, art, form, view, light),
            lambda: sheet_pieces(
                under, 0, window, sight, surfaces(plan.ground), view.grid, light, view.box
            ),
        )
    yield Coat(
        ("art", window, images(window), art, form, view, light),
        lambda: art_pieces(plan, window, images(window).linear, view.grid, light, view.box),
    )


def _holds(outer: Rect, inner: Rect) -> bool:
    slack = 1e-6
    return (
        outer.left <= inner.left + slack
        and outer.top <= inner.top + slack
        and outer.right >= inner.right - slack
        and outer.bottom >= inner.bottom - slack
    )


def _wall_pieces(plan: Plan, view: View, sight: Sight, wall: Wall) -> Iterator[Piece]:
    colour = wall_colour(wall)
    shadow = frame_shadow(plan, view.grid, view.box, sight.light)
    for box in ring_boxes(view.box, view.grid.inside(plan.extent).meet(view.box)):
        part = box.meet(view.box)
        if not part.empty:
            lit = wall_light(part, view.whole, wall, sight.light)
            lit = lit * shadow[part.within(view.box)]
            yield Piece(part, lit[..., None] * colour)
