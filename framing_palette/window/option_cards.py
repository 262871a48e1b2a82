"""The designs beside each other as the client sees them: large, with reasons, one to choose."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.design import Design
from framing_palette.errors import FramingPaletteError
from framing_palette.jobs import Option
from framing_palette.window import building
from framing_palette.window.controls import push_button, words
from framing_palette.window.errands import Errands
from framing_palette.window.forms import scrolled
from framing_palette.window.languages import told as in_language
from framing_palette.window.preview_pane import PreviewPane
from framing_palette.window.price_keeper import PriceKeeper
from framing_palette.window.session import Session
from framing_palette.window.tokens import GAP, MARGIN, WIDE_MARGIN

_WORDS_HEIGHT = 208


class OptionCard(QWidget):
    """One design."""

    chosen = Signal()

    def __init__(
        self, session: Session, errands: Errands, keeper: PriceKeeper, number: int
    ) -> None:
        super().__init__()
        self._session = session
        self._keeper = keeper
        self._number = number
        self.preview = PreviewPane(session, errands, f"option {number}", self._design)
        self.name = words(size="heading", wrap=True)
        self.parts = words(size="small", quiet=True, wrap=True)
        self.reasons = words(size="small", wrap=True)
        self.price = words(strong=True)
        self.tax = words(size="small", quiet=True, wrap=True)
        self.choose = push_button(self.tr("Choose this one"))
        self.is_chosen = False
        below = QWidget()
        told = QVBoxLayout(below)
        told.setContentsMargins(WIDE_MARGIN, MARGIN, WIDE_MARGIN, MARGIN)
        told.setSpacing(4)
        for label in (self.name, self.price, self.tax, self.reasons, self.parts):
            told.addWidget(label)
        told.addStretch(1)
        area = scrolled(below)
        area.setFixedHeight(_WORDS_HEIGHT)
        foot = QHBoxLayout()
        foot.setContentsMargins(WIDE_MARGIN, GAP, WIDE_MARGIN, MARGIN)
        foot.addWidget(self.choose)
        foot.addStretch(1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.preview, 1)
        column.addWidget(area)
        column.addLayout(foot)
        self.choose.clicked.connect(self.chosen)

    def show_option(self, option: Option, *, is_chosen: bool, with_price: bool) -> None:
        """Show the design as it is now."""
        design = option.design
        name = design.name or building.NAMES[self._number]
        self.is_chosen = is_chosen
        self.name.setText(name)
        self.reasons.setText("\n\n".join(map(_told, _sentences(option.reasons))))
        rack = self._session.catalogue
        names = [rack[code].name for code in design.codes if code in rack]
        self.parts.setText(", ".join(names))
        total, tax = self._price_words(design) if with_price else ("", "")
        for label, said in ((self.price, total), (self.tax, tax)):
            label.setText(said)
            label.setVisible(bool(said))
        self.choose.setText(self.tr("Chosen") if is_chosen else self.tr("Choose this one"))
        self.choose.setAccessibleName(f"{self.choose.text()}: {name}")
        if self.preview.design_drawn is not design:
            self.preview.follow()
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ground, and a bar over the chosen one."""
        painter = QPainter(self)
        role = QPalette.ColorRole
        ground = role.Base if self.is_chosen else role.Window
        painter.fillRect(self.rect(), self.palette().color(ground))
        if self.is_chosen:
            top = self.preview.geometry().bottom()
            painter.fillRect(0, top, self.width(), 4, self.palette().color(role.Highlight))

    def _design(self) -> Design | None:
        options = building.options_of(self._session)
        return options[self._number].design if self._number < len(options) else None

    def _price_words(self, design: Design) -> tuple[str, str]:
        try:
            price = self._keeper.price(design)
        except FramingPaletteError as error:
            return "", in_language(str(error))
        return price.total.show(), price.tax_words


class OptionBoard(QWidget):
    """Two or three designs in a row."""

    chosen = Signal(int)

    def __init__(self, session: Session, errands: Errands, keeper: PriceKeeper) -> None:
        super().__init__()
        self._session = session
        self._errands = errands
        self._keeper = keeper
        self.with_price = False
        self.cards: list[OptionCard] = []
        self.told = words(
            self.tr("There is no design to agree on yet: build one, or let three be found."),
            quiet=True,
            wrap=True,
        )
        self.told.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(1)
        self._row.addWidget(self.told)
        session.job_changed.connect(self.follow)
        session.catalogue_changed.connect(self.follow)
        keeper.changed.connect(self.follow)
        self.follow()

    def follow(self) -> None:
        """Show the designs as they are now."""
        options = building.options_of(self._session)
        self.told.setVisible(not options)
        while len(self.cards) > len(options):
            card = self.cards.pop()
            self._row.removeWidget(card)
            card.hide()
            card.deleteLater()
        while len(self.cards) < len(options):
            number = len(self.cards)
            card = OptionCard(self._session, self._errands, self._keeper, number)
            card.chosen.connect(lambda number=number: self.chosen.emit(number))
            self._row.addWidget(card, 1)
            self.cards.append(card)
        job = self._session.desk.job
        chosen = job.chosen if job else None
        for number, (card, option) in enumerate(zip(self.cards, options, strict=True)):
            card.show_option(option, is_chosen=number == chosen, with_price=self.with_price)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the hairlines between the cards."""
        QPainter(self).fillRect(self.rect(), self.palette().color(QPalette.ColorRole.Mid))
        if not self.cards:
            QPainter(self).fillRect(self.rect(), self.palette().color(QPalette.ColorRole.Window))


def _told(reason: str) -> str:
    """Return a reason in the language of the window; the name before it stays."""
    name, colon, said = reason.partition(": ")
    return f"{name}{colon}{in_language(said)}" if colon else in_language(reason)


def _sentences(reasons: tuple[str, ...]) -> list[str]:
    return [reason if reason.endswith(".") else f"{reason}." for reason in reasons[:3]]
