"""Renders taste and side by side at two sizes: python tests/window/taste_shots.py FOLDER."""

import os
import sys
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication

from framing_palette.catalogue import Kind
from framing_palette.ranking import write_taste_file
from framing_palette.units import Length
from framing_palette.window.keeping import keep_sample
from framing_palette.window.keeping_looks import keep_look
from framing_palette.window.preferences import Preferences
from framing_palette.window.shell import Shell
from framing_palette.window.steps.choose import ChooseStep
from framing_palette.window.theme import put_on, tokens_named
from tests.ranking.taste_by_hand import shop
from tests.window.shots import ROOT, best, rest

SIZES = ((1366, 768), (1920, 1080), (911, 512), (683, 384))


def scenes(shell: Shell, step: ChooseStep, folder: Path, width: int, theme: str) -> None:
    def shot(name: str) -> None:
        rest(shell)
        shell.grab().save(str(folder / f"taste-{name}-{width}-{theme}.png"))

    session = shell.session
    step._ask()
    shot("question")
    step.asking.stop()
    step.show_taste()
    shot("card-off")
    shell.taste.switch(on=True)
    shot("card-on")
    step._show_samples()
    session.assign("chosen_code", session.ranked[2].sample.code)
    shot("shortlist")
    assert step.shelf_widget is not None
    step.shelf_widget.do("away")
    shot("away")
    session.undo_stack.undo()
    session.show_side_by_side(shown=True)
    shot("board")
    assert step.board is not None
    step.board.panels[0].buttons["prefer"].click()
    step.board.blink_over()
    shot("blink")
    step.board.blink.setChecked(False)
    kept = session.desk.kept
    session.edit("Clear", kept=())
    for place in (0, 5):
        laid = (best(shell, place, Kind.MAT), best(shell, place, Kind.MOULDING))
        session.edit("Lay", laid=laid)
        keep_look(session)
    session.show_side_by_side(shown=True)
    shot("designs")
    session.show_side_by_side(shown=False)
    session.edit("Back", kept=kept, laid=())
    session.show_side_by_side(shown=False)
    shell.taste.switch(on=False)


def main(folder: Path, theme: str = "light") -> None:
    app = QApplication.instance() or QApplication(sys.argv[:1])
    put_on(app, tokens_named(theme))
    home = Path(tempfile.mkdtemp())
    write_taste_file(
        home / "taste.json", shop(200, weights={"vivid": 0.0, "depth": 4.0, "foil": 0.0})
    )
    shell = Shell(Preferences(theme=theme), preferences_file=home / "window.json")
    shell.show()
    shell.errands.open_catalogue(ROOT / "catalog")
    picture = ROOT / "sample_images" / "ferry_at_dusk.jpg"
    shell.errands.open_picture(
        picture,
        regions_path=picture.with_suffix(".regions.json"),
        art_size=(Length.inches(24), Length.inches(18)),
    )
    rest(shell)
    shell.go("choose")
    rest(shell)
    for place in (0, 8, 20):
        keep_sample(shell.session, best(shell, place, Kind.MAT))
    step = shell.steps["choose"]
    assert isinstance(step, ChooseStep)
    for width, height in SIZES:
        shell.resize(width, height)
        scenes(shell, step, folder, width, theme)
    shell.close()


if __name__ == "__main__":
    target = Path(sys.argv[1])
    target.mkdir(parents=True, exist_ok=True)
    main(target, *sys.argv[2:3])
