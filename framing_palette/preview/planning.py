"""Planning: from a design and its sizes to the plan that the renderer draws."""

from dataclasses import replace

from framing_palette.catalogue import Catalogue, Kind
from framing_palette.design import Design, Layer, LayerSize, OpeningSize, Shape, Sizes, sizes_of
from framing_palette.design.order import overlap_of
from framing_palette.preview.dressing import (
    Look,
    Rack,
    bevel_mm,
    in_mm,
    layer_look,
    moulding_look,
    thickness_mm,
)
from framing_palette.preview.plans import Build, Hole, LayerPlan, Plan, Rect
from framing_palette.preview.skins import REFERENCE_LIGHT, Skin, lab_in_light
from framing_palette.units import Length

_GROUND = Skin("mount board", (95.0, -0.2, 2.6))


def plan_of(
    design: Design,
    catalogue: Catalogue,
    sizes: Sizes | None = None,
    *,
    under: str = REFERENCE_LIGHT,
) -> Plan:
    """Lay a design out in millimetres.

    What the catalogue leaves unknown is drawn in a stated way, and said in the plan's notices.

    Parameters
    ----------
    sizes
        Those of the design, worked out when None.
    under
        The client's light, a name of ``catalogue.light``.

    Raises
    ------
    FieldError
        When the design cannot be built, naming the layer and the field, or the light is unknown.
    UnknownSampleError
        When a code is not in the catalogue.
    """
    sizes = sizes or sizes_of(design)
    rack = Rack(catalogue, under)
    arts = _arts(design, sizes)
    left, top = arts[0].left, arts[0].top
    contents = Rect(0.0, 0.0, *_measures(sizes.contents.lengths)).moved(-left, -top)
    layers, notices, front = _layers(design, sizes, rack, contents)
    plan = Plan(
        arts=tuple(art.moved(-left, -top) for art in arts),
        layers=layers,
        extent=layers[-1].outer if layers else contents,
        ground=replace(_GROUND, lab=lab_in_light(_GROUND.lab, under)),
        wall_z_mm=min(-in_mm(design.art.thickness) - _backing_mm(design), -0.5),
        pane_below=len(layers) if design.glazing else 0,
        notices=notices,
    )
    return _framed(plan, design, sizes, rack, front)


def _framed(plan: Plan, design: Design, sizes: Sizes, rack: Rack, front_mm: float) -> Plan:
    """Return the plan with its moulding, whose rabbet rests on the front of the stack."""
    if not (design.moulding and sizes.frame):
        return plan
    look = moulding_look(design.moulding, rack)
    if design.glazing:
        front_mm += in_mm(design.spacer) + in_mm(design.glazing.thickness)
    base = front_mm - in_mm(design.moulding.rabbet_depth)
    contents = plan.layers[0].outer if plan.layers else plan.extent
    outer = Rect(0.0, 0.0, *_measures(sizes.outer.lengths))
    x, y = (contents if sizes.contents == sizes.outer else plan.extent).middle
    stack = outer.moved(x - outer.width / 2, y - outer.height / 2)
    sight = _centred(stack, *_measures(sizes.frame.sight.lengths))
    frame = LayerPlan(
        look.skin,
        Build.MITRED,
        (Hole(sight),),
        sight.grown(in_mm(design.moulding.face)),
        base,
        look.profile,
    )
    return replace(
        plan,
        layers=(*plan.layers, frame),
        extent=frame.outer,
        wall_z_mm=min(base, -0.5),
        notices=(*plan.notices, *look.notices),
    )


def _arts(design: Design, sizes: Sizes) -> tuple[Rect, ...]:
    """Return the arts with the origin at the contents' corner."""
    if not sizes.layers:
        return (Rect(0.0, 0.0, *_measures((design.art.width, design.art.height))),)
    overlap = in_mm(overlap_of(design))
    return tuple(_rect(opening).grown(overlap) for opening in sizes.layers[0].openings)


def _layers(
    design: Design, sizes: Sizes, rack: Rack, contents: Rect
) -> tuple[tuple[LayerPlan, ...], tuple[str, ...], float]:
    """Return the layers, the notices and the height of their front."""
    plans: list[LayerPlan] = []
    notices: list[str] = []
    front = 0.0 if in_mm(overlap_of(design)) > 0 else -in_mm(design.art.thickness)
    for number, size in enumerate(sizes.layers, start=1):
        look = layer_look(size.layer, f"Layer {number}", rack)
        base = _liner_base(size.layer, look, front) if size.layer.kind is Kind.LINER else front
        plans.append(_layer_plan(size, look, base, contents))
        notices += look.notices
        front = base + thickness_mm(size.layer) - _step_mm(size.layer)
    return tuple(plans), tuple(notices), front


def _layer_plan(size: LayerSize, look: Look, base: float, contents: Rect) -> LayerPlan:
    layer = size.layer
    holes = tuple(
        Hole(
            _rect(opening).moved(contents.left, contents.top),
            opening.shape is not Shape.RECTANGLE,
        )
        for opening in size.openings
    )
    if layer.kind is Kind.MAT:
        widest = min(min(hole.rect.width, hole.rect.height) / 2 for hole in holes)
        bevel = min(bevel_mm(layer), widest)
        return LayerPlan(look.skin, Build.SHEET, holes, contents, base, look.profile, bevel)
    build = Build.BUTTED if layer.join == "butt" else Build.MITRED
    face = in_mm(layer.face) or look.profile[-1][0]
    return LayerPlan(look.skin, build, holes, holes[0].rect.grown(face), base, look.profile)


def _liner_base(liner: Layer, look: Look, front: float) -> float:
    """Return the height of a liner's back: its rabbet rests on the front of what it holds."""
    highest = max(height for _, height in look.profile)
    return max(front - in_mm(liner.rabbet_depth), front - highest)


def _step_mm(layer: Layer) -> float:
    """Return how far the board above sinks onto a wood fillet's step."""
    return in_mm(layer.rabbet_depth) if layer.kind is Kind.WOOD_FILLET else 0.0


def _backing_mm(design: Design) -> float:
    return in_mm(design.backing.thickness) if design.backing else 0.0


def _measures(lengths: tuple[Length, Length]) -> tuple[float, float]:
    return in_mm(lengths[0]), in_mm(lengths[1])


def _rect(opening: OpeningSize) -> Rect:
    width, height = _measures(opening.size.lengths)
    left, top = in_mm(opening.left), in_mm(opening.top)
    return Rect(left, top, left + width, top + height)


def _centred(around: Rect, width: float, height: float) -> Rect:
    x, y = around.middle
    return Rect(x - width / 2, y - height / 2, x + width / 2, y + height / 2)
