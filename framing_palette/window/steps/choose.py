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
from framing_palette.window.taste_asking import Asking
from framing_palette.window.taste_question import QuestionBoard
from framing_palette.window.taste_shelf import TasteShelf


class ChooseStep(Step):
    """The shortlist beside the picture."""

    key = "choose"
    icon = "choose"
    searches = True

    def __init__(self, counter: Counter) -> None:
        super().__init__(counter)
        self.shelf_widget: ChooseShelf | None = None
        self.canvas: Canvas | None = None
        self.board: CompareBoard | None = None
        self.question_board: QuestionBoard | None = None
        self.taste_shelf: TasteShelf | None = None
        self.asking = Asking(self.session, counter.errands, counter.taste)
        self._pages = Pages()
        self._shelves = Pages()
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
        self._pages.addWidget(one)
        self.session.comparing_changed.connect(self._on_comparing)
        self.asking.changed.connect(self._show_page)
        one.picture_wanted.connect(self.picture_wanted)
        one.picture_dropped.connect(self.picture_dropped)
        self._show_page()
        return self._pages

    def _on_comparing(self) -> None:
        if self.session.comparing:
            self.asking.stop()
        self._show_page()

    def _show_page(self) -> None:
        """Show the question when one is asked, else side by side or one picture."""
        if self.asking.question is not None:
            page: QWidget | None = self._made_question()
        elif self.session.comparing:
            page = self._made_board()
        else:
            page = self._pages.widget(0)
        if page is not None:
            self._pages.setCurrentWidget(page)

    def _made_board(self) -> CompareBoard:
        if self.board is None:
            counter = self.counter
            self.board = CompareBoard(self.session, counter.swatches, counter.outlook)
            self.board.closed.connect(lambda: self.session.show_side_by_side(shown=False))
            self._pages.addWidget(self.board)
        return self.board

    def _made_question(self) -> QuestionBoard:
        if self.question_board is None:
            counter = self.counter
            self.question_board = QuestionBoard(
                self.session, self.asking, counter.swatches, counter.outlook
            )
            self.question_board.closed.connect(self.asking.stop)
            self._pages.addWidget(self.question_board)
        return self.question_board

    def _probe(self, x: float, y: float) -> None:
        """Look on the shelf for what is near the colour that was clicked on."""
        picture = self.session.picture
        if picture is not None:
            lab = colour_at(picture, x, y)
            self.session.assign("probe", Probe(lab, plain_name(lab)))

    def shelf(self) -> QWidget:
        """Make the shortlist."""
        counter = self.counter
        shelf = ChooseShelf(self.session, counter.errands, counter.swatches, counter.taste)
        shelf.slid.connect(self._take_strip_in_hand)
        shelf.asked.connect(self._ask)
        shelf.taste_wanted.connect(self.show_taste)
        self.shelf_widget = shelf
        self._shelves.addWidget(shelf)
        return self._shelves

    def show_taste(self) -> None:
        """Lay the taste card on the shelf."""
        if self.taste_shelf is None:
            self.taste_shelf = TasteShelf(self.session, self.counter.taste)
            self.taste_shelf.left.connect(self._show_samples)
            self.taste_shelf.asked.connect(self._ask)
            self._shelves.addWidget(self.taste_shelf)
        self._shelves.setCurrentWidget(self.taste_shelf)

    def _show_samples(self) -> None:
        if self.shelf_widget is not None:
            self._shelves.setCurrentWidget(self.shelf_widget)
            self.shelf_widget.view.setFocus(Qt.FocusReason.OtherFocusReason)

    def _ask(self) -> None:
        """Ask which of two samples, of the one kind that the shelf shows if it is one."""
        self.session.show_side_by_side(shown=False)
        self.asking.ask(self.shelf_widget.only_kind() if self.shelf_widget else None)

    def standing(self) -> Standing:
        """Done once something is kept."""
        return Standing.DONE if self.session.desk.kept else Standing.OPEN

    def standing_words(self) -> str:
        """Tell what is kept or missing."""
        kept = len(self.session.desk.kept)
        return self.tr("{count} kept").format(count=kept) if kept else self.tr("nothing kept yet")

    def _take_strip_in_hand(self) -> None:
        if self.canvas is not None:
            self.session.show_side_by_side(shown=False)
            self.canvas.setFocus(Qt.FocusReason.OtherFocusReason)

    def search(self, text: str) -> None:
        """Look for samples by name, code or family."""
        if self.shelf_widget is not None:
            self.shelf_widget.model.set_sought(text)
