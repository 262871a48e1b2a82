"""Taste work: what is preferred and rejected at the counter, whichever control asks for it."""

from framing_palette.jobs import SentAway
from framing_palette.ranking import Answer, Work
from framing_palette.window.session import Session

TOO_DEAR, NOT_AT_HAND = "too dear", "not at hand"
NOT_OF_TASTE = (TOO_DEAR, NOT_AT_HAND)
"""Reasons for sending a sample away that say nothing of its looks."""


def work_on_desk(session: Session) -> Work:
    """Return what was done on the picture, as far as it tells of taste."""
    desk = session.desk
    agreed = desk.job.agreed if desk.job else None
    return Work(
        kept=tuple(kept.codes[0] for kept in desk.kept if len(kept.codes) == 1),
        away=tuple(one.code for one in desk.set_aside if one.reason not in NOT_OF_TASTE),
        answers=desk.answers,
        agreed=agreed.design.codes if agreed else (),
    )


def answer_question(session: Session, better: str, worse: str, *, is_open: bool = False) -> None:
    """Answer which of two samples is preferred; an open answer prefers neither."""
    answer = Answer((better,), (worse,), is_open=is_open)
    names = session.sample_of(better).name, session.sample_of(worse).name
    said = "Leave {} and {} undecided" if is_open else "Prefer {} to {}"
    session.edit(said.format(*names), answers=(*session.desk.answers, answer))


def prefer_look(session: Session, number: int) -> None:
    """Prefer what rests at a place of the rail to all that rest beside it."""
    kept = session.desk.kept
    if not 0 <= number < len(kept):
        return
    preferred = kept[number]
    others = (other.codes for other in kept if other.codes != preferred.codes)
    answers = _with_answers(session.desk.answers, [(preferred.codes, codes) for codes in others])
    session.edit(f"Prefer {preferred.title}", answers=answers)


def reject_look(session: Session, number: int) -> None:
    """Take what rests at a place of the rail away, with all that lies of it, in one edit.

    A single sample is sent away from the shelf as well. The samples of a design stay there, for
    they may suit in another one; what rested beside the design is preferred to it.
    """
    desk = session.desk
    if not 0 <= number < len(desk.kept):
        return
    rejected = desk.kept[number]
    rest = desk.kept[:number] + desk.kept[number + 1 :]
    if len(rejected.codes) > 1:
        pairs = [(other.codes, rejected.codes) for other in rest if other.codes != rejected.codes]
        answers = _with_answers(desk.answers, pairs)
        laid = () if desk.laid == rejected.codes else desk.laid
        session.edit(f"Reject {rejected.title}", kept=rest, answers=answers, laid=laid)
        return
    code = rejected.codes[0]
    aside = desk.set_aside
    if all(one.code != code for one in aside):
        aside = (*aside, SentAway(code))
    session.edit(
        f"Send {rejected.title} away",
        kept=rest,
        set_aside=aside,
        strips=tuple(strip for strip in desk.strips if strip.code != code),
        laid=tuple(other for other in desk.laid if other != code),
    )


def _with_answers(
    before: tuple[Answer, ...], pairs: list[tuple[tuple[str, ...], tuple[str, ...]]]
) -> tuple[Answer, ...]:
    new = tuple(Answer(better, worse) for better, worse in pairs)
    asked = {frozenset((answer.better, answer.worse)) for answer in new}
    kept = (one for one in before if frozenset((one.better, one.worse)) not in asked)
    return (*kept, *new)
