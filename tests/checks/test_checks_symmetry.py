"""How a pattern repeats, and where sets of further cuts lie on a round and on a long loaf."""

import math

import numpy as np
import pytest

from scorecraft.checks.symmetry import across, fold, is_fill, places
from scorecraft.loaf.dome import make_loaf

BALL = make_loaf("round", 200, None, 100)
REACH = 50 * math.pi  # of the half ball
LONG = make_loaf("long", 120, 320, 70)


def rays(cut, count, near=30.0, far=42.0, first=90.0, **more):
    """Short radial cuts, evenly about the crown from a direction (degrees) on."""
    turns = np.radians(first + np.arange(count) * 360 / count)
    return [cut(*(r * np.array([math.cos(t), math.sin(t)]) for r in (near, far)), **more)
            for t in turns]  # fmt: skip


def degrees(line):
    """Turns (degrees) from +x of the points of a line."""
    return np.degrees(np.arctan2(*np.asarray(line)[:, ::-1].T))


def arcs(lines):
    """Middle direction, span (degrees) and distance of round lines, sorted by direction."""
    found = []
    for line in lines:
        away = np.hypot(*line.T)
        turn = np.degrees(np.unwrap(np.radians(degrees(line))))
        assert away == pytest.approx(np.full(len(line), away[0]), rel=1e-6) and len(line) == 25
        found.append((round(turn[12], 6) % 360, turn[-1] - turn[0], away[0]))
    return np.array(sorted(found))


@pytest.mark.parametrize("count", [1, 2, 3, 5, 11, 12])
def test_rays_repeat_as_often_as_there_are(cut, lay, count):
    assert fold(lay(*rays(cut, count), loaf=BALL)) == count


def test_many_copies_are_taken_by_fewer_turns_and_none_by_one(cut, lay):
    assert fold(lay(*rays(cut, 14), loaf=BALL)) == 7
    assert fold(lay(loaf=BALL)) == 1


def test_deep_cuts_repeat_among_themselves(cut, lay):
    """Four rays, two of them deep: half a turn lays each on its own kind, a quarter does not."""
    deep = rays(cut, 2, depth=8)
    assert fold(lay(*deep, *rays(cut, 2, first=0.0, depth=2), loaf=BALL)) == 2
    assert fold(lay(*deep, *rays(cut, 2, first=0.0, depth=8), loaf=BALL)) == 4


@pytest.mark.parametrize(("off", "count"), [(0.9, 2), (1.2, 1)])
def test_copies_lie_on_one_another_to_the_millimetre(cut, lay, off, count):
    pair = cut((30, 0), (60, 0)), cut((-30, off), (-60, off))
    assert fold(lay(*pair, loaf=BALL)) == count


@pytest.mark.parametrize(("longer", "count"), [(1.02, 4), (1.08, 2)])
def test_the_loaf_has_to_repeat_as_well(cut, lay, longer, count):
    oval = make_loaf("oval", 200, 200 * longer, 100)
    assert fold(lay(*rays(cut, 4), loaf=oval)) == count


def test_a_cut_across_goes_a_share_of_the_way_and_keeps_off_the_rim():
    from scorecraft.cuts import Layout
    from scorecraft.loaf.bake import Bake

    line = across(Layout("", (), BALL, Bake(), ()), math.radians(30), 0.6)
    ray = np.array([math.cos(math.pi / 6), 0.5])
    assert line == pytest.approx(np.outer([-0.6, 0.6], ray) * REACH, abs=1e-3)
    small = make_loaf("round", 40, None, 20)
    near = across(Layout("", (), small, Bake(), ()), 0.0, 0.8)
    assert near == pytest.approx(np.array([[-1, 0], [1, 0]]) * (10 * math.pi - 12), abs=1e-3)


