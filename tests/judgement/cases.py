"""Planted cases: two samples for a picture, which of them should win, and by which principle.

The principles are common practice of the trade, numbered:

1. Colour first, pattern second.
2. A border that matches may still be brighter or stronger than the place where the eye should rest:
   of two matches, pull decides.
3. A clash is never wanted: a near miss, a stray strong hue, the wrong white.
4. Repeating what matters (an accent, a border inside the picture, the focus) is worth more than
   repeating area.
5. Palettes are compared with palettes, surfaces with surfaces.
6. Soft subjects want soft surfaces.
"""

from dataclasses import dataclass

from framing_palette.catalogue import Finish, Kind, Sample, Surface
from tests.judgement.pictures import shown
from tests.ranking.by_hand import Lab, lch, sample

Colours = tuple[tuple[Lab, float], ...]


@dataclass(frozen=True)
class Case:
    picture: str
    winner: Sample
    rival: Sample
    principle: int
    because: str

    def __str__(self) -> str:
        return f"{self.picture}: {self.winner.code} over {self.rival.code}"


def _plain(name: str, lab: Lab, **facts) -> Sample:
    return sample(name, shown(lab), kind=Kind.WRAPPED_FILLET, **facts)


def _mixed(name: str, *colours: tuple[Lab, float], **facts) -> Sample:
    made = [(shown(lab), share) for lab, share in colours]
    return sample(name, *made, kind=Kind.WRAPPED_FILLET, **facts)


CREAM = lch(92, 12, 88)
BUTTER = lch(90, 19, 90)
WARM_WHITE = lch(95, 5, 85)
COLD_WHITE = lch(96, 4, 262)
BLUE_WHITE = lch(94, 6, 250)
PURE_WHITE = lch(96, 0.6, 120)
CHARCOAL = lch(24, 1.5, 260)
BLACK = lch(9, 0.3, 60)


def _two(picture, better, better_lab, worse, worse_lab, principle, because) -> Case:
    return Case(picture, _plain(better, better_lab), _plain(worse, worse_lab), principle, because)


