"""What comes to an intake in files of its own: marked corners, and the plain sheet."""

import json
from pathlib import Path
from typing import NoReturn, cast

import numpy as np

from framing_palette.errors import CornersFileError, LightError, PictureFileError
from framing_palette.picture.light_fields import LightField
from framing_palette.picture.lighting import light_of_sheet
from framing_palette.picture.reading import read_picture_file
from framing_palette.picture.squaring import Corners, checked_corners
from framing_palette.whole_files import read_whole

MOST_BYTES = 100_000
_SHEET_SIDE = 800
_FARTHEST = 1e6  # far beyond any picture; a number that is none is not within it either
_FORM = '{"corners": [[x, y], [x, y], [x, y], [x, y]]}, x and y from 0 to 1'


def read_corners_file(path: Path) -> Corners:
    """Return the four corners of a file, upper left first.

    Raises
    ------
    CornersFileError
        When it is not there or not of the form.
    CornersError
        When the corners cannot be those of a picture.
    """
    return checked_corners(_four_points(path))


def read_chart_file(path: Path) -> Corners:
    """Return the four corners of a chart, in the order in which they stand in the file.

    Raises
    ------
    CornersFileError
        When it is not there or not of the form.
    CornersError
        When the corners cross or nearly coincide.
    """
    points = _four_points(path)
    checked_corners(points)
    return points


def read_light_file(path: Path) -> LightField:
    """Return the light that the photograph of a plain sheet tells.

    Raises
    ------
    PictureFileError
        When it cannot be read, or is no photograph of a plain sheet.
    """
    from framing_palette.colour import lab_d50_to_linear_srgb

    sheet = read_picture_file(path, max_side=_SHEET_SIDE)
    try:
        return light_of_sheet(np.asarray(lab_d50_to_linear_srgb(sheet.lab_d50), np.float32))
    except LightError as fault:
        raise PictureFileError(
            path,
            problem=f"tells nothing of the light, because {fault.problem}",
            todo=fault.todo,
        ) from fault


def _four_points(path: Path) -> Corners:
    try:
        content = read_whole(path, MOST_BYTES)
    except OSError as error:
        raise CornersFileError(
            path, problem=f"cannot be read ({error.strerror or error})", todo="check its name"
        ) from error
    try:
        found = json.loads(content)
    except (ValueError, RecursionError):
        _refuse(path, "is not JSON")
    points = found.get("corners") if isinstance(found, dict) else None
    if not (isinstance(points, list) and len(points) == 4 and all(map(_is_point, points))):
        _refuse(path, "has no four corners")
    return cast("Corners", tuple((float(x), float(y)) for x, y in points))


def _is_point(value: object) -> bool:
    return (
        isinstance(value, list)
        and len(value) == 2
        and all(isinstance(one, int | float) and not isinstance(one, bool) for one in value)
        and all(-_FARTHEST < one < _FARTHEST for one in value)
    )


def _refuse(path: Path, problem: str) -> NoReturn:
    raise CornersFileError(path, problem=problem, todo=f"write it like {_FORM}")
