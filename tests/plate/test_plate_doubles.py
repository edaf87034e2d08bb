import pytest
from shapely import LineString

from scorecraft.plate.doubles import pieces, without_doubles

LONG = LineString([(0, 0), (30, 0)])


@pytest.mark.parametrize(("off", "left"), [(0.04, 0), (0.06, 1)])
def test_lines_a_twentieth_of_a_millimetre_apart_are_one(off, left):
    _, rest = without_doubles([LONG, LineString([(5, off), (25, off)])])
    assert len(rest) == left


@pytest.mark.parametrize(("shared", "taken"), [(0.5, False), (0.7, True)])
def test_a_line_that_only_touches_another_is_left_whole(shared, taken):
    """A shared stretch counts from 0.6 mm on."""
    joins = LineString([(10, 5), (10, 0), (10 + shared, 0), (10 + shared, 5)])
    _, rest = without_doubles([LONG, joins])
    assert sum(each.length for each in rest) == pytest.approx(
        10 + (0 if taken else shared), abs=0.2
    )


def test_the_earlier_line_stays():
    assert without_doubles([LONG, LONG]) == [[LONG], []]
    assert without_doubles([LONG]) == [[LONG]]


def test_pieces_are_joined_end_to_end():
    broken = LONG.union(LineString([(30, 0), (40, 0)])).union(LineString([(50, 0), (60, 0)]))
    assert sorted(each.length for each in pieces(broken)) == [10, 40]
    assert pieces(LineString()) == []
