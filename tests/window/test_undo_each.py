"""Every kind of change: it has a name, undo restores the same state, redo the changed one."""

import ast
import inspect
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QUndoCommand
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

import framing_palette.window
from framing_palette.design import Reading, example_price_book_text
from framing_palette.jobs import Job, OnRail, Status
from framing_palette.jobs.keeper_files import Keeper
from framing_palette.jobs.place_files import ShopPlace
from framing_palette.picture import Part, Region, Role
from framing_palette.picture.reshaping import stretched_region
from framing_palette.ranking import Taste
from framing_palette.ranking.taste import Choice
from framing_palette.units import Length
from framing_palette.window import building, drawing, keeping, sliding, taste_work
from framing_palette.window.bench import Bench
from framing_palette.window.compare import CompareBoard
from framing_palette.window.keeping_looks import keep_look
from framing_palette.window.pieces_row import PiecesRow
from framing_palette.window.price_shelf import PriceShelf
from framing_palette.window.section.view import SectionView
from framing_palette.window.shell import Shell
from framing_palette.window.steps.agree import AgreeStep
from framing_palette.window.steps.choose import ChooseStep
from framing_palette.window.steps.intake import IntakeStep
from framing_palette.window.steps.measure import MeasureStep
from framing_palette.window.taste_memory import Remembered
from tests.window.buildable import BUILDABLE
from tests.window.conftest import BOAT, make_picture, on_the_desk

inch = Length.inches
AT = datetime(2026, 1, 15, 11, 0, tzinfo=UTC)
SQUARE = ((0.1, 0.1), (0.3, 0.1), (0.3, 0.3), (0.1, 0.3))
SKY = Region("sky", Role.GROUND, (Part(SQUARE),))
READING = Reading(width=inch(12), height=inch(9), by="AB", at=AT)


