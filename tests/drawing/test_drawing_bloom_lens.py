import numpy as np
import pytest
import shapely
from support.drawing_layouts import cut, ellipses, make_layout

from scorecraft.drawing.bloom.lens import baked_loaf, between, crossings, lenses, stations
from scorecraft.drawing.bloom.mouths import Mouths
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

FLAT = make_loaf("square", 300.0, None, 60.0, profile=(12.0, 2.0))
"""A loaf with so flat a top that sheet, plan and surface are one there."""


def opened(lines, widths, loaf=FLAT, **more):
    layout = make_layout([cut(line) for line in lines], loaf)
    layout = type(layout)(layout.title, (), loaf, Bake(spring=1.0), layout.cuts)
    return lenses(layout, ellipses(widths), baked_loaf(layout), **more)


def test_a_straight_slit_opens_to_an_ellipse():
    (lens,) = opened([[[-50, 0], [50, 0]]], [12.0])
    assert lens.area().area == pytest.approx(np.pi / 4 * 100 * 12, rel=0.01)
    assert lens.area().bounds == pytest.approx((-50, -6, 50, 6), abs=0.02)
    assert lens.widest == pytest.approx(12.0, abs=0.01)


def test_growing_and_shrinking_move_both_edges():
    (lens,) = opened([[[-50, 0], [50, 0]]], [12.0])
    for out in (-2.0, 1.5):
        _, low, _, high = lens.area(out).bounds
        assert (low, high) == pytest.approx((-6 - out, 6 + out), abs=0.02)
    assert lens.area(-6.5).is_empty


def test_the_left_of_the_stroke_is_the_left():
    (lens,) = opened([[[0, -40], [0, 40]]], [10.0])
    middle = len(lens.half) // 2
    assert lens.side(1)[middle, 0] == pytest.approx(-5, abs=0.1)
    assert lens.side(-1)[middle, 0] == pytest.approx(5, abs=0.1)


def test_wandering_leaves_the_widths():
    calm, moved = (
        opened([[[-60, 10], [60, -5]]], [14.0], rng=rng)[0]
        for rng in (None, np.random.default_rng(3))
    )
    assert np.array_equal(calm.half, moved.half)
    aside = np.abs(moved.middle - calm.middle).max()
    assert 0.05 < aside < 1.5


def test_an_end_that_is_open_is_rounded_off():
    layout = make_layout([cut([[-30, 0], [30, 0]])], FLAT)
    share = np.array([0.0, 1.0])
    mouths = Mouths((share,), (np.array([8.0, 0.0]),))
    layout = type(layout)(layout.title, (), FLAT, Bake(spring=1.0), layout.cuts)
    (lens,) = lenses(layout, mouths, baked_loaf(layout))
    left, _, right, _ = lens.area().bounds
    assert (left, right) == pytest.approx((-34, 30), abs=0.05)


def test_a_flank_foreshortens_one_direction_only():
    """On a half sphere of radius 100 at 60 degrees from the crown: half the width, or all of it."""
    ball = make_loaf("round", 200.0, None, 100.0, profile=(2.0, 2.0))
    away = 100 * np.pi / 3
    out = np.array([[0, away - 8], [0, away + 8]])
    around = np.array([[-8, away], [8, away]])
    along_ray, along_ring = opened([out, around], [4.0, 4.0], ball)
    (x, y) = (np.ptp(each, axis=0) for each in (along_ray.left[[0, -1]], along_ring.left))
    middle = len(along_ray.left) // 2
    assert np.hypot(*along_ray.left[middle]) == pytest.approx(1.0, abs=0.01)
    middle = len(along_ring.left) // 2
    assert np.hypot(*along_ring.left[middle]) == pytest.approx(0.5, abs=0.01)
    assert np.isfinite(x).all() and np.isfinite(y).all()


def test_stations_keep_both_ends_and_the_corners():
    line = np.array([[0, 0], [30, 0], [30, 20], [0, 20.0]])
    points, share = stations(line)
    assert np.array_equal(points[[0, -1]], line[[0, -1]])
    assert (np.diff(share) > 0).all() and share[0] == 0 and share[-1] == 1
    for corner in line[1:3]:
        assert np.hypot(*(points - corner).T).min() < 1e-9


def test_edges_that_cross_give_all_their_pieces():
    line = np.array([[0, 0], [10, 0], [10, 0.5], [0, 0.5]])
    up = np.array([0.0, 1.0])
    area = between(line + up, line - up)
    assert area.is_valid
    assert area.covers(shapely.Point(5, 0.2))


def test_crossing_openings_take_from_one_another():
    cross = [[[-30, 0], [30, 0]], [[0, -30], [0, 30]], [[50, 50], [70, 50]]]
    opens = opened(cross, [8.0, 8.0, 8.0])
    taken = crossings(opens)
    assert set(taken) == {0, 1}
    band = opens[0].band(1, 0.0, 2.0, taken[0])
    assert not band.intersects(shapely.Point(0, 5))
    assert band.intersects(shapely.Point(10, 4.5))


def test_the_baked_loaf_grows_by_the_bakes_ratios():
    layout = make_layout([], make_loaf("oval", 100.0, 180.0, 60.0))
    baked = baked_loaf(layout)
    bake = layout.bake
    assert (baked.width_mm, baked.length_mm) == pytest.approx(
        (100 * bake.sideways, 180 * bake.sideways)
    )
    assert baked.height_mm == pytest.approx(60 * bake.upward)
    assert baked.volume_mm3 == pytest.approx(layout.loaf.volume_mm3 * bake.spring)
