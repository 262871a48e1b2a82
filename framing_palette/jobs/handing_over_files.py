"""The papers of a saved job, written into a folder."""

from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory

from framing_palette.catalogue import Catalogue
from framing_palette.design import PriceBook
from framing_palette.errors import JobFileError
from framing_palette.jobs.handing_over import proposal_contents, ticket_contents
from framing_palette.jobs.job_files import PackedJob
from framing_palette.papers import Notation, proposal_pdf, ticket_pdf, write_paper
from framing_palette.papers.contents import PageName
from framing_palette.papers.paper_files import paper_folder
from framing_palette.picture import Picture, read_picture_file

PROPOSAL, TICKET = "proposal.pdf", "ticket.pdf"


def picture_of(packed: PackedJob, path: Path | str) -> Picture:
    """Return the photograph that travels in a job file.

    Raises
    ------
    JobFileError
        When the file holds none; ``path`` names it.
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
        return read_picture_file(file)


def write_proposal(
    packed: PackedJob,
    path: Path | str,
    catalogue: Catalogue,
    folder: Path,
    *,
    page: PageName = "A4",
    book: PriceBook | None = None,
    notation: Notation | None = None,
) -> Path:
    """Write the proposal of a job and return its path.

    Raises
    ------
    FramingPaletteError
        When the job has no design or photograph, or the file cannot be written.
    """
    picture = picture_of(packed, path)
    contents = proposal_contents(
        packed.job, picture, catalogue, page=page, book=book, notation=notation
    )
    content = proposal_pdf(contents, page=page)
    return write_paper(paper_folder(folder) / PROPOSAL, content)


def write_ticket(
    packed: PackedJob,
    catalogue: Catalogue,
    folder: Path,
    *,
    page: PageName = "A4",
    notation: Notation | None = None,
    out_of_rabbet: bool = False,
) -> Path:
    """Write the ticket of a job and return its path.

    Raises
    ------
    FramingPaletteError
        When the design cannot be cut as it is, or the file cannot be written.
    """
    contents = ticket_contents(
        packed.job, catalogue, notation=notation, out_of_rabbet=out_of_rabbet
    )
    content = ticket_pdf(contents, page=page)
    return write_paper(paper_folder(folder) / TICKET, content)
