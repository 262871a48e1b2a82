"""Palette rows: the colours, reflectances and cross-sections that belong to the samples."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from framing_palette.catalogue.cells import LONGEST_MM, RowReader, number_text
from framing_palette.catalogue.samples import Lab, Profile, Sample, SampleColour
from framing_palette.catalogue.table_files import guarded

COLOUR_COLUMNS = ("code", "share", "L", "a", "b")
WAVELENGTH_COLUMNS = tuple(f"nm{nm}" for nm in range(380, 731, 10))
SPECTRUM_COLUMNS = ("code", "colour", *WAVELENGTH_COLUMNS)
PROFILE_COLUMNS = ("code", "order", "x_mm", "height_mm")
SHARE_TOLERANCE = 0.02
MOST_LOST_SHARE = 0.15
"""A sample may lose colours to bad cells up to this share; beyond, what is left is another."""

# A brightened paper reflects more than the light it gets at some wavelengths, because it turns
# ultraviolet into blue; beyond this cube root of a tristimulus ratio nothing in a shop does.
_MOST_CUBE_ROOT = 1.06
_LARGEST_CHROMA_AXIS = 128  # a and b of the usual picture files end here
# Screens, vivid pigments and rounded figures overstep what a surface can have by a little; these
# ratios to the white's X, Y and Z are beyond any of them (a margin of our own choice).
_POSSIBLE_RATIOS = (-0.03, 1.75)


@dataclass(frozen=True, slots=True)
class ColourRow:
    """One row of colours.csv; lab is None when a cell is bad, share when its is empty or bad."""

    code: str
    lab: Lab | None
    share: float | None


@dataclass(frozen=True, slots=True)
class SpectrumRow:
    """One row of spectra.csv; `colour` counts that sample's rows in colours.csv from 1."""

    code: str
    colour: int
    reflectance: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class PointRow:
    """One row of profiles.csv, lengths in millimetres; point is None when a cell is bad."""

    code: str
    order: float
    point: tuple[float, float] | None


def read_colour_row(row: RowReader) -> ColourRow | None:
    """Return one colour of a sample as far as it is known, or None without a usable code.

    What is bad is told.
    """
    code = row.code()
    lab, share = _lab(row), row.number("share", least=0, most=100)
    return ColourRow(code, lab, share) if code else None


def _lab(row: RowReader) -> Lab | None:
    before = row.problems.count
    lightness = row.number("l", least=0, most=100)
    most = _LARGEST_CHROMA_AXIS
    a, b = (row.number(column, least=-most, most=most) for column in ("a", "b"))
    for column, value in (("l", lightness), ("a", a), ("b", b)):
        if value is None and not row.text(column):
            row.tell(column, "the cell is empty but a colour needs L, a and b")
    if row.problems.count > before or lightness is None or a is None or b is None:
        return None
    figures = f"{lightness:g}, {a:g}, {b:g}"
    if not is_possible((lightness, a, b)):
        row.tell("a", f"nothing has the colour {figures}; measure it again")
        return None
    if not can_be_seen((lightness, a, b)):
        reason = f"{figures} is more vivid than a surface can be; it is used as it is"
        row.tell("a", reason, is_notice=True)
    return (lightness, a, b)


def is_possible(lab: Lab) -> bool:
    """Whether these figures can stand for a colour at all, be it a screen's or a vivid pigment's.

    L from 0 to 100, a and b from -128 to 128, and X, Y and Z not far outside black to white.
    """
    if not (0 <= lab[0] <= 100 and max(abs(lab[1]), abs(lab[2])) <= _LARGEST_CHROMA_AXIS):
        return False
    least, most = _POSSIBLE_RATIOS
    return all(least <= _ratio_of(root) <= most for root in _cube_roots(lab))


def can_be_seen(lab: Lab) -> bool:
    """Whether a surface in ordinary light can have this colour: no negative or excessive light."""
    return all(root - 4 / 29 >= -1e-9 and root <= _MOST_CUBE_ROOT for root in _cube_roots(lab))


def _cube_roots(lab: Lab) -> tuple[float, float, float]:
    """Return f(X/Xn), f(Y/Yn) and f(Z/Zn) of CIE 15."""
    middle = (lab[0] + 16) / 116
    return middle + lab[1] / 500, middle, middle - lab[2] / 200


def _ratio_of(root: float) -> float:
    """Return the tristimulus ratio of such a root, the inverse of f in CIE 15."""
    return root**3 if root > 6 / 29 else 3 * (6 / 29) ** 2 * (root - 4 / 29)


def colours_of(
    rows: Sequence[tuple[float, ...]], spectra: Mapping[int, tuple[float, ...]]
) -> tuple[tuple[SampleColour, ...], str]:
    """Return a sample's colours, largest share first and adding up to one, and a remark.

    A colour whose cells are bad is left out when it covers ``MOST_LOST_SHARE`` at most; a sample
    that loses more, or nobody knows how much, has no colours, because what is left is another's.

    Parameters
    ----------
    rows
        L, a, b and share in the order of the file; nan for a bad colour or an unknown share.
    spectra
        Reflectance by the place of the colour in the file, from 1.
    """
    shares, remark = _shares([row[3] for row in rows])
    gone = [share for row, share in zip(rows, shares, strict=True) if math.isnan(row[0])]
    if gone:
        is_unknown = any(math.isnan(row[3]) for row in rows)
        if len(gone) == len(rows) or is_unknown or sum(gone) > MOST_LOST_SHARE:
            return (), "has a bad row in colours.csv, and what is left is not its look"
        remark = f"loses {sum(gone):.0%} of its colours to a bad row; the others are scaled to 1"
        shares = [share / (1 - sum(gone)) for share in shares]
    colours = [
        SampleColour((row[0], row[1], row[2]), share, spectra.get(place))
        for place, (row, share) in enumerate(zip(rows, shares, strict=True), 1)
        if not math.isnan(row[0])
    ]
    return tuple(sorted(colours, key=lambda colour: -colour.share)), remark


