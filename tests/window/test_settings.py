import json
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from framing_palette.errors import FieldError, OutputError
from framing_palette.units import Length
from framing_palette.window.preference_files import read_preferences, write_preferences
from framing_palette.window.preferences import Preferences
from framing_palette.window.settings_shelf import SettingsShelf
from framing_palette.window.shell import Shell


@pytest.fixture
def settings(open_shell: Shell) -> SettingsShelf:
    open_shell.show()
    open_shell.toggle_settings()
    found = open_shell.findChild(SettingsShelf)
    assert isinstance(found, SettingsShelf)
    return found


def test_the_surround_follows_the_slider_at_once(
    open_shell: Shell, settings: SettingsShelf, qtbot: QtBot
) -> None:
    settings.surround.setValue(30)
    assert open_shell.session.preferences.surround == 30
    image = open_shell.stages.currentWidget().grab().toImage()
    assert image.pixelColor(4, 4).getRgb()[:3] == (71, 71, 71)


def test_a_chip_changes_the_unit_everywhere(
    open_shell: Shell, settings: SettingsShelf, qtbot: QtBot
) -> None:
    chip = settings.choices["unit"].chips["mm"]
    qtbot.mouseClick(chip, Qt.MouseButton.LeftButton)
    assert open_shell.session.preferences.unit == "mm"
    assert settings.lengths["mat_border"].edit.text() == "63.5 mm"
    assert "320 × 240 mm" in open_shell.job_line._facts.text()


def test_a_typed_length_is_taken_and_a_wrong_one_says_what_to_write(
    open_shell: Shell, settings: SettingsShelf, qtbot: QtBot
) -> None:
    field = settings.lengths["mat_border"]
    field.edit.setText("3 1/4")
    field.edit.editingFinished.emit()
    assert open_shell.session.preferences.mat_border == Length.inches("3 1/4")
    field.edit.setText("wide")
    field.edit.editingFinished.emit()
    assert '"wide" is not a length' in field.fault.text()
    assert open_shell.session.preferences.mat_border == Length.inches("3 1/4")
    field.edit.setText("-2")
    field.edit.editingFinished.emit()
    assert field.fault.text() != ""
    assert open_shell.session.preferences.mat_border == Length.inches("3 1/4")


def test_the_dark_theme_is_put_on_and_off(
    open_shell: Shell, settings: SettingsShelf, qtbot: QtBot, app: QApplication
) -> None:
    qtbot.mouseClick(settings.choices["theme"].chips["dark"], Qt.MouseButton.LeftButton)
    assert app.palette().window().color().lightness() < 80
    qtbot.mouseClick(settings.choices["theme"].chips["light"], Qt.MouseButton.LeftButton)
    assert app.palette().window().color().lightness() > 200


def test_settings_are_saved_a_moment_later(
    open_shell: Shell, settings: SettingsShelf, qtbot: QtBot, preferences_file: Path
) -> None:
    settings.surround.setValue(45)
    qtbot.waitUntil(preferences_file.exists, timeout=5000)
    assert read_preferences(preferences_file).surround == 45


def test_going_to_a_step_puts_the_settings_away(open_shell: Shell, settings: SettingsShelf) -> None:
    open_shell.go("choose")
    assert open_shell.shelves.currentWidget() is not settings
    assert not open_shell.doors["settings"].isChecked()


def test_preferences_come_back_from_their_file_as_they_were(tmp_path: Path) -> None:
    wanted = Preferences(
        unit="mm",
        denominator=64,
        surround=33,
        theme="dark",
        language="de",
        mat_border=Length.inches("2 1/3"),
        reduced_motion=True,
        scale_percent=150,
        show_numbers=False,
    )
    path = tmp_path / "deep" / "window.json"
    write_preferences(wanted, path)
    assert read_preferences(path) == wanted


@pytest.mark.parametrize(
    "content",
    ["", "not json", "[1, 2]", '{"surround": 4000, "unit": 7, "theme": "pink", "nonsense": 1}'],
)
def test_a_broken_file_leaves_the_usual_preferences(tmp_path: Path, content: str) -> None:
    path = tmp_path / "window.json"
    path.write_text(content, encoding="utf-8")
    assert read_preferences(path) == Preferences()


def test_one_bad_value_does_not_spoil_the_others(tmp_path: Path) -> None:
    path = tmp_path / "window.json"
    table = {"surround": 4000, "unit": "mm", "mat_border": "many", "tolerance": "1"}
    path.write_text(json.dumps(table), encoding="utf-8")
    read = read_preferences(path)
    assert (read.surround, read.unit) == (Preferences().surround, "mm")
    assert read.mat_border == Preferences().mat_border
    assert read.tolerance == Length.mm_of(1)


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    blocker = tmp_path / "file"
    blocker.write_text("in the way", encoding="utf-8")
    with pytest.raises(OutputError, match="cannot be written"):
        write_preferences(Preferences(), blocker / "window.json")


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("surround", 19),
        ("denominator", 10),
        ("scale_percent", 110),
        ("unit", "ell"),
        ("theme", "pink"),
        ("language", "xx"),
        ("tolerance", Length.mm_of(0)),
    ],
)
def test_what_the_window_cannot_show_is_refused(name: str, value: object) -> None:
    with pytest.raises(FieldError):
        Preferences().changed(name, value)
