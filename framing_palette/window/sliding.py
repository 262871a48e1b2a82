"""What is done with strips, whichever key, tool or gesture asks for it."""

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from framing_palette.errors import FramingPaletteError
from framing_palette.ranking.strips import Strip, lengthened, new_strip, strip_scale, turned
from framing_palette.window.keeping import keep_sample, lay_round, send_away
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from collections.abc import Callable

TURN_DEG, QUARTER_DEG = 15.0, 90.0
LENGTHEN_MM = 20.0
_OFFSET_SHARE = 0.08


def chosen_strip(session: Session) -> Strip | None:
    """Return the strip that keys and tools act on."""
    number = session.chosen_strip
    return next((strip for strip in session.desk.strips if strip.number == number), None)


def fresh_strip(
    session: Session,
    code: str,
    at_mm: tuple[float, float] | None = None,
) -> Strip | None:
    """Return a new strip of a sample, in the middle of the picture unless told where.

    What stands in the way (no picture, no face width) is told as a notice, and None returned.
    """
    picture = session.picture
    if picture is None:
        session.assign("notice", "Bring a picture first, then lay a sample on it.")
        return None
    scale = strip_scale(picture)
    width_mm, height_mm = picture.columns * scale, picture.rows * scale
    shift = _OFFSET_SHARE * height_mm * (len(session.desk.strips) % 4)
    try:
        return new_strip(
            1 + max((strip.number for strip in session.desk.strips), default=0),
            session.sample_of(code),
            at_mm=at_mm or (width_mm / 2, height_mm / 2 + shift),
            art_width_mm=width_mm,
            mat_border=session.preferences.mat_border,
        )
    except FramingPaletteError as error:
        session.assign("notice", str(error))
        return None


def lay_strip(session: Session, code: str, at_mm: tuple[float, float] | None = None) -> None:
    """Lay a new strip of a sample on the picture and take it in hand."""
    strip = fresh_strip(session, code, at_mm)
    if strip is not None:
        put_strip(session, strip, verb="Lay down")
        session.assign("chosen_strip", strip.number)


def put_strip(session: Session, strip: Strip, *, verb: str, merge: str = "") -> None:
    """Put a strip where it is now, in the place of where it was."""
    others = tuple(other for other in session.desk.strips if other.number != strip.number)
    before = chosen_strip(session)
    if before == strip:
        return
    name = session.sample_of(strip.code).name
    merge = f"{merge} {strip.number}" if merge else ""
    session.edit(f"{verb} {name}", merge=merge, strips=(*others, strip))


def lay_strip_round(session: Session, strip: Strip) -> None:
    """Lay the strip's sample round the picture and take the strip up."""
    if session.desk.laid == (strip.code,):
        return
    lay_round(session, (strip.code,))


def take_up(session: Session, strip: Strip) -> None:
    """Take a strip off the picture."""
    rest = tuple(other for other in session.desk.strips if other.number != strip.number)
    session.edit(f"Take up {session.sample_of(strip.code).name}", strips=rest)
    session.assign("chosen_strip", rest[-1].number if rest else 0)


def turn(session: Session, strip: Strip, *, by_deg: float = TURN_DEG) -> None:
    """Turn a strip."""
    put_strip(session, turned(strip, by_deg), verb="Turn", merge="turn")


def bend(session: Session, strip: Strip) -> None:
    """Bend a strip into a corner, or straighten it."""
    verb = "Straighten" if strip.bent else "Bend"
    put_strip(session, replace(strip, bent=not strip.bent), verb=verb)


def choose_next(session: Session) -> None:
    """Take the next strip in hand."""
    numbers = sorted(strip.number for strip in session.desk.strips)
    later = [number for number in numbers if number > session.chosen_strip]
    if numbers:
        session.assign("chosen_strip", (later or numbers)[0])


def answer_key(session: Session, strip: Strip, key: Qt.Key, *, shift: bool) -> bool:
    """Do what a key asks of a strip; False when it is none of a strip's keys."""
    quarter = QUARTER_DEG if shift else TURN_DEG
    answers: dict[Qt.Key, Callable[[], None]] = {
        Qt.Key.Key_R: lambda: turn(session, strip, by_deg=quarter),
        Qt.Key.Key_C: lambda: bend(session, strip),
        Qt.Key.Key_Return: lambda: lay_strip_round(session, strip),
        Qt.Key.Key_Enter: lambda: lay_strip_round(session, strip),
        Qt.Key.Key_K: lambda: keep_sample(session, strip.code),
        Qt.Key.Key_X: lambda: send_away(session, strip.code),
        Qt.Key.Key_N: lambda: choose_next(session),
        Qt.Key.Key_Delete: lambda: take_up(session, strip),
        Qt.Key.Key_Backspace: lambda: take_up(session, strip),
        Qt.Key.Key_BracketRight: lambda: _lengthen(session, strip, LENGTHEN_MM),
        Qt.Key.Key_BracketLeft: lambda: _lengthen(session, strip, -LENGTHEN_MM),
        Qt.Key.Key_Escape: lambda: session.assign("chosen_strip", 0),
    }
    answer = answers.get(key)
    if answer is not None:
        answer()
    return answer is not None


def _lengthen(session: Session, strip: Strip, by_mm: float) -> None:
    put_strip(session, lengthened(strip, by_mm), verb="Lengthen", merge="length")
