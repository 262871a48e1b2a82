"""The measures of the interface: greys by lightness, the 4-pixel grid, the four sizes of type.

Colour is judged against what surrounds it, so every tone here is a neutral grey between L* 18 and
L* 95 (neutral surround as in ISO 3664). The comment beside a grey is its L*.
"""

from dataclasses import dataclass

GRID = 4
GAP, MARGIN, WIDE_MARGIN, SECTION = 8, 12, 16, 24
HIT = 40

SMALL, BODY, HEADING, DISPLAY = 13, 15, 20, 28
"""Sizes of type in pixels."""

PATH_WIDTH = 76
JOB_LINE_HEIGHT = 48
SHELF_NARROW, SHELF_WIDE = 320, 400
RAIL_HEIGHT = 112
SWATCH = 64
MOTION_MS = 140

DEFAULT_SURROUND = 60
"""L* of what the picture lies on."""


@dataclass(frozen=True, slots=True)
class Tokens:
    """The greys of one theme, as ``#RRGGBB``."""

    name: str
    chrome: str
    panel: str
    field: str
    hover: str
    pressed: str
    line: str
    strong_line: str
    ink: str
    quiet_ink: str
    faint_ink: str
    chosen: str
    chosen_ink: str
    ring_dark: str
    ring_light: str


LIGHT = Tokens(
    name="light",
    chrome="#E2E2E2",  # 90
    panel="#E8E8E8",  # 92
    field="#F1F1F1",  # 95
    hover="#DDDDDD",  # 88
    pressed="#D1D1D1",  # 84
    line="#CCCCCC",  # 82
    strong_line="#777777",  # 50
    ink="#2C2C2C",  # 18
    quiet_ink="#595959",  # 38
    faint_ink="#818181",  # 54, for what is switched off
    chosen="#3E3E3E",  # 26
    chosen_ink="#F1F1F1",  # 95
    ring_dark="#2C2C2C",  # 18
    ring_light="#F1F1F1",  # 95
)

DARK = Tokens(
    name="dark",
    chrome="#303030",  # 20
    panel="#353535",  # 22
    field="#2C2C2C",  # 18
    hover="#424242",  # 28
    pressed="#4B4B4B",  # 32
    line="#505050",  # 34
    strong_line="#919191",  # 60
    ink="#E8E8E8",  # 92
    quiet_ink="#BBBBBB",  # 76
    faint_ink="#818181",  # 54, for what is switched off
    chosen="#E2E2E2",  # 90
    chosen_ink="#2C2C2C",  # 18
    ring_dark="#2C2C2C",  # 18
    ring_light="#F1F1F1",  # 95
)

THEMES = {tokens.name: tokens for tokens in (LIGHT, DARK)}
