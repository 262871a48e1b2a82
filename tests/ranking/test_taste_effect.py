"""What the own rule changes is told truly, and no verdict is among it."""

import numpy as np

from framing_palette.ranking import HOUSE_RULE, judged_by, ranking, shift_between
from framing_palette.ranking.judging import QUALITIES
from framing_palette.ranking.taste import weights_of, with_weights
from framing_palette.ranking.taste_effect import QUALITY_WORDS, places_in, weights_words
from tests.ranking.taste_by_hand import RACK, pictures, rankings

OTHER = weights_of(HOUSE_RULE)
OTHER[QUALITIES.index("depth")] = 1.7
OTHER[QUALITIES.index("foil")] = 1.0
OWN = with_weights(HOUSE_RULE, OTHER)


def test_judging_by_another_rule_is_ranking_by_it():
    found = pictures(1)[0]
    again = judged_by(ranking(found, RACK), OWN)
    anew = ranking(found, RACK, rule=OWN)
    assert [line.sample.code for line in again] == [line.sample.code for line in anew]
    assert np.array_equal(again.judgement.score, anew.judgement.score)
    assert again.rule == OWN


def test_taste_changes_no_verdict():
    for ranked in rankings(4):
        own = judged_by(ranked, OWN)
        assert np.array_equal(own.judgement.clash, ranked.judgement.clash)
        assert np.array_equal(own.judgement.blend, ranked.judgement.blend)


def test_places_are_counted_within_each_verdict():
    ranked = rankings(1)[0]
    places = places_in(ranked)
    for verdict in (ranked.judgement.clash, ranked.judgement.blend & ~ranked.judgement.clash):
        assert sorted(places[verdict].tolist()) == list(range(1, int(verdict.sum()) + 1))
    best = int(ranked.order[0])
    assert places[best] == 1


def test_the_farthest_moves_are_told_first_and_truly():
    house = rankings(1)[0]
    own = judged_by(house, OWN)
    shift = shift_between(house, own, top=12, told=5)
    assert 0 < len(shift.moves) <= 5
    distances = [abs(move.places) for move in shift.moves]
    assert distances == sorted(distances, reverse=True)
    for move in shift.moves:
        row = house.row(move.code)
        assert move.house_place == places_in(house)[row]
        assert move.own_place == places_in(own)[row]
        assert min(move.house_place, move.own_place) <= 12
    first = {line.sample.code for line in house[:12]} & {line.sample.code for line in own[:12]}
    assert shift.same_at_top == len(first)
    assert shift.top == 12


def test_the_same_rule_moves_nothing():
    house = rankings(1)[0]
    assert judged_by(house, HOUSE_RULE) is house
    assert shift_between(house, house).moves == ()


def test_what_counts_more_or_less_is_said_in_words_and_in_its_direction():
    said = weights_words({"depth": (0.7, 1.7), "vivid": (-3.2, -1.6)})
    assert said == (
        "Darkness counts 143\u00a0% more.",
        "Strong colour is held against a sample 50\u00a0% less.",
    )


def test_every_quality_has_its_words():
    assert set(QUALITIES) <= set(QUALITY_WORDS)
