"""The papers of a saved job, written into a folder."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory

from framing_palette.catalogue import Catalogue
from framing_palette.catalogue.light import REFERENCE
from framing_palette.design import PriceBook
from framing_palette.errors import JobFileError
from framing_palette.jobs.handing_over import (
    NO_SHOP,
    VALID_DAYS,
    proposal_contents,
)
from framing_palette.jobs.handing_over_ticket import cutting_plan, ticket_contents
from framing_palette.jobs.job_files import PackedJob
from framing_palette.jobs.taking_in import taken_in
from framing_palette.papers import (
    Notation,
    PageName,
    Shop,
    Vocabulary,
    cutting_plan_pdf,
    drawing_set,
    paper_folder,
    proposal_pdf,
    ticket_pdf,
    write_paper,
)
from framing_palette.picture import Picture, read_picture_file
from framing_palette.picture.reading import WORKING_SIDE
from framing_palette.units import Length

PROPOSAL, TICKET, CUTTING = "proposal.pdf", "ticket.pdf", "cutting.pdf"
PRINTED_SIDE = 1100  # pixels; more than the art ever takes of a panel at 8 pixels a millimetre


@dataclass(frozen=True, slots=True)
class PaperWishes:
    """How papers are to look.

    Parameters
    ----------
    page
        A4 or Letter.
    shop
        Who hands them over.
    notation
        How lengths are written; in the design's own unit when None.
    book
        Prices stand on the proposal when it is given.
    vocabulary
        The shop's words; the shipped ones when None.
    valid_days
        How long the proposal holds, from the job's last change.
    under
        The client's light that the proposal shows the designs in.
    tolerance
        How far two measurements of a side may differ; the usual one when None.
    stands_out
        Whether the framer has agreed to a stack that is deeper than the rabbet.
    """

    page: PageName = "A4"
    shop: Shop = NO_SHOP
    notation: Notation | None = None
    book: PriceBook | None = None
    vocabulary: Vocabulary | None = None
    valid_days: int = VALID_DAYS
    under: str = REFERENCE
    tolerance: Length | None = None
    stands_out: bool = False


def picture_of(packed: PackedJob, path: Path | str, *, max_side: int = WORKING_SIDE) -> Picture:
    """Return the picture of a job: its photograph, squared and corrected as the job says.

    Parameters
    ----------
    path
        Names the job file in a refusal.
    max_side
        Longest side of the working picture, in pixels.

    Raises
    ------
    JobFileError
        When the file holds none.
    PictureFileError
        When it cannot be read as a picture.
    ChartError, CornersError
        When it cannot be taken in as the job says.
    """
    photograph = photograph_of(packed, path, max_side=max_side)
    return taken_in(photograph, packed.job.intake, packed.job.art_size)


def photograph_of(packed: PackedJob, path: Path | str, *, max_side: int = WORKING_SIDE) -> Picture:
    """Return the photograph that travels in a job file, as it was taken; see ``picture_of``.

    Raises
    ------
    JobFileError
        When the file holds none.
    PictureFileError
        When it cannot be read as a picture.
    """
    named = packed.job.picture
    if packed.picture is None or named is None:
        raise JobFileError(
            path, problem="holds no photograph", todo="open the job, choose one and save it again"
        )
    with TemporaryDirectory() as folder:
        file = Path(folder) / f"picture{PurePosixPath(named.name).suffix}"
        file.write_bytes(packed.picture)
        return read_picture_file(file, max_side=max_side)


def write_proposal(
    packed: PackedJob,
    path: Path | str,
    catalogue: Catalogue,
    folder: Path,
    wishes: PaperWishes = PaperWishes(),
    *,
    tell: Callable[[str], None] | None = None,
) -> Path:
    """Write the proposal of a job and return its path.

    Parameters
    ----------
    path
        The job's file, for messages.
    tell
        Hears what had to be assumed for the pictures.

    Raises
    ------
    FramingPaletteError
        When the job has no design or photograph, or the file cannot be written.
    """
    contents = proposal_contents(
        packed.job,
        picture_of(packed, path, max_side=PRINTED_SIDE),
        catalogue,
        shop=wishes.shop,
        page=wishes.page,
        book=wishes.book,
        notation=wishes.notation,
        vocabulary=wishes.vocabulary,
        valid_days=wishes.valid_days,
        under=wishes.under,
    )
    if tell is not None:
        for notice in contents.notices:
            tell(notice)
    content = proposal_pdf(contents, page=wishes.page)
    return write_paper(paper_folder(folder) / PROPOSAL, content)


def write_ticket(
    packed: PackedJob,
    catalogue: Catalogue,
    folder: Path,
    wishes: PaperWishes = PaperWishes(),
    *,
    with_drawings: bool = False,
) -> tuple[Path, ...]:
    """Write the ticket of a job, and its drawings if wished, and return their paths.

    Raises
    ------
    FramingPaletteError
        When the design cannot be cut as it is, or a file cannot be written.
    """
    contents = ticket_contents(
        packed.job,
        catalogue,
        shop=wishes.shop,
        notation=wishes.notation,
        tolerance=wishes.tolerance,
        out_of_rabbet=wishes.stands_out,
    )
    content = ticket_pdf(contents, page=wishes.page)
    written = [write_paper(paper_folder(folder) / TICKET, content)]
    for drawing in drawing_set(contents) if with_drawings else ():
        written += [write_paper(folder / name, body) for name, body in drawing.files()]
    return tuple(written)


def write_cutting_plan(
    packed: Sequence[PackedJob],
    catalogue: Catalogue,
    folder: Path,
    wishes: PaperWishes = PaperWishes(),
) -> Path:
    """Write where the pieces of several jobs come from, cut together, and return its path.

    Raises
    ------
    FramingPaletteError
        When one of the jobs cannot be cut as it is, or the file cannot be written.
    """
    plan = cutting_plan(
        [each.job for each in packed],
        catalogue,
        shop=wishes.shop,
        notation=wishes.notation,
        tolerance=wishes.tolerance,
    )
    return write_paper(paper_folder(folder) / CUTTING, cutting_plan_pdf(plan, page=wishes.page))
