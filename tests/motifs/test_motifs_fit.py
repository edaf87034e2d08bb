"""Figures brought to the sizes that were asked for."""

import numpy as np
import pytest

from scorecraft.cuts import Stroke
from scorecraft.motifs.fit import fitted, reaching

DRAWN = [Stroke("a", np.array([[-1.0, 1.0], [3.0, 9.0]])), Stroke("b", np.array([[0.0, 2.0]] * 2))]


def test_a_figure_is_stretched_to_its_sizes_from_its_foot_up():
    line = fitted(DRAWN, 8.0, 4.0, -2.0)[0].line
    assert line.tolist() == [[-2.0, -2.0], [6.0, 2.0]]


def test_a_figure_reaches_its_radius():
    points = np.concatenate([stroke.line for stroke in reaching(DRAWN, 50.0)])
    assert np.hypot(*points.T).max() == pytest.approx(50.0)
