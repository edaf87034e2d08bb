"""A fill costs no more than shapely's own overlay of the same lines, and grows with its lines."""

from time import perf_counter

import shapely

from scorecraft.regions import disc
from scorecraft.textures import fill
from scorecraft.textures.hemp_leaf import hemp_leaf

DOME = disc(radius=140)


def fastest(call, rounds=5):
    times = []
    for _ in range(rounds):
        start = perf_counter()
        call()
        times.append(perf_counter() - start)
    return min(times)


def filled(size):
    return fill("hemp_leaf", DOME, size=size, turn=0.2, shift=(0, 0), shortest=2)


def test_a_dome_of_five_thousand_strokes_is_filled_at_once():
    assert len(filled(6.5).lines) > 5_000
    assert fastest(lambda: filled(6.5)) < 0.5


def test_a_fill_costs_no_more_than_shapely_s_overlay():
    lines = hemp_leaf(DOME.bounds, size=6.5)
    shapes = shapely.linestrings(lines)
    region = shapely.Polygon(DOME.exterior)
    overlay = fastest(lambda: shapely.intersection(shapes, region))
    assert fastest(lambda: filled(6.5)) < 2 * overlay


def test_twice_as_fine_costs_four_times_as_much():
    """Four times the strokes: near-linear is a factor of 4, quadratic would be 16."""
    coarse, fine = fastest(lambda: filled(10)), fastest(lambda: filled(5))
    assert fine < 8 * coarse
