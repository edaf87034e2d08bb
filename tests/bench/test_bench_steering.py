"""From one setting of the table to the next: which way it turns, and what is set anew."""

import math

import numpy as np
import pytest

from scorecraft.bench.steering import changes, turn_cost, turned
from scorecraft.practice import TURN_DEG_PER_S, TURN_TABLE_S


@pytest.mark.parametrize("way", [1, -1])
@pytest.mark.parametrize(
    ("start", "end", "turn"),
    [
        (0, 90, 90), (350, 10, 20), (10, 210, 200),
        (0, 203, 203), (0, 204, -156),  # back is dearer by 1.3: 203 < 1.3 x 157, 204 > 1.3 x 156
        (10, 0, -10), (30, 30, 0), (0, 360, 0),
    ],
)  # fmt: skip
def test_the_table_turns_the_usual_way_unless_back_is_much_shorter(start, end, turn, way):
    angles = (np.array(way * math.radians(each)) for each in (start, end))
    assert math.degrees(way * turned(*angles, way)) == pytest.approx(turn, abs=1e-9)


@pytest.mark.parametrize("way", [1, -1])
def test_a_turn_back_costs_as_if_it_were_longer(way):
    none, ahead, back = turn_cost(way * np.radians([0.0, 50.0, -50.0]), way)
    assert none == 0
    assert ahead == pytest.approx(TURN_TABLE_S.value + 50 / TURN_DEG_PER_S.value)
    assert back == pytest.approx(TURN_TABLE_S.value + 1.3 * 50 / TURN_DEG_PER_S.value)


@pytest.mark.parametrize(
    ("handlings", "count"),
    [
        ([], 0),
        ([(3, 90)], 0),
        ([(3, 90), (3.7, 83)], 0),
        ([(3, 90), (3.8, 90)], 1),
        ([(3.8, 90), (3, 90)], 1),
        ([(3, 90), (3, 82)], 1),
        ([(3, 90), (8, 40), (8, 40), (3, 90)], 2),
    ],
)
def test_depths_and_blades_that_feel_alike_are_not_set_anew(handlings, count):
    assert changes([(depth, math.radians(blade)) for depth, blade in handlings]) == count
