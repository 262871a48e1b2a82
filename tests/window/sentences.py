"""Which sentences and patterns a module can say: read out of its source.

python tests/window/sentences.py framing_palette/ranking    # all of a folder, as TOML
python tests/window/sentences.py --missing de framing_palette/ranking
"""

import argparse
import ast
import json
import re
from collections.abc import Iterator
from pathlib import Path

_FIELD = re.compile(r"\{[^{}]*\}")
_NOT_SAID = ("note", "note_error", "getattr", "import_module", "Path", "namedtuple", "NewType")


def sentences_of(path: Path) -> list[str]:
    """Return what a module's strings can become, slots numbered, in the order of its lines."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    skipped = _docstrings(tree) | _annotations(tree) | _unsaid(tree)
    found = dict.fromkeys(_strings(tree, skipped))
    return [text for text in found if any(letter.isalpha() for letter in _FIELD.sub("", text))]


def _strings(tree: ast.AST, skipped: set[int]) -> Iterator[str]:
    for child in ast.iter_child_nodes(tree):
        if id(child) in skipped:
            continue
        if isinstance(child, ast.JoinedStr):
            yield _numbered(child)
            for slot in child.values:
                if isinstance(slot, ast.FormattedValue):
                    yield from _strings(slot.value, skipped)
                    if isinstance(slot.value, ast.Constant) and isinstance(slot.value.value, str):
                        yield slot.value.value
        elif isinstance(child, ast.Constant) and isinstance(child.value, str):
            yield _renumbered(child.value)
        else:
            yield from _strings(child, skipped)


def _numbered(joined: ast.JoinedStr) -> str:
    """Return an f-string with its slots numbered."""
    parts, slot = [], 0
    for value in joined.values:
        if isinstance(value, ast.Constant):
            parts.append(str(value.value))
        else:
            parts.append(f"{{{slot}}}")
            slot += 1
    return "".join(parts)


def _renumbered(text: str) -> str:
    """Return a text for ``format`` with its fields numbered."""
    parts = _FIELD.split(text)
    slots = (f"{{{number}}}" for number in range(len(parts)))
    return "".join(part + slot for part, slot in zip(parts, slots, strict=False)).removesuffix(
        f"{{{len(parts) - 1}}}"
    )


def _docstrings(tree: ast.AST) -> set[int]:
    """Return the strings that stand alone: they explain what is above or below them."""
    alone = (node for node in ast.walk(tree) if isinstance(node, ast.Expr))
    return {id(node) for node in alone if isinstance(node.value, ast.Constant)}


def _annotations(tree: ast.AST) -> set[int]:
    found = set()
    for node in ast.walk(tree):
        for name in ("annotation", "returns"):
            if getattr(node, name, None) is not None:
                found.add(id(getattr(node, name)))
        if isinstance(node, ast.Assign) and "__all__" in {
            target.id for target in node.targets if isinstance(target, ast.Name)
        }:
            found.add(id(node))
    return found


def _unsaid(tree: ast.AST) -> set[int]:
    """Return the calls and keys whose strings nobody reads."""
    found = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            name = getattr(node.func, "attr", getattr(node.func, "id", ""))
            if name in _NOT_SAID:
                found.add(id(node))
        if isinstance(node, ast.Subscript):
            found.add(id(node.slice))
    return found


def modules_of(place: Path) -> list[Path]:
    """Return the modules of a folder, or the one module."""
    return [place] if place.suffix == ".py" else sorted(place.rglob("*.py"))


def _arguments() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("--missing", metavar="LANGUAGE")
    parser.add_argument("places", nargs="+", type=Path)
    return parser.parse_args()


def main() -> None:
    """Print the sentences of modules as TOML, all or those that a language lacks."""
    from framing_palette.window.languages.language_files import pairs_of

    given = _arguments()
    known = pairs_of(given.missing) if given.missing else {}
    for module in [module for place in given.places for module in modules_of(place)]:
        lacking = [text for text in sentences_of(module) if text not in known]
        if lacking:
            print(f"# {module}")
        for text in lacking:
            print(f'{json.dumps(text, ensure_ascii=False)} = ""')


if __name__ == "__main__":
    main()
