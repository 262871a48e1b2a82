"""The tools of the strip in hand, for pointer and fingers; each is a key as well."""

from collections.abc import Callable

from framing_palette.ranking.strips import Strip
from framing_palette.window import sliding
from framing_palette.window.controls import IconButton, ToolBar, show_part
from framing_palette.window.keeping import keep_sample, send_away
from framing_palette.window.session import Session

Act = Callable[[Session, Strip], None]


class StripTools(ToolBar):
    """Shown while a strip is in hand."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self.buttons: dict[str, IconButton] = {}
        for name, icon, told, keys, act in (
            ("turn", "turn", self.tr("Turn the strip"), "R", sliding.turn),
            ("bend", "bend", self.tr("Bend it into a corner, or straighten it"), "C", sliding.bend),
            ("lay", "lay", self.tr("Lay it round the picture"), "Enter", sliding.lay_strip_round),
            ("keep", "keep", self.tr("Keep it on the rail"), "K", _keep),
            ("away", "away", self.tr("Send the sample away"), "X", _send_away),
            ("up", "close", self.tr("Take the strip off the picture"), "Delete", sliding.take_up),
        ):
            button = IconButton(icon, told, keys=keys)
            button.clicked.connect(lambda _on=False, act=act: self._do(act))
            self.buttons[name] = button
            self.add(button)
        for signal in (session.chosen_strip_changed, session.strips_changed):
            signal.connect(self._tell)
        self._tell()

    def _do(self, act: Act) -> None:
        strip = sliding.chosen_strip(self._session)
        if strip is not None:
            act(self._session, strip)

    def _tell(self) -> None:
        show_part(self, shown=sliding.chosen_strip(self._session) is not None)


def _keep(session: Session, strip: Strip) -> None:
    keep_sample(session, strip.code)


def _send_away(session: Session, strip: Strip) -> None:
    send_away(session, strip.code)
