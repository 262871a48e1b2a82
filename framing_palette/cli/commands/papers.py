"""``framing-palette papers``: the proposal for the client and the ticket for the workshop."""

import argparse
from pathlib import Path

from framing_palette.cli.inputs import add_catalogue, add_json, read_catalogue
from framing_palette.cli.printing import print_json, progress

SUMMARY = "write the proposal and the workshop ticket of a job"
EXPLANATION = """\
Write proposal.pdf for the client and ticket.pdf for the workshop from a saved job. The ticket needs
an agreed design and two independent measurements of the art that agree.

example: framing-palette papers lamp.framejob --out papers --page Letter"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    parser.add_argument("job", type=Path, metavar="JOB", help="a saved job (.framejob)")
    parser.add_argument("--out", type=Path, required=True, metavar="DIR", help="where to write")
    add_catalogue(parser, required=False)
    parser.add_argument(
        "--page", choices=("A4", "Letter"), default="A4", help="paper size (default: %(default)s)"
    )
    add_json(parser)


def run(arguments: argparse.Namespace) -> None:
    """Write both papers.

    Raises
    ------
    FramingPaletteError
        When the job cannot be read, or a paper cannot be made of it.
    """
    from framing_palette.jobs import read_job_file, shipped_folder
    from framing_palette.jobs.handing_over_files import write_proposal, write_ticket

    catalogue = read_catalogue(arguments.catalog or shipped_folder("catalog"))
    packed = read_job_file(arguments.job, catalogue)
    page = arguments.page
    with progress("Writing the proposal"):
        proposal = write_proposal(packed, arguments.job, catalogue, arguments.out, page=page)
    with progress("Writing the ticket"):
        ticket = write_ticket(packed, catalogue, arguments.out, page=page)
    if arguments.json:
        paths = {"proposal": str(proposal), "ticket": str(ticket)}
        print_json({"schema": "framing-palette/papers@1", **paths})
        return
    print(proposal)
    print(ticket)
