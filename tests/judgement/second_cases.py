"""A second set of planted orders, written from the principles before any of them was scored.

The principles are numbered as in ``cases``; ``family`` groups the orders by what they try.
"""

from collections.abc import Iterator

from framing_palette.catalogue import Finish, Sample, Surface
from tests.judgement.cases import (
    BLACK,
    BLUE_WHITE,
    BUTTER,
    CHARCOAL,
    COLD_WHITE,
    CREAM,
    PURE_WHITE,
    WARM_WHITE,
    Case,
    _mixed,
    _plain,
)
from tests.ranking.by_hand import Lab, lch

Words = tuple[str, str, Lab, str, Lab]
SUEDE = {"surface": Surface.SUEDE, "finish": Finish.MATT}
METAL = {"surface": Surface.BRUSHED_METAL, "finish": Finish.METALLIC}
LEAF = {"surface": Surface.LEAF, "finish": Finish.METALLIC}
WARM_GREY: Lab = (62, 1, 4.5)


def _plains(principle: int, *orders: Words) -> Iterator[Case]:
    for picture, better, better_lab, worse, worse_lab in orders:
        winner, rival = _plain(better, better_lab), _plain(worse, worse_lab)
        yield Case(picture, winner, rival, principle, better)


def _pair(picture: str, winner: Sample, rival: Sample, principle: int) -> Case:
    return Case(picture, winner, rival, principle, winner.code)


