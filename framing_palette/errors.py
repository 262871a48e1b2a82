"""What can go wrong, each told in one sentence to the person at the counter.

Every leaf takes facts (file, row, field, what was found, what to do) and builds its own sentence.
Bad input ends the command line with exit code 2; anything that is not a FramingPaletteError is a
defect and ends it with 1.
"""

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path
from typing import Any


class FramingPaletteError(Exception):
    """The root of everything that the program says is wrong with its input."""


# --- arrays -----------------------------------------------------------------------------------


class ShapeError(FramingPaletteError, ValueError):
    """An array does not have the shape that its colour space asks for."""

    def __init__(self, *, name: str, wanted: str, got: tuple[int, ...]) -> None:
        super().__init__(f"{name} must have shape {wanted}, got {got}.")


# --- files ------------------------------------------------------------------------------------


class FileProblemError(FramingPaletteError, ValueError):
    """A file cannot be used as it is.

    Parameters
    ----------
    path
        The file or folder.
    problem
        What is wrong with it, as the end of the sentence "FILE ...", without a full stop.
    todo
        What to do about it, an imperative sentence without a full stop.
    """

    def __init__(self, path: Path | str, *, problem: str, todo: str) -> None:
        self.path = Path(path)
        self.problem = problem
        self.todo = todo
        super().__init__(f"{path} {problem}: {todo}.")


class PictureFileError(FileProblemError):
    """A picture file is missing, broken, too large or not a picture."""


class RegionsFileError(FileProblemError):
    """A regions file is not JSON, or one of its regions cannot be used."""


class CornersFileError(FileProblemError):
    """A corners file is not of the form."""


class CatalogueError(FileProblemError):
    """A catalogue folder cannot be used at all (bad cells are reported, not raised)."""


class ExchangeFileError(FileProblemError):
    """A file of measurements or colours cannot be imported; the problem names the place."""


class UnknownLightError(ExchangeFileError):
    """A file's colours hold for a light that it does not tell, so nobody can say what they are."""


class LibraryError(FileProblemError):
    """The shop's library cannot be opened, read or written."""


class DesignFileError(FileProblemError):
    """A DESIGN.toml cannot be read; the problem names the field."""


class PriceBookError(FileProblemError):
    """A price book cannot be read; the problem names the field."""


class VocabularyError(FileProblemError):
    """A vocabulary file cannot be read; the problem names the word."""


class ShopFileError(FileProblemError):
    """A file with the shop's details cannot be read; the problem names the field."""


class TasteFileError(FileProblemError):
    """A file with a shop's choices cannot be read."""


class JobFileError(FileProblemError):
    """A saved job cannot be opened."""


class OutputError(FileProblemError):
    """A file or folder cannot be written."""


class JobStoreError(FileProblemError):
    """The shop's jobs cannot be opened, read or written; nothing that was saved is lost."""


class JobStoreDamagedError(JobStoreError):
    """The file of the shop's jobs is damaged or gone; it is left as it is until somebody decides.

    Parameters
    ----------
    path, problem
        The file, and what is wrong with it.
    backup, backup_at
        The newest whole backup and when it was taken, None when there is none.
    """

    def __init__(
        self, path: Path, *, problem: str, backup: Path | None, backup_at: datetime | None = None
    ) -> None:
        self.backup, self.backup_at = backup, backup_at
        todo = (
            "no whole backup is there, so keep a copy of the file and begin with an empty one"
            if backup is None
            else f"restore the newest whole backup, {backup.name}; the file is kept beside it"
        )
        super().__init__(path, problem=problem, todo=todo)


class ChartError(FramingPaletteError, ValueError):
    """A colour chart or grey card in the photograph cannot be used."""

    def __init__(self, problem: str, *, todo: str) -> None:
        super().__init__(f"{problem[:1].upper()}{problem[1:]}: {todo}.")


class CameraError(FramingPaletteError, OSError):
    """The camera above the table, or a video in its place, gives no picture that can be used."""

    def __init__(self, name: str, *, problem: str, todo: str) -> None:
        super().__init__(f"{name[:1].upper()}{name[1:]} {problem}: {todo}.")


class LightError(FramingPaletteError, ValueError):
    """What should tell how the light falls off across a photograph cannot tell it."""

    def __init__(self, problem: str, *, todo: str) -> None:
        self.problem, self.todo = problem, todo
        super().__init__(f"{problem[:1].upper()}{problem[1:]}: {todo}.")


class CornersError(FramingPaletteError, ValueError):
    """The marked corners cannot be those of a picture."""

    def __init__(self, problem: str, *, todo: str) -> None:
        super().__init__(f"{problem[:1].upper()}{problem[1:]}: {todo}.")


# --- values -----------------------------------------------------------------------------------


class LengthError(FramingPaletteError, ValueError):
    """A length cannot be read; the accepted forms are named."""

    def __init__(self, text: str, *, field: str | None = None) -> None:
        where = f"{field}: " if field else ""
        super().__init__(
            f'{where}"{text}" is not a length; write it like 16 3/8, 16-3/8, 16.375, '
            '16 3/8", 1\' 4 3/8", 41.6 cm or 416 mm.',
        )


class FieldError(FramingPaletteError, ValueError):
    """One field of a form, a file or a call has a value that cannot be used."""

    def __init__(self, field: str, *, got: object, wanted: str) -> None:
        self.field, self.got, self.wanted = field, got, wanted
        super().__init__(f"{field} is {got}; {wanted}.")


