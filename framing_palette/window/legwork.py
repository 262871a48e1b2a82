"""Legwork: what the errands do in the background, as functions of what they were given.

Heavy libraries are imported here when they are first needed, so that the window appears at once.
"""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from framing_palette.window.images import Pyramid, dimming_of, pyramid_of
from framing_palette.window.runner import Progress

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtGui import QImage

    from framing_palette.catalogue import Catalogue
    from framing_palette.picture import Findings, Picture, Region, RegionFinding, Survey
    from framing_palette.ranking import BetterChoice, Ranking, Rule
    from framing_palette.ranking.strip_reading import StripReader
    from framing_palette.units import Length
    from framing_palette.window.job_files import BringIn, Fetched, OpenedJob
    from framing_palette.window.listing import Listed


@dataclass(frozen=True, slots=True)
class Surveyed:
    """A picture that was surveyed, with its image for the screen."""

    picture: "Picture"
    survey: "Survey"
    pyramid: Pyramid


@dataclass(frozen=True, slots=True)
class OnTheDesk:
    """An opened job and its picture, ready to be worked on."""

    opened: "OpenedJob"
    surveyed: Surveyed | None


def begun_job(
    path: Path,
    regions_path: Path | None,
    art_size: "tuple[Length, Length] | None",
    progress: Progress,
) -> OnTheDesk:
    """Begin a job on a photograph."""
    from framing_palette.window.job_files import begin_job

    return _on_the_desk(begin_job(path, regions_path, art_size, progress), progress)


def opened_job(
    path: Path, catalogue: "Catalogue", bring_in: "BringIn | None", progress: Progress
) -> OnTheDesk:
    """Open a job file and bring it into the shop's jobs."""
    from framing_palette.window.job_files import open_job

    return _on_the_desk(open_job(path, catalogue, bring_in, progress), progress)


def job_from_book(fetch: "Callable[[], Fetched]", progress: Progress) -> OnTheDesk:
    """Open a job of the shop's."""
    from framing_palette.window.job_files import job_of_book

    return _on_the_desk(job_of_book(fetch, progress), progress)


def rescaled(
    picture: "Picture",
    art_size: "tuple[Length, Length]",
    pyramid: Pyramid,
    progress: Progress,
) -> Surveyed:
    """Give the picture another true size and survey it anew."""
    from framing_palette.picture import survey_picture

    progress.tell(0.0)
    sized = picture.with_true_size(*art_size)
    return Surveyed(sized, survey_picture(sized), pyramid)


def loaded_catalogue(folder: Path, progress: Progress) -> "Catalogue":
    """Load a catalogue folder; its bad cells are reported elsewhere, its good rows are used."""
    from framing_palette.catalogue.catalogue_files import read_catalogue_folder

    progress.tell(0.0)
    catalogue, _problems = read_catalogue_folder(folder)
    return catalogue


def found(survey: "Survey", regions: "tuple[Region, ...]", progress: Progress) -> "Findings":
    """Read what is in a picture that was surveyed."""
    from framing_palette.picture import findings_from_survey

    progress.tell(0.0)
    return findings_from_survey(survey, regions)


def judged(
    findings: "Findings",
    catalogue: "Catalogue",
    rule: "Rule",
    progress: Progress,
) -> "tuple[Ranking, tuple[Listed, ...]]":
    """Judge every sample against a picture; its words are made when it is looked at."""
    from framing_palette.ranking import ranking
    from framing_palette.window.listing import listed_of

    progress.tell(0.0)
    ranked = ranking(findings, catalogue, rule=rule)
    return ranked, listed_of(ranked)


def bettered(ranked: "Ranking", code: str, progress: Progress) -> "BetterChoice | None":
    """Find the nearest sample by look that works better than one the client likes."""
    from framing_palette.ranking import nearest_better

    progress.tell(0.0)
    return nearest_better(ranked, code)


def made_ready(
    picture: "Picture", findings: "Findings", rule: "Rule", progress: Progress
) -> "StripReader":
    """Make a picture ready for reading strips on it by a rule."""
    from framing_palette.ranking.strip_reading import strip_reader
    from framing_palette.ranking.strips import strip_scale

    progress.tell(0.0)
    return strip_reader(picture, findings, mm_per_px=strip_scale(picture), rule=rule)


def lit(picture: "Picture", lab: tuple[float, float, float], progress: Progress) -> "QImage":
    """Return what dims a picture everywhere but where a colour lives."""
    from framing_palette.picture.places import presence

    progress.tell(0.0)
    return dimming_of(presence(picture, lab))


def read_quickly(survey: "Survey", region: "Region", progress: Progress) -> "RegionFinding":
    """Read one region without its texture."""
    from framing_palette.picture import read_region

    progress.tell(0.0)
    return read_region(survey, region, with_texture=False)


def surveyed_picture(picture: "Picture", progress: Progress) -> Surveyed:
    """Survey a picture and make its image for the screen."""
    from framing_palette.colour import lab_d50_to_srgb_u8
    from framing_palette.picture import survey_picture

    progress.tell(0.4)
    pyramid = pyramid_of(lab_d50_to_srgb_u8(picture.lab_d50))
    progress.tell(0.7)
    return Surveyed(picture, survey_picture(picture), pyramid)


def _on_the_desk(opened: "OpenedJob", progress: Progress) -> OnTheDesk:
    picture = opened.picture
    return OnTheDesk(opened, surveyed_picture(picture, progress) if picture else None)
