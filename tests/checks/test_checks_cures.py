"""What a cure changes, and when a change is no graver."""

import numpy as np

from scorecraft.checks.cures import has_place, no_graver, with_cuts, without_light_cuts
from scorecraft.checks.finding import Finding
from scorecraft.designing import make

ROUND = make("loaf round width 220mm height 90mm\nslash 60mm depth 8mm\n").layout


def told(check, severity, count=1):
    return Finding(check, severity, "", "", None, {"count": count})


def test_a_change_is_no_graver_only_where_no_check_warns_more():
    before = [told("rim", "warn", 2), told("strips", "stop")]
    assert no_graver(before, before)
    assert no_graver(before, [])
    assert no_graver(
        before, [told("rim", "warn", 2), told("strips", "warn"), told("depth", "note")]
    )
    assert not no_graver(before, [*before, told("depth", "warn")])
    assert not no_graver(before, [told("rim", "warn", 3)])
    assert not no_graver(before, [told("rim", "stop", 2)])
    assert not no_graver([], [told("rim", "stop")])


def test_added_cuts_are_statements_of_their_own():
    line = np.array([[-30.0, 40.0], [30.0, 40.0]])
    changed = with_cuts(ROUND, [line, line + 5], 10.0, np.pi / 2)
    assert [cut.family for cut in changed.cuts] == [0, 1, 2]
    assert len({cut.figure for cut in changed.cuts}) == 3
    assert {cut.depth_mm for cut in changed.cuts[1:]} == {10.0}
    assert with_cuts(make("loaf round width 99mm\n").layout, [line], 9.0, 1.0).cuts[0].family == 0


def test_a_cut_finds_its_place_off_other_cuts_and_off_the_rim():
    across = np.array([[-30.0, 0.0], [30.0, 0.0]])
    assert not has_place(ROUND, across, 8.0)
    assert not has_place(ROUND, across[:, ::-1] + [5.0, 0.0], 8.0)
    assert has_place(ROUND, across[:, ::-1] + [20.0, 0.0], 8.0)
    assert not has_place(ROUND, across * 6 + [0.0, 60.0], 8.0)


def test_only_light_cuts_give_way():
    text = "slash 60mm depth 8mm\nslash 60mm turn 90deg depth 2mm\n"
    layout = make("loaf round width 220mm height 90mm\n" + text).layout
    line = np.array([[-40.0, -30.0], [40.0, 30.0]])
    left, count = without_light_cuts(layout, [line], 10.0)
    assert count == 1 and [cut.depth_mm for cut in left.cuts] == [8.0]
