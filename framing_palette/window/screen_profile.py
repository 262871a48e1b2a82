"""The screen's own colour profile, where the system gives it.

X11 keeps an ICC profile as a property of its root window (the convention "ICC Profiles in X",
freedesktop.org): ``_ICC_PROFILE`` for the first screen, ``_ICC_PROFILE_1`` for the second.
"""

import ctypes
import ctypes.util
from typing import Any

from PySide6.QtCore import QByteArray
from PySide6.QtGui import QColorSpace, QGuiApplication

_PROPERTY = "_ICC_PROFILE"
_LARGEST_WORDS = 4_000_000
_ANY_TYPE = 0


def profile_of(number: int) -> QColorSpace | None:
    """Return the profile of a screen by its number; None when the system tells of none."""
    if QGuiApplication.platformName() != "xcb":
        return None
    content = x11_profile(_PROPERTY if number == 0 else f"{_PROPERTY}_{number}")
    return read_profile(content)


def read_profile(content: bytes) -> QColorSpace | None:
    """Return the profile in some bytes; None when they hold none that can be read."""
    space = QColorSpace.fromIccProfile(QByteArray(content)) if content else QColorSpace()
    return space if space.isValid() else None


def is_like_srgb(space: QColorSpace) -> bool:
    """Tell whether a screen has the colours of sRGB, in which the picture is shown."""
    return space.primaries() is QColorSpace.Primaries.SRgb


def x11_profile(name: str) -> bytes:
    """Return a property of the root window of the X server; empty when there is none."""
    library = ctypes.util.find_library("X11")
    if library is None:
        return b""
    x11 = ctypes.CDLL(library)
    x11.XOpenDisplay.restype = ctypes.c_void_p
    x11.XOpenDisplay.argtypes = [ctypes.c_char_p]
    display = x11.XOpenDisplay(None)
    if not display:
        return b""
    try:
        return _property(x11, ctypes.c_void_p(display), name)
    finally:
        x11.XCloseDisplay(ctypes.c_void_p(display))


def _property(x11: Any, display: ctypes.c_void_p, name: str) -> bytes:
    for function in (x11.XInternAtom, x11.XDefaultRootWindow):
        function.restype = ctypes.c_ulong
    atom = x11.XInternAtom(display, name.encode(), 1)
    if not atom:
        return b""
    kind, form = ctypes.c_ulong(), ctypes.c_int()
    count, left = ctypes.c_ulong(), ctypes.c_ulong()
    data = ctypes.POINTER(ctypes.c_ubyte)()
    x11.XGetWindowProperty(
        display,
        ctypes.c_ulong(x11.XDefaultRootWindow(display)),
        ctypes.c_ulong(atom),
        ctypes.c_long(0),
        ctypes.c_long(_LARGEST_WORDS),
        0,
        ctypes.c_ulong(_ANY_TYPE),
        *(ctypes.byref(answer) for answer in (kind, form, count, left, data)),
    )
    if form.value == 0:  # there is no such property
        return b""
    content = bytes(data[: count.value]) if form.value == 8 else b""
    x11.XFree(data)
    return content
