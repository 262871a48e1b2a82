"""How a row of the shelf looks: a swatch at true texture scale, a name, a reason."""

from PySide6.QtCore import QModelIndex, QObject, QPersistentModelIndex, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QGuiApplication, QPainter, QPalette, QPen
from PySide6.QtWidgets import QStyle, QStyledItemDelegate, QStyleOptionViewItem

from framing_palette.ranking import RankedSample
from framing_palette.window.icons import draw_icon
from framing_palette.window.languages import told as in_language
from framing_palette.window.sample_list import Heading, ListRole, Rest, SampleList
from framing_palette.window.swatches import SwatchBook
from framing_palette.window.theme import type_font
from framing_palette.window.tokens import BODY, MARGIN, SMALL, SWATCH, WIDE_MARGIN

HEADING_HEIGHT = 44
SWATCH_WIDTH = 72
_REASON_LINES = 3
_WRAP = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
_PALE = QPalette.ColorRole.PlaceholderText

AnyIndex = QModelIndex | QPersistentModelIndex


class SampleRow(QStyledItemDelegate):
    """Draws headings and samples; the chosen sample unfolds all its reasons."""

    def __init__(self, model: SampleList, swatches: SwatchBook, parent: QObject) -> None:
        super().__init__(parent)
        self._model = model
        self._swatches = swatches
        self._name_font = type_font(BODY)
        self._chosen_font = type_font(BODY, strong=True)
        self._small_font = type_font(SMALL)
        self.chosen_code = ""

    def sizeHint(self, option: QStyleOptionViewItem, index: AnyIndex) -> QSize:
        """Give the chosen row the room of all its reasons."""
        kind = self._model.kind_of_row(index)
        width = option.rect.width() if option.rect.width() > 0 else 320
        if kind is Heading:
            return QSize(width, HEADING_HEIGHT)
        least = SWATCH + 2 * MARGIN
        if kind is Rest or self._model.code_at(index) != self.chosen_code:
            return QSize(width, least)
        row = index.data(ListRole.ROW)
        text_width = width - self._text_left() - WIDE_MARGIN
        height = self._line(self._name_font) + 4
        height += sum(
            self._height_of(in_language(reason), text_width) + 4 for reason in row.reasons
        )
        return QSize(width, max(least, height + self._line(self._small_font) + 2 * MARGIN + 4))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: AnyIndex) -> None:
        """Draw one row."""
        row = index.data(ListRole.ROW)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        rect: QRect = option.rect
        # The list itself is see-through, so its own palette has no ground to draw with.
        palette = QGuiApplication.palette()
        state: QStyle.StateFlag = option.state
        self._ground(painter, rect, palette, state)
        if isinstance(row, Heading):
            self._draw_heading(painter, rect, palette, row)
        elif isinstance(row, Rest):
            painter.setFont(self._small_font)
            painter.setPen(palette.color(_PALE))
            room = rect.adjusted(WIDE_MARGIN, MARGIN, -WIDE_MARGIN, -MARGIN)
            painter.drawText(room, _WRAP, self._model.rest_words(row))
        else:
            self._draw_sample(painter, rect, palette, row)
        painter.restore()

    def _ground(
        self,
        painter: QPainter,
        rect: QRect,
        palette: QPalette,
        state: QStyle.StateFlag,
    ) -> None:
        if state & QStyle.StateFlag.State_Selected:
            painter.fillRect(rect, palette.color(QPalette.ColorRole.Base))
            bar = QRect(rect.left(), rect.top(), 3, rect.height())
            painter.fillRect(bar, palette.color(QPalette.ColorRole.Highlight))
        elif state & QStyle.StateFlag.State_MouseOver:
            painter.fillRect(rect, palette.color(QPalette.ColorRole.Light))

    def _draw_heading(
        self,
        painter: QPainter,
        rect: QRect,
        palette: QPalette,
        heading: Heading,
    ) -> None:
        painter.setPen(QPen(palette.color(QPalette.ColorRole.Mid), 1))
        painter.drawLine(rect.left() + WIDE_MARGIN, rect.top(), rect.right(), rect.top())
        painter.setFont(self._chosen_font)
        painter.setPen(palette.color(QPalette.ColorRole.WindowText))
        text = self._model.heading_words(heading.verdict)
        line = rect.adjusted(WIDE_MARGIN, 4, -WIDE_MARGIN, 0)
        flags = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
        painter.drawText(line, flags, text)
        painter.setFont(self._small_font)
        painter.setPen(palette.color(_PALE))
        shift = QFontMetrics(self._chosen_font).horizontalAdvance(text) + 8
        painter.drawText(line.adjusted(shift, 1, 0, 0), flags, str(heading.count))
        box = QRectF(rect.right() - WIDE_MARGIN - 16, rect.center().y() - 6, 16, 16)
        icon = "up" if heading.is_open else "down"
        draw_icon(painter, icon, box, palette.color(_PALE))

    def _draw_sample(
        self,
        painter: QPainter,
        rect: QRect,
        palette: QPalette,
        ranked: RankedSample,
    ) -> None:
        swatch = QRect(rect.left() + WIDE_MARGIN, rect.top() + MARGIN, SWATCH_WIDTH, SWATCH)
        self._swatches.draw(painter, swatch, ranked.sample)
        is_chosen = ranked.sample.code == self.chosen_code
        font = self._chosen_font if is_chosen else self._name_font
        left, width = (
            rect.left() + self._text_left(),
            rect.width() - self._text_left() - WIDE_MARGIN,
        )
        top = rect.top() + MARGIN
        room = width - self._draw_moved(painter, QRect(left, top - 2, width, 20), palette, ranked)
        painter.setFont(font)
        painter.setPen(palette.color(QPalette.ColorRole.WindowText))
        name = QFontMetrics(font).elidedText(ranked.sample.name, Qt.TextElideMode.ElideRight, room)
        painter.drawText(QRect(left, top - 2, width, self._line(font)), 0, name)
        top += self._line(font) + 2
        painter.setFont(self._small_font)
        painter.setPen(palette.color(_PALE))
        if is_chosen:
            self._draw_all(painter, QRect(left, top, width, rect.bottom() - top), ranked)
        elif ranked.reasons:
            self._draw_reason(painter, QRect(left, top, width, rect.bottom() - top - 6), ranked)

    def _draw_moved(
        self, painter: QPainter, room: QRect, palette: QPalette, ranked: RankedSample
    ) -> int:
        """Draw how far taste moved the sample, and return the room that it takes."""
        moved = self._model.moved_words(ranked.sample.code)
        if not moved:
            return 0
        painter.setFont(self._small_font)
        painter.setPen(palette.color(_PALE))
        flags = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        painter.drawText(room, flags, moved)
        return QFontMetrics(self._small_font).horizontalAdvance(moved) + 8

    def _draw_reason(self, painter: QPainter, room: QRect, ranked: RankedSample) -> None:
        metrics = QFontMetrics(self._small_font)
        lines = few_lines(in_language(ranked.reasons[0]), metrics, room.width(), _REASON_LINES)
        for number, line in enumerate(lines):
            top = room.top() + number * metrics.height()
            painter.drawText(QRect(room.left(), top, room.width(), metrics.height()), 0, line)

    def _draw_all(self, painter: QPainter, room: QRect, ranked: RankedSample) -> None:
        top = room.top()
        facts = f"{ranked.sample.code}  ·  {in_language(kind_words(ranked))}"
        metrics = QFontMetrics(self._small_font)
        facts = metrics.elidedText(facts, Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(QRect(room.left(), top, room.width(), metrics.height()), 0, facts)
        top += metrics.height() + 4
        painter.setPen(painter.pen())
        for reason in map(in_language, ranked.reasons):
            height = self._height_of(reason, room.width())
            painter.drawText(QRect(room.left(), top, room.width(), height), _WRAP, reason)
            top += height + 4

    def _text_left(self) -> int:
        return WIDE_MARGIN + SWATCH_WIDTH + MARGIN

    def _line(self, font: QFont) -> int:
        return QFontMetrics(font).height()

    def _height_of(self, text: str, width: int) -> int:
        metrics = QFontMetrics(self._small_font)
        return metrics.boundingRect(QRect(0, 0, width, 10_000), _WRAP, text).height()


def kind_words(ranked: RankedSample) -> str:
    """Return the kind of a sample in words."""
    return ranked.sample.kind.value.replace("_", " ")


def few_lines(text: str, metrics: QFontMetrics, width: int, most: int) -> list[str]:
    """Return a text broken into a few lines at most, the last shortened at its end."""
    lines: list[str] = []
    rest = text.split()
    while rest and len(lines) < most - 1:
        line = rest.pop(0)
        while rest and metrics.horizontalAdvance(f"{line} {rest[0]}") <= width:
            line = f"{line} {rest.pop(0)}"
        lines.append(line)
    if rest:
        lines.append(" ".join(rest))
    return [metrics.elidedText(line, Qt.TextElideMode.ElideRight, width) for line in lines]
