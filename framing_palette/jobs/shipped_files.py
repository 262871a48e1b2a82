"""Where the demo's pictures and catalogue lie, in a checkout and in an installed program."""

import tomllib
from dataclasses import dataclass
from pathlib import Path

from framing_palette.errors import FileProblemError
from framing_palette.units import Length

_PACKAGE = Path(__file__).resolve().parent.parent


@dataclass(frozen=True, slots=True)
class ShippedPicture:
    """One invented picture with its regions file and the true size of its art."""

    title: str
    picture_path: Path
    regions_path: Path
    width: Length
    height: Length


def shipped_folder(name: str) -> Path:
    """Return the folder ``catalog`` or ``sample_images`` that came with the program.

    Raises
    ------
    FileProblemError
        When the installation has lost it.
    """
    places = (_PACKAGE / "shipped" / name, _PACKAGE.parent / name)
    for place in places:
        if place.is_dir():
            return place
    raise FileProblemError(
        places[0],
        problem="is missing from this installation",
        todo="install the program again",
    )


def shipped_picture(name: str = "ferry_at_dusk") -> ShippedPicture:
    """Return one of the invented pictures by the stem of its file name.

    Raises
    ------
    FileProblemError
        When there is no such picture.
    """
    folder = shipped_folder("sample_images")
    facts_path = folder / f"{name}.toml"
    try:
        facts = tomllib.loads(facts_path.read_text(encoding="utf-8"))
    except OSError as error:
        raise FileProblemError(
            facts_path,
            problem="cannot be read",
            todo="install the program again",
        ) from error
    return ShippedPicture(
        title=str(facts["title"]),
        picture_path=folder / f"{name}.jpg",
        regions_path=folder / f"{name}.regions.json",
        width=Length.parse(str(facts["width"])),
        height=Length.parse(str(facts["height"])),
    )
