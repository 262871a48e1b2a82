"""Planning: from a design and its sizes to the plan that the renderer draws."""

from dataclasses import dataclass
from itertools import pairwise
from math import isfinite

from framing_palette.catalogue import Catalogue, Finish, Kind, Profile, Sample
from framing_palette.design import (
    Design,
    Layer,
    LayerSize,
    Moulding,
    Shape,
    Sizes,
    sizes_of,
)
from framing_palette.design.order import overlap_of
from framing_palette.preview.plans import Build, Hole, LayerPlan, Plan, Polyline, Rect
from framing_palette.preview.skins import UNKNOWN_LAB, Skin, skin_of
from framing_palette.units import Length

GROUND = Skin("mount board", (95.0, -0.2, 2.6))
_BOARD_MM = 1.4  # common practice: a 4-ply board, where nothing says otherwise
_BACKING_MM = 4.0
_LIP_MM = 3.0


@dataclass(frozen=True, slots=True)
class _Drawn:
    """A layer's look: its skin, its cross-section and what had to be assumed."""

    skin: Skin
    profile: Polyline
    notices: tuple[str, ...]


def plan_of(design: Design, catalogue: Catalogue, sizes: Sizes | None = None) -> Plan:
    """Lay a design out in millimetres.

    What the catalogue leaves unknown is drawn in a stated way, and said in the plan's notices.

    Parameters
    ----------
    sizes
        Those of the design, worked out when None.

    Raises
    ------
    FieldError
        When the design cannot be built; the sentence names the layer and the field.
    UnknownSampleError
        When a code is not in the catalogue.
    """
    sizes = sizes or sizes_of(design)
    arts = _arts(design, sizes)
    zero = arts[0].left, arts[0].top
    arts = tuple(art.moved(-zero[0], -zero[1]) for art in arts)
    contents = Rect(0.0, 0.0, *_measures(sizes.contents.lengths)).moved(-zero[0], -zero[1])
    layers, notices, front = _layers(design, sizes, catalogue, contents)
    extent = layers[-1].outer if layers else contents
    wall = -_mm(design.art.thickness) - _mm(design.backing.thickness if design.backing else None)
    glazed = len(layers) if design.glazing else 0
    if design.moulding and sizes.frame:
        front += _mm(design.spacer) + (_mm(design.glazing.thickness) if design.glazing else 0.0)
        sight = _centred(contents, *_measures(sizes.frame.sight.lengths))
        frame, told = _frame(design.moulding, catalogue, sight, front)
        layers, notices = (*layers, frame), (*notices, *told)
        extent, wall = frame.outer, frame.base_mm
    return Plan(arts, layers, extent, GROUND, min(wall, -0.5), glazed, notices)


def _arts(design: Design, sizes: Sizes) -> tuple[Rect, ...]:
    """Return the arts with the origin at the contents' corner."""
    if not sizes.layers:
        return (Rect(0.0, 0.0, *_measures((design.art.width, design.art.height))),)
    overlap = _mm(overlap_of(design))
    return tuple(
        _opening_rect(opening.left, opening.top, opening.size.lengths).grown(overlap)
        for opening in sizes.layers[0].openings
    )


def _layers(
    design: Design, sizes: Sizes, catalogue: Catalogue, contents: Rect
) -> tuple[tuple[LayerPlan, ...], tuple[str, ...], float]:
    """Return the layers, the notices and the height of their front."""
    plans: list[LayerPlan] = []
    notices: list[str] = []
    overlap = _mm(overlap_of(design))
    front = 0.0 if overlap > 0 else -_mm(design.art.thickness)
    for number, size in enumerate(sizes.layers, start=1):
        drawn = _look(size.layer, f"Layer {number}", catalogue)
        base = front
        if size.layer.kind is Kind.LINER:
            base = max(front - _mm(size.layer.rabbet_depth), front - _top(drawn.profile))
        holes = tuple(
            Hole(
                _opening_rect(opening.left, opening.top, opening.size.lengths).moved(
                    contents.left, contents.top
                ),
                opening.shape is not Shape.RECTANGLE,
            )
            for opening in size.openings
        )
        plans.append(_layer_plan(size, drawn, holes, base, contents))
        notices += drawn.notices
        front = base + _thickness(size.layer) - _step(size.layer)
    return tuple(plans), tuple(notices), front


