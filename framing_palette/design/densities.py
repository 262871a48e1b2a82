"""How heavy the materials of a frame are, each with its uncertainty and where it comes from."""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Density:
    """Mass per volume in kg/m3: the likely value, and the ends of what it may be."""

    low: float
    likely: float
    high: float
    source: str

    @classmethod
    def within(cls, likely: float, share: float, source: str) -> "Density":
        """Return a density known within plus or minus a share of itself."""
        return cls(likely * (1 - share), likely, likely * (1 + share), source)


# Thickness tolerance of the pane is part of the span.
GLASS: Final = Density.within(2500, 0.05, "EN 572-1: 2.5 kg/m2 for each mm")
ACRYLIC: Final = Density.within(1190, 0.07, "material tables: 1190 kg/m3")

_MEMORY: Final = "from memory"
BOARDS: Final = {
    "foam board": Density(80, 110, 160, _MEMORY),
    "corrugated": Density(90, 140, 220, _MEMORY),
    "polypropylene": Density(120, 160, 220, _MEMORY),
    "hardboard": Density(750, 900, 1050, _MEMORY),
    "plywood": Density(450, 580, 720, _MEMORY),
    "board": Density(500, 650, 850, _MEMORY),
}
UNNAMED_BACKING: Final = Density(80, 110, 1050, "taken as foam board; hardboard would be heavier")
PAPER_AND_BOARD: Final = Density(500, 700, 1000, _MEMORY)
STRETCHED_CANVAS: Final = Density(60, 110, 200, _MEMORY)

# Specific gravity, oven-dry mass on volume at 12 % moisture.
WOOD_GRAVITY: Final = {
    "basswood": 0.37,
    "red alder": 0.41,
    "alder": 0.41,
    "yellow-poplar": 0.42,
    "poplar": 0.42,
    "cherry": 0.50,
    "walnut": 0.55,
    "white ash": 0.60,
    "ash": 0.60,
    "red oak": 0.63,
    "beech": 0.64,
    "white oak": 0.68,
    "oak": 0.655,
}
UNNAMED_WOOD: Final = Density(350, 500, 850, "wood not named")
_WOOD_SOURCE: Final = "after the USDA Wood Handbook, from memory: 1000 x G x 1.12"


def wood_density(name: str) -> Density:
    """Return the density of a named wood at 12 % moisture, within 10 %.

    Parameters
    ----------
    name : str
        Words in which a wood's name appears; anything else counts as an unnamed wood.
    """
    words = name.casefold().replace("tulipwood", "yellow-poplar")
    found = [wood for wood in WOOD_GRAVITY if wood in words]
    if not found:
        return UNNAMED_WOOD
    gravity = WOOD_GRAVITY[max(found, key=len)]
    return Density.within(1000 * gravity * 1.12, 0.10, _WOOD_SOURCE)


def board_density(material: str, unnamed: Density) -> Density:
    """Return the density of a named board, or ``unnamed`` when the words say nothing known."""
    words = material.casefold()
    found = [name for name in BOARDS if name in words]
    return BOARDS[max(found, key=len)] if found else unnamed


def measured(kg_m3: float) -> Density:
    """Return a density that the catalogue states, within 5 %."""
    return Density.within(kg_m3, 0.05, "the catalogue")
