"""A folder that is watched for new photographs, as from a camera on a cable or a phone's sync."""

from pathlib import Path

from PySide6.QtCore import QFileSystemWatcher, QObject, QTimer, Signal

ENDINGS = frozenset(
    {".jpg", ".jpeg", ".png", ".tif", ".tiff", ".webp", ".heic", ".heif", ".dng", ".nef", ".cr2",
     ".cr3", ".arw", ".raf", ".orf", ".rw2"}
)  # fmt: skip
_REST_MS = 600


class WatchedFolder(QObject):
    """Tells the newest photograph once it has stopped growing."""

    arrived = Signal(object)
    """The path of a new photograph."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.folder: Path | None = None
        self._known: frozenset[Path] = frozenset()
        self._sizes: dict[Path, int] = {}
        self._watcher = QFileSystemWatcher(self)
        self._watcher.directoryChanged.connect(self._look_soon)
        self._rest = QTimer(self, interval=_REST_MS, singleShot=True)
        self._rest.timeout.connect(self.look)

    def watch(self, folder: Path | None) -> None:
        """Watch a folder from now on; what lies in it already is not new."""
        if self.folder is not None:
            self._watcher.removePath(str(self.folder))
        self.folder = folder
        self._sizes = {}
        self._known = frozenset(self._there())
        if folder is not None:
            self._watcher.addPath(str(folder))

    def look(self) -> None:
        """Look for photographs that are new and whole."""
        new = {path: size for path, size in self._there().items() if path not in self._known}
        whole = [path for path, size in new.items() if size and self._sizes.get(path) == size]
        self._sizes = new
        if whole:
            self._known |= set(whole)
            self.arrived.emit(max(whole, key=lambda path: path.name))
        if len(whole) < len(new):
            self._rest.start()  # still growing

    def _look_soon(self, _folder: str) -> None:
        self._rest.start()

    def _there(self) -> dict[Path, int]:
        if self.folder is None or not self.folder.is_dir():
            return {}
        return {
            path: path.stat().st_size
            for path in self.folder.iterdir()
            if path.suffix.lower() in ENDINGS and path.is_file()
        }
