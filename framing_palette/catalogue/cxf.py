"""CxF: measured colours out of a colour exchange document, and into one.

References
----------
ISO 17972-1:2015, Graphic technology: Colour data exchange format, Part 1: Relationship to CxF3.
Parsed and written with the colour-cxf library.
"""

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path
from typing import Any
from xml.parsers import expat

import numpy as np

from framing_palette.catalogue.conditions import Conditions, lab_from, lab_from_xyz
from framing_palette.catalogue.measurements import (
    Measurement,
    MeasurementSet,
    check_colours,
    disagreement,
)
from framing_palette.catalogue.palette_rows import why_not_a_reflectance
from framing_palette.catalogue.wavelengths import reflectances_at_ten
from framing_palette.colour import WAVELENGTHS_NM, spectrum_to_lab_d50
from framing_palette.errors import ExchangeFileError

MOST_LEVELS = 100
_XML_FAULTS = (ValueError, TypeError, SyntaxError, LookupError, ArithmeticError, RecursionError)
_SPECIFICATION = "D50_2"
_NAMESPACE = b"colorexchangeformat.com/CxF3-core"


def parse_cxf(document: bytes, source: Path) -> MeasurementSet:
    """Return the objects of a CxF3 document that have a colour.

    Raises
    ------
    ExchangeFileError
        When it is not CxF3, holds no colour, or a colour's light is unknown.
    """
    content = _parsed(document, source)
    resources = content.resources
    if resources is None or resources.object_collection is None:
        raise _wrong(source, "holds no objects", "export it with its colours")
    specifications = _specifications(resources)
    found, notices = [], dict[str, None]()
    for item in resources.object_collection.object_value:
        measurement, remarks = _measurement(item, specifications, source)
        notices.update(dict.fromkeys(remarks))
        if measurement is not None:
            found.append(measurement)
    if not found:
        raise _wrong(source, "holds no Lab, XYZ or reflectance", "export it with its colours")
    return MeasurementSet(tuple(found), tuple(notices))


def cxf_document(measurements: Sequence[Measurement], *, created: datetime) -> bytes:
    """Return measurements as a CxF3 document, Lab D50 2 degree and reflectances.

    Parameters
    ----------
    measurements
        What to write.
    created
        Stands in the document as its date; with a time zone.

    Raises
    ------
    ExchangeFileError
        When the optional library is not installed.
    """
    cxf = _library(Path("the export"))
    from xsdata.models.datatype import XmlDateTime

    date = cxf.CreationDate(XmlDateTime.from_datetime(created))
    objects = [_object(cxf, measurement, i, date) for i, measurement in enumerate(measurements, 1)]
    document = cxf.CxF(
        file_information=cxf.FileInformation(
            creator="Framing Palette", creation_date=date, description="Framing samples"
        ),
        resources=cxf.Resources(
            object_collection=cxf.ObjectCollection(object_value=objects),
            color_specification_collection=cxf.ColorSpecificationCollection(
                color_specification=[_specification(cxf)]
            ),
        ),
    )
    import colour_cxf

    written: bytes = colour_cxf.write_cxf(document)
    return written


def _library(source: Path) -> Any:
    try:
        from colour_cxf import cxf3
    except ImportError as error:
        raise _wrong(
            source, "needs the optional package colour-cxf", "install framing-palette[cxf]"
        ) from error
    return cxf3


def _parsed(document: bytes, source: Path) -> Any:
    cxf = _library(source)
    from xsdata.exceptions import ConverterError, ParserError
    from xsdata.formats.dataclass.parsers import XmlParser
    from xsdata.formats.dataclass.parsers.config import ParserConfig
    from xsdata.formats.dataclass.parsers.handlers import XmlEventHandler

    if _NAMESPACE not in document:
        raise _wrong(source, "is not a readable CxF3 document", "export it again as CxF3")
    _check_plain(document, source)
    # The library's own reading leaves a figure that is none as text and refuses a maker's own
    # additions; a bad figure must be refused, and what nobody here needs may stand there.
    wishes = ParserConfig(fail_on_converter_warnings=True, fail_on_unknown_properties=False)
    parser = XmlParser(config=wishes, handler=XmlEventHandler)
    try:
        return parser.from_bytes(document, cxf.CxF)
    except (ParserError, ConverterError, *_XML_FAULTS) as error:
        raise _wrong(
            source, "is not a readable CxF3 document", "export it again as CxF3"
        ) from error


def _check_plain(document: bytes, source: Path) -> None:
    """Walk through the document without keeping it, whatever its encoding.

    A document type can define entities that swell without end when they are expanded; elements
    within elements without end take the parser's own stack.

    Raises
    ------
    ExchangeFileError
        When it defines its type, is nested too deeply or is no XML.
    """
    depth = 0

    def refuse_type(*_: object) -> None:
        raise _wrong(source, "defines its own entities", "export it as plain CxF3")

    def enter(*_: object) -> None:
        nonlocal depth
        depth += 1
        if depth > MOST_LEVELS:
            problem = f"nests its elements more than {MOST_LEVELS} deep"
            raise _wrong(source, problem, "export it as plain CxF3")

    def leave(*_: object) -> None:
        nonlocal depth
        depth -= 1

    walker = expat.ParserCreate()
    walker.StartDoctypeDeclHandler = refuse_type
    walker.StartElementHandler, walker.EndElementHandler = enter, leave
    try:
        walker.Parse(document, True)  # noqa: FBT003 - the parser takes it by place
    except ExchangeFileError:
        raise
    except (expat.ExpatError, *_XML_FAULTS) as error:
        raise _wrong(
            source, "is not a readable CxF3 document", "export it again as CxF3"
        ) from error


