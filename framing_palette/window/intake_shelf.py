"""The shelf of Intake: how far the colours can be trusted, what would raise it, and the size."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from framing_palette.window.controls import push_button, words
from framing_palette.window.forms import Choice, FormShelf, LengthField
from framing_palette.window.intake_view import Hand
from framing_palette.window.intaking import Intaking, Taken
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.size_fields import SizeFields
from framing_palette.window.tokens import GAP

_MOST_PATCHES = 4


class IntakeShelf(FormShelf):
    """Says and asks; what is picked is told by signals."""

    hand_picked = Signal(object)
    after_picked = Signal(object)
    asked = Signal(str)
    """take in, forget, sheet, leave light, open, camera, or watch."""

    def __init__(self, session: Session, intaking: Intaking) -> None:
        super().__init__(self.tr("Intake"), "")
        self._session = session
        self._intaking = intaking
        self.trust = words(strong=True, wrap=True)
        self.trust_further = words(size="small", wrap=True)
        self.raising = words(size="small", quiet=True, wrap=True)
        self.fault = words(size="small", wrap=True)
        self.notices = words(size="small", wrap=True)
        self.patches = words(size="small", quiet=True, wrap=True)
        self._add_colours()
        self._add_marks()
        self._add_size()
        self._add_photographs()
        self.end()
        for signal in (
            intaking.taken_changed,
            intaking.fault_changed,
            intaking.photograph_changed,
            session.picture_changed,
            session.job_changed,
        ):
            signal.connect(self._tell)
        self._tell()

    def say_watched(self, said: str) -> None:
        """Say which folder is watched, or what arrived."""
        self.watched.setText(said)

    def offer(self, name: str) -> None:
        """Offer a photograph that arrived."""
        self.say_watched(self.tr("New photograph arrived: {name}").format(name=name))
        self.open_button.setText(self.tr("Open {name}").format(name=name))
        self.open_button.setAccessibleName(self.open_button.text())

    def say_camera(self, fault: str, *, is_on: bool) -> None:
        """Say below its button why the camera shows nothing."""
        self.camera.setEnabled(not is_on)
        self._say(self.camera_fault, "" if is_on else fault)

    def _add_colours(self) -> None:
        self.row("", self.trust)
        self.row("", self.trust_further)
        self.row("", self.raising)
        self.row("", self.fault)
        self.row("", self.notices)
        self.row("", self.patches)

    def _add_marks(self) -> None:
        self.section(self.tr("Square up and correct"))
        self.take = push_button(self.tr("Find corners and chart"), rank="first")
        self.forget = push_button(self.tr("Back to the photograph as it is"))
        self.take.clicked.connect(lambda: self.asked.emit("take in"))
        self.forget.clicked.connect(lambda: self.asked.emit("forget"))
        self.hands = Choice(
            self.tr("Mark"),
            (
                (Hand.ART, self.tr("The art")),
                (Hand.CHART, self.tr("The chart")),
                (Hand.GREY, self.tr("A grey")),
            ),
        )
        self.hands.show_value(Hand.ART)
        self.hands.picked.connect(self.hand_picked)
        self.looks = Choice(
            self.tr("Look"), (("corners", self.tr("Corners")), ("after", self.tr("Before, after")))
        )
        self.looks.show_value("corners")
        self.looks.picked.connect(self.after_picked)
        both = QWidget()
        column = QVBoxLayout(both)
        column.setContentsMargins(0, GAP, 0, 0)
        column.addWidget(self.take)
        column.addWidget(self.forget)
        self.row("", both)
        self.row(
            self.tr("Mark by hand"),
            self.hands,
            self.tr("Drag a corner. N takes the next one, the arrows move it by a pixel."),
        )
        self.row(self.tr("Look at"), self.looks)
        self._add_light()

    def _add_light(self) -> None:
        self.sheet = push_button(self.tr("Photograph of a plain sheet"))
        self.leave_light = push_button(self.tr("Leave the light as it is"))
        self.light = words(size="small", quiet=True, wrap=True)
        self.sheet.clicked.connect(lambda: self.asked.emit("sheet"))
        self.leave_light.clicked.connect(lambda: self.asked.emit("leave light"))
        both = QWidget()
        column = QVBoxLayout(both)
        column.setContentsMargins(0, 0, 0, 0)
        for widget in (self.sheet, self.leave_light, self.light):
            column.addWidget(widget)
        self.row(self.tr("Even out the light"), both)

    def _add_size(self) -> None:
        self.section(self.tr("How large the art is"))
        self.size_fields = SizeFields(self._session)
        self.row(
            "",
            self.size_fields,
            self.tr("Leave it empty for not yet. Measure exactly later, twice."),
        )
        self.chart_width = LengthField(self.tr("Width of the chart's patches"))
        self.row(
            self.tr("Or by the chart: width of its patches"),
            self.chart_width,
            self.tr("Where it lies level with the art it gives the size, or checks yours."),
        )

    def _add_photographs(self) -> None:
        self.section(self.tr("Photographs"))
        self.open_button = push_button(self.tr("Open another"))
        self.camera = push_button(self.tr("Camera above the table"))
        self.camera_fault = words(size="small", wrap=True)
        self.camera_fault.hide()
        self.watch = push_button(self.tr("Watch a folder"))
        self.watched = words(
            self.tr("New photographs in a watched folder are offered as they arrive."),
            size="small",
            quiet=True,
            wrap=True,
        )
        self.open_button.clicked.connect(lambda: self.asked.emit("open"))
        self.camera.clicked.connect(lambda: self.asked.emit("camera"))
        self.watch.clicked.connect(lambda: self.asked.emit("watch"))
        both = QWidget()
        column = QVBoxLayout(both)
        column.setContentsMargins(0, 0, 0, 0)
        for widget in (
            self.open_button, self.camera, self.camera_fault, self.watch, self.watched
        ):  # fmt: skip
            column.addWidget(widget)
        self.row("", both)

    def _tell(self) -> None:
        picture, taken = self._session.picture, self._intaking.taken
        there = self._intaking.photograph is not None
        for widget in (self.take, self.hands, self.looks, self.sheet):
            widget.setEnabled(there)
        self._tell_light(taken)
        self._tell_chart_width()
        job = self._session.desk.job
        self.forget.setVisible(job is not None and job.intake is not None)
        told = (
            in_language(picture.colour_trust.words)
            if picture
            else self.tr("Bring the picture first.")
        )
        first, stop, rest = told.partition(". ")
        self.trust.setText(first + stop.strip())
        self._say(self.trust_further, rest)
        self._say(self.raising, self._raising_words())
        self._say(self.fault, in_language(self._intaking.fault))
        self._say(self.notices, in_language("\n".join(picture.notices)) if picture else "")
        worst = sorted(
            picture.colour_trust.patches if picture and taken else (),
            key=lambda patch: -patch.delta_e,
        )
        lines = [
            f"{in_language(patch.name)}: ΔE₀₀ {patch.delta_e:.1f}"
            for patch in worst[:_MOST_PATCHES]
        ]
        told = self.tr("Least sure patches (upper half seen, lower half should be)")
        self._say(self.patches, f"{told}\n" + "\n".join(lines) if lines else "")

    def _tell_light(self, taken: "Taken | None") -> None:
        self.leave_light.setVisible(taken is not None and taken.intake.light.source != "none")
        self._say(
            self.light,
            in_language(taken.intake.light.words)
            if taken is not None
            else self.tr(
                "A white or grey sheet, photographed from the same place under the same light, "
                "tells how the light falls off."
            ),
        )

    def _tell_chart_width(self) -> None:
        preferences = self._session.preferences
        self.chart_width.setEnabled(self._intaking.photograph is not None)
        self.chart_width.show_value(
            self._intaking.how.chart_width, preferences.unit, preferences.denominator
        )

    def _raising_words(self) -> str:
        picture = self._session.picture
        if picture is None:
            return self.tr("Drop, paste or open a photograph of the art.")
        if picture.colour_trust.method == "chart":
            return self.tr("Even light without glare on the chart would raise it further.")
        return self.tr(
            "What would raise it: put the colour chart beside the art, flat and out of glare, and "
            "take the photograph again. Next best is a grey card to pick from."
        )

    def _say(self, label: QLabel, text: str) -> None:
        label.setText(text)
        label.setVisible(bool(text))
