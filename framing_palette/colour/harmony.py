"""How well two colours go together, as observers judged pairs of them.

References
----------
Ou, Luo 2006, A colour harmony model for two-colour combinations, Color Research and Application
31(3):191-204. Fitted to 1431 pairs of colour patches on a mid-grey ground, judged by 17 Chinese
observers; the paper works in CIELAB under D65, and hue differs a little under D50.
"""

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float64Array, as_lab
from framing_palette.colour.hue import chroma, hue_deg, metric_hue_difference


def harmony(lab_d50_1: ArrayLike, lab_d50_2: ArrayLike) -> Float64Array:
    """Return the harmony of two colours; above 0 in harmony, below 0 not, about -1.3 to 1.4.

    Parameters
    ----------
    lab_d50_1, lab_d50_2
        Shapes (..., 3) that broadcast together. The order does not matter.

    Returns
    -------
    Shape (...).

    Raises
    ------
    ShapeError
        When a last axis is not 3 long.
    """
    lab_1 = as_lab(lab_d50_1, name="lab_d50_1").astype(np.float64, copy=False)
    lab_2 = as_lab(lab_d50_2, name="lab_d50_2").astype(np.float64, copy=False)
    hue_effect: Float64Array = _hue_effect(lab_1) + _hue_effect(lab_2)
    return _chromatic_effect(lab_1, lab_2) + _lightness_effect(lab_1, lab_2) + hue_effect


def _chromatic_effect(lab_1: Float64Array, lab_2: Float64Array) -> Float64Array:
    dC = np.hypot(metric_hue_difference(lab_1, lab_2), (chroma(lab_1) - chroma(lab_2)) / 1.46)
    return np.asarray(0.04 + 0.53 * np.tanh(0.8 - 0.045 * dC))


def _lightness_effect(lab_1: Float64Array, lab_2: Float64Array) -> Float64Array:
    L_1, L_2 = lab_1[..., 0], lab_2[..., 0]
    H_L_sum = 0.28 + 0.54 * np.tanh(-3.88 + 0.029 * (L_1 + L_2))
    H_dL = 0.14 + 0.15 * np.tanh(-2.0 + 0.2 * np.abs(L_1 - L_2))
    return np.asarray(H_L_sum + H_dL)


def _hue_effect(lab: Float64Array) -> Float64Array:
    C, h = chroma(lab), hue_deg(lab)
    E_C = 0.5 + 0.5 * np.tanh(-2.0 + 0.5 * C)
    H_S = -0.08 - 0.14 * np.sin(np.radians(h + 50.0)) - 0.07 * np.sin(np.radians(2.0 * h + 90.0))
    turn = (90.0 - h) / 10.0
    E_Y = (0.22 * lab[..., 0] - 12.8) / 10.0 * np.exp(turn - np.exp(turn))
    return np.asarray(E_C * (H_S + E_Y))
