import numpy as np
import pytest
import shapely

from scorecraft.motifs.ring import ring


def test_a_ring_is_one_closed_clockwise_stroke():
    (stroke,) = ring(radius=40)
    assert np.array_equal(stroke.line[0], stroke.line[-1])
    assert stroke.line[0] == pytest.approx([0, 40])
    assert not shapely.is_ccw(shapely.LinearRing(stroke.line))
    assert shapely.LinearRing(stroke.line).length == pytest.approx(2 * np.pi * 40, rel=2e-3)
