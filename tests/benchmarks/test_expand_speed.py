"""Expanding takes time in proportion to the strokes: little more than their own overlay."""

import shapely
from support.timing import ratio

from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.regions import whole
from scorecraft.textures.hemp_leaf import hemp_leaf

EMPTY = "loaf round width 240mm height 100mm\n"
DOME = EMPTY + "fill whole margin 12mm with hemp_leaf size {size}mm shortest 2mm depth 2mm\n"
LEAVES = EMPTY + "around {count}:\n    at y 60mm:\n        leaf 30mm veins 4\n"


def expanded(text):
    return expand(parse(text), text)


def test_a_dome_of_five_thousand_strokes_costs_little_more_than_shapely_s_overlay_of_them():
    """Measured: 1.2 times, the same as the fill alone."""
    text = DOME.format(size=7.6)
    assert len(expanded(text).cuts) > 5_000
    region = whole(expanded(EMPTY).loaf, margin=12)
    shapes = shapely.linestrings(hemp_leaf(region.bounds, size=7.6))
    assert ratio(lambda: expanded(text), lambda: shapely.intersection(shapes, region), 2.2) <= 2.2


def test_twice_the_figures_cost_twice_the_time():
    """Quadratic would be 4."""
    half, whole = LEAVES.format(count=400), LEAVES.format(count=800)
    assert ratio(lambda: expanded(whole), lambda: expanded(half), 2.7) <= 2.7


def test_twice_the_strokes_of_a_texture_cost_twice_the_time():
    coarse, fine = DOME.format(size=10.8), DOME.format(size=7.6)
    most = 1.35 * len(expanded(fine).cuts) / len(expanded(coarse).cuts)
    assert ratio(lambda: expanded(fine), lambda: expanded(coarse), most) <= most
