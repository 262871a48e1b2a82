"""A day's cutting: the rails, strips and mats of several jobs, together out of their stock.

Rails and strips of the same code share sticks, mats of the same code share sheets. What has no
code shares only with its own job, and what has no known stock is named instead of guessed.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from framing_palette.catalogue import Kind
from framing_palette.design.designs import Design
from framing_palette.design.layers import Layer
from framing_palette.design.ovals import oval_frames
from framing_palette.design.sheets import Blank, SheetPlan, Size, plan_sheets
from framing_palette.design.size_parts import Sizes
from framing_palette.design.sizes import sizes_of
from framing_palette.design.sticks import DEFAULT_KERF, Piece, StickPlan, plan_sticks
from framing_palette.design.strips import strip_frames
from framing_palette.units import ZERO, Length


@dataclass(frozen=True, slots=True)
class Sticks:
    """One kind of stick: its name, its length if known, and whether its ends are mitred."""

    name: str
    length: Length | None
    mitred: bool


@dataclass(frozen=True, slots=True)
class Sheets:
    """One kind of sheet: its name, and its size if known."""

    name: str
    size: Size | None


@dataclass(frozen=True, slots=True)
class DayPlan:
    """What is cut from what.

    Parameters
    ----------
    sticks, sheets
        A plan for each stock that is needed.
    unplanned
        Sentences that name what has no stick length or sheet size.
    """

    sticks: tuple[tuple[Sticks, StickPlan], ...]
    sheets: tuple[tuple[Sheets, SheetPlan], ...]
    unplanned: tuple[str, ...]


def plan_day(
    jobs: Iterable[tuple[str, Design]], *, kerf: Length = DEFAULT_KERF, gap: Length = ZERO
) -> DayPlan:
    """Plan the cutting of several jobs, or of one.

    Parameters
    ----------
    jobs : iterable of (str, Design)
        What each job is called, and its design.
    kerf : Length
        The saw's.
    gap : Length
        What a cut takes between two mats; nothing for a blade.

    Raises
    ------
    FieldError
        When a design cannot be sized.
    CuttingError
        When a piece is larger than its stock, naming job and piece.
    """
    pieces: dict[Sticks, list[Piece]] = defaultdict(list)
    blanks: dict[Sheets, list[Blank]] = defaultdict(list)
    bent: list[str] = []
    for name, design in jobs:
        sizes = sizes_of(design)
        for sticks, piece in _pieces(name, design, sizes):
            pieces[sticks].append(piece)
        for sheets, blank in _blanks(name, design, sizes):
            blanks[sheets].append(blank)
        bent += [
            f"{name}, layer {frame.layer_number}: a fillet round an oval comes in one piece and is "
            "not planned out of sticks."
            for frame in oval_frames(sizes)
        ]
    return DayPlan(
        tuple(
            (sticks, plan_sticks(todo, (sticks.length,), kerf=kerf, mitred=sticks.mitred))
            for sticks, todo in pieces.items()
            if sticks.length is not None
        ),
        tuple(
            (sheets, plan_sheets(todo, sheets.size, gap=gap))
            for sheets, todo in blanks.items()
            if sheets.size is not None
        ),
        (
            *(_unplanned(s.name, "stick length") for s in pieces if s.length is None),
            *(_unplanned(s.name, "sheet size") for s in blanks if s.size is None),
            *bent,
        ),
    )


def _unplanned(name: str, missing: str) -> str:
    return f"{name} has no known {missing}: its pieces are not planned."


def _pieces(name: str, design: Design, sizes: Sizes) -> Iterator[tuple[Sticks, Piece]]:
    for frame in strip_frames(sizes):
        layer = design.layers[frame.layer_number - 1]
        words = f"{name}, layer {frame.layer_number}"
        sticks = Sticks(layer.code or words, layer.stick, frame.join == "mitre")
        for strip in frame.strips:
            label = f"{words}, opening {frame.opening_number}, {strip.side} strip"
            yield sticks, Piece(label, strip.long_side.value)
    if design.moulding and sizes.frame:
        sticks = Sticks(
            design.moulding.code or f"{name}, moulding", design.moulding.stick, mitred=True
        )
        for rail in sizes.frame.rails:
            yield sticks, Piece(f"{name}, {rail.side} rail", rail.long_point.value)


def _blanks(name: str, design: Design, sizes: Sizes) -> Iterator[tuple[Sheets, Blank]]:
    for place, layer in design.numbered():
        if layer.kind is Kind.MAT:
            words = f"{name}, {place}"
            blank = Blank(words, *sizes.contents.lengths)
            yield Sheets(layer.code or words, _sheet(layer)), blank


def _sheet(layer: Layer) -> Size | None:
    if layer.sheet_w is None or layer.sheet_h is None:
        return None
    return layer.sheet_w, layer.sheet_h
