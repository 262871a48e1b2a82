"""What commands print: one JSON object or plain lines on stdout, progress on stderr."""

import json
import math
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any


def print_json(report: dict[str, Any]) -> None:
    """Print one JSON object on stdout."""
    sys.stdout.write(json_text(report))


def json_text(report: dict[str, Any]) -> str:
    """Write one JSON object; what is not a number (nan, infinity) becomes null."""
    return json.dumps(_finite(report), ensure_ascii=False, allow_nan=False, indent=1) + "\n"


def tell(message: str) -> None:
    """Say something beside the result, on stderr."""
    print(message, file=sys.stderr, flush=True)


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
