"""What is done with a sample, whichever control asks for it: lay, keep, send away."""

from framing_palette.errors import FramingPaletteError
from framing_palette.jobs import OnRail, SentAway
from framing_palette.window.session import Session


def lay_round(session: Session, codes: tuple[str, ...]) -> None:
    """Lay samples round the picture, or take them away when they are there already."""
    if session.desk.laid == codes:
        session.edit("Take the border away", laid=())
    else:
        session.edit(f"Lay {_names(session, codes)} round the picture", laid=codes)


def keep_sample(session: Session, code: str) -> None:
    """Put a sample on the rail; a full rail says so and stays as it is."""
    if any(kept.codes == (code,) for kept in session.desk.kept):
        return
    kept = OnRail((code,), session.sample_of(code).name)
    try:
        session.edit(f"Keep {kept.title}", kept=(*session.desk.kept, kept))
    except FramingPaletteError as error:
        session.assign("notice", str(error))


def let_go(session: Session, number: int) -> None:
    """Take something off the rail."""
    kept = session.desk.kept
    if number < len(kept):
        rest = kept[:number] + kept[number + 1 :]
        session.edit(f"Take {kept[number].title} off the rail", kept=rest)


def bring_back(session: Session, number: int) -> None:
    """Lay what rests at a place of the rail round the picture."""
    kept = session.desk.kept
    if number < len(kept):
        lay_round(session, kept[number].codes)


def send_away(session: Session, code: str, reason: str = "") -> None:
    """Leave a sample out of the shelf for this job, and take its strips away."""
    if any(aside.code == code for aside in session.desk.set_aside):
        return
    session.edit(
        f"Send {session.sample_of(code).name} away",
        set_aside=(*session.desk.set_aside, SentAway(code, reason)),
        strips=tuple(strip for strip in session.desk.strips if strip.code != code),
        laid=tuple(other for other in session.desk.laid if other != code),
    )


def _names(session: Session, codes: tuple[str, ...]) -> str:
    return " + ".join(session.sample_of(code).name for code in codes)
