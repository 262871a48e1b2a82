"""The client's light: which one the design is seen in, and what holds or parts there."""

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from framing_palette.catalogue import LIGHT_WORDS, Sample
from framing_palette.window.controls import words
from framing_palette.window.errands import Errands
from framing_palette.window.languages import told as in_language
from framing_palette.window.picker import Picker
from framing_palette.window.session import Session
from framing_palette.window.tokens import GAP, WIDE_MARGIN

LIGHT_TOPIC = "client's light"
DAYLIGHT = "D50"
_MOST_TOLD = 2


class LightPicker(Picker):
    """The lights in plain words; all pickers of the window follow the session's."""

    def __init__(self, session: Session) -> None:
        super().__init__(self.tr("The light in which it is seen"))
        self._session = session
        named = [
            (light, in_language(f"{words[:1].upper()}{words[1:]}"))
            for light, words in LIGHT_WORDS.items()
        ]
        self.show_values(named, session.light)
        self.chosen.connect(lambda light: session.assign("light", str(light)))
        session.light_changed.connect(lambda: self.show_value(session.light))


class LightBar(QWidget):
    """The light under the framed picture, and the pairs that part in it."""

    def __init__(
        self, session: Session, errands: Errands, samples: Callable[[], Sequence[Sample]]
    ) -> None:
        super().__init__()
        self._session = session
        self._errands = errands
        self._samples = samples
        self.picker = LightPicker(session)
        self.told = words(size="small", wrap=True)
        head = QHBoxLayout()
        head.setSpacing(GAP)
        head.addWidget(words(self.tr("Seen under"), size="small", quiet=True))
        head.addWidget(self.picker, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(WIDE_MARGIN, 4, WIDE_MARGIN, 4)
        column.setSpacing(4)
        column.addLayout(head)
        column.addWidget(self.told)
        session.light_changed.connect(self.follow)
        session.findings_changed.connect(self.follow)
        self.follow()

    def follow(self) -> None:
        """Find out what the light does to the design as it is now."""
        light, samples = self._session.light, tuple(self._samples())
        if light == DAYLIGHT or not samples:
            self._errands.runner.cancel(LIGHT_TOPIC)
            self._say("")
            return
        colours = self._picture_colours()
        self._errands.runner.start(
            LIGHT_TOPIC,
            lambda _progress: _parted(samples, colours, light),
            done=self._take,
            failed=self._errands.tell,
        )

    def _picture_colours(self) -> list[tuple[str, tuple[float, float, float]]]:
        findings = self._session.findings
        if findings is None:
            return []
        return [(colour.name, colour.lab) for colour in findings.whole.colours] + [
            (accent.name, accent.lab) for accent in findings.accents
        ]

    def _take(self, found: tuple[str, ...]) -> None:
        if found:
            self._say("\n".join(map(in_language, found[:_MOST_TOLD])))
        else:
            self._say(self.tr("No two colours here match so closely that a light could part them."))

    def _say(self, text: str) -> None:
        self.told.setText(text)
        self.told.setVisible(bool(text))


def _parted(
    samples: Sequence[Sample],
    colours: Sequence[tuple[str, tuple[float, float, float]]],
    light: str,
) -> tuple[str, ...]:
    from framing_palette.catalogue.matched_pairs import matched_pairs

    return tuple(pair.sentence for pair in matched_pairs(samples, colours, light))
