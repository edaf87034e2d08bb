"""Points where cuts meet, on the flat top of a wide loaf."""

import math

import numpy as np
import pytest

from scorecraft.checks.linework import strings
from scorecraft.checks.meetings import meetings
from scorecraft.loaf.dome import make_loaf

FLAT = make_loaf("round", 600, None, 60)


def met(lay, *cuts):
    layout = lay(*cuts, loaf=FLAT)
    return meetings(layout, strings(layout))


def test_where_two_cuts_cross_and_how(cut, lay):
    slope = math.radians(30)
    far = 40 * np.array([math.cos(slope), math.sin(slope)])
    found = met(lay, cut((-30, 0), (50, 0)), cut(-far, far), cut((200, 0), (200, 9)))
    assert found.first.tolist() == [0] and found.second.tolist() == [1]
    assert found.point[0] == pytest.approx([0, 0], abs=1e-9)
    assert (found.along_first[0], found.along_second[0]) == pytest.approx((30, 40))
    assert math.degrees(found.angle[0]) == pytest.approx(30, abs=0.1)
    assert found.crosses.tolist() == [True] and found.whole


def test_the_angle_is_that_between_lines_whichever_way_they_are_pulled(cut, lay):
    found = met(lay, cut((-30, 0), (30, 0)), cut((30, 10), (-30, -10)))
    assert math.degrees(found.angle[0]) == pytest.approx(math.degrees(math.atan(1 / 3)), abs=0.1)


def test_the_angle_at_an_end_is_that_of_the_last_stretch(cut, lay):
    bent = cut((0, -40), (0, -0.5), (0.5, 0.0), depth=3)
    found = met(lay, cut((-30, 0), (30, 0)), bent)
    assert math.degrees(found.angle[0]) == pytest.approx(45, abs=1)
    assert not found.crosses[0]


@pytest.mark.parametrize(("past", "crosses"), [(0.9, False), (1.1, True)])
def test_an_end_this_near_meets_on_purpose(cut, lay, past, crosses):
    tee = cut((0, -past), (0, 40))
    assert met(lay, cut((-30, 0), (30, 0)), tee).crosses.tolist() == [crosses]
    assert met(lay, tee, cut((-30, 0), (30, 0))).crosses.tolist() == [crosses]


def test_lines_on_one_another_do_not_cross(cut, lay):
    assert len(met(lay, cut((-30, 0), (30, 0)), cut((0, 0), (60, 0))).first) == 0


def test_at_the_corner_of_a_cut_its_direction_is_between_both_sides(cut, lay):
    """A V that stands on a line: at the tip it runs along it, on either side it leaves it."""
    found = met(lay, cut((-30, 0), (30, 0)), cut((-30, 30), (0, 0), (30, 30)))
    assert math.degrees(found.angle[0]) == pytest.approx(0, abs=1) and found.crosses.all()


def test_cuts_end_to_end_meet_at_no_angle(cut, lay):
    turns = np.linspace(0.1, 3.0, 30)
    ends = [5.0 * k + np.outer([-1, 0, 1], [np.cos(t), np.sin(t)]) for k, t in enumerate(turns)]
    found = met(lay, *(cut(*each[part]) for each in ends for part in ([0, 1], [1, 2])))
    assert len(found.angle) == 30 and np.degrees(found.angle).max() < 1
    assert not found.crosses.any()
