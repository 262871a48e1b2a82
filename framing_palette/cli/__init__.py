"""The command line: one of the two faces of the program.

Words and file names flow in; one JSON object or a short text flows out on stdout, progress and
messages on stderr, and an exit code: 0 done, 2 bad input, 1 a defect. No calculation lives here:
each command reads files, calls the folders above, and prints. Nothing imports this folder but
``__main__``. Each command is a module of ``commands``, imported when it is asked for.
"""

from framing_palette.cli.main import main

__all__ = ["main"]
