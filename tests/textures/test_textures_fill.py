"""A fill turns, shifts and clips its lattice, and refuses one that is too fine."""

from math import pi, radians

import numpy as np
import pytest
import shapely

from scorecraft.errors import UsageError
from scorecraft.regions import box, disc
from scorecraft.textures import fill


def filled(name, region, size, turn=0.0, shift=(0.0, 0.0), shortest=3.0, **own):
    return fill(name, region, size=size, turn=turn, shift=shift, shortest=shortest, **own)


def test_lines_stay_inside_and_reach_the_edge():
    region = disc(radius=60)
    lines = filled("hemp_leaf", region, 16).lines
    ends = np.array([end for line in lines for end in (line[0], line[-1])])
    assert shapely.distance(region, shapely.points(ends)).max() < 1e-9
    assert (shapely.distance(region.exterior, shapely.points(ends)) < 1e-9).sum() > 20


def test_turn_is_clockwise_and_shift_moves_the_origin():
    upright = filled("hatch", box(width=100, length=100), 10).lines
    assert {round(line[0, 0], 6) for line in upright} == set(range(-50, 51, 10))
    turned = filled("hatch", box(width=100, length=100), 10, turn=radians(30)).lines
    along = turned[0][1] - turned[0][0]
    assert np.arctan2(*along) == pytest.approx(radians(30))
    shifted = filled("hatch", box(width=100, length=100), 10, shift=(3, 8)).lines
    assert {round(line[0, 0], 6) for line in shifted} == set(range(-47, 50, 10))


def test_a_turned_fill_of_a_turned_region_is_the_fill_turned():
    region = box(width=70, length=50)
    plain = filled("scales", region, 8)
    c, s = np.cos(0.4), np.sin(0.4)
    frame = np.array([[c, s], [-s, c]])
    turned = filled("scales", shapely.transform(region, lambda p: p @ frame.T), 8, turn=0.4)
    assert len(plain.lines) == len(turned.lines)
    assert plain.dropped == turned.dropped
    for line, other in zip(plain.lines, turned.lines, strict=True):
        assert line @ frame.T == pytest.approx(other, abs=1e-9)


def test_crumbs_are_counted():
    kept = filled("scales", disc(radius=60), 8, shortest=0)
    less = filled("scales", disc(radius=60), 8, shortest=4)
    assert kept.dropped == 0
    assert less.dropped > 0
    assert len(kept.lines) == len(less.lines) + less.dropped


def test_a_region_in_parts_is_filled_in_each():
    two = shapely.union(box(width=20, length=90), shapely.Point(60, 0).buffer(15))
    lines = filled("crosshatch", two, 9, angle=pi / 2).lines
    middles = np.array([line.mean(axis=0) for line in lines])
    assert (middles[:, 0] > 40).any()
    assert (middles[:, 0] < 20).any()


def test_an_empty_region_has_no_lines():
    assert filled("hatch", shapely.Polygon(), 5).lines == ()


def test_too_fine_a_texture_is_refused_with_the_finest_size():
    with pytest.raises(UsageError, match=r"hemp leaf of size 0\.1 mm is too fine") as refused:
        filled("hemp_leaf", disc(radius=100), 0.1)
    assert "above 1 mm" in refused.value.hint
    assert filled("hatch", disc(radius=100), 1.01).lines


@pytest.mark.parametrize("name", ["triangles", "bamboo", "hatch"])
def test_straight_lattices_are_long_strokes(name):
    """A lattice is cut as lines across the region, not edge by edge."""
    lines = filled(name, box(width=100, length=100), 10).lines
    assert len(lines) < 60
    assert all(len(line) == 2 for line in lines)


@pytest.mark.parametrize(("name", "most"), [("circles", 40), ("tortoiseshell", 90)])
def test_curved_and_bent_lattices_run_on(name, most):
    lines = filled(name, box(width=100, length=100), 10).lines
    assert max(shapely.LineString(line).length for line in lines) > 100
    assert len(lines) < most


def test_basket_strokes_keep_even_gaps_at_the_square_s_edge():
    lines = filled("basket", box(width=90, length=90), 18, strokes=3).lines
    tree = shapely.STRtree([shapely.LineString(line) for line in lines])
    _, gaps = tree.query_nearest(tree.geometries, exclusive=True, return_distance=True)
    assert gaps.min() == pytest.approx(6)


def test_herringbone_strokes_do_not_touch():
    region = box(width=90, length=90)
    lines = filled("herringbone", region, 14, gap=6, lean=radians(45)).lines
    tree = shapely.STRtree([shapely.LineString(line) for line in lines])
    gaps = tree.query_nearest(tree.geometries, exclusive=True, return_distance=True)[1]
    assert gaps.min() > 2


def test_lozenges_can_stand_empty():
    region = box(width=90, length=90)
    plain = filled("lozenges", region, 16, angle=radians(60), inner=0).lines
    both = filled("lozenges", region, 16, angle=radians(60), inner=0.5).lines
    assert all(len(line) == 2 for line in plain)
    assert len(both) > len(plain)


@pytest.mark.parametrize("rings", [1, 3, 8])
def test_wave_arcs_never_cross_the_wave_in_front(rings):
    lines = filled("waves", box(width=90, length=90), 14, rings=rings).lines
    shapes = [shapely.LineString(line) for line in lines]
    tree = shapely.STRtree(shapes)
    one, other = tree.query(shapes, predicate="crosses")
    for a, b in zip(one, other, strict=True):
        meeting = shapely.intersection(shapes[a], shapes[b])
        ends = shapely.boundary(shapes[a]).union(shapely.boundary(shapes[b]))
        assert shapely.distance(meeting, ends) < 0.3


@pytest.mark.parametrize(
    ("name", "own", "message"),
    [
        ("crosshatch", {"angle": radians(5)}, "angle must be between 10deg and 170deg"),
        ("crosshatch", {"angle": radians(175)}, "angle must be between"),
        ("lozenges", {"angle": 0.0, "inner": 0.5}, "angle must be between"),
        ("herringbone", {"gap": 6, "lean": 0.0}, "lean must be between 10deg and 80deg"),
        ("running_stitch", {"rows": "012", "columns": "0"}, "rows is made of 0 and 1"),
        ("running_stitch", {"rows": "01", "columns": ""}, "columns is made of 0 and 1"),
    ],
)
def test_what_cannot_be_drawn_is_refused(name, own, message):
    with pytest.raises(UsageError, match=message):
        filled(name, disc(radius=60), 10, **own)


@pytest.mark.parametrize("own", [{"strokes": 1}, {"strokes": 2}])
def test_a_basket_of_few_strokes_still_has_strokes(own):
    lines = filled("basket", box(width=90, length=90), 18, **own).lines
    assert min(shapely.LineString(line).length for line in lines) > 3


def test_herringbone_strokes_far_apart_still_have_length():
    lines = filled("herringbone", box(width=90, length=90), 14, gap=60, lean=radians(45)).lines
    assert lines
    assert all(np.ptp(line[:, 0]) > 3 for line in lines)
