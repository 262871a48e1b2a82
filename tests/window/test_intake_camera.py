"""The camera above the table, a video file in its place: live, frozen, lost, and let go unseen."""

from pathlib import Path

import cv2
import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from pytestqt.qtbot import QtBot

from framing_palette.window.intake_camera import LIVE, IntakeCamera
from framing_palette.window.shell import Shell
from framing_palette.window.steps.intake import IntakeStage, IntakeStep

LEFT = Qt.MouseButton.LeftButton
ROWS, COLUMNS = 180, 240


def video(path: Path, frames: int, *, jumps: bool = False) -> Path:
    """A red sheet on a grey table, with noise; it lies elsewhere in every frame when it jumps."""
    rng = np.random.default_rng(2)
    writer = cv2.VideoWriter(str(path), cv2.VideoWriter.fourcc(*"FFV1"), 25, (COLUMNS, ROWS))
    for number in range(frames):
        frame = np.full((ROWS, COLUMNS, 3), 120.0)
        left = 40 + 6 * number % 80 if jumps else 40
        frame[40:140, left : left + 100] = (190, 60, 50)
        frame += rng.normal(0, 5, frame.shape)
        writer.write(np.clip(frame, 0, 255).astype(np.uint8)[..., ::-1])
    writer.release()
    return path


@pytest.fixture
def step(shell: Shell, tmp_path: Path) -> IntakeStep:
    shell.show()
    shell.go("intake")
    found = shell.steps["intake"]
    assert isinstance(found, IntakeStep)
    found.camera.folder = tmp_path / "frozen"
    return found


def stage_of(step: IntakeStep) -> IntakeStage:
    assert step.stage_widget is not None
    return step.stage_widget


def put_on(step: IntakeStep, source: int | Path, qtbot: QtBot) -> IntakeCamera:
    step.camera.source = source
    assert step.shelf_widget is not None
    qtbot.mouseClick(step.shelf_widget.camera, LEFT)
    return step.camera


def live(step: IntakeStep, source: Path, qtbot: QtBot) -> IntakeCamera:
    camera = put_on(step, source, qtbot)
    qtbot.waitUntil(lambda: camera.image is not None, timeout=10_000)
    return camera


