import math
from dataclasses import replace

import pytest

from scorecraft.checks.undercut import undercut
from scorecraft.loaf.dome import make_loaf
from scorecraft.practice import UNDERCUT_CLEAR_MM

FLAT = make_loaf("round", 600, None, 60)


def level(cut, y, depth, blade, turned=False, **more):
    ends = ((50, y), (-50, y)) if turned else ((-50, y), (50, y))
    return cut(*ends, depth=depth, blade=blade, **more)


def reach(depth, blade):
    return depth / math.tan(math.radians(blade))


def test_slanted_cut_reaches_an_upright_one(cut, lay):
    """d cot(phi): 8 mm deep at 40 deg goes 9.5 mm sideways."""
    (found,) = undercut(lay(level(cut, 0, 8, 40), level(cut, 9, 8, 90, family=2), loaf=FLAT))
    assert found.severity == "stop"
    assert found.figures["reach_mm"] == pytest.approx(reach(8, 40))
    assert found.figures["left_mm"] == pytest.approx(9 - reach(8, 40), abs=0.05)
    assert "runs 9.5 mm under the skin and meets the next one" in found.message


def test_it_has_to_reach_as_deep_as_its_neighbour_only(cut, lay):
    """Under a 3 mm cut it has gone only 3 cot(phi) sideways."""
    assert undercut(lay(level(cut, 0, 8, 40), level(cut, 9, 3, 90))) == []
    (found,) = undercut(lay(level(cut, 0, 8, 40), level(cut, 4, 3, 90)))
    assert found.figures["left_mm"] == pytest.approx(4 - reach(3, 40), abs=0.1)
    assert found.severity == "note"


def test_strokes_pulled_the_same_way_lean_alike_and_never_meet(cut, lay):
    assert undercut(lay(*(level(cut, y, 8, 35) for y in (0, 10, 20)))) == []


def test_strokes_pulled_against_each_other_may_meet(cut, lay):
    (found,) = undercut(lay(level(cut, 0, 8, 45), level(cut, 14, 8, 45, turned=True), loaf=FLAT))
    assert found.figures["left_mm"] == pytest.approx(14 - 2 * 8, abs=0.05)
    assert "pull both strokes in the same direction" in found.hint
    assert undercut(lay(level(cut, 0, 8, 45), level(cut, 14, 8, 45))) == []


def test_nearly_meeting_warns(cut, lay):
    (found,) = undercut(lay(level(cut, 0, 8, 40), level(cut, reach(8, 40) + 1, 8, 90)))
    assert found.severity == "warning"
    assert "short of" in found.message


@pytest.mark.parametrize(("width", "turned"), [(9, False), (14, True), (6, True)])
def test_cures_work(cut, lay, width, turned):
    """Moved apart as told, or with the blade held as told, the told dough is left between."""
    beside = 45 if turned else 90
    first = level(cut, 0, 8, 45 if turned else 40)
    (found,) = undercut(lay(first, level(cut, width, 8, beside, turned=turned)))
    apart = math.ceil(2 * found.figures["apart_mm"]) / 2
    assert undercut(lay(first, level(cut, width + apart, 8, beside, turned=turned))) == []
    blade = found.figures["blade_deg"]
    steeper = [level(cut, 0, 8, blade), level(cut, width, 8, max(blade, beside), turned=turned)]
    assert undercut(lay(*steeper)) == []
    assert {each.told.split()[0] for each in found.offers} == {"hold", "move"}


def test_no_blade_angle_cures_what_is_too_near(cut, lay):
    (found,) = undercut(lay(level(cut, 0, 8, 40), level(cut, UNDERCUT_CLEAR_MM.value, 8, 90)))
    assert not any("blade" in each.told for each in found.offers)


def test_upright_blades_never_undercut(cut, lay):
    assert undercut(lay(level(cut, 0, 8, 80), level(cut, 3, 8, 90))) == []
    assert undercut(lay()) == []


