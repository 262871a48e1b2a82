"""Mats and panes out of stock sheets: which blank lies where, by cuts from edge to edge.

A board or glass cutter cuts right across, so that only layouts that such cuts can free are made.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import lcm
from typing import Any, Final

from framing_palette.catalogue import Kind
from framing_palette.design.layers import Shape
from framing_palette.design.size_parts import Sizes
from framing_palette.design.spoken import above_zero, not_below_zero, said
from framing_palette.errors import CuttingError
from framing_palette.units import ZERO, Length

Size = tuple[Length, Length]
# More blanks of one kind than this on one day are planned in parts.
MOST_BLANKS: Final = 400


@dataclass(frozen=True, slots=True)
class Blank:
    """A rectangle to be cut; ``may_turn`` is False when its surface has a direction."""

    name: str
    width: Length
    height: Length
    may_turn: bool = True


@dataclass(frozen=True, slots=True)
class PlacedBlank:
    """A blank on its sheet: left and top of it, and whether it lies turned."""

    blank: Blank
    left: Length
    top: Length
    is_turned: bool

    @property
    def size(self) -> Size:
        """Width and height as it lies."""
        size = self.blank.width, self.blank.height
        return (size[1], size[0]) if self.is_turned else size


@dataclass(frozen=True, slots=True)
class CutSheet:
    """One sheet and what is cut from it."""

    size: Size
    placed: tuple[PlacedBlank, ...]

    @property
    def waste_share(self) -> Fraction:
        """What is left of the sheet, as a share of it."""
        used = sum(blank.size[0].mm * blank.size[1].mm for blank in self.placed)
        return 1 - used / (self.size[0].mm * self.size[1].mm)


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """All sheets of one stock."""

    sheets: tuple[CutSheet, ...]

    @property
    def waste_share(self) -> Fraction:
        """What is left of all sheets together, as a share of them."""
        if not self.sheets:
            return Fraction(0)
        return sum((sheet.waste_share for sheet in self.sheets), Fraction(0)) / len(self.sheets)


def plan_sheets(blanks: Iterable[Blank], sheet: Size, *, gap: Length = ZERO) -> SheetPlan:
    """Lay blanks on as few sheets of one size as a set of packing rules finds.

    The fewest sheets win, then the layout that leaves its last sheet emptiest, then the one that
    turns the fewest blanks. The result is good, not proven best.

    Parameters
    ----------
    blanks : iterable of Blank
        Above zero in size.
    sheet : pair of Length
        Width and height of the stock sheet.
    gap : Length
        What the cut takes between two blanks; nothing for a blade.

    Raises
    ------
    CuttingError
        When a blank is larger than the sheet, naming it, or there are too many.
    """
    todo = sorted(blanks, key=lambda blank: (-blank.height, -blank.width, blank.name))
    _check(todo, sheet, gap)
    if not todo:
        return SheetPlan(())
    plans = [_packed(todo, sheet, gap, rule) for rule in _rules()]
    if all(_lies(blank, sheet) for blank in todo):
        upright = [replace(blank, may_turn=False) for blank in todo]
        plans += [_packed(upright, sheet, gap, rule) for rule in _rules()]
    return min(plans, key=_worth)


def _lies(blank: Blank, sheet: Size) -> bool:
    return blank.width <= sheet[0] and blank.height <= sheet[1]


def _worth(plan: SheetPlan) -> tuple[int, Fraction, int]:
    """Return what is least for the best plan."""
    turned = sum(placed.is_turned for sheet in plan.sheets for placed in sheet.placed)
    return len(plan.sheets), -plan.sheets[-1].waste_share, turned


def _check(blanks: Sequence[Blank], sheet: Size, gap: Length) -> None:
    above_zero("sheet size", min(sheet))
    not_below_zero("gap between blanks", gap)
    if len(blanks) > MOST_BLANKS:
        raise CuttingError(
            "One plan",
            needs=f"{len(blanks)} blanks",
            stock=f"at most {MOST_BLANKS} are planned together",
            todo="plan them in parts",
        )
    for blank in blanks:
        above_zero(f"{blank.name} width", blank.width)
        above_zero(f"{blank.name} height", blank.height)
        lies = _lies(blank, sheet)
        lies_turned = blank.may_turn and blank.height <= sheet[0] and blank.width <= sheet[1]
        if not (lies or lies_turned):
            raise CuttingError(
                blank.name,
                needs=f"{said(blank.width)} by {said(blank.height)}",
                stock=f"the stock sheet is {said(sheet[0])} by {said(sheet[1])}",
                todo="order an oversize sheet",
            )


def _rules() -> Iterator[tuple[Any, Any]]:
    """Yield packing rules whose layouts cuts from edge to edge can free, with their orders."""
    import rectpack

    packers = (
        rectpack.GuillotineBssfSas,
        rectpack.GuillotineBssfLas,
        rectpack.GuillotineBafMinas,
        rectpack.GuillotineBafSlas,
        rectpack.GuillotineBlsfMaxas,
    )
    for packer in packers:
        for order in (rectpack.SORT_NONE, rectpack.SORT_AREA, rectpack.SORT_LSIDE):
            yield packer, order


def _packed(blanks: Sequence[Blank], sheet: Size, gap: Length, rule: tuple[Any, Any]) -> SheetPlan:
    """Pack with one rule; blanks that must not turn are packed for themselves."""
    sheets: list[CutSheet] = []
    for may_turn in (True, False):
        alike = [blank for blank in blanks if blank.may_turn is may_turn]
        if alike:
            sheets += _packed_alike(alike, sheet, gap, rule, may_turn=may_turn)
    return SheetPlan(tuple(sheets))


def _packed_alike(
    blanks: Sequence[Blank], sheet: Size, gap: Length, rule: tuple[Any, Any], *, may_turn: bool
) -> list[CutSheet]:
    import rectpack

    lengths = (*sheet, gap, *(side for blank in blanks for side in (blank.width, blank.height)))
    step = Fraction(1, lcm(*(length.mm.denominator for length in lengths)))

    def steps(length: Length) -> int:
        return (length.mm / step).numerator

    packer = rectpack.newPacker(
        mode=rectpack.PackingMode.Offline,
        bin_algo=rectpack.PackingBin.BBF,
        pack_algo=rule[0],
        sort_algo=rule[1],
        rotation=may_turn,
    )
    # The last blank of a row needs no cut after it: the sheet is taken one gap larger.
    packer.add_bin(steps(sheet[0] + gap), steps(sheet[1] + gap), count=len(blanks))
    for number, blank in enumerate(blanks):
        packer.add_rect(steps(blank.width + gap), steps(blank.height + gap), rid=number)
    packer.pack()
    sheets = []
    for bin_ in packer:
        placed = []
        for rectangle in bin_:
            blank = blanks[rectangle.rid]
            is_turned = rectangle.width != steps(blank.width + gap)
            left, top = Length(rectangle.x * step), Length(rectangle.y * step)
            placed.append(PlacedBlank(blank, left, top, is_turned))
        sheets.append(CutSheet(sheet, tuple(placed)))
    return sheets


def fall_outs(sizes: Sizes) -> tuple[Blank, ...]:
    """Return the pieces that fall out of rectangular mat openings, usable for smaller mats.

    A bevel opens toward the viewer, so that the piece is as large as the opening on its back and
    larger by the bevel on its face: cut square, it keeps the size of the opening.
    """
    return tuple(
        Blank(f"fall-out of layer {number}", *opening.size.lengths)
        for number, size in enumerate(sizes.layers, start=1)
        if size.layer.kind is Kind.MAT
        for opening in size.openings
        if opening.shape is Shape.RECTANGLE
    )
