"""Copies about the crown: found with their exact turn, and nothing else taken for one.

What lies further round clockwise is brought to the same place by turning the table back.
"""

import math

import numpy as np
import pytest
from support.bench_layouts import cut, layout, rays, sprigs, turned

from scorecraft.bench.copies import SAME_MM, Copies
from scorecraft.bench.evening import evened

REACH = math.radians(1)


def drawn(cuts):
    return [(index, False) for index in cuts]


def turn(cuts, one, other, near, within=2.0):
    found = Copies(layout(cuts)).turn(
        drawn(one), drawn(other), math.radians(near), math.radians(within)
    )
    return None if found is None else math.degrees(found)


def test_the_turn_between_copies_is_found_exactly():
    cuts = sprigs(7)
    assert turn(cuts, range(5), range(5, 10), -51) == pytest.approx(-360 / 7, abs=1e-6)
    assert turn(cuts, range(5, 10), range(5), 52) == pytest.approx(360 / 7, abs=1e-6)


def test_a_turn_that_is_not_looked_for_is_not_found():
    assert turn(sprigs(7), range(5), range(5, 10), -45) is None


def test_other_lines_depths_counts_and_parts_are_no_copies():
    a, b = [[0, 25], [0, 75]], turned([[0, 25], [0, 75]], 60)
    longer = turned([[0, 25], [0, 76.5]], 60)
    assert SAME_MM < 1.0, "a millimetre is seen at the bench"
    assert turn([cut(a), cut(b)], [0], [1], -60) == pytest.approx(-60)
    assert turn([cut(a), cut(longer)], [0], [1], -60) is None
    assert turn([cut(a), cut(b, depth=4.0)], [0], [1], -60) is None
    assert turn([cut(a), cut(b, "line")], [0], [1], -60) is None
    assert turn([cut(a), cut(b), cut(b)], [0], [1, 2], -60) is None


def test_a_line_drawn_the_other_way_is_a_copy_where_it_is_pulled_the_same_way():
    a, b = [[0, 25], [0, 75]], turned([[0, 75], [0, 25]], 60)
    copies = Copies(layout([cut(a), cut(b)]))
    near = math.radians(-60)
    assert copies.turn([(0, False)], [(1, False)], near, REACH) is None
    assert copies.turn([(0, False)], [(1, True)], near, REACH) == pytest.approx(near)


def evened_degrees(cuts, tried):
    stops = [[index] for index in range(len(cuts))]
    spins = [0.0] * len(cuts)
    return np.degrees(evened(Copies(layout(cuts)), stops, np.radians(tried), spins, REACH))


def test_whole_degrees_become_the_pattern_s_own():
    tried = [337, 293, 247, 203, 157, 113, 67, 23]
    found = evened_degrees(rays(8, first=22.5), tried)
    np.testing.assert_allclose(found, 337.5 - 45 * np.arange(8), atol=1e-6)


def test_a_row_begins_where_the_table_stands_already():
    cuts = [cut([[-60, 10], [60, 12]], "line"), *rays(13, family=4)]
    tried = [1.0, *(round(1.6 - 360 * k / 13) % 360 for k in range(13))]
    found = evened_degrees(cuts, tried)
    np.testing.assert_allclose(-np.diff(found[1:]) % 360, 360 / 13, atol=1e-6)
    assert found[0] == 1.0 and found[1] == pytest.approx(1.0)


def test_what_is_no_copy_keeps_its_angle():
    cuts = [cut([[0, 20], [0, 50]]), cut([[0, 20], [0, 60]])]
    np.testing.assert_allclose(evened_degrees(cuts, [3, 44]), [3, 44])
