"""The picture's true size, and what is said when it does not fit."""

import numpy as np

from framing_palette.picture import ColourTrust, Picture, TrustGrade
from framing_palette.units import Length

UNKNOWN = ColourTrust("assumed", TrustGrade.UNKNOWN, "Not known.")


def test_a_size_typed_again_is_warned_of_once_and_a_better_one_no_more() -> None:
    picture = Picture(np.zeros((100, 100, 3), np.float32), None, UNKNOWN, 100, 100)
    wrong = (Length.mm_of(100), Length.mm_of(90))
    twice = picture.with_true_size(*wrong).with_true_size(*wrong)
    assert len(twice.notices) == 1
    assert twice.with_true_size(Length.mm_of(100), Length.mm_of(100)).notices == ()
