"""What is left under a cut, and what holds beside it, as formulas worked out once more."""

import math

import numpy as np
import pytest

from scorecraft.opening.hold import hold
from scorecraft.opening.ligament import alpha, ligament, mouth, slide_compliance, springs
from scorecraft.opening.lip import Blades

SKIN = 10.0


@pytest.mark.parametrize("share", [0.2, 0.5, 0.9])
def test_springs_of_the_skin_left(share):
    """Across 1 / 2 h alpha; along mu / h over the antiplane compliance, run out to nothing."""
    left = ligament(np.array([share * SKIN]), SKIN)
    assert left.normal == pytest.approx(1 / (2 * SKIN * alpha(share)))
    antiplane = -4 / math.pi * math.log(math.cos(math.pi * share / 2))
    assert slide_compliance(share) == pytest.approx(antiplane)
    assert left.sliding == pytest.approx((1 - share**12) / 3 / antiplane / SKIN)


def test_a_cut_of_no_depth_hardly_gives_and_one_that_is_through_all_but_drifts():
    none, through, deeper = (ligament(np.array([depth]), SKIN) for depth in (0.0, 10.0, 25.0))
    assert (none.normal, none.sliding) == (pytest.approx(1e7 / SKIN), pytest.approx(1e7 / 3 / SKIN))
    assert through.normal == through.sliding == pytest.approx(1e-8 / SKIN)
    assert deeper.normal == deeper.sliding == through.normal


def test_the_inside_holds_beside_the_skin_less_and_less():
    """Of that at the bottom of the skin e times at the surface, exp(1 - 2^2.2) twice as deep."""
    depth = np.array([0.0, SKIN / 2, SKIN, 2 * SKIN])
    held = hold(depth, SKIN, 0.09)
    assert held[2] == pytest.approx(1 / (SKIN * (0.74 + 3.19 / 0.3)))
    shares = np.exp([1.0, 1 - 0.5**2.2, 0.0, 1 - 2**2.2])
    np.testing.assert_allclose(held / held[2], shares)
    assert (hold(depth, SKIN, 0.0) == 0).all()
    both, skin = springs(depth, SKIN, 0.09), ligament(depth, SKIN)
    np.testing.assert_allclose(both.normal, skin.normal + held)
    np.testing.assert_allclose(both.sliding, skin.sliding + held)


def test_the_mouth_shows_the_notch_that_the_skin_left_carries():
    """4 x 1.4545 T d over the gap, T = k gap: half through k = 1 / 2 h alpha(1/2)."""
    gap, depth = np.array([3.0, 3.0]), np.array([5.0, 10.0])
    seen = 3.0 + 4 * 1.4545 * 3.0 / (2 * SKIN * 1.522758) * 5.0
    assert mouth(gap, depth, SKIN).tolist() == pytest.approx([seen, 3.0], rel=1e-5)


def test_blades_tell_what_is_still_carried_across_and_along():
    """The skin alone: what the inside holds is not the skin's."""
    blades = Blades(np.array([5.0, 2.0]), np.zeros(2))
    left = ligament(blades.depth_mm, SKIN)
    jumps, length = np.array([1.0, 2.0, 3.0, 4.0]), np.array([4.0, 5.0])
    expected = np.array([
        4 * left.normal[0], 10 * left.normal[1], 12 * left.sliding[0], 20 * left.sliding[1],
    ])  # fmt: skip
    np.testing.assert_allclose(blades.carried(jumps, length, SKIN), expected)
