"""LittleCMS's own reader and writer of CGATS text, as an independent opinion.

The library lies inside the imagecodecs wheel, which the program needs anyway.
"""

import ctypes
import importlib.util
from collections.abc import Sequence
from functools import cache
from pathlib import Path


@cache
def library() -> ctypes.CDLL:
    """Return the shared library with the signatures that are used here."""
    spec = importlib.util.find_spec("imagecodecs")
    assert spec is not None
    assert spec.origin is not None
    folder = Path(spec.origin).parents[1] / "imagecodecs.libs"
    lib = ctypes.CDLL(str(next(folder.glob("liblcms2*"))))
    handle, text, number, whole = (
        ctypes.c_void_p,
        ctypes.c_char_p,
        ctypes.c_double,
        ctypes.c_int,
    )
    for name, result, arguments in (
        ("cmsIT8Alloc", handle, [handle]),
        ("cmsIT8SetSheetType", whole, [handle, text]),
        ("cmsIT8SetPropertyStr", whole, [handle, text, text]),
        ("cmsIT8SetPropertyDbl", whole, [handle, text, number]),
        ("cmsIT8SetDataFormat", whole, [handle, whole, text]),
        ("cmsIT8SetDataRowCol", whole, [handle, whole, whole, text]),
        ("cmsIT8SetTable", whole, [handle, ctypes.c_uint32]),
        ("cmsIT8SaveToFile", whole, [handle, text]),
        ("cmsIT8LoadFromFile", handle, [handle, text]),
        ("cmsIT8TableCount", ctypes.c_uint32, [handle]),
        ("cmsIT8GetPropertyDbl", number, [handle, text]),
        ("cmsIT8GetDataRowCol", text, [handle, whole, whole]),
        ("cmsIT8EnumDataFormat", whole, [handle, ctypes.POINTER(ctypes.POINTER(text))]),
        ("cmsIT8Free", None, [handle]),
    ):
        function = getattr(lib, name)
        function.restype, function.argtypes = result, arguments
    return lib


def write_with_littlecms(
    path: Path,
    tables: Sequence[tuple[dict[str, str], Sequence[str], Sequence[Sequence[str]]]],
) -> None:
    """Write tables of (keywords, fields, rows) with LittleCMS."""
    lib = library()
    sheet = lib.cmsIT8Alloc(None)
    lib.cmsIT8SetSheetType(sheet, b"CGATS.17")
    for place, (keywords, fields, rows) in enumerate(tables):
        lib.cmsIT8SetTable(sheet, place)
        for key, value in keywords.items():
            assert lib.cmsIT8SetPropertyStr(sheet, key.encode(), value.encode())
        lib.cmsIT8SetPropertyDbl(sheet, b"NUMBER_OF_FIELDS", len(fields))
        lib.cmsIT8SetPropertyDbl(sheet, b"NUMBER_OF_SETS", len(rows))
        for column, name in enumerate(fields):
            assert lib.cmsIT8SetDataFormat(sheet, column, name.encode())
        for row, cells in enumerate(rows):
            for column, cell in enumerate(cells):
                assert lib.cmsIT8SetDataRowCol(sheet, row, column, cell.encode())
    assert lib.cmsIT8SaveToFile(sheet, str(path).encode())
    lib.cmsIT8Free(sheet)


def read_with_littlecms(path: Path) -> list[tuple[list[str], list[list[str]]]]:
    """Return the fields and rows of each table as LittleCMS reads them."""
    lib = library()
    sheet = lib.cmsIT8LoadFromFile(None, str(path).encode())
    assert sheet, "LittleCMS refuses the file"
    tables = []
    for place in range(lib.cmsIT8TableCount(sheet)):
        lib.cmsIT8SetTable(sheet, place)
        names = ctypes.POINTER(ctypes.c_char_p)()
        count = lib.cmsIT8EnumDataFormat(sheet, ctypes.byref(names))
        rows = int(lib.cmsIT8GetPropertyDbl(sheet, b"NUMBER_OF_SETS"))
        tables.append(
            (
                [(names[i] or b"").decode() for i in range(count)],
                [
                    [(lib.cmsIT8GetDataRowCol(sheet, r, c) or b"").decode() for c in range(count)]
                    for r in range(rows)
                ],
            )
        )
    lib.cmsIT8Free(sheet)
    return tables
