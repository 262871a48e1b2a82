"""Agree: one design is chosen, the papers are looked at, saved and printed, the status moves on."""

from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtPrintSupport import QPrinter
from pytestqt.qtbot import QtBot

from framing_palette.design import Reading
from framing_palette.jobs import Status
from framing_palette.units import Length
from framing_palette.window import building
from framing_palette.window.agree_shelf import AgreeShelf
from framing_palette.window.job_files import now
from framing_palette.window.paperwork import Paper, draw_pages
from framing_palette.window.shell import Shell
from framing_palette.window.steps.agree import AgreeStage, AgreeStep
from framing_palette.window.steps.step import Standing
from tests.papers.made_up import words_of
from tests.window.buildable import BUILDABLE

inch = Length.inches
LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def step(open_shell: Shell, qtbot: QtBot) -> AgreeStep:
    """Two designs, measured twice, none chosen."""
    open_shell.show()
    session = open_shell.session
    with qtbot.waitSignal(session.ranked_changed, timeout=20_000):
        session.assign("catalogue", BUILDABLE)
    building.begin_design(session, ("pale-sky", "black-flat"))
    building.begin_design(session, ("deep-sea", "black-flat"))
    from framing_palette.jobs.measured import with_reading

    job = building.job_of(session)
    for by in ("AB", "CD"):
        reading = Reading(inch(12), inch(9), by, now())
        job = with_reading(job, reading, tolerance=inch("1/32"), unit="in")
    session.edit("Measure", job=job)
    open_shell.go("agree")
    found = open_shell.steps["agree"]
    assert isinstance(found, AgreeStep)
    rest(found, qtbot)
    return found


def rest(step: AgreeStep, qtbot: QtBot) -> None:
    runner = step.counter.errands.runner
    qtbot.waitUntil(lambda: not runner.is_busy(), timeout=30_000)


def stage_of(step: AgreeStep) -> AgreeStage:
    assert step.stage_widget is not None
    return step.stage_widget


def shelf_of(step: AgreeStep) -> AgreeShelf:
    assert step.shelf_widget is not None
    return step.shelf_widget


def turn_to(step: AgreeStep, qtbot: QtBot, view: str) -> None:
    qtbot.mouseClick(stage_of(step).turned.chips[view], LEFT)
    rest(step, qtbot)


def test_the_designs_stand_side_by_side_with_their_reasons_and_no_price(
    step: AgreeStep, qtbot: QtBot
) -> None:
    cards = stage_of(step).board.cards
    assert [card.name.text() for card in cards] == ["First design", "Second design"]
    for card in cards:
        qtbot.waitUntil(lambda card=card: card.preview.rendered is not None, timeout=20_000)
        assert card.reasons.text()
        assert not card.price.isVisible()


def test_a_price_is_there_when_it_is_wished_and_gone_again(step: AgreeStep, qtbot: QtBot) -> None:
    card = stage_of(step).board.cards[0]
    qtbot.mouseClick(shelf_of(step).price.chips["shown"], LEFT)
    assert card.price.isVisible() or card.tax.text()  # a rack without prices is told instead
    qtbot.mouseClick(shelf_of(step).price.chips["hidden"], LEFT)
    assert not card.price.isVisible()
    assert not card.tax.isVisible()


def test_choosing_agrees_the_job_once_and_undo_takes_it_back(step: AgreeStep, qtbot: QtBot) -> None:
    before = step.session.desk
    qtbot.mouseClick(stage_of(step).board.cards[1].choose, LEFT)
    job = building.job_of(step.session)
    assert (job.chosen, job.status) == (1, Status.AGREED)
    assert stage_of(step).board.cards[1].choose.text() == "Chosen"
    assert step.standing() is Standing.DONE
    assert "Agreed on: Second design." in shelf_of(step).events.text()
    step.session.undo_stack.undo()
    assert step.session.desk == before


def test_a_design_changed_after_agreeing_is_no_longer_agreed(step: AgreeStep, qtbot: QtBot) -> None:
    step.choose(0)
    building.take_in_hand(step.session, 0)
    building.use_sample(step.session, "brick-red", "layer 1")
    job = building.job_of(step.session)
    assert (job.chosen, job.status) == (None, Status.PROPOSED)


def test_a_ticket_before_anything_is_agreed_says_what_is_missing(
    step: AgreeStep, qtbot: QtBot
) -> None:
    turn_to(step, qtbot, "ticket")
    view = stage_of(step).papers[Paper.TICKET]
    assert view.pages == []
    assert "agreed" in view.told.text()
    assert not shelf_of(step).save.isEnabled()


def test_proposal_and_ticket_are_shown_as_the_pages_that_are_saved(
    step: AgreeStep, qtbot: QtBot, tmp_path: Path
) -> None:
    step.choose(0)
    for paper in Paper:
        turn_to(step, qtbot, paper.value)
        view = stage_of(step).papers[paper]
        path = tmp_path / f"{paper}.pdf"
        step.save_to(path)
        rest(step, qtbot)
        saved = PdfReader(path)
        assert len(saved.pages) == len(view.pages) > 0
        box = saved.pages[0].mediabox
        image = view.pages[0].image
        assert image.width() / image.height() == pytest.approx(box.width / box.height, abs=0.01)
        assert is_written_on(image)
        assert f"Saved as {path.name}." == shelf_of(step).fault.text()


