"""What is painted? One composition a module, all of it invented.

Every scene offers `paint(width_px, seed)` and returns an (h, w, 3) uint8 sRGB
array; sizes inside are fractions of the width, so a small proof and the full
picture show the same thing.
"""
