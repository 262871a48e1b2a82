"""The self-check: right on this installation, and able to find a wrong one."""

import csv
from pathlib import Path

import numpy as np
import pytest

from framing_palette.colour import self_check

TABLE = Path(__file__).resolve().parents[1] / "published" / "ciede2000_sharma_2005.csv"


def test_this_installation_gives_the_published_differences() -> None:
    assert self_check.greatest_error() <= self_check.PUBLISHED_ERROR


def test_a_wrong_formula_is_found(monkeypatch: pytest.MonkeyPatch) -> None:
    def euclidean(one: np.ndarray, other: np.ndarray) -> np.ndarray:
        return np.linalg.norm(one - other, axis=-1)

    monkeypatch.setattr(self_check, "delta_e_2000", euclidean)
    assert self_check.greatest_error() > 1.0


def test_every_pair_stands_in_the_published_table() -> None:
    lines = [line for line in TABLE.read_text().splitlines() if not line.startswith("#")]
    published = {
        tuple(float(row[name]) for name in ("L1", "a1", "b1", "L2", "a2", "b2", "dE00"))
        for row in csv.DictReader(lines)
    }
    assert set(self_check._PAIRS) <= published
