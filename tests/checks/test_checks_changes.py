"""What a cure makes of a layout, to the millimetre."""

import math

import numpy as np
import pytest

from scorecraft.checks.changes import (
    added,
    applied,
    at_depth,
    lengthened,
    moved,
    no_deeper,
    no_flatter,
    opened,
    parted,
    shortened,
    turned,
    way_to,
    without,
)
from scorecraft.checks.cure import Change


def lines(layout):
    return [each.line.tolist() for each in layout.cuts]


def done(layout, *changes):
    return applied(layout, changes)


def two(cut, lay, **more):
    return lay(cut((0, 0), (60, 0), depth=6, **more), cut((0, 20), (60, 20), depth=3, **more))


def test_depths_and_blades_change_only_where_they_must(cut, lay):
    made = two(cut, lay, blade=40)
    assert [each.depth_mm for each in done(made, at_depth(made, [1], 5.0)).cuts] == [6, 5]
    assert [each.depth_mm for each in done(made, no_deeper(made, [0, 1], 5.0)).cuts] == [5, 3]
    three = lay(*made.cuts, cut((0, 9), (9, 9), blade=80))
    steep = done(three, no_flatter(three, [0, 2], math.radians(60)))
    assert np.degrees([each.blade_rad for each in steep.cuts]) == pytest.approx([60, 40, 80])
    assert done(made, without([0])).cuts == made.cuts[1:]


def test_a_cut_is_shortened_at_the_ends_that_are_told(cut, lay):
    made = lay(cut((0, 0), (30, 0), (60, 0)))
    assert lines(done(made, shortened([(0, True)], 10)))[0] == [[0, 0], [30, 0], [50, 0]]
    assert lines(done(made, shortened([(0, False)], 10)))[0] == [[10, 0], [30, 0], [60, 0]]
    both = lines(done(made, shortened([(0, True), (0, False), (0, True)], 10)))
    assert both == [[[10, 0], [30, 0], [50, 0]]]
    assert lines(done(made, shortened([(0, True)], 40))) == [[[0, 0], [20, 0]]]
    (least,) = lines(done(made, shortened([(0, True)], 99)))
    assert least[-1] == pytest.approx([0.6, 0])


def test_a_gap_is_as_wide_as_told_and_where_it_is_told(cut, lay):
    made = two(cut, lay)
    assert lines(done(made, opened(made, [(0, 20.0)], 8))) == [
        [[0, 0], [16, 0]],
        [[24, 0], [60, 0]],
        [[0, 20], [60, 20]],
    ]
    at_end = lines(done(made, opened(made, [(0, 58.0), (0, 20.0)], 8)))
    assert at_end[:2] == [[[0, 0], [16, 0]], [[24, 0], [54, 0]]] and len(at_end) == 3
    scrap = lines(done(made, opened(made, [(0, 4.5)], 8)))
    assert scrap[0] == [[8.5, 0], [60, 0]]
    kept = lines(done(made, opened(made, [(0, 5.0)], 8)))
    assert kept[:2] == [[[0, 0], [1, 0]], [[9, 0], [60, 0]]]


def test_figures_move_whole_and_others_stay(cut, lay):
    one, other = (cut((0, y), (60, y), figure=1) for y in (0, 20))
    made = lay(one, other, cut((0, 40), (60, 40), figure=2))
    after = lines(done(made, moved(made, {1: np.array([3.0, 4.0])})))
    assert after == [[[3, 4], [63, 4]], [[3, 24], [63, 24]], [[0, 40], [60, 40]]]


def test_pairs_are_parted_each_by_half(cut, lay):
    made = two(cut, lay)
    after = lines(done(made, parted(made, [(0, 1, np.array([0.0, 5.0]))], 4)))
    assert after == [[[0, -2], [60, -2]], [[0, 22], [60, 22]]]
    one = two(cut, lay, figure=7)
    alone = lines(done(one, parted(one, [(0, 1, np.array([0.0, 5.0]))], 4)))
    assert alone == after


