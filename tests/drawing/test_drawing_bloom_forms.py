"""Pictures of loaves that are no domes: rings, tins, and what hands have shaped."""

import numpy as np
import pytest

from scorecraft.drawing.bloom.bloom import extent
from scorecraft.drawing.bloom.eye import Eye, look
from scorecraft.drawing.bloom.mouths import Mouths
from scorecraft.drawing.bloom.relief import Bread, ground
from scorecraft.expand import expand
from scorecraft.language.parse import parse

SQUARE = np.arange(-200.0, 201.0, 8.0)


def bread(text, eye=None):
    layout = expand(parse(text, "pattern"), text)
    count = len(layout.cuts)
    mouths = Mouths(tuple(np.array([0.0, 1.0]) for _ in range(count)),
                    tuple(np.array([6.0, 6.0]) for _ in range(count)))  # fmt: skip
    return Bread(layout, mouths, eye or Eye())


def dome(made):
    land = ground(made, SQUARE, SQUARE)
    middle = len(SQUARE) // 2
    return land.dome, middle


def test_a_ring_shows_the_table_through_its_hole():
    made = bread("loaf ring width 280mm hole 90mm\nat y 90mm:\n    slash 30mm turn 90deg\n")
    heights, middle = dome(made)
    assert heights[middle, middle] == 0
    assert heights[middle, middle + 12] > 20  # 96 mm to the right, on the crest


def test_a_tin_loaf_stands_on_its_sides():
    made = bread("loaf tin pan two_pound dough 900g\nslash 120mm\n", look("front"))
    heights, middle = dome(made)
    assert heights[middle, middle + 6] > made.loaf.wall_mm > 40
    low, high = extent(made.body, made.eye)
    flat = bread("loaf square width 110mm height 20mm\nslash 20mm\n", made.eye)
    assert high[1] - low[1] > made.loaf.wall_mm
    assert low[1] < extent(flat.body, made.eye)[0][1]  # the foot of the sides is in the picture


def test_a_fougasse_is_shown_pulled_open():
    text = "loaf fougasse width 230mm length 310mm height 24mm\nslash 120mm through pulled 24mm\n"
    made = bread(text)
    heights, middle = dome(made)
    assert heights[middle, middle] == 0 and heights[middle, middle + 4] > 20
    assert made.opened == []  # the hole is in its form


def test_an_ear_of_wheat_is_shown_laid_aside():
    ear = "loaf epi width 62mm length 360mm height 40mm\n"
    made = bread(ear + "row 4 spacing 75mm angle 0deg:\n    snip 54mm\n")
    low, high = extent(made.body, made.eye)
    assert high[0] - low[0] > 62 * made.layout.bake.sideways * 1.2
    assert made.opened == [] and made.body.height_mm == pytest.approx(40 * made.layout.bake.upward)
