"""The kinds of samples in the language of the window, and the choice between them."""

from PySide6.QtCore import QCoreApplication

from framing_palette.catalogue import Kind
from framing_palette.window.forms import Choice
from framing_palette.window.languages import QT_TRANSLATE_NOOP

KIND_WORDS = (
    (Kind.MAT, QT_TRANSLATE_NOOP("KindWords", "Mats")),
    (Kind.WRAPPED_FILLET, QT_TRANSLATE_NOOP("KindWords", "Wrapped fillets")),
    (Kind.WOOD_FILLET, QT_TRANSLATE_NOOP("KindWords", "Wood fillets")),
    (Kind.LINER, QT_TRANSLATE_NOOP("KindWords", "Liners")),
    (Kind.MOULDING, QT_TRANSLATE_NOOP("KindWords", "Mouldings")),
)


def kind_choices() -> list[tuple[Kind, str]]:
    """Return the kinds of samples with their names in the language of the window."""
    tell = QCoreApplication.translate
    return [(kind, tell("KindWords", text)) for kind, text in KIND_WORDS]


class KindChoice(Choice):
    """Which kind a measured swatch is; mats until somebody says otherwise."""

    def __init__(self, name: str) -> None:
        super().__init__(name, kind_choices())
        self.kind = Kind.MAT
        self.show_value(self.kind)
        self.picked.connect(self._take)

    def _take(self, kind: object) -> None:
        self.kind = Kind(str(kind))
        self.show_value(self.kind)
