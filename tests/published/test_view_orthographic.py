"""Views of the loaf are orthographic projections, as another library projects a sphere.

A hemisphere loaf is the northern half of a sphere with the crown as its pole. PROJ (`+proj=ortho`)
and the formulas of Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395 (1987),
chapter 20, give the place of a point on the paper and whether it lies on the far side (cos c < 0).
"""

import math

import numpy as np
import pyproj
import pytest

from scorecraft.drawing.bloom.bloom import extent
from scorecraft.drawing.bloom.eye import look
from scorecraft.loaf.dome import make_loaf

RADIUS = 100.0
BALL = make_loaf("round", 2 * RADIUS, None, RADIUS, profile=(2.0, 2.0))


def points_of(latitude, longitude):
    """Plan points of a sphere's places; the sphere's own longitude is the mathematical angle."""
    away = RADIUS * np.cos(latitude)
    return np.column_stack([away * np.cos(longitude), away * np.sin(longitude)])


def places():
    rng = np.random.default_rng(5)
    return rng.uniform(0.02, math.pi / 2 - 0.01, 400), rng.uniform(-math.pi, math.pi, 400)


@pytest.mark.parametrize("degrees", [5, 20, 45, 80, 90])
def test_points_fall_where_proj_puts_them(degrees):
    """The baker stands at longitude -90 and looks at the latitude of the elevation."""
    latitude, longitude = places()
    ours = look(degrees).laid(BALL, points_of(latitude, longitude))
    proj = pyproj.Proj(proj="ortho", R=RADIUS, lat_0=degrees, lon_0=-90)
    x, y = proj(np.degrees(longitude), np.degrees(latitude), errcheck=False)
    seen = np.isfinite(x)
    assert seen.sum() > 150
    assert ours[seen] == pytest.approx(np.column_stack([x, y])[seen], abs=1e-3)


@pytest.mark.parametrize("degrees", [5, 20, 45, 80])
def test_what_lies_on_the_far_side_is_hidden(degrees):
    latitude, longitude = places()
    centre, across = math.radians(degrees), longitude + math.pi / 2
    cos_c = math.sin(centre) * np.sin(latitude) + math.cos(centre) * np.cos(latitude) * np.cos(
        across
    )
    sure = np.abs(cos_c) > 0.03  # nearer, a line of sight but grazes the ball
    seen = look(degrees).sees(BALL, points_of(latitude, longitude))
    assert (seen == (cos_c > 0))[sure].all()
    assert 0 < seen.sum() < 400


def test_the_side_view_is_from_the_right():
    """From the right the loaf's far end lies to the right, and the left flank is hidden."""
    eye = look("side")
    far, left, right = np.array([[0, 80.0]]), np.array([[-90.0, 0]]), np.array([[90.0, 0]])
    assert eye.laid(BALL, far)[0, 0] == pytest.approx(80.0)
    assert not eye.sees(BALL, left)[0] and eye.sees(BALL, right)[0]


def test_a_level_look_shows_the_half_circle():
    low, high = extent(BALL, look(0))
    assert high - low == pytest.approx((2 * RADIUS, RADIUS), abs=0.05)
