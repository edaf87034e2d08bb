"""Where everything crosses everything a bounded sample is looked at, and this is told."""

import math
import sys
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
import shapely

from scorecraft.checks import run
from scorecraft.checks.crossings import crossings
from scorecraft.checks.linework import strings
from scorecraft.checks.neighbours import (
    MOST_PAIRS,
    MOST_PAIRS_OF_TWO,
    by_turns,
    near_pairs,
    within,
)
from scorecraft.checks.overlaps import overlaps
from scorecraft.checks.strips import strips
from scorecraft.checks.undercut import undercut
from scorecraft.designing import make

CROWDS = {
    "leaves": "repeat 12 turn 1deg:\n    leaf 50mm veins 40\n",
    "triangles": "fill whole with triangles size 2mm\n",
    "wedges": "wedges 500:\n    slash 100mm depth 2mm\n",
}
FAULTS = {
    "leaves": {"overlaps": "warning", "crossings": "note", "strips": "warning"},
    "triangles": {"strips": "warning"},
    "wedges": {"overlaps": "warning", "strips": "warning"},
}


def crowd(name):
    return make(f"loaf round width 220mm height 95mm\n{CROWDS[name]}").layout


@cache
def found_in(name):
    return run(crowd(name))


def fan(cut, count, length=60.0, **more):
    """Cuts through one point, all crossing each other."""
    ends = [
        length * np.array([math.cos(t), math.sin(t)])
        for t in np.linspace(0, math.pi, count, endpoint=False)
    ]
    return [cut(-end, end, **more) for end in ends]


@pytest.mark.parametrize("name", CROWDS)
def test_the_faults_of_a_crowd_are_told(name):
    found = found_in(name)
    faults = [each for each in found if each.figures and each.check in FAULTS[name]]
    worst = {each.check: each.severity for each in reversed(faults)}
    assert worst == FAULTS[name]
    assert all("(at least " in each.message and each.place.line >= 2 for each in faults)


def test_what_was_not_looked_at_is_told_once_a_check():
    notes = [each for each in found_in("triangles") if "too crowded" in each.message]
    assert {each.check for each in notes} == {"overlaps", "crossings", "strips"}
    assert len(notes) == 3
    assert {each.severity for each in notes} == {"note"}


def test_pairs_are_all_there_or_bounded_and_each_once(cut, lay):
    for count, whole in ((150, True), (300, False)):
        layout = lay(*fan(cut, count))
        near = near_pairs(layout, strings(layout))
        assert near.whole is whole
        assert (near.first < near.second).all()
        assert len(np.unique(np.stack([near.first, near.second]), axis=1).T) == len(near.first)
        if whole:
            assert len(near.first) == count * (count - 1) / 2
        else:
            assert MOST_PAIRS_OF_TWO <= len(near.first) <= 2 * MOST_PAIRS_OF_TWO


def test_two_statements_are_bounded_however_many_cuts_are_looked_at_in_one_go(cut, lay):
    layout = lay(*fan(cut, 1000))
    assert len(near_pairs(layout, strings(layout)).first) == MOST_PAIRS_OF_TWO


def test_a_single_cut_is_looked_at_first_wherever_it_is_written(cut, lay):
    """It crosses the very cut of a crowd whose turn comes last."""
    crowd = fan(cut, 500)
    single = cut((80, -9), (80, 9), family=2)
    late = by_turns(lay(*crowd, single))[-1]
    crowd[late] = cut((0, 0), (100, 0))
    layout = lay(*crowd, single)
    near = near_pairs(layout, strings(layout))
    assert (500, late) in zip(near.second, near.first, strict=True)


def test_many_statements_together_are_bounded_too(cut, lay):
    lines = [each for f in range(10) for each in fan(cut, 60, family=f)]
    layout = lay(*lines)
    near = near_pairs(layout, strings(layout))
    assert not near.whole
    assert MOST_PAIRS < len(near.first) < 1.5 * MOST_PAIRS


def test_near_pairs_are_those_within_the_distance(cut, lay):
    rng = np.random.default_rng(4)
    ends = rng.uniform(-40, 40, (60, 1, 2)) + rng.uniform(-15, 15, (60, 2, 2))
    layout = lay(*(cut(*line, family=k % 5) for k, line in enumerate(ends)))
    lines = strings(layout)
    for distance in (0.0, 3.0):
        near = near_pairs(layout, lines, distance)
        apart = shapely.distance(lines[:, None], lines[None, :])
        expected = np.argwhere(np.triu(apart <= distance, k=1))
        assert np.array_equal(np.column_stack([near.first, near.second]), expected)
        assert len(expected) > 20


