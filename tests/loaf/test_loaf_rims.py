"""Drawn rims against hand-worked corners: a rounded corner is a circle that fits into it.

In a corner of half angle w a circle of radius r stands r / sin w from the sharp tip, so that the
rounded tip is r / sin w - r short of it.
"""

import math

import numpy as np
import pytest
import shapely

from scorecraft.loaf.rims.corners import rounded
from scorecraft.loaf.rims.fougasse import fougasse
from scorecraft.loaf.rims.heart import heart
from scorecraft.loaf.rims.star import INNER, star
from scorecraft.loaf.rims.triangle import triangle


def misses(drawn, points):
    """Greatest distance (in the drawing's size) of points from a drawn line."""
    return float(shapely.distance(shapely.LinearRing(drawn), shapely.points(points)).max())


def about(centre, radius, degrees):
    turn = np.radians(degrees)
    return np.asarray(centre) + radius * np.column_stack([np.cos(turn), np.sin(turn)])


def test_corners_out_and_in_are_rounded_by_their_own_radius():
    """An L of 10: its corners at right angles lose and gain arcs of a quarter of a circle."""
    ell = [(0, 0), (10, 0), (10, 5), (5, 5), (5, 10), (0, 10)]
    body = shapely.Polygon(rounded(ell, 2.0, 1.0))
    quarter = 1 - math.pi / 4
    assert body.area == pytest.approx(75 - 5 * 2.0**2 * quarter + 1.0**2 * quarter, rel=1e-3)
    assert misses(body.exterior.coords, about((2, 2), 2, [190, 225, 260])) < 2e-3
    assert misses(body.exterior.coords, about((6, 6), 1, [190, 225, 260])) < 2e-3


def test_a_star_has_five_round_points_and_rounder_notches():
    """Between a point at 1 and a notch at 0.58, 36 degrees on, the side makes the half angles."""
    way = np.array([INNER * math.sin(math.pi / 5), INNER * math.cos(math.pi / 5) - 1.0])
    at_tip = math.atan2(way[0], -way[1])
    at_notch = at_tip + math.pi / 5
    tip = 1 - 0.13 / math.sin(at_tip) + 0.13
    notch = INNER + 0.2 / math.sin(at_notch) - 0.2
    rays = np.arange(5) * 72
    drawn = star()
    assert misses(drawn, about((0, 0), tip, 90 + rays)) < 1e-3
    assert misses(drawn, about((0, 0), notch, 54 + rays)) < 1e-3
    assert np.hypot(*drawn.T).max() == pytest.approx(tip, abs=1e-3)
    assert np.hypot(*drawn.T).min() == pytest.approx(notch, abs=1e-3)


def test_a_triangle_has_sides_that_are_arcs_of_parabolas_and_round_corners():
    """The middles of its sides bulge from 0.5 by 0.24 of it; the corner fits a circle of 0.24."""
    drawn = triangle()
    assert misses(drawn, about((0, 0), 0.62, [30, 150, 270])) < 1e-3
    start, end = np.array([0, 1.0]), about((0, 0), 1.0, [210])[0]
    out = (start + end) / 2
    for share in (0.375, 0.625):
        point = start + share * (end - start) + 0.24 * 4 * share * (1 - share) * out
        assert misses(drawn, [point]) < 1e-3
    tip = drawn[:, 1].max()
    assert misses(drawn, about((0, tip - 0.24), 0.24, [70, 80, 90, 100, 110])) < 1e-3


def test_a_fougasse_is_a_leaf_with_its_tip_ahead():
    """Half its width at the share s of its length is 0.5 sin(pi s^0.8)^0.75."""
    drawn = fougasse()
    widest = 0.5**1.25
    points = [[0.5, 1.35 * widest], [-0.5, 1.35 * widest]]
    points += [[side * 0.40798, 1.35 * 0.2] for side in (-1, 1)]
    points += [[side * 0.38381, 1.35 * 0.7] for side in (-1, 1)]
    assert misses(drawn, points) < 2e-3
    assert np.ptp(drawn[:, 0]) == pytest.approx(1.0, abs=1e-3)
    foot, tip = drawn[:, 1].min(), drawn[:, 1].max()
    assert misses(drawn, about((0, tip - 0.12), 0.12, [50, 90, 130])) < 1e-3
    assert foot == pytest.approx(0, abs=5e-3) and abs(drawn[np.argmax(drawn[:, 1]), 0]) < 0.01


def test_a_heart_passes_through_the_points_of_its_sines():
    """x = 16 sin^3 t, y = 13 cos t - 5 cos 2t - 2 cos 3t - cos 4t at 30, 45, 90 and 135 degrees."""
    drawn = heart()
    right = np.array([[2.0, 9.2583], [5.65685, 11.60660], [16.0, 4.0], [5.65685, -9.60660]])
    assert misses(drawn, np.vstack([right[1:], right[1:] * (-1, 1)])) < 5e-3
    tip = drawn[:, 1].min()
    assert misses(drawn, about((0, tip + 3), 3, [255, 270, 285])) < 5e-3
    notch = shapely.LinearRing(drawn).intersection(shapely.LineString([(0, 0), (0, 15)])).y
    assert misses(drawn, about((0, notch + 3), 3, [255, 270, 285])) < 5e-3
