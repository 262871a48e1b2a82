"""Opening the window: on nothing, on a picture, or on a saved job."""

import sys
from pathlib import Path


def run(
    picture_path: Path | None = None,
    regions_path: Path | None = None,
    catalogue_dir: Path | None = None,
) -> int:
    """Open the window and return the exit code when it is closed."""
    from PySide6.QtWidgets import QApplication

    from framing_palette.window.shell import Shell
    from framing_palette.window.theme import put_on, tokens_named

    app = QApplication.instance() or QApplication(sys.argv[:1])
    if not isinstance(app, QApplication):
        raise TypeError
    put_on(app, tokens_named("system"))
    shell = Shell()
    shell.show()
    if catalogue_dir is not None:
        shell.errands.open_catalogue(catalogue_dir)
    if picture_path is not None:
        shell.errands.open_picture(picture_path, regions_path=regions_path)
    return app.exec()
