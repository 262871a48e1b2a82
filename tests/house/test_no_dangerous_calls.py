"""Nothing in the package runs what a file says, starts a program or guesses at a file's kind."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
MODULES = sorted((ROOT / "framing_palette").rglob("*.py"))

# Reading one of these runs whatever the file's maker wanted, or starts another program.
FORBIDDEN_MODULES = frozenset(
    ["pickle", "cPickle", "dill", "cloudpickle", "marshal", "shelve", "subprocess", "pty", "code"]
)
# XML is read by expat, watched, and by the library for CxF on top of it; lxml resolves entities.
FORBIDDEN_MODULES |= {"lxml", "xml.sax", "xml.dom", "xml.etree", "xmlrpc"}
# The program opens no connection itself; the database's driver does when an address is set.
FORBIDDEN_MODULES |= {"socket", "ssl", "urllib.request", "http", "ftplib", "smtplib", "requests"}
WRITING_ALONE = "xml.sax.saxutils"
FORBIDDEN_CALLS = frozenset(["eval", "exec", "compile", "__import__", "input"])
FORBIDDEN_ATTRIBUTES = frozenset(
    ["os.system", "os.popen", "os.startfile", "os.execv", "os.spawnv", "joblib.load", "np.fromfile"]
)


def imported(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
            yield node.module
            yield from (f"{node.module}.{name.name}" for name in node.names)


def dotted(node: ast.expr) -> str:
    if isinstance(node, ast.Name):
        return node.id
    return f"{dotted(node.value)}.{node.attr}" if isinstance(node, ast.Attribute) else "?"


def faults(source: str) -> list[str]:
    tree = ast.parse(source)
    found = [
        f"import {name}"
        for name in imported(tree)
        if any(name == bad or name.startswith(f"{bad}.") for bad in FORBIDDEN_MODULES)
        and not name.startswith(WRITING_ALONE)
    ]
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        name = dotted(node.func)
        words = {word.arg: word.value for word in node.keywords}
        if name in FORBIDDEN_CALLS or name in FORBIDDEN_ATTRIBUTES:
            found.append(name)
        if "shell" in words:
            found.append(f"{name} with a shell")
        if name in ("np.load", "numpy.load") and not is_false(words.get("allow_pickle")):
            found.append(f"{name} that may unpickle")
        if name == "Image.open" and "formats" not in words:
            found.append("Image.open of any kind of file")
        if name.endswith("create_engine") and not is_false(words.get("echo", ast.Constant(False))):
            found.append("a database that tells its values")
    return found


def is_false(node: ast.expr | None) -> bool:
    return isinstance(node, ast.Constant) and node.value is False


def test_no_module_can_be_made_to_run_what_a_file_says() -> None:
    found = {
        module.relative_to(ROOT).as_posix(): faults(module.read_text(encoding="utf-8"))
        for module in MODULES
    }
    assert {name: listed for name, listed in found.items() if listed} == {}


@pytest.mark.parametrize(
    "source",
    [
        "import pickle",
        "from pickle import loads",
        "import subprocess as s",
        "from xml.etree import ElementTree",
        "from xml import sax",
        "import urllib.request",
        "eval('1')",
        "os.system('ls')",
        "run('ls', shell=True)",
        "np.load(path)",
        "np.load(path, allow_pickle=True)",
        "Image.open(path)",
        "__import__(name)",
    ],
)
def test_each_of_them_would_be_found(source: str) -> None:
    assert faults(source)


def test_what_is_allowed_is_not_taken_for_it() -> None:
    assert len(MODULES) > 100
    for source in (
        "dialog.exec()",
        "re.compile('a')",
        "np.load(p, allow_pickle=False)",
        "a.open()",
    ):
        assert faults(source) == []