def test_a_figure_asked_twice_to_move_the_same_way_moves_once(cut, lay):
    made = lay(*(cut((0, y), (60, y), figure=k) for k, y in ((1, 0), (1, 3), (2, 20))))
    up = np.array([0.0, 1.0])
    after = done(made, parted(made, [(0, 2, up), (1, 2, up)], 4))
    assert [each.line[0, 1] for each in after.cuts] == pytest.approx([-2, 1, 22])
    across = done(made, parted(made, [(0, 2, up), (1, 2, np.array([1.0, 0.0]))], 4))
    assert across.cuts[2].line[0] == pytest.approx([2, 22])
    against = done(made, parted(made, [(0, 2, up), (1, 2, -up)], 4))
    assert against.cuts[2].line[0] == pytest.approx([0, 20])


def test_a_turn_is_counter_clockwise_about_the_point(cut, lay):
    made = two(cut, lay)
    after = done(made, turned([0], np.array([60.0, 0.0]), math.radians(90)))
    assert after.cuts[0].line == pytest.approx(np.array([[60, -60], [60, 0]]))
    assert after.cuts[1] is made.cuts[1]


def test_the_way_to_a_line_is_the_shortest():
    line = np.array([[0.0, 0.0], [60.0, 0.0]])
    assert way_to(line, np.array([20.0, 5.0])) == pytest.approx([0, -5])
    assert way_to(line, np.array([63.0, 4.0])) == pytest.approx([-3, -4])


def test_where_any_pair_is_of_one_figure_cuts_move_alone(cut, lay):
    made = lay(*(cut((0, y), (60, y), figure=k) for k, y in ((1, 0), (1, 10), (2, 20), (2, 40))))
    up = np.array([0.0, 1.0])
    after = done(made, parted(made, [(0, 1, up), (1, 2, up)], 4))
    assert [each.line[0, 1] for each in after.cuts] == pytest.approx([-2, 10, 22, 40])


def test_a_longer_cut_keeps_its_bulge_and_an_arc_its_radius(arc, cut, lay):
    made = lay(cut((0, 0), (30, 3), (60, 0)), cut(*arc(50, 0, 90)))
    bent, curved = done(made, lengthened([0, 1], 10)).cuts
    assert bent.line.tolist() == [[-10, 0], [30, 3], [70, 0]]
    assert np.hypot(*curved.line.T) == pytest.approx(50, abs=0.1)
    turn = np.degrees(np.arctan2(*curved.line[[0, -1]].T[::-1]))
    assert turn == pytest.approx([-math.degrees(10 / 50), 90 + math.degrees(10 / 50)], abs=0.2)


def test_changes_of_one_cure_all_speak_of_the_cuts_as_they_were(cut, lay):
    made = two(cut, lay)
    line = np.array([[0.0, 40.0], [60.0, 40.0]])
    after = done(made, without([0]), at_depth(made, [1], 5.0), added([line, line + 9], 8.0, 1.0))
    assert [each.depth_mm for each in after.cuts] == [5.0, 8.0, 8.0]
    assert len({each.family for each in (*made.cuts, *after.cuts[1:])}) == 3
    more = done(after, added([line], 8.0, 1.0))
    assert len({each.figure for each in more.cuts}) == 4


@pytest.mark.parametrize(
    ("end", "shorter", "longer"),
    [("first", (10, 60), (-10, 60)), ("last", (0, 50), (0, 70)), ("both", (10, 50), (-10, 70))],
)
def test_the_end_that_is_told_changes_and_the_other_stays(cut, lay, end, shorter, longer):
    made = lay(cut((0, 0), (30, 0), (60, 0)))
    for kind, ends in (("shorter", shorter), ("longer", longer)):
        (after,) = done(made, Change(kind, (0,), mm=10.0, ends=(end,))).cuts
        assert after.line[[0, -1], 0] == pytest.approx(ends)
    (least,) = done(made, Change("shorter", (0,), mm=90.0, ends=(end,))).cuts
    assert np.ptp(least.line[:, 0]) == pytest.approx(0.6)


@pytest.mark.parametrize(("bulge", "keeps"), [(8.9, True), (9.1, False)])
def test_a_bulge_of_fifteen_per_cent_of_the_chord_makes_an_arc(arc, cut, lay, bulge, keeps):
    """A circle with a chord of 60 mm: r = (30^2 + b^2) / 2b; carried on, it stays a circle."""
    radius = (30**2 + bulge**2) / (2 * bulge)
    half = math.degrees(math.asin(30 / radius))
    bow = arc(radius, 90 - half, 90 + half, centre=(0, bulge - radius))
    (after,) = done(lay(cut(*bow)), lengthened([0], 12.0)).cuts
    away = np.hypot(*(after.line - [0, bulge - radius]).T)
    assert (np.abs(away - radius).max() < 0.05) is not keeps
    if not keeps:
        assert len(after.line) == 60 + 16
        run = np.hypot(*np.diff(after.line, axis=0).T).sum()
        assert run == pytest.approx(2 * radius * math.radians(half) + 24, abs=0.05)
    else:
        assert after.line[0] == pytest.approx(bow[0] + [12, 0])
        assert after.line[:, 1].max() == pytest.approx(bow[:, 1].max())


