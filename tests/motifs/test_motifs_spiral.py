import numpy as np
import pytest
import shapely

from scorecraft.errors import UsageError
from scorecraft.motifs.spiral import spiral


def test_a_spiral_grows_evenly_and_ends_at_twelve_o_clock():
    """Length of an Archimedean spiral r = a + b t: the integral of sqrt(r^2 + b^2) over t."""
    (stroke,) = spiral(radius=80, inner=8, turns=2.5, clockwise=True)
    reach = np.hypot(*stroke.line.T)
    assert (np.diff(reach) > 0).all()
    assert stroke.line[-1] == pytest.approx([0, 80])
    assert reach[0] == pytest.approx(8)
    b = 72 / (5 * np.pi)
    r = np.linspace(8, 80, 20001)
    exact = np.trapezoid(np.sqrt(r**2 + b**2), r) / b
    assert shapely.LineString(stroke.line).length == pytest.approx(exact, rel=1e-3)


def test_a_spiral_turns_either_way():
    (right,) = spiral(radius=80, inner=8, turns=2.5, clockwise=True)
    (left,) = spiral(radius=80, inner=8, turns=2.5, clockwise=False)
    assert left.line == pytest.approx(right.line * (-1, 1))
    assert right.line[-2, 0] < 0


def test_its_inner_radius_must_lie_inside():
    with pytest.raises(UsageError, match="inner radius"):
        spiral(radius=8, inner=8, turns=2, clockwise=True)
