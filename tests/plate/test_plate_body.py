"""The blank, measured: a round loaf of 200 mm has its edge 16 mm outside, at 116 mm."""

import numpy as np
import pytest
import shapely

from scorecraft.loaf.dome import make_loaf
from scorecraft.plate.body import blank

ROUND = blank(make_loaf("round", 200.0, None, 80.0))
EDGE = 116.0


def across(area, start, end):
    """Bounds of what a straight line crosses of an area."""
    return shapely.intersection(area, shapely.LineString([start, end])).bounds


def test_the_tab_is_as_wide_and_as_far_out_as_a_hand_wants():
    assert ROUND.area.bounds == pytest.approx((-EDGE, -EDGE - 30, EDGE, EDGE), abs=0.1)
    left, _, right, _ = across(ROUND.area, (-80, -EDGE - 19), (80, -EDGE - 19))
    assert (left, right) == pytest.approx((-23, 23), abs=0.05)
    rounded = 11 * (1 - 0.5**0.5)
    low = -EDGE - 30 + rounded
    left, _, right, _ = across(ROUND.area, (-80, low), (80, low))
    assert right - left == pytest.approx(46 - 2 * rounded, abs=0.1)


def test_it_hangs_by_one_hole_in_the_tab():
    (hole,) = ROUND.area.interiors
    assert hole.bounds == pytest.approx((-8, -EDGE - 24, 8, -EDGE - 8), abs=0.05)


def test_the_tab_joins_the_edge_by_a_hollow():
    """A disc of 9 mm lies in the corner: a sharp corner would tear."""
    along = 23 + 9
    out = (EDGE + 9) ** 2 - along**2
    middle = shapely.Point(along, -(out**0.5))
    assert middle.distance(ROUND.area) == pytest.approx(9, abs=0.05)


@pytest.mark.parametrize(
    ("quarter", "wide", "deep"), [(0, 9.0, 6.5), (1, 4.95, 3.575), (3, 4.95, 3.575)]
)
def test_notches_tell_the_hours_and_the_one_at_twelve_is_the_biggest(quarter, wide, deep):
    turned = shapely.affinity.rotate(ROUND.area, 90 * quarter, origin=(0, 0))
    for x, left in ((0.0, deep), (wide / 4, deep / 2), (-wide / 4, deep / 2)):
        top = across(turned, (x, 60), (x, 140))[3]
        assert EDGE - top == pytest.approx(left, abs=0.06)
    beside = wide / 2 + 0.1
    assert across(turned, (beside, 60), (beside, 140))[3] == pytest.approx(EDGE, abs=0.15)


def test_there_is_no_notch_where_the_tab_is():
    assert ROUND.area.covers(shapely.LineString([(0, -60), (0, -EDGE - 7)]))
    long = blank(make_loaf("long", 100.0, 300.0, 70.0)).area
    assert long.covers(shapely.LineString([(20, 0), (50 + 16 + 7, 0)]))
    assert not long.covers(shapely.Point(-50 - 15, 0)) and not long.covers(shapely.Point(0, -165))


@pytest.mark.parametrize(("length", "beside"), [(124.0, False), (126.0, True)])
def test_a_loaf_a_quarter_longer_than_wide_is_held_at_its_side(length, beside):
    left, low, right, high = blank(make_loaf("oval", 100.0, length, 50.0)).area.bounds
    out = (right + left, -low - high)
    assert out == pytest.approx((30, 0) if beside else (0, 30), abs=0.2)


def test_the_hole_of_a_long_loaf_lies_in_its_tab():
    (hole,) = blank(make_loaf("oval", 100.0, 150.0, 50.0)).area.interiors
    assert hole.bounds == pytest.approx((50 + 16 + 8, -8, 50 + 16 + 24, 8), abs=0.05)


def test_the_cross_hair_points_at_the_crown_and_leaves_it_whole():
    right, *_ = sorted(ROUND.hair, key=lambda each: -each.centroid.x)
    assert right.bounds == pytest.approx((1.8, -0.5, 5.5, 0.5), abs=0.01)
    ways = {tuple(np.sign(np.round(each.centroid.coords[0], 6))) for each in ROUND.hair}
    assert ways == {(1, 0), (0, 1), (-1, 0), (0, -1)}
    assert {round(each.area, 4) for each in ROUND.hair} == {round(right.area, 4)}
