"""Measurements: what an instrument's figures mean, brought to CIELAB D50, 2 degree.

Reflectances say everything; without them, Lab or XYZ need a known illuminant and observer.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from framing_palette.arrays import Float64Array, FloatArray
from framing_palette.catalogue.cells import why_not_a_code
from framing_palette.catalogue.cgats import CgatsTable
from framing_palette.catalogue.conditions import (
    Conditions,
    conditions_of,
    known_light,
    lab_from,
    lab_from_xyz,
    stated_origin,
)
from framing_palette.catalogue.palette_rows import is_possible, why_not_a_reflectance
from framing_palette.catalogue.samples import Kind, Lab, Sample, SampleColour
from framing_palette.catalogue.table_files import unguarded
from framing_palette.catalogue.wavelengths import reflectances_at_ten
from framing_palette.colour import delta_e_2000, spectrum_to_lab_d50
from framing_palette.errors import ExchangeFileError

PLACE_MARK = ":"
"""Stands between a code and the place of a further colour of that sample."""

DISAGREES_FROM = 1.0
"""A stored Lab further than this (ΔE00) from that of the stored reflectance is told."""

_SPECTRAL = re.compile(r"(?:SPECTRAL_?(?:NM_?)?|SPEC_|NM_?|R_)(\d{3})(?:NM)?\Z")
_FIELDS = {
    "lab": (("LAB_L", "LAB_A", "LAB_B"), ("L*", "A*", "B*"), ("L", "A", "B")),
    "xyz": (("XYZ_X", "XYZ_Y", "XYZ_Z"), ("X", "Y", "Z")),
}
_ID_FIELDS = ("SAMPLE_ID", "SAMPLEID", "INDEX")
_NAME_FIELDS = ("SAMPLE_NAME", "SAMPLENAME", "NAME", "SAMPLE_LOC")


@dataclass(frozen=True, slots=True)
class Measurement:
    """One measured colour, Lab D50 2 degree, with its reflectance if there is one.

    ``origin`` says what was stated of figures that told no light.
    """

    identity: str
    name: str
    lab: Lab
    spectrum: tuple[float, ...] | None = None
    origin: str = ""


@dataclass(frozen=True, slots=True)
class MeasurementSet:
    """What one table or file gives, and sentences worth telling about it."""

    measurements: tuple[Measurement, ...]
    notices: tuple[str, ...] = ()


def measurements_of(
    table: CgatsTable, source: Path, assumed: Conditions | None = None
) -> MeasurementSet:
    """Return the colours of a CGATS table.

    Parameters
    ----------
    table
        As parsed.
    source
        The file's name, for messages.
    assumed
        Used where the file tells no illuminant or observer.

    Raises
    ------
    ExchangeFileError
        When it holds no colour, its light is unknown or cannot be converted, or a figure is bad.
    """
    columns = {_plain_field(name): i for i, name in enumerate(table.fields)}
    figures, notices = _Figures(table, source), []
    spectral = _spectral_columns(columns)
    stored = _stored_lab(columns, figures, table, source, assumed, is_needed=not spectral)
    spectra = None
    if spectral:
        spectra, remarks = _spectra(spectral, figures, source)
        notices += remarks
    lab = stored if spectra is None else spectrum_to_lab_d50(spectra)
    if spectra is not None and stored is not None:
        notices += disagreement(spectrum_to_lab_d50(spectra), stored)
    if figures.has_comma:
        notices.append("The figures have decimal commas; they are read as decimal points.")
    if lab is None or not len(lab):
        raise _wrong(source, "holds no row", "choose a table with measurements")
    check_colours(lab, source)
    told = conditions_of(table.keywords)
    used = told.filled_from(assumed or Conditions())
    origin = stated_origin(told, used) if spectra is None else ""
    names = _texts(columns, table, _NAME_FIELDS)
    identities = _texts(columns, table, _ID_FIELDS) or [str(i) for i in range(1, len(lab) + 1)]
    found = tuple(
        Measurement(
            identity=identities[i],
            name=names[i] if names else identities[i],
            lab=(float(lab[i][0]), float(lab[i][1]), float(lab[i][2])),
            spectrum=None if spectra is None else tuple(spectra[i].tolist()),
            origin=origin,
        )
        for i in range(len(lab))
    )
    return MeasurementSet(found, tuple(notices))


def sample_from(measurement: Measurement, kind: Kind, *, code: str = "") -> Sample:
    """Return a measurement as a new sample of one colour."""
    colour = SampleColour(measurement.lab, 1.0, measurement.spectrum)
    return Sample(
        code or measurement.identity,
        measurement.name,
        kind,
        (colour,),
        colour_origin=measurement.origin,
    )


def samples_from(
    measurements: Sequence[Measurement], kind: Kind
) -> tuple[tuple[Sample, ...], tuple[str, ...]]:
    """Return measurements as new samples, and sentences on those that are left out.

    CODE:2, CODE:3 and so on are further colours of CODE. A measurement tells no shares, so the
    colours get equal ones.
    """
    groups: dict[str, list[Measurement]] = {}
    remarks = []
    for one in measurements:
        code, _, place = one.identity.rpartition(PLACE_MARK)
        is_further = place.isdecimal() and int(place) == len(groups.get(code, ())) + 1
        reason = why_not_a_code(one.identity)
        if is_further and code in groups:
            groups[code].append(one)
        elif reason or one.identity in groups:
            told = reason or "the code was measured before"
            remarks.append(f"{one.identity or one.name or 'A set'} is left out: {told}.")
        else:
            groups[one.identity] = [one]
    samples = tuple(
        replace(
            sample_from(group[0], kind),
            colours=tuple(SampleColour(m.lab, 1 / len(group), m.spectrum) for m in group),
        )
        for group in groups.values()
    )
    return samples, tuple(remarks)


class _Figures:
    """The cells of a table as numbers, decimal commas noticed."""

    def __init__(self, table: CgatsTable, source: Path) -> None:
        self._table, self._source = table, source
        self.has_comma = False

    def columns(self, places: Sequence[int]) -> Float64Array:
        """Return columns as numbers, shape (rows, columns)."""
        rows = [[self._number(i, j) for j in places] for i in range(len(self._table.rows))]
        return np.array(rows, dtype=np.float64).reshape(-1, len(places))

    def _number(self, row: int, column: int) -> float:
        text = self._table.rows[row][column]
        if "," in text:
            self.has_comma = True
            text = text.replace(",", ".")
        try:
            value = float(text)
        except ValueError:
            value = float("nan")
        if not np.isfinite(value):
            cell, field = self._table.rows[row][column], self._table.fields[column]
            problem = f'has "{cell}" for {field} in set {row + 1}'
            raise _wrong(self._source, problem, "correct the figure or leave the set out")
        return value


def _plain_field(name: str) -> str:
    return name.upper().strip()


def _spectral_columns(columns: dict[str, int]) -> list[tuple[int, int]]:
    """Return (wavelength in nm, place) of the spectral fields in the order of wavelength."""
    found = [(m, place) for name, place in columns.items() if (m := _SPECTRAL.match(name))]
    return sorted((int(match[1]), place) for match, place in found)


def _spectra(
    spectral: list[tuple[int, int]], figures: _Figures, source: Path
) -> tuple[Float64Array, list[str]]:
    values = figures.columns([place for _, place in spectral])
    notices = []
    if values.size and values.max() > 2:
        values = values / 100
        notices.append("The reflectances are in per cent; they are divided by 100.")
    values, remarks = reflectances_at_ten([nm for nm, _ in spectral], values, source)
    for number, row in enumerate(values, 1):
        reason = why_not_a_reflectance(row.tolist())
        if reason:
            raise _wrong(source, f"has in set {number} {reason}", "correct it or leave it out")
    return values, notices + remarks


def _stored_lab(
    columns: dict[str, int],
    figures: _Figures,
    table: CgatsTable,
    source: Path,
    assumed: Conditions | None,
    *,
    is_needed: bool,
) -> FloatArray | None:
    """Return the Lab or XYZ of the file as Lab D50, or None when reflectances will do instead."""
    conditions = conditions_of(table.keywords).filled_from(assumed or Conditions())
    what, places = next(
        (
            (what, [columns[name] for name in names])
            for what, spellings in _FIELDS.items()
            for names in spellings
            if all(name in columns for name in names)
        ),
        ("", []),
    )
    if not what:
        if is_needed:
            todo = "export Lab, XYZ or reflectances (LAB_L, XYZ_X or SPECTRAL_NM400 ...)"
            raise _wrong(source, "names no field with a colour", todo)
        return None
    try:
        light = known_light(conditions, source, what="Lab" if what == "lab" else "XYZ")
    except ExchangeFileError:
        if is_needed:
            raise
        return None
    values = figures.columns(places)
    if what == "lab":
        return lab_from(values, Conditions(light, 2), source)
    scale = 100.0 if values.size and values.max() > 2 else 1.0
    return lab_from_xyz(values / scale, Conditions(light, 2), source)


def disagreement(lab: FloatArray, stored: FloatArray) -> list[str]:
    """Return a sentence when stored Lab figures are far from those of the reflectances."""
    apart = delta_e_2000(lab, stored)
    if not apart.size or apart.max() < DISAGREES_FROM:
        return []
    worst = int(np.argmax(apart))
    told = (
        f"Its Lab figures and its reflectances disagree by up to ΔE00 {apart[worst]:.1f} "
        f"(set {worst + 1}); the reflectances are believed."
    )
    return [told]


def check_colours(lab: FloatArray, source: Path) -> None:
    """Refuse figures that can stand for no colour.

    Raises
    ------
    ExchangeFileError
        Naming the first such set.
    """
    for number, (lightness, a, b) in enumerate(np.asarray(lab, dtype=np.float64).tolist(), 1):
        if not (lightness <= 100.5 and is_possible((min(lightness, 100.0), a, b))):
            problem = f"has in set {number} the colour {lightness:.1f}, {a:.1f}, {b:.1f}"
            raise _wrong(source, problem, "check the figures: nothing has that colour")


def _texts(columns: dict[str, int], table: CgatsTable, names: Sequence[str]) -> list[str]:
    place = next((columns[name] for name in names if name in columns), None)
    return [] if place is None else [unguarded(row[place]) for row in table.rows]


def _wrong(source: Path, problem: str, todo: str) -> ExchangeFileError:
    return ExchangeFileError(source, problem=problem, todo=todo)
