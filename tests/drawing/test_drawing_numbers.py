"""Numbers on the plan: never over a line, near their cut, or left out."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecraft.drawing.guide.numbers import GAP_MM, frame, place_numbers
from scorecraft.drawing.inks import NUMBER_CLEAR_MM

ROOM = shapely.box(0, 0, 100, 100)


def clear_of(number, lines):
    (box,) = frame(number.text, np.array([number.at]))
    return min(shapely.distance(box, shapely.linestrings(line)) for line in lines)


def test_a_number_stands_beside_its_cut_with_a_leader_to_it():
    line = np.array([[20.0, 50.0], [80.0, 50.0]])
    found = place_numbers([("1", [0])], [line], [], ROOM)["1"]
    assert clear_of(found, [line]) >= NUMBER_CLEAR_MM
    assert np.hypot(*(np.array(found.at) - [50, 50])) < 10
    start, end = found.leader
    assert start[1] == pytest.approx(50)
    (box,) = frame("1", np.array([found.at]))
    assert shapely.distance(shapely.LineString([start, end]), box) == pytest.approx(GAP_MM)


@given(st.integers(0, 10_000))
@settings(max_examples=12)
def test_among_random_lines_no_number_lies_over_a_line_or_another_number(seed):
    points = np.random.default_rng(seed).uniform(5, 95, (25, 2, 2))
    lines = list(points)
    wanted = [(str(k + 1), [k]) for k in range(8)]
    found = place_numbers(wanted, lines, [], ROOM)
    assert len(found) >= 6
    boxes = [frame(each.text, np.array([each.at]))[0] for each in found.values()]
    for each, box in zip(found.values(), boxes, strict=True):
        assert clear_of(each, lines) >= NUMBER_CLEAR_MM
        assert ROOM.covers(box)
        assert sum(box.intersects(other) for other in boxes) == 1


def test_a_number_without_a_free_place_is_left_out():
    comb = [np.array([[x, 0.0], [x, 100.0]]) for x in np.arange(0, 100, 3.0)]
    assert place_numbers([("1", [5])], comb, [], ROOM) == {}


def test_the_leader_goes_around_other_lines_if_it_can():
    line = np.array([[20.0, 50.0], [80.0, 50.0]])
    above = np.array([[0.0, 46.0], [100.0, 46.0]])
    found = place_numbers([("1", [0])], [line, above], [], ROOM)["1"]
    assert found.at[1] > 50
