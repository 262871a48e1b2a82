"""A day's cutting: the rails, strips and mats of several jobs, together out of their stock.

Rails and strips of the same code share sticks, mats of the same code share sheets. What has no
code shares only with its own job, and what has no known stock is named instead of guessed.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import partial
from typing import TypeVar

from framing_palette.catalogue import Kind
from framing_palette.design.designs import Design
from framing_palette.design.layers import Layer
from framing_palette.design.ovals import oval_frames
from framing_palette.design.sheets import Blank, SheetPlan, Size, plan_sheets
from framing_palette.design.size_parts import Sizes
from framing_palette.design.sizes import sizes_of
from framing_palette.design.sticks import DEFAULT_KERF, Piece, StickPlan, plan_sticks
from framing_palette.design.strips import strip_frames
from framing_palette.errors import CuttingError
from framing_palette.units import ZERO, Length

Cut = TypeVar("Cut")
Planned = TypeVar("Planned")


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
        Sentences that name what has no stick length or sheet size, what is larger than its stock
        and what does not come out of straight sticks.
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
        When there are too many pieces of one stock to be planned together.
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
    stick_plans, sheet_plans = list[tuple[Sticks, StickPlan]](), list[tuple[Sheets, SheetPlan]]()
    unplanned = [
        *(_unplanned(sticks.name, "stick length") for sticks in pieces if sticks.length is None),
        *(_unplanned(sheets.name, "sheet size") for sheets in blanks if sheets.size is None),
        *bent,
    ]
    for sticks, todo in pieces.items():
        if sticks.length is not None:
            stock = (sticks.length,)
            cut = partial(plan_sticks, stock=stock, kerf=kerf, mitred=sticks.mitred)
            found, refused = _planned(todo, cut)
            stick_plans += [(sticks, plan) for plan in found]
            unplanned += refused
    for sheets, lying in blanks.items():
        if sheets.size is not None:
            laid, too_large = _planned(lying, partial(plan_sheets, sheet=sheets.size, gap=gap))
            sheet_plans += [(sheets, plan) for plan in laid]
            unplanned += too_large
    return DayPlan(tuple(stick_plans), tuple(sheet_plans), tuple(unplanned))


def _planned(
    todo: list[Cut], plan: Callable[[list[Cut]], Planned]
) -> tuple[list[Planned], list[str]]:
    """Return the plan of what fits its stock at all, and a sentence for each piece that does not.

    Raises
    ------
    CuttingError
        When all pieces fit and yet cannot be planned together, being too many.
    """
    try:
        return [plan(todo)], []
    except CuttingError:
        fitting, refused = list[Cut](), list[str]()
        for piece in todo:
            try:
                plan([piece])
            except CuttingError as error:
                refused.append(str(error))
            else:
                fitting.append(piece)
    return ([plan(fitting)] if fitting else []), refused


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
