import numpy as np
import pytest
import shapely

from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.shaping.pulled import pulled, pulled_slab
from scorecraft.shaping.shaped import shaped

LEAF = "loaf fougasse width 230mm length 310mm height 24mm\n"


def laid(body):
    return expand(parse(LEAF + body, "pattern"), LEAF + body)


ONE = laid("slash 100mm through pulled 20mm\n")


def test_a_cut_is_as_wide_in_its_middle_as_it_is_pulled():
    (hole,) = pulled(ONE).holes()
    left, low, right, high = hole.bounds
    assert (left, right) == pytest.approx((-10, 10), abs=0.1)
    assert high - low == pytest.approx(
        shapely.length(shapely.LineString(ONE.loaf.sheet_to_plan(ONE.cuts[0].line)))
    )


def test_dough_beside_a_cut_gives_way_and_far_away_stays():
    moved = pulled(ONE).place(np.array([[0.1, 0.0], [-0.1, 0.0], [90.0, 0.0], [0.0, 120.0]]))
    assert moved[0] == pytest.approx([10.1, 0], abs=0.05)
    assert moved[1] == pytest.approx([-10.1, 0], abs=0.05)
    assert 92 < moved[2, 0] < 98
    assert moved[3] == pytest.approx([0, 120])


def test_a_strip_between_two_cuts_keeps_its_breadth():
    two = laid("row 2 spacing 40mm:\n    slash 100mm through pulled 20mm\n")
    one, other = sorted(pulled(two).holes(), key=lambda hole: hole.bounds[0])
    line = shapely.LineString([(-200, 0), (200, 0)])
    gap = shapely.distance(one.intersection(line), other.intersection(line))
    assert gap == pytest.approx(40, abs=3)


def test_the_body_is_high_between_the_holes_and_nothing_over_them():
    slab = pulled_slab(ONE)
    height = slab.height_at(np.array([[0.0, 0.0], [50.0, 0.0], [10.5, 0.0], [500.0, 0.0]]))
    assert height[[0, 3]] == pytest.approx([0, 0])
    assert height[1] == pytest.approx(24)
    assert 0 < height[2] < 14  # the edge is round
    larger = slab.grown(1.1, 1.2)
    assert larger.height_at(np.array([[55.0, 0.0]]))[0] == pytest.approx(28.8)
    assert larger.area.area == pytest.approx(1.21 * slab.area.area)


def test_hands_leave_other_dough_alone():
    assert shaped(laid("slash 100mm\n")) is None
    assert shaped(laid("slash 100mm through\n")) is None
    made = shaped(ONE)
    assert made is not None and made.height_mm == 24
