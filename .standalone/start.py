"""The standalone program's entrance: the same as the installed command's."""

import multiprocessing
import sys

from framing_palette.__main__ import main

if __name__ == "__main__":
    multiprocessing.freeze_support()  # a worker process starts this same program again
    sys.exit(main())
