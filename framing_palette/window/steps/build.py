"""Build: the section through the frame beside the framed picture; the shelf for each part."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QHBoxLayout,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from framing_palette.catalogue import Sample
from framing_palette.design import Depth, mouldings_that_fit
from framing_palette.design.depth_words import depth_words
from framing_palette.errors import FramingPaletteError
from framing_palette.units import Length
from framing_palette.window import building
from framing_palette.window.bench import Bench
from framing_palette.window.build_designs import BuildDesigns
from framing_palette.window.build_liked import BuildLiked
from framing_palette.window.build_samples import BuildSamples
from framing_palette.window.controls import push_button, words
from framing_palette.window.forms import Choice, scrolled
from framing_palette.window.languages import told as in_language
from framing_palette.window.light_bar import LightBar
from framing_palette.window.option_tabs import OptionTabs
from framing_palette.window.preview_pane import PreviewPane
from framing_palette.window.section.parts import PartList
from framing_palette.window.section.view import SectionView
from framing_palette.window.session import Session
from framing_palette.window.size_fields import SizeFields
from framing_palette.window.steps.step import Counter, Standing, Step
from framing_palette.window.tokens import GAP, MARGIN, SECTION, WIDE_MARGIN

_MOST_NAMED = 4
_BEGIN_WIDTH = 400


class BuildStep(Step):
    """The design in hand, from the art to the frame."""

    key = "build"
    icon = "build"

    def __init__(self, counter: Counter) -> None:
        super().__init__(counter)
        self.bench = Bench(self.session, self)
        self.stage_widget: BuildStage | None = None
        self.shelf_widget: BuildShelf | None = None
        self.bench.changed.connect(self.standing_changed)

    def stage(self) -> QWidget:
        """Make preview, section and parts."""
        self.stage_widget = BuildStage(self.counter, self.bench)
        self.stage_widget.begin.find_button.clicked.connect(self._find_designs)
        return self.stage_widget

    def shelf(self) -> QWidget:
        """Make the three pages of the shelf."""
        self.shelf_widget = BuildShelf(self.counter, self.bench)
        return self.shelf_widget

    def standing(self) -> Standing:
        """Done once a design can be built; too deep a stack needs attention."""
        if self.bench.fault:
            return Standing.ATTENTION
        cuttable = self.bench.cuttable
        if cuttable is None:
            return Standing.OPEN
        is_framed = cuttable.design.moulding is not None
        if not cuttable.depth.fits:
            return Standing.ATTENTION
        return Standing.DONE if is_framed else Standing.OPEN

    def standing_words(self) -> str:
        """Tell what is missing."""
        if self.bench.fault:
            return in_language(self.bench.fault)
        cuttable = self.bench.cuttable
        if cuttable is None:
            return self.tr("no design yet")
        if not cuttable.depth.fits:
            return self.tr("the stack is too deep for the rabbet")
        count = len(building.options_of(self.session))
        return self.tr("1 design") if count == 1 else self.tr("{count} designs").format(count=count)

    def arrive(self) -> None:
        """Draw what changed while the designer was elsewhere."""
        if self.stage_widget is not None:
            self.stage_widget.preview.follow()

    def _find_designs(self) -> None:
        if self.shelf_widget is not None:
            self.shelf_widget.show_page("designs")
            self.shelf_widget.designs.search()


class BuildStage(QWidget):
    """The framed picture at the left, what it is made of at the right."""

    def __init__(self, counter: Counter, bench: Bench) -> None:
        super().__init__()
        session = counter.session
        self._session = session
        self._bench = bench
        self.preview = PreviewPane(session, counter.errands, "preview", lambda: bench.design)
        self.section = SectionView(session, bench, counter.swatches)
        self.parts = PartList(session, bench, counter.swatches)
        self.facts = Facts(session, bench)
        self.light = LightBar(session, counter.errands, lambda: _samples_of(bench, session))
        self.tabs = OptionTabs(session)
        self.begin = Begin(session)
        self._both = QStackedWidget()
        self._lay_out()
        self.section.refused.connect(self.parts.say)
        bench.changed.connect(self._show_what_there_is)
        bench.changed.connect(self.preview.follow)
        bench.changed.connect(self.light.follow)
        self._show_what_there_is()

    def _lay_out(self) -> None:
        made_of = QWidget()
        made_of.setObjectName("panel")
        made_of.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        made_of.setMinimumWidth(360)
        column = QVBoxLayout(made_of)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.tabs)
        column.addWidget(self.facts)
        column.addWidget(self.section, 5)
        column.addWidget(scrolled(self.parts), 5)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.setHandleWidth(1)
        split.setChildrenCollapsible(False)
        seen = QWidget()
        seen.setObjectName("panel")
        seen.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        under = QVBoxLayout(seen)
        under.setContentsMargins(0, 0, 0, 0)
        under.setSpacing(0)
        under.addWidget(self.preview, 1)
        under.addWidget(self.light)
        split.addWidget(seen)
        split.addWidget(made_of)
        split.setStretchFactor(0, 13)
        split.setStretchFactor(1, 10)
        split.setSizes([540, 420])
        self._both.addWidget(self.begin)
        self._both.addWidget(split)
        around = QVBoxLayout(self)
        around.setContentsMargins(0, 0, 0, 0)
        around.addWidget(self._both)

    def _show_what_there_is(self) -> None:
        self._both.setCurrentIndex(int(self._bench.design is not None))


def _samples_of(bench: Bench, session: Session) -> list[Sample]:
    """Return the samples of the design in hand, from the art outward."""
    codes = bench.design.codes if bench.design is not None else ()
    return [session.catalogue[code] for code in codes if code in session.catalogue]


class Facts(QWidget):
    """Sight size, outside and depth: always in sight."""

    def __init__(self, session: Session, bench: Bench) -> None:
        super().__init__()
        self._session = session
        self._bench = bench
        self.sight = words(strong=True)
        self.outside = words(size="small", quiet=True)
        self.depth_line = words(size="small", wrap=True)
        self.deeper = words(size="small", quiet=True, wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(WIDE_MARGIN, GAP, WIDE_MARGIN, GAP)
        column.setSpacing(0)
        for label in (self.sight, self.outside, self.depth_line, self.deeper):
            column.addWidget(label)
        bench.changed.connect(self._tell)
        session.preferences_changed.connect(self._tell)
        self._tell()

    def _tell(self) -> None:
        cuttable = self._bench.cuttable
        self.depth_line.setText(in_language(self._bench.fault))
        self.deeper.hide()
        if cuttable is None:
            self.sight.setText("")
            self.outside.setText("")
            return
        sizes = cuttable.sizes
        frame = sizes.frame
        if sizes.layers:
            seen = sizes.layers[0].opening.size.lengths
        else:
            seen = frame.sight.lengths if frame else sizes.outer.lengths
        self.sight.setText(self.tr("Sight size {size}").format(size=self._pair(*seen)))
        whole = sizes.outer.lengths
        if frame:
            rails = {rail.side: rail.long_point.value for rail in frame.rails}
            whole = rails["top"], rails["right"]
        self.outside.setText(self.tr("Outside {size}").format(size=self._pair(*whole)))
        depth = cuttable.depth
        self.depth_line.setText(in_language(depth_words(depth)))
        if not depth.fits:
            self._name_deeper(depth)

    def _name_deeper(self, depth: Depth) -> None:
        fitting = mouldings_that_fit(depth.needed, self._session.catalogue.samples)
        names = ", ".join(sample.name for sample in fitting[:_MOST_NAMED])
        if names:
            self.deeper.setText(self.tr("Deep enough: {names}.").format(names=names))
        else:
            self.deeper.setText(self.tr("No moulding of the rack is deep enough."))
        self.deeper.show()

    def _pair(self, width: Length, height: Length) -> str:
        preferences = self._session.preferences
        first = width.figures(preferences.unit, preferences.denominator)
        return in_language(f"{first} × {height.show(preferences.unit, preferences.denominator)}")


class Begin(QWidget):
    """While there is no design: how to begin one."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.size_fields = SizeFields(session)
        self.build = push_button(self.tr("Build what lies round the picture"), rank="first")
        self.find_button = push_button(self.tr("Find three designs for this picture"))
        self.fault = words(size="small", wrap=True)
        self.told = words(quiet=True, wrap=True)
        page = QWidget()
        around = QVBoxLayout(page)
        around.setContentsMargins(0, GAP, 0, GAP)
        around.addStretch(2)
        inside = QWidget()
        inside.setMaximumWidth(_BEGIN_WIDTH)
        column = QVBoxLayout(inside)
        column.setSpacing(MARGIN)
        for label in (words(self.tr("Begin a design"), size="heading"), self.told):
            label.setAlignment(Qt.AlignmentFlag.AlignCenter)
            column.addWidget(label)
        column.addWidget(self.size_fields)
        column.addSpacing(SECTION - MARGIN)
        for control in (self.build, self.find_button, self.fault):
            column.addWidget(control)
        middle = QHBoxLayout()  # one that asks how high the words are at this width
        middle.addStretch(1)
        middle.addWidget(inside, 100)
        middle.addStretch(1)
        around.addLayout(middle)
        around.addStretch(3)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scrolled(page))
        self.build.clicked.connect(self._build)
        for signal in (
            session.job_changed,
            session.laid_changed,
            session.findings_changed,
            session.catalogue_changed,
        ):
            signal.connect(self._tell)
        self._tell()

    def _tell(self) -> None:
        job, laid = self._session.desk.job, self._session.desk.laid
        has_size = job is not None and job.art_size is not None
        if job is None:
            said = self.tr("Bring the picture first; it is what the frame is for.")
        elif not has_size:
            said = self.tr("Type how large the art is. It can be measured exactly later.")
        elif laid:
            names = " + ".join(
                self._session.sample_of(code).name
                for code in laid
                if code in self._session.catalogue
            )
            said = self.tr("Round the picture lies {names}.").format(names=names)
        else:
            said = self.tr("Lay samples round the picture in Choose, or let designs be found.")
        self.told.setText(said)
        self.size_fields.setVisible(job is not None)
        self.build.setVisible(bool(laid))
        self.build.setEnabled(has_size)
        ready = self._session.findings is not None and bool(len(self._session.catalogue))
        self.find_button.setEnabled(has_size and ready)
        self.fault.setText("")

    def _build(self) -> None:
        laid = [code for code in self._session.desk.laid if code in self._session.catalogue]
        try:
            building.begin_design(self._session, laid)
        except FramingPaletteError as error:
            self.fault.setText(in_language(str(error)))


class BuildShelf(QWidget):
    """Three pages: samples for the chosen part, whole designs, near what is liked."""

    def __init__(self, counter: Counter, bench: Bench) -> None:
        super().__init__()
        given = counter.session, counter.errands, bench, counter.swatches
        self.samples = BuildSamples(*given)
        self.designs = BuildDesigns(*given)
        self.liked = BuildLiked(*given)
        self.pages = Choice(
            self.tr("Shelf"),
            (
                ("samples", self.tr("This part")),
                ("designs", self.tr("Three designs")),
                ("liked", self.tr("Near liked")),
            ),
        )
        self._stack = QStackedWidget()
        self._places = {"samples": 0, "designs": 1, "liked": 2}
        for page in (self.samples, self.designs, self.liked):
            self._stack.addWidget(page)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, MARGIN, 0, 0)
        column.setSpacing(4)
        head = QHBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 0, GAP, 0)
        head.addWidget(self.pages)
        column.addLayout(head)
        column.addWidget(self._stack, 1)
        self.pages.picked.connect(self.show_page)
        self.show_page("samples")

    def show_page(self, name: object) -> None:
        """Turn to a page."""
        self.pages.show_value(name)
        self._stack.setCurrentIndex(self._places[str(name)])
