"""The last gate before anything is cut: what a ticket must not leave the shop without."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from framing_palette.catalogue import Catalogue
from framing_palette.design.cautions import Caution, cautions_of
from framing_palette.design.depth import Depth, depth_of, too_deep
from framing_palette.design.designs import Design
from framing_palette.design.measuring import AgreedSize
from framing_palette.design.size_parts import Sizes
from framing_palette.design.sizes import sizes_of
from framing_palette.errors import FieldError


@dataclass(frozen=True, slots=True)
class Cuttable:
    """A design that has passed every check, with all that the workshop needs of it."""

    design: Design
    sizes: Sizes
    depth: Depth
    cautions: tuple[Caution, ...]


def check_cuttable(
    design: Design, catalogue: Catalogue | None = None, *, out_of_rabbet: bool = False
) -> Cuttable:
    """Return a design's sizes only when it can be cut as it is.

    Parameters
    ----------
    design : Design
        With the measured art size.
    catalogue : Catalogue or None
        Where its codes must still be, and from which deeper mouldings are named.
    out_of_rabbet : bool
        Whether the framer has agreed to a stack that stands out behind the frame, with a build-up
        or offset clips.

    Raises
    ------
    FieldError
        When a size cannot be worked out or the moulding is missing.
    UnknownSampleError
        When one of its samples is no longer in the catalogue.
    StackTooDeepError
        When the stack does not fit the rabbet and nobody has agreed to that.
    """
    if catalogue is not None:
        for code in design.codes:
            _ = catalogue[code]
    sizes, depth = sizes_of(design), depth_of(design)
    samples = catalogue.samples if catalogue else ()
    if not depth.fits and not out_of_rabbet:
        raise too_deep(depth, samples)
    return Cuttable(design, sizes, depth, cautions_of(design, samples))


def with_measured_pieces(design: Design, agreed: Mapping[int, AgreedSize]) -> Design:
    """Return the design for every piece of art that was measured, by its place among the windows.

    A design of one piece takes the first one's size.
    """
    if design.arrangement is None:
        return with_measured_art(design, agreed[0]) if 0 in agreed else design
    windows = tuple(
        replace(window, width=agreed[place].width, height=agreed[place].height)
        if place in agreed
        else window
        for place, window in enumerate(design.windows)
    )
    return replace(
        design,
        art=replace(design.art, width=windows[0].width, height=windows[0].height),
        arrangement=replace(design.arrangement, windows=windows),
    )


def with_measured_art(design: Design, agreed: AgreedSize) -> Design:
    """Return the design for the art as it was measured.

    Openings go by the size that surely lies within the art. Where the frame itself is sized on
    the art, without any layer, it goes by the size that surely holds it.

    Raises
    ------
    FieldError
        When several pieces of art are arranged: each has measurements of its own.
    """
    if design.arrangement is not None:
        wanted = "enter each window's measured size in the arrangement"
        raise FieldError("art size", got="one of several", wanted=wanted)
    size = agreed.width, agreed.height
    if not design.layers:
        size = agreed.outer_width, agreed.outer_height
    return replace(design, art=replace(design.art, width=size[0], height=size[1]))
