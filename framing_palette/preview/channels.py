"""Channels: means, ranges and greys over whole images, whose last axis is too short for numpy.

An image is (rows, columns) for a tone or (rows, columns, 3) for a colour, float32.
"""

import numpy as np

from framing_palette.arrays import Float32Array


def mean_of(image: Float32Array) -> Float32Array:
    """Return the mean over rows and columns, shape () or (3,)."""
    import cv2

    mean = np.asarray(cv2.mean(image)[: image.ndim], np.float32)
    return mean if image.ndim == 3 else mean[:1].reshape(())


def range_of(image: Float32Array) -> tuple[Float32Array, Float32Array]:
    """Return the smallest and the largest value over rows and columns, shape () or (3,) each."""
    import cv2

    low = cv2.reduce(image, 0, cv2.REDUCE_MIN)[0].min(axis=0)
    high = cv2.reduce(image, 0, cv2.REDUCE_MAX)[0].max(axis=0)
    return np.asarray(low, np.float32), np.asarray(high, np.float32)


def grey_of(image: Float32Array) -> Float32Array:
    """Return an image without its colour, shape (rows, columns)."""
    import cv2

    if image.ndim == 2:
        return image
    return np.asarray(cv2.transform(image, np.full((1, 3), 1.0 / 3.0, np.float32)), np.float32)


def in_lines(image: Float32Array) -> Float32Array:
    """Return an image as (rows, values), the same memory where that can be."""
    return image.reshape(image.shape[0], -1)


def along_lines(value: Float32Array, columns: int) -> Float32Array:
    """Return one value for each channel repeated along a line of ``in_lines``."""
    return np.tile(np.atleast_1d(value), columns)


def keep_within(image: Float32Array, low: Float32Array, high: Float32Array) -> None:
    """Cut an image's values off at a range, in place."""
    lines, columns = in_lines(image), image.shape[1]
    np.clip(lines, along_lines(low, columns), along_lines(high, columns), out=lines)


def multiply_by(image: Float32Array, gain: Float32Array) -> None:
    """Multiply an image by one gain for each channel, in place."""
    lines = in_lines(image)
    lines *= along_lines(gain, image.shape[1])


def for_each_channel(grey: Float32Array) -> Float32Array:
    """Return one value for each pixel, shape (rows, columns), as (rows, columns, 3)."""
    import cv2

    planes = cv2.cvtColor(np.ascontiguousarray(grey, np.float32), cv2.COLOR_GRAY2BGR)
    return np.asarray(planes, np.float32)


def lit_by(image: Float32Array, lit: Float32Array) -> Float32Array:
    """Return a colour image multiplied by the light on each pixel, shape (rows, columns)."""
    planes = for_each_channel(lit)
    return np.multiply(image, planes, out=planes)


def tinted(gain: Float32Array, colour: Float32Array) -> Float32Array:
    """Return one colour, shape (3,), multiplied by a gain for each pixel, shape (rows, columns)."""
    linear = for_each_channel(gain)
    multiply_by(linear, colour)
    return linear
