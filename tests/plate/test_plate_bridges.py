import numpy as np
import pytest
import shapely
from support.plate_layouts import circle, cut, layout

from scorecraft.plate.bridges import BRIDGE_EVERY_MM, bridged
from scorecraft.plate.plate import make_plate
from scorecraft.plate.slits import Slit


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


BODY = shapely.box(-150, -150, 150, 150)


def slit(*points, width=2.5, cut=0, name="slash"):
    return Slit(shapely.LineString(points), width, cut, name, 1.0)


def square(half, x=0.0, y=0.0, **more):
    ways = ((-1, -1), (1, -1), (1, 1), (-1, 1), (-1, -1))
    return slit(*((x + half * a, y + half * b) for a, b in ways), **more)


def held(*slits, bridge_mm=3.0, web_mm=1.6):
    return bridged(BODY, slits, slits, bridge_mm=bridge_mm, web_mm=web_mm)


@pytest.mark.parametrize(("half", "count"), [(15, 2), (20, 3), (28, 4)])
def test_a_field_is_held_once_in_seventy_millimetres_and_twice_at_least(half, count):
    """Squares of 110, 150 and 214 mm round, inside their walls."""
    found = held(square(half))
    assert len(found.bridges) == count and found.loose == ()
    assert len(found.slits) in (count, count + 1)


def test_a_bridge_leaves_its_full_width_between_round_ends():
    found = held(square(20), bridge_mm=4.0)
    for bridge in found.bridges:
        near = [each.line.distance(shapely.Point(bridge.at)) for each in found.slits]
        assert sorted(near)[:2] == pytest.approx([(4 + 2.5) / 2 + 0.02] * 2, abs=0.01)
        assert np.hypot(*(bridge.span[1] - bridge.span[0])) == pytest.approx(2.5)
        assert bridge.width_mm == 4.0


def test_bridges_stand_in_the_slot_they_name():
    found = held(square(20, -40), square(20, 40, cut=1))
    assert sorted(bridge.cut for bridge in found.bridges) == [0, 0, 0, 1, 1, 1]
    for bridge in found.bridges:
        assert bool(bridge.at[0] > 0) is (bridge.cut == 1)


def test_bridges_never_crowd():
    """Cells of 14 mm share their sides: bridges stand a bridge and three slots apart."""
    rows = [slit((-35, y), (35, y), cut=k) for k, y in enumerate((-10.0, 10.0))]
    columns = [slit((x, -10), (x, 10), cut=2 + k) for k, x in enumerate(range(-35, 36, 14))]
    found = held(*rows, *columns)
    at = np.array([bridge.at for bridge in found.bridges])
    apart = np.hypot(*(at[:, None] - at[None, :]).T) + 999 * np.eye(len(at))
    assert len(at) >= 6 and apart.min() > 3 + 3 * 2.5
    assert found.loose == ()


def test_a_gap_that_is_there_already_holds_a_field():
    """A square open for 12 mm hangs on that; it needs one bridge more, far from it."""
    half, open_mm = 15, 12
    ways = [(open_mm / 2, -half), (half, -half), (half, half), (-half, half), (-half, -half),
            (-open_mm / 2, -half)]  # fmt: skip
    assert held(slit(*ways)).bridges == ()


def test_what_is_too_small_for_a_bridge_is_loose():
    (loose,) = held(square(2.6)).loose
    assert loose.centroid.coords[0] == pytest.approx((0, 0), abs=1e-6)
    assert held(square(2.6)).bridges == ()
    assert held().slits == () and held().loose == ()


def test_bridges_stand_far_from_the_web_there_is_and_from_one_another():
    """A square of 150 mm round, drawn closed and left open by 12 mm, wants two bridges more."""
    drawn, half = square(20), 20
    ways = [(6, -half), (half, -half), (half, half), (-half, half), (-half, -half), (-6, -half)]
    found = bridged(BODY, [drawn], [slit(*ways)], bridge_mm=3.0, web_mm=1.6)
    at = [(0.0, -20.0), *(bridge.at for bridge in found.bridges)]
    assert len(at) == 3
    assert min(np.hypot(*np.subtract(at[i], at[k])) for i, k in ((0, 1), (0, 2), (1, 2))) > 30


def test_neighbours_share_the_bridge_between_them():
    """Two cells of 30 mm side by side, held together once and to the plate besides."""
    frame = slit((-30, -15), (30, -15), (30, 15), (-30, 15), (-30, -15))
    wall = slit((0, -15), (0, 15), cut=1)
    found = held(frame, wall)
    assert found.loose == () and 3 <= len(found.bridges) <= 4
    assert {bridge.cut for bridge in found.bridges} >= {0}


def test_where_only_a_short_stretch_is_free_one_bridge_stands():
    """Slots close by leave 9 mm of a square free: two bridges of 3 mm would crowd there."""
    beside = [((-18.5, -16), (-18.5, 16)), ((18.5, -16), (18.5, 16)), ((-16, -18.5), (16, -18.5)),
              ((-16, 18.5), (-6, 18.5)), ((6, 18.5), (16, 18.5))]  # fmt: skip
    found = held(square(15), *(slit(*each, cut=1) for each in beside))
    (bridge,) = found.bridges
    assert bridge.at[1] == pytest.approx(15) and abs(bridge.at[0]) < 4.5
