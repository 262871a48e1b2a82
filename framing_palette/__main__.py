"""The program's entrance: brings the two faces together."""

import sys
from pathlib import Path

from framing_palette.cli import main as run_command_line


def main() -> int:
    """Run the command line, which may open the window."""
    return run_command_line(open_window=_open_window)


def _open_window(job_file: Path | None) -> int:
    # Qt is imported only when a window is asked for.
    from framing_palette.window import run

    return run(job_file)


if __name__ == "__main__":
    sys.exit(main())
