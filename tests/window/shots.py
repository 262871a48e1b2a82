"""Renders every step at two sizes into a folder: python tests/window/shots.py FOLDER."""

import os
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ["FRAMING_PALETTE_JOBS"] = f"{tempfile.mkdtemp()}/jobs.sqlite"  # not the user's own

from PySide6.QtCore import QEventLoop, QTimer
from PySide6.QtWidgets import QApplication

from framing_palette.catalogue import Kind
from framing_palette.picture import ellipse, rectangle
from framing_palette.units import Length
from framing_palette.window.drawing import now, take_outline
from framing_palette.window.keeping import keep_sample
from framing_palette.window.shell import Shell
from framing_palette.window.sliding import bend, lay_strip
from framing_palette.window.steps.choose import ChooseStep
from framing_palette.window.theme import put_on, tokens_named

ROOT = Path(__file__).resolve().parents[2]
SIZES = ((1366, 768), (1920, 1080), (911, 512), (683, 384))


def wait(ms: int) -> None:
    loop = QEventLoop()
    QTimer.singleShot(ms, loop.quit)
    loop.exec()


def rest(shell: Shell) -> None:
    idle = 0
    while idle < 5:
        wait(60)
        idle = 0 if shell.runner.is_busy() else idle + 1


def best(shell: Shell, place: int, kind: Kind | None = None) -> str:
    codes = [r.sample.code for r in shell.session.ranked if kind in (None, r.sample.kind)]
    return codes[place]


def lay(shell: Shell) -> None:
    shell.session.edit("Lay", laid=(best(shell, 0, Kind.MAT), best(shell, 0, Kind.MOULDING)))
    for place in (0, 3):
        keep_sample(shell.session, best(shell, place))


def slide(shell: Shell) -> None:
    shell.session.edit("Clear", laid=(), strips=())
    lay_strip(shell.session, best(shell, 0, Kind.MOULDING), (300.0, 120.0))
    bend(shell.session, shell.session.desk.strips[-1])
    lay_strip(shell.session, best(shell, 6, Kind.MAT), (260.0, 330.0))


def read_one(shell: Shell) -> None:
    session = shell.session
    if not session.desk.regions:
        take_outline(session, ellipse(0.2, 0.1, 0.5, 0.8), now(session))
        take_outline(session, rectangle(0.6, 0.55, 0.95, 0.8), now(session))
    session.assign("chosen_region", 0)


def light(shell: Shell) -> None:
    findings = shell.session.findings
    assert findings is not None
    shell.session.assign("lit_colour", findings.whole.colours[-1].lab)


def unlit(shell: Shell) -> None:
    shell.session.assign("lit_colour", None)


def settings(shell: Shell) -> None:
    shell.toggle_settings()


def keys(shell: Shell) -> None:
    shell.toggle_settings()
    shell.keys_sheet.toggle()


def compare(shell: Shell) -> None:
    if not shell.keys_sheet.isHidden():
        shell.keys_sheet.toggle()
    session = shell.session
    session.edit("Clear", strips=())
    for place in (6, 30):
        if len(session.desk.kept) < 3:
            keep_sample(session, best(shell, place, Kind.MAT))
    session.show_side_by_side(shown=True)


def tour(shell: Shell) -> None:
    shell.session.show_side_by_side(shown=False)
    shell.start_tour()
    shell.tour.go_on()
    shell.tour.go_on()


def measures(shell: Shell) -> None:
    shell.tour.leave()
    step = shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    assert step.shelf_widget is not None
    if step.shelf_widget.measures.isHidden():
        step.shelf_widget.measures.toggle()
    step.shelf_widget.measures.rows[2].setChecked(True)
    assert step.canvas is not None
    step.canvas.pointed.emit(0.5, 0.4)


def quiet(shell: Shell) -> None:
    step = shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    assert step.shelf_widget is not None
    step.shelf_widget.measures.toggle()
    shell.session.assign("probe", None)


Scenes = dict[str, dict[str, Callable[[Shell], None]]]
SCENES: Scenes = {
    "read": {"regions": read_one, "light": light, "unlit": unlit},
    "choose": {
        "laid": lay,
        "slide": slide,
        "settings": settings,
        "keys": keys,
        "compare": compare,
        "tour": tour,
        "measures": measures,
        "quiet": quiet,
    },
}


def main(folder: Path, theme: str = "light") -> None:
    app = QApplication.instance() or QApplication(sys.argv[:1])
    put_on(app, tokens_named(theme))
    shell = Shell()
    shell.show()
    rest(shell)
    shell.grab().save(str(folder / f"empty-{theme}.png"))
    shell.errands.open_catalogue(ROOT / "catalog")
    picture = Path(os.environ.get("SHOT_PICTURE", ROOT / "sample_images" / "ferry_at_dusk.jpg"))
    shell.errands.open_picture(
        picture,
        regions_path=None if "SHOT_PICTURE" in os.environ else picture.with_suffix(".regions.json"),
        art_size=(Length.inches(24), Length.inches(18)),
    )
    rest(shell)
    for width, height in SIZES:
        shell.resize(width, height)
        for key in shell.steps:
            shell.go(key)
            if shell.session.ranked:
                shell.session.assign("chosen_code", shell.session.ranked[1].sample.code)
            rest(shell)
            shell.grab().save(str(folder / f"{key}-{width}-{theme}.png"))
            for name, act in SCENES.get(key, {}).items():
                act(shell)
                rest(shell)
                shell.grab().save(str(folder / f"{key}-{name}-{width}-{theme}.png"))
    shell.close()


if __name__ == "__main__":
    target = Path(sys.argv[1])
    target.mkdir(parents=True, exist_ok=True)
    main(target, *sys.argv[2:3])
