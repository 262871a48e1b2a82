"""What is done with regions, whichever tool, key or card asks for it."""

from dataclasses import dataclass, replace
from enum import StrEnum

from PySide6.QtCore import QCoreApplication

from framing_palette.picture import Part, Region, Role, outline_fault
from framing_palette.picture.regions import Point
from framing_palette.picture.reshaping import moved_region
from framing_palette.window.session import Session


class How(StrEnum):
    """What a new outline is for."""

    NEW = "new"
    ADD = "add"
    SUBTRACT = "subtract"


def chosen_region(session: Session) -> Region | None:
    """Return the region that keys and cards act on."""
    number = session.chosen_region
    regions = session.desk.regions
    return regions[number] if 0 <= number < len(regions) else None


@dataclass(frozen=True, slots=True)
class Before:
    """What an outline is added to: the regions, the chosen one, and what it is for.

    Outlines taken one after another with one ``merge`` word replace each other, so that growing
    farther or less far is one step to undo.
    """

    regions: tuple[Region, ...]
    chosen: int
    how: How = How.NEW
    merge: str = ""


def now(session: Session, how: How = How.NEW, *, merge: str = "") -> Before:
    """Return what an outline would be added to now."""
    return Before(session.desk.regions, session.chosen_region, how, merge)


def take_outline(session: Session, outline: tuple[Point, ...], before: Before) -> None:
    """Make a region of an outline, or add it to or take it from the chosen one.

    An outline that encloses nothing is told as a notice.
    """
    fault = outline_fault(outline)
    if fault is not None:
        session.assign("notice", f"The outline {fault.problem}: {fault.todo}.")
        return
    session.assign("notice", "")
    is_new = before.how is How.NEW or not 0 <= before.chosen < len(before.regions)
    if is_new:
        region = _new_region(before.regions, outline)
        words, number = f"Draw {region.name}", len(before.regions)
        regions = (*before.regions, region)
    else:
        number = before.chosen
        region = before.regions[number]
        subtract = before.how is How.SUBTRACT
        words = f"{'Cut from' if subtract else 'Add to'} {region.name}"
        region = replace(region, parts=(*region.parts, Part(outline, subtract=subtract)))
        regions = (*before.regions[:number], region, *before.regions[number + 1 :])
    session.edit(words, merge=before.merge, regions=regions)
    session.assign("chosen_region", number)


def put_region(session: Session, region: Region, *, verb: str, merge: str = "") -> None:
    """Put the chosen region as it is now in the place of what it was."""
    number, regions = session.chosen_region, session.desk.regions
    changed = (*regions[:number], region, *regions[number + 1 :])
    merge = f"{merge} region {number}" if merge else ""
    session.edit(f"{verb} {region.name}", merge=merge, regions=changed)


def delete_region(session: Session, number: int) -> None:
    """Take a region away."""
    regions = session.desk.regions
    if 0 <= number < len(regions):
        name = regions[number].name
        session.assign("chosen_region", -1)
        session.edit(f"Delete {name}", regions=regions[:number] + regions[number + 1 :])


def rename_region(session: Session, number: int, name: str) -> bool:
    """Give a region another name; False when the name is empty or taken, which is told."""
    regions, name = session.desk.regions, name.strip()
    if name == regions[number].name:
        return True
    if not name or any(region.name == name for region in regions):
        problem = f'"{name}" is taken by another region' if name else "A region needs a name"
        session.assign("notice", f"{problem}: write another one.")
        return False
    renamed = replace(regions[number], name=name)
    changed = (*regions[:number], renamed, *regions[number + 1 :])
    session.edit(f"Rename {regions[number].name} to {name}", regions=changed)
    return True


def set_role(session: Session, number: int, role: Role) -> None:
    """Say what a region is for."""
    regions = session.desk.regions
    changed = (*regions[:number], replace(regions[number], role=role), *regions[number + 1 :])
    session.edit(f"{regions[number].name}: {ROLE_WORDS[role]}", regions=changed)


def nudge(session: Session, *, right: float, down: float) -> None:
    """Push the chosen region a little, in shares of the picture."""
    region = chosen_region(session)
    if region is not None:
        moved = moved_region(region, right=right, down=down)
        put_region(session, moved, verb="Push", merge="nudge")


ROLE_WORDS = {
    Role.FOCUS: "the eye should rest here",
    Role.SUPPORT: "supports",
    Role.GROUND: "background",
}


def _new_region(regions: tuple[Region, ...], outline: tuple[Point, ...]) -> Region:
    has_focus = any(region.role is Role.FOCUS for region in regions)
    role = Role.SUPPORT if has_focus else Role.FOCUS
    taken = {region.name for region in regions}
    said = QCoreApplication.translate("Regions", "region {number}")
    number = 1
    while said.format(number=number) in taken:
        number += 1
    return Region(said.format(number=number), role, (Part(outline),))
