from math import radians

import numpy as np
import pytest

from scorecraft.motifs.arc import arc


def test_an_arc_runs_clockwise_from_start_to_end():
    (stroke,) = arc(radius=60, start=radians(-30), end=radians(90))
    assert stroke.line[0] == pytest.approx([-30, 60 * 3**0.5 / 2])
    assert stroke.line[-1] == pytest.approx([60, 0], abs=1e-9)
    assert np.hypot(*stroke.line.T) == pytest.approx(np.full(len(stroke.line), 60))


def test_an_arc_can_be_cut_the_other_way():
    (stroke,) = arc(radius=60, start=radians(90), end=radians(-30))
    assert stroke.line[0] == pytest.approx([60, 0], abs=1e-9)
