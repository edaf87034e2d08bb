"""How the blade is held: side, depths along the stroke, form of the blade."""

import math

import numpy as np
import pytest
from support.bench_layouts import cut

from scorecraft.bench.blade import blade_form, depths, handle
from scorecraft.practice import END_DEPTH_SHARE, START_DEPTH_SHARE

UP = np.array([[0.0, 0.0, 1.0]])
TOWARD = np.array([[0.0, -1.0, 0.0]])


def held(normal, tangent, blade_deg, side=1, table=0.0):
    """Give tilt and lean (degrees) of a handle that leans to the left of the pull, or right."""
    blade, sides = np.array([math.radians(blade_deg)]), np.array([side])
    tilt, lean = handle(normal, tangent, blade, sides, table)
    return math.degrees(tilt[0]), math.degrees(lean[0])


@pytest.mark.parametrize("side", [1, -1])
def test_on_level_dough_the_handle_leans_to_its_side(side):
    """Pulled toward the cutter, the left of the pull is the cutter's right."""
    tilt, lean = held(UP, TOWARD, 35, side)
    assert tilt == pytest.approx(55)
    assert math.cos(math.radians(lean)) == pytest.approx(side)


def test_on_a_slope_the_tilts_add_up():
    """The dough falls off to the cutter's left by 30 degrees, and so leans the handle."""
    slope = math.radians(30)
    normal = np.array([[-math.sin(slope), 0.0, math.cos(slope)]])
    tilt, lean = held(normal, TOWARD, 60, -1)
    assert tilt == pytest.approx(60)
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
