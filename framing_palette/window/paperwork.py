"""The papers of the job on the desk: made in the background, looked at, saved, printed."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import StrEnum
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QImage, QPainter

from framing_palette.catalogue import Catalogue
from framing_palette.design import PriceBook
from framing_palette.errors import FramingPaletteError
from framing_palette.jobs import Job
from framing_palette.jobs.handing_over import proposal_contents
from framing_palette.jobs.handing_over_ticket import ticket_contents
from framing_palette.papers import (
    Notation,
    TicketContents,
    drawing_set,
    proposal_pdf,
    ticket_pdf,
    write_paper,
)
from framing_palette.papers.contents import PageName
from framing_palette.picture import Picture
from framing_palette.units import Length, LengthUnit
from framing_palette.window.errands import Errands
from framing_palette.window.page_files import page_images
from framing_palette.window.preferences import Preferences
from framing_palette.window.runner import Progress
from framing_palette.window.session import Session
from framing_palette.window.ticket_wishes import TicketWish

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

PRINT_DPI = 300.0


class Paper(StrEnum):
    """Which paper."""

    PROPOSAL = "proposal"
    TICKET = "ticket"


@dataclass(frozen=True, slots=True)
class _Order:
    """All that a paper is made of; two equal orders make the same paper."""

    paper: Paper
    job: Job
    picture: Picture | None
    catalogue: Catalogue
    page: PageName
    book: PriceBook | None
    notation: Notation
    tolerance: Length
    light: str
    stands_out: bool


@dataclass(frozen=True, slots=True, eq=False)
class Made:
    """A finished paper: its PDF and its pages to look at."""

    pdf: bytes
    pages: tuple[QImage, ...]


class Paperwork(QObject):
    """Makes each paper when it is asked for, and keeps it while nothing in it changes."""

    changed = Signal(object)
    """A Paper is there, or why it cannot be made."""

    def __init__(self, session: Session, errands: Errands, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._errands = errands
        self.page: PageName = "A4"
        self.with_price = False
        self.book: PriceBook | None = None
        self.wish = TicketWish()
        self._made: dict[Paper, tuple[_Order, Made]] = {}
        self._faults: dict[Paper, tuple[_Order, str]] = {}

    def made(self, paper: Paper) -> Made | None:
        """Return a paper when it is there and still true."""
        order, kept = self._order(paper), self._made.get(paper)
        return kept[1] if kept and order and _same(kept[0], order) else None

    def fault(self, paper: Paper) -> str:
        """Return why a paper cannot be made as things are."""
        order, kept = self._order(paper), self._faults.get(paper)
        if order is None:
            return self.tr("Bring the picture and build a design first.")
        return kept[1] if kept and _same(kept[0], order) else ""

    def make(self, paper: Paper) -> None:
        """Make a paper unless it is there; ``changed`` tells when."""
        order = self._order(paper)
        if order is None or self.made(paper) is not None or self.fault(paper):
            self.changed.emit(paper)
            return

        def done(made: Made) -> None:
            self._made[paper] = (order, made)
            self.changed.emit(paper)

        def failed(error: Exception) -> None:
            if not isinstance(error, FramingPaletteError):
                self._errands.tell(error)
                return
            self._faults[paper] = (order, str(error))
            self.changed.emit(paper)

        self._errands.runner.start(
            f"paper {paper}", lambda progress: _made(order, progress), done=done, failed=failed
        )

    def save(self, paper: Paper, path: Path, then: Callable[[Path], None]) -> None:
        """Write a finished paper to a file."""
        made = self.made(paper)
        if made is None:
            return

        def work(progress: Progress) -> Path:
            progress.tell(0.0)
            return write_paper(path, made.pdf)

        self._errands.runner.start("save paper", work, done=then, failed=self._errands.tell)

    def save_drawings(self, folder: Path, then: Callable[[Path], None]) -> None:
        """Write the ticket's drawings into a folder, as SVG and DXF."""
        order = self._order(Paper.TICKET)
        if order is None:
            return

        def work(progress: Progress) -> Path:
            progress.tell(0.0)
            for drawing in drawing_set(_ticket(order)):
                for name, content in drawing.files():
                    write_paper(folder / name, content)
            return folder

        self._errands.runner.start("save drawings", work, done=then, failed=self._errands.tell)

    def print_on(self, paper: Paper, printer: "QPrinter", then: Callable[[], None]) -> None:
        """Print a finished paper; its pages are made ready in the background."""
        made = self.made(paper)
        if made is None:
            return

        def work(progress: Progress) -> tuple[QImage, ...]:
            progress.tell(0.0)
            return page_images(made.pdf, PRINT_DPI)

        def done(pages: tuple[QImage, ...]) -> None:
            draw_pages(printer, pages)
            then()

        self._errands.runner.start("print paper", work, done=done, failed=self._errands.tell)

    def _order(self, paper: Paper) -> _Order | None:
        session = self._session
        job = session.desk.job
        if job is None or (paper is Paper.PROPOSAL and session.picture is None):
            return None
        is_proposal = paper is Paper.PROPOSAL
        return _Order(
            paper=paper,
            job=job,
            picture=session.picture if is_proposal else None,
            catalogue=session.catalogue,
            page=self.page,
            book=self.book if self.with_price and is_proposal else None,
            notation=notation_of(
                session.preferences, both_units=self.wish.both_units and not is_proposal
            ),
            tolerance=session.preferences.tolerance,
            light=session.light if is_proposal else "",
            stands_out=self.wish.stands_out and not is_proposal,
        )


def notation_of(preferences: Preferences, *, both_units: bool = False) -> Notation:
    """Return how lengths are written on paper, in the other unit too if wished."""
    denominator = {16: 16, 32: 32, 64: 64}[preferences.denominator]
    other: LengthUnit = "mm" if preferences.unit == "in" else "in"
    notation = Notation(preferences.unit, other if both_units else None)
    return replace(notation, denominator=denominator)  # type: ignore[arg-type]


def draw_pages(printer: "QPrinter", pages: tuple[QImage, ...]) -> None:
    """Draw each page over the whole sheet, in its own proportions."""
    painter = QPainter(printer)
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    for number, page in enumerate(pages):
        if number:
            printer.newPage()
        room = painter.viewport()
        size = page.size().scaled(room.size(), Qt.AspectRatioMode.KeepAspectRatio)
        room.setSize(size)
        painter.drawImage(room, page)
    painter.end()


def _made(order: _Order, progress: Progress) -> Made:
    progress.tell(0.0)
    if order.paper is Paper.TICKET:
        pdf = ticket_pdf(_ticket(order), page=order.page)
    else:
        if order.picture is None:
            raise TypeError("a proposal without its picture was ordered")
        contents = proposal_contents(
            order.job,
            order.picture,
            order.catalogue,
            page=order.page,
            book=order.book,
            notation=order.notation,
            under=order.light,
        )
        progress.tell(0.6)
        pdf = proposal_pdf(contents, page=order.page)
    progress.tell(0.8)
    return Made(pdf, page_images(pdf))


def _ticket(order: _Order) -> TicketContents:
    return ticket_contents(
        order.job,
        order.catalogue,
        notation=order.notation,
        tolerance=order.tolerance,
        out_of_rabbet=order.stands_out,
    )


def _same(one: _Order, other: _Order) -> bool:
    return (
        one.job is other.job
        and one.picture is other.picture
        and one.catalogue is other.catalogue
        and (one.page, one.book, one.notation, one.tolerance)
        == (other.page, other.book, other.notation, other.tolerance)
        and (one.light, one.stands_out) == (other.light, other.stands_out)
    )
