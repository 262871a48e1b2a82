"""Ten small renderings kept as images, to notice when the look changes.

Renew them after a change that is meant, and look at every one before committing:

    python -m tests.preview.reference_sheet
"""

from pathlib import Path

import numpy as np

from framing_palette.catalogue import Catalogue, Finish, Kind
from framing_palette.colour import srgb_u8_to_lab_d50
from framing_palette.design import (
    Arrangement,
    Art,
    Design,
    Glazing,
    Shape,
    Window,
    layer_of,
    moulding_of,
)
from framing_palette.preview import (
    Corner,
    Light,
    Options,
    Pane,
    Quality,
    Wall,
    WallPhoto,
    render,
    render_corner,
    render_on_wall,
    render_side_by_side,
    write_png,
)
from tests.preview.frames import ROUND_MOULDING, SHOP, all_round, mm, picture_of, sample, simple

FOLDER = Path(__file__).parent / "reference_sheet"
WIDTH_PX = 240


def photograph(name):
    """A photograph that scikit-learn ships, every third pixel."""
    from sklearn.datasets import load_sample_image

    return picture_of(srgb_u8_to_lab_d50(np.ascontiguousarray(load_sample_image(name)[::3, ::3])))


def shop(folder):
    """Textured samples drawn from a seed into a folder, beside the plain ones."""
    from PIL import Image

    rng = np.random.default_rng(11)
    weave = 128 + 18 * (np.indices((60, 60)).sum(axis=0) % 4 - 1.5) + rng.normal(0, 5, (60, 60))
    grain = np.cumsum(rng.normal(0, 1, (50, 1)), axis=0) - np.linspace(0, 1, 50)[:, None]
    grain = 128 + 9 * (grain - grain.mean()) + rng.normal(0, 4, (50, 120))
    worn = np.where(rng.random((40, 90, 1)) < 0.2, [120, 50, 40], [196, 160, 84])
    tiles = {"WEAVE": weave, "GRAIN": grain, "WORN": worn}
    for code, pixels in tiles.items():
        Image.fromarray(np.clip(pixels, 0, 255).astype(np.uint8)).save(folder / f"{code}.png")
    facts = {"texture_mm_per_px": 0.5}
    moulded = {**facts, "profile": ROUND_MOULDING}
    samples = (
        sample("WEAVE", Kind.MAT, (82.0, 1.0, 9.0), texture_file="WEAVE.png", **facts),
        sample(
            "GRAIN", Kind.MOULDING, (45.0, 12.0, 25.0), texture_file="GRAIN.png",
            finish=Finish.SATIN, **moulded,
        ),
        sample(
            "WORN", Kind.MOULDING, (64.0, 7.0, 36.0), texture_file="WORN.png",
            finish=Finish.METALLIC, **moulded,
        ),
    )  # fmt: skip
    return Catalogue((*SHOP.samples, *samples), textures_dir=str(folder))


def images(folder):
    """Yield the name and the pixels of each rendering."""
    rack, china, flower = shop(folder), photograph("china.jpg"), photograph("flower.jpg")
    plain = simple(shop=rack)
    woven = simple(outer="WEAVE", moulding="GRAIN", shop=rack)
    gilded = simple(inner="GREEN-FILLET", outer="WEAVE", moulding="WORN", shop=rack, glazing=True)

    def shown(design, picture=china, **options):
        return render(design, picture, rack, width_px=WIDTH_PX, options=Options(**options)).srgb

    yield "plain", shown(plain)
    yield "woven_in_wood", shown(woven)
    yield "gilded_full", shown(gilded, quality=Quality.FULL)
    yield "under_glass", shown(gilded, pane=Pane.PLAIN)
    yield "light_from_the_right", shown(plain, light=Light(azimuth_deg=60.0, elevation_deg=35.0))
    yield "warm_bulbs_on_blue", shown(woven, under="A", wall=Wall((45.0, -8.0, -22.0)))
    yield "corner", corner(gilded, china, rack)
    yield "oval_and_windows", ovals(rack, flower)
    yield (
        "side_by_side",
        render_side_by_side(
            [plain, woven, gilded], [china, flower, china], rack, width_px=2 * WIDTH_PX
        ).srgb,
    )
    yield "on_a_wall", on_wall(gilded, flower, rack)


def corner(design, picture, rack):
    return render_corner(
        design, picture, rack, width_px=WIDTH_PX, height_px=180, px_per_mm=3.0,
        corner=Corner.BOTTOM_RIGHT,
    ).srgb  # fmt: skip


def ovals(rack, picture):
    outer = layer_of(rack["WEAVE"], borders=all_round(40))
    oval = Design(
        Art(mm(140), mm(180), mm(1), mm(3), Shape.OVAL), (outer,),
        moulding=moulding_of(rack["WORN"]),
    )  # fmt: skip
    windows = Design(
        Art(mm(80), mm(100), mm(1), mm(3)),
        (layer_of(rack["THICK-MAT"], reveal=all_round(5)), outer),
        glazing=Glazing("glass", mm(2)),
        moulding=moulding_of(rack["GRAIN"]),
        arrangement=Arrangement(tuple(Window(mm(80), mm(100)) for _ in range(4)), 2, mm(20)),
    )
    return render_side_by_side([oval, windows], [picture], rack, width_px=2 * WIDTH_PX).srgb


def on_wall(design, picture, rack):
    lab = np.empty((180, 280, 3), np.float32)
    lab[...] = (78.0, 1.0, 7.0)
    lab[..., 0] -= np.linspace(0, 14, 280)
    corners = ((0.08, 0.30), (0.20, 0.32), (0.20, 0.62), (0.08, 0.64))
    photo = WallPhoto(picture_of(lab), corners, 210.0, 297.0, exposure=0.85)
    return render_on_wall(design, picture, rack, photo, middle_mm=(650.0, 140.0)).srgb


def renew():
    """Draw and keep all of them."""
    from tempfile import TemporaryDirectory

    FOLDER.mkdir(exist_ok=True)
    with TemporaryDirectory() as folder:
        for name, srgb in images(Path(folder)):
            print(write_png(FOLDER / f"{name}.png", srgb))


if __name__ == "__main__":
    renew()