def test_the_bench_shows_what_the_camera_sees(
    step: IntakeStep, qtbot: QtBot, tmp_path: Path
) -> None:
    camera = live(step, video(tmp_path / "still.avi", 60), qtbot)
    view = stage_of(step).camera_view
    assert view.isVisible()
    assert not stage_of(step).empty.isVisible()
    assert camera.image is not None
    assert camera.image.width() / camera.image.height() == pytest.approx(COLUMNS / ROWS, rel=0.02)
    seen = (
        view.live.grab().toImage().pixelColor(view.live.width() // 2 - 30, view.live.height() // 2)
    )
    assert seen.red() > seen.blue() + 60
    first = QImage(camera.image)
    qtbot.waitUntil(lambda: camera.image != first, timeout=10_000)  # it goes on


def test_freeze_goes_by_a_key_straight_into_intake_as_the_mean_of_the_frames(
    step: IntakeStep, qtbot: QtBot, tmp_path: Path
) -> None:
    live(step, video(tmp_path / "still.avi", 60), qtbot)
    freeze = stage_of(step).camera_view.freeze
    qtbot.waitUntil(freeze.hasFocus, timeout=5_000)
    with qtbot.waitSignal(step.camera.frozen, timeout=20_000) as told:
        qtbot.keyClick(freeze, Qt.Key.Key_Space)
    assert not step.camera.is_on
    qtbot.waitUntil(lambda: step.intaking.photograph is not None, timeout=20_000)
    assert stage_of(step).view.isVisible()
    job = step.session.desk.job
    assert job is not None
    assert job.picture is not None
    assert job.picture.name == told.args[0].name
    photograph = step.intaking.photograph
    assert photograph is not None
    table = photograph.picture.lab_d50[:30, :, 0]
    assert table.std() < 5 / 2.55 / 3  # a quarter of the noise of one frame, and a margin
    step.counter.errands.runner.close()


def test_something_that_moves_is_said_and_the_live_picture_goes_on(
    step: IntakeStep, qtbot: QtBot, tmp_path: Path
) -> None:
    camera = live(step, video(tmp_path / "jumps.avi", 60, jumps=True), qtbot)
    qtbot.mouseClick(stage_of(step).camera_view.freeze, LEFT)
    qtbot.waitUntil(lambda: not camera.is_freezing, timeout=20_000)
    assert "something move" in stage_of(step).camera_view.told.text()
    assert camera.is_on
    assert step.session.picture is None


def test_where_there_is_no_camera_the_button_explains(step: IntakeStep, qtbot: QtBot) -> None:
    camera = put_on(step, 77, qtbot)
    qtbot.waitUntil(lambda: not camera.is_on, timeout=10_000)
    shelf = step.shelf_widget
    assert shelf is not None
    assert shelf.camera_fault.isVisible()
    assert "Camera 78 cannot be reached: plug it in" in shelf.camera_fault.text()
    assert shelf.camera.isEnabled()
    assert stage_of(step).empty.isVisible()


def test_a_camera_that_is_lost_is_told_and_put_away(
    step: IntakeStep, qtbot: QtBot, tmp_path: Path
) -> None:
    camera = live(step, video(tmp_path / "short.avi", 4), qtbot)
    qtbot.waitUntil(lambda: not camera.is_on, timeout=10_000)
    assert step.shelf_widget is not None
    assert "has no more frames" in step.shelf_widget.camera_fault.text()


def test_the_camera_never_runs_unseen(
    shell: Shell, step: IntakeStep, qtbot: QtBot, tmp_path: Path
) -> None:
    camera = live(step, video(tmp_path / "still.avi", 40), qtbot)
    shell.go("read")
    assert not camera.is_on
    qtbot.waitUntil(lambda: not shell.runner.is_busy(), timeout=10_000)
    assert not shell.runner.is_busy(LIVE)
    assert camera.image is None


def test_escape_puts_the_camera_away(step: IntakeStep, qtbot: QtBot, tmp_path: Path) -> None:
    camera = live(step, video(tmp_path / "still.avi", 40), qtbot)
    qtbot.keyClick(stage_of(step).camera_view, Qt.Key.Key_Escape)
    assert not camera.is_on
    assert stage_of(step).empty.isVisible()


@pytest.mark.parametrize(("source", "wanted"), [(0, 1), (7, 0), (Path("video.avi"), 0)])
def test_another_camera_is_the_next_one_and_after_the_last_the_first(
    step: IntakeStep, qtbot: QtBot, source: int | Path, wanted: int
) -> None:
    step.camera.source = source
    step.camera.take_next()
    assert step.camera.source == wanted
    qtbot.waitUntil(lambda: not step.camera.is_on, timeout=10_000)


def test_frames_come_no_larger_than_they_are_shown(
    step: IntakeStep, qtbot: QtBot, tmp_path: Path
) -> None:
    path = tmp_path / "large.avi"
    writer = cv2.VideoWriter(str(path), cv2.VideoWriter.fourcc(*"MJPG"), 25, (1920, 1080))
    for _ in range(30):
        writer.write(np.full((1080, 1920, 3), 90, np.uint8))
    writer.release()
    camera = live(step, path, qtbot)
    assert camera.image is not None
    room = stage_of(step).camera_view.live.size()
    assert camera.image.width() < room.width() < 1920


def test_the_plain_sheet_can_be_frozen_too_once_there_is_a_picture(
    step: IntakeStep, qtbot: QtBot, tmp_path: Path
) -> None:
    live(step, video(tmp_path / "still.avi", 60), qtbot)
    view = stage_of(step).camera_view
    assert view.sheet.isHidden()
    with qtbot.waitSignal(step.camera.frozen, timeout=20_000):
        qtbot.mouseClick(view.freeze, LEFT)
    runner = step.counter.errands.runner
    qtbot.waitUntil(lambda: not runner.is_busy(), timeout=30_000)
    path = tmp_path / "sheet.avi"
    writer = cv2.VideoWriter(str(path), cv2.VideoWriter.fourcc(*"FFV1"), 25, (COLUMNS, ROWS))
    for _ in range(60):
        slope = np.linspace(140, 200, COLUMNS)[None, :, None]
        writer.write(np.broadcast_to(slope, (ROWS, COLUMNS, 3)).astype(np.uint8))
    writer.release()
    live(step, path, qtbot)
    assert not view.sheet.isHidden()
    with qtbot.waitSignal(step.camera.sheet_frozen, timeout=20_000):
        qtbot.mouseClick(view.sheet, LEFT)
    qtbot.waitUntil(lambda: not runner.is_busy(), timeout=30_000)
    light = step.intaking.how.light
    assert not isinstance(light, str)
    assert light.fall_off == pytest.approx((200 / 140) ** 2.2, rel=0.05)
