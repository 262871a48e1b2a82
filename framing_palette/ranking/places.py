"""Places: how the regions and colours of a picture are spoken of."""

from framing_palette.picture import Accent, Findings, Role
from framing_palette.ranking.subjects import Target

EDGE, WHOLE = "the picture's edge", "the picture"
LIKELY_FOCUS = "the place where the eye seems to rest"
BESIDE = "the layer beside it"


def region_words(findings: Findings, name: str) -> str:
    """Return how a region is spoken of: "the boat", "the picture's edge", "the picture"."""
    role = next((region.role for region in findings.regions if region.name == name), None)
    if role is Role.RIM:
        return EDGE
    if role is Role.WHOLE or role is None:
        return WHOLE
    if role is Role.FOCUS and findings.focus_guessed:
        return LIKELY_FOCUS
    return name if name.lower().startswith(("the ", "a ", "an ")) else f"the {name}"


def focus_words(findings: Findings) -> str:
    """Return how the place where the eye should rest is spoken of."""
    focus = findings.by_role(Role.FOCUS)
    return region_words(findings, focus[0].name) if focus else WHOLE


def target_words(findings: Findings, target: Target, name: str) -> str:
    """Return how a colour of the picture is spoken of: "the brick red accent in the boat"."""
    if target.role is not None:
        return f"the {name} of {region_words(findings, target.region)}"
    around = _around(findings, target)
    return f"the {name} accent in {around}" if around else f"the {name} accent"


def _around(findings: Findings, target: Target) -> str:
    """Return the drawn region that an accent lies in, empty when it lies in none."""
    for region in findings.regions:
        drawn = region.role not in {Role.RIM, Role.WHOLE}
        if drawn and any(_is(accent, target) for accent in region.accents):
            return region_words(findings, region.name)
    return ""


def _is(accent: Accent, target: Target) -> bool:
    return accent.lab == target.lab and accent.share == target.share
