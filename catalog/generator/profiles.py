"""Cross-sections: the front as a line of (x from the sight edge, height), in millimetres."""

import numpy as np

from .rows import Line

Points = list[tuple[float, float]]


def moulding(line: Line) -> Points:
    """Front of a moulding or liner; the height of the sight edge leaves wood over the rabbet."""
    face, height = float(line.options["face"]), float(line.options["height"])
    return _SHAPES[line.options["profile"]](face, height)


def wrapped_fillet(face: float, thickness: float, bevel: float) -> Points:
    """A strip with a long bevel: thin at the sight edge, full thickness behind it."""
    return [
        (0, 0.5),
        (bevel * 0.5, 0.5 + (thickness - 0.5) * 0.52),
        (bevel, thickness),
        (face, thickness),
    ]


def wood_fillet(line: Line, face: float, thickness: float) -> Points:
    """A small stick on a flat tail; the tail lies under the mat and is not part of the face."""
    shape = line.options["profile"]
    t = np.linspace(0, 1, 13)
    if shape in ("bead", "cushion"):
        height = thickness * (0.45 + 0.55 * np.sqrt(np.clip(1 - (2 * t - 1) ** 2, 0, 1)))
    elif shape == "step":
        t = np.array([0, 0.02, 0.42, 0.46, 0.98, 1])
        height = thickness * np.array([0.5, 0.58, 0.58, 1, 1, 0.9])
    else:
        t = np.array([0, 0.06, 0.94, 1])
        height = thickness * np.array([0.82, 1, 1, 0.85])
    return _points(t * face, height)


def _points(x: np.ndarray, height: np.ndarray) -> Points:
    return [(round(float(a), 2), round(float(b), 2)) for a, b in zip(x, height, strict=True)]


def _sight_height(height: float, part: float) -> float:
    """Height near the sight edge: a part of the whole, enough for a usual stack if it can."""
    return max(height * part, min(height - 2.5, 16.0))


def _edge(face: float, inner: float, outer: float) -> Points:
    """A level or sloping face with small softened edges."""
    return [(0, inner - 0.8), (0.8, inner), (face - 0.8, outer), (face, outer - 0.8)]


def _flat(face: float, height: float) -> Points:
    return _edge(face, height, height)


def _bevel(face: float, height: float) -> Points:
    return _edge(face, _sight_height(height, 0.62), height)


def _reverse(face: float, height: float) -> Points:
    t = np.linspace(0, 1, 17)
    fall = 0.62 * (0.5 - 0.5 * np.cos(np.pi * np.clip((t - 0.14) / 0.86, 0, 1)))
    return _points(t * face, height * (1 - fall) - np.where((t == 0) | (t == 1), 0.8, 0))


def _scoop(face: float, height: float) -> Points:
    t = np.linspace(0, 1, 21)
    low = _sight_height(height, 0.55)
    hollow = np.clip((t - 0.08) / 0.74, 0, 1) ** 2.2
    bead = np.clip((t - 0.86) / 0.14, 0, 1)
    rise = low + (height - low) * (hollow * 0.9 + 0.1 * np.sin(np.pi * bead))
    return _points(t * face, rise - np.where(t == 1, 1.2, 0))


def _cushion(face: float, height: float) -> Points:
    t = np.linspace(0, 1, 21)
    low = _sight_height(height, 0.66)
    return _points(t * face, low + (height - low) * np.sqrt(np.clip(1 - (2 * t - 1) ** 2, 0, 1)))


def _ogee(face: float, height: float) -> Points:
    t = np.linspace(0, 1, 25)
    low = _sight_height(height, 0.5)
    swing = 0.5 - 0.5 * np.cos(np.pi * np.clip((t - 0.1) / 0.68, 0, 1))
    bead = np.where(t > 0.82, np.sin(np.pi * (t - 0.82) / 0.18) * 0.10, 0)
    return _points(
        t * face, low + (height - low) * (swing * 0.9 + bead) + np.where(t < 0.08, 0.6, 0)
    )


def _stepped(face: float, height: float) -> Points:
    x = np.array([0, 0.02, 0.30, 0.33, 0.62, 0.66, 0.97, 1]) * face
    low = _sight_height(height, 0.64)
    levels = np.array([0, 0.05, 0.05, 0.5, 0.5, 1, 1, 0.92])
    return _points(x, low + (height - low) * levels)


def _shadow(face: float, height: float) -> Points:
    return [(0, height - 0.5), (0.5, height), (face - 0.5, height), (face, height - 0.5)]


def _metal(face: float, height: float) -> Points:
    near, far = [(0.0, height - 1.2), (1.2, height - 0.2)], [(face - 1.2, height - 0.2)]
    return [*near, (face * 0.5, height), *far, (face, height - 1.2)]


_SHAPES = {
    "flat": _flat, "bevel": _bevel, "reverse": _reverse, "scoop": _scoop, "cushion": _cushion,
    "ogee": _ogee, "stepped": _stepped, "shadow": _shadow, "metal": _metal,
}  # fmt: skip


def rabbet(line: Line, points: Points) -> tuple[float, float]:
    """Width and depth of the rabbet that this front leaves room for."""
    face = float(line.options["face"])
    width = 5.0 if face < 16 else 6.5 if face < 44 else 8.0 if face < 70 else 10.0
    xs, heights = (np.array(v) for v in zip(*points, strict=True))
    over = np.interp(np.linspace(0, width, 9), xs, heights).min()
    lip = 1.6 if line.surface == "brushed_metal" else 3.0 if face < 30 else 4.0
    return width, float(np.floor((over - lip) * 2) / 2)
