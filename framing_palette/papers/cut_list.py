"""The numbered cuts of a design: every piece with every figure that it is cut by."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from framing_palette.catalogue import Kind, Sample
from framing_palette.design import (
    Cuttable,
    Figure,
    LayerSize,
    Moulding,
    OpeningSize,
    OvalFrame,
    RailSize,
    RectangleFigure,
    Sides,
    Strip,
    StripFrame,
    oval_frames,
    strip_frames,
)
from framing_palette.units import Length

_StripsOrOval = StripFrame | OvalFrame


@dataclass(frozen=True, slots=True)
class Sized:
    """One figure of a cut, with the word that says what of it: wide, high, long, short."""

    figure: Figure
    word: str

    @property
    def length(self) -> Length:
        """The figure's value."""
        return self.figure.value


@dataclass(frozen=True, slots=True)
class Measure:
    """One line of a cut: what is measured, and one or two figures."""

    name: str
    sizes: tuple[Sized, ...]


@dataclass(frozen=True, slots=True)
class Cut:
    """One piece, or one set of like pieces.

    Parameters
    ----------
    number
        Counted from the art outward; drawings show it.
    part
        What it is.
    code, name
        Of its sample; without one, what is known of its material.
    measures
        Every figure it is cut by.
    remark
        What else to know before cutting it.
    """

    number: int
    part: str
    code: str
    name: str
    measures: tuple[Measure, ...]
    remark: str = ""


def cut_list(cuttable: Cuttable, samples: Mapping[str, Sample]) -> tuple[Cut, ...]:
    """Return every piece that is cut, numbered from the art outward; the moulding comes last."""
    design, sizes = cuttable.design, cuttable.sizes
    frames: list[_StripsOrOval] = [*strip_frames(sizes), *oval_frames(sizes)]
    cuts = [
        _layer_cut(number, size, [f for f in frames if f.layer_number == number], samples)
        for number, size in enumerate(sizes.layers, start=1)
    ]
    whole = (_rectangle("size", sizes.contents),)
    if design.glazing:
        part = f"Glazing, {design.glazing.material}"
        cuts.append(Cut(len(cuts) + 1, part, "", _thick(design.glazing.thickness), whole))
    for name, board in (("Mount board", design.mount), ("Backing", design.backing)):
        if board:
            words = ", ".join(part for part in (board.material, _thick(board.thickness)) if part)
            cuts.append(Cut(len(cuts) + 1, name, "", words, whole))
    if design.moulding and sizes.frame:
        cuts.append(_moulding_cut(len(cuts) + 1, design.moulding, sizes.frame.rails, samples))
    return tuple(cuts)


def sample_words(code: str, samples: Mapping[str, Sample]) -> str:
    """Return a sample's code and name as they are spoken of."""
    sample = samples.get(code)
    return f"{code}  {sample.name}" if sample else code


def _name(code: str, material: str, samples: Mapping[str, Sample]) -> str:
    sample = samples.get(code)
    return sample.name if sample else material


def _thick(length: Length) -> str:
    is_inches = length.is_shown_exactly("in", 64)
    return f"{length.show('in', 64) if is_inches else length.show('mm')} thick"


def _rectangle(name: str, size: RectangleFigure) -> Measure:
    return Measure(name, (Sized(size.width, "wide"), Sized(size.height, "high")))


def _layer_cut(
    number: int, size: LayerSize, frames: list[_StripsOrOval], samples: Mapping[str, Sample]
) -> Cut:
    layer = size.layer
    part = str(layer.kind).replace("_", " ").capitalize()
    name = _name(layer.code, layer.material, samples)
    remark = ""
    if layer.kind is Kind.MAT and layer.sheet_w and layer.sheet_h:
        remark = f"from a sheet of {layer.sheet_w.show('mm')} by {layer.sheet_h.show('mm')}"
    elif frames:
        joins = {
            "one bent piece round an oval"
            if isinstance(frame, OvalFrame)
            else f"strips joined with a {frame.join}"
            for frame in frames
        }
        remark = "; ".join(sorted(joins))
    measures = tuple(_layer_measures(size, frames))
    return Cut(number, part, layer.code, name, measures, remark)


def _layer_measures(size: LayerSize, frames: list[_StripsOrOval]) -> Iterator[Measure]:
    is_mat = size.layer.kind is Kind.MAT
    if is_mat and size.outer:
        yield _rectangle("outside", size.outer)
    several = len(size.openings) > 1
    for number, opening in enumerate(size.openings, start=1):
        name = f"opening {number}" if several else "opening"
        yield from _opening(name, opening, is_mat=is_mat)
        for frame in frames:
            if frame.opening_number == number:
                which = f" of opening {number}" if several else ""
                if isinstance(frame, OvalFrame):
                    yield from _oval(frame, which)
                else:
                    yield from _strips(frame, which)
    if size.layer.borders:
        yield from _sides("borders", size.layer.borders)
    if size.reveal:
        yield from _sides("shows", size.reveal)


def _opening(name: str, opening: OpeningSize, *, is_mat: bool) -> Iterator[Measure]:
    shape = "" if opening.shape == "rectangle" else f", {opening.shape}"
    yield _rectangle(f"{name}{shape}", opening.size)
    if is_mat:
        left = Figure.start(opening.left, "from the left edge")
        top = Figure.start(opening.top, "from the top edge")
        yield Measure(f"{name} begins", (Sized(left, "from left"), Sized(top, "from top")))


def _strips(frame: StripFrame, which: str) -> Iterator[Measure]:
    sides = {strip.side: strip for strip in frame.strips}
    yield _strip(f"2 strips{which}, top and bottom", sides["top"])
    yield _strip(f"2 strips{which}, left and right", sides["left"])
    yield _rectangle(f"joined{which}, outside", frame.joined)
    if frame.is_trimmed:
        yield _rectangle(f"trimmed{which} to", frame.trimmed)


def _oval(frame: OvalFrame, which: str) -> Iterator[Measure]:
    inner = Figure.start(frame.sight_length, "round an ellipse")
    outer = Figure.start(frame.outer_length, "round an ellipse")
    yield _rectangle(f"one piece{which}, outside", frame.outside)
    yield Measure(f"along it{which}", (Sized(inner, "sight edge"), Sized(outer, "outer edge")))


def _strip(name: str, strip: Strip) -> Measure:
    if strip.long_side.value == strip.short_side.value:
        return Measure(name, (Sized(strip.long_side, "long"),))
    return Measure(
        name, (Sized(strip.long_side, "long edge"), Sized(strip.short_side, "sight edge"))
    )


def _sides(name: str, sides: Sides) -> Iterator[Measure]:
    lengths = dict(sides.named)
    if len(set(lengths.values())) == 1:
        figure = Figure.start(sides.top, name)
        yield Measure(name, (Sized(figure, "all round"),))
        return
    for one, two in (("top", "bottom"), ("left", "right")):
        yield Measure(
            name, tuple(Sized(Figure.start(lengths[side], name), side) for side in (one, two))
        )


def _moulding_cut(
    number: int, moulding: Moulding, rails: tuple[RailSize, ...], samples: Mapping[str, Sample]
) -> Cut:
    by_side = {rail.side: rail for rail in rails}
    measures = tuple(
        Measure(
            f"2 rails, {words}",
            (
                Sized(by_side[side].long_point, "long point"),
                Sized(by_side[side].short_point, "short point"),
            ),
        )
        for words, side in (("top and bottom", "top"), ("left and right", "left"))
    )
    name = _name(moulding.code, moulding.material, samples)
    return Cut(number, "Moulding", moulding.code, name, measures, "mitred at 45 degrees")
