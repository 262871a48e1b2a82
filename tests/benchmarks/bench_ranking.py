"""How long judging and searching take, beside a named reference in the same run.

Run with ``python -m pytest tests/benchmarks/bench_ranking.py -s --benchmark-enable``. The reference
is the plain nearest-colour search that a framer's eye does without a program: CIEDE2000 of every
sample colour to every colour of the picture by colour-science.
"""

import warnings
from time import process_time

import numpy as np
import pytest

from framing_palette.catalogue import Kind
from framing_palette.design.search import search_designs
from framing_palette.ranking import columns_of, rank, ranking
from framing_palette.ranking.subjects import subject_of
from tests.judgement.pictures import reading
from tests.ranking.by_hand import sample

PICTURE = "astronaut"
LEAST_GAIN = 1.0  # all measures cost no more than the nearest colour alone
MOST_FOR_WORDS = 6.0  # times the bare judging of the rack
MOST_FOR_SEARCH = 25.0
FIVE = (Kind.MAT, Kind.WRAPPED_FILLET, Kind.MAT, Kind.WOOD_FILLET, Kind.MOULDING)
USUAL_RACK = (Kind.MAT,) * 44 + (Kind.WRAPPED_FILLET,) * 16 + (Kind.WOOD_FILLET,) * 12 + (
    Kind.MOULDING,
) * 28  # fmt: skip


def _rack(count: int):
    rng = np.random.default_rng(0)
    made = []
    for number in range(count):
        colours = rng.uniform([5, -30, -30], [97, 30, 30], (int(rng.choice([1, 1, 1, 2, 3])), 3))
        kind = USUAL_RACK[number % len(USUAL_RACK)]
        made.append(sample(f"S{number}", *(tuple(map(float, lab)) for lab in colours), kind=kind))
    return tuple(made)


def _best_seconds(action, rounds: int = 5) -> float:
    """Processor time, all cores together: the clock tells of a busy machine's other work too."""
    times = []
    for _ in range(rounds):
        start = process_time()
        action()
        times.append(process_time() - start)
    return min(times)


def _reference_seconds(columns, found) -> float:
    """colour-science's CIEDE2000 of a tenth of the pairs, times ten."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it asks for plotting, which nobody needs here
        import colour

    part = columns.lab[: max(1, len(columns.lab) // 10)]
    targets = subject_of(found).target_lab
    return 10 * _best_seconds(
        lambda: colour.delta_E(part[:, None, :], targets[None, :, :], method="CIE 2000"), 2
    )


@pytest.mark.parametrize(("count", "target_seconds"), [(10_000, 0.1), (100_000, 1.0)])
def test_judging_a_catalogue_against_a_full_reading(benchmark, count, target_seconds):
    found, columns = reading(PICTURE), columns_of(_rack(count))
    ranking(found, columns)
    benchmark.pedantic(lambda: ranking(found, columns), rounds=3)
    seconds = _best_seconds(lambda: ranking(found, columns))
    reference = _reference_seconds(columns, found)
    print(
        f"\n{count:7d} samples: all measures, verdicts and order {1000 * seconds:.0f} ms of "
        f"processor time (target {1000 * target_seconds:.0f} ms by the clock); nearest colour alone by colour-science "
        f"{1000 * reference:.0f} ms: ratio {reference / seconds:.1f}"
    )
    assert reference / seconds >= LEAST_GAIN


def test_words_and_stability_of_a_shown_shortlist(benchmark):
    found, columns = reading(PICTURE), columns_of(_rack(10_000))
    benchmark.pedantic(lambda: rank(found, columns, top=50), rounds=3)
    seconds = _best_seconds(lambda: rank(found, columns, top=50), 3)
    bare = _best_seconds(lambda: ranking(found, columns), 3)
    print(
        f"\nbest 50 of 10,000 with words and stability {1000 * seconds:.0f} ms; "
        f"ratio to bare judging {seconds / bare:.1f}"
    )
    assert seconds <= MOST_FOR_WORDS * bare


def test_the_best_five_of_all_five_layer_designs(benchmark):
    found, rack = reading(PICTURE), _rack(5_000)
    columns = columns_of(rack)
    result = search_designs(found, rack, FIVE, top=5)
    benchmark.pedantic(lambda: search_designs(found, rack, FIVE, top=5), rounds=2)
    seconds = _best_seconds(lambda: search_designs(found, rack, FIVE, top=5), 3)
    judging = _best_seconds(lambda: ranking(found, columns), 3)
    print(
        f"\nbest 5 of {result.candidates_considered:.2e} five-layer designs: {seconds:.2f} s "
        f"(target 3 s); ratio to judging the catalogue once {seconds / judging:.1f}"
    )
    assert len(result.designs) == 5
    assert seconds <= MOST_FOR_SEARCH * judging