MATCHES = [
    _two(
        "astronaut",
        "deep rust",
        (35, 22, 20),
        "suit orange",
        (60, 43, 41),
        2,
        "both match the suit; the loud one outshines the face",
    ),
    _two(
        "astronaut",
        "flag navy",
        (20, 14, -22),
        "suit orange",
        (62, 46, 44),
        2,
        "both match; the dark one leaves the face alone",
    ),
    _two(
        "coffee",
        "dark cocoa",
        (25, 20, 17),
        "table orange",
        (56, 48, 52),
        2,
        "the table's family, quiet against loud",
    ),
    _two(
        "flower",
        "deep leaf green",
        (20, -17, -1),
        "petal orange",
        (62, 42, 58),
        2,
        "leaf and petal both match; the petal is the focus's own fire",
    ),
    _two(
        "flower",
        "burnt umber",
        (30, 22, 25),
        "vivid petal",
        (56, 54, 58),
        2,
        "same family, half as strong",
    ),
    _two(
        "motorcycle",
        "oxblood",
        (30, 28, 20),
        "tank red",
        (51, 63, 45),
        2,
        "the tank's red, darker and half as strong",
    ),
    _two(
        "retina",
        "dark mahogany",
        (30, 26, 19),
        "bright coral",
        (66, 58, 46),
        2,
        "the ground's family against a stronger one",
    ),
    _two(
        "temple",
        "dark timber",
        (28, 17, 16),
        "sky white",
        (97, -1, -5),
        2,
        "both are in the picture; the white outshines the roofs",
    ),
    _two(
        "rocket",
        "night blue",
        (20, 1, -21),
        "flame",
        (80, 8, 45),
        2,
        "the flame is where the eye should rest",
    ),
    _two(
        "sunlit field",
        "leaf shade",
        (29, -11, 10),
        "wheat yellow",
        (66, 3, 44),
        2,
        "both match; the yellow is brighter than the tree",
    ),
    _two(
        "night ferry",
        "midnight",
        (19, 1, -15),
        "lamp light",
        (77, 9, 41),
        2,
        "brighter than the lamp-lit ferry",
    ),
    _two(
        "painted fish",
        "deep sea",
        (31, 2, -21),
        "fish orange",
        (65, 30, 56),
        2,
        "the fish should win, not the border",
    ),
    _two("autumn", "bark", (28, 14, 16), "golden leaf", (62, 12, 54), 2, "both are in the leaves"),
    _two(
        "red boat",
        "wine",
        (28, 24, 15),
        "boat red",
        (47, 52, 34),
        2,
        "the boat's red, darker and quieter",
    ),
    _two(
        "mosaic of slate and rust",
        "deep rust",
        (27, 13, 16),
        "hot rust",
        (52, 36, 44),
        2,
        "the rust's family, dark against bright",
    ),
    _two(
        "clay pots",
        "umber",
        (28, 13, 14),
        "bright terracotta",
        (60, 40, 44),
        2,
        "the pots' family, dark against bright",
    ),
    _two(
        "cat",
        "dark walnut",
        (28, 11, 17),
        "marigold",
        (70, 24, 64),
        2,
        "warm both; marigold outshines the fur",
    ),
]
STRONG_AND_STRAY = [
    _two(
        "astronaut",
        "deep rust",
        (36, 24, 22),
        "turquoise",
        lch(60, 42, 195),
        3,
        "no turquoise anywhere in it",
    ),
    _two(
        "coffee",
        "dark cocoa",
        (25, 20, 17),
        "cobalt",
        lch(45, 60, 280),
        3,
        "the opposite hue, vivid",
    ),
    _two(
        "rocket",
        "slate blue",
        (33, 1, -20),
        "grass green",
        lch(58, 60, 135),
        3,
        "a strong hue that the picture lacks",
    ),
    _two(
        "cat",
        "walnut",
        (33, 14, 22),
        "violet",
        lch(50, 55, 310),
        3,
        "a strong hue that the picture lacks",
    ),
    _two(
        "temple",
        "moss",
        (30, -3, 10),
        "magenta",
        lch(52, 65, 350),
        3,
        "a strong hue that the picture lacks",
    ),
    _two(
        "tissue",
        "sepia brown",
        (38, 9, 20),
        "emerald",
        lch(55, 50, 160),
        3,
        "a strong hue that the picture lacks",
    ),
    _two(
        "buoy",
        "slate",
        (38, -3, -7),
        "lime",
        lch(75, 65, 115),
        3,
        "a strong hue that the picture lacks",
    ),
    _two(
        "grey print",
        "charcoal",
        CHARCOAL,
        "scarlet",
        lch(48, 65, 38),
        3,
        "colour stronger than a print without any",
    ),
    _two(
        "cameraman",
        "black",
        BLACK,
        "royal blue",
        lch(38, 60, 285),
        3,
        "colour stronger than a print without any",
    ),
    _two(
        "moon",
        "dark grey",
        (30, 0, 0),
        "orange",
        lch(65, 65, 60),
        3,
        "colour stronger than a print without any",
    ),
    _two(
        "motorcycle",
        "black",
        BLACK,
        "vivid green",
        lch(60, 65, 140),
        3,
        "the opposite of the tank's red",
    ),
    _two(
        "snow",
        "blue slate",
        (36, -4, -17),
        "hot pink",
        lch(60, 62, 355),
        3,
        "a strong hue that the picture lacks",
    ),
]
NEAR_MISSES = [
    _two(
        "red boat",
        "boat red, dark",
        lch(30, 27, 34),
        "crimson",
        lch(44, 52, 8),
        3,
        "a near miss at the boat's own strength",
    ),
    _two(
        "red boat",
        "charcoal",
        CHARCOAL,
        "crimson",
        lch(43, 50, 10),
        3,
        "plain charcoal beats a failed match",
    ),
    _two(
        "red boat",
        "boat red",
        lch(44, 53, 34),
        "orange red",
        lch(47, 53, 56),
        3,
        "the same red beats a near miss",
    ),
    _two(
        "red boat",
        "sea grey",
        (57, -5, -7),
        "orange red",
        lch(46, 50, 55),
        3,
        "the ground beats a failed match",
    ),
    _two(
        "motorcycle",
        "oxblood",
        (30, 28, 20),
        "raspberry",
        lch(50, 70, 10),
        3,
        "a near miss of the tank's red",
    ),
    _two(
        "motorcycle",
        "graphite",
        (25, 1, 0),
        "raspberry",
        lch(50, 68, 8),
        3,
        "plain graphite beats a failed match",
    ),
    _two(
        "retina",
        "dark mahogany",
        (30, 26, 19),
        "rose pink",
        lch(52, 60, 8),
        3,
        "a near miss of the ground's red",
    ),
    _two(
        "coffee",
        "dark cocoa",
        (25, 20, 17),
        "pinkish red",
        lch(42, 56, 16),
        3,
        "a near miss of the table's red",
    ),
    _two(
        "painted fish",
        "deep sea",
        (31, 2, -21),
        "violet blue",
        lch(50, 42, 298),
        3,
        "a near miss of the sea's blue",
    ),
    _two(
        "pale rose",
        "rose, dark",
        lch(30, 26, 20),
        "brick",
        lch(40, 44, 48),
        3,
        "a near miss of the inner border's red",
    ),
    _two(
        "astronaut",
        "deep rust",
        (36, 24, 22),
        "coral pink",
        lch(60, 58, 16),
        3,
        "a near miss of the suit's orange",
    ),
]
WHITES = [
    _two(
        "cameraman",
        "cold white",
        COLD_WHITE,
        "cream",
        CREAM,
        3,
        "a yellow cream beside a black-and-white photograph",
    ),
    _two(
        "coins",
        "pure white",
        PURE_WHITE,
        "butter",
        BUTTER,
        3,
        "a yellow cream beside a black-and-white photograph",
    ),
    _two(
        "moon",
        "pure white",
        PURE_WHITE,
        "cream",
        CREAM,
        3,
        "a yellow cream beside a black-and-white photograph",
    ),
    _two(
        "brick",
        "cold white",
        COLD_WHITE,
        "butter",
        BUTTER,
        3,
        "a yellow cream beside a black-and-white photograph",
    ),
    _two(
        "grey print",
        "pure white",
        PURE_WHITE,
        "cream",
        CREAM,
        3,
        "a yellow cream beside a black-and-white photograph",
    ),
    _two("selenium", "cold white", COLD_WHITE, "cream", CREAM, 3, "a cool-toned print"),
    _two(
        "old print", "cream", CREAM, "cold white", COLD_WHITE, 3, "a cold white beside aged paper"
    ),
    _two(
        "old print",
        "butter",
        BUTTER,
        "pure white",
        PURE_WHITE,
        3,
        "a clean white makes aged paper look dirty",
    ),
    _two(
        "old print", "cream", CREAM, "blue white", BLUE_WHITE, 3, "a cold white beside aged paper"
    ),
    _two("sepia", "cream", CREAM, "cold white", COLD_WHITE, 3, "a brown-toned print"),
    _two("sepia", "butter", BUTTER, "blue white", BLUE_WHITE, 3, "a brown-toned print"),
    _two("clay pots", "cream", CREAM, "cold white", COLD_WHITE, 3, "warm scene, cold white"),
    _two("coffee", "warm white", WARM_WHITE, "cold white", COLD_WHITE, 3, "warm scene, cold white"),
    _two("snow", "cold white", COLD_WHITE, "cream", CREAM, 3, "a yellow cream beside snow"),
    _two("cat", "warm white", WARM_WHITE, "blue white", BLUE_WHITE, 3, "warm scene, cold white"),
    _two(
        "astronaut",
        "warm white",
        WARM_WHITE,
        "blue white",
        BLUE_WHITE,
        3,
        "skin and a rosy ground, cold white",
    ),
]
WHAT_MATTERS = [
    _two(
        "buoy",
        "buoy red",
        lch(41, 36, 38),
        "sea grey",
        (61, -4, -5),
        4,
        "the accent is worth more than the area",
    ),
    _two(
        "buoy",
        "buoy red, dark",
        lch(27, 20, 38),
        "sea grey",
        (60, -4, -5),
        4,
        "the accent is worth more than the area",
    ),
    _two(
        "red boat",
        "wine",
        (28, 24, 15),
        "sea grey",
        (57, -5, -7),
        4,
        "the focus is worth more than the area",
    ),
    _two(
        "sleeping dog",
        "frame blue",
        lch(33, 30, 262),
        "fawn",
        (77, 3, 8),
        4,
        "the inner border is worth more than the area",
    ),
    _two(
        "pale rose",
        "rose, dark",
        lch(30, 26, 20),
        "blush",
        (83, 3, 6),
        4,
        "the inner border is worth more than the area",
    ),
    _two(
        "motorcycle",
        "oxblood",
        (30, 28, 20),
        "wall grey",
        (76, 3, 3),
        4,
        "the tank is worth more than the wall",
    ),
    _two(
        "snow",
        "blue slate",
        (34, -4, -17),
        "pale grey blue",
        (84, -3, -6),
        4,
        "the figure is worth more than the snow",
    ),
    _two(
        "mosaic of slate and rust",
        "deep rust",
        (27, 13, 16),
        "mid slate",
        (54, -3, -9),
        4,
        "the telling colour beats a grey that is nowhere",
    ),
    _two(
        "temple",
        "timber",
        (28, 17, 16),
        "warm grey",
        (62, 1, 5),
        4,
        "a colour of the picture beats a grey that is nowhere",
    ),
    _two(
        "flower",
        "deep leaf green",
        (20, -17, -1),
        "warm grey",
        (62, 1, 5),
        4,
        "a colour of the picture beats a grey that is nowhere",
    ),
    _two(
        "coffee",
        "dark cocoa",
        (25, 20, 17),
        "warm grey",
        (62, 1, 5),
        4,
        "a colour of the picture beats a grey that is nowhere",
    ),
    _two(
        "painted fish",
        "deep sea",
        (31, 2, -21),
        "warm grey",
        (62, 1, 5),
        4,
        "a colour of the picture beats a grey that is nowhere",
    ),
]
GLITTER = [
    Case(
        "sleeping dog",
        _plain("frame blue", lch(32, 30, 262)),
        _mixed("ice glitter", (lch(91, 3, 90), 0.7), (lch(98, 1, 90), 0.2), (lch(76, 3, 80), 0.1), finish=Finish.METALLIC),
        2,
        "it echoes the soft coat and yet outshines it",
    ),
    Case(
        "sleeping dog",
        _plain("frame blue, dark", lch(27, 22, 262)),
        _mixed("pale silver", (lch(86, 2, 80), 0.6), (lch(97, 1, 80), 0.4)),
        2,
        "bright flecks round a soft subject",
    ),
    Case(
        "pale rose",
        _plain("rose, dark", lch(33, 34, 20)),
        _mixed("pearl glitter", (lch(92, 4, 60), 0.75), (lch(98, 1, 90), 0.25), finish=Finish.METALLIC),
        2,
        "it echoes the soft petals and yet outshines them",
    ),
    Case(
        "pastel portrait",
        _plain("fawn shade", lch(58, 11, 58), surface=Surface.SUEDE, finish=Finish.MATT),
        _mixed("champagne glitter", (lch(90, 9, 85), 0.8), (lch(98, 2, 90), 0.2), finish=Finish.METALLIC),
        2,
        "a quiet fawn leaves the face alone",
    ),
]  # fmt: skip
PALETTES = [
    Case(
        "foliage",
        _mixed("moss, fern and bark", (lch(35, 22, 130), 0.4), (lch(52, 30, 116), 0.35), (lch(30, 13, 70), 0.25)),
        _mixed("fern with blue and pink", (lch(34, 24, 132), 0.4), (lch(55, 32, 265), 0.3), (lch(65, 30, 350), 0.3)),
        5,
        "all three are leaves, against one leaf and two strangers",
    ),
    Case(
        "foliage",
        _mixed("moss, fern and straw", (lch(36, 20, 128), 0.4), (lch(56, 29, 112), 0.35), (lch(68, 28, 96), 0.25)),
        _mixed("red, green and grey", ((45, 30, 25), 0.34), ((45, -45, 22), 0.33), ((45, -1, 2), 0.33)),
        5,
        "the rival's mean is a leaf, its parts are not",
    ),
    Case(
        "autumn",
        _mixed("rust, gold and bark", (lch(42, 36, 55), 0.4), (lch(57, 42, 78), 0.3), (lch(28, 19, 46), 0.3)),
        _mixed("rust, teal and lilac", (lch(42, 40, 55), 0.4), (lch(50, 25, 200), 0.3), (lch(65, 25, 310), 0.3)),
        5,
        "all three are leaves, against one leaf and two strangers",
    ),
    Case(
        "autumn",
        _mixed("bark and rust", (lch(29, 20, 46), 0.6), (lch(40, 34, 54), 0.4)),
        _mixed("gold with white and blue", (lch(60, 48, 78), 0.34), (lch(90, 4, 250), 0.33), (lch(40, 35, 275), 0.33)),
        5,
        "dark leaves against one leaf and two strangers",
    ),
    Case(
        "mosaic of slate and rust",
        _mixed("slate flecked with rust", (lch(41, 11, 255), 0.7), (lch(38, 30, 50), 0.3)),
        _mixed("slate flecked with green", (lch(42, 12, 255), 0.7), (lch(55, 45, 140), 0.3)),
        5,
        "the fleck is the picture's own, or it is not",
    ),
    Case(
        "clay pots",
        _mixed("umber rubbed with sand", (lch(40, 30, 48), 0.6), (lch(66, 19, 72), 0.4)),
        _mixed("umber rubbed with mint", (lch(42, 36, 46), 0.6), (lch(80, 22, 165), 0.4)),
        5,
        "the rub is the picture's own, or it is not",
    ),
    Case(
        "cat",
        _mixed("three browns", (lch(46, 28, 60), 0.4), (lch(33, 30, 57), 0.35), (lch(60, 22, 58), 0.25)),
        _mixed("brown, purple and aqua", (lch(50, 29, 60), 0.4), (lch(40, 35, 320), 0.3), (lch(70, 25, 200), 0.3)),
        5,
        "all three are fur, against one fur and two strangers",
    ),
]  # fmt: skip


