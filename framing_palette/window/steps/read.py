"""Read: regions are drawn on the picture, and the shelf says what is in each of them."""

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from framing_palette.picture import PaletteColour, RegionFinding, Role
from framing_palette.picture.places import colour_at
from framing_palette.window import drawing
from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.drawing_layer import DrawingLayer
from framing_palette.window.canvas.drawing_tools import DrawingTools
from framing_palette.window.canvas.lives import LivesLayer
from framing_palette.window.canvas.pins import PinLayer
from framing_palette.window.canvas.regions import RegionLayer
from framing_palette.window.canvas.scale import ScaleLayer
from framing_palette.window.canvas.stage import Stage
from framing_palette.window.controls import words
from framing_palette.window.region_card import RegionCard
from framing_palette.window.session import Session
from framing_palette.window.steps.step import Counter, Standing, Step
from framing_palette.window.tokens import MARGIN, WIDE_MARGIN


class ReadStep(Step):
    """What is in the picture, and where the eye should rest."""

    key = "read"
    icon = "read"

    def __init__(self, counter: Counter) -> None:
        super().__init__(counter)
        self.canvas: Canvas | None = None
        self.drawing: DrawingLayer | None = None
        self.shelf_widget: ReadShelf | None = None
        for signal in (self.session.regions_changed, self.session.findings_changed):
            signal.connect(self.standing_changed)

    def stage(self) -> QWidget:
        """Make the picture with its regions and the tools to draw them."""
        canvas = Canvas(self.session, self.counter.outlook)
        pins = PinLayer(self.session)
        self.drawing = DrawingLayer(self.session, self.counter.errands)
        for layer in (
            LivesLayer(self.session),
            ScaleLayer(self.session),
            RegionLayer(self.session),
            pins,
            self.drawing,
        ):
            canvas.add_layer(layer)
        canvas.pointed.connect(self._point_at)
        self.canvas = canvas
        stage = Stage(self.session, canvas, DrawingTools(self.session, self.drawing, pins))
        stage.picture_wanted.connect(self.picture_wanted)
        stage.picture_dropped.connect(self.picture_dropped)
        return stage

    def shelf(self) -> QWidget:
        """Make the cards of the regions."""
        self.shelf_widget = ReadShelf(self.session)
        return self.shelf_widget

    def standing(self) -> Standing:
        """Done once a place for the eye was drawn."""
        roles = {region.role for region in self.session.desk.regions}
        if Role.FOCUS in roles:
            return Standing.DONE
        return Standing.OPEN

    def standing_words(self) -> str:
        """Tell what is drawn or missing."""
        count = len(self.session.desk.regions)
        if self.standing() is Standing.DONE:
            return self.tr("{count} drawn").format(count=count)
        return self.tr("where the eye should rest is a guess")

    def _point_at(self, x: float, y: float) -> None:
        """Light the colour that was clicked on, or put the light out again."""
        picture = self.session.picture
        if picture is not None:
            is_lit = self.session.lit_colour is not None
            self.session.assign("lit_colour", None if is_lit else colour_at(picture, x, y))


class ReadShelf(QWidget):
    """The cards: drawn regions first, then the rim and the whole picture."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.cards: list[RegionCard] = []
        self._hint = words(size="small", quiet=True, wrap=True)
        self._column = QVBoxLayout()
        self._column.setSpacing(0)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._lay_out()
        for signal in (session.regions_changed, session.chosen_region_changed):
            signal.connect(self.rebuild)
        session.findings_changed.connect(self._take_findings)
        session.live_finding_changed.connect(self._take_live)
        self.rebuild()

    def rebuild(self) -> None:
        """Make the cards anew, because a region came, went or was chosen."""
        while (item := self._column.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.cards = []
        findings = self._session.findings
        for number, region in enumerate(self._session.desk.regions):
            self._add_drawn(number, region.name, region.role)
        if findings is not None:
            made = [found for found in findings.regions if self._is_made(found)]
            for found in made:
                self._add(RegionCard(made_title(found), found.role, is_open=False))
        self._column.addStretch(1)
        self._take_findings()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, MARGIN, 0, 0)
        column.setSpacing(4)
        for label in (words(self.tr("What is in it"), size="heading"), self._hint):
            label.setContentsMargins(WIDE_MARGIN, 0, WIDE_MARGIN, 0)
            column.addWidget(label)
        column.addSpacing(8)
        inside = QWidget()
        inside.setLayout(self._column)
        area = QScrollArea()
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidgetResizable(True)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setWidget(inside)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        column.addWidget(area, 1)

    def _add_drawn(self, number: int, name: str, role: Role) -> None:
        session = self._session
        card = RegionCard(name, role, is_open=number == session.chosen_region)
        card.chosen.connect(lambda: session.assign("chosen_region", number))
        card.renamed.connect(lambda text: self._rename(number, text))
        card.cast.connect(lambda role: drawing.set_role(session, number, role))
        card.deleted.connect(lambda: drawing.delete_region(session, number))
        self._add(card)

    def _add(self, card: RegionCard) -> None:
        card.lit.connect(self._light)
        self._column.addWidget(card)
        self.cards.append(card)

    def _rename(self, number: int, text: str) -> None:
        if number < len(self._session.desk.regions):
            drawing.rename_region(self._session, number, text)

    def _is_made(self, found: RegionFinding) -> bool:
        names = {region.name for region in self._session.desk.regions}
        return found.name not in names or found.role in (Role.RIM, Role.WHOLE)

    def _take_findings(self) -> None:
        findings = self._session.findings
        self._hint.setText(self._hint_words())
        if findings is None:
            return
        by_name = {found.name: found for found in findings.regions}
        drawn = [by_name.get(region.name) for region in self._session.desk.regions]
        made = [found for found in findings.regions if self._is_made(found)]
        if len(drawn) + len(made) != len(self.cards):
            self.rebuild()
            return
        for card, found in zip(self.cards, [*drawn, *made], strict=True):
            if found is not None:
                card.show_finding(found)

    def _take_live(self) -> None:
        live, number = self._session.live_finding, self._session.chosen_region
        if live is not None and 0 <= number < len(self.cards):
            self.cards[number].show_finding(live)

    def _hint_words(self) -> str:
        if self._session.picture is None:
            return self.tr("Bring a picture first.")
        if not self._session.desk.regions:
            return self.tr(
                "Draw where the eye should rest. Until then that place is a guess, and the shelf "
                "judges by it."
            )
        return self.tr("Point at a colour to see where it lives in the picture.")

    def _light(self, colour: PaletteColour | None) -> None:
        self._session.assign("lit_colour", colour.lab if colour is not None else None)


def made_title(found: RegionFinding) -> str:
    """Return what a region that the program made is called."""
    tell = QCoreApplication.translate
    if found.role is Role.RIM:
        return tell("ReadShelf", "Rim")
    if found.role is Role.WHOLE:
        return tell("ReadShelf", "Whole picture")
    return tell("ReadShelf", "Focus, a guess")
