"""Whether two samples that match in one light still match in another.

References
----------
CIE 015:2018 Colorimetry, special metamerism index: change in illuminant. The index may use any
colour-difference formula that is stated; here it is CIEDE2000.
"""

from typing import Literal

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float64Array
from framing_palette.colour.adaptation import WHITE_D50_XYZ
from framing_palette.colour.difference import delta_e_2000
from framing_palette.colour.spaces import xyz_d50_to_lab_d50
from framing_palette.colour.spectra import spectrum_to_xyz, white_under
from framing_palette.errors import FieldError

Correction = Literal["multiplicative", "additive"]


def metamerism_index(
    reflectance_1: ArrayLike,
    reflectance_2: ArrayLike,
    *,
    light: str,
    reference: str = "D50",
    correction: Correction = "multiplicative",
) -> Float64Array:
    """Return how far two samples part when the light changes, as a CIEDE2000 difference.

    A pair that does not quite match under the reference light is first corrected to a match, so
    that the index tells the change alone.

    Parameters
    ----------
    reflectance_1, reflectance_2
        Shapes (..., 36) that broadcast together, 0..1, 380 to 730 nm by 10.
    light, reference
        Names from `ILLUMINANTS`: the light that is tried, and the one in which the pair matches.
    correction
        "multiplicative" scales the second sample's tristimulus values by the ratio that would
        match the pair under the reference light; "additive" adds the CIELAB difference instead.

    Returns
    -------
    Shape (...); 0 for samples of equal spectra.

    Raises
    ------
    ShapeError
        When a last axis is not 36 long.
    FieldError
        When a light is not in the table, or the correction is neither of the two.
    """
    lab_1 = _lab_under(spectrum_to_xyz(reflectance_1, light), light)
    if correction == "multiplicative":
        lab_2 = _lab_under(_scaled_xyz(reflectance_1, reflectance_2, light, reference), light)
    elif correction == "additive":
        lab_2 = _lab_under(spectrum_to_xyz(reflectance_2, light), light)
        lab_2 = lab_2 + _lab_under(spectrum_to_xyz(reflectance_1, reference), reference)
        lab_2 = lab_2 - _lab_under(spectrum_to_xyz(reflectance_2, reference), reference)
    else:
        raise FieldError("correction", got=correction, wanted="use multiplicative or additive")
    return delta_e_2000(lab_1, lab_2)


def _scaled_xyz(
    reflectance_1: ArrayLike, reflectance_2: ArrayLike, light: str, reference: str
) -> Float64Array:
    wanted, found = (
        spectrum_to_xyz(reflectance_1, reference),
        spectrum_to_xyz(reflectance_2, reference),
    )
    ratio = np.divide(
        wanted, found, out=np.ones(np.broadcast(wanted, found).shape), where=found > 0.0
    )  # a perfect black has nothing to scale
    return spectrum_to_xyz(reflectance_2, light) * ratio


def _lab_under(xyz: Float64Array, light: str) -> Float64Array:
    """Return CIELAB relative to the light's own white, as the index asks, without adaptation."""
    return xyz_d50_to_lab_d50(xyz / white_under(light) * WHITE_D50_XYZ).astype(
        np.float64, copy=False
    )
