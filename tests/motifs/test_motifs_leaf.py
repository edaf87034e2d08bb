from math import radians

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecraft.errors import UsageError
from scorecraft.motifs.leaf import leaf


def parts(strokes, name):
    return [stroke.line for stroke in strokes if stroke.part == name]


@given(
    length=st.floats(20, 150),
    slim=st.floats(0.25, 0.7),
    veins=st.integers(0, 9),
    angle=st.floats(radians(25), radians(65)),
)
@settings(max_examples=60)
def test_veins_leave_the_midrib_and_stop_short_of_the_outline(length, slim, veins, angle):
    width = slim * length
    strokes = leaf(length=length, width=width, veins=veins, vein_angle=angle)
    left, right = parts(strokes, "outline")
    edge = shapely.Polygon(np.vstack([left, right[::-1]]))
    assert len(parts(strokes, "vein")) == 2 * veins
    for vein in parts(strokes, "vein"):
        assert vein[0, 0] == 0
        assert shapely.contains(edge, shapely.LineString(vein))
        assert shapely.distance(edge.exterior, shapely.LineString(vein)) > 0.01 * width


def test_a_leaf_is_widest_below_its_middle_and_pointed():
    strokes = leaf(length=60, width=26, veins=4, vein_angle=radians(38))
    left, right = parts(strokes, "outline")
    assert np.array_equal(left, right * (-1, 1))
    widest = right[:, 0].argmax()
    assert abs(right[widest, 0] - 13) < 0.05
    assert right[widest, 1] < 30
    assert right[-1].tolist() == [0, 60]
    run, rise = right[-1] - right[-2]
    assert abs(run) < rise


def test_outline_leaves_room_for_the_stem_and_midrib_for_the_tip():
    """An outline closed all round would lift off as a lid."""
    strokes = leaf(length=60, width=26, veins=0, vein_angle=radians(38))
    (midrib,) = parts(strokes, "midrib")
    left, right = parts(strokes, "outline")
    assert right[0, 0] - left[0, 0] > 2
    assert midrib[0].tolist() == [0, 0]
    assert midrib[1, 1] < 60


def test_veins_curve_toward_the_tip():
    strokes = leaf(length=60, width=26, veins=4, vein_angle=radians(38))
    for vein in parts(strokes, "vein"):
        first, last = vein[1] - vein[0], vein[-1] - vein[-2]
        assert last[1] / abs(last[0]) > first[1] / abs(first[0])


@pytest.mark.parametrize("angle", [0, 5, 95, -30])
def test_a_vein_must_branch_off(angle):
    with pytest.raises(UsageError, match="vein_angle must be between 10deg and 90deg"):
        leaf(length=60, width=26, veins=4, vein_angle=radians(angle))
