"""Regions have their areas, and clipping cuts exactly at their edge."""

from math import pi, radians

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecraft.curves import arc
from scorecraft.errors import UsageError
from scorecraft.loaf.dome import make_loaf
from scorecraft.regions import band, box, clip, disc, wedge, whole


def test_regions_have_their_areas():
    assert disc(radius=60).area == pytest.approx(pi * 60**2, rel=1e-3)
    assert band(inner=20, outer=60).area == pytest.approx(pi * (60**2 - 20**2), rel=1e-3)
    assert box(width=30, length=50).bounds == (-15, -25, 15, 25)
    quarter = wedge(start=0, end=pi / 2, inner=20, outer=60)
    assert quarter.area == pytest.approx(pi * (60**2 - 20**2) / 4, rel=1e-3)
    assert quarter.bounds == pytest.approx((0, 0, 60, 60), abs=1e-9)


@pytest.mark.parametrize(
    ("start", "end", "share"), [(350, 10, 20 / 360), (-10, 10, 20 / 360), (0, 360, 1), (90, 90, 1)]
)
def test_a_wedge_runs_clockwise_through_twelve_o_clock(start, end, share):
    region = wedge(start=radians(start), end=radians(end), inner=0, outer=60)
    assert region.area == pytest.approx(share * pi * 60**2, rel=2e-3)
    assert region.is_valid


@pytest.mark.parametrize("inner", [-1, 60, 70])
def test_an_inner_radius_must_lie_inside(inner):
    with pytest.raises(UsageError, match="inner radius"):
        band(inner=inner, outer=60)
    with pytest.raises(UsageError, match="inner radius"):
        wedge(start=0, end=1, inner=inner, outer=60)


def test_the_whole_loaf_less_a_margin_keeps_it_all_round():
    loaf = make_loaf("oval", 150, 250, 70)
    region = whole(loaf, margin=12)
    rim = shapely.LinearRing(loaf.sheet_rim())
    corners = shapely.points(shapely.get_coordinates(region))
    assert shapely.distance(rim, corners) == pytest.approx(np.full(len(corners), 12), abs=0.05)
    assert shapely.Polygon(rim).contains(region)


REGION = shapely.difference(
    shapely.union(band(inner=20, outer=70), box(width=30, length=160)),
    shapely.Point(40, 10).buffer(8),
)


def length(lines):
    return float(sum(shapely.LineString(line).length for line in lines))


@given(seed=st.integers(0, 10_000), simple=st.booleans())
@settings(max_examples=30)
def test_clipping_agrees_with_overlay(seed, simple):
    """The reference is shapely's own overlay, which keeps neither direction nor crossings."""
    random = np.random.default_rng(seed)
    steps = 2 if simple else 40
    lines = [
        np.cumsum(random.normal(size=(steps, 2)) * 6, axis=0) + random.normal(size=2) * 60
        for _ in range(5)
    ]
    shapes = [shapely.LineString(line) for line in lines]
    around = shapely.difference(box(width=999, length=999), REGION)
    inside, outside = (clip(lines, region, shortest=0) for region in (REGION, around))
    for found, reference in (
        (inside, shapely.intersection(shapes, REGION)),
        (outside, shapely.difference(shapes, REGION)),
    ):
        assert length(found.lines) == pytest.approx(shapely.length(reference).sum(), abs=1e-6)
        for line, source in zip(found.lines, found.source, strict=True):
            assert shapely.distance(shapes[source], shapely.points(line)).max() < 1e-9
    assert length(inside.lines) + length(outside.lines) == pytest.approx(length(lines))


def test_a_line_inside_stays_whole_even_where_it_crosses_itself():
    loop = np.array([[0, 0], [10, 10], [10, 0], [0, 10]], dtype=float)
    found = clip([loop], box(width=100, length=100), shortest=50)
    assert len(found.lines) == 1
    assert found.lines[0] is loop
    assert found.dropped == 0


def test_pieces_keep_direction_order_and_source():
    across = np.array([[100, 5], [-100, 5]], dtype=float)
    up = np.array([[0, -100], [0, 100]], dtype=float)
    found = clip([across, up], band(inner=20, outer=70), shortest=0)
    assert found.source == (0, 0, 1, 1)
    right, left, low, high = found.lines
    assert right[0, 0] > right[1, 0] > 0 > left[0, 0] > left[1, 0]
    assert low[:, 1] == pytest.approx([-70, -20], abs=0.05)
    assert high[:, 1] == pytest.approx([20, 70], abs=0.05)


def test_a_closed_line_stays_joined_at_its_start():
    ring = arc(60, 0, 2 * pi)
    found = clip([ring], box(width=300, length=50), shortest=0)
    assert len(found.lines) == 2
    found = clip([ring], box(width=50, length=300), shortest=0)
    assert len(found.lines) == 2
    start = next(line for line in found.lines if line[:, 1].max() > 0)
    assert (np.diff(start[:, 0]) > 0).all()
    assert start[[0, -1], 0] == pytest.approx([-25, 25])


def test_crumbs_are_dropped_and_counted_but_short_cuts_are_not():
    lines = [
        np.array([[49, 0], [60, 0]], dtype=float),
        np.array([[45, 3], [60, 3]], dtype=float),
        np.array([[0, 0], [1, 0]], dtype=float),
    ]
    found = clip(lines, box(width=100, length=100), shortest=4)
    assert found.source == (1, 2)
    assert found.dropped == 1


def test_a_touch_from_outside_leaves_nothing_and_along_the_edge_stays():
    square = box(width=100, length=100)
    touch = np.array([[40, 60], [50, 50], [60, 40]], dtype=float)
    along = np.array([[50, -20], [50, 20]], dtype=float)
    through_corners = np.array([[-60, -60], [60, 60]], dtype=float)
    assert clip([touch], square, shortest=0).lines == ()
    assert length(clip([along], square, shortest=0).lines) == pytest.approx(40)
    assert length(clip([through_corners], square, shortest=0).lines) == pytest.approx(100 * 2**0.5)


def test_a_line_turning_on_the_edge_stays_one_piece():
    square = box(width=100, length=100)
    bounce = np.array([[0, 0], [50, 10], [0, 20], [0, 80]], dtype=float)
    (line,) = clip([bounce], square, shortest=0).lines
    assert line[0].tolist() == [0, 0]
    assert line[-1] == pytest.approx([0, 50])


def test_nothing_in_nothing_out():
    assert clip([], disc(radius=5), shortest=0).lines == ()
    far = np.array([[90, 90], [99, 99]], dtype=float)
    assert clip([far], disc(radius=5), shortest=0).lines == ()
    assert clip([far], disc(radius=500), shortest=0).lines[0] is far
    assert clip([far], shapely.Polygon(), shortest=0).lines == ()
