"""``framing-palette demo``: the whole job on the shipped, invented picture."""

import argparse
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from framing_palette.cli.inputs import add_json
from framing_palette.cli.printing import json_text, print_json, progress, tell

if TYPE_CHECKING:
    from framing_palette.catalogue import Catalogue
    from framing_palette.design import SearchResult
    from framing_palette.jobs import Job, PackedJob, ShippedPicture
    from framing_palette.picture import Findings, Picture

SUMMARY = "run the whole job on the shipped demo picture, then open the window on it"
EXPLANATION = """\
Read the shipped, invented picture, rank the shipped, invented catalogue, search whole designs,
render the preview, and write ranking.json, preview.png, proposal.pdf, ticket.pdf and the job
itself (demo.framejob) into DIR. Then open the window on the job when there is a display.

example: framing-palette demo --out out --no-window"""

_PREVIEW_WIDTH_PX = 1600
_JOB_FILE = "demo.framejob"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    parser.add_argument(
        "--out",
        type=Path,
        default=Path("framing-palette-demo"),
        metavar="DIR",
        help="folder for the results, made when missing (default: %(default)s)",
    )
    parser.add_argument("--no-window", action="store_true", help="do not open the window after")
    add_json(parser)


def run(arguments: argparse.Namespace) -> int:
    """Do the whole job, then open the window.

    Raises
    ------
    FramingPaletteError
        When the folder cannot be written or the installation is not whole.
    """
    from framing_palette.jobs import shipped_folder, shipped_picture, writable_folder

    out = writable_folder(arguments.out)
    shipped = shipped_picture()
    written = _whole_job(out, shipped, shipped_folder("catalog"))
    if arguments.json:
        print_json({"schema": "framing-palette/demo@1", "written": [str(path) for path in written]})
    else:
        for path in written:
            print(path)
    if arguments.no_window or arguments.open_window is None:
        return 0
    if not _has_display():
        tell("There is no display, so the window stays closed.")
        return 0
    return int(arguments.open_window(out / _JOB_FILE))


def _whole_job(out: Path, shipped: "ShippedPicture", catalogue_dir: Path) -> list[Path]:
    from framing_palette.catalogue import read_catalogue_folder
    from framing_palette.picture import read_findings, read_picture_file, read_regions_file

    with progress("Reading the picture"):
        picture = read_picture_file(shipped.picture_path)
        picture = picture.with_true_size(shipped.width, shipped.height)
        findings = read_findings(picture, read_regions_file(shipped.regions_path))
    with progress("Reading the catalogue"):
        catalogue, _ = read_catalogue_folder(catalogue_dir)
    written = [_ranking(out, picture, findings, catalogue)]
    with progress("Searching whole designs"):
        result = _search(findings, catalogue)
    packed = _job_file(out, shipped, result, catalogue)
    written.append(_preview(out, packed.job, picture, catalogue))
    written += _papers(out, packed, catalogue)
    return [*written, out / _JOB_FILE]


def _ranking(out: Path, picture: "Picture", findings: "Findings", catalogue: "Catalogue") -> Path:
    from framing_palette.picture import picture_report, regions_report
    from framing_palette.ranking import rank, rank_report
    from framing_palette.whole_files import write_whole

    with progress("Ranking the samples"):
        ranked = rank(findings, catalogue)
    seen = {"picture": picture_report(picture), "regions": regions_report(findings)}
    return write_whole(out / "ranking.json", json_text(rank_report(seen, ranked)).encode())


def _search(findings: "Findings", catalogue: "Catalogue") -> "SearchResult":
    from framing_palette.design import search_designs
    from framing_palette.jobs import DEMO_LAYERS

    return search_designs(findings, catalogue, DEMO_LAYERS, top=3)


def _job_file(
    out: Path, shipped: "ShippedPicture", result: "SearchResult", catalogue: "Catalogue"
) -> "PackedJob":
    from framing_palette.jobs import (
        PackedJob,
        demo_job,
        picture_of_file,
        read_job_file,
        write_job_file,
    )
    from framing_palette.picture import read_regions_file

    content, named = picture_of_file(shipped.picture_path)
    regions = read_regions_file(shipped.regions_path)
    job = demo_job(shipped, named, regions, result.designs, catalogue_name=catalogue.name)
    path = out / _JOB_FILE
    write_job_file(path, PackedJob(job, content))
    # The papers are made from the job as it opens again, so that the file is known to be whole.
    return read_job_file(path, catalogue)


def _preview(out: Path, job: "Job", picture: "Picture", catalogue: "Catalogue") -> Path:
    from framing_palette.preview import write_preview_file

    design = job.options[job.chosen or 0].design
    path = out / "preview.png"
    with progress("Rendering the preview"):
        write_preview_file(path, design, picture, catalogue, width_px=_PREVIEW_WIDTH_PX)
    return path


def _papers(out: Path, packed: "PackedJob", catalogue: "Catalogue") -> list[Path]:
    from framing_palette.jobs.handing_over import DEMO_SHOP
    from framing_palette.jobs.handing_over_files import PaperWishes, write_proposal, write_ticket

    wishes = PaperWishes(shop=DEMO_SHOP)
    with progress("Setting the papers"):
        proposal = write_proposal(packed, out / _JOB_FILE, catalogue, out, wishes)
        return [proposal, *write_ticket(packed, catalogue, out, wishes)]


def _has_display() -> bool:
    if sys.platform.startswith("linux") and not os.environ.get("QT_QPA_PLATFORM"):
        return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))
    return True
