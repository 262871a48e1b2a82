"""What all tests share: property tests have no deadline, and the gate's are the same every time.

By hand they look in new places at every run; with CI set they repeat, so that a change lands or not
by what it changes.
"""

import os

from hypothesis import settings

settings.register_profile("house", deadline=None)
settings.register_profile("gate", deadline=None, derandomize=True)
settings.load_profile("gate" if os.environ.get("CI") else "house")