def _layer_plan(
    size: LayerSize, drawn: _Drawn, holes: tuple[Hole, ...], base: float, contents: Rect
) -> LayerPlan:
    layer = size.layer
    if layer.kind is Kind.MAT:
        bevel = min(_bevel(layer), *(min(h.rect.width, h.rect.height) / 2 for h in holes))
        return LayerPlan(drawn.skin, Build.SHEET, holes, contents, base, drawn.profile, bevel)
    build = Build.BUTTED if layer.join == "butt" else Build.MITRED
    face = _mm(layer.face) or drawn.profile[-1][0]
    outer = holes[0].rect.grown(face)
    return LayerPlan(drawn.skin, build, holes, outer, base, drawn.profile)


def _look(layer: Layer, name: str, catalogue: Catalogue) -> _Drawn:
    sample = catalogue[layer.code] if layer.code else None
    skin, notices = _skin(sample, catalogue, name)
    thick = _thickness(layer)
    if layer.thickness is None:
        notices = (*notices, f"{name} has no thickness and is drawn {_BOARD_MM} mm thick.")
    if layer.kind is Kind.MAT:
        return _Drawn(skin, ((0.0, 0.0), (_bevel(layer), thick)), notices)
    known = _known_profile(sample)
    if known:
        return _Drawn(skin, known, notices)
    told = f"{skin.code or name} has no cross-section and is drawn with a plain one."
    slope = min(_mm(layer.bevel) or thick, _mm(layer.face) or 4 * thick)
    face = max(_mm(layer.face), slope + thick)
    plain = ((0.0, 0.2 * thick), (slope, thick), (face, thick))
    return _Drawn(skin, plain, (*notices, told))


def _frame(
    moulding: Moulding, catalogue: Catalogue, sight: Rect, front: float
) -> tuple[LayerPlan, tuple[str, ...]]:
    sample = catalogue[moulding.code] if moulding.code else None
    skin, notices = _skin(sample, catalogue, "The moulding")
    depth, face = _mm(moulding.rabbet_depth), _mm(moulding.face)
    profile = _known_profile(sample)
    if profile is None:
        profile = _plain_moulding(depth + _LIP_MM, face, _mm(moulding.height))
        notices = (
            *notices,
            f"{skin.code or 'The moulding'} has no cross-section and is drawn with a plain one.",
        )
    base = front - depth
    plan = LayerPlan(skin, Build.MITRED, (Hole(sight),), sight.grown(face), base, profile)
    return plan, notices


def _plain_moulding(lip: float, face: float, height: float) -> Polyline:
    """Return a softly rounded cross-section for a moulding of which only sizes are known."""
    height = max(height, lip + 0.1 * face)
    fall = min(0.12 * face, height / 2)
    return (
        (0.0, lip),
        (0.12 * face, lip + 0.1),
        (0.3 * face, height - 0.15 * (height - lip)),
        (0.5 * face, height),
        (0.8 * face, height),
        (face, height - fall),
    )


def _skin(sample: Sample | None, catalogue: Catalogue, name: str) -> tuple[Skin, tuple[str, ...]]:
    if sample is not None:
        return skin_of(sample, catalogue)
    told = f"{name} names no sample and is drawn mid-grey."
    return Skin("", UNKNOWN_LAB, Finish.MATT), (told,)


def _known_profile(sample: Sample | None) -> Polyline | None:
    """Return a sample's cross-section when it has one that can be drawn."""
    profile: Profile | None = sample.profile if sample else None
    if profile is None or len(profile.points) < 2:
        return None
    points = tuple((float(x), float(height)) for x, height in profile.points)
    ordered = all(a[0] <= b[0] for a, b in pairwise(points))
    return points if ordered and all(isfinite(value) for p in points for value in p) else None


def _top(profile: Polyline) -> float:
    return max(height for _, height in profile)


def _thickness(layer: Layer) -> float:
    return _BOARD_MM if layer.thickness is None else _mm(layer.thickness)


def _bevel(layer: Layer) -> float:
    return _thickness(layer) if layer.bevel_width is None else _mm(layer.bevel_width)


def _step(layer: Layer) -> float:
    """Return how far the board above sinks onto a wood fillet's step."""
    return _mm(layer.rabbet_depth) if layer.kind is Kind.WOOD_FILLET else 0.0


def _mm(length: Length | None) -> float:
    return 0.0 if length is None else length.as_float_mm()


def _measures(lengths: tuple[Length, Length]) -> tuple[float, float]:
    return _mm(lengths[0]), _mm(lengths[1])


def _opening_rect(left: Length, top: Length, lengths: tuple[Length, Length]) -> Rect:
    width, height = _measures(lengths)
    return Rect(_mm(left), _mm(top), _mm(left) + width, _mm(top) + height)


def _centred(around: Rect, width: float, height: float) -> Rect:
    x, y = around.middle
    return Rect(x - width / 2, y - height / 2, x + width / 2, y + height / 2)
