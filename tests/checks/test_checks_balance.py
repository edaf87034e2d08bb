import math

import numpy as np
import pytest

from scorecraft.checks.balance import balance, weigh


def slash(cut, x, depth=8):
    return cut((x, -40), (x, 40), depth=depth)


def test_middle_of_the_cutting(cut, lay):
    """Two parallel cuts: the middle divides their distance in the ratio of their depths."""
    made = lay(slash(cut, 40, 8), slash(cut, -20, 4))
    found = weigh(made, np.array([8.0, 4.0]))
    assert found.aside_mm == pytest.approx((8 * 40 - 4 * 20) / 12)
    assert found.theta == pytest.approx(0)
    assert found.heavier == pytest.approx(2 / 3)
    assert found.cutting == pytest.approx(80 * 12)


def test_turned_and_mirrored_patterns_are_balanced(cut, lay):
    turns = np.arange(5) * math.tau / 5
    rays = [[(r * math.cos(t), r * math.sin(t)) for r in (20, 90)] for t in turns]
    assert balance(lay(*(cut(*ray, depth=7) for ray in rays))) == []
    assert balance(lay(slash(cut, 40), slash(cut, -40))) == []
    assert balance(lay()) == []


def test_one_slash_aside_is_noted_and_far_aside_warned(cut, lay):
    (found,) = balance(lay(slash(cut, 30)))
    assert found.severity == "note"
    assert "100% of the cutting is on the 3 o'clock side" in found.message
    (found,) = balance(lay(slash(cut, 60)))
    assert found.severity == "warning"


def test_cures_work(cut, lay):
    """All cuts moved as told, or the told cut added, and the loaf is even."""
    cuts = [slash(cut, 60, 8), cut((10, 20), (90, 30), depth=5)]
    (found,) = balance(lay(*cuts))
    aside, theta = found.figures["aside_mm"], found.figures["theta_rad"]
    shift = aside * np.array([math.cos(theta), math.sin(theta)])
    moved = [cut(*(each.line - shift), depth=each.depth_mm) for each in cuts]
    assert balance(lay(*moved)) == []
    back = np.array([-math.cos(theta), -math.sin(theta)])
    side = np.array([-back[1], back[0]]) * found.figures["add_mm"] / 2
    middle = back * found.figures["add_at_mm"]
    added = cut(middle - side, middle + side, depth=found.figures["add_depth_mm"])
    assert balance(lay(*cuts, added)) == []


def test_a_predicted_opening_may_weigh_instead(cut, lay):
    made = lay(slash(cut, 40, 8), slash(cut, -40, 4))
    assert weigh(made, np.array([10.0, 10.0])).aside_mm == pytest.approx(0, abs=1e-9)


def test_a_cure_that_would_run_into_others_or_the_rim_is_not_told(cut, lay):
    """A light cut where the added one would lie, and one that would be moved over the rim."""
    aside = [slash(cut, 60, 8), slash(cut, 30, 8)]
    (free,) = balance(lay(*aside))
    assert "move the cuts" in free.hint and "add about" in free.hint
    in_the_way = cut((-104, 5), (-88, 5), depth=1)
    (found,) = balance(lay(*aside, in_the_way))
    assert "move the cuts" in found.hint and "add about" not in found.hint
    to_the_rim = cut((-140, 5), (-88, 5), depth=1)
    (found,) = balance(lay(*aside, to_the_rim))
    assert "move the cuts" not in found.hint
    assert found.hint.startswith("remove or shorten cuts at 3 o'clock")


def test_the_note_begins_at_an_eighth_and_the_warning_at_three_tenths_of_the_reach(cut, lay):
    reach = float(lay().loaf.reach(0.0))
    told = [
        [each.severity for each in balance(lay(slash(cut, share * reach)))]
        for share in (0.115, 0.125, 0.295, 0.305)
    ]
    assert told == [[], ["note"], ["note"], ["warning"]]


def test_the_added_cut_weighs_against_the_others_where_it_stands(cut, lay):
    """One slash of 80 mm, 60 mm aside; six tenths of the reach on the other side need less."""
    made = lay(slash(cut, 60, 8), cut((55, -5), (65, -5), depth=2))
    (found,) = balance(made)
    figures = found.figures
    assert figures["add_at_mm"] == pytest.approx(0.6 * float(made.loaf.reach(math.pi)), rel=1e-3)
    assert figures["add_depth_mm"] == 8
    weight = 80 * 8 + 10 * 2
    assert figures["add_mm"] * 8 * figures["add_at_mm"] == pytest.approx(
        weight * figures["aside_mm"]
    )
    assert figures["aside_share"] == pytest.approx(
        figures["aside_mm"] / made.loaf.reach(0), rel=1e-3
    )
    assert "9 o'clock" in found.hint


def test_cuts_that_would_come_nearer_to_the_rim_are_not_moved(cut, lay):
    """A slash right, and a light one that reaches far to the left: it would leave the loaf."""
    far_left = cut((-140, 0), (-120, 0), depth=1)
    (found,) = balance(lay(slash(cut, 60, 8), far_left))
    assert "move the cuts" not in found.hint
    near = cut((-60, 0), (-40, 0), depth=1)
    (found,) = balance(lay(slash(cut, 60, 8), near))
    assert found.hint.startswith("move the cuts") and "toward 9 o'clock" in found.hint


def test_openings_weigh_instead_of_depths(cut, lay):
    made = lay(slash(cut, 60, 8), slash(cut, -60, 8))
    assert balance(made) == []
    (found,) = balance(made, np.array([9.0, 3.0]))
    assert "75% of the opening is on the 3 o'clock side" in found.message
