"""Profiles and lengths along rays against circles, ellipses and cones."""

import numpy as np
import pytest
from scipy import integrate, special

from scorecraft.loaf.rays import RADIUS_STEP_MM, Meridian, ray_table

BALL = Meridian(100.0, 2.0, 2.0)
BENT = Meridian(70.0, 2.6, 1.7)
ANGLES = np.radians([0.0, 12.0, 47.0, 88.0])


def test_on_a_ball_shares_of_the_way_are_sines():
    t = np.sin(ANGLES)
    assert BALL.height(t) == pytest.approx(100 * np.cos(ANGLES))
    out, upright = BALL.steepness(t)
    assert out / upright == pytest.approx(100 * np.tan(ANGLES))
    assert BALL.plan(BALL.parameter(t)) == pytest.approx(t)
    assert BALL.parameter(np.array([0.75])) == pytest.approx([0.5])  # t = 1 - (1 - u)^2


def test_beyond_the_rim_it_is_level():
    out, upright = BENT.steepness(np.array([1.0, 1.0 + 1e-8, 2.0]))
    assert out.tolist() == [70.0 * 2.6 / 1.7, 0.0, 0.0]
    assert upright.tolist() == [0.0, 1.0, 1.0]


def test_steepness_and_rates_are_the_slopes_of_the_profile():
    u, step = np.array([0.02, 0.3, 0.77, 0.95]), 1e-6
    t = BENT.plan(u)
    out, upright = BENT.steepness(t)
    slope = (BENT.height(t + step) - BENT.height(t - step)) / (2 * step)
    assert -out / upright == pytest.approx(slope, rel=1e-4)
    along, down = BENT.rates(u)
    ends = [BENT.plan(u + step), BENT.plan(u - step)]
    assert along == pytest.approx((ends[0] - ends[1]) / (2 * step), rel=1e-6)
    assert down == pytest.approx((BENT.height(ends[0]) - BENT.height(ends[1])) / (2 * step), 1e-5)


def test_a_cone_is_as_long_as_its_side():
    """q = 1 has no steep rim: z = H (1 - t), and every ray is the side of a triangle."""
    table = ray_table(Meridian(30.0, 1.0, 1.0), 40.0, 72.0)
    radius = np.array([40.0, 53.3, 72.0])
    side = np.hypot(30.0, radius)
    assert table.total(radius) == pytest.approx(side, abs=2e-3)
    assert table.length(radius, np.full(3, 0.4)) == pytest.approx(0.4 * side, abs=2e-3)
    assert table.parameter(radius, np.full(3, 0.4)) == pytest.approx([0.4] * 3)


def test_rays_of_ellipses_have_the_length_of_their_arcs():
    """From the crown to t = sin w: R times the elliptic integral E(w, 1 - H^2 / R^2)."""
    table = ray_table(BALL, 80.0, 130.0)
    radius, w = (each.ravel() for each in np.meshgrid([80.0, 101.3, 130.0], ANGLES[1:]))
    arc = radius * special.ellipeinc(w, 1 - (100.0 / radius) ** 2)
    whole = radius * special.ellipe(1 - (100.0 / radius) ** 2)
    u = 1 - np.sqrt(1 - np.sin(w))
    assert table.total(radius) == pytest.approx(whole, abs=2e-3)
    assert table.length(radius, u) == pytest.approx(arc, abs=2e-3)
    assert table.parameter(radius, arc / whole) == pytest.approx(u, abs=2e-5)


@pytest.mark.parametrize("radius", [50.0, 73.4, 95.0])
def test_rays_of_other_powers_by_quadrature(radius):
    def speed(u):
        along, down = BENT.rates(np.asarray(u))
        return float(np.hypot(radius * along, down))

    table = ray_table(BENT, 50.0, 95.0)
    for u in (0.3, 0.9):
        way = integrate.quad(speed, 0, u, limit=100)[0]
        assert table.length(np.array(radius), np.array(u)) == pytest.approx(way, abs=3e-3)


def test_rows_are_no_farther_apart_than_is_said_and_rays_beyond_them_take_the_last():
    table = ray_table(BALL, 80.0, 130.0)
    assert len(table.lengths) == 2 + int(50 / RADIUS_STEP_MM) and table.step <= RADIUS_STEP_MM
    assert table.total(np.array([70.0, 150.0])) == pytest.approx(
        table.total(np.array([80.0, 130.0])), abs=1e-6
    )
    lone = ray_table(BALL, 100.0, 100.0)
    assert lone.total(np.array(100.0)) == pytest.approx(np.pi * 50, abs=1e-4)