def test_on_a_bare_round_loaf_single_cuts_come_before_pairs_and_crosses(lay):
    wanted = math.radians(40)
    sets = list(places(lay(loaf=BALL), wanted, 10.0))
    assert [len(each) for each in sets] == [1] * 20 + [2] * 14
    for k, off in enumerate((0, 15, -15, 30, -30)):
        for share, ((start, end),) in zip((0.4, 0.55, 0.7, 0.8), sets[4 * k : 4 * k + 4],
                                          strict=True):  # fmt: skip
            assert np.hypot(*end) == pytest.approx(share * REACH, abs=1e-3)
            assert degrees([end]) == pytest.approx([40 + off]) and start == pytest.approx(-end)
    for out, pair in zip((0.72, 0.6, 0.5, 0.8), sets[20:24], strict=True):
        assert arcs(pair) == pytest.approx(
            np.array([[130, 75, out * REACH], [310, 75, out * REACH]]), abs=1e-3
        )
    aside = [(0.4, 0.4), (0.4, 0.55), (0.4, 0.7), (0.55, 0.4), (0.55, 0.55), (0.55, 0.7)]
    ray, left = (np.array([math.cos(t), math.sin(t)]) for t in (wanted, wanted + math.pi / 2))
    for (off, share), pair in zip(aside, sets[24:30], strict=True):
        for way, line in zip((1, -1), pair, strict=True):
            middle = way * off * REACH * left
            assert line == pytest.approx(middle + np.outer([-share, share], ray) * REACH, abs=1e-3)
    for share, cross in zip((0.4, 0.55, 0.7, 0.8), sets[30:], strict=True):
        for turn, line in zip((40, 130), cross, strict=True):
            assert np.hypot(*line[1]) == pytest.approx(share * REACH, abs=1e-3)
            assert degrees(line[1:]) == pytest.approx([turn])


def test_beside_a_longest_deep_cut_pairs_run_along_it_and_around_on_either_side(cut, lay):
    """A slash at 60 degrees, and a shorter one: nothing is told across them."""
    ray = np.array([0.5, math.sqrt(0.75)])
    deep = cut(-60 * ray, (1, 1), 60 * ray, depth=8)
    sets = list(places(lay(deep, cut((5, 0), (9, 0), depth=8), loaf=BALL), 0.0, 10.0))
    assert {len(each) for each in sets} == {2}
    round_ones = [each for each in sets if len(each[0]) > 2]
    assert arcs(round_ones[0])[:, :2] == pytest.approx(np.array([[150, 75], [330, 75]]), abs=1e-3)
    straight = [line for each in sets for line in each if len(line) == 2]
    assert straight and all((line[1] - line[0]) @ [ray[1], -ray[0]] == pytest.approx(0, abs=1e-6)
                            for line in straight)  # fmt: skip


def test_a_long_loaf_is_cut_along_whatever_is_wanted(lay):
    sets = list(places(lay(loaf=LONG), 0.3, 10.0))
    assert [len(each) for each in sets[:4]] == [1] * 4 and {len(each) for each in sets[4:]} == {2}
    lines = [line for each in sets for line in each]
    assert all(np.ptp(line[:, 0]) == pytest.approx(0, abs=1e-6) for line in lines)
    assert sets[2][0][1, 1] == pytest.approx(0.7 * float(LONG.reach(math.pi / 2)))
    side = float(LONG.reach(0.0))
    first, second = (pair for pair in sets[4:6])
    assert [first[0][0, 0], first[1][0, 0]] == pytest.approx([-0.4 * side, 0.4 * side])
    assert second[0][1, 1] == pytest.approx(0.55 * float(LONG.reach(math.pi / 2)))
    barely, slim = (make_loaf("oval", 100, 100 * longer, 45) for longer in (1.14, 1.16))
    assert (
        len(list(places(lay(loaf=slim), 0.3, 8.0)))
        < 12
        < len(list(places(lay(loaf=barely), 0.3, 8.0)))
    )


