"""Expanding takes time in proportion to the strokes: little more than their own overlay."""

import time

import shapely

from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.regions import whole
from scorecraft.textures.hemp_leaf import hemp_leaf

EMPTY = "loaf round width 240mm height 100mm\n"
DOME = EMPTY + "fill whole margin 12mm with hemp_leaf size {size}mm shortest 2mm depth 2mm\n"
LEAVES = EMPTY + "around {count}:\n    at y 60mm:\n        leaf 30mm veins 4\n"


def expanded(text):
    return expand(parse(text), text)


def fastest(call, rounds=5):
    times = []
    for _ in range(rounds):
        start = time.process_time()
        call()
        times.append(time.process_time() - start)
    return min(times)


def growth(half, whole):
    """Time of twice the strokes over that of half of them, the best of a few turns."""
    return min(fastest(whole, 3) / fastest(half, 3) for _ in range(3))


def test_a_dome_of_five_thousand_strokes_costs_half_a_second_at_most():
    text = DOME.format(size=7.6)
    assert len(expanded(text).cuts) > 5_000
    assert fastest(lambda: expanded(text)) - fastest(lambda: expanded(EMPTY)) <= 0.5


def test_a_dome_costs_little_more_than_shapely_s_overlay_of_the_same_lines():
    region = whole(expanded(EMPTY).loaf, margin=12)
    shapes = shapely.linestrings(hemp_leaf(region.bounds, size=7.6))
    overlay = fastest(lambda: shapely.intersection(shapes, region))
    assert fastest(lambda: expanded(DOME.format(size=7.6))) < 2 * overlay


def test_twice_the_figures_cost_twice_the_time():
    half, whole = LEAVES.format(count=400), LEAVES.format(count=800)
    assert growth(lambda: expanded(half), lambda: expanded(whole)) <= 2.4


def test_twice_the_strokes_of_a_texture_cost_twice_the_time():
    coarse, fine = DOME.format(size=10.8), DOME.format(size=7.6)
    ratio = len(expanded(fine).cuts) / len(expanded(coarse).cuts)
    assert growth(lambda: expanded(coarse), lambda: expanded(fine)) <= 1.2 * ratio
