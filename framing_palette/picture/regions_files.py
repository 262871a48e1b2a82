"""The regions file: outlines and roles as JSON, read with every mistake named."""

import json
from collections.abc import Iterable
from pathlib import Path
from typing import Any, NoReturn

from framing_palette.errors import RegionsFileError
from framing_palette.picture.outlines import outline_fault
from framing_palette.picture.regions import DRAWN_ROLES, Part, Point, Region, Role
from framing_palette.whole_files import read_whole, write_whole

MAX_FILE_BYTES = 20_000_000
MAX_REGIONS = 500
_FARTHEST = 1e6  # far beyond any picture; a number that is none is not within it either
_FORM = '{"regions": [{"name": "boat", "role": "focus", "polygon": [[x, y], ...]}]}'


def read_regions_file(path: Path | str) -> tuple[Region, ...]:
    """Return the regions of a file, in order.

    A region has "name", "role" (focus, support or ground) and either "polygon" or "parts", a list
    of {"polygon": [...], "subtract": true or false}. x and y run from 0 to 1.

    Raises
    ------
    RegionsFileError
        Naming the region and what to do, when anything in the file cannot be used.
    """
    path = Path(path)
    content = _content(path)
    listed = content.get("regions") if isinstance(content, dict) else None
    if not isinstance(listed, list):
        _refuse(path, 'has no list "regions"', f"write it like {_FORM}")
    if len(listed) > MAX_REGIONS:
        _refuse(path, f"has {len(listed)} regions", f"keep at most {MAX_REGIONS}")
    regions = tuple(_region(path, number, entry) for number, entry in enumerate(listed, start=1))
    _refuse_same_names(path, regions)
    return regions


def write_regions_file(path: Path | str, regions: Iterable[Region]) -> None:
    """Write regions so that :func:`read_regions_file` returns the same ones.

    The old file stays whole until the new one is complete.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    text = json.dumps({"regions": [_entry(region) for region in regions]}, indent=1)
    write_whole(Path(path), (text + "\n").encode())


def _content(path: Path) -> Any:
    try:
        size = path.stat().st_size
        if size > MAX_FILE_BYTES:
            _refuse(path, f"has {size / 1e6:.0f} MB", "draw the outlines with fewer points")
        data = read_whole(path, MAX_FILE_BYTES)
    except FileNotFoundError as missing:
        raise RegionsFileError(
            path, problem="does not exist", todo="check the name and the folder"
        ) from missing
    except OSError as fault:
        raise RegionsFileError(
            path,
            problem=f"cannot be opened ({fault.strerror or fault})",
            todo="check that it is a file and that you may read it",
        ) from fault
    try:
        return json.loads(data.decode("utf-8-sig"))
    except (ValueError, RecursionError) as fault:
        where = f" (line {fault.lineno})" if isinstance(fault, json.JSONDecodeError) else ""
        raise RegionsFileError(
            path, problem=f"is not JSON{where}", todo=f"write it like {_FORM}"
        ) from fault


def _region(path: Path, number: int, entry: Any) -> Region:
    if not isinstance(entry, dict):
        _refuse(path, f"has a region {number} that is not an object", f"write it like {_FORM}")
    name = entry.get("name", f"region {number}")
    if not isinstance(name, str) or not name.strip():
        _refuse(path, f"has a region {number} without a name", "give it a name in quotes")
    label = f'region {number} ("{name}")'
    return Region(
        name=name.strip(),
        role=_role(path, label, entry.get("role", Role.SUPPORT.value)),
        parts=_parts(path, label, entry),
    )


def _role(path: Path, label: str, role: Any) -> Role:
    wanted = ", ".join(DRAWN_ROLES)
    if role not in tuple(DRAWN_ROLES):
        _refuse(path, f"gives {label} the role {role!r}", f"choose one of {wanted}")
    return Role(role)


def _parts(path: Path, label: str, entry: dict[str, Any]) -> tuple[Part, ...]:
    listed = entry.get("parts", [{"polygon": entry.get("polygon")}])
    if not isinstance(listed, list) or not all(isinstance(part, dict) for part in listed):
        _refuse(path, f"has {label} with parts that are not a list of objects", "mend the list")
    parts = tuple(
        Part(_polygon(path, label, part.get("polygon")), subtract=part.get("subtract") is True)
        for part in listed
    )
    if not any(not part.subtract for part in parts):
        _refuse(path, f"has {label} without any outline", "draw it, or delete the region")
    return parts


def _polygon(path: Path, label: str, points: Any) -> tuple[Point, ...]:
    if not isinstance(points, list):
        _refuse(path, f"has {label} without a polygon", 'add "polygon": [[x, y], ...]')
    polygon = tuple(_point(path, label, number, point) for number, point in enumerate(points, 1))
    fault = outline_fault(polygon)
    if fault:
        _refuse(path, f"has {label} with an outline that {fault.problem}", fault.todo)
    return polygon


def _point(path: Path, label: str, number: int, point: Any) -> Point:
    good = (
        isinstance(point, list)
        and len(point) == 2
        and all(isinstance(value, int | float) and not isinstance(value, bool) for value in point)
        and all(-_FARTHEST < value < _FARTHEST for value in point)
    )
    if not good:
        _refuse(path, f"has {label} with a point {number} that is not [x, y]", "use two numbers")
    return float(point[0]), float(point[1])


def _refuse_same_names(path: Path, regions: tuple[Region, ...]) -> None:
    seen: set[str] = set()
    for region in regions:
        if region.name in seen:
            _refuse(path, f'has two regions named "{region.name}"', "rename one of them")
        seen.add(region.name)


def _entry(region: Region) -> dict[str, Any]:
    entry: dict[str, Any] = {"name": region.name, "role": region.role.value}
    if len(region.parts) == 1 and not region.parts[0].subtract:
        return entry | {"polygon": [list(point) for point in region.parts[0].polygon]}
    parts = [
        {"polygon": [list(point) for point in part.polygon], "subtract": part.subtract}
        for part in region.parts
    ]
    return entry | {"parts": parts}


def _refuse(path: Path, problem: str, todo: str) -> NoReturn:
    raise RegionsFileError(path, problem=problem, todo=todo)
