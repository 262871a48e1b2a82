"""Where a colour lives: the picture dims everywhere else."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from framing_palette.window.canvas.layer import Layer
from framing_palette.window.canvas.place import Place
from framing_palette.window.session import Session


class LivesLayer(Layer):
    """Lays the veil of the lit colour over the picture."""

    is_ground = True

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        session.lit_map_changed.connect(self.touch_up_all)

    def paint(self, painter: QPainter, place: Place) -> None:
        """Draw the veil."""
        veil = self._session.lit_map
        if veil is not None:
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawImage(place.rect, veil, QRectF(veil.rect()))
