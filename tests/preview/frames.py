"""Designs, samples and pictures of plain colours, so that a rendering can be measured."""

from dataclasses import replace

import numpy as np

from framing_palette.catalogue import Catalogue, Finish, Kind, Profile, Sample, SampleColour
from framing_palette.colour import delta_e_2000, srgb_u8_to_lab_d50
from framing_palette.design import Art, Design, Glazing, Sides, layer_of, moulding_of
from framing_palette.picture.pictures import ColourTrust, Picture, TrustGrade
from framing_palette.preview import Options, Wall
from framing_palette.units import Length

mm = Length.mm_of

WHITE, RED, GREEN, BLUE, GREY = (
    (92.0, 0.0, 4.0),
    (42.0, 50.0, 30.0),
    (50.0, -35.0, 25.0),
    (35.0, 5.0, -38.0),
    (60.0, 0.0, 0.0),
)
EVEN_WALL = Options(wall=Wall(lab=(74.0, 0.0, 0.0), fall_off=0.0, dapple=0.0))


def sample(code, kind, lab, **facts):
    sizes = {
        Kind.MAT: {"thickness": mm("1.4")},
        Kind.WRAPPED_FILLET: {"thickness": mm(3), "face": mm(30)},
        Kind.WOOD_FILLET: {"thickness": mm(6), "face": mm(12)},
        Kind.LINER: {
            "thickness": mm(12),
            "face": mm(30),
            "rabbet_width": mm(6),
            "rabbet_depth": mm(8),
        },
        Kind.MOULDING: {
            "face": mm(30),
            "rabbet_width": mm(6),
            "rabbet_depth": mm(15),
            "thickness": mm(24),
        },
    }[kind]
    colours = (SampleColour(lab, 1.0),) if lab else ()
    return Sample(code=code, name=code.lower(), kind=kind, colours=colours, **{**sizes, **facts})


FLAT_MOULDING = Profile(((0.0, 20.0), (30.0, 20.0)))
ROUND_MOULDING = Profile(
    tuple((30.0 * t, 19.0 + 8.0 * (1 - (2 * t - 1) ** 2)) for t in np.linspace(0, 1, 13).tolist())
)
SHOP = Catalogue(
    (
        sample("WHITE-MAT", Kind.MAT, WHITE),
        sample("RED-MAT", Kind.MAT, RED),
        sample("EDGE-MAT", Kind.MAT, RED, bevel=mm(0)),
        sample("THICK-MAT", Kind.MAT, WHITE, thickness=mm(3)),
        sample("GREEN-FILLET", Kind.WRAPPED_FILLET, GREEN, bevel=mm(3)),
        sample(
            "STEP-FILLET",
            Kind.WOOD_FILLET,
            GREEN,
            profile=Profile(((0.0, 3.0), (12.0, 3.0))),
            thickness=mm(3),
        ),
        sample("BLUE-LINER", Kind.LINER, BLUE),
        sample("BLUE-FLAT", Kind.MOULDING, BLUE, profile=FLAT_MOULDING),
        sample("GREY-ROUND", Kind.MOULDING, GREY, profile=ROUND_MOULDING),
        sample("GREY-LEAF", Kind.MOULDING, GREY, profile=ROUND_MOULDING, finish=Finish.METALLIC),
        sample("GREY-GLOSS", Kind.MOULDING, GREY, profile=ROUND_MOULDING, finish=Finish.GLOSS),
        sample("BARE-MOULDING", Kind.MOULDING, GREY),
        sample("NAMELESS-COLOUR", Kind.MAT, None),
    )
)


def all_round(size):
    return Sides.all_round(mm(size))


def simple(
    *,
    width=300,
    height=200,
    inner="WHITE-MAT",
    reveal=8,
    outer="RED-MAT",
    borders=60,
    moulding="BLUE-FLAT",
    shop=SHOP,
    glazing=False,
):
    """A double mat in a moulding: every part a colour of its own."""
    layers = []
    if inner:
        layers.append(layer_of(shop[inner], reveal=all_round(reveal)))
    layers.append(
        layer_of(shop[outer], borders=borders if isinstance(borders, Sides) else all_round(borders))
    )
    return Design(
        Art(mm(width), mm(height), mm(1), mm(3)),
        tuple(layers),
        glazing=Glazing("glass", mm(2)) if glazing else None,
        moulding=moulding_of(shop[moulding]) if moulding else None,
    )


def picture(rows=200, columns=300, lab=(20.0, 0.0, 0.0)):
    pixels = np.empty((rows, columns, 3), np.float32)
    pixels[...] = lab
    return picture_of(pixels)


def picture_of(lab_d50):
    trust = ColourTrust("assumed", TrustGrade.UNKNOWN, "nothing known")
    rows, columns = lab_d50.shape[:2]
    return Picture(np.asarray(lab_d50, np.float32), None, trust, columns, rows)


def busy_picture(rows=80, columns=120):
    """A picture that looks different from every side."""
    y, x = np.mgrid[0:rows, 0:columns].astype(np.float32)
    lab = np.stack(
        [30 + 40 * x / columns, 50 * np.sin(y / 9), 50 * (y / rows) - 20],
        axis=-1,
    )
    return picture_of(lab)


def textured(code, kind, lab, folder, texture, scale=0.2, **facts):
    """A sample with a texture file of given pixels, and the shop that holds it."""
    from PIL import Image

    Image.fromarray(texture).save(folder / f"{code}.png")
    item = sample(code, kind, lab, texture_file=f"{code}.png", texture_mm_per_px=scale, **facts)
    return replace(SHOP, samples=(*SHOP.samples, item), textures_dir=str(folder))


def lab_mean(srgb_u8):
    return srgb_u8_to_lab_d50(np.asarray(srgb_u8)).reshape(-1, 3).mean(axis=0)


def apart(srgb_u8, lab):
    """ΔE00 between the mean of some pixels and a colour."""
    return float(delta_e_2000(lab_mean(srgb_u8), np.asarray(lab)))


def block(rendering, rect):
    """The pixels of a rectangle of the plan, its edges left out."""
    box = rendering.grid.inside(rect)
    return rendering.srgb[box.row_0 : box.row_1, box.column_0 : box.column_1]
