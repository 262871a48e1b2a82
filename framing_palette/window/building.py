"""What is done with the designs of a job, whichever control asks for it.

The designs that the client is shown are the options of the job; one of them is in hand. Every
change is checked before it is put on the desk, so that what lies there can always be cut.
"""

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import QCoreApplication

from framing_palette.catalogue import Kind, Sample
from framing_palette.design import Art, Design, FoundDesign, check_cuttable, compose
from framing_palette.design.changing import recomposed, samples_in_order, with_art
from framing_palette.errors import FieldError
from framing_palette.jobs import Job, Option, Status
from framing_palette.papers.contents import MOST_OPTIONS
from framing_palette.units import Length
from framing_palette.window.languages import QT_TRANSLATE_NOOP
from framing_palette.window.session import Session

USUAL_OVERLAP = Length.inches("1/8")  # common practice
NAMES = (
    QT_TRANSLATE_NOOP("Designs", "First design"),
    QT_TRANSLATE_NOOP("Designs", "Second design"),
    QT_TRANSLATE_NOOP("Designs", "Third design"),
)
MOULDING = "moulding"


def job_of(session: Session) -> Job:
    """Return the job on the desk.

    Raises
    ------
    FieldError
        When there is none yet.
    """
    if session.desk.job is None:
        raise FieldError("job", got="none", wanted="bring the picture first")
    return session.desk.job


def options_of(session: Session) -> tuple[Option, ...]:
    """Return the designs of the job."""
    return session.desk.job.options if session.desk.job else ()


def number_in_hand(session: Session) -> int:
    """Return which design is in hand; -1 when there is none."""
    return min(session.in_hand, len(options_of(session)) - 1)


def design_in_hand(session: Session) -> Design | None:
    """Return the design that is being worked on."""
    options, number = options_of(session), number_in_hand(session)
    return options[number].design if number >= 0 else None


def take_in_hand(session: Session, number: int) -> None:
    """Work on another of the job's designs."""
    if 0 <= number < len(options_of(session)):
        session.assign("in_hand", number)


def put_design(
    session: Session,
    design: Design,
    words: str,
    *,
    merge: str = "",
    reasons: tuple[str, ...] | None = None,
) -> None:
    """Put a changed design in the place of the one in hand.

    Raises
    ------
    FramingPaletteError
        When it cannot be built; nothing is changed then.
    """
    checked(design)
    job, number = job_of(session), number_in_hand(session)
    option = replace(job.options[number], design=design)
    if reasons is not None:
        option = replace(option, reasons=reasons)
    options = (*job.options[:number], option, *job.options[number + 1 :])
    session.edit(words, merge=f"{merge} {number}" if merge else "", job=_with_options(job, options))


def checked(design: Design) -> Design:
    """Return a design that can be built, whatever its stack's depth; that is told, not refused.

    Raises
    ------
    FramingPaletteError
        When a size cannot be worked out.
    """
    return check_cuttable(design, out_of_rabbet=True).design


def begin_design(session: Session, codes: Sequence[str]) -> None:
    """Compose a design of samples with usual widths, and take it in hand.

    Raises
    ------
    FramingPaletteError
        When the size of the art is not known, or the samples make no design.
    """
    samples = tuple(session.sample_of(code) for code in codes)
    design = _composed(session, samples, _free_name(options_of(session)))
    add_options(session, [Option(design, _reasons(session, samples))], f"Begin {design.name}")


def take_found(session: Session, found: Sequence[FoundDesign]) -> None:
    """Lay designs that the search found beside each other, the first of them in hand.

    Raises
    ------
    FramingPaletteError
        When one of them makes no design; nothing is changed then.
    """
    names = _names() if len(found) > 1 else (_free_name(options_of(session)),)
    options = [
        Option(_composed(session, one.layers, name), one.reasons)
        for one, name in zip(found, names, strict=False)
    ]
    add_options(
        session, options, "Take the designs that were found", all_new=len(found) == MOST_OPTIONS
    )


def add_options(
    session: Session, options: Sequence[Option], words: str, *, all_new: bool = False
) -> None:
    """Add designs to the job; a full job gives up the one in hand, or all of them."""
    job, number = job_of(session), number_in_hand(session)
    before = () if all_new else job.options
    if len(before) + len(options) > MOST_OPTIONS:
        before = before[:number] + before[number + 1 :]
    after = (*before, *options)[-MOST_OPTIONS:]
    session.edit(words, job=_with_options(job, after))
    session.assign("in_hand", 0 if all_new else len(after) - 1)


def drop_option(session: Session, number: int) -> None:
    """Take a design out of the job."""
    job = job_of(session)
    rest = job.options[:number] + job.options[number + 1 :]
    session.edit(f"Take {job.options[number].design.name} away", job=_with_options(job, rest))


def copy_design(session: Session) -> None:
    """Begin another design as a copy of the one in hand."""
    options, number = options_of(session), number_in_hand(session)
    if number >= 0 and len(options) < MOST_OPTIONS:
        name = _free_name(options)
        option = replace(options[number], design=replace(options[number].design, name=name))
        add_options(session, [option], f"Begin {name}")