def test_cuts_that_meet_on_purpose_are_passed_over(cut, lay):
    """A chevron's arms and a short vein at a slanted midrib part quickly."""
    arms = [cut((0, 0), (30, 25), depth=8, blade=40), cut((30, -25), (0, 0), depth=8, blade=40)]
    assert undercut(lay(*arms)) == []
    midrib = cut((0, 0), (0, 60), depth=6, blade=40)
    assert undercut(lay(midrib, cut((0, 20), (9, 33), depth=2.5))) == []


def test_copies_are_told_once(cut, lay):
    cuts = [level(cut, y, 8, 40 if y % 20 == 0 else 90, family=1 + y % 20) for y in (0, 8, 40, 48)]
    (found,) = undercut(lay(*cuts))
    assert found.figures["count"] == 2
    assert len(found.cuts) == 4


@pytest.mark.parametrize(("width", "turned"), [(9, False), (14, True)])
def test_both_offers_work(cut, lay, width, turned):
    first = level(cut, 0, 8, 45 if turned else 40)
    made = lay(first, level(cut, width, 8, 45 if turned else 90, turned=turned), loaf=FLAT)
    (found,) = undercut(made)
    for offer in found.offers:
        assert undercut(offer.layout()) == []
    steeper, apart = (each.layout().cuts for each in found.offers)
    told = float(found.offers[1].told.split()[2])
    assert apart[1].line[0, 1] - apart[0].line[0, 1] == pytest.approx(width + told)
    assert math.degrees(steeper[0].blade_rad) == pytest.approx(found.figures["blade_deg"])
    left = found.figures["left_mm"]
    assert found.figures["apart_mm"] == pytest.approx(UNDERCUT_CLEAR_MM.value - left, abs=0.05)


@pytest.mark.parametrize(("depth", "severity"), [(4.9, "note"), (5.0, "stop")])
def test_what_stays_in_the_skin_is_only_noted(cut, lay, depth, severity):
    (found,) = undercut(lay(level(cut, 0, 8, 40), level(cut, 5, depth, 90), loaf=FLAT))
    assert found.severity == severity


@pytest.mark.parametrize(("gap", "any_found"), [(1.9, True), (2.1, False)])
def test_two_millimetres_of_dough_are_left_between(cut, lay, gap, any_found):
    made = lay(level(cut, 0, 8, 40), level(cut, reach(8, 40) + gap, 8, 90), loaf=FLAT)
    assert bool(undercut(made)) is any_found


@pytest.mark.parametrize(("run", "any_found"), [(6, False), (13, True)])
def test_only_what_runs_side_by_side_for_a_while_is_told(cut, lay, run, any_found):
    made = lay(
        cut((-50, 0), (0, 0), depth=8, blade=40), cut((-run, 5), (60, 5), depth=8), loaf=FLAT
    )
    assert bool(undercut(made)) is any_found


def test_the_flatter_blade_is_told_with_the_narrowest_place(cut, lay):
    """Two slanted cuts pulled against each other, nearer at their left ends."""
    one = cut((-50, 0), (50, 0), depth=6, blade=60)
    other = cut((50, 8), (-50, 5), depth=8, blade=40, word="vein", family=2)
    (found,) = undercut(lay(one, other, loaf=FLAT))
    assert found.message.startswith("the vein, 8 mm deep with the blade at 40°")
    assert "9 o'clock" in found.message
    assert found.figures["reach_mm"] == pytest.approx(reach(8, 40))
    expected = 5.05 - 6 * (1 / math.tan(math.radians(60)) + 1 / math.tan(math.radians(40)))
    assert found.figures["left_mm"] == pytest.approx(expected, abs=0.1)
    assert found.place.line == 2


@pytest.mark.parametrize(
    ("width", "blades", "turned", "told"),
    [
        (9, (40, 90), False, math.atan2(8, 7)),
        (14, (45, 45), True, math.atan2(8, 6)),
        (9, (25, 50), False, math.atan(1 / (7 / 8 + reach(1, 50)))),
    ],
)
def test_the_blade_is_told_in_whole_degrees_that_leave_the_dough(
    cut, lay, width, blades, turned, told
):
    """For an upright neighbour, for two that lean together, and for two that lean alike."""
    first, second = (level(cut, y, 8, b) for y, b in zip((0, width), blades, strict=True))
    if turned:
        second = level(cut, width, 8, blades[1], turned=True)
    (found,) = undercut(lay(first, second, loaf=FLAT))
    assert found.figures["blade_deg"] == math.ceil(math.degrees(told))


