"""Writing the pictures and what is known about them: JPEG, TOML and JSON files."""

from __future__ import annotations

import json
from collections.abc import Mapping
from io import BytesIO
from typing import TYPE_CHECKING, Any

from PIL import Image, ImageCms

if TYPE_CHECKING:
    from pathlib import Path

    import numpy as np
    from numpy.typing import NDArray

# Where an ICC header keeps its date (ICC.1:2022, 7.2): fixed, so that the same seed
# gives the same bytes.
_DATE = slice(24, 36)
_NEW_YEAR_2024 = bytes([7, 232, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0])


def srgb_profile() -> bytes:
    """An sRGB profile without a time stamp."""
    profile = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    profile[_DATE] = _NEW_YEAR_2024
    return bytes(profile)


def write_jpeg(path: Path, srgb: NDArray[np.uint8], most_bytes: int) -> int:
    """Save with full colour resolution at the best quality that fits, and return the quality."""
    picture = Image.fromarray(srgb, "RGB") if srgb.ndim == 3 else Image.fromarray(srgb)
    profile = srgb_profile()
    low, high, best = 60, 96, b""
    quality = low
    while low <= high:
        middle = (low + high) // 2
        trial = BytesIO()
        picture.save(
            trial, "JPEG", quality=middle, subsampling=0, optimize=True, icc_profile=profile
        )
        if trial.tell() <= most_bytes or middle == 60:
            low, best, quality = middle + 1, trial.getvalue(), middle
        else:
            high = middle - 1
    path.write_bytes(best)
    return quality


def write_json(path: Path, content: Mapping[str, Any]) -> None:
    """Save as readable JSON with a final line break; innermost lists stay on one line."""
    path.write_text(_laid_out(content, 0) + "\n", encoding="utf-8")


def _laid_out(value: Any, depth: int) -> str:
    inner, outer = "  " * (depth + 1), "  " * depth
    if isinstance(value, Mapping):
        rows = [f"{inner}{json.dumps(k)}: {_laid_out(v, depth + 1)}" for k, v in value.items()]
        return "{\n" + ",\n".join(rows) + f"\n{outer}}}"
    flat = json.dumps(value)
    if isinstance(value, list) and len(flat) > 96 - 2 * depth:
        rows = [inner + _laid_out(item, depth + 1) for item in value]
        return "[\n" + ",\n".join(rows) + f"\n{outer}]"
    return flat


def write_facts(path: Path, facts: Mapping[str, str | float | bool]) -> None:
    """Save flat facts as TOML."""
    lines = [f"{key} = {json.dumps(value)}" for key, value in facts.items()]
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
