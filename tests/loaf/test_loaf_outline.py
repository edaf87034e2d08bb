import math
import re

import numpy as np
import pytest
import shapely

from scorecraft.errors import UsageError
from scorecraft.loaf.forms import FORMS, ROWS
from scorecraft.loaf.outline import (
    Outline,
    inner_outline,
    outline_of,
    tapered,
    traced_outline,
    traced_outlines,
)
from scorecraft.loaf.rims.triangle import triangle


def rim_of(form, width, length):
    return outline_of(FORMS[form], width, length)


def circle(n=400, radius=100.0, centre=(0.0, 0.0)):
    turn = np.arange(n) * (math.tau / n)
    return np.column_stack([np.cos(turn), np.sin(turn)]) * radius + centre


def test_length_lies_along_y():
    for form in ROWS:
        rim = outline_of(form, 120, 300)
        assert (rim.width_mm, rim.length_mm) == pytest.approx((120, 300))
        drawn = np.ptp(rim.points(4000), axis=0)
        assert drawn == pytest.approx([120, 300], abs=0.3), form.name


def test_points_lie_on_the_superellipse():
    rim = rim_of("long", 120, 300)
    x, y = np.abs(rim.points(100)).T
    assert (x / 60) ** rim.power + (y / 150) ** rim.power == pytest.approx(np.ones(100))


def test_long_is_blunter_than_oval_and_square_has_corners():
    corner = math.atan2(150, 60)
    assert rim_of("long", 120, 300).radius(corner) > rim_of("oval", 120, 300).radius(corner)
    assert 115 < rim_of("square", 200, 200).radius(math.pi / 4) < 100 * math.sqrt(2)


def test_turning_is_the_slope_of_the_radius():
    rim = rim_of("oval", 120, 300)
    theta = np.linspace(0.1, 1.4, 9)
    a, b = 60.0, 150.0
    exact = -(rim.radius(theta) ** 3) * np.sin(theta) * np.cos(theta) * (b**-2 - a**-2)
    assert rim.turning(theta) == pytest.approx(exact, rel=1e-6)


def test_traced_circle_is_round_about_its_centre():
    rim = traced_outline(circle(centre=(30, -20)))
    assert rim.radius(np.linspace(0, 7, 50)) == pytest.approx(np.full(50, 100), abs=0.02)
    assert rim.width_mm == pytest.approx(200)


def test_traced_square_has_straight_sides_whatever_its_direction():
    corners = [(-50, -50), (50, -50), (50, 50), (-50, 50)]
    for points in (corners, corners[::-1], [*corners, corners[0]]):
        rim = traced_outline(points)
        assert rim.radius([0, math.pi / 4, 0.3]) == pytest.approx(
            [50, 50 * math.sqrt(2), 50 / math.cos(0.3)], abs=2e-3
        )


def test_traced_rim_that_turns_back_says_where():
    bent = [(0, 0), (100, 0), (100, 100), (90, 100), (90, 10), (0, 10)]
    with pytest.raises(UsageError, match=r"turns back on itself at \d+°") as caught:
        traced_outline(bent)
    assert "meet the rim once" in caught.value.hint


@pytest.mark.parametrize(
    ("points", "says"),
    [
        ([(0, 0), (1, 1)], "three points"),
        ([(0, 0), (10, 10), (10, 0), (0, 10)], "crosses itself"),
        ([(0, 0), (10, float("nan")), (10, 0)], "x and y"),
        ([(0, 0, 0)], "x and y"),
    ],
)
def test_what_is_no_rim_is_refused(points, says):
    with pytest.raises(UsageError, match=says):
        traced_outline(points)


def test_same_rims_are_equal_and_can_be_keys():
    assert rim_of("round", 200, 200) == rim_of("round", 200, 200)
    assert len({traced_outline(circle()), traced_outline(circle())}) == 1


