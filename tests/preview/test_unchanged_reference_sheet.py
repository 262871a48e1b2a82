"""The look of ten renderings, kept as small images; see ``reference_sheet`` for how to renew them."""

import numpy as np
import pytest
from PIL import Image

from framing_palette.colour import delta_e_2000, srgb_u8_to_lab_d50
from tests.preview.reference_sheet import FOLDER, images

# Another processor or another version of a library may move a pixel on an edge.
MEAN_DELTA_E, P99_DELTA_E = 0.15, 1.5


@pytest.fixture(scope="module")
def drawn(tmp_path_factory):
    return dict(images(tmp_path_factory.mktemp("textures")))


@pytest.mark.parametrize("name", sorted(path.stem for path in FOLDER.glob("*.png")))
def test_unchanged_rendering(drawn, name):
    kept = np.asarray(Image.open(FOLDER / f"{name}.png"))
    assert kept.shape == drawn[name].shape
    apart = delta_e_2000(srgb_u8_to_lab_d50(kept), srgb_u8_to_lab_d50(drawn[name]))
    assert apart.mean() < MEAN_DELTA_E
    assert np.quantile(apart, 0.99) < P99_DELTA_E


def test_all_ten_are_kept(drawn):
    assert sorted(drawn) == sorted(path.stem for path in FOLDER.glob("*.png"))
    assert len(drawn) == 10
