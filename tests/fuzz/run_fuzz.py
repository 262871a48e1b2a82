"""Fuzz one reader, or all: ``python tests/fuzz/run_fuzz.py READER --cases N``.

Guided by coverage where atheris is installed (``--engine atheris``), otherwise, or with
``--engine mutation``, by spoiling sound files and what an earlier guided run has found. Cases run
in a child process with a limit on memory, so that a decoder that dies takes nobody along; the case
it died of is kept. A case that takes longer than its reader may is a finding too.

Every finding is written to ``--findings``; put it into ``tests/fuzz/found/READER/`` and the tests
replay it for ever. Exits with 1 when there are findings.
"""

import argparse
import faulthandler
import hashlib
import json
import os
import random
import resource
import subprocess
import sys
import tempfile
import time
import traceback
import warnings
from collections import Counter
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

MEMORY_BYTES = 4 << 30
SLOW_S = 5.0
STUCK_S = 120
NOTED_EVERY = 500
PIXELS = 5_000_000
"""Pictures up to the program's own limit would take seconds each; that limit has its own test."""


def main() -> int:
    """Fuzz what was asked for and print one line a reader."""
    words = _words()
    if words.child:
        return _child(words)
    from tests.fuzz.readers import READERS

    names = [reader.name for reader in READERS] if words.reader == "all" else [words.reader]
    totals = [_fuzzed(name, words) for name in names]
    return 1 if any(total["findings"] for total in totals) else 0


def _words() -> argparse.Namespace:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawTextHelpFormatter
    )
    parser.add_argument("reader", help="a name out of readers.py, or all")
    parser.add_argument("--cases", type=int, default=10_000)
    parser.add_argument("--engine", choices=("mutation", "atheris"), default="mutation")
    parser.add_argument("--seed", type=int, default=0, help="cases follow from it")
    parser.add_argument("--corpus", type=Path, help="files found by guided runs, read and added to")
    parser.add_argument("--findings", type=Path, default=Path("fuzz-findings"))
    parser.add_argument("--child", type=Path, help=argparse.SUPPRESS)
    return parser.parse_args()


def _fuzzed(name: str, words: argparse.Namespace) -> dict[str, Any]:
    """Run children until the cases are done; a child that died is followed by another."""
    start = time.monotonic()
    total: Counter[str] = Counter()
    done, used_s = 0, 0.0
    with tempfile.TemporaryDirectory(dir=_quick_folder()) as scratch:
        state = Path(scratch)
        while done < words.cases:
            for left in state.iterdir():
                if left.is_file():
                    left.unlink()
            code = _run_child(name, words, state, words.seed + done, words.cases - done)
            noted = _noted(state)
            total.update(noted["counts"])
            used_s += noted["seconds"]
            done += noted["cases"]
            if code == 0:
                break
            if noted["cases"] == 0 and not (state / "case").exists():
                sys.exit(f"{name}: the child died with {code} before its first case")
            done += 1
            total["died"] += 1
            _keep(words.findings, name, f"died with {code}", (state / "case").read_bytes())
    bad = sum(count for key, count in total.items() if key not in ("opened", "refused"))
    result = {"reader": name, "engine": words.engine, "cases": done, "processor_s": round(used_s),
              "clock_s": round(time.monotonic() - start), "findings": bad, **total}  # fmt: skip
    print(json.dumps(result), flush=True)
    return result


def _quick_folder() -> str | None:
    return "/dev/shm" if Path("/dev/shm").is_dir() else None  # noqa: S108 - a disk in memory


def _run_child(name: str, words: argparse.Namespace, state: Path, seed: int, cases: int) -> int:
    command = [
        sys.executable, "-X", "faulthandler", __file__, name, "--child", str(state), "--cases", str(cases),
        "--engine", words.engine, "--seed", str(seed), "--findings", str(words.findings.absolute()),
    ]  # fmt: skip
    if words.corpus:
        command += ["--corpus", str(words.corpus.absolute())]
    with (state / "errors").open("wb") as errors:
        return subprocess.run(
            command, cwd=ROOT, stdout=errors, stderr=errors, check=False
        ).returncode


def _noted(state: Path) -> dict[str, Any]:
    try:
        found: dict[str, Any] = json.loads((state / "noted").read_text())
    except (OSError, ValueError):
        found = {"cases": 0, "seconds": 0.0, "counts": {}}
    return found


