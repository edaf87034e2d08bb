"""Cuts right through a flat loaf, worked by hand: on its level top sheet and dough are alike."""

from dataclasses import replace

import pytest

from scorecraft.checks.tears import tears
from scorecraft.loaf.dome import make_loaf

FLAT = make_loaf("round", 600, None, 60)


def through(cut, *points, pulled=0.0, **more):
    return replace(cut(*points, depth=30, **more), through=True, pulled_mm=pulled)


def test_strips_between_are_told_once_a_pair_of_statements_by_the_narrowest(cut, lay):
    rows = [through(cut, (-40, y), (40, y)) for y in (0, 14, 26, 41.1)]
    other = through(cut, (-40, 53), (40, 53), family=2)
    found = tears(lay(*rows, other, cut((-40, 5), (40, 5), depth=9), loaf=FLAT))
    assert [each.cuts for each in found] == [(0, 1, 2), (3, 4)]
    first, second = found
    assert first.figures == {"count": 2, "strip_mm": pytest.approx(12)}
    assert second.figures == {"count": 1, "strip_mm": pytest.approx(11.9)}
    assert "the strip between two slashes is 12 mm wide" in first.message
    assert {each.severity for each in found} == {"warning"}


@pytest.mark.parametrize(("apart", "corner"), [(0.4, True), (0.6, False)])
def test_cuts_this_near_meet(cut, lay, apart, corner):
    one, other = through(cut, (-40, 0), (40, 0)), through(cut, (0, apart), (0, 40))
    (found,) = tears(lay(one, other, loaf=FLAT))
    assert ("the corner between them tears off" in found.message) is corner


@pytest.mark.parametrize(("left", "told"), [(14.5, True), (15.5, False), (-3.0, False)])
def test_a_strip_at_the_rim_is_told_but_not_what_runs_over_it(cut, lay, left, told):
    reach = float(FLAT.reach(0.0))
    made = lay(through(cut, (100, 0), (reach - left, 0)), through(cut, (100, 90), (150, 90)),
               loaf=FLAT)  # fmt: skip
    found = tears(made)
    assert bool(found) is told
    for each in found:
        assert each.cuts == (0,) and each.figures["strip_mm"] == pytest.approx(left, abs=0.1)
        assert "at the edge" in each.message and each.figures["count"] == 1


def test_of_several_at_the_rim_the_nearest_is_told(cut, lay):
    reach = float(FLAT.reach(0.0))
    cuts = [through(cut, (100, y), (reach - left, y)) for y, left in ((0, 12), (40, 9), (-40, 60))]
    (found,) = tears(lay(*cuts, loaf=FLAT))
    assert found.cuts == (0, 1)
    assert found.figures["count"] == 2 and found.figures["strip_mm"] < 8


def test_a_cut_pulled_wider_than_0_45_of_its_length_tears_at_its_ends(cut, lay):
    lines = [(60, 26.5), (60, 35), (80, 40), (40, 17.9)]
    cuts = [through(cut, (-x / 2, y), (x / 2, y), pulled=pulled)
            for y, (x, pulled) in zip((-90, -30, 30, 90), lines, strict=True)]  # fmt: skip
    (found,) = tears(lay(*cuts, loaf=FLAT))
    assert found.cuts == (1, 2) and found.figures["count"] == 2
    assert found.figures["pulled_mm"] == 35  # 8 mm too far, the other 4 mm
    assert found.figures["most_mm"] == pytest.approx(27, abs=0.1)
    assert found.hint == "pull it 27 mm at most, or cut it 78 mm long"


def test_a_closed_one_falls_out(arc, cut, lay):
    ring = arc(40, 0, 360)
    ring[-1] = ring[0]
    (found,) = tears(lay(through(cut, *ring), loaf=FLAT))
    assert (found.severity, found.cuts) == ("stop", (0,)) and "falls out" in found.message
    assert tears(lay(through(cut, *arc(40, 0, 340)), loaf=FLAT)) == []
    assert tears(lay(cut(*ring, depth=9), loaf=FLAT)) == []


@pytest.mark.parametrize(("share", "told"), [(0.45, False), (0.4501, True)])
def test_a_cut_may_be_pulled_just_so_wide(cut, lay, share, told):
    line = (-30, 0), (30, 0)
    long = float(lay(through(cut, *line), loaf=FLAT).lengths_mm[0])
    assert bool(tears(lay(through(cut, *line, pulled=share * long), loaf=FLAT))) is told
