import numpy as np
import pytest
import shapely
from support.plate_layouts import circle, cut, layout

from scorecraft.plate.bridges import BRIDGE_EVERY_MM
from scorecraft.plate.plate import make_plate


def measured(plate, bridge):
    """Width of a bridge on its middle line, measured on the polygon."""
    way = bridge.span[1] - bridge.span[0]
    side = np.array([-way[1], way[0]]) / np.hypot(*way) * 40
    line = shapely.LineString([bridge.at - side, bridge.at + side])
    parts = shapely.get_parts(line.intersection(plate.polygon))
    (own,) = [part for part in parts if part.distance(shapely.Point(bridge.at)) < 1e-6]
    return own.length


def test_a_ring_is_held_evenly_all_around():
    made = make_plate(layout(circle(60)), bridge_mm=4.0)
    plan_radius = np.hypot(*made.bridges[0].at)
    wanted = int(np.ceil(2 * np.pi * plan_radius / BRIDGE_EVERY_MM))
    assert len(made.bridges) == wanted
    angles = np.sort([np.arctan2(*bridge.at[::-1]) for bridge in made.bridges])
    steps = np.diff(np.append(angles, angles[0] + 2 * np.pi))
    assert steps == pytest.approx(2 * np.pi / wanted, abs=np.radians(6))


@pytest.mark.parametrize("bridge_mm", [2.0, 3.0, 5.0])
def test_bridges_are_as_wide_as_asked(bridge_mm):
    made = make_plate(layout(circle(60), circle(25)), bridge_mm=bridge_mm)
    assert made.bridges
    for bridge in made.bridges:
        assert measured(made, bridge) >= bridge_mm
        assert measured(made, bridge) == pytest.approx(bridge_mm, abs=0.3)


def test_bridges_stand_away_from_tips_and_crossings():
    made = make_plate(layout(circle(50), cut([[-80, 0], [80, 0]], depth=2.0)))
    ring_mm = max(np.hypot(*bridge.at) for bridge in made.bridges)
    crossings = [(ring_mm, 0.0), (-ring_mm, 0.0)]
    off = [np.hypot(*(bridge.at - at)) for bridge in made.bridges for at in crossings]
    assert len(made.bridges) >= 4 and min(off) > 6.0


def test_an_open_line_needs_no_bridge():
    assert make_plate(layout(cut([[-50, 0], [50, 0]]))).bridges == ()


def test_deep_slots_are_bridged_last():
    deep = cut([[0, -45], [0, 45]], "rib", depth=9.0)
    made = make_plate(layout(circle(45), deep))
    assert {bridge.cut for bridge in made.bridges} == {0}