def test_an_arc_carried_on_at_one_end_follows_its_circle(arc, cut, lay):
    for end, turn in (("first", -12 / 50), ("last", math.pi / 2 + 12 / 50)):
        made = lay(cut(*arc(50, 0, 90)))
        (after,) = done(made, Change("longer", (0,), mm=12.0, ends=(end,))).cuts
        there = after.line[0 if end == "first" else -1]
        assert there == pytest.approx(50 * np.array([math.cos(turn), math.sin(turn)]), abs=0.05)
        assert np.hypot(*after.line.T) == pytest.approx(50, abs=0.02) and len(after.line) == 68


def test_added_cuts_are_statements_of_their_own_after_those_there_are(cut, lay):
    made = lay(cut((0, 0), (60, 0), family=4, figure=9), cut((0, 9), (60, 9), family=2))
    line = np.array([[0.0, 40.0], [60.0, 40.0]])
    after = done(made, added([line, line + 9], 8.0, 1.0), added([line + 20], 7.0, 1.1))
    assert [each.family for each in after.cuts[2:]] == [5, 6, 7]
    top = max(each.figure for each in made.cuts)
    assert [each.figure for each in after.cuts[2:]] == [top + 1, top + 2, top + 3]
    assert [(each.depth_mm, each.blade_rad) for each in after.cuts[2:]] == [
        (8.0, 1.0), (8.0, 1.0), (7.0, 1.1)
    ]  # fmt: skip
    assert {each.kind for each in after.cuts[2:]} == {"expansion"}
    assert after.cuts[2].place == made.cuts[0].place
    (lone,) = done(lay(), added([line], 8.0, 1.0)).cuts
    assert (lone.family, lone.figure, lone.place.line, lone.place.column) == (0, 0, 1, 1)


def test_a_change_of_depth_is_called_by_where_it_goes(cut, lay):
    made = two(cut, lay)  # 6 and 3 mm deep
    assert at_depth(made, [0, 1], 4.0).kind == "deeper"
    assert at_depth(made, [0], 4.0).kind == at_depth(made, [0], 6.0).kind == "shallower"
    assert no_deeper(made, [0, 1], 3.0).cuts == (0,)
    assert no_flatter(two(cut, lay, blade=60), [0, 1], math.radians(60)).cuts == ()


def test_of_two_ways_what_both_ask_for_is_gone_once(cut, lay):
    """A figure asked to go 2 up and 1 up moves 2 up; the other way about as well."""
    made = lay(*(cut((0, y), (60, y), figure=k) for k, y in ((1, 0), (2, 20), (3, 40))))
    up = np.array([0.0, 1.0])
    slanted = np.array([0.6, 0.8])
    after = done(made, parted(made, [(0, 2, up), (1, 2, slanted)], 10))
    # first 5 up; then of (3, 4) the 4/5 along it are there: 5 up + (3, 4) - 0.8 * 5 up
    assert after.cuts[2].line[0] == pytest.approx([3, 45])
    halves = done(made, parted(made, [(0, 2, up), (1, 2, -up)], 10))
    assert halves.cuts[2].line[0] == pytest.approx([0, 40])


def test_an_arc_with_uneven_points_is_carried_on_along_its_circle(cut, lay):
    turn = np.radians([0, 2, 15, 22, 23, 55, 70, 74, 90])
    bow = 50 * np.column_stack([np.cos(turn), np.sin(turn)])
    (after,) = done(lay(cut(*bow)), lengthened([0], 12.0)).cuts
    assert np.hypot(*after.line.T) == pytest.approx(50, abs=0.1)
    ends = np.arctan2(*after.line[[0, -1]].T[::-1])
    assert ends == pytest.approx([-12 / 50, math.pi / 2 + 12 / 50], abs=2e-3)
