"""The generator on small proofs."""

from __future__ import annotations

import json
import tomllib
from typing import TYPE_CHECKING

import numpy as np
import pytest

from sample_images import generate
from sample_images.materials import curves, form, noise, pigment
from sample_images.materials.brush import Brush, PaintLayer, cover
from sample_images.scenes import botanical

if TYPE_CHECKING:
    from pathlib import Path


def test_one_seed_paints_one_picture_and_another_seed_another() -> None:
    first, again, other = (botanical.paint(150, seed) for seed in (3, 3, 4))
    assert np.array_equal(first, again)
    assert not np.array_equal(first, other)


def test_a_named_proof_leaves_picture_regions_and_facts(tmp_path: Path) -> None:
    assert generate.main(["briar_rose", "--scale", "0.1", "--out", str(tmp_path)]) == 0
    assert sorted(p.name for p in tmp_path.iterdir()) == [
        "briar_rose.jpg",
        "briar_rose.regions.json",
        "briar_rose.toml",
    ]
    known = tomllib.loads((tmp_path / "briar_rose.toml").read_text(encoding="utf-8"))
    assert known["mm_per_px"] * known["width_px"] == pytest.approx(270)
    assert json.loads((tmp_path / "briar_rose.regions.json").read_text(encoding="utf-8"))["regions"]


def test_an_unknown_picture_is_refused_by_name(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        generate.main(["no_such_picture"])
    assert stopped.value.code == 2
    assert "no_such_picture" in capsys.readouterr().err


def test_strokes_take_the_colour_of_the_target_and_stay_within_the_shape() -> None:
    rng = np.random.default_rng(1)
    target = np.full((80, 120, 3), (0.1, 0.3, 0.8), np.float32)
    layer = PaintLayer(np.ones((80, 120, 3), np.float32))
    left = np.zeros((80, 120), np.float32)
    left[:, :60] = 1
    brush = Brush(10.0, 40.0, tone_spread=0, hue_spread=0, streak=0, wet=0)
    strokes = cover(
        layer, target, np.zeros((80, 120), np.float32), brush, rng, where=left, within=left
    )
    assert strokes > 20
    assert np.abs(layer.colour[10:70, 10:40] - target[10:70, 10:40]).mean() < 0.06
    assert (layer.colour[:, 85:] == 1).all()


def test_a_disc_inflates_to_a_dome_highest_in_its_middle() -> None:
    turn = np.linspace(0, 2 * np.pi, 60, endpoint=False)
    disc = np.stack([50 + 30 * np.cos(turn), 50 + 30 * np.sin(turn)], axis=1)
    dome = form.inflated((100, 100), disc)
    # A membrane over a disc of radius r bulges r^2/4; twice that under the root is r/sqrt 2.
    assert dome[50, 50] == pytest.approx(30 / np.sqrt(2), rel=0.04)
    assert dome[50, 50] > dome[50, 65] > dome[50, 78]
    assert abs(dome[5, 5]) < 0.5


def test_noise_has_zero_mean_and_unit_spread() -> None:
    field = noise.fractal((64, 200), np.random.default_rng(2), cell=16, stretch=3)
    assert field.mean() == pytest.approx(0, abs=1e-4)
    assert field.std() == pytest.approx(1, abs=1e-3)


def test_two_glazes_multiply_as_one_of_double_depth() -> None:
    white = np.ones((4, 4, 3), np.float32)
    thin = np.full((4, 4), 0.4, np.float32)
    twice = pigment.glaze(pigment.glaze(white, (0.8, 0.5, 0.3), thin), (0.8, 0.5, 0.3), thin)
    once = pigment.glaze(white, (0.8, 0.5, 0.3), thin * 2)
    assert np.allclose(twice, once, atol=1e-6)


def test_a_curve_passes_through_its_points() -> None:
    points = np.array([(0, 0), (10, 5), (20, -3), (35, 8)], float)
    curve = curves.spline(points, per_span=8)
    nearest = np.linalg.norm(curve[:, None] - points[None], axis=2).min(axis=0)
    assert nearest.max() < 1e-9
