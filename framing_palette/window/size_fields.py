"""The art's true size as two typed lengths."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.errors import FramingPaletteError
from framing_palette.units import Length
from framing_palette.window import building
from framing_palette.window.controls import words
from framing_palette.window.forms import LengthField
from framing_palette.window.languages import told as in_language
from framing_palette.window.session import Session
from framing_palette.window.tokens import GAP


class SizeFields(QWidget):
    """Width and height; both together become the job's art size."""

    taken = Signal()

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.width_field = LengthField(self.tr("Width of the art"))
        self.height_field = LengthField(self.tr("Height of the art"))
        self._typed: dict[LengthField, Length] = {}
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(GAP)
        for told, field in (
            (self.tr("Width"), self.width_field),
            (self.tr("Height"), self.height_field),
        ):
            column = QVBoxLayout()
            column.setSpacing(4)
            column.addWidget(words(told, size="small"))
            column.addWidget(field)
            column.addStretch(1)
            row.addLayout(column, 1)
            field.taken.connect(lambda length, field=field: self._take(field, length))
        for signal in (session.job_changed, session.preferences_changed):
            signal.connect(self._tell)
        self._tell()

    def _tell(self) -> None:
        job, preferences = self._session.desk.job, self._session.preferences
        size = job.art_size if job and job.art_size else (None, None)
        self.setEnabled(job is not None)
        self._typed = {}
        for field, length in zip((self.width_field, self.height_field), size, strict=True):
            if length is not None:
                self._typed[field] = length
            field.show_value(length, preferences.unit, preferences.denominator)

    def _take(self, field: LengthField, length: Length) -> None:
        if not field.edit.isModified():
            return
        self._typed[field] = length
        if len(self._typed) < 2:
            return
        try:
            building.set_art_size(
                self._session, self._typed[self.width_field], self._typed[self.height_field]
            )
        except FramingPaletteError as error:
            field.say(in_language(str(error)))
        else:
            self.taken.emit()
