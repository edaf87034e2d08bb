"""Where a bridge of 3 mm may stand across slots of 2.5 mm."""

import numpy as np
import pytest
import shapely

from scorecraft.plate.crossings import crossings
from scorecraft.plate.slits import Slit

BODY = shapely.box(-200, -200, 200, 200)
BRIDGE = 3.0


def slit(*points, width=2.5):
    return Slit(shapely.LineString(points), width, 0, "slash", 1.0)


def ring(radius):
    turn = np.linspace(0, 2 * np.pi, 181)
    points = radius * np.column_stack([np.cos(turn), np.sin(turn)])
    points[-1] = points[0]
    return slit(*points)


def places(*slits, body=BODY):
    return crossings(body, slits, BRIDGE)


def test_every_millimetre_of_a_slot_is_tried_but_none_that_leaves_a_stub():
    """Half a gap and one and a half widths from either tip: 2.75 + 3.75 mm."""
    found = places(slit((0, 0), (60, 0)))
    assert found.along == pytest.approx(np.arange(6.5, 53.6))
    assert found.at[:, 0] == pytest.approx(found.along) and not found.at[:, 1].any()
    assert found.tangent == pytest.approx(np.tile([1.0, 0.0], (48, 1)))


def test_a_ring_is_tried_all_around_and_nowhere_twice():
    line = ring(20)
    found = places(line)
    length = line.line.length
    assert len(found.along) == round(length)
    steps = np.diff(np.append(found.along, length))
    assert found.along[0] == 0 and steps == pytest.approx(length / round(length))


@pytest.mark.parametrize(("length", "count"), [(10.5, 0), (13.0, 0), (14.0, 2), (16.0, 4)])
def test_a_slot_too_short_for_a_bridge_and_two_ends_has_no_place(length, count):
    assert len(places(slit((0, 0), (length, 0))).along) == count


def test_a_small_ring_has_no_place():
    """Twice a bridge and a slot is 11 mm round."""
    assert len(places(ring(1.7)).along) == 0
    none = places()
    assert none.at.shape == none.tangent.shape == (0, 2) and none.cost.shape == (0,)


@pytest.mark.parametrize(("apart", "any_place"), [(3.9, False), (4.1, True)])
def test_a_bridge_stands_on_dough_as_wide_as_half_of_it(apart, any_place):
    """Between slots 2.5 mm wide at least 1.5 mm beside the slot's edge."""
    found = places(slit((0, 0), (60, 0)), slit((-20, apart), (80, apart)))
    assert bool((found.slit == 0).any()) is any_place


@pytest.mark.parametrize(("off", "any_place"), [(2.7, False), (2.9, True)])
def test_the_edge_of_the_plate_is_kept_clear(off, any_place):
    body = shapely.box(-200, -off, 200, 200)
    assert bool(len(places(slit((0, 0), (60, 0)), body=body).along)) is any_place


def test_what_a_place_costs():
    """2 at a tip and nothing 40 mm from it, 12 for a slot twice as wide; the rest is room."""
    narrow, wide = slit((0, 0), (90, 0)), slit((0, 50), (90, 50), width=5.0)
    found = places(narrow, wide)
    tip = np.minimum(found.along, 90 - found.along)
    free = tip - found.width / 2 > 4
    room = found.cost - 12 * (found.width / 2.5 - 1) - 2 * (1 - np.minimum(tip, 40) / 40)
    assert room[free] == pytest.approx(0.5, abs=0.1)
    assert places(ring(30)).cost.max() < 0.6


@pytest.mark.parametrize(("edge", "costs"), [(1.75, 1 - 1.75 / 6), (2.1, 1 - 2.1 / 6)])
def test_the_less_room_the_dearer_a_place(edge, costs):
    found = places(slit((0, 0), (90, 0)), slit((-20, 2.5 + edge), (110, 2.5 + edge)))
    assert found.cost[found.slit == 0].min() == pytest.approx(costs)


def test_a_bridge_keeps_off_a_bend():
    corner = places(slit((-40, 0), (0, 0), (0, 40)))
    assert 2.75 < np.abs(corner.along - 40).min() < 4
    slight = np.radians(15)
    bent = places(slit((-40, 0), (0, 0), (40 * np.cos(slight), 40 * np.sin(slight))))
    assert np.abs(bent.along - 40).min() < 0.6
    more = np.radians(35)
    bent = places(slit((-40, 0), (0, 0), (40 * np.cos(more), 40 * np.sin(more))))
    assert 1 < np.abs(bent.along - 40).min() < 4


@pytest.mark.parametrize("side", [-1, 1])
def test_a_bridge_lands_beside_its_slot(side):
    found = places(slit((0, 0), (60, 0)))
    assert found.landing(side, 0.5)[:, 1] == pytest.approx(side * 1.75)
    assert found.landing(side, 0.5)[:, 0] == pytest.approx(found.along)


@pytest.mark.parametrize(("length", "any_place"), [(20.5, False), (22.0, True)])
def test_a_wide_bridge_leaves_as_much_slot_as_it_takes(length, any_place):
    """A bridge of 8 mm and a slot of 2.5 mm, twice: 21 mm."""
    found = crossings(BODY, [slit((0, 0), (length, 0))], 8.0)
    assert bool(len(found.along)) is any_place
