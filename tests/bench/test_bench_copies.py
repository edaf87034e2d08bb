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
    assert turn([cut(a), cut(b, depth=3.04)], [0], [1], -60) == pytest.approx(-60)
    assert turn([cut(a), cut(b, depth=3.1)], [0], [1], -60) is None
    assert turn([cut(a), cut(b, blade=89.9)], [0], [1], -60) == pytest.approx(-60)
    assert turn([cut(a), cut(b, blade=89.0)], [0], [1], -60) is None
    assert turn([cut(a), cut(b, family=1)], [0], [1], -60) is None
    assert turn([cut(a), cut(b, "line")], [0], [1], -60) is None
    assert turn([cut(a), cut(b), cut(b)], [0], [1, 2], -60) is None


def test_cuts_that_have_changed_places_are_no_copies():
    line = np.array([[0.0, 25], [0, 75]])
    here = [(40, "rib"), (0, "stem"), (20, "vein")]
    there = [(100, "rib"), (60, "vein"), (80, "stem")]
    cuts = [cut(turned(line, degrees), word) for degrees, word in (*here, *there)]
    assert turn(cuts, [0, 1, 2], [3, 4, 5], -60) is None


def test_the_turn_is_the_one_that_brings_all_cuts_nearest():
    """A stem that lies a fifth of a degree off beside two veins: least squares, looked for."""
    lines = [[[0, 25], [0, 75]], [[0, 35], [8, 45]], [[0, 35], [-8, 45]]]
    degrees = [60.2, 60, 60]
    cuts = [cut(line, word) for line, word in zip(lines, ("stem", "vein", "vein"), strict=True)]
    cuts += [cut(turned(each.line, by), each.word) for each, by in zip(cuts, degrees, strict=True)]
    share = np.linspace(0, 1, 9)[:, None]
    ours, theirs = (
        np.concatenate([(1 - share) * each.line[0] + share * each.line[1] for each in some])
        for some in (cuts[:3], cuts[3:])
    )
    tried = np.arange(59.9, 60.3, 1e-3)
    off = [np.sum((turned(ours, each) - theirs) ** 2) for each in tried]
    found = turn(cuts, range(3), range(3, 6), -60)
    assert found == pytest.approx(-tried[np.argmin(off)], abs=5e-3)


@pytest.mark.parametrize("swapped", [False, True])
def test_lines_that_lie_on_one_another_are_copies_of_one_only(swapped):
    """Two in one place here, and there two of which one lies as far out but elsewhere."""
    line = np.array([[0.0, 25], [0, 75]])
    here = [cut(line), cut(line)]
    there = [cut(turned(line, 60)), cut(turned(line, 60 + 8))]
    cuts = [*there, *here] if swapped else [*here, *there]
    assert turn(cuts, [0, 1], [2, 3], 60 if swapped else -60) is None


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


def evened_spun(tried, spins, stops):
    """Even angles (degrees) after cuts under which the table turns."""
    cuts = [cut([[-60, 10], [60, 12]], "line"), *rays(9, family=4)]
    spun = [math.radians(each) for each in spins]
    return np.degrees(evened(Copies(layout(cuts)), stops, np.radians(tried), spun, REACH))


def test_a_row_begins_where_a_turning_table_comes_to_rest():
    """One that spun stays where it is; the row begins at 32.3, since 33 would be off by less."""
    stops = [[0], [1], [2], [3]]
    found = evened_spun([2.3, 33, 353, 313], [30, 0, 0, 0], stops)
    np.testing.assert_allclose(found, [2.3, 32.3, 352.3, 312.3], atol=1e-6)


@pytest.mark.parametrize(
    ("alone", "spin", "row"),
    [
        (204.1, 0, [204.1, 204.1, 164.1]),  # the row begins where it leaves the table
        (204.1, 7, [204.1, 204.7, 164.7]),
        (203.6, 0, [203.6, 204.7, 164.7]),
    ],
)
def test_a_row_after_another_begins_by_itself(alone, spin, row):
    stops = [[1], [2], [3], [0], [5], [6]]
    found = evened_spun([20, 340, 300, alone, 204.4, 165], [0, 0, 0, spin, 0, 0], stops)
    np.testing.assert_allclose(found, [20, 340, 300, *row], atol=1e-6)


@pytest.mark.parametrize(
    ("alone", "spin", "first"), [(201.6, 0, 202.5), (201.4, 0, 201.4), (201.6, 10, 201.6)]
)
def test_what_stands_before_a_row_goes_along_with_it(alone, spin, first):
    """Unless it is turned by more than angles are tried, or the table turns under the blade."""
    found = evened_spun([alone, 201.8, 161.8], [spin, 0, 0], [[0], [5], [6]])
    np.testing.assert_allclose(found, [first, 202.5, 162.5], atol=1e-6)


def test_the_end_of_a_row_does_not_go_along_with_the_next():
    cuts = [*rays(9, family=4), *rays(9, family=5, end=60)]
    tried, stops = [1.7, 321.7, 322, 282], [[0], [1], [10], [11]]
    found = evened(Copies(layout(cuts)), stops, np.radians(tried), [0.0] * 4, REACH)
    np.testing.assert_allclose(np.degrees(found), [1.7, 321.7, 322.5, 282.5], atol=1e-6)


@pytest.mark.parametrize(("second", "found"), [(338.1, [19.05, 339.05]), (337.9, [20, 337.9])])
def test_copies_are_looked_for_within_twice_the_reach(second, found):
    """A turn of 40 degrees that was tried 1.9 off is shared out; 2.1 off it is taken for none."""
    tried = evened_spun([20, second], [0, 0], [[1], [2]])
    np.testing.assert_allclose(tried, found, atol=1e-6)


def test_a_row_begins_at_a_whole_part_of_the_turn_where_that_is_near():
    found = evened_spun([93.3, 53.4, 13.2], [0] * 3, [[1], [2], [3]])
    np.testing.assert_allclose(found, [93.3, 53.3, 13.3], atol=1e-6)
    found = evened_spun([97, 57, 17], [0] * 3, [[1], [2], [3]])
    np.testing.assert_allclose(found, [97.5, 57.5, 17.5], atol=1e-6)


def test_what_is_no_copy_keeps_its_angle():
    cuts = [cut([[0, 20], [0, 50]]), cut([[0, 20], [0, 60]])]
    np.testing.assert_allclose(evened_degrees(cuts, [3, 44]), [3, 44])
