"""Whole looks on the rail: the design in hand, or all that is laid round the picture."""

from framing_palette.errors import FramingPaletteError
from framing_palette.jobs import OnRail
from framing_palette.window.building import design_in_hand
from framing_palette.window.keeping import keep_sample
from framing_palette.window.session import Session

_BEFORE_A_DESIGN = ("", "intake", "read", "choose")


def look_to_keep(session: Session) -> OnRail | None:
    """Return what would be kept now; None while there is nothing.

    From Build on it is the design in hand, before it what is laid round the picture.
    """
    design = design_in_hand(session)
    if design is not None and session.step not in _BEFORE_A_DESIGN:
        known = tuple(code for code in design.codes if code in session.catalogue)
        return OnRail(design.codes, _title(session, known)) if known else None
    laid = tuple(code for code in session.desk.laid if code in session.catalogue)
    return OnRail(laid, _title(session, laid)) if laid else None


def keep_look(session: Session) -> None:
    """Put the look on the rail; a full rail says so and stays as it is."""
    kept = look_to_keep(session)
    if kept is None:
        session.assign("notice", "Lay something round the picture first, then keep it here.")
    elif len(kept.codes) == 1:
        keep_sample(session, kept.codes[0])
    elif all(other.codes != kept.codes for other in session.desk.kept):
        try:
            session.edit(f"Keep {kept.title}", kept=(*session.desk.kept, kept))
        except FramingPaletteError as error:
            session.assign("notice", str(error))


def _title(session: Session, codes: tuple[str, ...]) -> str:
    return " + ".join(session.sample_of(code).name for code in codes)
