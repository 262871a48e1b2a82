"""A paper as its pages, to look at before it is printed."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from framing_palette.window.controls import words
from framing_palette.window.greys import surround_color
from framing_palette.window.languages import told as in_language
from framing_palette.window.paperwork import Paper, Paperwork
from framing_palette.window.tokens import MARGIN, SECTION

_WIDEST = 860
_GROUND = 60


class PapersView(QWidget):
    """Shows one paper; while it is not there, says why or that it is being made."""

    def __init__(self, paperwork: Paperwork, paper: Paper) -> None:
        super().__init__()
        self._paperwork = paperwork
        self.paper = paper
        self.pages: list[PageView] = []
        self.told = words(wrap=True)
        self.told.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._inside = QWidget()
        self._column = QVBoxLayout(self._inside)
        self._column.setContentsMargins(SECTION, SECTION, SECTION, SECTION)
        self._column.setSpacing(SECTION)
        self.area = QScrollArea()
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setWidgetResizable(True)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.area.setWidget(self._inside)
        self.area.setAccessibleName(self.tr("Pages"))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.told)
        column.addWidget(self.area, 1)
        self.told.setContentsMargins(SECTION, SECTION * 2, SECTION, MARGIN)
        paperwork.changed.connect(self._on_changed)

    def follow(self) -> None:
        """Ask for the paper as things are now."""
        if self._paperwork.made(self.paper) is None and not self._paperwork.fault(self.paper):
            self._show((), self.tr("The page is being set."))
        self._paperwork.make(self.paper)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw what the pages lie on."""
        if self.pages:
            QPainter(self).fillRect(self.rect(), surround_color(_GROUND))

    def _on_changed(self, paper: object) -> None:
        if paper is self.paper:
            made = self._paperwork.made(self.paper)
            self._show(made.pages if made else (), self._paperwork.fault(self.paper))

    def _show(self, images: tuple[QImage, ...], said: str) -> None:
        while (item := self._column.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        self.pages = []
        for number, image in enumerate(images, start=1):
            page = PageView(
                image, self.tr("Page {number} of {count}").format(number=number, count=len(images))
            )
            self.pages.append(page)
            self._column.addWidget(page, 0, Qt.AlignmentFlag.AlignHCenter)
        self._column.addStretch(1)
        self.told.setText("" if images else in_language(said))
        self.told.setVisible(not images)
        self.area.setVisible(bool(images))
        self._fit()
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Let the pages be as wide as there is room for."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        for page in self.pages:
            page.fit(min(_WIDEST, self.width() - 2 * SECTION - 12))


class PageView(QWidget):
    """One page."""

    def __init__(self, image: QImage, told: str) -> None:
        super().__init__()
        self.image = image
        self.setAccessibleName(told)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def fit(self, width: int) -> None:
        """Take a width, and the height that follows from it."""
        width = max(width, 160)
        height = round(width * self.image.height() / self.image.width())
        self.setFixedSize(QSize(width, height))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the page."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(QRectF(self.rect()), self.image)