def test_statements_take_turns_each_from_all_over(cut, lay):
    layout = lay(*(cut((k, 0), (k, 9), family=1) for k in range(90)), cut((0, 0), (9, 9), family=2))
    order = by_turns(layout)
    assert sorted(order) == list(range(91))
    assert 90 in order[:2]
    assert np.ptp(order[2:8]) > 60


def test_a_crowd_hides_no_other_fault(cut, lay):
    """Two cuts apart from a crowd cross, overlap and lie side by side: all of it is told."""
    aside = {"depth": 8, "figure": 0}
    pair = [cut((-40, 95), (40, 95), family=2, **aside), cut((0, 70), (0, 120), family=3, **aside)]
    double = [cut((-40, 95.1), (40, 95.1), family=4, **aside)]
    beside = [cut((-40, 99), (40, 99), family=5, **aside)]
    layout = lay(*fan(cut, 350), *pair, *double, *beside)
    assert any(each.place.line == 3 for each in crossings(layout) if each.figures)
    assert any(each.place.line == 4 for each in overlaps(layout) if each.figures)
    assert any(each.place.line == 5 for each in strips(layout) if each.figures)


def test_undercuts_of_a_crowd_are_bounded(cut, lay):
    found = undercut(lay(*fan(cut, 400, depth=6, blade=30)))
    assert {each.severity for each in found if each.figures} == {"stop"}
    assert any("too crowded" in each.message for each in found)


def test_thinning_a_crowd_out_is_a_cure(cut, lay):
    """The cure the note tells, fewer cuts: every place is looked at again."""
    assert any("too crowded" in each.message for each in crossings(lay(*fan(cut, 300))))
    assert not any("too crowded" in each.message for each in run(lay(*fan(cut, 150))))


def test_what_is_chosen_within_a_bound_comes_from_all_over():
    cost = np.full(100, 3)
    np.testing.assert_array_equal(within(cost, 300), np.arange(100))
    chosen = within(cost, 61)
    assert len(chosen) == 20
    assert np.diff(chosen, prepend=-1, append=100).max() <= 10
    assert len(within(cost, 0)) == 0


SPIRALS = 'title "Spirals"\nloaf round width 240mm height 90mm\n' + "".join(
    f"spiral 100mm turns {turns}\n" for turns in range(5, 17)
)


@pytest.mark.parametrize(
    ("where", "limit"), [("neighbours", "MOST_PAIR_POINTS"), ("overlaps", "MOST_COMPARED")]
)
def test_long_winding_cuts_are_bounded_by_their_points(monkeypatch, where, limit):
    """Each is worth hundreds of short ones: what was not looked at is told."""
    layout = make(SPIRALS).layout
    before = overlaps(layout)
    assert not any("too crowded" in finding.message for finding in before)
    module = sys.modules[f"scorecraft.checks.{where}"]
    monkeypatch.setattr(module, limit, 5_000)
    found = overlaps(layout)
    assert "too crowded" in found[-1].message


def test_the_pairs_of_two_statements_are_sampled_and_those_of_others_are_not(cut, lay):
    """Statements 1 and 2 cross ten thousand times over; 1 and 3, and 2 and 3, only a few."""
    crowd = [cut((x, -60), (x, 60), family=1) for x in np.linspace(-50, 50, 160)]
    crowd += [cut((-60, y), (60, y), family=2) for y in np.linspace(-50, 50, 160)]
    few = [cut((-60, y), (60, y + 0.3), family=3) for y in (56.0, -57.0)]
    layout = lay(*crowd, *few)
    near = near_pairs(layout, strings(layout))
    family = np.array([each.family for each in layout.cuts])
    kinds = np.sort(np.stack([family[near.first], family[near.second]]), axis=0)
    assert (kinds == [[1], [3]]).all(axis=0).sum() == 320


@pytest.mark.parametrize(
    ("limit", "most", "count"),
    [
        ("MOST_BOXES", 2671, 2672),
        ("MOST_BOXES", 2672, 2672 + 1648),
        ("MOST_PAIRS", 2672, 2672 + 1648),
        ("MOST_PAIRS", 4320, 2672 + 1648 + 624),
        ("MOST_PAIRS", 4944, 4950),
        ("MOST_PAIR_POINTS", 8000, 2000),
        ("MOST_PAIR_POINTS", 12000, 3000),
    ],
)
def test_each_bound_ends_the_looking_after_the_chunk_that_passes_it(
    cut, lay, monkeypatch, limit, most, count
):
    """A hundred statements, by 32 cuts at a time: 2672, 1648, 624 and 6 pairs of 4 points each."""
    monkeypatch.setattr(sys.modules["scorecraft.checks.neighbours"], limit, most)
    layout = lay(*(replace(each, family=k) for k, each in enumerate(fan(cut, 100))))
    near = near_pairs(layout, strings(layout))
    assert len(near.first) == count and near.whole is (count == 4950)
