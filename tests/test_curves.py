"""Curves hold the chord error and keep their ends."""

from math import cos, pi, sin

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecraft import curves
from scorecraft.curves import CHORD_MM


def furthest_from_circle(points, radius):
    middle = (points[1:] + points[:-1]) / 2
    return np.abs(np.hypot(*middle.T) - radius).max()


def test_polar_angles_run_clockwise_from_twelve_o_clock():
    assert curves.polar(2.0, 0.0) == pytest.approx([0, 2])
    assert curves.polar(2.0, pi / 2) == pytest.approx([2, 0])


@given(radius=st.floats(0.5, 500), sweep=st.floats(0.01, 2 * pi))
@settings(max_examples=40)
def test_arc_stays_within_the_chord_error(radius, sweep):
    points = curves.arc(radius, 0.3, 0.3 + sweep)
    assert furthest_from_circle(points, radius) <= CHORD_MM * (1 + 1e-9)
    assert points[0] == pytest.approx([radius * sin(0.3), radius * cos(0.3)])
    assert points[-1] == pytest.approx([radius * sin(0.3 + sweep), radius * cos(0.3 + sweep)])


def test_a_tiny_arc_is_still_an_arc():
    assert len(curves.arc(0.01, 0, 2 * pi)) >= 5


def test_a_whole_turn_is_closed():
    points = curves.arc(37.0, 0.1, 0.1 + 2 * pi, (3, 4))
    assert np.array_equal(points[0], points[-1])


def test_bezier_matches_its_formula_and_the_chord_error():
    """Middle of a cubic is (p0 + 3 p1 + 3 p2 + p3) / 8 (de Casteljau)."""
    controls = np.array([(0, 0), (10, 40), (60, -30), (70, 20)], dtype=float)
    points = curves.bezier(*controls)
    fine = np.linspace(0, 1, 2001)[:, None]
    exact = sum(
        w * (1 - fine) ** (3 - k) * fine**k * controls[k] for k, w in enumerate((1, 3, 3, 1))
    )
    gap = shapely.distance(shapely.LineString(points), shapely.points(exact)).max()
    assert gap <= CHORD_MM
    middle = shapely.Point((controls * [[1], [3], [3], [1]]).sum(axis=0) / 8)
    assert shapely.distance(shapely.LineString(points), middle) <= CHORD_MM
    assert np.array_equal(points[[0, -1]], controls[[0, -1]])


def test_a_straight_bezier_is_one_chord():
    assert len(curves.bezier((0, 0), (1, 1), (2, 2), (3, 3))) == 2


def test_sample_refines_until_the_chords_are_close():
    points = curves.sample(lambda t: np.column_stack([t, 30 * np.sin(t / 3)]), 0, 200)
    fine = np.linspace(0, 200, 20001)
    exact = shapely.points(np.column_stack([fine, 30 * np.sin(fine / 3)]))
    assert shapely.distance(shapely.LineString(points), exact).max() <= CHORD_MM


@given(
    st.lists(
        st.tuples(st.integers(-50, 50), st.integers(-50, 50)), min_size=2, max_size=7, unique=True
    )
)
@settings(max_examples=40)
def test_smooth_goes_through_every_point(points):
    line = curves.smooth(points)
    for point in points:
        assert np.hypot(*(line - point).T).min() < 1e-9
    assert np.array_equal(line[0], points[0])
    assert np.array_equal(line[-1], points[-1])


def test_smooth_keeps_a_straight_line_straight_and_skips_repeats():
    line = curves.smooth([(0, 0), (10, 0), (10, 0), (35, 0)])
    assert np.abs(line[:, 1]).max() == 0
    assert (np.diff(line[:, 0]) > 0).all()


def test_smooth_closes_without_a_corner():
    corners = [(0, 0), (40, 0), (40, 40), (0, 40), (0, 0)]
    line = curves.smooth(corners)
    assert np.array_equal(line[0], line[-1])
    out, home = line[1] - line[0], line[-1] - line[-2]
    assert np.arctan2(*out) == pytest.approx(np.arctan2(*home), abs=0.2)


def test_join_writes_the_shared_point_once():
    line = curves.join(curves.segment((0, 0), (1, 0)), curves.segment((1, 0), (1, 1)))
    assert line.tolist() == [[0, 0], [1, 0], [1, 1]]


def test_an_open_curve_through_points_of_a_circle_stays_on_it_to_its_ends():
    angles = np.linspace(0.0, 1.5, 4)
    through = 50 * np.column_stack([np.cos(angles), np.sin(angles)])
    assert np.hypot(*curves.smooth(through).T) == pytest.approx(50, abs=0.08)
