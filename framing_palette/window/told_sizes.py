"""Every size of a design as it is told: a name, its figures, and the sums behind them."""

from collections.abc import Iterator
from dataclasses import dataclass

from framing_palette.catalogue import Catalogue
from framing_palette.design import Cuttable, Figure, RectangleFigure, Weight, weight_of
from framing_palette.papers.cut_list import Cut, cut_list
from framing_palette.units import Length, LengthUnit


@dataclass(frozen=True, slots=True)
class ToldSize:
    """One line: what is measured, its figures, and how each came about."""

    name: str
    value: str
    sums: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldPart:
    """The sizes of one piece that is cut, or of the whole."""

    title: str
    remark: str
    sizes: tuple[ToldSize, ...]


def told_parts(
    cuttable: Cuttable, catalogue: Catalogue, unit: LengthUnit, denominator: int
) -> tuple[ToldPart, ...]:
    """Return the cuts from the art outward, then frame, depth and weight."""
    samples = {code: catalogue[code] for code in cuttable.design.codes if code in catalogue}
    tell = _Teller(unit, denominator)
    parts = [_cut(cut, tell) for cut in cut_list(cuttable, samples)]
    parts.append(ToldPart("The whole", "", tuple(_whole(cuttable, tell))))
    return tuple(parts)


@dataclass(frozen=True, slots=True)
class _Teller:
    unit: LengthUnit
    denominator: int

    def figures(self, length: Length) -> str:
        return length.figures(self.unit, self.denominator)

    def length(self, length: Length) -> str:
        return length.show(self.unit, self.denominator)

    def how(self, figure: Figure) -> str:
        return figure.how(self.unit, self.denominator)

    def rectangle(self, name: str, size: RectangleFigure) -> ToldSize:
        width, height = size.lengths
        return ToldSize(
            name,
            f"{self.figures(width)} × {self.length(height)}",
            (f"Wide: {self.how(size.width)}.", f"High: {self.how(size.height)}."),
        )


def _cut(cut: Cut, tell: _Teller) -> ToldPart:
    sizes = []
    for measure in cut.measures:
        values = [f"{tell.length(sized.length)} {sized.word}" for sized in measure.sizes]
        sums = tuple(
            f"{sized.word.capitalize()}: {tell.how(sized.figure)}." for sized in measure.sizes
        )
        name = f"{measure.name[:1].upper()}{measure.name[1:]}"
        sizes.append(ToldSize(name, ", ".join(values), sums))
    title = f"{cut.number}  {cut.part}" + (f": {cut.name}" if cut.name else "")
    return ToldPart(title, cut.remark, tuple(sizes))


def _whole(cuttable: Cuttable, tell: _Teller) -> Iterator[ToldSize]:
    frame, depth = cuttable.sizes.frame, cuttable.depth
    if frame is not None:
        yield tell.rectangle("Rabbet size", frame.rabbet)
        yield tell.rectangle("Sight size of the frame", frame.sight)
        length = frame.moulding_length
        yield ToldSize(
            "Moulding, without saw waste", tell.length(length.value), (f"{tell.how(length)}.",)
        )
    yield ToldSize("Depth of the stack", tell.length(depth.stack.value), (tell.how(depth.stack),))
    weight = weight_of(cuttable.design, cuttable.sizes)
    yield ToldSize("Weight", f"about {weight.likely_kg:.1f} kg", tuple(_weights(weight)))


def _weights(weight: Weight) -> Iterator[str]:
    for part in weight.parts:
        yield f"{part.name}: {part.likely_kg:.2f} kg, {part.basis}."
    yield f"It lies between {weight.low_kg:.1f} and {weight.high_kg:.1f} kg."