def _surface(name: str, lab: Lab, surface: Surface, finish: Finish) -> Sample:
    return _plain(name, lab, surface=surface, finish=finish)


SURFACES = [
    Case("pastel portrait", _surface("suede", lch(60, 10, 60), Surface.SUEDE, Finish.MATT), _surface("metal", lch(60, 10, 60), Surface.BRUSHED_METAL, Finish.METALLIC), 6, "soft subject, soft surface"),
    Case("sleeping dog", _surface("suede", lch(33, 28, 262), Surface.SUEDE, Finish.MATT), _surface("foil", lch(33, 28, 262), Surface.LEAF, Finish.METALLIC), 6, "soft subject, soft surface"),
    Case("pale rose", _surface("linen", lch(36, 36, 20), Surface.LINEN, Finish.MATT), _surface("lacquer", lch(36, 36, 20), Surface.SMOOTH, Finish.GLOSS), 6, "soft subject, soft surface"),
    Case("pastel portrait", _surface("fawn foil", lch(60, 11, 58), Surface.LEAF, Finish.SATIN), _surface("teal suede", lch(55, 30, 200), Surface.SUEDE, Finish.MATT), 1, "colour first: a right colour in a so-so surface"),
    Case("red boat", _surface("wine, gloss", (28, 24, 15), Surface.SMOOTH, Finish.GLOSS), _surface("crimson suede", lch(44, 52, 8), Surface.SUEDE, Finish.MATT), 1, "colour first: a right colour in a so-so surface"),
    Case("sleeping dog", _surface("frame blue, satin", lch(32, 30, 262), Surface.SMOOTH, Finish.SATIN), _surface("orange suede", lch(60, 50, 60), Surface.SUEDE, Finish.MATT), 1, "colour first: a right colour in a so-so surface"),
    Case("old print", _surface("cream, satin", CREAM, Surface.SMOOTH, Finish.SATIN), _surface("cold white linen", COLD_WHITE, Surface.LINEN, Finish.MATT), 1, "colour first: a right colour in a so-so surface"),
]  # fmt: skip

