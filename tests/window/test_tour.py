from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from framing_palette.window.preference_files import read_preferences
from framing_palette.window.shell import Shell
from framing_palette.window.tour import CARDS


def test_five_short_cards_lead_through_the_window_and_end(
    open_shell: Shell, qtbot: QtBot, preferences_file: Path
) -> None:
    open_shell.show()
    tour = open_shell.tour
    open_shell.start_tour()
    assert len(CARDS) == 5
    for card in CARDS:
        assert tour.isVisible()
        assert open_shell.session.step == card.step
        assert open_shell.rect().contains(tour.geometry())
        assert len(card.told.split()) < 45
        qtbot.mouseClick(tour.next_button, Qt.MouseButton.LeftButton)
    assert tour.isHidden()
    qtbot.waitUntil(preferences_file.exists, timeout=5000)
    assert read_preferences(preferences_file).toured


def test_the_tour_can_be_left_with_escape_and_taken_again_from_the_keys(
    open_shell: Shell, qtbot: QtBot
) -> None:
    open_shell.show()
    open_shell.start_tour()
    qtbot.keyClick(open_shell.tour.next_button, Qt.Key.Key_Escape)
    assert open_shell.tour.isHidden()
    assert open_shell.session.preferences.toured
    open_shell.keys_sheet.toggle()
    qtbot.mouseClick(open_shell.keys_sheet.tour, Qt.MouseButton.LeftButton)
    assert open_shell.tour.number == 0
    assert open_shell.keys_sheet.isHidden()


@pytest.mark.parametrize(("width", "height"), [(1920, 1080), (683, 384)])
def test_every_card_stays_inside_the_window(
    open_shell: Shell, qtbot: QtBot, width: int, height: int
) -> None:
    open_shell.resize(width, height)
    open_shell.show()
    open_shell.start_tour()
    for _ in CARDS:
        assert open_shell.rect().contains(open_shell.tour.geometry())
        open_shell.tour.go_on()
