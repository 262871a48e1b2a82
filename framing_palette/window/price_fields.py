"""Fields of the price book, each with what is wrong below it, and the words for charges."""

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from framing_palette.design import Basis, Charge, Part
from framing_palette.window.controls import show_part, words
from framing_palette.window.tokens import GAP


class TextField(QWidget):
    """A name, a line of text, what it means, and below it why it could not be taken."""

    taken = Signal(str)

    def __init__(self, name: str, told: str = "") -> None:
        super().__init__()
        self.name = words(name, size="small")
        self.edit = QLineEdit()
        self.edit.setAccessibleName(name)
        self.told = words(told, size="small", quiet=True, wrap=True)
        show_part(self.told, shown=bool(told))
        self.fault = words(size="small", wrap=True)
        self.fault.hide()
        self._shown = ""
        column = QVBoxLayout(self)
        column.setContentsMargins(0, GAP, 0, 0)
        column.setSpacing(4)
        for widget in (self.name, self.edit, self.told, self.fault):
            column.addWidget(widget)
        self.edit.editingFinished.connect(self._finish)

    def show_text(self, text: str) -> None:
        """Show what holds now; a text that was refused stays until it is mended or undone."""
        if text != self._shown or not self.fault.text():
            self._shown = text
            self.edit.setText(text)
            self.say("")

    def set_name(self, name: str) -> None:
        """Call it something else."""
        self.name.setText(name)
        self.edit.setAccessibleName(name)

    def say(self, fault: str) -> None:
        """Say why what was typed cannot be taken; empty when it was."""
        self.fault.setText(f"! {fault}" if fault else "")
        self.fault.setVisible(bool(fault))

    def _finish(self) -> None:
        if self.edit.text() == self._shown:
            self.say("")
            return
        self.taken.emit(self.edit.text())


def part_words(part: Part) -> str:
    """Return what a part is called."""
    tell = QCoreApplication.translate
    return {
        Part.MAT: tell("Prices", "Mat"),
        Part.WRAPPED_FILLET: tell("Prices", "Wrapped fillet"),
        Part.WOOD_FILLET: tell("Prices", "Wood fillet"),
        Part.LINER: tell("Prices", "Liner"),
        Part.MOULDING: tell("Prices", "Moulding"),
        Part.GLAZING: tell("Prices", "Glazing"),
        Part.MOUNT: tell("Prices", "Mount board"),
        Part.BACKING: tell("Prices", "Backing"),
        Part.OPENING: tell("Prices", "Each opening cut"),
        Part.JOB: tell("Prices", "The job, once"),
    }[part]


def basis_words(basis: Basis) -> str:
    """Return what a basis is called."""
    tell = QCoreApplication.translate
    return {
        Basis.UNITED_INCH: tell("Prices", "United inch"),
        Basis.LENGTH: tell("Prices", "Length"),
        Basis.AREA: tell("Prices", "Area"),
        Basis.EACH: tell("Prices", "Each"),
        Basis.MINUTES: tell("Prices", "Time"),
        Basis.CATALOGUE: tell("Prices", "Catalogue price"),
    }[basis]


def rate_words(charge: Charge, currency: str) -> str:
    """Return what the rate of a charge is money for."""
    tell = QCoreApplication.translate
    unit = charge.per.replace("2", "²")
    return {
        Basis.UNITED_INCH: tell("Prices", "{currency} for a united inch (width and height)"),
        Basis.LENGTH: tell("Prices", "{currency} for 1 {unit}, long points"),
        Basis.AREA: tell("Prices", "{currency} for 1 {unit}"),
        Basis.EACH: tell("Prices", "{currency} for each"),
        Basis.MINUTES: tell("Prices", "{currency} for an hour"),
        Basis.CATALOGUE: tell("Prices", "Times the sample's own price"),
    }[charge.basis].format(currency=currency, unit=unit)