SHIPPED = [
    _two(
        "ferry_at_dusk",
        "night blue",
        (22, 2, -20),
        "lamp yellow",
        (86, 4, 42),
        2,
        "brighter than the lamp-lit ferry",
    ),
    _two(
        "ferry_at_dusk",
        "dusk violet, dark",
        (27, 7, -12),
        "afterglow",
        (82, 13, 30),
        2,
        "both match; the glow is where the eye should rest",
    ),
    _two(
        "ferry_at_dusk",
        "ink blue",
        (17, 3, -15),
        "lime",
        lch(75, 65, 115),
        3,
        "a strong hue that the picture lacks",
    ),
    _two(
        "ferry_at_dusk",
        "buoy red, dark",
        lch(27, 26, 36),
        "warm grey",
        (62, 1, 5),
        4,
        "the buoy beats a grey that is nowhere",
    ),
    Case(
        "sleeping_greyhound",
        _plain("rug terracotta, dark", lch(33, 24, 44)),
        _mixed(
            "ice glitter", (lch(91, 3, 90), 0.75), (lch(98, 1, 90), 0.25), finish=Finish.METALLIC
        ),
        2,
        "a soft subject, and the rug's own colour",
    ),
    Case(
        "sleeping_greyhound",
        _plain("fawn suede", (56, 8, 14), surface=Surface.SUEDE, finish=Finish.MATT),
        _plain("fawn metal", (56, 8, 14), surface=Surface.BRUSHED_METAL, finish=Finish.METALLIC),
        6,
        "soft subject, soft surface",
    ),
    _two(
        "sleeping_greyhound",
        "wall grey green",
        (36, -3, -1),
        "turquoise",
        lch(60, 42, 195),
        3,
        "no turquoise anywhere in it",
    ),
    _two(
        "sleeping_greyhound",
        "warm white",
        WARM_WHITE,
        "blue white",
        BLUE_WHITE,
        3,
        "warm scene, cold white",
    ),
    _two(
        "slate_and_rust",
        "deep rust",
        (27, 14, 16),
        "hot orange",
        lch(62, 68, 58),
        2,
        "the rust's family, dark against loud",
    ),
    _two(
        "slate_and_rust",
        "dark slate",
        (26, -3, -12),
        "magenta",
        lch(50, 62, 350),
        3,
        "a strong hue that the picture lacks",
    ),
    _two(
        "slate_and_rust",
        "rust, dark",
        lch(26, 24, 46),
        "raspberry",
        lch(40, 40, 8),
        3,
        "a near miss of the rust",
    ),
    _two(
        "briar_rose", "cream", CREAM, "cold white", COLD_WHITE, 3, "a cold white beside cream paper"
    ),
    _two(
        "briar_rose",
        "old rose, dark",
        lch(42, 22, 33),
        "hot pink",
        lch(60, 62, 355),
        2,
        "the petals' family against a louder pink",
    ),
    _two(
        "briar_rose",
        "leaf, muted",
        lch(44, 18, 112),
        "emerald",
        lch(55, 50, 160),
        3,
        "a strong hue that the picture lacks",
    ),
    _two(
        "rainy_street",
        "pure white",
        PURE_WHITE,
        "butter",
        BUTTER,
        3,
        "a yellow cream beside a black-and-white picture",
    ),
    _two(
        "rainy_street",
        "charcoal",
        CHARCOAL,
        "royal blue",
        lch(38, 60, 285),
        3,
        "colour stronger than a picture without any",
    ),
    _two(
        "poster_fish",
        "deep navy",
        (22, 17, -26),
        "fish orange",
        (70, 30, 68),
        2,
        "the fish should win, not the border",
    ),
    _two(
        "poster_fish",
        "sea blue, dark",
        (30, -1, -28),
        "lime",
        lch(78, 75, 118),
        2,
        "quiet against loud beside a loud picture",
    ),
]

CASES: tuple[Case, ...] = (
    *SHIPPED,
    *MATCHES,
    *STRONG_AND_STRAY,
    *NEAR_MISSES,
    *WHITES,
    *WHAT_MATTERS,
    *GLITTER,
    *PALETTES,
    *SURFACES,
)
