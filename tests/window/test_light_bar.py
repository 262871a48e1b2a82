"""The client's light: what is seen in it, and the words beside it."""

from pathlib import Path

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from framing_palette.window import building
from framing_palette.window.shell import Shell
from framing_palette.window.steps.build import BuildStage, BuildStep

from .buildable import BUILDABLE


def rest(shell: Shell, qtbot: QtBot) -> None:
    idle = 0
    while idle < 3:
        qtbot.wait(50)
        idle = 0 if shell.runner.is_busy() else idle + 1


@pytest.fixture
def stage(open_shell: Shell, qtbot: QtBot, tmp_path: Path) -> BuildStage:
    open_shell.rack_book.folder = tmp_path
    open_shell.session.assign("catalogue", BUILDABLE)
    open_shell.show()
    rest(open_shell, qtbot)
    building.begin_design(open_shell.session, ["brick-red", "black-flat"])
    open_shell.go("build")
    rest(open_shell, qtbot)
    step = open_shell.steps["build"]
    assert isinstance(step, BuildStep)
    assert step.stage_widget is not None
    return step.stage_widget


def pick(stage: BuildStage, light: str) -> None:
    picker = stage.light.picker
    picker.setCurrentIndex(picker.findData(light))
    picker.activated.emit(picker.currentIndex())


def seen(stage: BuildStage) -> np.ndarray:
    assert stage.preview.rendered is not None
    image = stage.preview.rendered.image
    pixels = np.frombuffer(image.constBits(), dtype=np.uint8)
    return pixels.reshape(image.height(), -1)[::7, ::7].copy()


def test_the_frame_is_drawn_anew_in_the_clients_light_and_daylight_brings_the_first_look_back(
    stage: BuildStage, open_shell: Shell, qtbot: QtBot
) -> None:
    before = seen(stage)
    assert stage.light.told.isHidden()
    pick(stage, "A")
    rest(open_shell, qtbot)
    assert open_shell.session.light == "A"
    lit = seen(stage)  # lower by the line of words, so the middles are compared
    middles = (image[len(image) // 2, image.shape[1] // 2].astype(int) for image in (before, lit))
    assert len(set(middles)) == 2
    assert not stage.light.told.isHidden()
    assert stage.light.told.text()
    pick(stage, "D50")
    rest(open_shell, qtbot)
    assert np.array_equal(seen(stage), before)
    assert stage.light.told.isHidden()


def test_the_words_follow_the_design(stage: BuildStage, open_shell: Shell, qtbot: QtBot) -> None:
    pick(stage, "LED-B1")
    rest(open_shell, qtbot)
    assert "No two colours here match" in stage.light.told.text()
    building.add_sample(open_shell.session, "pale-sky", "art")
    rest(open_shell, qtbot)
    assert "Pale sky and the picture's" in stage.light.told.text()
    assert "warm LEDs (2700 K)" in stage.light.told.text()


def test_the_proposal_is_made_in_the_light_that_the_client_saw(
    stage: BuildStage, open_shell: Shell, qtbot: QtBot
) -> None:
    from framing_palette.window.paperwork import Paper, Paperwork

    papers = Paperwork(open_shell.session, open_shell.errands)
    plain = papers._order(Paper.PROPOSAL)
    pick(stage, "A")
    rest(open_shell, qtbot)
    lit = papers._order(Paper.PROPOSAL)
    ticket = papers._order(Paper.TICKET)
    assert plain is not None
    assert lit is not None
    assert ticket is not None
    assert (plain.light, lit.light, ticket.light) == ("D50", "A", "")


def test_the_client_sees_the_design_in_that_light_and_the_picture_again_in_daylight(
    stage: BuildStage, open_shell: Shell, qtbot: QtBot
) -> None:
    open_shell.toggle_client_view()
    view = open_shell.client_view
    assert view is not None
    assert view.at_home.isHidden()
    pick(stage, "LED-B1")
    rest(open_shell, qtbot)
    assert view.canvas.isHidden()
    assert view.at_home.rendered is not None
    assert view.caption.text() == "As it looks under warm LEDs (2700 K)"
    pick(stage, "D50")
    rest(open_shell, qtbot)
    assert view.at_home.isHidden()
    assert not view.canvas.isHidden()
