"""Where canvases look: shared by all that are linked, so that they zoom and move together."""

from dataclasses import dataclass, replace

from PySide6.QtCore import QObject, Signal

CLOSEST, FARTHEST = 32.0, 0.5


@dataclass(frozen=True, slots=True)
class Look:
    """Zoom relative to the whole fitting the canvas, and the place in its middle (0..1)."""

    zoom: float = 1.0
    x: float = 0.5
    y: float = 0.5

    def zoomed(self, factor: float, x: float, y: float) -> "Look":
        """Return the look nearer or farther, with one place of the picture staying where it is."""
        zoom = min(max(self.zoom * factor, FARTHEST), CLOSEST)
        keep = self.zoom / zoom
        return Look(zoom, x + (self.x - x) * keep, y + (self.y - y) * keep).within()

    def moved(self, right: float, down: float) -> "Look":
        """Return the look with the picture pushed along, in shares of its size."""
        return replace(self, x=self.x - right, y=self.y - down).within()

    def within(self) -> "Look":
        """Return the look with its middle still on or close to the picture."""
        return replace(self, x=min(max(self.x, -0.2), 1.2), y=min(max(self.y, -0.2), 1.2))


class Outlook(QObject):
    """The look that linked canvases share."""

    look_changed = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.look = Look()

    def set_look(self, look: Look) -> None:
        """Look somewhere else."""
        if look != self.look:
            self.look = look
            self.look_changed.emit()

    def fit(self) -> None:
        """Show the whole."""
        self.set_look(Look())
