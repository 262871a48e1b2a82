"""The tools for drawing regions, one in hand at a time; each is a letter as well."""

from PySide6.QtWidgets import QButtonGroup

from framing_palette.window.canvas.drawing_layer import DrawingLayer, Tool
from framing_palette.window.canvas.pins import PinLayer
from framing_palette.window.controls import IconButton, ToolBar, show_part
from framing_palette.window.session import Session


class DrawingTools(ToolBar):
    """Hand, rectangle, ellipse, lasso, polygon, grow; and the switch for the accents' pins."""

    def __init__(self, session: Session, layer: DrawingLayer, pins: PinLayer) -> None:
        super().__init__()
        self._session = session
        self._layer = layer
        self.buttons: dict[Tool, IconButton] = {}
        group = QButtonGroup(self)
        for tool, told, keys in (
            (Tool.HAND, self.tr("Move picture and regions"), "V"),
            (Tool.RECTANGLE, self.tr("Rectangle"), "B"),
            (Tool.ELLIPSE, self.tr("Ellipse"), "E"),
            (Tool.LASSO, self.tr("Lasso"), "L"),
            (Tool.POLYGON, self.tr("Polygon: click its corners, Enter closes it"), "P"),
            (Tool.GROW, self.tr("Grow from a click; the wheel sets how far"), "G"),
        ):
            button = IconButton(tool.value, told, keys=keys)
            button.setCheckable(True)
            button.clicked.connect(lambda _on=False, tool=tool: layer.take(tool))
            group.addButton(button)
            self.buttons[tool] = button
            self.add(button)
        self.pins = IconButton("pin", self.tr("Show the accents"))
        self.pins.setCheckable(True)
        self.pins.setChecked(True)
        self.pins.toggled.connect(pins.show_pins)
        self.add(self.pins)
        layer.tool_changed.connect(self._tell)
        session.pyramid_changed.connect(self._tell)
        self._tell()

    def _tell(self) -> None:
        self.buttons[self._layer.tool].setChecked(True)
        show_part(self, shown=self._session.pyramid is not None)
