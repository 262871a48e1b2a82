"""What a layer of a design lies beside: the colours inside it and outside it."""

from collections.abc import Sequence

from framing_palette.catalogue import Catalogue, SampleColour
from framing_palette.design.designs import Design
from framing_palette.picture import Findings


def colours_beside(
    design: Design, place: int, catalogue: Catalogue, findings: Findings
) -> tuple[SampleColour, ...]:
    """Return the colours on both sides of a layer, half of the weight on each.

    Parameters
    ----------
    design
        The layers from the art outward, then the moulding.
    place
        Which of them, counted from 0; the moulding comes after the last layer.
    catalogue
        Where the samples' colours are; a layer without a sample counts for nothing.
    findings
        The reading of the picture, whose rim lies inside the innermost layer.
    """
    codes = [layer.code for layer in design.layers]
    codes += [design.moulding.code] if design.moulding else []

    def colours(at: int) -> tuple[SampleColour, ...]:
        if at < 0:
            return tuple(SampleColour(found.lab, found.share) for found in findings.rim.colours)
        if at >= len(codes) or codes[at] not in catalogue:
            return ()
        return catalogue[codes[at]].colours

    sides = [side for side in (colours(place - 1), colours(place + 1)) if side]
    return tuple(colour for side in sides for colour in _scaled(side, len(sides)))


def _scaled(colours: Sequence[SampleColour], parts: int) -> tuple[SampleColour, ...]:
    whole = sum(colour.share for colour in colours) or 1.0
    return tuple(SampleColour(colour.lab, colour.share / whole / parts) for colour in colours)
