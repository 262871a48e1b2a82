"""The true width of what a photograph of swatches shows, as the person tells it."""

from PySide6.QtCore import Signal

from framing_palette.units import Length
from framing_palette.window.forms import LengthField
from framing_palette.window.session import Session


class PhotoWidth(LengthField):
    """May be left out; what is typed is shown again in the shop's own unit."""

    changed = Signal()
    """Another width than before was told."""

    def __init__(self, session: Session, name: str) -> None:
        super().__init__(name)
        self._session = session
        self.length: Length | None = None
        self.taken.connect(self._keep)
        self._show()

    def _show(self) -> None:
        preferences = self._session.preferences
        self.show_value(self.length, preferences.unit, preferences.denominator)

    def _keep(self, length: Length) -> None:
        is_other = length != self.length
        self.length = length
        self._show()
        if is_other:
            self.changed.emit()
