"""Smooth reflectances that give an intended Lab under D50, the 2 degree observer.

Least slope squared within 0..1 under the three tristimulus constraints, after the idea of
least-slope reconstruction (S. A. Burns, "Numerical methods for smoothest reflectance
reconstruction", Color Research and Application 45, 2020; from memory).  A pigment bump, different
from family to family, is added to the target shape, so that two samples of one colour do not
always have one spectrum and metamerism can be seen.
"""

import zlib

import numpy as np

from .noise import Field

WAVELENGTHS_NM = np.arange(380, 731, 10)
_FLOOR, _CEILING = 0.004, 0.985


def observer_matrix() -> Field:
    """(36, 3) weights that turn a reflectance into XYZ under D50, white Y = 1 (ASTM E308 form)."""
    import colour

    shape = colour.SpectralShape(380, 730, 10)
    basis = np.eye(len(WAVELENGTHS_NM))
    observer = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"]
    rows = [
        colour.sd_to_XYZ(
            colour.SpectralDistribution(row, shape.wavelengths),
            observer,
            colour.SDS_ILLUMINANTS["D50"],
        )
        for row in basis
    ]
    return np.array(rows) / 100


def lab_to_xyz(lab: Field) -> Field:
    """XYZ (Y = 1 for white) of D50 CIELAB."""
    fy = (lab[0] + 16) / 116
    f = np.array([fy + lab[1] / 500, fy, fy - lab[2] / 200])
    return np.where(f > 6 / 29, f**3, 3 * (6 / 29) ** 2 * (f - 4 / 29)) * [0.96422, 1.0, 0.82521]


def _bump(code: str) -> Field:
    """The shape that the pigment family of a code adds."""
    draw = np.random.default_rng(zlib.crc32(f"{code}/pigment".encode()))
    if draw.random() < 0.45:
        return np.zeros(len(WAVELENGTHS_NM))
    centre, width = draw.uniform(430, 700), draw.uniform(22, 45)
    return (
        draw.choice([-1, 1])
        * draw.uniform(0.3, 1.0)
        * np.exp(-(((WAVELENGTHS_NM - centre) / width) ** 2))
    )


def reflectance(lab: Field, code: str, observer: Field) -> Field:
    """(36,) reflectance 0..1 of the colour."""
    from scipy.optimize import lsq_linear

    xyz = lab_to_xyz(lab)
    count = len(WAVELENGTHS_NM)
    slope = np.diff(np.eye(count), axis=0)
    bump = _bump(code) * 0.30 * min(xyz[1], 1 - xyz[1])
    strength = 1e4
    system = np.vstack([observer.T * strength, slope, np.eye(count) * 1e-3])
    goal = np.concatenate([xyz * strength, slope @ bump, np.full(count, 1e-3 * xyz[1])])
    return lsq_linear(system, goal, bounds=(_FLOOR, _CEILING), method="bvls").x
