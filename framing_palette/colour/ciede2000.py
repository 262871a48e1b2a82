"""The CIEDE2000 formula on preallocated buffers, for `difference` to run slab by slab.

The formula needs the sine and cosine of the mean hue, not the hue itself, so that both come from
the bisector of the two hue vectors, their multiples from products, and only the hue-rotation term
asks for an angle. Every step writes into an array that exists already.

References
----------
ISO/CIE 11664-6:2022.
Sharma, Wu, Dalal 2005, Color Research and Application 30(1):21-30: what to do with opposite hues
and with greys.
"""

from math import cos, factorial, radians, sin

import numpy as np

from framing_palette.arrays import Float64Array

_25_TO_THE_7 = 25.0**7
# Below this share of its greatest length the bisector of two hues is too short to trust.
_OPPOSITE = 1e-3

# T = 1 - 0.17 cos(h - 30) + 0.24 cos 2h + 0.32 cos(3h + 6) - 0.20 cos(4h - 63), the multiple
# angles written out in c = cos h, s = sin h and q = c^2; the names say which product each scales.
_T_1 = 1.0 - 0.24 - 0.20 * cos(radians(63.0))
_T_Q = 0.48 + 1.60 * cos(radians(63.0))
_T_QQ = -1.60 * cos(radians(63.0))
_T_C = -0.17 * cos(radians(30.0)) - 0.96 * cos(radians(6.0))
_T_CQ = 1.28 * cos(radians(6.0))
_T_S = -0.17 * sin(radians(30.0)) + 0.32 * sin(radians(6.0))
_T_SQ = -1.28 * sin(radians(6.0))
_T_SC = 0.80 * sin(radians(63.0))
_T_SCQ = -1.60 * sin(radians(63.0))

_SINE_SERIES = tuple((-1) ** k / factorial(2 * k + 1) for k in range(7))


def ciede2000(pairs: Float64Array, singles: Float64Array) -> Float64Array:
    """Return the CIEDE2000 differences of n pairs, worked out in place.

    Parameters
    ----------
    pairs
        Shape (5, 2, n): L*, a*, b* of both colours, and two to work in. Overwritten.
    singles
        Shape (6, n), to work in.
    """
    L, a, b, C, spare = pairs
    c, s, dH, S_H, x, y = singles
    _stretch_red_green(a, b, C=C, spare=spare)
    _mean_hue(a, b, C, c=c, s=s, dH=dH, spare=spare)
    _hue_weight(c, s, T=S_H, q=x, spare=y)

    dC = np.subtract(C[1], C[0], out=a[0])
    C_bar = np.add(C[0], C[1], out=a[1])
    C_bar *= 0.5
    S_H *= C_bar
    S_H *= 0.015
    S_H += 1.0
    dH /= S_H
    S_C = np.multiply(C_bar, 0.045, out=x)
    S_C += 1.0
    dC /= S_C
    dL = np.subtract(L[1], L[0], out=b[0])
    dL /= _lightness_weight(L, spare=x)

    total = _hue_rotation(c, s, C_bar, R_T=b[1], x=x, y=y)
    total *= dC
    total *= dH
    total += np.multiply(dL, dL, out=x)
    total += np.multiply(dC, dC, out=x)
    total += np.multiply(dH, dH, out=x)
    np.sqrt(total, out=total)
    return total


def _stretch_red_green(
    a: Float64Array, b: Float64Array, *, C: Float64Array, spare: Float64Array
) -> None:
    """Turn a* into a' in place, and fill the chromas C' (all of shape (2, n))."""
    _length(a, b, out=C, spare=spare)
    C_bar = np.add(C[0], C[1], out=C[0])
    C_bar *= 0.5
    stretch = _chroma_share(C_bar, out=spare[0], spare=spare[1])
    stretch *= -0.5
    stretch += 1.5  # 1 + G
    a *= stretch
    _length(a, b, out=C, spare=spare)


def _mean_hue(
    a: Float64Array,
    b: Float64Array,
    C: Float64Array,
    *,
    c: Float64Array,
    s: Float64Array,
    dH: Float64Array,
    spare: Float64Array,
) -> None:
    """Fill the cosine and sine of the mean hue, and the hue difference ΔH'.

    The sum of the two hue vectors, each stretched by the other's chroma, points along the mean
    hue and is 2 C1 C2 cos(Δh / 2) long; their cross product is C1 C2 sin Δh.
    """
    np.multiply(a, C[::-1], out=spare)
    np.add(spare[0], spare[1], out=c)
    np.multiply(b, C[::-1], out=spare)
    np.add(spare[0], spare[1], out=s)
    np.multiply(a, b[::-1], out=spare)
    np.subtract(spare[0], spare[1], out=dH)

    length, limit = spare
    _length(c, s, out=length, spare=limit)
    np.multiply(C[0], C[1], out=limit)
    limit *= _OPPOSITE
    opposite = np.flatnonzero(length <= limit)
    c /= length
    s /= length
    np.sqrt(limit, out=limit)
    limit *= 2.0 / np.sqrt(_OPPOSITE)
    limit /= length
    dH *= limit
    if opposite.size:
        c[opposite], s[opposite], dH[opposite] = _opposite_hues(*a[:, opposite], *b[:, opposite])