def _specifications(resources: Any) -> dict[str, Any]:
    collection = resources.color_specification_collection
    return {} if collection is None else {one.id: one for one in collection.color_specification}


def _conditions(specification: Any) -> Conditions:
    tristimulus = None if specification is None else specification.tristimulus_spec
    if tristimulus is None:
        return Conditions()
    light = getattr(tristimulus.illuminant_or_custom_illuminant, "value", None)
    observer = getattr(tristimulus.observer, "value", None)
    degrees = {"2_Degree": 2, "10_Degree": 10}
    return Conditions(
        str(getattr(light, "value", "")), degrees.get(str(getattr(observer, "value", "")))
    )


def _measurement(
    item: Any, specifications: dict[str, Any], source: Path
) -> tuple[Measurement | None, list[str]]:
    values = [] if item.color_values is None else item.color_values.choice
    by_kind = {type(value).__name__: value for value in reversed(values)}
    stored = _stored_lab(by_kind, specifications, source)
    identity, name = str(item.id or item.name or ""), str(item.name or item.id or "")
    if "ReflectanceSpectrum" not in by_kind:
        if stored is None:
            return None, []
        return Measurement(identity, name, stored), []
    spectrum, remarks = _spectrum(by_kind["ReflectanceSpectrum"], specifications, source)
    lab = spectrum_to_lab_d50(spectrum)
    if stored is not None:
        remarks += disagreement(lab[np.newaxis], np.array([stored]))
    check_colours(lab[np.newaxis], source)
    triple = (float(lab[0]), float(lab[1]), float(lab[2]))
    return Measurement(identity, name, triple, tuple(spectrum.tolist())), remarks


def _stored_lab(
    by_kind: dict[str, Any], specifications: dict[str, Any], source: Path
) -> tuple[float, float, float] | None:
    """Return the Lab or XYZ of an object as Lab D50.

    A light that cannot be converted is refused only without a reflectance to fall back on.
    """
    value = by_kind.get("ColorCielab") or by_kind.get("ColorCiexyz")
    if value is None:
        return None
    conditions = _conditions(specifications.get(value.color_specification))
    try:
        if "ColorCielab" in by_kind:
            lab = lab_from(
                np.array([value.l, value.a, value.b], dtype=np.float64), conditions, source
            )
        else:
            xyz = np.array([value.x, value.y, value.z], dtype=np.float64) / 100
            lab = lab_from_xyz(xyz, conditions, source)
    except ExchangeFileError:
        if "ReflectanceSpectrum" in by_kind:
            return None
        raise
    check_colours(lab[np.newaxis], source)
    return (float(lab[0]), float(lab[1]), float(lab[2]))


def _spectrum(value: Any, specifications: dict[str, Any], source: Path) -> tuple[Any, list[str]]:
    """Return a reflectance at 380 to 730 nm by 10 and remarks on how it was made."""
    specification = specifications.get(value.color_specification)
    measured = None if specification is None else specification.measurement_spec
    band = None if measured is None else measured.wavelength_range
    start = value.start_wl or (band.start_wl if band else None)
    step = band.increment if band and band.increment else 10
    if start is None:
        raise _wrong(source, "tells no start of its wavelengths", "export it with StartWL")
    wavelengths = [start + step * i for i in range(len(value.value))]
    rows, remarks = reflectances_at_ten(wavelengths, np.array([value.value]), source)
    reason = why_not_a_reflectance(rows[0].tolist())
    if reason:
        raise _wrong(source, f"holds a bad reflectance: {reason}", "correct it or leave it out")
    return rows[0], remarks


def _object(cxf: Any, measurement: Measurement, number: int, date: Any) -> Any:
    lightness, a, b = measurement.lab
    values = [cxf.ColorCielab(l=lightness, a=a, b=b, color_specification=_SPECIFICATION)]
    if measurement.spectrum is not None:
        values.append(
            cxf.ReflectanceSpectrum(
                value=list(measurement.spectrum),
                start_wl=int(WAVELENGTHS_NM[0]),
                color_specification=_SPECIFICATION,
            )
        )
    return cxf.Object(
        creation_date=date,
        color_values=cxf.ColorValues(choice=values),
        object_type="Standard",
        name=measurement.name,
        id=measurement.identity or str(number),
    )


def _specification(cxf: Any) -> Any:
    return cxf.ColorSpecification(
        tristimulus_spec=cxf.TristimulusSpec(
            illuminant_or_custom_illuminant=cxf.Illuminant(cxf.EilluminantType.D50),
            observer=cxf.Observer(cxf.EobserverType.VALUE_2_DEGREE),
            method=cxf.Method(cxf.EastmTableType("E308_1nm")),
        ),
        measurement_spec=cxf.MeasurementSpec(
            measurement_type=cxf.MeasurementType(cxf.EspectrumType.SPECTRUM_REFLECTANCE),
            geometry_choice=cxf.GeometryChoice(choice="not told"),
            wavelength_range=cxf.WavelengthRange(start_wl=int(WAVELENGTHS_NM[0]), increment=10),
        ),
        id=_SPECIFICATION,
    )


def _wrong(source: Path, problem: str, todo: str) -> ExchangeFileError:
    return ExchangeFileError(source, problem=problem, todo=todo)
