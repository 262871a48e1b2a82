"""The command line's entrance: which command, with which words, and how it ended."""

import argparse
import sys
from collections.abc import Callable, Sequence
from importlib import import_module
from pathlib import Path
from types import ModuleType
from typing import NoReturn

from framing_palette import __version__
from framing_palette.errors import FramingPaletteError

OpenWindow = Callable[[Path | None], int]
"""Opens the window, on the job in that file if one is given, and returns its exit code."""

DONE, DEFECT, BAD_INPUT = 0, 1, 2

COMMANDS = (
    "demo",
    "intake",
    "palette",
    "rank",
    "search",
    "size",
    "preview",
    "papers",
    "swatch",
    "catalog",
    "doctor",
)

_DESCRIPTION = """\
Framing Palette reads a picture's colours, ranks mat, fillet and moulding samples against it, and
carries the chosen design through sizes, preview, proposal and workshop ticket. Without a command
it opens the window."""

_CLOSING = """\
Lengths may be written 16 3/8, 16-3/8, 16.375, 16 3/8", 1' 4 3/8", 41.6 cm or 416 mm.
Exit codes: 0 done; 2 the input needs a change, said in one sentence; 1 a defect of the program.
With --json one JSON object goes to stdout and nothing else; progress goes to stderr."""


class _Parser(argparse.ArgumentParser):
    """A reader of the command line that refuses in one sentence, like every other refusal."""

    def error(self, message: str) -> NoReturn:
        """Say what is wrong with the words and where the right ones are listed, and leave."""
        wrong = message.rstrip(".")
        self.exit(BAD_INPUT, f"framing-palette: {wrong}; see {self.prog} --help.\n")


def main(argv: Sequence[str] | None = None, *, open_window: OpenWindow | None = None) -> int:
    """Run one command and return the exit code.

    Parameters
    ----------
    argv
        The words after the program's name; those of the process when None.
    open_window
        How to open the window; without it the commands that would open one say so and go on.
    """
    arguments = _parser().parse_args(argv)
    arguments.open_window = open_window
    try:
        return _run(arguments)
    except FramingPaletteError as error:
        print(f"framing-palette: {error}", file=sys.stderr)
        return BAD_INPUT
    except KeyboardInterrupt:
        print("framing-palette: stopped.", file=sys.stderr)
        return BAD_INPUT
    except BrokenPipeError:
        return DONE
    except Exception as error:  # noqa: BLE001 - the top of the program
        return _tell_defect(error, show_all=arguments.debug)


def _run(arguments: argparse.Namespace) -> int:
    if arguments.command is None:
        return _open_alone(arguments)
    result = arguments.module.run(arguments)
    return DONE if result is None else int(result)


def _open_alone(arguments: argparse.Namespace) -> int:
    if arguments.open_window is None:
        _parser().print_help()
        return DONE
    return int(arguments.open_window(None))


def _tell_defect(error: Exception, *, show_all: bool) -> int:
    if show_all:
        raise error
    print(
        f"framing-palette: this is a defect of the program, not of your input "
        f"({type(error).__name__}: {error}). Run the command again with --debug in front of it "
        "to see where, and report that.",
        file=sys.stderr,
    )
    return DEFECT


def _parser() -> argparse.ArgumentParser:
    parser = _Parser(
        prog="framing-palette",
        description=_DESCRIPTION,
        epilog=_CLOSING,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"%(prog)s {__version__}")
    parser.add_argument("--debug", action="store_true", help="show where a defect happened")
    commands = parser.add_subparsers(dest="command", title="commands", metavar="COMMAND")
    for name in COMMANDS:
        _add_command(commands, name, import_module(f"framing_palette.cli.commands.{name}"))
    return parser


def _add_command(
    commands: "argparse._SubParsersAction[_Parser]",
    name: str,
    module: ModuleType,
) -> None:
    command = commands.add_parser(
        name,
        help=module.SUMMARY,
        description=module.EXPLANATION,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    module.add_arguments(command)
    command.set_defaults(module=module)