def test_a_pattern_of_five_gets_five_between_its_copies_then_beyond_them(cut, lay):
    """A ring of five inner cuts stands at 20 degrees, the outer ones at 90 and on."""
    made = lay(*rays(cut, 5, 8, 14, first=20.0), *rays(cut, 5, 20, 26), loaf=BALL)
    sets = list(places(made, 0.3, 10.0))
    assert [len(each) for each in sets] == [5] * 8
    for k, out in enumerate((0.72, 0.6, 0.5, 0.8)):
        between = np.column_stack(
            [np.arange(5) * 72 + 54, np.full(5, 39.6), np.full(5, out * REACH)]
        )
        assert arcs(sets[k]) == pytest.approx(between, abs=1e-3)
        assert arcs(sets[k + 4])[:, 0] == pytest.approx(np.arange(5) * 72 + 18, abs=1e-3)


def test_a_pattern_of_six_gets_three_or_six_or_three_across(cut, lay):
    made = lay(*rays(cut, 6), loaf=BALL)
    sets = list(places(made, 0.3, 10.0))
    assert [len(each) for each in sets] == [3] * 8 + [6] * 8 + [3] * 4
    assert arcs(sets[0])[:, :2] == pytest.approx(
        np.array([[0, 66], [120, 66], [240, 66]]), abs=1e-3
    )
    assert arcs(sets[4])[:, 0] == pytest.approx([90, 210, 330])
    assert arcs(sets[8]) == pytest.approx(
        np.array([[60 * k, 33, 0.72 * REACH] for k in range(6)]), abs=1e-3
    )
    for share, lines in zip((0.4, 0.55, 0.7, 0.8), sets[16:], strict=True):
        ends = np.array([line[1] for line in lines])
        assert np.hypot(*ends.T) == pytest.approx(np.full(3, share * REACH), abs=1e-3)
        assert sorted(degrees(ends) % 180) == pytest.approx([0, 60, 120], abs=1e-6)


def test_no_set_crosses_a_figure(cut, lay):
    """The hull of a figure of two cuts is barred, that of a fill is not."""
    pair = [cut((x, -9), (x, 9), depth=1, figure=7) for x in (-55, 55)]
    apart = [cut((x, -9), (x, 9), depth=1, figure=7, word="fill", part="hatch")
             for x in (-55, 55)]  # fmt: skip
    barred, free = (
        list(places(lay(*each, loaf=BALL), math.pi / 2, 10.0)) for each in (pair, apart)
    )
    ways = [each[0] for each in free if len(each) == 1]
    assert not [each for each in barred if len(each) == 1] and ways
    assert is_fill(apart[0]) and not is_fill(pair[0])


def test_a_set_of_which_one_line_crosses_a_figure_is_left_out_whole(cut, lay):
    """Two little cuts of a figure, 90 mm apart: its hull lies across the way to 12 o'clock."""
    figure = [cut((x, 60), (x, 80), depth=1, figure=7) for x in (-45, 45)]
    sets = list(places(lay(*figure, loaf=BALL), math.pi / 2, 10.0))
    lines = [line for each in sets for line in each]
    assert len(sets) > 4 and not any(
        ((np.abs(on[:, 0]) < 45) & (on[:, 1] > 60) & (on[:, 1] < 80)).any()
        for on in (np.linspace(line[k], line[k + 1], 99) for line in lines
                   for k in range(len(line) - 1))
    )  # fmt: skip


def test_a_pattern_of_twelve_is_cut_across_between_its_copies(cut, lay):
    made = lay(*rays(cut, 12, 45, 50), loaf=BALL)
    through = [each for each in places(made, 0.3, 10.0) if len(each[0]) == 2]
    assert {len(each) for each in through} == {2, 3}
    for count, turns in ((2, [15, 105]), (3, [45, 105, 165])):
        lines = next(each for each in through if len(each) == count)
        assert sorted(degrees([line[1] for line in lines]) % 180) == pytest.approx(turns)
