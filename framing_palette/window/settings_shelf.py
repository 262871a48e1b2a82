"""The settings, on the shelf beside the picture, so that what they change is seen at once."""

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QSlider

from framing_palette.errors import FramingPaletteError
from framing_palette.window.controls import words
from framing_palette.window.forms import Choice, FormShelf, LengthField
from framing_palette.window.job_book.book import JobBook
from framing_palette.window.job_book.shop_settings import PlaceSetting, ProblemReport
from framing_palette.window.languages import LANGUAGES
from framing_palette.window.languages import told as in_language
from framing_palette.window.preferences import DARKEST_SURROUND, LIGHTEST_SURROUND
from framing_palette.window.screen_check import ScreenCheck
from framing_palette.window.session import Session


class SettingsShelf(FormShelf):
    """Changes the session's preferences, one value at a time."""

    def __init__(self, session: Session, book: JobBook) -> None:
        super().__init__(self.tr("Settings"), self.tr("They are kept for this shop's computer."))
        self._session = session
        self.choices: dict[str, Choice] = {}
        self.lengths: dict[str, LengthField] = {}
        self.surround = QSlider(Qt.Orientation.Horizontal)
        self._add_looking()
        self._add_measures()
        self._add_taste()
        self._add_client()
        self._add_screen()
        self._add_jobs(book)
        self.end()
        session.preferences_changed.connect(self._show_all)
        self._show_all()

    def show_screen_check(self) -> None:
        """Bring the check of the screen into sight."""
        self.reveal(self.screen_check)

    def showEvent(self, event: QShowEvent) -> None:
        """Look anew at what the system tells of the screen."""
        super().showEvent(event)
        self.screen_check.show_profile()

    def _add_looking(self) -> None:
        self.section(self.tr("Looking"))
        self.surround.setRange(DARKEST_SURROUND, LIGHTEST_SURROUND)
        self.surround.setPageStep(5)
        self.surround.setAccessibleName(self.tr("Lightness of the surround"))
        self.surround.valueChanged.connect(lambda value: self._change("surround", value))
        self.row(
            self.tr("Surround"),
            self.surround,
            self.tr(
                "How light the grey round the picture is, L* 20 to 95. Colours are judged "
                "against it; 60 is the usual one."
            ),
        )
        self._choice(
            "theme",
            self.tr("Theme"),
            (
                ("system", self.tr("As the desktop")),
                ("light", self.tr("Light")),
                ("dark", self.tr("Dark")),
            ),
        )
        self._choice(
            "language",
            self.tr("Language / Sprache"),
            (("system", self.tr("As the computer")), *LANGUAGES.items()),
            self.tr("Takes hold when the window opens next."),
        )
        self._choice(
            "scale_percent",
            self.tr("Size of the interface"),
            tuple((percent, f"{percent} %") for percent in (100, 125, 150, 175, 200)),
            self.tr("Takes hold when the window opens next."),
        )
        self._choice(
            "reduced_motion",
            self.tr("Motion"),
            ((False, self.tr("Gentle cross-fades")), (True, self.tr("None"))),
        )

    def _add_measures(self) -> None:
        self.section(self.tr("Measures"))
        self._choice(
            "unit",
            self.tr("Unit"),
            (
                ("in", self.tr("Inches")),
                ("mm", self.tr("Millimetres")),
                ("cm", self.tr("Centimetres")),
            ),
        )
        self._choice(
            "denominator",
            self.tr("Fractions of an inch down to"),
            ((16, "1/16"), (32, "1/32"), (64, "1/64")),
            self.tr("Only how lengths are shown: inside they are exact."),
        )
        self._length(
            "mat_border",
            self.tr("Mat laid round the picture"),
            self.tr("How wide a mat is shown while you choose. The design sets the true border."),
        )
        self._length(
            "tolerance",
            self.tr("Two measurements may differ by"),
            self.tr("More than this stops the ticket and says which side."),
        )

    def _add_taste(self) -> None:
        self.section(self.tr("Taste"))
        self._choice(
            "taste_on",
            self.tr("The shortlist is ordered by"),
            ((False, self.tr("House rule")), (True, self.tr("This shop's taste"))),
            self.tr(
                "What the shop preferred, side by side, in questions and by keeping and sending "
                "away, can move samples within their verdict. What it rests on stands on the taste "
                "card in Choose (T)."
            ),
        )

    def _add_client(self) -> None:
        self.section(self.tr("Beside the client"))
        self._choice(
            "show_numbers",
            self.tr("Numbers on the picture"),
            ((True, self.tr("Shown")), (False, self.tr("Hidden"))),
            self.tr("The tag of a strip says its word with or without ΔE₀₀."),
        )

    def _add_screen(self) -> None:
        self.section(self.tr("This screen"))
        self.row(
            "",
            words(
                self.tr(
                    "A screen shows colour only approximately. Confirm every choice with the "
                    "sample itself under good light. Sliding samples here first spares "
                    "delicate art."
                ),
                size="small",
                wrap=True,
            ),
        )
        self.screen_check = ScreenCheck()
        self.row(self.tr("A simple check"), self.screen_check)

    def _add_jobs(self, book: JobBook) -> None:
        self.section(self.tr("The shop's jobs"))
        self.place = PlaceSetting(book)
        self.row(
            self.tr("Where they are kept"),
            self.place,
            self.tr(
                "A file of this computer, or the address of a PostgreSQL server that several "
                "counters share, such as postgresql+psycopg://user@host/shop; they share a folder "
                "of photographs too. Leave the password to the database's own password file."
            ),
        )
        self.section(self.tr("When something goes wrong"))
        self.report = ProblemReport(book)
        self.row(
            "",
            self.report,
            self.tr(
                "Writes one file with versions, the health of this installation and the end of "
                "the log; no job, picture or name is in it. Nothing is sent by the program."
            ),
        )

    def _choice(
        self,
        name: str,
        title: str,
        values: tuple[tuple[object, str], ...],
        told: str = "",
    ) -> None:
        choice = Choice(title, values)
        choice.picked.connect(lambda value: self._change(name, value))
        self.choices[name] = choice
        self.row(title, choice, told)

    def _length(self, name: str, title: str, told: str) -> None:
        field = LengthField(title)
        field.taken.connect(lambda length: self._change(name, length))
        self.lengths[name] = field
        self.row(title, field, told)

    def _change(self, name: str, value: Any) -> None:
        try:
            changed = self._session.preferences.changed(name, value)
        except FramingPaletteError as error:
            if name in self.lengths:
                self.lengths[name].say(in_language(str(error)))
            return
        if changed != self._session.preferences:
            self._session.assign("preferences", changed)

    def _show_all(self) -> None:
        preferences = self._session.preferences
        self.surround.setValue(preferences.surround)
        for name, choice in self.choices.items():
            choice.show_value(getattr(preferences, name))
        for name, field in self.lengths.items():
            field.show_value(getattr(preferences, name), preferences.unit, preferences.denominator)
