"""Slits that are pressed shut: they keep no gap, and slide without friction.

The jump of a slit under shear S is (4 S / E') sqrt(a^2 - x^2), whatever presses on it (Tada,
Paris & Irwin handbook; recalled).
"""

import numpy as np
import pytest
from support.small_strain import solve

A = 30.0
SLIT = [np.array([[-A, 0.0], [A, 0.0]])]


def strain_of(sxx, syy, sxy):
    return (sxx - syy / 2, syy - sxx / 2, 1.5 * sxy)


def test_pressed_and_sheared():
    opening = solve(SLIT, 12.0, strain=strain_of(0, -0.05, 0.02), panel_mm=0.6)
    np.testing.assert_array_equal(opening.gap_mm, 0)
    x = opening.midpoint_mm[:, 0]
    inner = np.abs(x) < 0.9 * A
    exact = 4 * 0.02 * np.sqrt(A**2 - x**2)
    np.testing.assert_allclose(np.abs(opening.slide_mm[inner]), exact[inner], rtol=3e-3)


def test_pulled_along_itself_nothing_happens():
    opening = solve(SLIT, 12.0, strain=strain_of(0.05, 0, 0), panel_mm=0.6)
    np.testing.assert_allclose(opening.gap_mm, 0, atol=1e-12)


def test_bent_open_at_one_end_only():
    """Tension T x / a across the slit opens one half: where the faces part, tension across is
    none and nowhere do they overlap; without contact the jump would be odd in x."""

    def strain(points):
        across = 0.05 * points[:, 0] / A
        return np.column_stack([-across / 2, across, 0 * across])

    opening = solve(SLIT, 12.0, strain=strain, panel_mm=0.6)
    assert opening.gap_mm.min() == 0.0
    shut = opening.gap_mm == 0
    x = opening.midpoint_mm[:, 0]
    edge = x[~shut].min()
    # bent slit with contact: opens over |x - c| < l with K = 0 at its inner end. With the jump
    # f sqrt(l^2 - s^2) (1 + s / l) the tension taken away is linear: l = 2 a / 3, inner end -a / 3
    assert edge == pytest.approx(-A / 3, abs=1.0)
    assert not shut[x > edge].any()
