"""An invented rack whose samples know every measure that a design needs."""

from framing_palette.catalogue import Catalogue, Kind, Sample, SampleColour
from framing_palette.units import Length

inch = Length.inches
BOARD = inch("1/16")


def part(code: str, lab: tuple[float, float, float], kind: Kind, **measures: Length) -> Sample:
    name = code.replace("-", " ").capitalize()
    return Sample(code, name, kind, (SampleColour(lab, 1.0),), **measures)


def moulding(code: str, lab: tuple[float, float, float], face: str, rabbet_depth: str) -> Sample:
    return part(
        code,
        lab,
        Kind.MOULDING,
        face=inch(face),
        thickness=inch(rabbet_depth) + inch("3/8"),
        rabbet_width=inch("1/4"),
        rabbet_depth=inch(rabbet_depth),
        stick=inch(120),
    )


BUILDABLE = Catalogue(
    samples=(
        part("brick-red", (38.0, 30.0, 20.0), Kind.MAT, thickness=BOARD),
        part("deep-sea", (40.0, -4.0, -14.0), Kind.MAT, thickness=BOARD),
        part("pale-sky", (80.0, -3.0, -7.0), Kind.MAT, thickness=BOARD),
        part("acid-lime", (85.0, -50.0, 80.0), Kind.MAT, thickness=BOARD),
        moulding("black-flat", (18.0, 0.0, 0.0), "1 1/2", "5/8"),
        moulding("thin-ash", (60.0, 4.0, 18.0), "1", "1/4"),
    ),
    name="Invented rack that can be built",
)
