"""The crest of a ring against circles and an ellipse with a hole."""

import math

import numpy as np
import pytest

from scorecraft.loaf.crest import Crest
from scorecraft.loaf.outline import Outline

OUTER, HOLE = Outline("ring", 120.0, 150.0), Outline("hole", 40.0, 70.0)
RING = Crest(OUTER, HOLE)
THETA = np.array([0.2, 1.1, 2.5, 4.0])


def test_the_crest_lies_halfway_between_the_rims_in_every_direction():
    middle, half = RING.on_plan(np.array([0.0, math.pi / 2]))
    assert (middle.tolist(), half.tolist()) == (pytest.approx([80, 110]), pytest.approx([40, 40]))
    middle, half = RING.on_plan(THETA)
    assert middle + half == pytest.approx(OUTER.radius(THETA))
    assert middle - half == pytest.approx(HOLE.radius(THETA))
    swing, spread = RING.turning(THETA)
    assert swing + spread == pytest.approx(OUTER.turning(THETA))
    assert swing - spread == pytest.approx(HOLE.turning(THETA))


def test_slopes_around_are_those_of_the_share_of_the_way():
    """z(t), t = (r - m) / h: what is around over what is along is -(dt/dtheta) / (r dt/dr)."""
    across, step = np.array([60.0, 70.0, 100.0, 120.0]), 1e-5

    def share(crest, theta):
        middle, half = crest.on_plan(theta)
        return (across - middle) / half

    for crest in (RING, Crest(OUTER, None)):
        change = (share(crest, THETA + step) - share(crest, THETA - step)) / (2 * step)
        around = -change * crest.on_plan(THETA)[1] / across
        assert crest.around(THETA, across) == pytest.approx(around, rel=1e-5)


def test_a_hole_has_the_area_of_its_ellipse():
    assert RING.hole_mm2 == pytest.approx(math.pi * 40 * 70, rel=1e-9)
    assert Crest(OUTER, None).hole_mm2 == 0


def test_extremes_are_over_every_direction():
    uneven = Crest(OUTER, Outline("hole", 60.0, 70.0))
    assert uneven.extremes == pytest.approx((30, 40))
    assert Crest(OUTER, None).extremes == pytest.approx((120, 150))