def test_the_shallower_cut_tells_how_steep_and_how_grave(cut, lay):
    """At 3 mm deep: (4 - 2) / 3 of slant."""
    (found,) = undercut(lay(level(cut, 0, 8, 30), level(cut, 4, 3, 90), loaf=FLAT))
    assert found.figures["blade_deg"] == math.ceil(math.degrees(math.atan2(3, 2)))
    assert found.severity == "note"


@pytest.mark.parametrize(("rises", "found"), [((-1, 1), 1), ((1, -1), 0), ((-1, -1), 0)])
def test_the_side_that_lifts_tells_whether_cuts_run_under_one_another(cut, lay, rises, found):
    """Two strokes away from the baker, the first on the left: -1 lifts its right side."""
    made = [
        replace(cut((x, -40), (x, 40), depth=8, blade=40), rises=side)
        for x, side in zip((-8, 8), rises, strict=True)
    ]
    told = undercut(lay(*made))
    assert len(told) == found
    assert all("same direction" not in each.hint for each in told)


@pytest.mark.parametrize("rises", [None, 0])
@pytest.mark.parametrize("side", [9, -9])
def test_where_it_goes_by_the_hand_neighbours_on_either_side_are_looked_at(cut, lay, side, rises):
    slanted = replace(level(cut, 0, 8, 40), rises=rises)
    (found,) = undercut(lay(slanted, level(cut, side, 8, 90), loaf=FLAT))
    assert found.figures["left_mm"] == pytest.approx(9 - reach(8, 40), abs=0.05)
    (against,) = undercut(
        lay(slanted, replace(level(cut, 2 * side, 8, 40, turned=True), rises=rises), loaf=FLAT)
    )
    assert against.figures["left_mm"] == pytest.approx(18 - 2 * reach(8, 40), abs=0.05)


@pytest.mark.parametrize(("rises", "found"), [(1, True), (-1, False)])
def test_where_one_side_lifts_only_what_is_on_that_side_is_undercut(cut, lay, rises, found):
    """Pulled to the right, the left of the stroke is upward on the sheet."""
    slanted = replace(level(cut, 0, 8, 40), rises=rises)
    for turned in (False, True):  # whichever way the upright one is pulled
        told = [
            undercut(lay(slanted, level(cut, y, 8, 90, turned=turned), loaf=FLAT)) for y in (9, -9)
        ]
        assert [len(each) for each in told] == [found, not found]
        (left,) = (each.figures["left_mm"] for side in told for each in side)
        assert left == pytest.approx(9 - reach(8, 40), abs=0.05)


def test_the_pair_that_has_least_left_is_told(cut, lay):
    made = [level(cut, y, 8, blade) for y, blade in ((0, 40), (10.5, 90), (60, 40), (68, 90))]
    (found,) = undercut(lay(*made, loaf=FLAT))
    assert found.figures["left_mm"] == pytest.approx(8 - reach(8, 40), abs=0.05)
    assert found.severity == "stop" and found.figures["count"] == 2 and found.cuts == (0, 1, 2, 3)


def test_the_legs_of_one_slanted_cut_meet_under_the_skin(arc, cut, lay):
    """A hairpin 12 mm wide: both legs lean inward, or both outward; it is told as by the hand."""
    legs = cut((6, -40), *arc(6, 0, 180, centre=(0, 40)), (-6, -40), depth=8, blade=45)
    (found,) = undercut(lay(legs, loaf=FLAT))
    assert found.figures["left_mm"] == pytest.approx(12 - 2 * 8, abs=0.1)
    assert [each.told.split()[0] for each in found.offers] == ["hold"] and found.cuts == (0,)
