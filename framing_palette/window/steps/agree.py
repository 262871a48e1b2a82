"""Agree: the designs large and side by side, one chosen; the papers looked at, saved, printed."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from framing_palette.errors import FramingPaletteError
from framing_palette.jobs import Job, Status
from framing_palette.jobs.agreeing import with_choice, with_status
from framing_palette.window import building
from framing_palette.window.agree_shelf import AgreeShelf
from framing_palette.window.controls import Pages, rule
from framing_palette.window.forms import Choice
from framing_palette.window.job_files import now
from framing_palette.window.languages import told as in_language
from framing_palette.window.option_cards import OptionBoard
from framing_palette.window.papers_view import PapersView
from framing_palette.window.paperwork import Paper, Paperwork
from framing_palette.window.price_keeper import PriceKeeper
from framing_palette.window.price_shelf import PriceShelf
from framing_palette.window.steps.measure import is_settled
from framing_palette.window.steps.step import Counter, Standing, Step
from framing_palette.window.ticket_wishes import TicketWish
from framing_palette.window.tokens import WIDE_MARGIN

DESIGNS = "designs"


class AgreeStep(Step):
    """What designer and client agree on, and its papers."""

    key = "agree"
    icon = "agree"

    def __init__(self, counter: Counter) -> None:
        super().__init__(counter)
        self.paperwork = Paperwork(self.session, counter.errands, self)
        self.keeper = PriceKeeper(self.session, counter.errands, self)
        self.stage_widget: AgreeStage | None = None
        self.shelf_widget: AgreeShelf | None = None
        self.price_shelf: PriceShelf | None = None
        self._shelves: Pages | None = None
        self.session.job_changed.connect(self.standing_changed)
        self.session.job_changed.connect(self._follow)
        self.paperwork.changed.connect(self._let_print)
        self.keeper.changed.connect(self._follow_prices)

    def stage(self) -> QWidget:
        """Make the designs and the pages."""
        stage = AgreeStage(self.counter, self.paperwork, self.keeper)
        stage.board.chosen.connect(self.choose)
        stage.turned.picked.connect(lambda _view: self._let_print())
        self.stage_widget = stage
        return stage

    def shelf(self) -> QWidget:
        """Make the fields, the papers' buttons and the status; behind them the price book."""
        shelf = AgreeShelf(self.session)
        shelf.written.connect(self._write)
        shelf.asked.connect(self._hand_over)
        shelf.status_picked.connect(self._set_status)
        shelf.page_picked.connect(self._set_page)
        shelf.price_picked.connect(self._show_price)
        shelf.wishes.wished.connect(self._set_wish)
        self.shelf_widget = shelf
        self.price_shelf = PriceShelf(self.session, self.keeper)
        self.price_shelf.left.connect(self.leave_prices)
        self._shelves = Pages()
        for page in (shelf, self.price_shelf):
            self._shelves.addWidget(page)
        self._follow_prices()
        return self._shelves

    def standing(self) -> Standing:
        """Done once a design is agreed on and was measured for."""
        job = self.session.desk.job
        if job is None or job.agreed is None:
            return Standing.OPEN
        return Standing.DONE if is_settled(self.session, job) else Standing.ATTENTION

    def standing_words(self) -> str:
        """Tell what is missing."""
        job = self.session.desk.job
        if job is None or job.agreed is None:
            return self.tr("no design agreed on yet")
        if self.standing() is Standing.ATTENTION:
            return self.tr("agreed on, but not measured twice")
        return self.tr("agreed on: {design}").format(design=job.agreed.design.name)

    def arrive(self) -> None:
        """Show designs and pages as things are now."""
        self.keeper.load()
        self._follow()

    def finish(self) -> None:
        """Write prices that still wait."""
        self.keeper.finish()

    def look_into_prices(self) -> None:
        """Lay the price book on the shelf."""
        if self._shelves is not None and self.price_shelf is not None:
            self.keeper.load()
            self.price_shelf.follow()
            self._shelves.setCurrentWidget(self.price_shelf)

    def leave_prices(self) -> None:
        """Lay the papers on the shelf again."""
        if self._shelves is not None and self.shelf_widget is not None:
            self._shelves.setCurrentWidget(self.shelf_widget)

    def choose(self, number: int) -> None:
        """Agree on a design."""
        self._change(
            lambda job: with_choice(job, number, now()),
            self.tr("Agree on {design}").format(
                design=building.options_of(self.session)[number].design.name
            ),
        )

    def save_to(self, path: Path) -> None:
        """Save the paper in sight as a PDF."""
        paper = self._paper_in_sight()
        if paper is not None:
            path = path if path.suffix else path.with_suffix(".pdf")
            self.paperwork.save(paper, path, self._tell_saved)

    def _follow(self) -> None:
        if self.stage_widget is not None and self.session.step in ("", self.key):
            self.stage_widget.follow()
            self._let_print()

    def _paper_in_sight(self) -> Paper | None:
        view = self.stage_widget.view if self.stage_widget else DESIGNS
        return None if view == DESIGNS else Paper(view)

    def _let_print(self) -> None:
        paper = self._paper_in_sight()
        if self.shelf_widget is not None:
            can = paper is not None and self.paperwork.made(paper) is not None
            self.shelf_widget.let_print(can=can, drawings=can and paper is Paper.TICKET)

    def _write(self, name: str, text: str) -> None:
        job = self.session.desk.job
        if job is None:
            return
        client = job.client
        changed, words = {
            "name": (replace(job, client=replace(client, name=text)), self.tr("Client")),
            "contact": (replace(job, client=replace(client, contact=text)), self.tr("Contact")),
            "title": (replace(job, title=text or job.title), self.tr("Title")),
            "note": (replace(job, note=text), self.tr("Note for the workshop")),
        }[name]
        if changed != job:
            self.session.edit(words, job=changed)

    def _set_status(self, status: object) -> None:
        self._change(
            lambda job: with_status(job, Status(str(status)), now()), self.tr("Status of the job")
        )

    def _change(self, change: Callable[[Job], Job], words: str) -> None:
        job = self.session.desk.job
        if job is None or self.shelf_widget is None:
            return
        self.shelf_widget.say("")
        try:
            self.session.edit(words, job=change(job))
        except FramingPaletteError as error:
            self.shelf_widget.say(in_language(str(error)))
            self.shelf_widget.status.show_value(job.status)

    def _set_page(self, page: object) -> None:
        self.paperwork.page = "Letter" if page == "Letter" else "A4"
        self._follow()

    def _set_wish(self, wish: TicketWish) -> None:
        self.paperwork.wish = wish
        self._follow()

    def _show_price(self, shown: object) -> None:
        self.paperwork.with_price = shown == "shown"
        if self.stage_widget is not None:
            self.stage_widget.board.with_price = shown == "shown"
            self.stage_widget.board.follow()
        self._follow()

    def _follow_prices(self) -> None:
        self.paperwork.book = self.keeper.book
        prices = self.keeper.prices
        if self.shelf_widget is not None:
            self.shelf_widget.tell_prices(
                invented=self.keeper.is_invented, fault=prices.fault if prices else ""
            )
        if self.paperwork.with_price:
            self._follow()

    def _hand_over(self, how: str) -> None:
        if how == "prices":
            self.look_into_prices()
            return
        paper, job = self._paper_in_sight(), self.session.desk.job
        if paper is None or job is None:
            return
        if how == "print":
            self._print(paper)
            return
        if how == "drawings":
            folder = QFileDialog.getExistingDirectory(
                self.stage_widget, self.tr("Where to save the drawings")
            )
            if folder:
                self.paperwork.save_drawings(Path(folder), self._tell_drawn)
            return
        suggested = f"{job.number} {paper.value}.pdf"
        name, _ = QFileDialog.getSaveFileName(
            self.stage_widget, self.tr("Save the page"), suggested, "PDF (*.pdf)"
        )
        if name:
            self.save_to(Path(name))

    def _print(self, paper: Paper) -> None:
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter

        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setFullPage(True)
        dialog = QPrintDialog(printer, self.stage_widget)
        if dialog.exec() == QDialog.DialogCode.Accepted:
            self.paperwork.print_on(paper, printer, self._tell_printed)

    def _tell_saved(self, path: Path) -> None:
        if self.shelf_widget is not None:
            self.shelf_widget.say(self.tr("Saved as {name}.").format(name=path.name))

    def _tell_drawn(self, folder: Path) -> None:
        if self.shelf_widget is not None:
            said = self.tr("The drawings are in {folder}.").format(folder=folder.name)
            self.shelf_widget.say(said)

    def _tell_printed(self) -> None:
        if self.shelf_widget is not None:
            self.shelf_widget.say(self.tr("Handed to the printer."))


