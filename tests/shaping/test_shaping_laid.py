import numpy as np

from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.shaping.shaped import shaped

EAR = "loaf epi width 62mm length 460mm height 40mm\n"


def ear(body):
    return shaped(expand(parse(EAR + body, "pattern"), EAR + body))


def test_pieces_lie_to_the_left_and_right_of_the_stalk():
    made = ear("row 4 spacing 75mm angle 0deg:\n    snip 54mm\n")
    assert len(made.slabs) == 6  # four pieces, what is ahead of them, the stalk
    sides = [np.sign(slab.area.centroid.x) for slab in made.slabs[:4]]
    assert sides == [-1, 1, -1, 1]
    assert made.area.geom_type == "Polygon"  # all in one
    low, high = made.area.bounds[1], made.area.bounds[3]
    assert high - low < 475
    assert made.height_at(np.array([[0.0, 0.0], [400.0, 0.0]]))[1] == 0
    assert made.grown(1.1, 1.2).height_mm == 1.2 * made.height_mm


def test_the_side_asked_for_is_the_side_they_lie_on():
    made = ear("row 2 spacing 90mm angle 0deg:\n    snip 54mm lay right\n")
    assert all(slab.area.centroid.x > 3 for slab in made.slabs[:2])
