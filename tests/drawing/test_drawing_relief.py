"""The height field: nearest cuts, lips, ears, and rays that meet it."""

import math

import numpy as np
import pytest
import shapely
from scipy import ndimage
from support.drawing_layouts import cut, ellipses, make_layout

from scorecraft.drawing.bloom.cast import Frame, first_met, rows_seen
from scorecraft.drawing.bloom.eye import look
from scorecraft.drawing.bloom.lens import baked_loaf, lenses
from scorecraft.drawing.bloom.nearest import FAR_MM, nearest
from scorecraft.drawing.bloom.noise import TILE, Grain, blisters, blurred, bumps
from scorecraft.drawing.bloom.relief import Bread, ground
from scorecraft.loaf.dome import make_loaf

FLAT = make_loaf("square", 300.0, None, 60.0, profile=(12.0, 2.0))
STEP = 0.5
GRID = np.arange(-70, 70, STEP)
WHOLE = np.ones((len(GRID), len(GRID)), dtype=bool)


def opened(lines, widths, loaf=FLAT, blade=90.0, depth=9.0):
    cuts = [cut(line, blade=blade, depth=depth, kind="expansion") for line in lines]
    return Bread(make_layout(cuts, loaf), ellipses(widths))


def test_distances_are_those_to_the_edge_of_the_nearest_mouth():
    bread = opened([[[-40, 0], [40, 10]], [[0, -35], [-10, 30]]], [12.0, 5.0])
    place = nearest(bread.opened, GRID, GRID, np.array([8.0, 8.0]), WHOLE)
    rings = [shapely.Polygon(each.ring).buffer(0) for each in bread.opened]
    x, y = (each.ravel() for each in np.meshgrid(GRID, GRID))
    points = shapely.points(x, y)
    out = np.min([shapely.distance(each, points) for each in rings], axis=0)
    inside = np.any([shapely.contains(each, points) for each in rings], axis=0)
    found = place.out
    near = (out > 0.3) & (out < 6)
    assert np.abs(found - out)[near].max() < 0.6
    assert (found[inside] < 0.15).all() and (found[out > 8.5] == FAR_MM).all()
    assert set(np.unique(place.cut)) == {-1, 0, 1}


def test_no_cut_is_near_where_there_is_none():
    place = nearest([], GRID, GRID[:50], np.zeros(0), WHOLE[:50])
    assert place.out.shape == (50 * len(GRID),) and (place.cut == -1).all()


def profile(bread, x):
    """Relief along a line across a cut that runs up the middle."""
    land = ground(bread, x, np.arange(-2, 2.1, STEP))
    return land.relief.mean(axis=0)


def test_a_mouth_lies_under_its_lips_and_bulges():
    bread = opened([[[0, -60], [0, 60]]], [20.0])
    x = np.arange(-30, 30, STEP)
    height = profile(bread, x)
    lip = height[np.abs(np.abs(x) - 10.8) < 0.6].mean()
    edge = height[np.abs(np.abs(x) - 9.0) < 0.6].mean()
    middle = height[np.abs(x) < 2].mean()
    assert lip > 0.3 and edge < lip - 1.5 and middle > edge + 0.8


@pytest.mark.parametrize(("away", "higher"), [(40, -1), (-40, 1)])
def test_an_ear_lifts_on_the_side_where_the_blade_went_in(away, higher):
    """A slanted cut beside the crown: the lip toward the crown stands high."""
    bread = opened([[[away, -60], [away, 60]]], [12.0], blade=35.0)
    middle = bread.opened[0].middle[len(bread.opened[0].middle) // 2, 0]
    x = middle + np.arange(-20, 20, STEP)
    height = profile(bread, x)
    near, far = (height[np.abs(x - middle - side * 7.5) < 1].max() for side in (higher, -higher))
    assert near > far + 2.0
    upright = profile(opened([[[away, -60], [away, 60]]], [12.0]), x)
    assert upright.max() < 1.6


def test_a_groove_is_a_furrow_with_raised_edges():
    bread = opened([[[0, -60], [0, 60]]], [1.6], depth=3.0)
    x = np.arange(-6, 6, 0.25)
    height = profile(bread, x)
    assert height[np.abs(x) < 0.3].mean() < height[np.abs(x) > 3].mean() - 0.4


def test_rays_meet_a_ball_where_geometry_says():
    """Seen at an elevation e, a half ball of radius R tops out at R; its foot is at -R sin e."""
    ball = make_loaf("round", 200.0, None, 100.0, profile=(2.0, 2.0))
    layout = make_layout([], ball)
    bread = Bread(layout, ellipses([]), look(30), share=0.0)
    rows = np.arange(-160, 160, STEP)
    land = ground(bread, np.array([-STEP, 0.0, STEP]), rows)
    sine, cosine = math.sin(math.radians(30)), math.cos(math.radians(30))
    up = np.array([-40.0, 0.0, 60.0, 90.0])
    met = first_met(bread, land, up)[:, 1]
    depth = np.sqrt(100.0**2 - up**2)
    away = up * sine - depth * cosine  # the near side of the ball
    assert rows[0] + met * STEP == pytest.approx(away, abs=1.0)
    beyond = first_met(bread, land, np.array([104.0]))[0, 1]
    assert beyond == len(rows) - 1  # the table behind is as plain as the last row


def test_noise_repeats_and_has_an_even_spread():
    tile = bumps(1, 0.5, ((9.0, 1.0), (4.0, 0.4)))
    assert tile.mean() == pytest.approx(0, abs=1e-5) and tile.std() == pytest.approx(1, abs=1e-5)
    assert np.abs(np.diff(tile, axis=0)).max() > np.abs(tile[0] - tile[-1]).max() * 0.9
    at = (np.array([[3.0, 3.0 + TILE * 0.5]], np.float32), np.array([[1.0, 1.0]], np.float32))
    for apart in (0.1, 1.0):  # between the points, and at the nearest
        one, other = Grain(at, 0.5, apart).read(tile, even=False)[0]
        assert one == other == tile[2, 6]
    assert 0 < (blisters(3, 0.25) > 0).mean() < 0.5


def test_a_blur_of_means_is_that_of_all_pixels():
    tile = bumps(1, 0.5, ((9.0, 1.0),))[:301, :203]
    exact = ndimage.gaussian_filter(tile, 7.0)
    inner = np.s_[30:-30, 30:-30]
    assert np.abs(blurred(tile, 7.0) - exact)[inner].max() < 0.05 * np.abs(exact).max()


def test_cuts_that_do_not_open_are_still_seen():
    layout = make_layout([cut([[-20, 0], [20, 0]])])
    (lens,) = lenses(layout, ellipses([0.0]), baked_loaf(layout))
    assert 0.2 < lens.widest < 1.0


@pytest.mark.parametrize("view", [0, 6])
def test_a_level_look_knows_the_whole_loaf(view):
    """The rows of the table that are lit reach before the foot of the loaf and behind it."""
    ball = make_loaf("round", 240.0, None, 100.0, profile=(2.0, 2.0))
    bread = Bread(make_layout([], ball), ellipses([]), look(view), share=0.0)
    frame = Frame((-138.0, 138.0), (-18.0 - 120 * math.sin(math.radians(view)), 118.0), 1.0)
    rows = rows_seen(bread, frame)
    assert rows[0] < -120 and rows[-1] > 120
