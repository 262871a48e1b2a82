"""Skins: what the renderer keeps of a sample, its colours, surface and finish."""

from dataclasses import dataclass
from pathlib import PurePath

from framing_palette.catalogue import Catalogue, Finish, Sample
from framing_palette.catalogue.samples import Lab

WHITE_CORE_LAB: Lab = (96.0, -0.3, 2.2)  # common practice: boards have a white core
REFERENCE_LIGHT = "D50"
UNKNOWN_LAB: Lab = (55.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Skin:
    """How a surface looks.

    Parameters
    ----------
    code
        The sample's code; also the seed of every random step on this surface.
    lab
        Mean colour, Lab D50.
    finish
        How it returns light.
    texture_file
        Full path of the photographed surface, empty for none.
    texture_mm_per_px
        Scale of that file; 0 without one.
    core_lab
        Colour of the board's core, seen on a bevel.
    """

    code: str
    lab: Lab
    finish: Finish = Finish.MATT
    texture_file: str = ""
    texture_mm_per_px: float = 0.0
    core_lab: Lab = WHITE_CORE_LAB


def skin_of(
    sample: Sample, catalogue: Catalogue, *, under: str = REFERENCE_LIGHT
) -> tuple[Skin, tuple[str, ...]]:
    """Return a sample's skin, and a sentence for each fact that had to be replaced.

    Parameters
    ----------
    under
        The client's light, a name of ``catalogue.light``.

    Raises
    ------
    FieldError
        When the light is not known.
    """
    notices: list[str] = []
    if under != REFERENCE_LIGHT:
        sample, notices = _under(sample, under)
    if not sample.colours:
        notices.append(f"{sample.code} has no colour in the catalogue and is drawn mid-grey.")
    texture, scale = sample.texture_file, sample.texture_mm_per_px or 0.0
    if texture and not scale:
        notices.append(f"The scale of {sample.code}'s texture is unknown, so it is drawn plain.")
    drawn = bool(texture and scale and catalogue.textures_dir)
    if len(sample.colours) > 1 and not drawn:
        notices.append(f"{sample.code} has no surface to be drawn, so its colours are shown mixed.")
    skin = Skin(
        code=sample.code,
        lab=sample.mean_lab if sample.colours else UNKNOWN_LAB,
        finish=sample.finish or Finish.MATT,
        texture_file=str(PurePath(catalogue.textures_dir) / texture) if drawn else "",
        texture_mm_per_px=scale if drawn else 0.0,
        core_lab=lab_in_light(WHITE_CORE_LAB, under),
    )
    return skin, tuple(notices)


def lab_in_light(lab: Lab, under: str) -> Lab:
    """Return a colour without a known reflectance as it looks in the client's light.

    Raises
    ------
    FieldError
        When the light is not known.
    """
    if under == REFERENCE_LIGHT:
        return lab
    from framing_palette.catalogue.light import lab_under

    lightness, a, b = (float(value) for value in lab_under(lab, under))
    return (lightness, a, b)


def _under(sample: Sample, light: str) -> tuple[Sample, list[str]]:
    from framing_palette.catalogue.light import LIGHT_WORDS, is_estimated, sample_under

    seen = sample_under(sample, light)
    if not is_estimated(sample):
        return seen, []
    told = f"{sample.code} has no measured reflectance, so its colour under "
    return seen, [f"{told}{LIGHT_WORDS[light]} is an estimate."]
