from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton
from pytestqt.qtbot import QtBot

from framing_palette.window.client_view import ClientView
from framing_palette.window.shell import Shell
from framing_palette.window.sliding import lay_strip


def view_of(shell: Shell) -> ClientView:
    shell.show()
    shell.toggle_client_view()
    assert shell.client_view is not None
    return shell.client_view


def test_it_follows_what_the_designer_lays_round(open_shell: Shell, qtbot: QtBot) -> None:
    view = view_of(open_shell)
    assert view.caption.text() == "A red boat"
    bare = view.canvas.place.width
    open_shell.session.edit("Lay", laid=("pale-sky", "black-flat"))
    assert view.caption.text() == "Pale sky with black flat"
    assert view.canvas.place.width < bare


def test_it_shows_nothing_that_is_still_in_hand(open_shell: Shell, qtbot: QtBot) -> None:
    view = view_of(open_shell)
    qtbot.waitUntil(lambda: not open_shell.runner.is_busy())
    before = view.canvas.grab().toImage()
    lay_strip(open_shell.session, "acid-lime")
    qtbot.waitUntil(lambda: not open_shell.runner.is_busy())
    assert view.canvas.grab().toImage() == before


def test_it_has_no_controls_and_goes_away_with_escape(open_shell: Shell, qtbot: QtBot) -> None:
    view = view_of(open_shell)
    assert view.findChildren(QAbstractButton) == []
    qtbot.keyClick(view, Qt.Key.Key_Escape)
    assert view.isHidden()


def test_the_old_look_fades_and_is_gone(open_shell: Shell, qtbot: QtBot) -> None:
    view = view_of(open_shell)
    open_shell.session.edit("Lay", laid=("pale-sky",))
    assert view._veil.isVisible()
    qtbot.waitUntil(view._veil.isHidden, timeout=3000)


def test_without_motion_nothing_fades(open_shell: Shell, qtbot: QtBot) -> None:
    calm = open_shell.session.preferences.changed("reduced_motion", value=True)
    open_shell.session.assign("preferences", calm)
    view = view_of(open_shell)
    open_shell.session.edit("Lay", laid=("pale-sky",))
    assert view._veil.isHidden()
