"""Random designs that can be cut, in exact inches or millimetres, for the invariants.

Hypothesis chooses a seed and each design is built from it: drawing every measure through
hypothesis takes ten times as long.
"""

from fractions import Fraction
from random import Random

from hypothesis import strategies as st

from framing_palette.catalogue import Kind
from framing_palette.design import (
    Arrangement,
    Art,
    Board,
    Design,
    Glazing,
    Layer,
    Moulding,
    Sides,
    Window,
)
from framing_palette.units import ZERO, Length

HIDDEN = Length.mm_of(6)
THIRTY_SECOND = Fraction(127, 160)
QUARTER_MM = Fraction(1, 4)


def lengths(low_mm, high_mm):
    """A length on the thirty-seconds of an inch or the quarters of a millimetre."""
    return st.one_of(
        *(
            st.integers(-(-low_mm // step), high_mm // step).map(lambda n, s=step: Length(s * n))
            for step in (THIRTY_SECOND, QUARTER_MM)
        )
    )


def designs(**wishes):
    """Any design that can be cut: none to six layers, with or without an arrangement."""
    return st.integers(0, 2**48).map(
        lambda seed: RandomStack(Random(seed)).design(**wishes)  # noqa: S311  not for secrets
    )


class RandomStack:
    """Builds one design from a source of chance."""

    def __init__(self, chance):
        self.chance = chance

    def coin(self):
        return self.chance.random() < 0.5

    def length(self, low_mm, high_mm):
        step = self.chance.choice([THIRTY_SECOND, QUARTER_MM])
        low = -(-low_mm // step)
        return Length(step * self.chance.randint(low, max(low, high_mm // step)))

    def sides(self, low_mm, high_mm):
        if self.coin():
            return Sides.all_round(self.length(low_mm, high_mm))
        return Sides(*(self.length(low_mm, high_mm) for _ in range(4)))

    def mat(self, **measures):
        return Layer(Kind.MAT, self.length(1, 6), **measures)

    def hidden_fillet(self):
        """A fillet under another layer: part of its face, or its step, is hidden."""
        reveal = self.sides(2, 12)
        widest = max(length for _, length in reveal.named)
        kind = self.chance.choice([Kind.WRAPPED_FILLET, Kind.WOOD_FILLET])
        thickness, join = self.length(2, 8), self.chance.choice(["mitre", "butt"])
        if kind is Kind.WOOD_FILLET and self.coin():
            return Layer(
                kind, thickness, reveal=Sides.all_round(widest), face=widest, rabbet_width=HIDDEN,
                rabbet_depth=thickness / 2, join=join,
            )  # fmt: skip
        face = widest + HIDDEN + self.length(0, 10)
        return Layer(kind, thickness, reveal=reveal, face=face, bevel=Length.mm_of(1), join=join)

    def covered_layers(self, most):
        return [
            self.hidden_fillet() if self.coin() else self.mat(reveal=self.sides(6, 30))
            for _ in range(self.chance.randint(0, most))
        ]

    def outer_layers(self):
        """The last one or two layers: a bordered mat, a fillet, or a mat in a liner."""
        kind = self.chance.choice(
            ["mat", "mat", "mat", "liner over mat", "liner", "fillet over mat"]
        )
        if kind == "mat":
            return [self.mat(borders=self.sides(25, 110))]
        liner = Layer(
            Kind.LINER, Length.mm_of(16), face=self.length(20, 60), rabbet_width=self.length(6, 9),
            rabbet_depth=Length.mm_of(9),
        )  # fmt: skip
        if kind == "liner":
            return [liner]
        last = liner
        if kind == "fillet over mat":
            last = Layer(Kind.WOOD_FILLET, Length.mm_of(5), face=self.length(9, 20))
        if self.coin():
            return [self.mat(borders=self.sides(30, 110)), last]
        return [self.mat(reveal=self.sides(12, 60)), last]

    def moulding(self):
        rabbet_width = self.length(5, 10)
        return Moulding(
            face=rabbet_width + self.length(4, 80),
            rabbet_width=rabbet_width,
            rabbet_depth=self.length(5, 60),
            allowance=self.length(0, 4),
            clearance=self.length(0, 5),
        )

    def board(self):
        name = self.chance.choice(["", "foam board"])
        return Board(self.length(1, 6), name) if self.coin() else None

    def pane(self):
        name = self.chance.choice(["glass", "acrylic"])
        return Glazing(name, self.length(2, 4)) if self.coin() else None

    def grid(self):
        columns, rows = self.chance.randint(1, 3), self.chance.randint(1, 2)
        windows = tuple(
            Window(self.length(60, 200), self.length(60, 200)) for _ in range(columns * rows)
        )
        return Arrangement(windows, columns, gap=self.length(60, 90))

    def free_places(self):
        """Windows side by side, each moved up or down: never nearer than 60 mm."""
        windows = []
        for column in range(self.chance.randint(1, 3)):
            x = Length.mm_of(800 * column) + self.length(0, 40)
            size = self.length(60, 200), self.length(60, 200)
            windows.append(Window(*size, x=x, y=self.length(-100, 100)))
        return Arrangement(tuple(windows), columns=None)

    def layers(self):
        outer = self.outer_layers()
        return [*self.covered_layers(6 - len(outer)), *outer]

    def design(self, *, layered=None, arranged=None, framed=None):
        has_layers = self.chance.random() < 0.8 if layered is None else layered
        layers = self.layers() if has_layers else []
        if arranged:
            layers = [*self.covered_layers(5), self.mat(borders=self.sides(25, 110))]
        has_mat = any(layer.kind is Kind.MAT for layer in layers)
        has_grid = has_mat and (self.chance.random() < 0.25 if arranged is None else arranged)
        places = self.grid if self.coin() else self.free_places
        arrangement = places() if has_grid else None
        width, height = self.length(60, 900), self.length(60, 900)
        if arrangement:
            width, height = arrangement.windows[0].width, arrangement.windows[0].height
        alone_in_liner = len(layers) == 1 and layers[0].kind is Kind.LINER
        overlap = self.length(-10, 3 if alone_in_liner else 6) if layers else None
        has_frame = self.coin() if framed is None else framed
        return Design(
            art=Art(width, height, self.length(0, 20), overlap),
            layers=tuple(layers),
            glazing=self.pane(),
            mount=self.board(),
            backing=self.board(),
            spacer=self.length(2, 8) if self.coin() else ZERO,
            moulding=self.moulding() if has_frame else None,
            arrangement=arrangement,
            unit=self.chance.choice(["in", "mm", "cm"]),
        )
