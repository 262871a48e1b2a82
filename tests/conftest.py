"""What all tests share: property tests have no deadline, and the gate's are the same every time.

By hand they look in new places at every run; with CI set they repeat, so that a change lands or not
by what it changes.
"""

import os
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings

# Before anything is imported that asks for them: neither tests nor the programs that they start
# ever see the data, settings, log or jobs of whoever runs them.
_HOME = Path(tempfile.mkdtemp(prefix="framing-palette-tests-"))
for _variable in ("XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"):
    os.environ[_variable] = str(_HOME / _variable.lower())
for _variable in ("FRAMING_PALETTE_JOBS", "FRAMING_PALETTE_PHOTOGRAPHS"):
    os.environ.pop(_variable, None)

settings.register_profile("house", deadline=None)
settings.register_profile("gate", deadline=None, derandomize=True)
settings.load_profile("gate" if os.environ.get("CI") else "house")


@pytest.fixture(scope="session", autouse=True)
def _own_home() -> Iterator[None]:
    yield
    shutil.rmtree(_HOME, ignore_errors=True)
