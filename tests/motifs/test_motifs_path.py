import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.motifs.path import path


def test_a_straight_path_keeps_its_points():
    (stroke,) = path(points=[(0, 0), (10, 5), (10, 5), (20, 0)], smooth=False)
    assert stroke.line.tolist() == [[0, 0], [10, 5], [20, 0]]


def test_a_smooth_path_goes_through_its_points():
    (stroke,) = path(points=[(0, 0), (10, 5), (20, 0)], smooth=True)
    assert len(stroke.line) > 3
    assert np.hypot(*(stroke.line - (10, 5)).T).min() < 1e-9


def test_a_path_needs_two_points():
    with pytest.raises(UsageError, match="two different points"):
        path(points=[(3, 3), (3, 3)], smooth=True)
