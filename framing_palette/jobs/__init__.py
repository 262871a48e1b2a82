"""What have we agreed?

A job holds everything that designer and client decided about one piece of art: who it is for, the
picture and its regions, both measurements, the designs that were shown and the one that was
chosen. Plain frozen values flow in and out; files and databases are touched only in ``*_files``
modules and ``store``. Only the two faces, ``cli`` and ``window``, import this folder.
"""

from framing_palette.jobs.autosave import Autosave
from framing_palette.jobs.demo import DEMO_LAYERS, demo_job
from framing_palette.jobs.desk_states import DeskState, OnRail, SentAway
from framing_palette.jobs.documents import job_from_text, job_text
from framing_palette.jobs.health import HealthFinding, examine
from framing_palette.jobs.job_files import PackedJob, read_job_file, write_job_file
from framing_palette.jobs.job_lines import ClientLine, JobLine, StoredJob, Wanted
from framing_palette.jobs.jobs import (
    Client,
    Event,
    Job,
    Measurement,
    Option,
    PictureFile,
    Status,
)
from framing_palette.jobs.merging import Merged, merged
from framing_palette.jobs.output_files import picture_of_file, writable_folder
from framing_palette.jobs.shipped_files import ShippedPicture, shipped_folder, shipped_picture

__all__ = [
    "DEMO_LAYERS",
    "Autosave",
    "Client",
    "ClientLine",
    "DeskState",
    "Event",
    "HealthFinding",
    "Job",
    "JobLine",
    "Measurement",
    "Merged",
    "OnRail",
    "Option",
    "PackedJob",
    "PictureFile",
    "SentAway",
    "ShippedPicture",
    "Status",
    "StoredJob",
    "Wanted",
    "demo_job",
    "examine",
    "job_from_text",
    "job_text",
    "merged",
    "picture_of_file",
    "read_job_file",
    "shipped_folder",
    "shipped_picture",
    "writable_folder",
    "write_job_file",
]
