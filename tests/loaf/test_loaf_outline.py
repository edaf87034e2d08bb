import math

import numpy as np
import pytest
import shapely

from scorecraft.errors import UsageError
from scorecraft.loaf.forms import FORMS, ROWS
from scorecraft.loaf.outline import outline_of, tapered, traced_outline, traced_outlines
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
