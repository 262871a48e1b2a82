"""The camera above the table: live pictures, and one that is frozen from many.

A still camera on a stand sees the same thing again and again, and only its noise differs. The mean
of N frames, taken in linear light as the light itself would add up, has 1/sqrt(N) of that noise, so
a frozen picture is written with 16 bits. OpenCV's VideoCapture gives the frames; a video file
serves as well as a camera.
"""

import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from types import TracebackType
from typing import Any, Final, Self

import numpy as np
from numpy.typing import NDArray

from framing_palette.arrays import Float32Array, UInt8Array
from framing_palette.colour import linear_to_srgb, srgb_to_linear
from framing_palette.errors import CameraError, FieldError
from framing_palette.whole_files import write_whole

FREEZE_FRAMES: Final = 16
MOST_FRAMES: Final = 256

_WIDEST: Final = (3840, 2160)  # asked of a camera, which gives the nearest that it can
# To which frames are reduced before movement is looked for: at most so many cells along the longer
# side, each of at least so many pixels, over which noise averages out.
_GLANCE_SIDE: Final = 96
_CELL_PX: Final = 8
_MOVED_BY: Final = 0.04  # of full linear light, in a cell of a glance
_MOVED_CELLS: Final = 0.004  # share of cells

Source = int | Path


class CameraFeed:
    """A camera, or a video file in its place; frames are asked for one at a time.

    Any thread may ask; two at once wait for each other.

    Parameters
    ----------
    source
        The number of a camera, 0 for the first, or a video file.

    Raises
    ------
    CameraError
        When there is no such camera, or the file is no video.
    """

    def __init__(self, source: Source) -> None:
        self.source = source
        self._lock = threading.Lock()
        self._capture = _opened(source)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        _kind: type[BaseException] | None,
        _error: BaseException | None,
        _trace: TracebackType | None,
    ) -> None:
        self.close()

    def frame(self) -> UInt8Array:
        """Return the next frame, shape (rows, columns, 3), 8-bit sRGB.

        Raises
        ------
        CameraError
            When no more comes.
        """
        with self._lock:
            if self._capture is None:
                raise CameraError(self.name, problem="was closed", todo="start it again")
            is_there, bgr = self._capture.read()
        if not is_there or bgr is None:
            if isinstance(self.source, Path):
                raise CameraError(
                    self.name,
                    problem="has no more frames",
                    todo="start it again or take a longer one",
                )
            raise CameraError(
                self.name,
                problem="gives no more pictures",
                todo="check its cable and its power, and start it again",
            )
        return _as_rgb(bgr)

    @property
    def name(self) -> str:
        """What people call it."""
        return camera_name(self.source)

    def close(self) -> None:
        """Let the camera go, for other programs to use."""
        with self._lock:
            if self._capture is not None:
                self._capture.release()
                self._capture = None


def camera_name(source: Source) -> str:
    """Return what people call a camera; they count from one."""
    return source.name if isinstance(source, Path) else f"camera {source + 1}"


def _opened(source: Source) -> Any:
    import cv2

    with _quiet():
        capture = cv2.VideoCapture(str(source) if isinstance(source, Path) else source)
    if capture.isOpened():
        if not isinstance(source, Path):
            _ask_for_the_widest(capture)
        return capture
    if isinstance(source, Path):
        raise CameraError(
            source.name, problem="is no video that can be read", todo="choose another file"
        )
    raise CameraError(
        camera_name(source),
        problem="cannot be reached",
        todo="plug it in, close other programs that use it, or open a photograph instead",
    )


def _ask_for_the_widest(capture: Any) -> None:
    import cv2

    # Few cameras send large frames uncompressed at more than one or two a second.
    capture.set(cv2.CAP_PROP_FOURCC, cv2.VideoWriter.fourcc(*"MJPG"))
    capture.set(cv2.CAP_PROP_FRAME_WIDTH, _WIDEST[0])
    capture.set(cv2.CAP_PROP_FRAME_HEIGHT, _WIDEST[1])


