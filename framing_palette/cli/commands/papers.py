"""``framing-palette papers``: the proposal for the client and the ticket for the workshop."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from framing_palette.cli.inputs import add_catalogue, add_json, read_catalogue
from framing_palette.cli.printing import print_json, progress, tell

if TYPE_CHECKING:
    from framing_palette.jobs.handing_over_files import PaperWishes
    from framing_palette.papers import Notation

SUMMARY = "write the proposal and the workshop ticket of a job"
EXPLANATION = """\
Write proposal.pdf for the client and ticket.pdf for the workshop from a saved job. The ticket needs
an agreed design and two independent measurements of the art that agree; without them the proposal
is written and the ticket refused.

With --drawings the ticket's drawings are written beside it at true size, as SVG and as DXF for
computer-driven cutters: the face, the section, and one sheet for each mat.

With --with JOB, once or several times, the rails, strips and mats of all these jobs are planned
together out of their sticks and sheets, as cutting.pdf.

example: framing-palette papers lamp.framejob --out papers --page Letter --units in,mm"""

MOST_DAYS = 3650
UNITS = ("in", "mm", "cm", "in,mm", "in,cm", "mm,in", "cm,in")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    parser.add_argument("job", type=Path, metavar="JOB", help="a saved job (.framejob)")
    parser.add_argument("--out", type=Path, required=True, metavar="DIR", help="where to write")
    add_catalogue(parser, required=False)
    parser.add_argument(
        "--page", choices=("A4", "Letter"), default="A4", help="paper size (default: %(default)s)"
    )
    parser.add_argument(
        "--units",
        choices=UNITS,
        metavar="UNITS",
        help=f"how lengths are written, of {', '.join(UNITS)} (default: the design's own unit)",
    )
    parser.add_argument(
        "--only", choices=("proposal", "ticket"), help="write one of the two and not the other"
    )
    parser.add_argument(
        "--drawings", action="store_true", help="write the drawings as SVG and DXF, too"
    )
    parser.add_argument(
        "--with",
        dest="along",
        action="append",
        type=Path,
        default=[],
        metavar="JOB",
        help="another job to be cut together with it: writes cutting.pdf, too (may be repeated)",
    )
    parser.add_argument(
        "--price-book", type=Path, metavar="FILE", help="show prices by this price book (TOML)"
    )
    parser.add_argument(
        "--shop", type=Path, metavar="FILE", help="the shop's name and address (TOML)"
    )
    parser.add_argument(
        "--vocabulary", type=Path, metavar="FILE", help="the shop's own words (TOML)"
    )
    parser.add_argument(
        "--valid-days",
        type=int,
        default=30,
        metavar="N",
        help="how long the proposal holds (default: %(default)s)",
    )
    parser.add_argument(
        "--stands-out",
        action="store_true",
        help="the framer has agreed to a stack that stands out behind the frame",
    )
    add_json(parser)


def run(arguments: argparse.Namespace) -> None:
    """Write the papers.

    Raises
    ------
    FramingPaletteError
        When the job cannot be read, or a paper cannot be made of it; a proposal that was written
        before that stays.
    """
    from framing_palette.jobs import read_job_file, shipped_folder
    from framing_palette.jobs.handing_over_files import (
        write_cutting_plan,
        write_proposal,
        write_ticket,
    )

    wishes = _wishes(arguments)
    catalogue = read_catalogue(arguments.catalog or shipped_folder("catalog"), measure=False)
    packed = read_job_file(arguments.job, catalogue)
    proposal: Path | None = None
    ticket: tuple[Path, ...] = ()
    if arguments.only != "ticket":
        with progress("Setting the proposal"):
            proposal = write_proposal(
                packed, arguments.job, catalogue, arguments.out, wishes, tell=tell
            )
        tell(f"Written: {proposal}")
    if arguments.only != "proposal":
        with progress("Setting the ticket"):
            ticket = write_ticket(
                packed, catalogue, arguments.out, wishes, with_drawings=arguments.drawings
            )
    cutting: Path | None = None
    if arguments.along:
        with progress("Planning the cuts"):
            others = [read_job_file(path, catalogue) for path in arguments.along]
            cutting = write_cutting_plan([packed, *others], catalogue, arguments.out, wishes)
    _print(arguments, proposal, ticket, cutting)


def _print(
    arguments: argparse.Namespace,
    proposal: Path | None,
    ticket: tuple[Path, ...],
    cutting: Path | None,
) -> None:
    if arguments.json:
        print_json(
            {
                "schema": "framing-palette/papers@1",
                "page": arguments.page,
                "proposal": None if proposal is None else str(proposal),
                "ticket": str(ticket[0]) if ticket else None,
                "drawings": [str(path) for path in ticket[1:]],
                **({"cutting": str(cutting)} if cutting else {}),
            }
        )
        return
    for path in (*([proposal] if proposal else []), *ticket, *([cutting] if cutting else [])):
        print(path)


def _wishes(arguments: argparse.Namespace) -> "PaperWishes":
    from framing_palette.design import read_price_book
    from framing_palette.errors import FieldError
    from framing_palette.jobs.handing_over import NO_SHOP
    from framing_palette.jobs.handing_over_files import PaperWishes
    from framing_palette.papers import read_shop, read_vocabulary

    if not 1 <= arguments.valid_days <= MOST_DAYS:
        wanted = f"give 1 to {MOST_DAYS} days"
        raise FieldError("--valid-days", got=arguments.valid_days, wanted=wanted)
    return PaperWishes(
        page=arguments.page,
        shop=read_shop(arguments.shop) if arguments.shop else NO_SHOP,
        notation=_notation(arguments.units),
        book=read_price_book(arguments.price_book) if arguments.price_book else None,
        vocabulary=read_vocabulary(arguments.vocabulary) if arguments.vocabulary else None,
        valid_days=arguments.valid_days,
        stands_out=arguments.stands_out,
    )


def _notation(units: str | None) -> "Notation | None":
    from framing_palette.papers import notation_of

    return None if units is None else notation_of(units)
