"""The reading of a picture as plain dictionaries, for JSON and for other programs."""

import math
from typing import Any

from framing_palette.picture.attention import grey_pulls
from framing_palette.picture.findings import (
    BANDS_MM,
    Accent,
    Findings,
    PaletteColour,
    RegionFinding,
    Texture,
)
from framing_palette.picture.pictures import ColourTrust, Picture

PALETTE_SCHEMA = "framing-palette/palette@1"
_DIGITS = 4


def palette_report(picture: Picture, findings: Findings) -> dict[str, Any]:
    """Return everything that was found, as schema "framing-palette/palette@1"."""
    return {
        "schema": PALETTE_SCHEMA,
        "picture": picture_report(picture),
        "regions": [
            region_report(region) | {"texture": texture_report(region.texture)}
            for region in findings.regions
        ],
        "accents": [accent_report(accent) for accent in findings.accents],
        "attention": attention_report(findings),
    }


def picture_report(picture: Picture) -> dict[str, Any]:
    """Return the size, scale and trust of a picture."""
    return {
        "width_px": picture.full_width_px,
        "height_px": picture.full_height_px,
        "working_width_px": picture.columns,
        "working_height_px": picture.rows,
        "mm_per_working_px": _rounded(picture.mm_per_px, 6),
        "source": picture.source,
        "notices": list(picture.notices),
        "colour_trust": trust_report(picture.colour_trust),
    }


def trust_report(trust: ColourTrust) -> dict[str, Any]:
    """Return how far the colours can be trusted."""
    return {
        "method": trust.method,
        "grade": trust.grade.value,
        "words": trust.words,
        "mean_delta_e": _rounded(trust.mean_delta_e),
        "p95_delta_e": _rounded(trust.p95_delta_e),
        "max_delta_e": _rounded(trust.max_delta_e),
        "clipped_share": _rounded(trust.clipped_share, 6),
    }


def regions_report(findings: Findings) -> list[dict[str, Any]]:
    """Return the regions' names, roles, colours and accents."""
    return [region_report(region) for region in findings.regions]


def region_report(region: RegionFinding) -> dict[str, Any]:
    """Return one region's colours and accents."""
    return {
        "name": region.name,
        "role": region.role.value,
        "share": _rounded(region.share, 6),
        "colours": [_colour_report(colour) for colour in region.colours],
        "accents": [accent_report(accent) for accent in region.accents],
        "mean_lab": [_rounded(value) for value in region.mean_lab],
        "strength": _rounded(region.strength),
    }


def accent_report(accent: Accent) -> dict[str, Any]:
    """Return one accent."""
    return {
        "lab": [_rounded(value) for value in accent.lab],
        "name": accent.name,
        "share": _rounded(accent.share, 6),
        "x": _rounded(accent.x),
        "y": _rounded(accent.y),
        "delta_e": _rounded(accent.delta_e),
        "strength": _rounded(accent.strength),
        "size_mm": _rounded(accent.size_mm),
    }


def texture_report(texture: Texture) -> dict[str, Any]:
    """Return a texture; what is unknown is null."""
    return {
        "bands_mm": list(BANDS_MM),
        "lightness_contrast": [_rounded(value) for value in texture.lightness_contrast],
        "chroma_contrast": [_rounded(value) for value in texture.chroma_contrast],
        "direction_deg": _rounded(texture.direction_deg),
        "direction_strength": _rounded(texture.direction_strength),
        "regularity": _rounded(texture.regularity),
        "sparkle": _rounded(texture.sparkle),
        "mm_per_px": _rounded(texture.mm_per_px, 6),
    }


def attention_report(findings: Findings) -> dict[str, Any]:
    """Return the unit of pull, and the pull of neutral greys as its yardstick."""
    greys = grey_pulls(findings.mean_lab, findings.focus_strength)
    return {
        "mean_lab": [_rounded(value) for value in findings.mean_lab],
        "focus_strength": _rounded(findings.focus_strength),
        "focus_guessed": findings.focus_guessed,
        "chroma_range": [_rounded(value) for value in findings.chroma_range],
        "lightness_range": [_rounded(value) for value in findings.lightness_range],
        "grey_pulls": [
            {"lightness": lightness, "pull": _rounded(pull)} for lightness, pull in greys.items()
        ],
    }


def _colour_report(colour: PaletteColour) -> dict[str, Any]:
    return {
        "lab": [_rounded(value) for value in colour.lab],
        "share": _rounded(colour.share, 6),
        "name": colour.name,
    }


def _rounded(value: float | None, digits: int = _DIGITS) -> float | None:
    return None if value is None or not math.isfinite(value) else round(value, digits)
