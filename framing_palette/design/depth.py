"""Whether the stack fits the rabbet, by how much not, and what would help.

The deepest path is followed from the wall to the viewer. A layer rests on whatever lies under its
edge: on the art when it overlaps or just meets it, else beside it (a floated picture is as deep as
the deeper of the two). Each layer rests on the one beneath; a wood fillet whose whole face shows
carries the board above on its step. A liner adds its lip in front of what it holds.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from framing_palette.catalogue import Kind, Sample
from framing_palette.design.designs import Design
from framing_palette.design.figures import Figure
from framing_palette.design.layers import Layer
from framing_palette.design.order import overlap_of
from framing_palette.design.spoken import said, said_at_least
from framing_palette.errors import FieldError, StackTooDeepError
from framing_palette.units import ZERO, Length, LengthUnit

MOST_NAMED: Final = 5


@dataclass(frozen=True, slots=True)
class Depth:
    """The stack against the rabbet.

    ``stack`` is without the clearance; ``rabbet_depth`` is None without a moulding; ``unit`` is
    what it is spoken in.
    """

    stack: Figure
    clearance: Length
    rabbet_depth: Length | None
    unit: LengthUnit = "in"

    @property
    def needed(self) -> Length:
        """Stack and clearance together."""
        return self.stack.value + self.clearance

    @property
    def shortfall(self) -> Length:
        """How much rabbet is missing; zero when the stack fits or there is no moulding."""
        return ZERO if self.rabbet_depth is None else max(ZERO, self.needed - self.rabbet_depth)

    @property
    def fits(self) -> bool:
        """Whether stack and clearance lie within the rabbet."""
        return not self.shortfall


def depth_of(design: Design) -> Depth:
    """Add up the deepest path through the stack.

    Raises
    ------
    FieldError
        When a layer's thickness, or a liner's rabbet depth, is not known.
    """
    liner = next((layer for layer in design.layers if layer.kind is Kind.LINER), None)
    figure = _contents(design)
    if liner is not None:
        figure = _in_liner(figure, liner, f"layer {len(design.layers)}")
    moulding = design.moulding
    clearance = moulding.clearance if moulding else ZERO
    rabbet_depth = moulding.rabbet_depth if moulding else None
    return Depth(figure, clearance, rabbet_depth, design.unit)


def _contents(design: Design) -> Figure:
    """Return the deepest path without liner and moulding."""
    base = Figure(())
    for board, name in ((design.backing, "backing"), (design.mount, "mount board")):
        base = base.plus(1, board.thickness, name) if board else base
    art = base.plus(1, design.art.thickness, "art")
    rests_on = art if (overlap_of(design) or ZERO) >= ZERO else base
    tops = [art]
    for name, layer in design.numbered():
        if layer.kind is Kind.LINER:
            continue
        thickness = _known_thickness(layer, name)
        tops.append(rests_on.plus(1, thickness, f"{name}, {layer.kind.replace('_', ' ')}"))
        step = _step(layer)
        rests_on = (
            rests_on.plus(1, thickness - step, f"{name} under its step") if step else tops[-1]
        )
    deepest = max(tops, key=lambda figure: figure.value)
    deepest = deepest.plus(1, design.spacer, "spacer")
    if design.glazing:
        deepest = deepest.plus(1, design.glazing.thickness, "glazing")
    return deepest


def _step(layer: Layer) -> Length:
    """Return how far the board above sinks beside a wood fillet whose whole face shows."""
    if layer.kind is not Kind.WOOD_FILLET or layer.rabbet_depth is None or layer.reveal is None:
        return ZERO
    return layer.rabbet_depth if layer.reveal.smallest == layer.face else ZERO


def _known_thickness(layer: Layer, name: str) -> Length:
    if layer.thickness is None:
        wanted = "the depth of the stack needs it"
        raise FieldError(f"{name} thickness", got="missing", wanted=wanted)
    return layer.thickness


def _in_liner(contents: Figure, liner: Layer, name: str) -> Figure:
    """Return the path through a liner: its lip in front, and behind it the deeper of two."""
    if liner.rabbet_depth is None:
        wanted = "the depth of the stack needs it"
        raise FieldError(f"{name} rabbet_depth", got="missing", wanted=wanted)
    thickness = _known_thickness(liner, name)
    if contents.value <= liner.rabbet_depth:
        return Figure(()).plus(1, thickness, f"{name}, liner")
    return contents.plus(1, thickness - liner.rabbet_depth, f"{name}, liner's lip")


def mouldings_that_fit(needed: Length, samples: Iterable[Sample]) -> tuple[Sample, ...]:
    """Return the mouldings whose rabbet holds that depth, the shallowest first."""
    deep = [
        (sample.rabbet_depth, sample)
        for sample in samples
        if sample.kind is Kind.MOULDING
        and sample.rabbet_depth is not None
        and sample.rabbet_depth >= needed
    ]
    deep.sort(key=lambda pair: (pair[0], pair[1].code))
    return tuple(sample for _, sample in deep)


def too_deep(depth: Depth, samples: Iterable[Sample] = ()) -> StackTooDeepError:
    """Say by how much a stack is too deep, which mouldings would hold it and what else helps."""
    fitting = [sample.code for sample in mouldings_that_fit(depth.needed, samples)]
    return StackTooDeepError(
        stack=said(depth.stack.value, depth.unit),
        clearance=said(depth.clearance, depth.unit),
        rabbet=said(depth.rabbet_depth or ZERO, depth.unit),
        shortfall=said_at_least(depth.shortfall, depth.unit),
        fitting=fitting[:MOST_NAMED],
    )
