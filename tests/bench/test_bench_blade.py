"""How the blade is held: side, depths along the stroke, form of the blade."""

import math

import numpy as np
import pytest
from support.bench_layouts import cut

from scorecraft.bench.blade import blade_form, depths, handle
from scorecraft.cuts import Bench
from scorecraft.practice import END_DEPTH_SHARE, MOST_TILT_DEG, START_DEPTH_SHARE

UP = np.array([[0.0, 0.0, 1.0]])
TOWARD = np.array([[0.0, -1.0, 0.0]])


def held(normal, tangent, blade_deg, hand="right", table=0.0):
    tilt, lean = handle(normal, tangent, np.array([math.radians(blade_deg)]), Bench(hand), table)
    return math.degrees(tilt[0]), math.degrees(lean[0])


@pytest.mark.parametrize(("hand", "side"), [("right", 1), ("left", -1)])
def test_on_level_dough_the_handle_leans_to_the_hand(hand, side):
    tilt, lean = held(UP, TOWARD, 35, hand)
    assert tilt == pytest.approx(55)
    assert math.cos(math.radians(lean)) == pytest.approx(side)


def test_a_crosswise_stroke_on_level_dough_leans_toward_the_cutter():
    _, lean = held(UP, np.array([[1.0, 0.0, 0.0]]), 40)
    assert lean == pytest.approx(-90)


@pytest.mark.parametrize("hand", ["right", "left"])
def test_on_a_slope_the_handle_leans_to_the_lower_side(hand):
    """The dough falls off to the cutter's left by 30 degrees."""
    slope = math.radians(30)
    normal = np.array([[-math.sin(slope), 0.0, math.cos(slope)]])
    tilt, lean = held(normal, TOWARD, 60, hand)
    assert tilt == pytest.approx(60)
    assert abs(lean) == pytest.approx(180)


def test_a_handle_that_would_meet_the_bench_leans_the_other_way():
    slope = math.radians(60)
    normal = np.array([[-math.sin(slope), 0.0, math.cos(slope)]])
    tilt, lean = held(normal, TOWARD, 35)
    assert MOST_TILT_DEG.value < 60 + 55
    assert tilt == pytest.approx(5)
    assert abs(lean) == pytest.approx(180)


def test_the_table_turns_what_the_cutter_sees():
    """Pulled along +x on the loaf; the table has brought that toward the cutter."""
    _, lean = held(UP, np.array([[1.0, 0.0, 0.0]]), 45, table=math.pi / 2)
    assert lean == pytest.approx(0, abs=1e-6)


def test_a_deep_stroke_begins_and_ends_shallower():
    first, middle, last = depths(cut([[0, 0], [0, 50]], depth=10))
    assert (first, middle, last) == (
        10 * START_DEPTH_SHARE.value, 10, 10 * END_DEPTH_SHARE.value,
    )  # fmt: skip
    assert depths(cut([[0, 0], [0, 50]], depth=3)) == (3, 3, 3)
    closed = [[0, 0], [0, 50], [50, 0], [0, 0]]
    assert depths(cut(closed, depth=10)) == (10, 10, 10)


def test_a_flat_blade_is_a_curved_one():
    assert blade_form(math.radians(35)) == "curved"
    assert blade_form(math.radians(90)) == "straight"
