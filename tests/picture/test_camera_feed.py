"""The camera above the table, with a video file in its place whose truth is known."""

import os
import threading
from collections.abc import Callable
from pathlib import Path

import cv2
import numpy as np
import pytest

from framing_palette.errors import CameraError, FieldError, OutputError
from framing_palette.picture import read_picture_file
from framing_palette.picture.camera_feed_files import (
    FREEZE_FRAMES,
    CameraFeed,
    Frozen,
    freeze,
    write_frozen,
)

ROWS, COLUMNS = 120, 160
TONES = np.array([[60, 90, 120], [128, 128, 128], [200, 170, 140], [90, 160, 60]], np.float64)


def scene() -> np.ndarray:
    """Four even tones side by side, 8-bit sRGB as floats."""
    return np.repeat(np.repeat(TONES[None], ROWS, axis=0), COLUMNS // 4, axis=1)


def write_video(path: Path, frames: list[np.ndarray]) -> Path:
    rows, columns = frames[0].shape[:2]
    writer = cv2.VideoWriter(
        str(path), cv2.VideoWriter.fourcc(*"FFV1"), 25, (columns, rows)
    )  # without loss
    assert writer.isOpened()
    for frame in frames:
        writer.write(np.rint(np.clip(frame, 0, 255)).astype(np.uint8)[..., ::-1])
    writer.release()
    return path


def noisy(count: int, *, sigma: float = 6.0, seed: int = 4) -> list[np.ndarray]:
    rng = np.random.default_rng(seed)
    return [scene() + rng.normal(0, sigma, (ROWS, COLUMNS, 3)) for _ in range(count)]


def noise_of(srgb: np.ndarray) -> float:
    """Return the standard deviation within the even tones, in 8-bit steps."""
    tones = np.split(srgb.astype(np.float64), 4, axis=1)
    return float(np.mean([tone.std(axis=(0, 1)) for tone in tones]))


@pytest.mark.parametrize("frames", [4, 16, 64])
def test_noise_falls_with_the_square_root_of_the_frames(tmp_path: Path, frames: int) -> None:
    video = write_video(tmp_path / "still.avi", noisy(frames + 1))
    with CameraFeed(video) as feed:
        single = noise_of(feed.frame())
        frozen = freeze(feed, frames=frames)
    assert frozen.frames == frames
    gain = single / noise_of(frozen.srgb_u16 / 257.0)
    assert gain == pytest.approx(np.sqrt(frames), rel=0.08)


def test_the_mean_is_that_of_the_light_and_not_of_the_codes(tmp_path: Path) -> None:
    dark, bright = np.full((ROWS, COLUMNS, 3), 100.0), np.full((ROWS, COLUMNS, 3), 102.0)
    with CameraFeed(write_video(tmp_path / "two.avi", [dark, bright])) as feed:
        found = freeze(feed, frames=2).srgb_u16[0, 0, 0] / 65535
    light = ((np.array([100, 102]) / 255 + 0.055) / 1.055) ** 2.4  # IEC 61966-2-1
    assert found == pytest.approx(1.055 * light.mean() ** (1 / 2.4) - 0.055, abs=1 / 65535)


def test_a_frozen_picture_is_read_back_through_the_one_door(tmp_path: Path) -> None:
    with CameraFeed(write_video(tmp_path / "still.avi", noisy(FREEZE_FRAMES))) as feed:
        frozen = freeze(feed)
    path = write_frozen(tmp_path / "frozen.png", frozen)
    picture = read_picture_file(path)
    assert (picture.columns, picture.rows) == (COLUMNS, ROWS)
    from framing_palette.colour import srgb_to_lab_d50

    wanted = np.asarray(srgb_to_lab_d50(frozen.srgb_u16 / 65535.0))
    np.testing.assert_allclose(picture.lab_d50, wanted, atol=0.01)


def test_frames_keep_red_where_red_was(tmp_path: Path) -> None:
    red = np.zeros((ROWS, COLUMNS, 3))
    red[..., 0] = 250
    with CameraFeed(write_video(tmp_path / "red.avi", [red])) as feed:
        assert feed.frame()[0, 0].tolist() == [250, 0, 0]


def test_a_hand_in_the_picture_is_noticed(tmp_path: Path) -> None:
    frames = noisy(8)
    frames[5][30:70, 40:80] = (220, 180, 150)
    with (
        CameraFeed(write_video(tmp_path / "hand.avi", frames)) as feed,
        pytest.raises(CameraError, match="something move"),
    ):
        freeze(feed, frames=8)


def test_lamps_that_flicker_as_a_whole_are_no_movement(tmp_path: Path) -> None:
    swing = 1 + 0.06 * np.sin(np.arange(8))
    frames = [frame * factor for frame, factor in zip(noisy(8), swing, strict=True)]
    with CameraFeed(write_video(tmp_path / "flicker.avi", frames)) as feed:
        assert freeze(feed, frames=8).frames == 8


def test_a_camera_that_is_lost_while_freezing_says_so(tmp_path: Path) -> None:
    with (
        CameraFeed(write_video(tmp_path / "short.avi", noisy(3))) as feed,
        pytest.raises(CameraError, match=r"Short\.avi has no more frames: "),
    ):
        freeze(feed, frames=8)


def test_a_lost_camera_is_told_in_a_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    class Unplugged:
        def __init__(self, _number: int) -> None:
            self.asked: list[tuple[int, float]] = []

        def isOpened(self) -> bool:  # noqa: N802 - OpenCV's own name
            return True

        def set(self, what: int, value: float) -> None:
            self.asked.append((what, value))

        def read(self) -> tuple[bool, None]:
            return False, None

        def release(self) -> None:
            self.asked.clear()

    monkeypatch.setattr(cv2, "VideoCapture", Unplugged)
    with CameraFeed(1) as feed, pytest.raises(CameraError) as told:
        feed.frame()
    assert str(told.value).startswith("Camera 2 gives no more pictures: check its cable")


def test_where_there_is_no_camera_a_sentence_says_what_to_do(
    capfd: pytest.CaptureFixture[str],
) -> None:
    with pytest.raises(CameraError) as told:
        CameraFeed(77)
    sentence = str(told.value)
    assert sentence.startswith("Camera 78 cannot be reached: plug it in")
    assert "\n" not in sentence
    out, err = capfd.readouterr()
    assert not out + err  # OpenCV does not write past the program


def test_a_file_that_is_no_video_is_refused(
    tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "notes.avi"
    path.write_bytes(b"no video at all" * 50)
    with pytest.raises(CameraError, match="is no video"):
        CameraFeed(path)
    assert not "".join(capfd.readouterr())


def test_a_closed_camera_gives_nothing(tmp_path: Path) -> None:
    feed = CameraFeed(write_video(tmp_path / "still.avi", noisy(2)))
    feed.close()
    feed.close()
    with pytest.raises(CameraError, match="was closed"):
        feed.frame()


def test_two_threads_that_ask_at_once_get_every_frame_once(tmp_path: Path) -> None:
    frames = [np.full((ROWS, COLUMNS, 3), 10.0 * number) for number in range(20)]
    got: list[int] = []
    with CameraFeed(write_video(tmp_path / "count.avi", frames)) as feed:

        def take() -> None:
            got.extend(int(feed.frame()[0, 0, 0]) for _ in range(10))

        threads = [threading.Thread(target=take) for _ in range(2)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join()
    assert sorted(got) == [10 * number for number in range(20)]


@pytest.mark.parametrize("frames", [0, -1, 257])
def test_a_number_of_frames_out_of_range_is_refused(tmp_path: Path, frames: int) -> None:
    with (
        CameraFeed(write_video(tmp_path / "still.avi", noisy(1))) as feed,
        pytest.raises(FieldError, match="frames"),
    ):
        freeze(feed, frames=frames)


def test_freezing_tells_how_far_it_is_and_can_be_stopped(tmp_path: Path) -> None:
    class Stopped(Exception):  # noqa: N818 - a test's own
        pass

    def stop_at_half() -> Callable[[float], None]:
        def tell(share: float) -> None:
            told.append(share)
            if share >= 0.5:
                raise Stopped

        return tell

    told: list[float] = []
    with CameraFeed(write_video(tmp_path / "still.avi", noisy(8))) as feed, pytest.raises(Stopped):
        freeze(feed, frames=8, tell=stop_at_half())
    assert told == [0.125, 0.25, 0.375, 0.5]


@pytest.mark.skipif(os.name == "nt", reason="a path that cannot be a folder differs there")
def test_a_folder_that_cannot_be_written_to_is_said(tmp_path: Path) -> None:
    frozen = Frozen(np.zeros((4, 4, 3), np.uint16), 1)
    with pytest.raises(OutputError):
        write_frozen(tmp_path / "no folder" / "frozen.png", frozen)