def _opposite_hues(
    a_1: Float64Array, a_2: Float64Array, b_1: Float64Array, b_2: Float64Array
) -> tuple[Float64Array, Float64Array, Float64Array]:
    """Return cosine and sine of the mean hue, and ΔH', where hues are opposite or missing.

    Opposite hues have their mean square to their difference, on the side the turn from the first
    to the second passes; when they are exactly opposite the published rule takes the plain mean
    of the two angles in 0..360. A grey has no hue, so the mean is the other colour's hue.
    """
    C_1, C_2 = np.hypot(a_1, b_1), np.hypot(a_2, b_2)
    grey = (C_1 == 0.0) | (C_2 == 0.0)
    cross = a_1 * b_2 - a_2 * b_1
    first_half = (b_1 > 0.0) | ((b_1 == 0.0) & (a_1 > 0.0))
    side = np.where(cross == 0.0, np.where(first_half, 1.0, -1.0), np.sign(cross))
    apart_a, apart_b = a_1 / C_1 - a_2 / C_2, b_1 / C_1 - b_2 / C_2
    hue_a = np.where(grey, a_1 + a_2, -side * apart_b)
    hue_b = np.where(grey, b_1 + b_2, side * apart_a)
    length = np.hypot(hue_a, hue_b)
    dH = np.where(grey, 0.0, side * length * np.sqrt(C_1 * C_2))
    hueless = length == 0.0
    length[hueless], hue_a[hueless] = 1.0, 1.0
    return hue_a / length, hue_b / length, dH


def _hue_weight(
    c: Float64Array, s: Float64Array, *, T: Float64Array, q: Float64Array, spare: Float64Array
) -> None:
    """Fill T = A + c (B + s D) + s E, where A, B, D and E are polynomials of q = c^2."""
    np.multiply(c, c, out=q)
    np.multiply(q, _T_SCQ, out=T)
    T += _T_SC
    T *= s
    T += np.multiply(q, _T_CQ, out=spare)
    T += _T_C
    T *= c
    np.multiply(q, _T_SQ, out=spare)
    spare += _T_S
    spare *= s
    T += spare
    np.multiply(q, _T_QQ, out=spare)
    spare += _T_Q
    spare *= q
    T += spare
    T += _T_1


def _hue_rotation(
    c: Float64Array,
    s: Float64Array,
    C_bar: Float64Array,
    *,
    R_T: Float64Array,
    x: Float64Array,
    y: Float64Array,
) -> Float64Array:
    """Fill and return R_T, the turn of the tolerance ellipses among the blues."""
    np.negative(c, out=c)
    np.negative(s, out=s)
    h = np.arctan2(s, c, out=x)  # half a turn early, so that the mean hue runs from 0 to 360
    h -= radians(275.0 - 180.0)
    h *= 1.0 / radians(25.0)
    h *= h
    np.negative(h, out=h)
    np.exp(h, out=h)
    h *= radians(60.0)
    turn = _sine_to_60_degrees(h, out=c, spare=y)
    _chroma_share(C_bar, out=R_T, spare=y)
    R_T *= -2.0
    R_T *= turn
    return R_T


def _sine_to_60_degrees(x: Float64Array, *, out: Float64Array, spare: Float64Array) -> Float64Array:
    """Fill and return the sine of 0 to 60 degrees by its series, exact to 2e-12.

    numpy's own sine takes more than twice as long, a tenth of the whole formula.
    """
    square = np.multiply(x, x, out=spare)
    out[...] = _SINE_SERIES[-1]
    for term in _SINE_SERIES[-2::-1]:
        out *= square
        out += term
    out *= x
    return out


def _lightness_weight(L: Float64Array, *, spare: Float64Array) -> Float64Array:
    """Return S_L, written over the first lightness."""
    S_L: Float64Array = np.add(L[0], L[1], out=L[0])
    S_L *= 0.5
    S_L -= 50.0
    S_L *= S_L
    np.add(S_L, 20.0, out=spare)
    np.sqrt(spare, out=spare)
    S_L /= spare
    S_L *= 0.015
    S_L += 1.0
    return S_L


def _length(a: Float64Array, b: Float64Array, *, out: Float64Array, spare: Float64Array) -> None:
    np.multiply(a, a, out=out)
    np.multiply(b, b, out=spare)
    out += spare
    np.sqrt(out, out=out)


def _chroma_share(C_bar: Float64Array, *, out: Float64Array, spare: Float64Array) -> Float64Array:
    """Fill and return the square root of C^7 / (C^7 + 25^7)."""
    np.multiply(C_bar, C_bar, out=spare)
    np.multiply(spare, C_bar, out=out)
    out *= out
    out *= C_bar
    np.add(out, _25_TO_THE_7, out=spare)
    out /= spare
    np.sqrt(out, out=out)
    return out