def _keep(folder: Path, reader: str, what: str, content: bytes) -> None:
    place = folder / reader
    place.mkdir(parents=True, exist_ok=True)
    name = hashlib.sha256(what.encode()).hexdigest()[:10]
    if not (place / f"{name}.bin").exists():
        (place / f"{name}.bin").write_bytes(content)
        (place / f"{name}.txt").write_text(what)


class Case:
    """Runs one case after another, and notes what came of them."""

    def __init__(self, words: argparse.Namespace) -> None:
        from tests.fuzz import readers

        self._reader, self._outcome = readers.BY_NAME[words.reader], readers.outcome
        self._state, self._findings = words.child, words.findings
        self._folder = Path(tempfile.mkdtemp(dir=words.child))
        self._begun_s = time.process_time()
        self.cases = 0
        self.counts: Counter[str] = Counter()

    def run(self, content: bytes) -> None:
        """Run one case."""
        (self._state / "case").write_bytes(content)
        if self.cases % NOTED_EVERY == 0:
            self.note()
            faulthandler.dump_traceback_later(STUCK_S, exit=True)
        start_s = time.process_time()
        try:
            came = self._outcome(self._reader, content, self._folder)
        except Exception as error:  # noqa: BLE001 - whatever escapes a reader is what is looked for
            came = "crashed"
            _keep(self._findings, self._reader.name, _signature(error), content)
        spent_s = time.process_time() - start_s
        if spent_s > SLOW_S:
            came = "slow"
            _keep(self._findings, self._reader.name, f"slow: {spent_s:.0f} s", content)
        self.counts[came] += 1
        self.cases += 1

    def note(self) -> None:
        """Write down how far it has come."""
        noted = {
            "cases": self.cases,
            "seconds": time.process_time() - self._begun_s,
            "counts": self.counts,
        }
        (self._state / "noted").write_text(json.dumps(noted))


def _signature(error: Exception) -> str:
    """Return what distinguishes one defect from another: its kind and where in our code."""
    places = [
        f"{Path(frame.filename).name}:{frame.lineno}"
        for frame in traceback.extract_tb(error.__traceback__)
        if "framing_palette" in frame.filename or "fuzz" in frame.filename
    ]
    return f"{type(error).__name__} at {' '.join(places[-3:])}: {str(error)[:200]}"


def _child(words: argparse.Namespace) -> int:
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY_BYTES, MEMORY_BYTES))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    warnings.simplefilter("ignore")
    if words.engine == "atheris":
        return _guided(words)
    case = _prepared(words)
    sound = _start_files(words, case)
    from tests.fuzz.mutation import mutated

    for number in range(words.cases):
        rng = random.Random(words.seed + number)  # noqa: S311
        case.run(mutated(rng.choice(sound), rng, sound))
    case.note()
    return 0


def _prepared(words: argparse.Namespace) -> Case:
    from framing_palette.picture import limits

    limits.MAX_PIXELS = PIXELS
    return Case(words)


def _start_files(words: argparse.Namespace, case: Case) -> list[bytes]:
    sound = list(case._reader.seeds())
    if words.corpus and (words.corpus / words.reader).is_dir():
        found = sorted((words.corpus / words.reader).iterdir())
        sound += [path.read_bytes() for path in found]
    return sound


def _guided(words: argparse.Namespace) -> int:
    import atheris

    with atheris.instrument_imports(include=["framing_palette", "tomllib"]):
        case = _prepared(words)
        sound = _start_files(words, case)
        for content in sound:  # brings in every module that is loaded late
            case.run(content)
    from tests.fuzz.mutation import mutated

    corpus = words.corpus / words.reader
    corpus.mkdir(parents=True, exist_ok=True)
    for content in sound:
        (corpus / hashlib.sha1(content).hexdigest()).write_bytes(content)  # noqa: S324

    def spoil(content: bytes, most: int, seed: int) -> bytes:
        rng = random.Random(seed)  # noqa: S311
        if rng.random() < 0.4:
            return bytes(atheris.Mutate(content, most))
        return mutated(content, rng, sound)[:most]

    def one(content: bytes) -> None:
        case.run(content)
        if case.cases >= words.cases:
            case.note()
            os._exit(0)

    options = [
        "-max_len=65536",
        f"-seed={words.seed + 1}",
        "-rss_limit_mb=0",
        "-timeout=100",
        "-verbosity=0",
    ]
    atheris.Setup([sys.argv[0], *options, str(corpus)], one, custom_mutator=spoil)
    atheris.Fuzz()
    return 0


if __name__ == "__main__":
    sys.exit(main())
