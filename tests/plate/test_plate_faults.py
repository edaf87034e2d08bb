"""The last look at a plate sees a bridge, a strip or a piece that is not as it should be."""

import numpy as np
import pytest
import shapely

from scorecraft.plate.bridges import Bridge
from scorecraft.plate.faults import faults
from scorecraft.plate.sizes import Sizes

SIZES = Sizes(3.0, 3.0, 1.6)


def plate(*necks):
    """Two halves 3 mm apart, with round corners, held by necks of (left, right) mm."""
    halves = [shapely.box(0, 0, 40, 10), shapely.box(0, 13, 40, 23)]
    round_off = [each.buffer(-2).buffer(2) for each in halves]
    return shapely.union_all([*round_off, *(shapely.box(a, 9, b, 14) for a, b in necks)])


def bridge(x, width_mm):
    return Bridge(np.array([[x, 10.0], [x, 13.0]]), width_mm, 0)


@pytest.mark.parametrize(("width", "well"), [(3.0, True), (3.03, True), (3.06, False)])
def test_a_bridge_has_its_full_width_from_edge_to_edge(width, well):
    found = faults(plate((8, 11)), [bridge(9.5, width)], SIZES)
    assert found == ([] if well else [f"the bridge {AT} is narrower than 3 mm"])


AT = "15 mm from the crown at 1 o'clock"


def test_a_bridge_that_stands_beside_its_place_is_seen():
    found = faults(plate((8, 11)), [bridge(9.5, 3.0), bridge(9.8, 3.0)], SIZES)
    assert len(found) == 1 and "bridge" in found[0]
    cut_short = plate((8, 11)).difference(shapely.box(7, 12.5, 9, 13.5))
    assert any("bridge" in fault for fault in faults(cut_short, [bridge(9.5, 3.0)], SIZES))


@pytest.mark.parametrize(("width", "well"), [(1.6, True), (1.57, True), (1.5, False)])
def test_a_strip_is_as_wide_as_a_web(width, well):
    found = faults(plate((8, 8 + width)), [], SIZES)
    assert found == ([] if well else [f"the strip {STRIP_AT} is thinner than 1.6 mm"])


STRIP_AT = "14 mm from the crown at 1 o'clock"


def test_a_plate_in_two_pieces_falls_apart():
    assert faults(plate(), [], SIZES) == ["it would fall apart"]


@pytest.mark.parametrize("corner", [(8, 10), (11, 10), (8, 13), (11, 13)])
def test_a_bridge_is_whole_at_each_of_its_corners(corner):
    nick = shapely.Point(corner).buffer(0.3)
    found = faults(plate((8, 11)).difference(nick), [bridge(9.5, 3.0)], SIZES)
    assert any("bridge" in fault for fault in found)
