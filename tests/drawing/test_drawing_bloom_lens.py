import numpy as np
import pytest
import shapely
from support.drawing_layouts import cut, ellipses, make_layout

from scorecraft.drawing.bloom.lens import baked_loaf, lenses, stations
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
    area = shapely.Polygon(lens.ring)
    assert area.area == pytest.approx(np.pi / 4 * 100 * 12, rel=0.01)
    assert area.bounds == pytest.approx((-50, -6, 50, 6), abs=0.02)
    assert lens.widest == pytest.approx(12.0, abs=0.02)


def test_on_the_way_a_slit_is_open_by_its_share():
    widths = [opened([[[-50, 0], [50, 0]]], [12.0], share=share)[0].widest for share in (0, 0.5)]
    assert widths[0] < 1.0 and widths[1] == pytest.approx(6.0, abs=0.01)


def test_along_other_axes_it_is_the_same_opening():
    (lens,) = opened([[[-50, 0], [50, 0]]], [12.0])
    turned = lens.turned(np.array([[0.0, 1.0], [-1.0, 0.0]]))
    assert turned.ring == pytest.approx(lens.ring[:, ::-1] * [1, -1])


def test_the_left_of_the_stroke_is_the_left():
    (lens,) = opened([[[0, -40], [0, 40]]], [10.0])
    middle = len(lens.half) // 2
    assert lens.ring[middle, 0] == pytest.approx(-5, abs=0.1)
    assert lens.left[middle, 0] == pytest.approx(-1, abs=0.01)


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


def test_the_baked_loaf_grows_by_the_bakes_ratios():
    layout = make_layout([], make_loaf("oval", 100.0, 180.0, 60.0))
    baked = baked_loaf(layout)
    bake = layout.bake
    assert (baked.width_mm, baked.length_mm) == pytest.approx(
        (100 * bake.sideways, 180 * bake.sideways)
    )
    assert baked.height_mm == pytest.approx(60 * bake.upward)
    assert baked.volume_mm3 == pytest.approx(layout.loaf.volume_mm3 * bake.spring)
