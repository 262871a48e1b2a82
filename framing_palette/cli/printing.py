"""What commands print: one JSON object or plain lines on stdout, progress on stderr."""

import json
import math
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from framing_palette.ranking import RankedSample


def print_json(report: dict[str, Any]) -> None:
    """Print one JSON object on stdout."""
    sys.stdout.write(json_text(report))


def json_text(report: dict[str, Any]) -> str:
    """Write one JSON object; what is not a number (nan, infinity) becomes null."""
    return json.dumps(_finite(report), ensure_ascii=False, allow_nan=False, indent=1) + "\n"


def tell(message: str) -> None:
    """Say something beside the result, on stderr."""
    print(message, file=sys.stderr, flush=True)


def measures_in_words(line: "RankedSample") -> str:
    """Write the measures behind a verdict on one line."""
    measures = line.measures
    return (
        f"echo ΔE00 {measures.echo_delta_e:.1f}; separation ΔE00 "
        f"{measures.separation_delta_e:.1f}, L* {measures.separation_lightness:+.1f}; "
        f"pull {measures.pull:.2f}; harmony {measures.harmony:+.2f}; "
        f"texture {measures.texture:.2f}; stable {line.stability:.0%}"
    )


@contextmanager
def progress(doing: str, *, quiet: bool = False) -> Iterator[None]:
    """Say on stderr what is being done, for work that may take over a second."""
    if not quiet:
        tell(f"{doing} …")
    yield


def _finite(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _finite(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_finite(item) for item in value]
    if isinstance(value, float) and not math.isfinite(value):
        return None
    return value
