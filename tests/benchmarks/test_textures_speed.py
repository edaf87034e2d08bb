"""A fill costs no more than shapely's own overlay of the same lines, and grows with its lines."""

import shapely
from support.timing import ratio

from scorecraft.regions import disc
from scorecraft.textures import fill
from scorecraft.textures.hemp_leaf import hemp_leaf

DOME = disc(radius=140)


def filled(size):
    return fill("hemp_leaf", DOME, size=size, turn=0.2, shift=(0, 0), shortest=2)


def test_a_fill_of_five_thousand_strokes_costs_no_more_than_shapely_s_overlay():
    assert len(filled(6.5).lines) > 5_000
    shapes = shapely.linestrings(hemp_leaf(DOME.bounds, size=6.5))
    region = shapely.Polygon(DOME.exterior)
    assert ratio(lambda: filled(6.5), lambda: shapely.intersection(shapes, region), 2) <= 2


def test_twice_as_fine_costs_four_times_as_much():
    """Four times the strokes: near-linear is a factor of 4, quadratic would be 16."""
    assert ratio(lambda: filled(5), lambda: filled(10), 8) <= 8
