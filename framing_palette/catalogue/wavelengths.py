"""Wavelengths: reflectances of any usual sampling brought to 380 to 730 nm by 10."""

from collections.abc import Sequence
from pathlib import Path

import numpy as np

from framing_palette.arrays import Float64Array
from framing_palette.colour import WAVELENGTHS_NM
from framing_palette.errors import ExchangeFileError

_STEPS_NM = frozenset({1, 2, 5, 10, 20})
_FIRST_AT_MOST, _LAST_AT_LEAST = 400, 680
_FARTHEST_NM = 100_000


def reflectances_at_ten(
    wavelengths_nm: Sequence[int], values: Float64Array, source: Path
) -> tuple[Float64Array, list[str]]:
    """Return reflectances at 380 to 730 nm by 10, and sentences on what was done to them.

    Steps of 20 nm are filled by cubic interpolation; ends that were not measured take the value
    of the nearest wavelength that was, as ASTM E308 allows.

    Parameters
    ----------
    wavelengths_nm
        Rising, evenly spaced.
    values
        Shape (rows, wavelengths).
    source
        The file's name, for messages.

    Raises
    ------
    ExchangeFileError
        When the step is uneven or unusual, or 400 to 680 nm is not covered.
    """
    if not all(0 < nm < _FARTHEST_NM for nm in wavelengths_nm):
        raise ExchangeFileError(
            source,
            problem="holds reflectances at wavelengths that nobody measures",
            todo=f"export {_FIRST_AT_MOST} to {_LAST_AT_LEAST} nm at least",
        )
    nm = np.asarray(wavelengths_nm, dtype=np.int64)
    steps = set(np.diff(nm).tolist())
    if len(steps) != 1 or not steps <= _STEPS_NM:
        told = "one wavelength" if len(nm) < 2 else f"steps of {_spoken(steps)} nm"
        raise ExchangeFileError(
            source,
            problem=f"holds reflectances in {told}",
            todo="export them evenly in steps of 1, 2, 5, 10 or 20 nm",
        )
    if nm[0] > _FIRST_AT_MOST or nm[-1] < _LAST_AT_LEAST:
        raise ExchangeFileError(
            source,
            problem=f"holds reflectances from {nm[0]} to {nm[-1]} nm only",
            todo=f"export {_FIRST_AT_MOST} to {_LAST_AT_LEAST} nm at least",
        )
    return _resampled(nm, values, steps.pop()), _remarks(nm)


def _resampled(nm: "np.typing.NDArray[np.int64]", values: Float64Array, step: int) -> Float64Array:
    inside = np.clip(WAVELENGTHS_NM, nm[0], nm[-1])
    on_grid = np.isin(inside, nm).all()
    if on_grid:
        return np.ascontiguousarray(values[:, np.searchsorted(nm, inside)])
    from scipy.interpolate import CubicSpline

    if not len(values):
        return np.zeros((0, WAVELENGTHS_NM.size))
    curve = CubicSpline(nm, values, axis=1, bc_type="natural" if step < 20 else "not-a-knot")
    return np.clip(curve(inside), 0, None)


def _remarks(nm: "np.typing.NDArray[np.int64]") -> list[str]:
    remarks = []
    step = int(nm[1] - nm[0])
    if step == 20:
        remarks.append("The reflectances have steps of 20 nm; those between are interpolated.")
    if nm[0] > WAVELENGTHS_NM[0] or nm[-1] < WAVELENGTHS_NM[-1]:
        remarks.append(
            f"The reflectances reach from {nm[0]} to {nm[-1]} nm; beyond, the last value is kept."
        )
    return remarks


def _spoken(steps: set[int]) -> str:
    return " and ".join(str(step) for step in sorted(steps)[:3])
