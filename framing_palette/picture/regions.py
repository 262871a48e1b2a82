"""Regions: outlines that the designer draws on the picture, and what each is for."""

from dataclasses import dataclass
from enum import StrEnum

Point = tuple[float, float]


class Role(StrEnum):
    """What a region means for the judgement."""

    FOCUS = "focus"  # the eye should rest here
    SUPPORT = "support"
    GROUND = "ground"
    RIM = "rim"  # made by the program: the outer band that a border touches
    WHOLE = "whole"  # made by the program


@dataclass(frozen=True, slots=True)
class Part:
    """One closed outline of a region, added to it or subtracted from it.

    ``polygon`` holds (x, y) from 0 to 1 across the upright picture, at least three points.
    """

    polygon: tuple[Point, ...]
    subtract: bool = False


@dataclass(frozen=True, slots=True)
class Region:
    """A named area of the picture with a role; parts apply in order."""

    name: str
    role: Role
    parts: tuple[Part, ...]


DRAWN_ROLES = (Role.FOCUS, Role.SUPPORT, Role.GROUND)
"""The roles that a designer can give."""
