"""The handle's tilt on a dome, against the analytic normal of an ellipsoid.

The surface x²/a² + y²/b² + z²/c² = 1 has the normal (x/a², y/b², z/c²): calculus.
"""

import math

import numpy as np
import pytest

from scorecraft.bench.blade import handle
from scorecraft.loaf.dome import make_loaf

A, B, C = 80.0, 130.0, 85.0
LOAF = make_loaf("oval", 2 * A, 2 * B, C, (2.0, 2.0))
POINTS = np.array([[20.0, 30.0], [-45.0, 10.0], [5.0, -90.0], [-30.0, -60.0], [0.0, 1e-9]])


def normals(points):
    z = C * np.sqrt(1 - (points[:, 0] / A) ** 2 - (points[:, 1] / B) ** 2)
    raw = np.column_stack([points[:, 0] / A**2, points[:, 1] / B**2, z / C**2])
    return raw / np.linalg.norm(raw, axis=1, keepdims=True)


def tangents(points, theta):
    """Unit tangents over a plan direction: the normal has no part of them."""
    n = normals(points)
    flat = np.array([math.cos(theta), math.sin(theta)])
    rise = -(n[:, :2] @ flat) / n[:, 2]
    raw = np.column_stack([np.tile(flat, (len(points), 1)), rise])
    return raw / np.linalg.norm(raw, axis=1, keepdims=True)


@pytest.mark.parametrize("theta", [0.0, 1.1, -math.pi / 2])
def test_a_blade_straight_into_the_dough_tilts_as_the_dome_slopes(theta):
    made = LOAF.normal(POINTS)
    tilt, lean = handle(made, tangents(POINTS, theta), np.full(5, math.pi / 2), np.ones(5), 0.0)
    expected = np.arccos(normals(POINTS)[:, 2])
    np.testing.assert_allclose(tilt, expected, atol=1e-6)
    out = np.arctan2(POINTS[:4, 1] / B**2, POINTS[:4, 0] / A**2)
    np.testing.assert_allclose(np.cos(lean[:4] - out), 1, atol=1e-6)


@pytest.mark.parametrize("blade_deg", [30, 45, 60, 90])
@pytest.mark.parametrize("theta", [-math.pi / 2, 0.4, 2.8])
@pytest.mark.parametrize(("table", "side"), [(0.0, 1), (1.0, -1)])
def test_the_blade_keeps_its_angle_to_the_dough(blade_deg, theta, table, side):
    """The handle stands square to the stroke, at the blade's angle over the analytic surface."""
    tilt, lean = handle(
        LOAF.normal(POINTS), tangents(POINTS, theta), np.full(5, math.radians(blade_deg)),
        side * np.ones(5), table,
    )  # fmt: skip
    there = lean + table
    points = np.column_stack(
        [np.sin(tilt) * np.cos(there), np.sin(tilt) * np.sin(there), np.cos(tilt)]
    )
    over = np.einsum("ij,ij->i", points, normals(POINTS))
    along = np.einsum("ij,ij->i", points, tangents(POINTS, theta))
    np.testing.assert_allclose(over, math.sin(math.radians(blade_deg)), atol=1e-6)
    np.testing.assert_allclose(along, 0.0, atol=1e-6)


def test_the_tilt_on_a_slope_is_the_slope_and_what_the_blade_lies_over():
    """Half way out on the x axis, pulled along y: the angles just add up."""
    point = np.array([[40.0, 0.0]])
    slope = math.atan(C / A * 0.5 / math.sqrt(1 - 0.25))
    tangent = np.array([[0.0, -1.0, 0.0]])
    tilt, lean = handle(LOAF.normal(point), tangent, np.array([math.radians(70)]), np.ones(1), 0.0)
    assert tilt[0] == pytest.approx(slope + math.radians(20), abs=1e-6)
    assert lean[0] == pytest.approx(0.0, abs=1e-6)
