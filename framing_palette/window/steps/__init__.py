"""Which stops does a job have?

Each step of the job is a module here: what it shows in the middle, what lies on its shelf, and
how it stands. A new step is one module with a :class:`Step` and one line in ``STEPS``; the frame
does the rest. Steps know the session and what is shared on the counter, never each other.
"""

from framing_palette.window.steps.agree import AgreeStep
from framing_palette.window.steps.build import BuildStep
from framing_palette.window.steps.choose import ChooseStep
from framing_palette.window.steps.intake import IntakeStep
from framing_palette.window.steps.measure import MeasureStep
from framing_palette.window.steps.read import ReadStep
from framing_palette.window.steps.step import Counter, Standing, Step

STEPS: tuple[type[Step], ...] = (
    IntakeStep,
    ReadStep,
    ChooseStep,
    BuildStep,
    MeasureStep,
    AgreeStep,
)

__all__ = ["STEPS", "Counter", "Standing", "Step"]
