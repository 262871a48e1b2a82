"""A first design from chosen samples: usual widths that designer and client then change.

All widths here are starting points of common practice, offered and never prescribed.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from framing_palette.catalogue import Kind, Sample
from framing_palette.design.designs import Design
from framing_palette.design.layers import (
    DEFAULT_ALLOWANCE,
    DEFAULT_HIDDEN_OVERLAP,
    Art,
    Board,
    Glazing,
    Layer,
    Moulding,
    Sides,
)
from framing_palette.design.sample_parts import layer_of, moulding_of
from framing_palette.errors import FieldError
from framing_palette.units import Length, LengthUnit

USUAL_REVEAL = Length.inches(Fraction(1, 4))  # common practice
USUAL_GLAZING = Glazing("glass", Length.mm_of(2))
USUAL_BACKING = Board(Length.inches(Fraction(3, 16)), "foam board")  # checks: E. Mueller's stack

# Border of the outermost mat by the art's united inches (common practice: the larger the art, the
# wider the border, but less than in proportion).
_BORDERS = (
    (Length.inches(14), Length.inches(Fraction(3, 2))),
    (Length.inches(20), Length.inches(2)),
    (Length.inches(32), Length.inches(Fraction(5, 2))),
    (Length.inches(44), Length.inches(3)),
)
_WIDEST_BORDER = Length.inches(Fraction(7, 2))


def usual_border(art: Art, unit: LengthUnit = "in") -> Length:
    """Return a usual border for the outermost mat, from the art's width and height together.

    A metric shop gets whole 5 mm.
    """
    united = art.width + art.height
    border = next((border for limit, border in _BORDERS if united <= limit), _WIDEST_BORDER)
    return _in_steps(border, unit, 5)


def usual_overlap(unit: LengthUnit = "in") -> Length:
    """Return how much of the art is hidden on each side at first: 1/8 in (J. C. Kelly, 1998)."""
    return _in_steps(Length.inches(Fraction(1, 8)), unit, 1)


def _in_steps(length: Length, unit: LengthUnit, step_mm: int) -> Length:
    if unit == "in":
        return length
    return Length.mm_of(round(length.mm / step_mm) * step_mm)


def usual_reveal(sample: Sample, unit: LengthUnit = "in") -> Length:
    """Return how much of a covered layer shows at first.

    A mat shows 1/4 in. A wrapped fillet shows its whole bevel, a wood fillet its whole face, each
    no more than its width leaves once the hidden overlap is kept.
    """
    if sample.kind is Kind.WOOD_FILLET and sample.face:
        return sample.face if sample.rabbet_width else sample.face - DEFAULT_HIDDEN_OVERLAP
    if sample.kind is Kind.WRAPPED_FILLET and sample.bevel:
        most = sample.face - DEFAULT_HIDDEN_OVERLAP if sample.face else sample.bevel
        return min(sample.bevel, most)
    return _in_steps(USUAL_REVEAL, unit, 1)


def compose(
    samples: Sequence[Sample],
    art: Art,
    *,
    border: Length | None = None,
    glazing: Glazing | None = USUAL_GLAZING,
    backing: Board | None = USUAL_BACKING,
    unit: LengthUnit = "in",
    name: str = "",
) -> Design:
    """Return a design of these samples with usual widths.

    Parameters
    ----------
    samples
        From the art outward; a moulding, if there is one, comes last.
    art
        What is framed, with its overlap.
    border
        Border of the outermost mat, the usual one when None.
    glazing, backing
        None to leave it out.
    unit, name
        What the figures are spoken in, and what the design is called.

    Raises
    ------
    FieldError
        When a moulding is not the last sample.
    UnknownFactError
        When the catalogue leaves a measure empty that the design needs.
    """
    last = samples[-1] if samples else None
    moulding = last if last is not None and last.kind is Kind.MOULDING else None
    inner = samples[:-1] if moulding else samples
    if any(sample.kind is Kind.MOULDING for sample in inner):
        wanted = "a moulding comes last; list the samples from the art outward"
        raise FieldError("layers", got="with a moulding inside", wanted=wanted)
    borders = Sides.all_round(border or usual_border(art, unit))
    allowance = _in_steps(DEFAULT_ALLOWANCE, unit, 1)
    frame = moulding_of(moulding, allowance=allowance) if moulding else None
    return Design(
        art=art,
        layers=_layers(inner, borders, frame, unit),
        glazing=glazing,
        backing=backing,
        moulding=frame,
        unit=unit,
        name=name,
    )


def _layers(
    samples: Sequence[Sample], borders: Sides, moulding: Moulding | None, unit: LengthUnit
) -> tuple[Layer, ...]:
    mats = [place for place, sample in enumerate(samples) if sample.kind is Kind.MAT]
    outermost = mats[-1] if mats else None
    last = len(samples) - 1
    layers = []
    for place, sample in enumerate(samples):
        is_outermost = place == outermost
        if is_outermost and place >= last - 1:
            layers.append(layer_of(sample, borders=borders))
        elif place < last:
            shown = borders if is_outermost else Sides.all_round(usual_reveal(sample, unit))
            layers.append(layer_of(sample, reveal=shown))
        else:
            layers.append(_trimmed(layer_of(sample), sample, moulding))
    return tuple(layers)


def _trimmed(layer: Layer, sample: Sample, moulding: Moulding | None) -> Layer:
    """Cut a last fillet's strip to what it shows and what the moulding hides of it."""
    if not layer.is_fillet or layer.face is None:
        return layer
    hidden = max(
        DEFAULT_HIDDEN_OVERLAP, moulding.rabbet_width if moulding else DEFAULT_HIDDEN_OVERLAP
    )
    return replace(layer, face=min(layer.face, usual_reveal(sample) + hidden))
