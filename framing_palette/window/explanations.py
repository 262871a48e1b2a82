"""What is this? Two sentences for every measure that the shelf can show."""

from dataclasses import dataclass
from math import isnan

from PySide6.QtCore import QCoreApplication

from framing_palette.ranking import Measures
from framing_palette.window.languages import told as in_language


@dataclass(frozen=True, slots=True)
class Told:
    """One measure as it is shown: its name, its value in words, and what it is."""

    name: str
    value: str
    explanation: str


def told_measures(measures: Measures) -> tuple[Told, ...]:
    """Return the measures of a sample in the order in which a framer would ask for them."""
    return (*_of_the_border(measures), *_of_company(measures))


def _of_the_border(measures: Measures) -> tuple[Told, ...]:
    """Return what the sample repeats, how it meets the edge, and how strong it is."""
    tell = QCoreApplication.translate
    echoed = in_language(measures.echo_name) or tell("Measures", "none")
    return (
        Told(
            tell("Measures", "Repeats"),
            f"{echoed}, ΔE₀₀ {measures.echo_delta_e:.1f}",
            tell(
                "Measures",
                "How close the sample comes to the colour of the picture that it repeats best. "
                "Under 3 most eyes call it the same colour; over 12 hardly anybody does.",
            ),
        ),
        Told(
            tell("Measures", "Apart from the edge"),
            f"ΔE₀₀ {measures.separation_delta_e:.1f}, L* {measures.separation_lightness:+.0f}",
            tell(
                "Measures",
                "How different the sample is from the band of the picture along its edge. Little "
                "difference lets it settle, much makes it a border that is seen as itself.",
            ),
        ),
        Told(
            tell("Measures", "Pull"),
            f"{measures.pull:.2f}",
            tell(
                "Measures",
                "How strongly the border would draw the eye, compared with the place where the "
                "eye should rest. Above 1 the eye goes to the border first.",
            ),
        ),
        Told(
            tell("Measures", "Stronger than the art"),
            f"C* {measures.chroma_excess:.0f}",
            tell(
                "Measures",
                "How much more colourful the sample is than the most colourful twentieth of the "
                "art. Nought means that the art is at least as strong.",
            ),
        ),
    )


def _of_company(measures: Measures) -> tuple[Told, ...]:
    """Return how the sample agrees with the picture in warmth, harmony and surface."""
    tell = QCoreApplication.translate
    texture = (
        tell("Measures", "not known") if isnan(measures.texture) else f"{measures.texture:.2f}"
    )
    return (
        Told(
            tell("Measures", "Warmth"),
            f"{measures.warmth:.1f}",
            tell(
                "Measures",
                "How far a white or neutral is warmer or colder than the whites of the picture. "
                "It is the commonest mistake with off-whites; nought means that they agree.",
            ),
        ),
        Told(
            tell("Measures", "Harmony"),
            f"{measures.harmony:+.2f}",
            tell(
                "Measures",
                "How pleasant observers found such pairs of colours in a published study (Ou and "
                "Luo, 2006), from about -1.2 to 1.7. It likes sameness, so it never decides "
                "alone.",
            ),
        ),
        Told(
            tell("Measures", "Texture"),
            texture,
            tell(
                "Measures",
                "How well the sample's surface goes with the picture's, both at true scale, from "
                "0 to 1. It is not known while the art's size or the sample's photograph is "
                "missing.",
            ),
        ),
    )
