"""Swatch intake: a whole folder of swatch photographs measured side by side, and resumed.

Each result is written down as soon as it is there, so that an intake that was stopped goes on
where it was. Which workers do it is a setting of joblib: processes of this machine, or a Dask
cluster whose client is open.
"""

import json
from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from framing_palette.catalogue.cells import why_not_a_code
from framing_palette.catalogue.records import colour_of_record, record_of_colour
from framing_palette.catalogue.samples import Finish, Kind, Sample, SampleColour
from framing_palette.catalogue.surface_files import checksum_of
from framing_palette.catalogue.swatch import measure_swatch, photograph_origin
from framing_palette.catalogue.texture_numbers import texture_from_numbers, texture_numbers
from framing_palette.errors import CatalogueError, FramingPaletteError, OutputError
from framing_palette.picture import Texture, read_picture_file
from framing_palette.whole_files import read_whole

LARGEST_RESULTS_BYTES = 256 << 20
AT_ONCE = 8
"""Photographs handed out together; between such parts an intake can be stopped."""

PICTURE_SUFFIXES = frozenset(
    {".jpg", ".jpeg", ".png", ".tif", ".tiff", ".webp", ".avif", ".heic", ".heif", ".bmp", ".gif"}
)


@dataclass(frozen=True, slots=True)
class SwatchResult:
    """One photograph of an intake.

    Parameters
    ----------
    file
        Its name in the folder.
    checksum
        CRC-32 of the file, so that a picture put in its place is measured again.
    colours, texture, finish
        As of ``Swatch``; no colours when it could not be measured.
    uncertainty_delta_e
        None when nobody can say.
    problem
        Why it could not be measured; empty when it could.
    """

    file: str
    checksum: str
    colours: tuple[SampleColour, ...] = ()
    texture: Texture | None = None
    finish: Finish | None = None
    uncertainty_delta_e: float | None = None
    problem: str = ""


def measure_swatch_folder(
    folder: Path,
    results: Path,
    *,
    mm_per_px: float | None = None,
    backend: str = "loky",
    jobs: int = -1,
    tell: Callable[[int, int], None] | None = None,
) -> tuple[SwatchResult, ...]:
    """Return the measures of every photograph in a folder, by name.

    Parameters
    ----------
    folder
        Holds one photograph a swatch.
    results
        A file that keeps the results, one JSON object a line; what it holds is not done again.
    mm_per_px
        Scale of the photographs, if it is known and the same for all.
    backend, jobs
        joblib's: ``loky`` (processes), ``threading`` or ``dask``; how many at once, -1 for all
        processors.
    tell
        Called every few photographs with how many are done and how many there are; whatever it
        raises stops the intake.

    Raises
    ------
    CatalogueError
        When the folder or the results cannot be read.
    OutputError
        When the results cannot be written.
    """
    pictures = _pictures(folder)
    done = {
        (result.file, result.checksum, scale): result for result, scale in read_results(results)
    }
    found, waiting = list[SwatchResult](), list[tuple[Path, str]]()
    for path in pictures:
        checksum = checksum_of(path)
        kept = done.get((path.name, checksum, mm_per_px))
        if kept is not None:
            found.append(kept)
        else:
            waiting.append((path, checksum))
    for start in range(0, len(waiting), AT_ONCE):
        if tell:
            tell(len(found), len(pictures))
        for result in _measured(waiting[start : start + AT_ONCE], mm_per_px, backend, jobs):
            _write_down(results, result, mm_per_px)
            found.append(result)
    if tell:
        tell(len(found), len(pictures))
    return tuple(sorted(found, key=lambda result: result.file))


def samples_from_intake(
    results: Sequence[SwatchResult],
    kind: Kind,
    *,
    mm_per_px: float | None = None,
    in_catalogue: bool = True,
) -> tuple[Sample, ...]:
    """Return measured swatches as new samples, their codes being the files' names.

    Those that could not be measured, or whose name is no code, are left out.

    Parameters
    ----------
    results
        Of an intake.
    kind
        Of all of them.
    mm_per_px
        Scale of the photographs.
    in_catalogue
        Whether the photographs are to be the catalogue's pictures of the surfaces; False keeps
        the measures alone.
    """
    return tuple(
        Sample(
            code=Path(result.file).stem,
            name=Path(result.file).stem,
            kind=kind,
            colours=result.colours,
            finish=result.finish,
            texture=result.texture,
            texture_file=result.file if in_catalogue else "",
            texture_mm_per_px=mm_per_px if in_catalogue else None,
            colour_origin=photograph_origin(result.uncertainty_delta_e),
        )
        for result in results
        if not result.problem and not why_not_a_code(Path(result.file).stem)
    )


