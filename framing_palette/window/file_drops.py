"""A screen onto which a file can be dropped."""

from pathlib import Path

from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QWidget


class FileDrops(QWidget):
    """Hands the first file that is dropped to ``take_dropped``."""

    def __init__(self) -> None:
        super().__init__()
        self.setAcceptDrops(True)

    def take_dropped(self, path: Path) -> None:
        """Do with the file what the screen is for."""
        raise TypeError(path)  # every screen says what it takes

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Let files be dropped."""
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Take the first file that was dropped."""
        for url in event.mimeData().urls():
            if url.isLocalFile():
                event.acceptProposedAction()
                self.take_dropped(Path(url.toLocalFile()))
                return
