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


@pytest.mark.parametrize("aside", [30, 60, 90])
def test_one_deep_figure_aside_is_a_classic(cut, lay, arc, aside):
    """Beside light ones too; common practice, no source."""
    assert balance(lay(slash(cut, aside), slash(cut, 20, 2))) == []
    assert balance(lay(cut(*arc(aside, -60, 60), depth=8))) == []


def two(cut, lay, x, depth=8):
    """Two slashes one behind the other, aside by as much."""
    return lay(*(cut((x, y), (x, y + 36), depth=depth) for y in (-40, 4)))


def test_several_aside_are_noted_and_far_aside_warned(cut, lay):
    (found,) = balance(two(cut, lay, 30))
    assert found.severity == "note"
    assert "100% of the cutting is on the 3 o'clock side" in found.message
    (found,) = balance(two(cut, lay, 60))
    assert found.severity == "warning"
    assert "move" not in found.hint


def test_the_cure_works(cut, lay):
    """With the told cut added the loaf is even."""
    (found,) = balance(lay(slash(cut, 60, 8), cut((10, 20), (90, 30), depth=5)))
    (offer,) = found.offers
    assert balance(offer.layout()) == []
    (added,) = offer.layout().cuts[2:]
    assert (added.depth_mm, added.blade_rad) == (8, math.pi / 2)
    assert np.hypot(*np.diff(added.line, axis=0)[0]) == pytest.approx(found.figures["add_mm"])


def test_a_predicted_opening_may_weigh_instead(cut, lay):
    made = lay(slash(cut, 40, 8), slash(cut, -40, 4))
    assert weigh(made, np.array([10.0, 10.0])).aside_mm == pytest.approx(0, abs=1e-9)


def test_a_cure_that_would_run_into_others_is_not_told(cut, lay):
    """A light cut where the added one would lie."""
    aside = [slash(cut, 60, 8), slash(cut, 30, 8)]
    (free,) = balance(lay(*aside))
    assert "add about" in free.offers[0].told
    (found,) = balance(lay(*aside, cut((-104, 5), (-88, 5), depth=1)))
    assert found.offers == () and found.hint.startswith("shorten the deep cuts at 3 o'clock")


def test_the_note_begins_at_an_eighth_and_the_warning_at_three_tenths_of_the_reach(cut, lay):
    reach = float(lay().loaf.reach(0.0))
    told = [
        [each.severity for each in balance(two(cut, lay, share * reach))]
        for share in (0.115, 0.125, 0.295, 0.305)
    ]
    assert told == [[], ["note"], ["note"], ["warning"]]


def test_the_added_cut_weighs_against_the_others_where_it_stands(cut, lay):
    """Six tenths of the reach out on the other side need less than the slashes, 60 mm aside."""
    made = lay(slash(cut, 60, 8), cut((55, -5), (65, -5), depth=6))
    (found,) = balance(made)
    figures = found.figures
    assert figures["add_at_mm"] == pytest.approx(0.6 * float(made.loaf.reach(math.pi)), rel=1e-3)
    assert figures["add_depth_mm"] == 8
    weight = 80 * 8 + 10 * 6
    assert figures["add_mm"] * 8 * figures["add_at_mm"] == pytest.approx(
        weight * figures["aside_mm"]
    )
    assert figures["aside_share"] == pytest.approx(
        figures["aside_mm"] / made.loaf.reach(0), rel=1e-3
    )
    assert "9 o'clock" in found.hint


def test_openings_weigh_instead_of_depths(cut, lay):
    made = lay(slash(cut, 60, 8), slash(cut, -60, 8))
    assert balance(made) == []
    (found,) = balance(made, np.array([9.0, 3.0]))
    assert "75% of the opening is on the 3 o'clock side" in found.message


def test_all_that_is_ahead_of_the_crown_is_on_the_heavier_side(cut, lay):
    """Half a millimetre beside the crown counts to its side; the later statement is told."""
    made = lay(slash(cut, 0.5), cut((60, -40), (60, 40), depth=8, family=3), slash(cut, -0.5, 1))
    (found,) = balance(made)
    assert found.figures["heavier"] == pytest.approx(16 / 17) and found.place.line == 3


def test_the_added_cut_lies_opposite_and_square_to_the_way(cut, lay):
    """Two slashes toward 2 o'clock, 30 degrees up: the added one stands 30 degrees down at 8."""
    way, side = np.array([math.sqrt(0.75), 0.5]), np.array([-0.5, math.sqrt(0.75)])
    made = [cut(*(60 * way + far * side for far in ends), depth=8) for ends in ((-40, -4), (4, 40))]
    (found,) = balance(lay(*made))
    (line,) = (each.line for each in found.offers[0].layout().cuts[2:])
    assert line.mean(axis=0) == pytest.approx(-found.figures["add_at_mm"] * way)
    assert line[1] - line[0] == pytest.approx(-found.figures["add_mm"] * side)
