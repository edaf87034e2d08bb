"""Two equal slits that cross, and stars of equal arms, under tension 1 all around.

Cross: K = 0.8636 T sqrt(pi a) (Rooke & Sneddon, Int. J. Eng. Sci. 7 (1969) 1079; Stallybrass,
ibid. 8 (1970) 351; recalled); the Wiener-Hopf integral below gives 0.863542
and Westmann's star (J. Math. & Phys. 43 (1964) 191). Area of an arm = pi F^2 T a^2 / E', exact by
scaling and energy. Opening across an arm at the crossing: 2.700 T a / E'.
"""

import numpy as np
import pytest
from scipy.integrate import quad
from support.small_strain import solve

A = 30.0
EVEN = (0.5, 0.5, 0.0)


def star_factor(arms):
    """F(n) = exp(-(1/pi) int ln N(w) / (1 + w^2) dw), N = (w sin 2b + sinh 2wb)(1 + cosh pi w) /
    ((cosh 2wb - cos 2b) sinh pi w), b = pi / n."""
    b = np.pi / arms

    def integrand(w):
        scale = np.exp(-2 * w * b)
        top = (w * np.sin(2 * b) * scale + (1 - scale**2) / 2) * (1 + 1 / np.cosh(np.pi * w))
        bottom = ((1 + scale**2) / 2 - np.cos(2 * b) * scale) * np.tanh(np.pi * w)
        return np.log(top / bottom) / (1 + w * w)

    return np.exp(-quad(integrand, 1e-12, 200, limit=400)[0] / np.pi)


def arms(count, panels):
    angles = 2 * np.pi * np.arange(count) / count
    ends = A * np.column_stack([np.cos(angles), np.sin(angles)])
    lines = [np.array([[0.0, 0.0], end]) for end in ends]
    return solve(lines, 12.0, strain=EVEN, panel_mm=A / panels)


def cross(panels):
    lines = [np.array([[-A, 0], [A, 0]]), np.array([[0, -A], [0, A]])]
    return solve(lines, 12.0, strain=EVEN, panel_mm=A / panels)


def test_formula_gives_the_published_cross():
    assert star_factor(4) == pytest.approx(0.863542, abs=1e-6)
    assert star_factor(4) == pytest.approx(0.8636, abs=2e-4)
    assert star_factor(2) == pytest.approx(1, abs=1e-6)


def test_area_identity_of_the_cross():
    opening = cross(50)
    factor = np.sqrt(opening.gap_mm @ opening.length_mm / 4 / (np.pi * A**2))
    assert factor == pytest.approx(0.863542, abs=2e-4)


def test_k_at_the_tips_of_the_cross():
    """The tip panel over that of a lone slit of the same panels."""
    lone = solve([np.array([[-A, 0], [A, 0]])], 12.0, strain=EVEN, panel_mm=A / 50)
    opening = cross(50)
    near = [gap[1:13] for gap in (opening.gap_mm, lone.gap_mm)]
    factor = np.polyfit(np.arange(12) + 1.5, near[0] / near[1], 2)[-1]
    assert factor == pytest.approx(0.863542, rel=3e-3)


def test_opening_at_the_crossing():
    opening = cross(50)
    middle = np.argsort((opening.midpoint_mm**2).sum(axis=1))[:8]
    np.testing.assert_allclose(opening.gap_mm[middle], 2.700 * A, rtol=3e-3)


def test_crossing_error_falls_with_the_square_of_the_panels():
    counts = np.array([6, 12, 25, 50])
    errors = []
    for count in counts:
        opening = cross(count)
        f2 = opening.gap_mm @ opening.length_mm / 4 / (np.pi * A**2)
        errors.append(abs(np.sqrt(f2) / star_factor(4) - 1))
    order = -np.polyfit(np.log(counts), np.log(errors), 1)[0]
    assert 1.7 < order < 2.4, errors


@pytest.mark.parametrize("count", [3, 4, 5, 6, 8])
def test_star_of_arms_that_meet_in_one_point(count):
    opening = arms(count, 50)
    factor = np.sqrt(opening.gap_mm @ opening.length_mm / count / (np.pi * A**2))
    assert factor == pytest.approx(star_factor(count), rel=3e-3)


def test_one_line_and_its_halves_open_alike():
    whole = solve([np.array([[-A, 0], [A, 0]])], 12.0, strain=EVEN, panel_mm=A / 50)
    halves = arms(2, 50)
    assert halves.gap_mm.max() == pytest.approx(whole.gap_mm.max(), rel=1e-6)