class UnknownSampleError(FramingPaletteError, KeyError):
    """A code is not in the catalogue."""

    def __init__(self, code: str, *, near: Sequence[str] = ()) -> None:
        self.code = code
        self.near = tuple(near)
        hint = f"; the nearest codes are {', '.join(near)}" if near else ""
        self._sentence = f"There is no sample {code} in the catalogue{hint}."
        super().__init__(self._sentence)

    def __str__(self) -> str:
        return self._sentence


class UnknownFactError(FramingPaletteError, ValueError):
    """A calculation needs a fact that the catalogue leaves empty."""

    def __init__(self, code: str, *, fact: str, needed_for: str) -> None:
        super().__init__(
            f"{code} has no {fact}, which is needed for {needed_for}: add it to the catalogue.",
        )


class StackTooDeepError(FramingPaletteError, ValueError):
    """The stack and the room behind it are deeper than the rabbet.

    Parameters
    ----------
    stack, clearance, rabbet, shortfall
        Lengths in words.
    fitting
        Codes of mouldings in the catalogue that would hold it.
    """

    def __init__(
        self, *, stack: str, clearance: str, rabbet: str, shortfall: str, fitting: Sequence[str]
    ) -> None:
        self.fitting = tuple(fitting)
        codes = f"take a moulding that fits ({', '.join(fitting)})"
        super().__init__(
            f"The stack is {stack} deep and needs {clearance} behind it, but the rabbet is "
            f"{rabbet}: {shortfall} are missing; {codes if fitting else 'take a deeper moulding'}, "
            f"build up the back of the frame by {shortfall}, or fix the stack with offset clips "
            "and allow for it standing out behind the frame.",
        )


class MeasurementError(FramingPaletteError, ValueError):
    """The two measurements of the art do not settle its size; nothing may be cut."""


class MeasurementsDisagreeError(MeasurementError):
    """Two independent measurements differ by more than the tolerance."""

    def __init__(self, side: str, *, first: str, second: str, apart: str, tolerance: str) -> None:
        self.side = side
        super().__init__(
            f"The {side} was measured as {first} and as {second}, {apart} apart where at most "
            f"{tolerance} is allowed: measure the {side} again before anything is cut.",
        )


class MeasurementsMissingError(MeasurementError):
    """A ticket is asked for before every piece of art has been measured twice."""

    def __init__(self, readings: int, *, pieces: int = 1) -> None:
        what = "the art" if pieces == 1 else f"each of the {pieces} pieces of art"
        super().__init__(
            f"There are {readings} measurements where {2 * pieces} are needed: measure {what} "
            "twice, independently, before a ticket is printed.",
        )


class NotAsMeasuredError(MeasurementError):
    """A design is for another size of art than was measured."""

    def __init__(self, window: int | None = None) -> None:
        which = "the art" if window is None else f"window {window}"
        super().__init__(
            f"The design is not for {which} as it was measured: put the measured size into the "
            "design before a ticket is printed.",
        )


class NotAgreedError(FramingPaletteError, ValueError):
    """A paper is asked for before the job has the design that it needs."""

    def __init__(self, number: str, *, wanted: str) -> None:
        super().__init__(f"Job {number} has no {wanted} yet: choose one before printing.")


class PriceMissingError(FramingPaletteError, ValueError):
    """A price is asked for something that neither the price book nor the catalogue prices."""

    def __init__(self, what: str, *, missing: str, todo: str) -> None:
        super().__init__(f"{what} has no {missing}; {todo}.")


class CuttingError(FramingPaletteError, ValueError):
    """A piece does not fit the stock it is to be cut from."""

    def __init__(self, piece: str, *, needs: str, stock: str, todo: str) -> None:
        super().__init__(f"{piece} needs {needs}, but {stock}; {todo}.")


class SampleChangedError(FramingPaletteError, RuntimeError):
    """Someone else changed a sample since it was shown; nothing was overwritten."""

    def __init__(self, code: str, *, seen: int, found: int) -> None:
        self.code = code
        super().__init__(
            f"{code} was changed at another counter (you saw version {seen}, it is now {found}): "
            "look at it again and repeat your change.",
        )


class JobChangedElsewhereError(FramingPaletteError, RuntimeError):
    """Another counter saved the job since it was opened here; nothing was overwritten.

    Parameters
    ----------
    number
        The job's.
    seen, found
        The version that was opened here, and the one that is saved now.
    mine, theirs
        The job as it was to be saved, and as it is saved now, for merging.
    """

    def __init__(self, number: str, *, seen: int, found: int, mine: Any, theirs: Any) -> None:
        self.number = number
        self.seen, self.found = seen, found
        self.mine, self.theirs = mine, theirs
        super().__init__(
            f"Job {number} was changed at another counter (you have version {seen}, it is now "
            f"{found}): look at both and save again.",
        )


class JobNumberTakenError(FramingPaletteError, ValueError):
    """A new job has the number of another one."""

    def __init__(self, number: str) -> None:
        self.number = number
        super().__init__(f"There is another job {number}: give the new one a number of its own.")


class UnknownJobError(FramingPaletteError, KeyError):
    """No job has this number; it may have been erased."""

    def __init__(self, number: str) -> None:
        self.number = number
        self._sentence = f"There is no job {number} in this shop: look for it by client or date."
        super().__init__(self._sentence)

    def __str__(self) -> str:
        return self._sentence


class ImportPlanError(FramingPaletteError, RuntimeError):
    """An import no longer fits the library that it was previewed against, or cannot be undone."""

    def __init__(self, problem: str, *, todo: str) -> None:
        super().__init__(f"{problem}: {todo}.")


# --- preview ----------------------------------------------------------------------------------


class RenderingStoppedError(FramingPaletteError, RuntimeError):
    """Somebody asked a rendering to stop; nothing is wrong with the input."""

    def __init__(self) -> None:
        super().__init__("The rendering was stopped before it was done.")
