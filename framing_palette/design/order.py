"""Whether the layers of a design can stand in their order, and what each shows.

The rules, counted from the art outward:

- Every layer but the last needs a reveal; the outermost mat needs borders when it is the last.
- A fillet lies UNDER the layer above it: its reveal is the width that shows, and the rest of its
  strip is hidden; that rest must be at least the hidden overlap. The strip is as wide as the
  face; a wood fillet with a step has the step beyond its face.
- A liner is a small frame of its own and comes last; its rabbet holds everything inside it.
- The outermost mat may give borders instead of a reveal when one fillet or liner stands over it:
  the reveal is then the border less what the fillet or liner covers.
- A liner directly on the art needs no overlap: its rabbet and the play say what it hides.
- A layer that is last ignores a reveal, because the moulding decides what shows of it.
"""

from framing_palette.catalogue import Kind
from framing_palette.design.designs import Design
from framing_palette.design.layers import MOST_LAYERS, Layer, Shape, Sides
from framing_palette.errors import FieldError
from framing_palette.units import ZERO, Length


def check_order(design: Design) -> None:
    """Refuse layers that cannot stand in this order or lack a measure that their place needs.

    Raises
    ------
    FieldError
        Naming the layer and the field.
    """
    if len(design.layers) > MOST_LAYERS:
        wanted = f"a design takes at most {MOST_LAYERS}"
        raise FieldError("number of layers", got=len(design.layers), wanted=wanted)
    for place, (name, layer) in enumerate(design.numbered()):
        _check_kind(design, name, layer, is_last=place == len(design.layers) - 1)
        _check_borders(design, name, place)
        _check_face(design, name, layer, place)
    _check_windows(design)
    _check_overlap(design)


def _check_kind(design: Design, name: str, layer: Layer, *, is_last: bool) -> None:
    if layer.kind is Kind.MOULDING:
        wanted = "the moulding is named apart from the layers"
        raise FieldError(f"{name} kind", got="moulding", wanted=wanted)
    if layer.kind is Kind.LINER and not is_last:
        wanted = (
            f"a liner must be the last of the {len(design.layers)} layers, next to the moulding"
        )
        raise FieldError(f"{name} kind", got="liner", wanted=wanted)


def _check_borders(design: Design, name: str, place: int) -> None:
    layer, is_last = design.layers[place], place == len(design.layers) - 1
    if layer.borders and place != design.outermost_mat:
        wanted = "only the outermost mat has borders; list the layers from the art outward"
        raise FieldError(f"{name} borders", got="given", wanted=wanted)
    if is_last and layer.kind is Kind.MAT and not layer.borders:
        wanted = "the outermost mat needs them; list the layers from the art outward"
        raise FieldError(f"{name} borders", got="missing", wanted=wanted)
    if is_last:
        return
    if layer.reveal and layer.borders:
        wanted = "under another layer give either borders or a reveal"
        raise FieldError(f"{name} borders", got="given beside a reveal", wanted=wanted)
    if not layer.reveal and not (layer.borders and place == len(design.layers) - 2):
        raise FieldError(
            f"{name} reveal", got="missing", wanted="every layer but the last needs one"
        )


def _check_face(design: Design, name: str, layer: Layer, place: int) -> None:
    """Refuse a strip that is too narrow for what it shows and what it must hide."""
    if layer.kind is Kind.MAT:
        return
    if place == len(design.layers) - 1:
        _check_last_strip(design, name, layer)
        return
    width, face = layer.strip_width or ZERO, layer.face or ZERO
    least = design.hidden_overlap
    for side, reveal in layer.reveal.named if layer.reveal and layer.face else ():
        hidden = width - reveal
        if reveal > face:
            wanted = f"it cannot be wider than the layer itself, {design.said(face)}"
            raise FieldError(f"{name} reveal, {side}", got=design.said(reveal), wanted=wanted)
        if hidden < least:
            wanted = (
                f"{design.said(hidden)} would be hidden but {design.said(least)} must be; "
                f"show less or take a strip of at least {design.said_at_least(reveal + least)}"
            )
            raise FieldError(f"{name} reveal, {side}", got=design.said(reveal), wanted=wanted)


def _check_last_strip(design: Design, name: str, layer: Layer) -> None:
    if layer.face is None:
        wanted = "the last layer's whole width is needed to size the frame"
        raise FieldError(f"{name} face", got="missing", wanted=wanted)
    holds_boards = len(design.layers) > 1 or design.glazing or design.backing or design.mount
    if layer.kind is Kind.LINER and layer.rabbet_width is None and holds_boards:
        wanted = "it is needed to size what lies in the liner"
        raise FieldError(f"{name} rabbet_width", got="missing", wanted=wanted)


def _check_windows(design: Design) -> None:
    outer = design.layers[-1] if design.layers else None
    shapes = {window.shape for window in design.windows} - {Shape.RECTANGLE}
    if outer and shapes and design.outermost_mat is None:
        wanted = (
            f"around an {Shape.OVAL} or {Shape.ROUND} opening it needs a mat over it, which holds "
            "it and has straight outer edges"
        )
        field = f"layer {len(design.layers)} kind"
        raise FieldError(field, got=outer.kind.replace("_", " "), wanted=wanted)
    if len(design.windows) > 1 and design.outermost_mat is None:
        wanted = "several openings need a mat to lie in"
        raise FieldError("windows", got=len(design.windows), wanted=wanted)


def _check_overlap(design: Design) -> None:
    overlap = overlap_of(design)
    if overlap is None:
        if design.layers:
            wanted = "say how much of the art is hidden on each side, negative for a margin"
            raise FieldError("art overlap", got="missing", wanted=wanted)
        return
    for window in design.windows:
        for axis, size in (("width", window.width), ("height", window.height)):
            if 2 * overlap >= size:
                wanted = f"it must be less than half the art's {axis}, {design.said(size / 2)}"
                raise FieldError("art overlap", got=design.said(overlap), wanted=wanted)


def cover_of(design: Design, layer: Layer) -> Length | None:
    """Return how far a last fillet or liner covers what lies in it, per side; None when unknown.

    A liner covers its rabbet width less half the play; a fillet covers with its whole strip.
    """
    if layer.kind is Kind.LINER:
        return layer.rabbet_width - design.allowance / 2 if layer.rabbet_width else None
    return layer.strip_width


def overlap_of(design: Design) -> Length | None:
    """Return how much of the art is hidden on each side; None when nothing says it."""
    first = design.layers[0] if design.layers else None
    if design.art.overlap is None and first and first.kind is Kind.LINER:
        return cover_of(design, first)
    return design.art.overlap if first else None


def reveals_of(design: Design) -> tuple[Sides | None, ...]:
    """Return what shows of every layer beyond the one above it; None for the last.

    Raises
    ------
    FieldError
        When a border is too narrow for the fillet or liner over it, or its cover is unknown.
    """
    reveals: list[Sides | None] = []
    for place, (name, layer) in enumerate(design.numbered()):
        if place == len(design.layers) - 1:
            reveals.append(None)
        elif layer.borders:
            reveals.append(_uncovered(design, name, layer.borders))
        else:
            reveals.append(layer.reveal)
    return tuple(reveals)


def _uncovered(design: Design, name: str, borders: Sides) -> Sides:
    last = design.layers[-1]
    cover = cover_of(design, last) or ZERO
    for side, border in borders.named:
        if border <= cover:
            wanted = f"it must be wider than the {design.said(cover)} that the layer over it covers"
            raise FieldError(f"{name} borders, {side}", got=design.said(border), wanted=wanted)
    return borders.plus(-cover)
