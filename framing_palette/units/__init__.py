"""How long, and how much money?

Written lengths and amounts flow in, exact values flow out: ``Length`` holds rational millimetres
and ``Money`` decimal amounts, so that no sum in the shop depends on the unit that it was typed in
or on the order in which it was added up. Rounding happens only on show, and says so. Nothing here
knows what is measured or sold. Every other folder may import this one.
"""

from framing_palette.units.length_text import Denominator, LengthUnit
from framing_palette.units.lengths import ZERO, Exact, Length, exact_fraction, total
from framing_palette.units.money import Money, money_total

__all__ = [
    "ZERO",
    "Denominator",
    "Exact",
    "Length",
    "LengthUnit",
    "Money",
    "exact_fraction",
    "money_total",
    "total",
]
