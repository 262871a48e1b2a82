"""Framing Palette: a colour-harmony assistant for custom picture framers.

The package reads like a job moving through the shop. Each folder answers one question and may
import only from the folders above it in this list: ``units``, ``colour``, ``picture``,
``catalogue``, ``ranking``, ``design``, ``preview``, ``papers``, ``jobs``, and the two faces
``cli`` and ``window``. Nothing here imports anything, so that ``import framing_palette`` is free.
"""

__version__ = "0.1.0"
