"""The fields that lines enclose, the webs that hold them, and the pieces they fall into."""

import numpy as np
import pytest
import shapely
from shapely import LineString

from scorecraft.plate.islands import fields, islands, slot_area
from scorecraft.plate.slits import Slit

BODY = shapely.box(-60, -60, 60, 60)


def slit(*points, width=2.5):
    return Slit(LineString(points), width, 0, "slash", 1.0)


SQUARE = slit((-15, -15), (15, -15), (15, 15), (-15, 15), (-15, -15))


def opened(gap):
    """The square with a gap in the middle of its lower side."""
    half = gap / 2
    return slit((half, -15), (15, -15), (15, 15), (-15, 15), (-15, -15), (-half, -15))


def test_slots_are_as_wide_as_their_slits():
    areas = [slot_area([slit((0, 0), (0, 40), width=2)], more).area for more in (0.0, 0.5)]
    assert areas == pytest.approx([40 * 2 + np.pi, 40 * 3 + np.pi * 1.5**2], rel=1e-3)


def test_a_closed_line_encloses_a_field_that_nothing_holds():
    found = fields(BODY, [SQUARE], [SQUARE], 3.0)
    inside = 1 - found.ground
    assert len(found.parts) == 2
    assert found.parts[inside].area == pytest.approx(27.5**2)
    assert found.held[inside] == 0 and len(found.gaps[inside]) == 0
    assert found.beside_mm == pytest.approx(1.27)
    at = found.at(np.array([[0.0, 0.0], [50.0, 0.0], [15.0, 0.0]]))
    assert at.tolist() == [inside, found.ground, -1]


@pytest.mark.parametrize(("gap", "held"), [(12.0, 1.0), (6.0, 0.5)])
def test_a_web_through_the_line_holds_as_far_as_it_is_wide(gap, held):
    """Drawn closed and cut open: about the gap less a slot is left, for bridges of 7 mm."""
    found = fields(BODY, [SQUARE], [opened(gap)], 7.0)
    inside = 1 - found.ground
    assert found.gaps[inside] == pytest.approx(np.array([[0.0, -13.75]]), abs=0.01)
    assert found.held[inside] == pytest.approx(held, abs=0.1)


def test_a_gap_that_leads_round_a_tip_to_the_same_field_holds_nothing():
    whisker = slit((0, 15), (0, 0))
    short = slit((0, 8), (0, 0))
    found = fields(BODY, [SQUARE, whisker], [SQUARE, short], 3.0)
    assert len(found.parts) == 2 and found.held[1 - found.ground] == 0


def test_pieces_are_joined_only_by_necks_as_wide_as_a_web():
    for gap, count in ((2.5 + 1.5, 2), (2.5 + 1.7, 1)):
        assert len(islands(BODY, [opened(gap)], 1.6).parts) == count
    found = islands(BODY, [SQUARE], 1.6)
    inside = 1 - found.ground
    assert found.parts[inside].area == pytest.approx((30 - 2.5 - 1.6) ** 2)
    assert found.beside_mm == pytest.approx(0.82) and found.held == (0.0, 0.0)