def with_measured_swatch(sample: Sample, result: SwatchResult) -> Sample:
    """Return a sample with the colours and texture of its photographed swatch."""
    origin = photograph_origin(result.uncertainty_delta_e)
    return replace(sample, colours=result.colours, texture=result.texture, colour_origin=origin)


def measure_swatch_file(path: Path, checksum: str, mm_per_px: float | None) -> SwatchResult:
    """Return the measures of one photograph; one that cannot be read gives its problem instead."""
    try:
        swatch = measure_swatch(read_picture_file(path, mm_per_px=mm_per_px))
    except FramingPaletteError as error:
        return SwatchResult(path.name, checksum, problem=str(error))
    return SwatchResult(
        file=path.name,
        checksum=checksum,
        colours=swatch.sample_colours(),
        texture=swatch.texture,
        finish=swatch.finish.finish,
        uncertainty_delta_e=swatch.uncertainty_delta_e,
    )


def read_results(path: Path) -> Iterator[tuple[SwatchResult, float | None]]:
    """Return what an earlier intake has written down, with the scale it was measured at.

    A last line that was cut short is passed over.
    """
    if not path.exists():
        return
    try:
        lines = read_whole(path, LARGEST_RESULTS_BYTES).decode("utf-8").splitlines()
    except (OSError, UnicodeDecodeError) as error:
        raise CatalogueError(
            path, problem="cannot be read", todo="name another file for the results"
        ) from error
    for line in lines:
        with suppress(ValueError, LookupError, TypeError, ArithmeticError, RecursionError):
            record = json.loads(line)
            yield _result(record), record["mm_per_px"]


def _pictures(folder: Path) -> list[Path]:
    try:
        names = sorted(folder.iterdir())
    except OSError as error:
        raise CatalogueError(
            folder, problem=f"cannot be read ({error.strerror})", todo="name a folder of pictures"
        ) from error
    return [path for path in names if path.suffix.lower() in PICTURE_SUFFIXES and path.is_file()]


def _measured(
    waiting: Sequence[tuple[Path, str]], mm_per_px: float | None, backend: str, jobs: int
) -> Iterator[SwatchResult]:
    """Return results as they come, in whatever order."""
    if not waiting:
        return
    from joblib import Parallel, delayed, parallel_config

    # The configuration, unlike Parallel itself, knows where to find the backend of a cluster.
    with parallel_config(backend=backend, n_jobs=jobs):
        workers = Parallel(return_as="generator_unordered")
        yield from workers(delayed(measure_swatch_file)(*one, mm_per_px) for one in waiting)


def _write_down(path: Path, result: SwatchResult, mm_per_px: float | None) -> None:
    try:
        with path.open("a", encoding="utf-8") as file:
            file.write(json.dumps({**_record(result), "mm_per_px": mm_per_px}) + "\n")
    except OSError as error:
        raise OutputError(
            path, problem=f"cannot be written ({error.strerror})", todo="choose another folder"
        ) from error


def _record(result: SwatchResult) -> dict[str, Any]:
    numbers = [] if result.texture is None else texture_numbers(result.texture)
    return {
        "file": result.file,
        "checksum": result.checksum,
        "colours": [record_of_colour(colour) for colour in result.colours],
        "texture": [None if x != x else x for x in numbers],  # noqa: PLR0124 (nan)
        "finish": result.finish,
        "uncertainty_delta_e": result.uncertainty_delta_e,
        "problem": result.problem,
    }


def _result(record: dict[str, Any]) -> SwatchResult:
    numbers = [float("nan") if x is None else x for x in record["texture"]]
    return SwatchResult(
        file=record["file"],
        checksum=record["checksum"],
        colours=tuple(colour_of_record(colour) for colour in record["colours"]),
        texture=texture_from_numbers(numbers) if numbers else None,
        finish=None if record["finish"] is None else Finish(record["finish"]),
        uncertainty_delta_e=record["uncertainty_delta_e"],
        problem=record["problem"],
    )