def test_a_traced_hole_lies_about_the_centre_of_the_rim():
    rim, hole = traced_outlines([circle(centre=(30, -20)), circle(radius=30, centre=(33, -20))])
    assert rim.radius(0.0) == pytest.approx(100, abs=0.02)
    assert hole.radius([0.0, math.pi]) == pytest.approx([33, 27], abs=0.02)
    with pytest.raises(UsageError, match="around the loaf's centre"):
        traced_outlines([circle(), circle(radius=20, centre=(50, 0))])


def test_a_taper_narrows_in_a_straight_line_toward_12_o_clock():
    plain = rim_of("oval", 150, 250)
    narrow = tapered(plain, 0.2)
    assert (narrow.width_mm, narrow.length_mm) == pytest.approx((150, 250), abs=0.1)
    here, there = (rim.points(720) for rim in (plain, narrow))
    there[:, 1] -= (there[:, 1].max() + there[:, 1].min()) / 2
    share = there[:, 0] / np.interp(there[:, 1], *_half_widths(here))
    side = (there[:, 0] > 20) & (np.abs(there[:, 1]) < 100)
    fitted = np.polyfit(there[side, 1] / plain.b_mm, share[side], 1)
    assert fitted[0] / fitted[1] == pytest.approx(-0.2, abs=0.01)


def _half_widths(points):
    """Half width of a rim over the way along it, which rises."""
    right = points[points[:, 0] > 0]
    right = right[np.argsort(right[:, 1])]
    return right[:, 1], right[:, 0]


def test_a_triangle_has_three_equal_full_sides_and_one_corner_ahead():
    drawn = triangle()
    turned = drawn @ np.array([[-0.5, math.sqrt(0.75)], [-math.sqrt(0.75), -0.5]])
    assert shapely.Polygon(drawn).hausdorff_distance(shapely.Polygon(turned)) < 0.02
    x, y = drawn[np.argmax(drawn[:, 1])]
    assert abs(x) < 0.05 and y > -1.2 * drawn[:, 1].min()
    sharp = shapely.Polygon([(0, 1), (-math.sqrt(0.75), -0.5), (math.sqrt(0.75), -0.5)])
    below = shapely.Polygon(drawn).difference(sharp).area
    assert 0.1 < below / sharp.area < 0.35


def test_radii_of_a_superellipse_and_of_its_scaled_copies():
    """On |x/60|^4 + |y/150|^4 = 1, worked by hand where x = y and where x/60 = y/150."""
    rim = Outline("square", 60.0, 150.0, 4.0)
    level = (60**-4 + 150**-4) ** -0.25
    assert rim.radius([math.pi / 4, -3 * math.pi / 4]) == pytest.approx([level * 2**0.5] * 2)
    corner = math.hypot(60, 150) / 2**0.25
    assert rim.radius(math.atan2(150, -60)) == pytest.approx(corner)
    assert rim.extremes == pytest.approx((60, max(rim.radius(np.linspace(0, 7, 4000)))), rel=1e-4)
    twice = rim.scaled(2.0)
    assert (twice.width_mm, twice.length_mm, twice.power) == (240, 600, 4.0)
    assert twice.radius([0.4, 1.2]) == pytest.approx(2 * rim.radius([0.4, 1.2]))
    even = Outline("square", 100.0, 100.0, 4.0)
    assert even.radius(math.pi / 4) == pytest.approx(100 * 2**0.25)
    assert Outline("round", 100.0, 100.0).radius([0.3, 0.8]).tolist() == [100, 100]


def test_points_start_at_3_o_clock_and_run_counter_clockwise():
    rim = rim_of("oval", 120, 300)
    theta = rim.directions(8)
    assert theta[[0, 2, 6]] == pytest.approx([0, math.pi / 2, -math.pi / 2])
    assert np.tan(theta[1]) == pytest.approx(150 / 60)
    assert rim.points(8)[[0, 1, 2]] == pytest.approx(
        np.array([[60, 0], [60 * 0.5**0.5, 150 * 0.5**0.5], [0, 150]])
    )


