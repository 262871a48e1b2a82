"""What the command line's tests share: running it in this process, and small good inputs."""

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from PIL import Image

from framing_palette.cli import main
from tests.network import forbidden_network

ROOT = Path(__file__).resolve().parents[2]


@dataclass(frozen=True)
class Ended:
    """How a command ended."""

    code: int
    out: str
    err: str

    @property
    def json(self) -> dict[str, Any]:
        return json.loads(self.out)


Command = Callable[..., Ended]


@pytest.fixture(autouse=True)
def no_network() -> Iterator[None]:
    """Nothing that is done here may ask for the network."""
    with forbidden_network() as asked:
        yield
    assert asked == []


@pytest.fixture
def command(capsys: pytest.CaptureFixture[str]) -> Command:
    def run(*words: object) -> Ended:
        try:
            code = main([str(word) for word in words])
        except SystemExit as left:  # argparse's own way out
            code = int(left.code or 0)
        captured = capsys.readouterr()
        return Ended(code, captured.out, captured.err)

    return run


@pytest.fixture
def picture(tmp_path: Path) -> Path:
    """A small picture: a grey sea, a dark boat and a red buoy."""
    pixels = np.full((120, 180, 3), (128, 138, 146), np.uint8)
    pixels[50:90, 50:110] = (46, 52, 70)
    pixels[96:104, 140:148] = (190, 50, 40)
    rng = np.random.default_rng(7)
    noisy = np.clip(pixels + rng.normal(0, 3, pixels.shape), 0, 255).astype(np.uint8)
    path = tmp_path / "sea.png"
    Image.fromarray(noisy).save(path)
    return path


@pytest.fixture
def regions(tmp_path: Path) -> Path:
    path = tmp_path / "sea.regions.json"
    polygon = [[0.25, 0.4], [0.65, 0.4], [0.65, 0.8], [0.25, 0.8]]
    path.write_text(
        json.dumps({"regions": [{"name": "boat", "role": "focus", "polygon": polygon}]})
    )
    return path


@pytest.fixture
def rack(tmp_path: Path) -> Path:
    """A catalogue of two files, as a shop might start one."""
    folder = tmp_path / "rack"
    folder.mkdir()
    lines = [
        "code,name,kind,face_mm,thickness_mm,bevel_mm,rabbet_width_mm,rabbet_depth_mm,price",
        "M-1,Slate,mat,,1.4,,,,10",
        "M-2,Warm white,mat,,1.4,,,,9",
        "M-3,Loud lime,mat,,1.4,,,,9",
        "W-1,Buoy red,wrapped_fillet,32,2.8,4,,,5",
        "R-1,Dark oak,moulding,30,20,,6.5,18,20",
        "R-2,Shallow pine,moulding,25,14,,6.5,6,12",
    ]
    (folder / "samples.csv").write_text("\n".join(lines) + "\n")
    colours = [
        "code,share,L,a,b",
        "M-1,1,55,-2,-7",
        "M-2,1,94,0,4",
        "M-3,1,88,-60,75",
        "W-1,1,40,45,28",
        "R-1,1,28,6,10",
        "R-2,1,70,6,24",
    ]
    (folder / "colours.csv").write_text("\n".join(colours) + "\n")
    return folder


DESIGN = """
unit = "in"
[art]
width = "16"
height = "20"
thickness = "1/16"
overlap = "1/8"
[[layer]]
kind = "mat"
thickness = "1/16"
reveal = "1/4"
[[layer]]
kind = "mat"
thickness = "1/16"
borders = ["2 1/2", "2 1/2", "3", "2 1/2"]
[glazing]
material = "glass"
thickness = "2 mm"
[backing]
thickness = "3/16"
[moulding]
face = "1 1/2"
rabbet_width = "1/4"
rabbet_depth = "5/8"
allowance = "1/8"
"""


@pytest.fixture
def design(tmp_path: Path) -> Path:
    path = tmp_path / "design.toml"
    path.write_text(DESIGN)
    return path