class Counter:
    """One window for all of them: making it costs more than what is tried in it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        place = ShopPlace(folder / "shop" / "jobs.sqlite")
        self.shell = Shell(preferences_file=folder / "window.json", keeper=lambda: Keeper(place))
        self.session = self.shell.session
        self.shell.rack_book.folder = folder / "racks"
        agree = self.shell.steps["agree"]
        assert isinstance(agree, AgreeStep)
        agree.keeper._path = folder / "price_book.toml"
        self.agree = agree
        self.session.assign("catalogue", BUILDABLE)
        self.shell.errands.take_job(on_the_desk(make_picture(), (BOAT, SKY)))
        self.rest()
        building.set_art_size(self.session, inch(12), inch(9))
        building.begin_design(self.session, ("pale-sky", "deep-sea", "black-flat"))
        keeping.keep_sample(self.session, "brick-red")
        keeping.keep_sample(self.session, "pale-sky")
        self.session.edit(
            "Keep a look",
            kept=(*self.session.desk.kept, OnRail(("pale-sky", "black-flat"), "A look")),
        )
        keeping.lay_round(self.session, ("brick-red",))
        keeping.lay_round(self.session, ("deep-sea",))
        sliding.lay_strip(self.session, "acid-lime", (100.0, 100.0))
        self.start = self.session.desk
        self.shell.go("agree")
        self.rest()
        agree.look_into_prices()
        self.shell.go("intake")  # where nothing has to be drawn anew after each change
        self.rest()
        self.session.undo_stack.clear()

    def rest(self) -> None:
        """Wait until nothing works in the background any more."""
        until = time.monotonic() + 20
        QApplication.processEvents()
        while self.shell.runner.is_busy() and time.monotonic() < until:
            time.sleep(0.002)
            QApplication.processEvents()
        assert not self.shell.runner.is_busy()

    def begin(self) -> None:
        """Lay the desk as it was at first, with nothing to undo."""
        session = self.session
        session.put_desk(self.start)
        for name, value in (("in_hand", 0), ("chosen_part", ""), ("chosen_region", 0)):
            session.assign(name, value)
        session.assign("chosen_strip", self.start.strips[0].number)
        session.undo_stack.clear()

    def state(self) -> tuple[object, ...]:
        """All that can be undone."""
        book, taste = self.shell.rack_book, self.shell.taste
        said = tuple(book.said_of(sample.code) for sample in BUILDABLE.samples)
        return (
            self.session.desk,
            self.session.catalogue.samples,
            book.hidden(),
            said,
            self.agree.keeper.prices,
            taste.remembered,
        )


@pytest.fixture(scope="module")
def one_counter(qapp: QApplication, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Counter]:
    made = Counter(tmp_path_factory.mktemp("counter"))
    yield made
    made.rest()
    made.shell.close()
    made.shell.deleteLater()


@pytest.fixture
def counter(one_counter: Counter) -> Counter:
    one_counter.begin()
    return one_counter


WAYS = ("session.edit", "undo_stack.push")
Act = Callable[[Counter], object]
EDITS: dict[str, tuple[str, Act]] = {}
"""What is done, the place in the program that puts it on the stack of changes, and how."""


def kind(where: str, *, of: str) -> Callable[[Act], Act]:
    def enter(act: Act) -> Act:
        EDITS[of] = (where, act)
        return act

    return enter


def add(where: str, of: str, act: Act) -> None:
    EDITS[of] = (where, act)


def outlined(counter: Counter, how: drawing.How) -> None:
    drawing.take_outline(counter.session, SQUARE, drawing.now(counter.session, how))


# --- regions ------------------------------------------------------------------------------------
add("drawing:take_outline", "draw a region", lambda c: outlined(c, drawing.How.NEW))
add("drawing:take_outline", "add to a region", lambda c: outlined(c, drawing.How.ADD))
add("drawing:take_outline", "cut from a region", lambda c: outlined(c, drawing.How.SUBTRACT))
add("drawing:put_region", "push a region", lambda c: drawing.nudge(c.session, right=0.1, down=0.0))
add(
    "drawing:put_region",
    "stretch a region",
    lambda c: drawing.put_region(
        c.session, stretched_region(BOAT, 2, (0.8, 0.8)), verb="Stretch", merge="stretch"
    ),
)
add("drawing:delete_region", "delete a region", lambda c: drawing.delete_region(c.session, 0))
add("drawing:rename_region", "rename", lambda c: drawing.rename_region(c.session, 0, "hull"))
add("drawing:set_role", "another role", lambda c: drawing.set_role(c.session, 0, Role.SUPPORT))

# --- samples and strips -------------------------------------------------------------------------
add("keeping:lay_round", "lay round", lambda c: keeping.lay_round(c.session, ("pale-sky",)))
add("keeping:lay_round", "border away", lambda c: keeping.lay_round(c.session, ("deep-sea",)))
add("keeping:keep_sample", "keep a sample", lambda c: keeping.keep_sample(c.session, "thin-ash"))
add("keeping:let_go", "off the rail", lambda c: keeping.let_go(c.session, 0))
add("keeping:send_away", "send away", lambda c: keeping.send_away(c.session, "acid-lime"))
add("session:blink", "blink", lambda c: c.session.blink())


@kind("keeping_looks:keep_look", of="keep a design")
def keep_a_design(counter: Counter) -> None:
    counter.session.assign("step", "build")
    keep_look(counter.session)
    counter.session.assign("step", "intake")


@kind("taste_away:_say", of="say why")
def say_why(counter: Counter) -> None:
    choose = counter.shell.steps["choose"]
    assert isinstance(choose, ChooseStep)
    if choose.shelf_widget is None:
        counter.shell.go("choose")
        counter.shell.go("intake")
    shelf = choose.shelf_widget
    assert shelf is not None
    keeping.send_away(counter.session, "acid-lime")
    counter.session.undo_stack.clear()
    next(iter(shelf.away.chips.values())).click()


def the_strip(counter: Counter) -> sliding.Strip:
    strip = sliding.chosen_strip(counter.session)
    assert strip is not None
    return strip


add("sliding:put_strip", "a strip", lambda c: sliding.lay_strip(c.session, "brick-red"))
add("sliding:put_strip", "turn a strip", lambda c: sliding.turn(c.session, the_strip(c)))
add("sliding:put_strip", "bend a strip", lambda c: sliding.bend(c.session, the_strip(c)))
add(
    "sliding:put_strip",
    "move a strip",
    lambda c: sliding.put_strip(c.session, replace(the_strip(c), x_mm=40.0), verb="Move"),
)
add("sliding:take_up", "take a strip up", lambda c: sliding.take_up(c.session, the_strip(c)))

# --- taste --------------------------------------------------------------------------------------
add(
    "taste_work:answer_question",
    "which of two",
    lambda c: taste_work.answer_question(c.session, "deep-sea", "brick-red"),
)
add(
    "taste_work:answer_question",
    "neither of two",
    lambda c: taste_work.answer_question(c.session, "deep-sea", "brick-red", is_open=True),
)
add("taste_work:prefer_look", "prefer a look", lambda c: taste_work.prefer_look(c.session, 1))
add("taste_work:reject_look", "reject a sample", lambda c: taste_work.reject_look(c.session, 0))
add("taste_work:reject_look", "reject a look", lambda c: taste_work.reject_look(c.session, 2))


@kind("taste_book:_change", of="forget the taste")
def forget_taste(counter: Counter) -> None:
    liked = Choice("picture", ("deep-sea",), ("brick-red",), (0.1,) * 8)
    counter.shell.taste.put(Remembered(Taste((liked,))))
    counter.session.undo_stack.clear()
    counter.shell.taste.forget()


@kind("compare_panel:_take_note", of="note on a look")
def note(counter: Counter) -> None:
    outer = counter.shell.counter
    board = CompareBoard(counter.session, outer.swatches, outer.outlook)
    board.panels[0].note.setText("Asks for a warmer one")
    board.panels[0].note.editingFinished.emit()
    board.deleteLater()


# --- designs ------------------------------------------------------------------------------------
add(
    "building:add_options",
    "begin a design",
    lambda c: building.begin_design(c.session, ("brick-red", "thin-ash")),
)
add("building:add_options", "copy a design", lambda c: building.copy_design(c.session))
add("building:drop_option", "drop a design", lambda c: building.drop_option(c.session, 0))
add("building:put_design", "a frame", lambda c: building.use_sample(c.session, "thin-ash", ""))
add(
    "building:put_design",
    "another mat",
    lambda c: building.use_sample(c.session, "acid-lime", "layer 1"),
)
add("building:put_design", "one more", lambda c: building.add_sample(c.session, "brick-red", "art"))
for _part in ("layer 1", "moulding", "glazing", "backing"):
    add(
        "building:put_design",
        f"take out {_part}",
        lambda c, part=_part: building.remove_part(c.session, part),  # type: ignore[misc]
    )
add("building:put_design", "reorder", lambda c: building.move_layer(c.session, "layer 1", 1))
add(
    "building:set_art_size",
    "the size of the art",
    lambda c: building.set_art_size(c.session, inch(16), inch(12)),
)


@kind("building:put_design", of="a width in the section")
def width(counter: Counter) -> None:
    bench = Bench(counter.session, counter.shell)
    view = SectionView(counter.session, bench, counter.shell.counter.swatches)
    counter.session.assign("chosen_part", "layer 1")
    QTest.keyClick(view, Qt.Key.Key_Right)
    QTest.keyClick(view, Qt.Key.Key_Right)
    view.deleteLater()
    bench.deleteLater()


# --- intake -------------------------------------------------------------------------------------
def intake(counter: Counter) -> IntakeStep:
    step = counter.shell.steps["intake"]
    assert isinstance(step, IntakeStep)
    return step


add("intaking:wish", "find corners and chart", lambda c: intake(c)._do("take in"))
add("intaking:wish", "leave the light", lambda c: intake(c)._do("leave light"))
add("intaking:wish", "pick a grey", lambda c: intake(c)._pick_grey((0.5, 0.5)))
add("intaking:wish", "mark the corners", lambda c: intake(c)._mark(SQUARE))


@kind("intaking:wish", of="the photograph as it is")
def as_it_is(counter: Counter) -> None:
    intake(counter)._do("take in")
    counter.session.undo_stack.clear()
    intake(counter)._do("forget")


# --- measuring and agreeing ---------------------------------------------------------------------
def measure(counter: Counter) -> MeasureStep:
    step = counter.shell.steps["measure"]
    assert isinstance(step, MeasureStep)
    if step.stage_widget is None:
        counter.shell.go("measure")
        counter.shell.go("intake")
    return step


@kind("measure:_take", of="a measurement")
def first_measurement(counter: Counter) -> None:
    stage = measure(counter).stage_widget
    assert stage is not None
    stage.cards[0].done.emit(READING)


@kind("measure:_take", of="the second measurement")
def second_measurement(counter: Counter) -> None:
    first_measurement(counter)
    counter.session.undo_stack.clear()
    stage = measure(counter).stage_widget
    assert stage is not None
    stage.cards[1].done.emit(replace(READING, by="CD"))


@kind("measure:_begin_again", of="measure again")
def measure_again(counter: Counter) -> None:
    first_measurement(counter)
    counter.session.undo_stack.clear()
    stage = measure(counter).stage_widget
    assert stage is not None
    stage.again.click()


@kind("pieces_row:_change", of="several pieces of art")
def pieces(counter: Counter) -> None:
    stage = measure(counter).stage_widget
    assert stage is not None
    row = stage.findChild(PiecesRow)
    assert isinstance(row, PiecesRow)
    row.count.picked.emit(2)


add("agree:_change", "agree on a design", lambda c: c.agree.choose(0))
add("agree:_change", "status", lambda c: c.agree._set_status(Status.PROPOSED))
for _field in ("name", "contact", "title", "note"):
    add(
        "agree:_write",
        f"the client's {_field}",
        lambda c, field=_field: c.agree._write(field, "Ada Example"),  # type: ignore[misc]
    )


def ledger_change(counter: Counter, change: str) -> None:
    shell = counter.shell
    if shell.book is None:
        shell.toggle_book()
        counter.rest()
        shell.toggle_book()
    assert shell.book is not None
    ledger = shell.book.ledger
    stored = counter.session.stored
    assert stored is not None
    ledger.chosen = stored.job.number
    assert ledger.is_on_desk()
    if change == "line":
        ledger.add_line("Told the client by telephone.")
    else:
        ledger.set_status(Status.PROPOSED)


add("ledger:_change", "a line of the history", lambda c: ledger_change(c, "line"))
add("ledger:_change", "status in the job book", lambda c: ledger_change(c, "status"))


@kind("saving:_lay", of="brought in from the other counter")
def joined(counter: Counter) -> None:
    job = counter.session.desk.job
    assert isinstance(job, Job)
    counter.shell.saving._lay(replace(job, title="A boat that is red"))


# --- prices -------------------------------------------------------------------------------------
def shelf_of(counter: Counter) -> PriceShelf:
    shelf = counter.agree.price_shelf
    assert shelf is not None
    return shelf


def price_edit(change: Callable[[Counter], object]) -> Act:
    def act(counter: Counter) -> None:
        shelf_of(counter).follow()
        change(counter)

    return act


for _name, _change in {
    "currency": lambda c: shelf_of(c).fields["currency"].taken.emit("CHF"),
    "a charge's title": lambda c: shelf_of(c).rows[0].changed.emit("title", "Moulding by length"),
    "drop a charge": lambda c: shelf_of(c).rows[0].asked.emit("drop"),
    "move a charge": lambda c: shelf_of(c).rows[0].asked.emit("down"),
    "add a charge": lambda c: shelf_of(c).add.click(),
}.items():
    add("price_keeper:_push", f"prices: {_name}", price_edit(_change))


@kind("price_keeper:_push", of="prices of a file")
def prices_of_a_file(counter: Counter) -> None:
    path = counter.folder / "other.toml"
    text = example_price_book_text().replace('"Joining"', '"Joining the corners"')
    path.write_text(text, encoding="utf-8")
    counter.agree.keeper.open_file(path, failed=pytest.fail)
    counter.rest()


# --- the rack -----------------------------------------------------------------------------------
def rack_edit(mark: str) -> Act:
    def act(counter: Counter) -> None:
        shell = counter.shell
        if shell.rack is None:
            shell.toggle_rack()
            counter.rest()
            shell.toggle_rack()
        assert shell.rack is not None
        marks = shell.rack.shelf.near.marks
        marks.show_sample("brick-red")
        if mark == "price":
            marks.price.setText("12.50")
            marks.price.editingFinished.emit()
        else:
            getattr(marks, mark).click()

    return act


for _mark in ("liked", "out", "away", "price"):
    add("book:_push", f"rack: {_mark}", rack_edit(_mark))


@kind("book:_push", of="bring samples in")
def bring_in(counter: Counter) -> None:
    new = replace(BUILDABLE["brick-red"], code="new-red", name="New red")
    counter.shell.rack_book.bring_in_samples("Bring in new.csv", (new,), "new.csv")


@kind("book:_push", of="take an import back")
def take_back(counter: Counter) -> None:
    bring_in(counter)
    counter.rest()
    counter.session.undo_stack.clear()
    (made,) = counter.shell.rack_book.imports()
    counter.shell.rack_book.take_back("Take new.csv out", made.number, made.source)


# --- the tests ----------------------------------------------------------------------------------
def put_on_the_stack(counter: Counter, act: Act, monkeypatch: pytest.MonkeyPatch) -> set[str]:
    """Do it; return from which functions of the window it came."""
    stack, seen = counter.session.undo_stack, set[str]()
    push = stack.push

    def watched(command: QUndoCommand) -> None:
        frame = inspect.currentframe()
        while frame is not None:
            seen.add(f"{Path(frame.f_code.co_filename).stem}:{frame.f_code.co_name}")
            frame = frame.f_back
        push(command)

    monkeypatch.setattr(stack, "push", watched)
    act(counter)
    monkeypatch.undo()
    return seen


@pytest.mark.parametrize("name", EDITS)
def test_undo_restores_the_same_state_and_redo_the_changed_one(
    counter: Counter, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    where, act = EDITS[name]
    states = [counter.state()]
    stack = counter.session.undo_stack
    cleared = stack.clear

    def clear() -> None:  # what an edit needs first is no part of it
        counter.rest()
        cleared()
        states[0] = counter.state()

    monkeypatch.setattr(stack, "clear", clear)
    seen = put_on_the_stack(counter, act, monkeypatch)
    counter.rest()
    assert where in seen
    assert stack.count() == 1
    assert stack.undoText().strip()
    before, after = states[0], counter.state()
    assert after != before
    stack.undo()
    counter.rest()
    assert counter.state() == before
    stack.redo()
    counter.rest()
    assert counter.state() == after
    stack.undo()
    counter.rest()


def test_every_place_that_changes_something_undoably_is_tried() -> None:
    folder = Path(str(framing_palette.window.__file__)).parent
    sources = {path: path.read_text(encoding="utf-8") for path in folder.rglob("*.py")}
    places = {
        f"{path.stem}:{function.name}"
        for path, source in sources.items()
        if any(way in source for way in WAYS)
        for function in ast.walk(ast.parse(source))
        if isinstance(function, ast.FunctionDef)
        for call in ast.walk(function)
        if isinstance(call, ast.Call) and ast.unparse(call.func).endswith(WAYS)
    }
    tried = {where for where, _act in EDITS.values()}
    assert len(places) > 20
    assert places - {"session:edit"} == tried - {"session:blink"}