def test_sampled_radii_are_straight_lines_in_angle_all_the_way_round():
    rim = Outline("traced", 10.0, 10.0, samples=(10.0, 20.0, 14.0, 12.0))
    quarter = math.pi / 2
    at = np.array([0, 0.25, 1, 1.5, 3.5, 4, -0.5, 4.25])
    assert rim.radius(at * quarter) == pytest.approx([10, 12.5, 20, 17, 11, 10, 11, 12.5])
    assert rim.scaled(3.0).radius(1.5 * quarter) == pytest.approx(51)
    assert rim.turning(0.5 * quarter) == pytest.approx(10 / quarter)


def test_a_hole_is_everywhere_as_far_from_the_outer_rim():
    outer = Outline("ring", 120.0, 150.0, 2.5)
    hole = inner_outline(outer, 90.0)
    assert (hole.width_mm, hole.length_mm, hole.power) == (90, 150, 2.5)


def test_a_taper_widens_the_near_end_as_much_as_it_narrows_the_far_one():
    """On a rectangle of power 10 the sides are straight: 1 - 0.2 y / b of the width at each y."""
    plain = Outline("tin", 60.0, 120.0, 10.0)
    points = tapered(plain, 0.2).points(4000)
    points[:, 1] -= (points[:, 1].max() + points[:, 1].min()) / 2

    def wide(y):
        return np.ptp(points[np.abs(points[:, 1] - y) < 0.5, 0])

    assert wide(60.0) / wide(-60.0) == pytest.approx(0.9 / 1.1, rel=2e-3)
    assert wide(0.0) / wide(-60.0) == pytest.approx(1 / 1.1, rel=2e-3)
    assert np.ptp(points, axis=0) == pytest.approx([120, 240], abs=0.1)
    assert tapered(plain, 0.2).shape == "tin"


def test_traced_rims_are_sampled_every_quarter_of_a_degree_from_3_o_clock():
    rim = traced_outline([(-30, -20), (50, -20), (10, 40)])
    assert len(rim.samples) == 1440 and (rim.width_mm, rim.length_mm) == (80, 60)
    x, y = rim.samples[0], rim.samples[360]  # centre of area at (10, 0)
    assert y == pytest.approx(40) and x == pytest.approx(80 / 3)
    assert rim.samples[1080] == pytest.approx(20)
    twice = [(-30, -20), (-30, -20), (50, -20), (10, 40), (10, 40)]
    assert traced_outline(twice).samples == pytest.approx(rim.samples)


def test_a_rim_tells_where_it_turns_back_on_the_turntable():
    """A square with a slot from the right that leaves its middle on the left of it."""
    bent = [
        (-50, -50),
        (50, -50),
        (50, -30),
        (-10, -30),
        (-10, -20),
        (50, -20),
        (50, 50),
        (-50, 50),
    ]
    with pytest.raises(UsageError, match="turns back on itself at") as caught:
        traced_outline(bent)
    x, y = shapely.Polygon(bent).centroid.coords[0]
    told = int(re.search(r"at (\d+)°", caught.value.message)[1])
    assert told == round(math.degrees(math.atan2(50 - x, -30 - y)) % 360)


def test_a_rim_that_does_not_go_round_its_own_centre_is_refused():
    horseshoe = [(0, 0), (100, 0), (100, 100), (0, 100), (0, 90), (90, 90), (90, 10), (0, 10)]
    with pytest.raises(UsageError, match="turns back on itself"):
        traced_outline(horseshoe)


def test_a_rim_of_three_points_is_enough():
    with pytest.raises(UsageError, match="three points"):
        traced_outline([(0, 0), (0, 0), (50, 0), (50, 0)])
    with pytest.raises(UsageError, match="crosses itself"):
        traced_outline([(0, 0), (50, 0), (100, 0)])