@contextmanager
def _quiet() -> Iterator[None]:
    """Keep OpenCV from writing about a missing camera past the program's own sentence."""
    import cv2

    level = cv2.utils.logging.getLogLevel()
    cv2.utils.logging.setLogLevel(cv2.utils.logging.LOG_LEVEL_SILENT)
    try:
        yield
    finally:
        cv2.utils.logging.setLogLevel(level)


@dataclass(frozen=True, slots=True, eq=False)
class Frozen:
    """What was frozen.

    Parameters
    ----------
    srgb_u16
        Shape (rows, columns, 3), 16-bit sRGB.
    frames
        Of how many frames it is the mean.
    """

    srgb_u16: NDArray[np.uint16]
    frames: int


def freeze(
    feed: CameraFeed,
    *,
    frames: int = FREEZE_FRAMES,
    tell: Callable[[float], None] | None = None,
) -> Frozen:
    """Return the mean of the next frames in linear light.

    Noise that differs from frame to frame falls with the square root of their number; what stays,
    such as dust or uneven light, is not touched.

    Parameters
    ----------
    frames
        How many, 1 to 256.
    tell
        Hears how far it is, 0..1; what it raises ends the freezing.

    Raises
    ------
    CameraError
        When the camera gives no more, or something moved meanwhile.
    FieldError
        When `frames` is out of range.
    """
    import cv2

    if not 1 <= frames <= MOST_FRAMES:
        raise FieldError("frames", got=frames, wanted=f"give 1 to {MOST_FRAMES}")
    codes = np.linspace(0.0, 1.0, 256)
    table = np.asarray(srgb_to_linear(np.stack([codes] * 3, axis=-1))[..., 0], np.float32)
    total: Any = None
    glances = []
    for place in range(frames):
        frame = feed.frame()
        if total is None:
            total = np.zeros(frame.shape, np.float32)
        if frame.shape != total.shape:
            raise CameraError(
                feed.name, problem="changed the size of its pictures", todo="freeze again"
            )
        linear: Any = cv2.LUT(frame, table)
        cv2.accumulate(linear, total)
        glances.append(_glance(linear))
        if tell is not None:
            tell((place + 1) / frames)
    if _is_moved(np.array(glances)):
        raise CameraError(
            feed.name,
            problem="saw something move while the picture was frozen",
            todo="keep hands, art and stand still and freeze again",
        )
    encoded = np.asarray(linear_to_srgb(total / np.float32(frames)))
    return Frozen(np.rint(np.clip(encoded, 0, 1) * 65535).astype(np.uint16), frames)


def write_frozen(path: Path, frozen: Frozen) -> Path:
    """Write a frozen picture as a 16-bit PNG without a profile, and return its path.

    A camera's feed does not say what its colours are, so the file does not either.

    Raises
    ------
    OutputError
        When it cannot be written.
    """
    import cv2

    _, content = cv2.imencode(".png", frozen.srgb_u16[..., ::-1], [cv2.IMWRITE_PNG_COMPRESSION, 1])
    return write_whole(path, bytes(content), private=True)  # a client's art


def _as_rgb(frame: Any) -> UInt8Array:
    import cv2

    if frame.ndim == 2:
        return np.asarray(cv2.cvtColor(frame, cv2.COLOR_GRAY2RGB), np.uint8)
    return np.asarray(cv2.cvtColor(frame, cv2.COLOR_BGR2RGB), np.uint8)


def _glance(linear: Any) -> Float32Array:
    """Return a frame reduced so far that noise is gone and movement is not."""
    import cv2

    scale = min(_GLANCE_SIDE / max(linear.shape[:2]), 1 / _CELL_PX)
    size = max(1, round(linear.shape[1] * scale)), max(1, round(linear.shape[0] * scale))
    return np.asarray(cv2.resize(linear, size, interpolation=cv2.INTER_AREA), np.float32)


def _is_moved(glances: Float32Array) -> bool:
    """Tell whether cells differ between frames by more than lamps flicker as a whole."""
    level = glances.mean(axis=(1, 2, 3), keepdims=True)
    steady = glances * (level.mean() / np.maximum(level, 1e-6))
    apart = np.ptp(steady, axis=0).max(axis=-1)
    return bool((apart > _MOVED_BY).mean() > _MOVED_CELLS)
