"""The smooth kernel is the true one from its reach on, and the grid gives it between any ends."""

import numpy as np
import pytest
from scipy.interpolate import BSpline

from scorecraft.opening.far import SPLINE, Smooth, far, spline
from scorecraft.opening.kernel import Ends, between

SMOOTH = Smooth(21.0, 0.02, 0.3 + 0.2j, 0.8)


def test_splines_are_those_of_a_library():
    share = np.linspace(0, 1, 11, endpoint=False)
    basis = BSpline.basis_element(np.arange(SPLINE + 1), extrapolate=False)
    expected = np.stack([basis(share + SPLINE - 1 - node) for node in range(SPLINE)], axis=-1)
    np.testing.assert_allclose(spline(share), expected, atol=1e-14)


def test_beyond_the_reach_it_is_the_kernel_of_mean_ends():
    apart = np.array([21.5, 30j, -40 + 3j, 100 - 100j])
    for ours, theirs in zip(
        SMOOTH.between(apart), between(apart, 0.04, SMOOTH.way, SMOOTH.way, lean=0.8), strict=True
    ):
        np.testing.assert_allclose(ours, theirs, rtol=1e-12)


def test_it_has_no_peak_and_no_kink():
    """Slopes across the reach, and at the middle where the true kernel runs away."""
    apart = np.linspace(0, 40, 40_001)
    alike, mirrored = SMOOTH.between(apart.astype(complex))
    for part in (alike.real, mirrored.real):
        slope = np.gradient(part, apart)
        assert np.abs(np.diff(slope)).max() < 1e-3 * np.abs(slope).max()
        assert np.isfinite(part).all() and np.abs(part).max() < 10


def scattered_ends(angle):
    """Ends in an oblong that is turned, and jumps (K,) at them."""
    random = np.random.default_rng(3)
    at = random.uniform(-100, 100, (200, 2)) * [1.0, 0.4]
    place = (at @ [1, 1j]) * np.exp(1j * angle)
    at = np.column_stack([place.real, place.imag])
    ends = Ends(at, np.full(200, 0.02), np.zeros((200, 2)), np.zeros(0, dtype=int))
    jumps = random.standard_normal((200, 2)) @ [1, 1j]
    return ends, jumps - jumps.mean()  # as those of panels, whose two ends are opposite


@pytest.mark.parametrize("angle", [0.0, 0.7])
def test_grid_gives_the_smooth_kernel(angle):
    ends, jumps = scattered_ends(angle)
    place = ends.place
    alike, mirrored = SMOOTH.between(np.subtract.outer(place, place))
    expected = alike @ jumps + mirrored @ jumps.conj()
    found = far(ends, SMOOTH, SMOOTH.reach / 7).times(jumps)
    np.testing.assert_allclose(found, expected, atol=1e-3 * np.abs(expected).max())


def test_grid_tells_cores_apart():
    """What wider and narrower cores change, to the first order."""
    ends, jumps = scattered_ends(0.7)
    wider = np.random.default_rng(5).uniform(-0.02, 0.02, len(jumps))
    apart, both = np.subtract.outer(ends.place, ends.place), np.add.outer(wider, wider)
    forces = []
    for each in (SMOOTH.between(apart), SMOOTH.between(apart, both)):
        forces.append(each[0] @ jumps + each[1] @ jumps.conj())
    found = [far(ends, SMOOTH, SMOOTH.reach / 7, own).times(jumps) for own in (None, wider)]
    change = forces[1] - forces[0]
    np.testing.assert_allclose(found[1] - found[0], change, atol=0.02 * np.abs(change).max())
