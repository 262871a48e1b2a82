"""What every step of the job is to the frame."""

from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from framing_palette.window.canvas.outlook import Outlook
from framing_palette.window.errands import Errands
from framing_palette.window.languages import QT_TRANSLATE_NOOP
from framing_palette.window.session import Session
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.taste_book import TasteBook


@dataclass(frozen=True, slots=True)
class Counter:
    """What all steps share: the session, who runs its errands, where it looks, swatches, taste."""

    session: Session
    errands: Errands
    outlook: Outlook
    swatches: SwatchBook
    taste: TasteBook


_TITLES = {
    "intake": QT_TRANSLATE_NOOP("Step", "Intake"),
    "read": QT_TRANSLATE_NOOP("Step", "Read"),
    "choose": QT_TRANSLATE_NOOP("Step", "Choose"),
    "build": QT_TRANSLATE_NOOP("Step", "Build"),
    "measure": QT_TRANSLATE_NOOP("Step", "Measure"),
    "agree": QT_TRANSLATE_NOOP("Step", "Agree"),
}


class Standing(StrEnum):
    """How a step stands."""

    DONE = "done"
    OPEN = "open"
    ATTENTION = "attention"


class Step(QObject):
    """One stop of the job; a subclass gives ``key``, ``icon``, ``title`` and its two parts."""

    standing_changed = Signal()
    picture_wanted = Signal()
    """The step wants a photograph to be chosen."""
    picture_dropped = Signal(object)
    """A photograph's path was dropped on the step."""

    key = ""
    icon = ""
    searches = False
    """Whether the search field looks through this step's shelf."""

    def __init__(self, counter: Counter) -> None:
        super().__init__()
        self.counter = counter
        self.session = counter.session

    @property
    def title(self) -> str:
        """The word under the icon."""
        return self.tr(_TITLES[self.key]) if self.key in _TITLES else self.key.capitalize()

    def stage(self) -> QWidget:
        """Make what lies in the middle; asked for once."""
        raise TypeError(f"{type(self).__name__} has no stage")

    def shelf(self) -> QWidget:
        """Make what lies on the shelf; asked for once."""
        raise TypeError(f"{type(self).__name__} has no shelf")

    def standing(self) -> Standing:
        """Tell how the step stands."""
        return Standing.OPEN

    def standing_words(self) -> str:
        """Tell in a few words what is done or missing."""
        return ""

    def arrive(self) -> None:
        """Do what is due when the designer comes to this step."""

    def finish(self) -> None:
        """Do what still waits, at the end of the program."""

    def search(self, text: str) -> None:
        """Look for something on this step's shelf."""
