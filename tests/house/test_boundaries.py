"""The walls of the house: Qt stays in the window, heavy libraries stay out of the hall."""

import importlib
import pkgutil
import subprocess
import sys

import pytest

import framing_palette

HEAVY = ("cv2", "colour", "sklearn", "scipy", "skimage", "reportlab", "sqlalchemy", "PySide6")

_IMPORT_ALL_WITHOUT_QT = """
import importlib, pkgutil, sys

class NoQt:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] in ("PySide6", "shiboken6", "PyQt6", "PyQt5", "qtpy"):
            raise ImportError(f"{name} is blocked")

sys.meta_path.insert(0, NoQt())
import framing_palette
names = [
    module.name
    for module in pkgutil.walk_packages(framing_palette.__path__, "framing_palette.")
    if not module.name.startswith("framing_palette.window")
]
for name in names:
    importlib.import_module(name)
print(len(names))
"""


def test_every_module_outside_the_window_imports_with_qt_blocked() -> None:
    done = subprocess.run(
        [sys.executable, "-c", _IMPORT_ALL_WITHOUT_QT], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) > 100


@pytest.mark.parametrize(
    "words", [["--help"], ["--version"], ["rank", "--help"], ["demo", "--help"]]
)
def test_help_loads_no_heavy_library(words: list[str]) -> None:
    script = (
        "import sys\n"
        "from framing_palette.__main__ import main\n"
        f"sys.argv = ['framing-palette', *{words!r}]\n"
        "try:\n    main()\n"
        "except SystemExit:\n    pass\n"
        f"print([name for name in {(*HEAVY, 'numpy')!r} if name in sys.modules], file=sys.stderr)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert done.stderr.strip() == "[]"


def test_importing_the_window_folder_does_not_load_qt() -> None:
    script = "import sys, framing_palette.window; print('PySide6' in sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "False"


def test_every_folder_opens_with_its_question() -> None:
    folders = [
        module.name
        for module in pkgutil.iter_modules(framing_palette.__path__, "framing_palette.")
        if module.ispkg
    ]
    assert len(folders) == 11
    for name in folders:
        if name.endswith((".cli",)):
            continue  # a face of the program answers no question of its own
        words = importlib.import_module(name).__doc__ or ""
        assert words.strip().splitlines()[0].endswith(("?", ".")), name
        assert 4 <= len(words.strip().splitlines()) <= 12, name