def _shares(told: Sequence[float]) -> tuple[list[float], str]:
    """Return shares that add up to one, and what had to be done for that; nan for unknown ones."""
    known = [share for share in told if not math.isnan(share)]
    whole = 1.0 if sum(known) < 1 else 100.0 if sum(known) > 2 else 0.0
    if len(known) == len(told):
        shares, remark = list(told), ""
    elif len(known) == len(told) - 1 and 0 < sum(known) < whole:
        shares = [whole - sum(known) if math.isnan(share) else share for share in told]
        remark = "has no share for one colour; what the others leave is used"
    else:
        shares = [1.0] * len(told)
        remark = "" if len(told) == 1 else "has no share for every colour; equal shares are used"
    total = sum(shares)
    if told and total <= 0:
        shares, total, remark = [1.0] * len(told), float(len(told)), "has no share above zero"
    elif not remark and abs(total - 1) > SHARE_TOLERANCE and known:
        remark = f"has shares that add up to {total:g}; they are scaled to 1"
    if abs(total - 1) > 1e-6:
        shares = [share / total for share in shares]
    return shares, remark


def read_spectrum_row(row: RowReader) -> SpectrumRow | None:
    """Return one reflectance, or None when a cell is bad or missing."""
    before = row.problems.count
    code = row.code()
    colour = row.number("colour", least=1, most=1000)
    known = row.numbers(WAVELENGTH_COLUMNS)
    if row.problems.count > before or known is None:
        return None
    reason = why_not_a_reflectance(known)
    if reason:
        column = WAVELENGTH_COLUMNS[known.index(max(known) if max(known) > 1 else min(known))]
        row.tell(column, reason)
        return None
    return SpectrumRow(code, int(colour or 1), tuple(known))


def why_not_a_reflectance(values: Sequence[float]) -> str:
    """Return why values cannot be reflectances from 0 to 1, or an empty text when they can."""
    if max(values) > 2:
        return f"{max(values):g} is no reflectance; write 0 to 1, not per cent"
    if max(values) > 1.2:
        return f"{max(values):g} is over 100 % reflectance, more than a brightened paper gives back"
    if min(values) < 0:
        return f"{min(values):g} is a negative reflectance"
    return ""


def read_point_row(row: RowReader) -> PointRow | None:
    """Return one point of a cross-section as far as it is known, or None without a usable code.

    What is bad is told.
    """
    before = row.problems.count
    code, order = row.code(), row.number("order")
    x, height = (row.number(c, least=0, most=LONGEST_MM) for c in ("x_mm", "height_mm"))
    if row.problems.count == before and (x is None or height is None):
        row.tell("x_mm" if x is None else "height_mm", "the cell is empty")
    if not code:
        return None
    place = float(row.row.number) if order is None else order
    is_bad = row.problems.count > before or x is None or height is None
    return PointRow(code, place, None if is_bad else (x or 0.0, height or 0.0))


def profile_of(rows: Sequence[tuple[float, ...]]) -> tuple[Profile | None, str]:
    """Return a cross-section, or None and why the points make none.

    Parameters
    ----------
    rows
        Order, x and height in millimetres; nan for a bad point, without which the line between
        its neighbours would be a guess.
    """
    line = [(x, height) for _, x, height, *_ in sorted(rows, key=lambda row: row[0])]
    if any(math.isnan(x) for x, _ in line):
        return None, "a cross-section with a bad point stays unknown"
    if len(line) < 2:
        return None, "a cross-section needs two points or more"
    if any(right[0] < left[0] for left, right in pairwise(line)):
        return None, "x_mm goes back; number the points from the sight edge outward"
    return _shared_profile(tuple(line)), ""


@lru_cache(maxsize=4096)
def _shared_profile(points: tuple[tuple[float, float], ...]) -> Profile:
    """Return the cross-section; samples that differ in finish alone share one."""
    return Profile(points)


def colour_cells(sample: Sample) -> Iterator[tuple[str, ...]]:
    """Return the rows of COLOUR_COLUMNS of a sample."""
    for colour in sample.colours:
        figures = (number_text(value) for value in (colour.share, *colour.lab))
        yield (guarded(sample.code), *figures)


def spectrum_cells(sample: Sample) -> Iterator[tuple[str, ...]]:
    """Return the rows of SPECTRUM_COLUMNS of a sample; colours without a spectrum have none."""
    for place, colour in enumerate(sample.colours, 1):
        if colour.spectrum is not None:
            figures = (number_text(value) for value in colour.spectrum)
            yield (guarded(sample.code), str(place), *figures)


def profile_cells(sample: Sample) -> Iterator[tuple[str, ...]]:
    """Return the rows of PROFILE_COLUMNS of a sample."""
    if sample.profile is not None:
        for order, (x, height) in enumerate(sample.profile.points, 1):
            yield (guarded(sample.code), str(order), number_text(x), number_text(height))
