"""Choose: the shelf lists samples best first; one is laid round the picture or slid over it."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from framing_palette.colour import plain_name
from framing_palette.picture.places import colour_at
from framing_palette.window.canvas.border import BorderLayer
from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.scale import ScaleLayer
from framing_palette.window.canvas.stage import Stage
from framing_palette.window.canvas.strip_tools import StripTools
from framing_palette.window.canvas.strips import StripLayer
from framing_palette.window.choose_shelf import ChooseShelf
from framing_palette.window.compare import CompareBoard
from framing_palette.window.controls import Pages
from framing_palette.window.session import Probe
from framing_palette.window.steps.step import Counter, Standing, Step


class ChooseStep(Step):
    """The shortlist beside the picture."""

    key = "choose"
    icon = "choose"
    searches = True

    def __init__(self, counter: Counter) -> None:
        super().__init__(counter)
        self.shelf_widget: ChooseShelf | None = None
        self.canvas: Canvas | None = None
        for signal in (self.session.ranked_changed, self.session.kept_changed):
            signal.connect(self.standing_changed)

    def stage(self) -> QWidget:
        """Make the picture with what is laid on it."""
        canvas = Canvas(self.session, self.counter.outlook)
        canvas.add_layer(BorderLayer(self.session, self.counter.swatches))
        canvas.add_layer(ScaleLayer(self.session))
        canvas.add_layer(StripLayer(self.session, self.counter.swatches))
        canvas.pointed.connect(self._probe)
        self.canvas = canvas
        one = Stage(self.session, canvas, StripTools(self.session))
        both = Pages()
        both.addWidget(one)
        self.session.comparing_changed.connect(lambda: self._show_side_by_side(both))
        one.picture_wanted.connect(self.picture_wanted)
        one.picture_dropped.connect(self.picture_dropped)
        self._show_side_by_side(both)
        return both

    def _show_side_by_side(self, both: Pages) -> None:
        if self.session.comparing and both.count() == 1:
            counter = self.counter
            board = CompareBoard(self.session, counter.swatches, counter.outlook)
            board.closed.connect(lambda: self.session.show_side_by_side(shown=False))
            both.addWidget(board)
        both.setCurrentIndex(int(self.session.comparing))

    def _probe(self, x: float, y: float) -> None:
        """Look on the shelf for what is near the colour that was clicked on."""
        picture = self.session.picture
        if picture is not None:
            lab = colour_at(picture, x, y)
            self.session.assign("probe", Probe(lab, plain_name(lab)))

    def shelf(self) -> QWidget:
        """Make the shortlist."""
        self.shelf_widget = ChooseShelf(self.session, self.counter.errands, self.counter.swatches)
        self.shelf_widget.slid.connect(self._take_strip_in_hand)
        return self.shelf_widget

    def standing(self) -> Standing:
        """Done once something is kept."""
        return Standing.DONE if self.session.desk.kept else Standing.OPEN

    def standing_words(self) -> str:
        """Tell what is kept or missing."""
        kept = len(self.session.desk.kept)
        return f"{kept} kept" if kept else "nothing kept yet"

    def _take_strip_in_hand(self) -> None:
        if self.canvas is not None:
            self.session.show_side_by_side(shown=False)
            self.canvas.setFocus(Qt.FocusReason.OtherFocusReason)

    def search(self, text: str) -> None:
        """Look for samples by name, code or family."""
        if self.shelf_widget is not None:
            self.shelf_widget.model.set_sought(text)