def test_a_page_follows_what_is_changed_while_it_is_in_sight(step: AgreeStep, qtbot: QtBot) -> None:
    turn_to(step, qtbot, "proposal")
    before = stage_of(step).papers[Paper.PROPOSAL].pages[0].image
    qtbot.keyClicks(shelf_of(step).edits["name"], "Ada Example")
    qtbot.keyClick(shelf_of(step).edits["name"], Qt.Key.Key_Return)
    rest(step, qtbot)
    assert building.job_of(step.session).client.name == "Ada Example"
    assert stage_of(step).papers[Paper.PROPOSAL].pages[0].image != before


def test_letter_paper_has_other_proportions(step: AgreeStep, qtbot: QtBot) -> None:
    turn_to(step, qtbot, "proposal")
    qtbot.mouseClick(shelf_of(step).page.chips["Letter"], LEFT)
    rest(step, qtbot)
    image = stage_of(step).papers[Paper.PROPOSAL].pages[0].image
    assert image.width() / image.height() == pytest.approx(8.5 / 11, abs=0.01)


def test_a_paper_is_printed_page_for_page(step: AgreeStep, qtbot: QtBot, tmp_path: Path) -> None:
    step.choose(0)
    turn_to(step, qtbot, "ticket")
    made = step.paperwork.made(Paper.TICKET)
    assert made is not None
    printer = QPrinter(QPrinter.PrinterMode.ScreenResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    done: list[bool] = []
    step.paperwork.print_on(Paper.TICKET, printer, lambda: done.append(True))
    qtbot.waitUntil(lambda: bool(done), timeout=30_000)
    assert len(PdfReader(tmp_path / "printed.pdf").pages) == len(made.pages)


def test_drawing_no_page_prints_nothing_more(tmp_path: Path, app: object) -> None:
    printer = QPrinter(QPrinter.PrinterMode.ScreenResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "one.pdf"))
    page = QImage(60, 80, QImage.Format.Format_RGB32)
    page.fill(Qt.GlobalColor.gray)
    draw_pages(printer, (page, page))
    assert len(PdfReader(tmp_path / "one.pdf").pages) == 2


def test_the_status_goes_on_only_with_a_design_that_was_agreed_on(
    step: AgreeStep, qtbot: QtBot
) -> None:
    shelf = shelf_of(step)
    qtbot.mouseClick(shelf.status.chips[Status.WORKSHOP], LEFT)
    assert building.job_of(step.session).status is Status.OPEN
    assert "agreed" in shelf.fault.text()
    assert shelf.status.chips[Status.OPEN].isChecked()
    step.choose(0)
    qtbot.mouseClick(shelf.status.chips[Status.WORKSHOP], LEFT)
    assert building.job_of(step.session).status is Status.WORKSHOP


def is_written_on(image: QImage) -> bool:
    small = image.scaled(60, 80).convertToFormat(QImage.Format.Format_Grayscale8)
    tones = {small.pixelColor(x, y).lightness() for x in range(60) for y in range(80)}
    return len(tones) > 10


def test_both_units_stand_on_the_ticket_when_wished(step: AgreeStep, qtbot: QtBot) -> None:
    step.choose(0)
    turn_to(step, qtbot, "ticket")
    made = step.paperwork.made(Paper.TICKET)
    assert made is not None
    assert "304.8" not in words_of(made.pdf)
    qtbot.mouseClick(shelf_of(step).wishes.units.chips[True], LEFT)
    rest(step, qtbot)
    both = step.paperwork.made(Paper.TICKET)
    assert both is not None
    assert "304.8 × 228.6 mm" in words_of(both.pdf)
    assert "12 × 9 in" in words_of(both.pdf)


def test_a_deep_stack_is_refused_until_the_framer_lets_it_stand_out(
    step: AgreeStep, qtbot: QtBot
) -> None:
    building.take_in_hand(step.session, 0)
    building.use_sample(step.session, "thin-ash", "moulding")
    step.choose(0)
    turn_to(step, qtbot, "ticket")
    assert "missing" in stage_of(step).papers[Paper.TICKET].told.text()
    assert not shelf_of(step).wishes.drawings.isEnabled()
    qtbot.mouseClick(shelf_of(step).wishes.deep.chips[True], LEFT)
    rest(step, qtbot)
    made = step.paperwork.made(Paper.TICKET)
    assert made is not None
    assert "The stack stands out of the rabbet" in words_of(made.pdf)


def test_the_drawings_of_the_ticket_are_saved_as_svg_and_dxf(
    step: AgreeStep, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    step.choose(0)
    turn_to(step, qtbot, "ticket")
    monkeypatch.setattr(
        "framing_palette.window.steps.agree.QFileDialog.getExistingDirectory",
        lambda *_asked: str(tmp_path),
    )
    qtbot.mouseClick(shelf_of(step).wishes.drawings, LEFT)
    rest(step, qtbot)
    names = sorted(path.name for path in tmp_path.iterdir() if path.is_file())
    assert names == [
        "face.dxf", "face.svg", "mat-1.dxf", "mat-1.svg", "section.dxf", "section.svg",
    ]  # fmt: skip
    assert "The drawings are in" in shelf_of(step).fault.text()