def use_sample(session: Session, code: str, part: str) -> None:
    """Give a part of the design in hand another sample; a moulding always becomes the frame.

    Raises
    ------
    FramingPaletteError
        When the design cannot be built with it.
    """
    sample, samples = session.sample_of(code), _samples(session)
    if sample.kind is Kind.MOULDING:
        inside = [one for one in samples if one.kind is not Kind.MOULDING]
        _recompose(session, [*inside, sample], f"Frame: {sample.name}", "moulding")
        return
    place = place_of(part)
    if place is None:
        add_sample(session, code, part)
        return
    changed = [*samples[:place], sample, *samples[place + 1 :]]
    _recompose(session, changed, f"Use {sample.name}", part)


def add_sample(session: Session, code: str, part: str) -> None:
    """Add a layer outside the chosen one, or next to the frame when none is chosen.

    Raises
    ------
    FramingPaletteError
        When the design cannot be built with it.
    """
    sample, samples = session.sample_of(code), _samples(session)
    if sample.kind is Kind.MOULDING:
        use_sample(session, code, part)
        return
    place = place_of(part)
    inside = len([one for one in samples if one.kind is not Kind.MOULDING])
    at = 0 if part == "art" else inside if place is None else place + 1
    changed = [*samples[:at], sample, *samples[at:]]
    _recompose(session, changed, f"Add {sample.name}", f"layer {at + 1}")


def remove_part(session: Session, part: str) -> None:
    """Take a layer, the glazing or the frame out of the design in hand.

    Raises
    ------
    FramingPaletteError
        When the design cannot be built without it.
    """
    design, place = design_in_hand(session), place_of(part)
    if design is None:
        return
    samples = _samples(session)
    if place is not None and place < len(design.layers):
        name = samples[place].name
        _recompose(session, samples[:place] + samples[place + 1 :], f"Take {name} out", "")
    elif part == MOULDING:
        inside = [one for one in samples if one.kind is not Kind.MOULDING]
        _recompose(session, inside, "Take the frame away", "")
    elif part == "glazing":
        put_design(session, replace(design, glazing=None), "Take the glazing out")
    elif part == "backing":
        put_design(session, replace(design, backing=None), "Take the backing out")


def move_layer(session: Session, part: str, to: int) -> None:
    """Put a layer at another place among the layers, counted from the art.

    Raises
    ------
    FramingPaletteError
        When the layers cannot stand in that order.
    """
    design, place = design_in_hand(session), place_of(part)
    if design is None or place is None or not 0 <= to < len(design.layers) or to == place:
        return
    samples = _samples(session)
    moved = samples.pop(place)
    samples.insert(to, moved)
    _recompose(session, samples, f"Move {moved.name}", f"layer {to + 1}")


def set_art_size(session: Session, width: Length, height: Length) -> None:
    """Give the job the size of the art, and every design with it.

    Raises
    ------
    FramingPaletteError
        When a design cannot be built round art of that size.
    """
    job = job_of(session)
    options = tuple(
        replace(option, design=checked(with_art(option.design, width, height)))
        for option in job.options
    )
    Art(width, height)  # refuses what is no size
    session.edit("The art's size", job=replace(job, art_size=(width, height), options=options))


def place_of(part: str) -> int | None:
    """Return which layer a part is, counted from 0; None for what is no layer."""
    return int(part.removeprefix("layer ")) - 1 if part.startswith("layer ") else None


def part_sample(session: Session, part: str) -> Sample | None:
    """Return the sample of a part of the design in hand, if it has one."""
    design, place = design_in_hand(session), place_of(part)
    if design is None:
        return None
    code = ""
    if place is not None and place < len(design.layers):
        code = design.layers[place].code
    elif part == MOULDING and design.moulding:
        code = design.moulding.code
    return session.sample_of(code) if code in session.catalogue else None


def _samples(session: Session) -> list[Sample]:
    design = design_in_hand(session)
    if design is None:
        raise FieldError("design", got="none", wanted="begin one first")
    return list(samples_in_order(design, session.catalogue))


def _recompose(session: Session, samples: Sequence[Sample], words: str, part: str) -> None:
    design = design_in_hand(session)
    if design is None:
        return
    changed = recomposed(design, samples)
    put_design(session, changed, words, reasons=_reasons(session, samples))
    session.assign("chosen_part", part)


def _composed(session: Session, samples: Sequence[Sample], name: str) -> Design:
    job = job_of(session)
    if job.art_size is None:
        raise FieldError("art size", got="missing", wanted="type how large the art is")
    art = Art(*job.art_size, overlap=USUAL_OVERLAP)
    return checked(compose(samples, art, unit=session.preferences.unit, name=name))


def _reasons(session: Session, samples: Sequence[Sample]) -> tuple[str, ...]:
    """Return the leading reason of each sample, as it was judged against this picture."""
    judged = [(sample, session.ranked_of(sample.code)) for sample in samples]
    own = [f"{sample.name}: {ranked.reasons[0]}" for sample, ranked in judged if ranked is not None]
    return tuple(dict.fromkeys(own))[:4]


def _with_options(job: Job, options: tuple[Option, ...]) -> Job:
    """Return the job with other designs; the agreed one stays agreed while it is among them."""
    agreed = job.agreed
    chosen = options.index(agreed) if agreed in options else None
    is_lost = chosen is None and job.status is Status.AGREED
    status = Status.PROPOSED if is_lost else job.status
    return replace(job, options=options, chosen=chosen, status=status)


def _free_name(options: Sequence[Option]) -> str:
    taken = {option.design.name for option in options}
    return next((name for name in _names() if name not in taken), _names()[-1])


def _names() -> tuple[str, ...]:
    return tuple(QCoreApplication.translate("Designs", name) for name in NAMES)
