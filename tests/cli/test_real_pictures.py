"""The main job on real photographs that packages ship: from the picture to the sizes and preview."""

import os
from pathlib import Path

import pytest
import sklearn.datasets
from PIL import Image

from tests.cli.conftest import ROOT, Command

SKLEARN = Path(os.path.dirname(sklearn.datasets.__file__)) / "images"  # noqa: PTH120
PICTURES = ("china.jpg", "flower.jpg", "coffee", "chelsea", "astronaut")


def photograph(name: str, folder: Path) -> Path:
    if name.endswith(".jpg"):
        return SKLEARN / name
    import skimage.data

    path = folder / f"{name}.png"
    Image.fromarray(getattr(skimage.data, name)()).save(path)
    return path


@pytest.mark.whole_job
@pytest.mark.parametrize("name", PICTURES)
def test_a_real_photograph_goes_from_ranking_to_a_framed_preview(
    command: Command, tmp_path: Path, name: str
) -> None:
    picture, rack = photograph(name, tmp_path), ROOT / "catalog"
    ranked = command("rank", picture, "--catalog", rack, "--kind", "mat", "--json").json
    assert ranked["samples"][0]["verdict"] != "clash"
    assert ranked["samples"][0]["score"] > ranked["samples"][-1]["score"] + 0.3
    words = ("search", picture, "--catalog", rack, "--layers", "wrapped_fillet,mat,moulding")
    found = command(*words, "--top", 2, "--json").json["designs"]
    assert len(found) == 2
    codes = [layer["code"] for layer in found[0]["layers"]]
    design = tmp_path / "design.toml"
    design.write_text(
        f"""unit = "in"
[art]
width = "16"
height = "12"
overlap = "1/8"
[[layer]]
kind = "wrapped_fillet"
code = "{codes[0]}"
reveal = "1/8"
[[layer]]
kind = "mat"
code = "{codes[1]}"
borders = "2 1/2"
[moulding]
code = "{codes[2]}"
"""
    )
    sizes = command("size", design, "--catalog", rack, "--json").json
    assert sizes["layers"][0]["opening"]["width_in"] == "15 3/4"
    assert sizes["layers"][1]["outer"]["width_in"] == "21"
    out = tmp_path / "preview.png"
    told = command(
        "preview", design, "--picture", picture, "--catalog", rack, "--out", out,
        "--width-px", 500, "--json",
    )  # fmt: skip
    assert told.code == 0
    with Image.open(out) as preview:
        assert preview.width == 500
