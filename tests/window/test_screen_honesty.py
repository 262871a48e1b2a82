"""What the window says of the screen, and the patches by which a screen is checked."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColorSpace
from pytestqt.qtbot import QtBot

from framing_palette.colour import linear_to_srgb, srgb_to_lab_d50
from framing_palette.window import screen_check
from framing_palette.window.preference_files import read_preferences
from framing_palette.window.screen_check import GREY_STEPS, HALF_LIGHT, GreySteps, KnownPatch
from framing_palette.window.screen_profile import is_like_srgb, profile_of, read_profile
from framing_palette.window.settings_shelf import SettingsShelf
from framing_palette.window.shell import Shell

WIDE = QColorSpace(QColorSpace.NamedColorSpace.DisplayP3)
USUAL = QColorSpace(QColorSpace.NamedColorSpace.SRgb)

_ON_X11 = """
import ctypes
from PySide6.QtGui import QColorSpace, QGuiApplication
from framing_palette.window.screen_profile import profile_of
app = QGuiApplication([])
said = [profile_of(0) is None]
x11 = ctypes.CDLL("libX11.so.6")
x11.XOpenDisplay.restype = ctypes.c_void_p
x11.XInternAtom.restype = x11.XDefaultRootWindow.restype = ctypes.c_ulong
display = ctypes.c_void_p(x11.XOpenDisplay(None))
atom, kind = (x11.XInternAtom(display, name, 0) for name in (b"_ICC_PROFILE", b"CARDINAL"))
icc = bytes(QColorSpace(QColorSpace.NamedColorSpace.DisplayP3).iccProfile())
root = ctypes.c_ulong(x11.XDefaultRootWindow(display))
x11.XChangeProperty(
    display, root, ctypes.c_ulong(atom), ctypes.c_ulong(kind), 8, 0, icc, len(icc)
)
x11.XSync(display, 0)
print(*said, profile_of(0).description(), profile_of(1) is None, sep="|")
"""


def bar_of(shell: Shell) -> bool:
    return shell.screen_bar.isVisibleTo(shell)


def test_it_is_said_at_the_first_picture_and_never_again_once_read(
    open_shell: Shell, qtbot: QtBot, preferences_file: Path
) -> None:
    open_shell.show()
    assert bar_of(open_shell)
    for said in ("only approximately", "under good light", "spares delicate art"):
        assert said in open_shell.screen_bar.said.text()
    qtbot.mouseClick(open_shell.screen_bar.close_button, Qt.MouseButton.LeftButton)
    assert not bar_of(open_shell)
    qtbot.waitUntil(preferences_file.exists)
    again = Shell(read_preferences(preferences_file))
    qtbot.addWidget(again)
    again.session.assign("pyramid", open_shell.session.pyramid)
    assert not bar_of(again)
    again.runner.close()


def test_nothing_is_said_of_the_screen_before_there_is_a_picture(shell: Shell) -> None:
    assert not bar_of(shell)


def test_the_line_leads_to_the_check_in_the_settings(open_shell: Shell, qtbot: QtBot) -> None:
    open_shell.show()
    qtbot.mouseClick(open_shell.screen_bar.check, Qt.MouseButton.LeftButton)
    settings = open_shell.findChild(SettingsShelf)
    assert isinstance(settings, SettingsShelf)
    qtbot.waitUntil(lambda: not settings.screen_check.profile.visibleRegion().isEmpty())
    assert not settings.screen_check.steps.visibleRegion().isEmpty()


def test_every_grey_step_is_drawn_apart_from_its_neighbour_and_without_a_tint(
    qtbot: QtBot,
) -> None:
    steps = GreySteps()
    qtbot.addWidget(steps)
    steps.resize(14 * 20, 48)
    image = steps.grab().toImage()
    levels = []
    for number, lightness in enumerate(GREY_STEPS):
        red, green, blue, _ = image.pixelColor(number * 20 + 10, 20).getRgb()
        assert red == green == blue
        found = srgb_to_lab_d50(np.array([red, green, blue]) / 255)[0]
        assert abs(found - lightness) < 0.6
        levels.append(red)
    assert min(np.diff(levels)) >= 5


def test_lines_and_patch_send_the_same_light(qtbot: QtBot) -> None:
    assert abs(float(linear_to_srgb(np.full(3, 0.5))[0]) * 255 - HALF_LIGHT) < 0.5
    patch = KnownPatch()
    qtbot.addWidget(patch)
    patch.resize(300, 48)
    image = patch.grab().toImage()
    ratio = round(image.devicePixelRatio())
    column = [image.pixelColor(20, row).red() for row in range(48 * ratio)]
    assert column[::2] == [0] * (24 * ratio)
    assert column[1::2] == [255] * (24 * ratio)
    assert image.pixelColor(150 * ratio, 24 * ratio).red() == HALF_LIGHT


@pytest.mark.parametrize(
    ("space", "said"),
    [(None, "tells nothing"), (USUAL, "those in which"), (WIDE, "stronger or duller")],
)
def test_what_the_system_gives_of_the_profile_is_said(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, space: QColorSpace | None, said: str
) -> None:
    monkeypatch.setattr(screen_check, "profile_of", lambda _number: space)
    check = screen_check.ScreenCheck()
    qtbot.addWidget(check)
    assert said in check.profile.text()
    if space is not None:
        assert space.description() in check.profile.text()


def test_a_profile_comes_out_of_its_bytes_and_nonsense_is_none() -> None:
    read = read_profile(bytes(WIDE.iccProfile()))
    assert read is not None
    assert not is_like_srgb(read)
    usual = read_profile(bytes(USUAL.iccProfile()))
    assert usual is not None
    assert is_like_srgb(usual)
    assert read_profile(b"") is None
    assert read_profile(b"no profile at all" * 40) is None


def test_without_an_x_server_no_profile_is_known(qtbot: QtBot) -> None:
    assert profile_of(0) is None


@pytest.mark.skipif(shutil.which("xvfb-run") is None, reason="needs an X server to try it on")
def test_the_profile_is_read_from_a_real_x_server() -> None:
    done = subprocess.run(
        ["xvfb-run", "-a", sys.executable, "-c", _ON_X11],
        capture_output=True,
        text=True,
        check=True,
        env={**os.environ, "QT_QPA_PLATFORM": "xcb"},
        cwd=Path(__file__).resolve().parents[2],
        timeout=60,
    )
    assert done.stdout.strip() == "True|Display P3|True"