class AgreeStage(QWidget):
    """Designs, proposal or ticket."""

    def __init__(self, counter: Counter, paperwork: Paperwork, keeper: PriceKeeper) -> None:
        super().__init__()
        self.setObjectName("panel")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.view = DESIGNS
        self.board = OptionBoard(counter.session, counter.errands, keeper)
        self.papers = {paper: PapersView(paperwork, paper) for paper in Paper}
        self.turned = Choice(
            self.tr("Look at"),
            (
                (DESIGNS, self.tr("Designs")),
                (Paper.PROPOSAL.value, self.tr("Proposal")),
                (Paper.TICKET.value, self.tr("Ticket")),
            ),
        )
        self._stack = QStackedWidget()
        for widget in (self.board, *self.papers.values()):
            self._stack.addWidget(widget)
        head = QHBoxLayout()
        head.setContentsMargins(WIDE_MARGIN, 4, WIDE_MARGIN, 4)
        head.addWidget(self.turned)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addLayout(head)
        column.addWidget(rule())
        column.addWidget(self._stack, 1)
        self.turned.picked.connect(self.turn_to)
        self.turned.show_value(DESIGNS)

    def turn_to(self, view: object) -> None:
        """Look at the designs or at a paper."""
        self.view = str(view)
        self.turned.show_value(self.view)
        places = [DESIGNS, *(paper.value for paper in self.papers)]
        self._stack.setCurrentIndex(places.index(self.view))
        self.follow()

    def follow(self) -> None:
        """Bring what is in sight up to date."""
        if self.view == DESIGNS:
            self.board.follow()
        else:
            self.papers[Paper(self.view)].follow()
