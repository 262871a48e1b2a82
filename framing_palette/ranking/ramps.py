"""Ramps: smooth, monotone ways from a difference in colour units to a degree from 0 to 1."""

import numpy as np
from numpy.typing import ArrayLike

from framing_palette.arrays import Float64Array


def rise(value: ArrayLike, start: float, end: float) -> Float64Array:
    """Return 0 up to ``start``, 1 from ``end`` on, and a smooth S between them."""
    t = np.clip((np.asarray(value, dtype=np.float64) - start) / (end - start), 0.0, 1.0)
    return t * t * (3.0 - 2.0 * t)


def bell(value: ArrayLike, width: float) -> Float64Array:
    """Return 1 at zero, falling on both sides as a Gaussian with that standard deviation."""
    scaled = np.asarray(value, dtype=np.float64) / width
    return np.exp(-0.5 * scaled * scaled)


def saturating(value: ArrayLike, half: float) -> Float64Array:
    """Return 0 at and below zero, 0.5 at ``half``, approaching 1; quadratic near zero."""
    x = np.maximum(np.asarray(value, dtype=np.float64), 0.0) / half
    return 1.0 - np.exp2(-x * x)


def sigmoid(value: ArrayLike) -> Float64Array:
    """Return the logistic function, safe for any finite number."""
    return 0.5 * (1.0 + np.tanh(0.5 * np.asarray(value, dtype=np.float64)))
