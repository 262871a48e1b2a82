"""The camera above the table: live pictures in the background, and one frozen for the intake."""

from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from PySide6.QtCore import QObject, QSize, QTimer, Signal

from framing_palette.errors import FramingPaletteError, OutputError
from framing_palette.window.errands import Errands
from framing_palette.window.images import image_of
from framing_palette.window.runner import Progress
from framing_palette.window.session import Session

if TYPE_CHECKING:
    from PySide6.QtGui import QImage

    from framing_palette.picture.camera_feed_files import CameraFeed, Source

LIVE, AWAY = "camera", "camera away"
_PAUSE_MS = 30
_MOST_CAMERAS = 8


class IntakeCamera(QObject):
    """Shows what the camera sees, and freezes it.

    The camera is let go whenever nobody looks: it never runs unseen.
    """

    changed = Signal()
    """It was put on or away, froze, failed, or has a new picture."""
    frozen = Signal(object)
    """The path of a photograph that was frozen."""
    sheet_frozen = Signal(object)
    """The path of a photograph of the plain sheet."""

    def __init__(self, session: Session, errands: Errands, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._errands = errands
        self.source: Source = 0
        self.folder: Path | None = None
        self.image: QImage | None = None
        self.fault = ""
        self.is_on = self.is_freezing = False
        self.share = 0.0
        self.room = QSize(960, 720)
        self._feed: CameraFeed | None = None
        self._pause = QTimer(self, interval=_PAUSE_MS, singleShot=True)
        self._pause.timeout.connect(self._go_on)
        errands.runner.progressed.connect(self._hear)
        session.step_changed.connect(self._leave)

    def put_on(self) -> None:
        """Start the camera and show what it sees."""
        self.fault, self.is_on = "", True
        self.changed.emit()
        self._go_on()

    def put_away(self) -> None:
        """Let the camera go."""
        if not self.is_on:
            return
        self._pause.stop()
        self._errands.runner.cancel(LIVE)
        self.is_on = self.is_freezing = False
        self.image, feed, self._feed = None, self._feed, None
        if feed is not None:
            self._errands.runner.start(
                AWAY, lambda _progress: feed.close(), done=_nothing, failed=self._errands.tell
            )
        self.changed.emit()

    def take_next(self) -> None:
        """Go on with the next camera, and after the last one with the first."""
        number = self.source + 1 if isinstance(self.source, int) else 0
        self.put_away()
        self.source = number % _MOST_CAMERAS
        self.put_on()

    def freeze_sheet(self) -> None:
        """Make one quiet photograph of the plain sheet that lies where the art lay."""
        self.freeze(is_sheet=True)

    def freeze(self, *, is_sheet: bool = False) -> None:
        """Make one quiet photograph of the next frames."""
        feed = self._feed
        if feed is None or self.is_freezing:
            return
        self._pause.stop()
        self.is_freezing, self.share, self.fault = True, 0.0, ""
        folder = self.folder
        self._errands.runner.start(
            LIVE,
            lambda progress: _frozen(feed, folder, progress),
            done=self._take_sheet if is_sheet else self._take_frozen,
            failed=self._fail,
        )
        self.changed.emit()

    def _go_on(self) -> None:
        if not self.is_on or self.is_freezing:
            return
        feed, source, room = self._feed, self.source, self.room
        self._errands.runner.start(
            LIVE,
            lambda progress: _seen(feed, source, room, progress),
            done=self._take_seen,
            failed=self._fail,
        )

    def _take_seen(self, seen: "tuple[CameraFeed, QImage]") -> None:
        self._feed, self.image = seen
        self._pause.start()
        self.changed.emit()

    def _take_frozen(self, path: Path) -> None:
        self.put_away()
        self.frozen.emit(path)

    def _take_sheet(self, path: Path) -> None:
        self.put_away()
        self.sheet_frozen.emit(path)

    def _hear(self, topic: str, share: float, _words: str) -> None:
        if topic == LIVE and self.is_freezing:
            self.share = share
            self.changed.emit()

    def _fail(self, error: Exception) -> None:
        was_freezing, self.is_freezing = self.is_freezing, False
        if not isinstance(error, FramingPaletteError):
            self.put_away()
            self._errands.tell(error)
            return
        self.fault = str(error)
        if was_freezing and self._feed is not None:
            self.changed.emit()
            self._go_on()  # a hand that moved does not end the live picture
        else:
            self.put_away()
            if isinstance(self.source, int):
                self.source = 0  # the next try begins with the first again

    def _leave(self) -> None:
        if self._session.step != "intake":
            self.put_away()


def _nothing(_answer: None) -> None:
    return


def _seen(
    feed: "CameraFeed | None", source: "Source", room: QSize, progress: Progress
) -> "tuple[CameraFeed, QImage]":
    """Return the feed, opened if need be, and its next frame no larger than the room for it."""
    import cv2

    from framing_palette.picture.camera_feed_files import CameraFeed

    opened = feed or CameraFeed(source)
    try:
        frame = opened.frame()
        rows, columns = frame.shape[:2]
        scale = min(1.0, room.width() / columns, room.height() / rows)
        size = max(1, round(columns * scale)), max(1, round(rows * scale))
        small = cv2.resize(frame, size, interpolation=cv2.INTER_AREA) if scale < 1 else frame
        image = image_of(np.asarray(small, np.uint8))
        progress.tell(1.0)
    except Exception:
        if feed is None:
            opened.close()  # nobody will ever hear of it
        raise
    return opened, image


def _frozen(feed: "CameraFeed", folder: Path | None, progress: Progress) -> Path:
    from framing_palette.picture.camera_feed_files import freeze, write_frozen

    picture = freeze(feed, tell=progress.tell)
    folder = folder or _cache_folder()
    path = folder / f"camera-{datetime.now(tz=UTC):%Y%m%d-%H%M%S}.png"
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise OutputError(
            folder,
            problem=f"cannot be made ({error.strerror or error})",
            todo="make room for it, or take a photograph and open that",
        ) from error
    return write_frozen(path, picture)


def _cache_folder() -> Path:
    from platformdirs import user_cache_path

    return user_cache_path("framing-palette", appauthor=False) / "camera"
