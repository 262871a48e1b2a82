"""The vocabulary as a file that a shop can edit."""

import tomllib
from functools import cache
from pathlib import Path
from typing import Final

from framing_palette.errors import FramingPaletteError, VocabularyError
from framing_palette.papers.vocabulary import Vocabulary, Word, limits_from_text
from framing_palette.whole_files import read_whole

LARGEST_BYTES: Final = 1_000_000
SHIPPED: Final = Path(__file__).resolve().parent / "vocabulary.toml"


@cache
def shipped_vocabulary() -> Vocabulary:
    """Return the vocabulary that comes with the program."""
    return read_vocabulary(SHIPPED)


def read_vocabulary(path: Path) -> Vocabulary:
    """Read a vocabulary file.

    Raises
    ------
    VocabularyError
        When it cannot be read, or one of its words cannot be used; the sentence names the word.
    """
    try:
        text = read_whole(path, LARGEST_BYTES).decode()
    except (OSError, UnicodeDecodeError) as error:
        raise VocabularyError(
            path, problem="cannot be read as text", todo="check the name and save it as UTF-8"
        ) from error
    return vocabulary_from_text(text, path)


def vocabulary_from_text(text: str, path: Path | str) -> Vocabulary:
    """Read a vocabulary from the text of a file; ``path`` names it in a refusal.

    Raises
    ------
    VocabularyError
        As ``read_vocabulary``.
    """
    from pydantic import BaseModel, ConfigDict, ValidationError

    from framing_palette.catalogue import Kind, Surface

    class WordModel(BaseModel):
        model_config = ConfigDict(extra="forbid")
        say: str
        because: str
        needs: dict[str, str]
        kinds: tuple[Kind, ...] = ()
        surfaces: tuple[Surface, ...] = ()

    class VocabularyModel(BaseModel):
        model_config = ConfigDict(extra="forbid")
        word: tuple[WordModel, ...]

    try:
        model = VocabularyModel.model_validate(tomllib.loads(text))
    except tomllib.TOMLDecodeError as error:
        raise VocabularyError(
            path, problem=f"is not TOML ({error})", todo="compare it with the shipped vocabulary"
        ) from error
    except ValidationError as error:
        fault = error.errors()[0]
        place = ".".join(str(step) for step in fault["loc"])
        raise VocabularyError(
            path, problem=f"has a bad entry ({place}: {fault['msg']})", todo="change that entry"
        ) from error
    except (ValueError, RecursionError) as error:
        problem = "holds a number of thousands of digits or is nested hundreds of levels deep"
        raise VocabularyError(
            path, problem=problem, todo="compare it with the shipped vocabulary"
        ) from error
    try:
        return Vocabulary(
            tuple(
                Word(
                    word.say,
                    word.because,
                    limits_from_text(word.needs, f'word "{word.say}"'),
                    word.kinds,
                    word.surfaces,
                )
                for word in model.word
            )
        )
    except FramingPaletteError as error:
        problem = f"has a word that cannot be used ({str(error).rstrip('.')})"
        raise VocabularyError(path, problem=problem, todo="change that word") from error
