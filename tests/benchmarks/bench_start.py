"""How soon the command line answers, against the interpreter alone in the same run.

Run with ``pytest tests/benchmarks/bench_start.py -s``.
"""

import subprocess
import sys
from statistics import median
from time import perf_counter

ROUNDS = 9
MOST_TIMES = 12.0  # of `python -c pass`; 0.3 s against the 25 ms that it takes on a small machine


def seconds(*words: str) -> float:
    taken = []
    for _ in range(ROUNDS):
        begun = perf_counter()
        subprocess.run([sys.executable, *words], check=True, capture_output=True)
        taken.append(perf_counter() - begun)
    return median(taken)


def test_help_answers_soon_against_an_interpreter_that_does_nothing() -> None:
    nothing = seconds("-c", "pass")
    helped = seconds("-m", "framing_palette", "--help")
    print(f"python -c pass {nothing * 1e3:.0f} ms, --help {helped * 1e3:.0f} ms, ")
    print(f"{helped / nothing:.1f} times")
    assert helped < MOST_TIMES * nothing
