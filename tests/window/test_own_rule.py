"""Build and the slide judge by the shop's own rule once there is one, as the shortlist does."""

from dataclasses import replace

import pytest
from pytestqt.qtbot import QtBot

from framing_palette.catalogue import Kind
from framing_palette.design import search_designs
from framing_palette.design.beside import colours_beside
from framing_palette.ranking import HOUSE_RULE, RankedSample, nearest_better, ranking
from framing_palette.window import building
from framing_palette.window.sample_list import SampleList
from framing_palette.window.shell import Shell
from framing_palette.window.steps.build import BuildStep
from tests.window.buildable import BUILDABLE
from tests.window.test_build import design_of, shelf_of, wait_idle


@pytest.fixture
def built(open_shell: Shell, qtbot: QtBot) -> BuildStep:
    open_shell.show()
    with qtbot.waitSignal(open_shell.session.ranked_changed, timeout=20_000):
        open_shell.session.assign("catalogue", BUILDABLE)
    open_shell.go("build")
    step = open_shell.steps["build"]
    assert isinstance(step, BuildStep)
    building.begin_design(step.session, ("deep-sea", "pale-sky", "black-flat"))
    wait_idle(step, qtbot)
    return step


LIGHT_RULE = replace(HOUSE_RULE, weights=replace(HOUSE_RULE.weights, depth=-12.0))
"""A shop's own rule that prefers what is light, far beyond what can be taught."""


def scores_shown(model: SampleList) -> dict[str, float]:
    rows = [model.row_at(model.index(row)) for row in range(model.rowCount())]
    return {row.sample.code: row.score for row in rows if isinstance(row, RankedSample)}


def test_the_list_of_samples_follows_the_rule_of_the_shop(built: BuildStep, qtbot: QtBot) -> None:
    session, samples = built.session, shelf_of(built).samples
    session.assign("chosen_part", "layer 1")
    wait_idle(built, qtbot)
    before = scores_shown(samples.model)
    with qtbot.waitSignal(samples.ranked_arrived, timeout=20_000):
        session.assign("rule", LIGHT_RULE)
    findings = session.findings
    assert findings is not None
    touching = colours_beside(design_of(built), 0, BUILDABLE, findings)
    own = ranking(findings, BUILDABLE, kinds=(Kind.MAT,), touching=touching, rule=LIGHT_RULE)
    after = scores_shown(samples.model)
    assert after
    assert after == {line.sample.code: line.score for line in own if line.sample.code in after}
    assert after != before


def test_whole_designs_are_looked_for_by_the_rule_of_the_shop_and_forgotten_with_it(
    built: BuildStep, qtbot: QtBot
) -> None:
    session, designs = built.session, shelf_of(built).designs
    session.assign("rule", LIGHT_RULE)
    with qtbot.waitSignal(designs.found_arrived, timeout=30_000):
        designs.search()
    findings = session.findings
    assert findings is not None
    own, house = (
        search_designs(findings, BUILDABLE, (Kind.MAT, Kind.MOULDING), top=3, rule=rule).designs
        for rule in (LIGHT_RULE, HOUSE_RULE)
    )
    assert [found.layers for found in designs.found] == [found.layers for found in own]
    assert [found.layers for found in own] != [found.layers for found in house]
    designs.search()
    session.assign("rule", HOUSE_RULE)
    wait_idle(built, qtbot)
    assert designs.found == ()
    assert designs.cards == []


def test_what_is_near_the_liked_is_offered_by_the_rule_of_the_shop(
    built: BuildStep, qtbot: QtBot
) -> None:
    session, liked = built.session, shelf_of(built).liked
    building.use_sample(session, "acid-lime", "layer 2")
    session.assign("chosen_part", "layer 2")
    session.assign("rule", LIGHT_RULE)
    shelf_of(built).show_page("liked")
    with qtbot.waitSignal(liked.choice_arrived, timeout=20_000):
        liked.search()
    findings = session.findings
    assert findings is not None
    touching = colours_beside(design_of(built), 1, BUILDABLE, findings)
    own = ranking(findings, BUILDABLE, kinds=(Kind.MAT,), touching=touching, rule=LIGHT_RULE)
    aspects = [aspect for aspect, chip in liked.aspects.items() if chip.isChecked()]
    wanted = nearest_better(own, "acid-lime", aspects)
    assert liked.better is not None
    assert wanted is not None
    assert liked.better.offered.sample == wanted.offered.sample
    assert liked.better.offered.score == wanted.offered.score
    session.assign("rule", HOUSE_RULE)
    assert liked.better is None


def test_strips_are_read_by_the_rule_of_the_shop(built: BuildStep, qtbot: QtBot) -> None:
    session = built.session
    own = replace(HOUSE_RULE, limits=replace(HOUSE_RULE.limits, blend_delta_e=2.0))
    with qtbot.waitSignal(session.strip_reader_changed, timeout=20_000):
        session.assign("rule", own)
    assert session.strip_reader is not None
    assert session.strip_reader.rule == own
