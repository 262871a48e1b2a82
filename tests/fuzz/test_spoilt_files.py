"""Some spoilt files for every reader, and every file that ever brought one down.

A million cases a reader would take hours; ``run_fuzz.py`` runs as many as one asks for.
"""

import random
from pathlib import Path

import pytest

from .mutation import mutated
from .readers import READERS, Reader, outcome

CASES = 12
FOUND = Path(__file__).parent / "found"

# Decoders warn of what they find in damaged files; the answer is what counts here.
pytestmark = pytest.mark.filterwarnings("ignore")


@pytest.mark.parametrize("reader", READERS, ids=lambda reader: reader.name)
def test_a_sound_file_opens_and_a_spoilt_one_opens_or_is_refused_in_a_sentence(
    reader: Reader, tmp_path: Path
) -> None:
    sound = list(reader.seeds())
    assert "opened" in {outcome(reader, content, tmp_path) for content in sound}
    for number in range(CASES):
        rng = random.Random(number)  # noqa: S311
        assert outcome(reader, mutated(rng.choice(sound), rng, sound), tmp_path)


@pytest.mark.parametrize(
    ("reader", "path"),
    [(reader, path) for reader in READERS for path in sorted((FOUND / reader.name).glob("*"))],
    ids=lambda value: getattr(value, "name", ""),
)
def test_a_file_that_brought_a_reader_down_once_does_so_no_more(
    reader: Reader, path: Path, tmp_path: Path
) -> None:
    assert outcome(reader, path.read_bytes(), tmp_path) in ("opened", "refused")