TWO_MATCHES = tuple(
    _plains(
        2,
        ("flag and suit", "dark rust", lch(34, 26, 42), "suit orange", lch(60, 62, 44)),
        ("flag and suit", "deep oxblood", lch(22, 24, 28), "bright suit", lch(64, 66, 48)),
        ("cup", "coffee brown", lch(27, 22, 48), "saucer orange", lch(52, 66, 46)),
        ("leaves behind", "shade teal", lch(20, 15, 190), "petal orange", lch(68, 52, 66)),
        ("tulips", "garnet", lch(26, 27, 27), "tulip red", lch(46, 60, 28)),
        ("poppies", "deep moss", lch(30, 15, 124), "poppy red", lch(49, 70, 36)),
        ("teal bay", "deep teal", lch(30, 16, 212), "bright orange", lch(64, 52, 56)),
        ("desert", "umber", lch(28, 18, 50), "hot clay", lch(52, 52, 52)),
        ("harvest", "dark straw brown", lch(34, 20, 70), "ripe yellow", lch(76, 56, 84)),
        ("winter barn", "dark barn red", lch(26, 22, 30), "barn scarlet", lch(46, 58, 32)),
        ("raincoat", "deep ochre", lch(44, 30, 82), "coat yellow", lch(78, 72, 86)),
        ("brick alley", "dark brick", lch(27, 17, 42), "hot brick", lch(56, 46, 46)),
        ("ferns", "shade green", lch(26, 18, 126), "spring green", lch(66, 56, 114)),
        ("blue door", "ink navy", lch(22, 18, 272), "door cobalt", lch(42, 48, 276)),
    )
)
GLITTER = (
    _pair(
        "kitten",
        _plain("garnet line", lch(30, 34, 24)),
        _mixed("frost glitter", (lch(92, 2, 90), 0.7), (lch(98, 1, 90), 0.3), finish=Finish.METALLIC),
        2,
    ),
    _pair(
        "kitten",
        _plain("garnet suede", lch(26, 24, 24), **SUEDE),
        _mixed("silver leaf", (lch(84, 2, 85), 0.7), (lch(95, 2, 85), 0.3), **LEAF),
        2,
    ),
    _pair(
        "dove",
        _plain("border green", lch(38, 24, 150)),
        _mixed("pearl sparkle", (lch(90, 3, 80), 0.75), (lch(98, 1, 80), 0.25), finish=Finish.METALLIC),
        2,
    ),
    _pair(
        "dove",
        _plain("border green, dark", lch(29, 16, 150)),
        _mixed("ice sparkle", (lch(91, 3, 250), 0.6), (lch(98, 1, 250), 0.4)),
        2,
    ),
    _pair(
        "cradle",
        _plain("border petrol", lch(33, 22, 215)),
        _mixed("rose glitter", (lch(86, 10, 42), 0.7), (lch(97, 3, 60), 0.3), finish=Finish.METALLIC),
        2,
    ),
    _pair(
        "cradle",
        _plain("soft petrol", lch(27, 15, 215), **SUEDE),
        _mixed("champagne", (lch(88, 9, 75), 0.8), (lch(97, 3, 85), 0.2), **LEAF),
        2,
    ),
    _pair("cradle", _plain("blush suede", lch(66, 13, 44), **SUEDE), _plain("blush metal", lch(66, 13, 44), **METAL), 6),
    _pair("kitten", _plain("grey suede", lch(62, 4, 72), **SUEDE), _plain("grey metal", lch(62, 4, 72), **METAL), 6),
)  # fmt: skip
FOLIAGE = (
    _pair(
        "woodland",
        _mixed("pine, sage and bark", (lch(37, 18, 150), 0.4), (lch(51, 20, 136), 0.35), (lch(33, 14, 60), 0.25)),
        _mixed("pine, sky and rose", (lch(38, 20, 150), 0.4), (lch(60, 26, 250), 0.3), (lch(66, 26, 5), 0.3)),
        5,
    ),
    _pair(
        "woodland",
        _mixed("moss with bark", (lch(37, 18, 148), 0.36), (lch(26, 10, 150), 0.34), (lch(34, 15, 60), 0.3)),
        _plain("vivid leaf", lch(52, 52, 138)),
        5,
    ),
    _pair(
        "woodland",
        _mixed("quiet forest", (lch(30, 13, 150), 0.4), (lch(42, 16, 140), 0.35), (lch(32, 13, 62), 0.25)),
        _plain("grey", (52, 0, 1)),
        5,
    ),
    _pair(
        "ferns",
        _mixed("fern, lime and shade", (lch(45, 34, 122), 0.34), (lch(58, 36, 113), 0.33), (lch(29, 22, 130), 0.33)),
        _mixed("fern, brick and lilac", (lch(46, 38, 122), 0.34), (lch(45, 36, 35), 0.33), (lch(62, 26, 310), 0.33)),
        5,
    ),
    _pair(
        "ferns",
        _mixed("fern shade", (lch(32, 22, 126), 0.5), (lch(44, 30, 122), 0.3), (lch(23, 9, 92), 0.2)),
        _plain("lettuce", lch(74, 62, 118)),
        5,
    ),
    _pair(
        "olive grove",
        _mixed("olive, silver and earth", (lch(49, 15, 112), 0.4), (lch(63, 12, 104), 0.3), (lch(37, 14, 84), 0.3)),
        _mixed("olive, teal and plum", (lch(50, 16, 112), 0.4), (lch(45, 24, 205), 0.3), (lch(38, 24, 330), 0.3)),
        5,
    ),
    _pair(
        "olive grove",
        _mixed("olive stone", (lch(48, 15, 110), 0.5), (lch(37, 13, 86), 0.3), (lch(64, 12, 104), 0.2)),
        _plain("emerald", lch(48, 46, 150)),
        5,
    ),
    _pair(
        "poppies",
        _mixed("meadow", (lch(46, 24, 122), 0.45), (lch(60, 24, 109), 0.3), (lch(36, 19, 130), 0.25)),
        _mixed("meadow and sky", (lch(48, 26, 122), 0.34), (lch(66, 30, 260), 0.33), (lch(80, 8, 280), 0.33)),
        5,
    ),
    _pair(
        "leaves behind",
        _mixed("teal shade", (lch(16, 13, 185), 0.5), (lch(28, 18, 205), 0.3), (lch(32, 22, 180), 0.2)),
        _mixed("teal, violet and lime", (lch(28, 20, 212), 0.34), (lch(45, 40, 310), 0.33), (lch(75, 50, 115), 0.33)),
        5,
    ),
    _pair(
        "brick alley",
        _mixed("brick mottle", (lch(43, 28, 44), 0.4), (lch(51, 24, 52), 0.3), (lch(34, 19, 40), 0.3)),
        _mixed("brick, mint and blue", (lch(44, 30, 44), 0.4), (lch(70, 22, 165), 0.3), (lch(50, 28, 265), 0.3)),
        5,
    ),
)  # fmt: skip
WHITES = tuple(
    _plains(
        3,
        ("etching", "cream", CREAM, "cold white", COLD_WHITE),
        ("etching", "butter", BUTTER, "blue white", BLUE_WHITE),
        ("etching", "cream mat", CREAM, "pure white", PURE_WHITE),
        ("old letter", "butter", BUTTER, "cold white", COLD_WHITE),
        ("old letter", "cream", CREAM, "pure white", PURE_WHITE),
        ("photograph on aged paper", "cream", CREAM, "cold white", COLD_WHITE),
        ("photograph on aged paper", "warm white", WARM_WHITE, "blue white", BLUE_WHITE),
        ("pen on white", "pure white", PURE_WHITE, "butter", BUTTER),
        ("pen on white", "warm white", WARM_WHITE, "yellow cream", lch(88, 24, 90)),
        ("cool print", "cold white", COLD_WHITE, "cream", CREAM),
        ("cool print", "pure white", PURE_WHITE, "butter", BUTTER),
        ("harbour wash", "cold white", COLD_WHITE, "cream", CREAM),
        ("harbour wash", "pure white", PURE_WHITE, "butter", BUTTER),
        ("desert", "warm white", WARM_WHITE, "cold white", COLD_WHITE),
        ("desert", "warm white", WARM_WHITE, "blue white", BLUE_WHITE),
        ("harvest", "warm white", WARM_WHITE, "cold white", COLD_WHITE),
        ("winter barn", "cold white", COLD_WHITE, "butter", BUTTER),
        ("winter barn", "pure white", PURE_WHITE, "cream", CREAM),
        ("sitter", "cream", CREAM, "cold white", COLD_WHITE),
        ("cup", "cream", CREAM, "blue white", BLUE_WHITE),
        ("whiskers", "warm white", WARM_WHITE, "cold white", COLD_WHITE),
    )
)
NEAR_MISSES = tuple(
    _plains(
        3,
        ("tulips", "tulip red, dark", lch(28, 28, 27), "orange red", lch(48, 56, 52)),
        ("tulips", "forest", lch(30, 10, 145), "magenta red", lch(43, 54, 4)),
        ("tulips", "tulip red", lch(43, 54, 27), "vermilion", lch(48, 56, 50)),
        ("winter barn", "barn red", lch(38, 38, 32), "raspberry", lch(40, 44, 6)),
        ("winter barn", "charcoal", CHARCOAL, "rose red", lch(41, 46, 8)),
        ("kitten", "garnet", lch(33, 40, 24), "brick orange", lch(38, 44, 50)),
        ("kitten", "soft grey", lch(60, 4, 70), "cherry pink", lch(38, 46, 358)),
        ("lighthouse", "lamp red, dark", lch(30, 28, 30), "pink red", lch(42, 48, 5)),
        ("flag and suit", "dark rust", lch(33, 27, 42), "pink coral", lch(58, 56, 14)),
        ("poppies", "dark moss", lch(32, 16, 124), "crimson", lch(46, 64, 10)),
        ("brick alley", "dark brick", lch(30, 20, 43), "cranberry", lch(42, 36, 12)),
    )
)
ACCENTS = tuple(
    _plains(
        4,
        ("lighthouse", "lamp red", lch(38, 42, 30), "sky grey", lch(63, 8, 245)),
        ("lighthouse", "lamp red, dark", lch(28, 26, 30), "middle grey", (58, 0, 0)),
        ("raincoat", "ochre", lch(52, 38, 83), "street grey", lch(48, 3, 250)),
        ("raincoat", "dark ochre", lch(38, 24, 82), "middle grey", (60, 0, 1)),
        ("blue door", "door blue", lch(34, 32, 272), "wall cream", lch(82, 13, 80)),
        ("blue door", "door navy", lch(24, 20, 272), "sand", lch(70, 14, 74)),
        ("dove", "border green", lch(40, 25, 150), "pale grey", lch(76, 5, 250)),
        ("cradle", "border petrol", lch(35, 24, 215), "blush", lch(80, 9, 60)),
        ("teal bay", "burnt orange", lch(40, 26, 54), "warm grey", WARM_GREY),
        ("sitter", "shadow brown", lch(27, 18, 42), "warm grey", WARM_GREY),
        ("desert", "deep clay", lch(33, 26, 50), "warm grey", WARM_GREY),
    )
)
STRONG_AND_STRAY = tuple(
    _plains(
        3,
        ("desert", "umber", lch(30, 18, 52), "turquoise", lch(60, 44, 200)),
        ("harbour wash", "slate blue", lch(38, 16, 258), "orange", lch(62, 64, 58)),
        ("sitter", "dark umber", lch(20, 9, 58), "lime", lch(76, 68, 116)),
        ("pen on white", "black", BLACK, "scarlet", lch(48, 66, 36)),
        ("cool print", "charcoal", CHARCOAL, "orange", lch(64, 62, 60)),
        ("whiskers", "walnut", lch(32, 20, 62), "violet", lch(46, 54, 312)),
        ("roof edge", "timber", lch(30, 15, 40), "purple", lch(42, 52, 320)),
        ("brick alley", "deep brick", lch(29, 19, 43), "cyan", lch(66, 40, 215)),
        ("cup", "dark coffee", lch(24, 18, 48), "ultramarine", lch(38, 66, 288)),
        ("old letter", "sepia ink", lch(32, 13, 56), "emerald", lch(52, 52, 152)),
    )
)
SURFACES = (
    _pair(
        "roof edge",
        _plain("timber", lch(30, 14, 40), surface=Surface.MOTTLED),
        _plain("mint silk", lch(78, 22, 165), surface=Surface.SMOOTH),
        1,
    ),
    _pair(
        "whiskers",
        _plain("fur brown", lch(38, 20, 64), surface=Surface.SMOOTH),
        _plain("lilac suede", lch(60, 28, 310), **SUEDE),
        1,
    ),
    _pair(
        "sitter",
        _plain("umber suede", lch(26, 14, 52), **SUEDE),
        _plain("umber chrome", lch(26, 14, 52), **METAL),
        6,
    ),
)
SECOND_CASES: tuple[Case, ...] = (
    *TWO_MATCHES,
    *GLITTER,
    *FOLIAGE,
    *WHITES,
    *NEAR_MISSES,
    *ACCENTS,
    *STRONG_AND_STRAY,
    *SURFACES,
)
