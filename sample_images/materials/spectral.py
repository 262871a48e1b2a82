"""Colours by their spectra: the light, the chart's patches, the camera's three sensors.

References
----------
Patch reflectances: the 24 specimen spectra of ISO 17321-1 as published with
colour-science. Reflectance of a painted pixel: the sRGB basis of Mallett and
Yuksel (2019), "Spectral primary decomposition for rendering with sRGB
reflectance". Light: Planck's law.
"""

from __future__ import annotations

import warnings
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Spectra = NDArray[np.float64]

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    import colour

SHAPE = colour.SpectralShape(380, 780, 5)
WAVELENGTHS = SHAPE.wavelengths


@dataclass(frozen=True, slots=True)
class Camera:
    """Sensitivities (3, n), white gains (3,) and the mixing matrix of a plausible camera."""

    sensors: Spectra
    matrix: Spectra

    def response(self, light: Spectra, reflectance: Spectra) -> Spectra:
        """Linear camera values (..., 3) of reflectances (..., n) under a light (n,)."""
        return (reflectance * light) @ self.sensors.T @ self.matrix.T


def patch_spectra() -> dict[str, Spectra]:
    """Reflectance of the 24 patches in reading order, dark skin first."""
    chart = colour.SDS_COLOURCHECKERS["ISO 17321-1"]
    return {name: sd.copy().align(SHAPE).values for name, sd in chart.items()}


def planck(kelvin: float) -> Spectra:
    """Relative power of a black body, 1 at 560 nm."""
    metres = WAVELENGTHS * 1e-9
    power = metres**-5 / np.expm1(1.438776877e-2 / (metres * kelvin))
    return power / power[np.searchsorted(WAVELENGTHS, 560)]


def painted_basis() -> Spectra:
    """(3, n) reflectances whose mixture by linear sRGB has that colour under D65."""
    basis = colour.recovery.MSDS_BASIS_FUNCTIONS_sRGB_MALLETT2019
    return basis.copy().align(SHAPE).values.T


def lab_d50(reflectance: Spectra) -> Spectra:
    """L*, a*, b* of reflectances (..., n) under D50 for the 2 degree observer."""
    observer = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(SHAPE).values
    light = colour.SDS_ILLUMINANTS["D50"].copy().align(SHAPE).values
    white = light @ observer
    ratio = (reflectance * light) @ observer / white
    cube = np.where(ratio > (6 / 29) ** 3, np.cbrt(ratio), ratio / (3 * (6 / 29) ** 2) + 4 / 29)
    x, y, z = np.moveaxis(cube, -1, 0)
    return np.stack([116 * y - 16, 500 * (x - y), 200 * (y - z)], axis=-1)


def camera(balanced_kelvin: float, saturation: float) -> Camera:
    """A camera with three broad bell-shaped sensors, white at `balanced_kelvin`.

    `saturation` mixes its matrix between none (0) and the best fit to linear sRGB (1);
    a mild one keeps every patch inside the output range.
    """
    bells = ((600.0, 42.0), (538.0, 44.0), (462.0, 34.0))
    sensors = np.stack([np.exp(-0.5 * ((WAVELENGTHS - m) / w) ** 2) for m, w in bells])
    white = planck(balanced_kelvin)
    sensors = sensors / (sensors @ white)[:, None]
    patches = np.stack(list(patch_spectra().values()))
    observer = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(SHAPE).values
    daylight = colour.SDS_ILLUMINANTS["D65"].copy().align(SHAPE).values
    xyz = (patches * daylight) @ observer / (daylight @ observer[:, 1])
    wanted = xyz @ colour.RGB_COLOURSPACES["sRGB"].matrix_XYZ_to_RGB.T
    got = (patches * white) @ sensors.T
    fitted = np.linalg.lstsq(got, wanted, rcond=None)[0].T
    fitted = fitted / fitted.sum(axis=1, keepdims=True)
    return Camera(sensors, saturation * fitted + (1 - saturation) * np.eye(3))
