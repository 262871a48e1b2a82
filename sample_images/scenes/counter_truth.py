"""The truth about the counter photograph: corners, reference colours, light and camera."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from sample_images.materials import spectral
from sample_images.scenes.counter_set import (
    BALANCE_K,
    FILL,
    GAP_MM,
    GREY,
    HEIGHT_PX,
    LAMP_K,
    LAMP_MM,
    PATCH_MM,
    RIM_MM,
    WIDTH_PX,
    Card,
    Points,
    lamp_share,
    patch_corner,
    projected,
)

if TYPE_CHECKING:
    from numpy.typing import NDArray


def truth(
    cards: list[Card], view: Points, scale: float, exposure: float, device: spectral.Camera
) -> dict[str, Any]:
    chart, grey, art = cards
    patches = []
    for index, (name, spectrum) in enumerate(spectral.patch_spectra().items()):
        row, column = divmod(index, 6)
        corner = np.array(patch_corner(index))
        square = corner + PATCH_MM * np.array([(0, 0), (1, 0), (1, 1), (0, 1)])
        patches.append(
            {
                "name": name,
                "row": row,
                "column": column,
                "lab_d50": _rounded(spectral.lab_d50(spectrum), 3),
                "corners_px": _rounded(projected(view, chart.on_table(square)), 2),
            }
        )
    return {
        "schema": "framing-palette/counter-photo-truth@1",
        "invented": True,
        "picture": "ferry_at_dusk.jpg",
        "image": {"width_px": round(WIDTH_PX * scale), "height_px": round(HEIGHT_PX * scale)},
        "corner_order": "upper left, upper right, lower right, lower left of the upright thing",
        "pixel_origin": "centre of the upper left pixel is (0, 0)",
        "colour": "CIELAB, D50, 2 degree",
        "art": _placed(art, view),
        "chart": {
            **_placed(chart, view),
            "rows": 4,
            "columns": 6,
            "patch_mm": PATCH_MM,
            "gap_mm": GAP_MM,
            "rim_mm": RIM_MM,
            "reference": "reflectance spectra of ISO 17321-1, from colour-science",
            "patches": patches,
        },
        "grey_card": {
            **_placed(grey, view),
            "reflectance": GREY,
            "lab_d50": _rounded(spectral.lab_d50(np.full(len(spectral.WAVELENGTHS), GREY)), 3),
        },
        "light": _light_truth(art),
        "camera": {
            "white_balance_k": BALANCE_K,
            "encoding": "sRGB curve on linear camera values",
            "exposure": round(exposure, 5),
            "matrix": _rounded(device.matrix, 5),
            "vignette": "1 - 0.20 r^2, r from 0 in the middle to 1 in the corners",
            "noise": "variance 1.6e-4 x linear value + 1.2e-6",
            "projection": _rounded(view, 6),
        },
    }


def _light_truth(art: Card) -> dict[str, Any]:
    x, y = art.corners()[:, 0], art.corners()[:, 1]
    share = lamp_share(x.astype(np.float32), y.astype(np.float32))
    return {
        "colour_temperature_k": LAMP_K,
        "spectrum": "black body",
        "lamp_mm": LAMP_MM.tolist(),
        "fill_share": FILL,
        "law": "fill + (1 - fill) (h / distance)^3, h the lamp's height above the counter",
        "relative_illuminance_at_art_corners": _rounded(share, 4),
    }


def _placed(card: Card, view: Points) -> dict[str, Any]:
    return {
        "corners_px": _rounded(projected(view, card.corners()), 2),
        "width_mm": card.width_mm,
        "height_mm": card.height_mm,
    }


def _rounded(values: NDArray[Any], digits: int) -> Any:
    return np.round(np.asarray(values, float), digits).tolist()
