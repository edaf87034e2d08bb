"""Cures for too little room, against a model that is a plain sum: lengths times depths."""

import math
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from scorecraft.checks import room_cures as cures
from scorecraft.checks.room_cures import Trial, room_cures, span
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.skin import Skin

BALL = make_loaf("round", 200, None, 100)
LOW = make_loaf("round", 200, None, 30)


@pytest.fixture
def trial(monkeypatch):
    """Make a trial that wants so many mm2 of cut, each expansion cut its length times its depth."""

    def gives(made, skin, panel_mm):
        deep = [k for k, cut in enumerate(made.cuts) if cut.kind == "expansion"]
        area = sum(made.lengths_mm[k] * made.cuts[k].depth_mm for k in deep)
        return SimpleNamespace(work_taken=area / 1e5)

    monkeypatch.setattr(cures, "predict", gives)
    return lambda layout, wanted_mm2: Trial(layout, Skin(), wanted_mm2 / 1e5 - cures.SPARE)


def room_of(way=0.0, enough=1.0):
    return SimpleNamespace(least_direction_rad=way, enough=enough)


def told(way, trial, found=None):
    return [(each.told, each.changes) for each in way(trial, found or room_of())]


class Steps(Trial):
    """A trial of steps that are numbers: some pass, and those from a number on are enough."""

    passing: frozenset[int] = frozenset(range(20))
    good_from = 0
    asked: tuple[int, ...] = ()

    def passes(self, changes):
        return changes[0] in self.passing

    def enough(self, changes):
        self.asked += (changes[0],)
        return changes[0] >= self.good_from


@pytest.mark.parametrize("good_from", range(13))
def test_the_first_step_that_helps_is_found_in_few_runs(lay, good_from):
    steps = Steps(lay(), Skin(), 0.1)
    steps.good_from = good_from
    found = steps.least([(k,) for k in range(12)])
    assert found == ((good_from,) if good_from < 12 else None)
    assert steps.asked[0] == 11 and len(steps.asked) <= 5


def test_steps_that_the_drawing_speaks_against_are_none(lay):
    steps = Steps(lay(), Skin(), 0.1)
    steps.passing, steps.good_from = frozenset(range(7)), 3
    assert steps.least([(k,) for k in range(12)]) == (3,) and steps.asked[0] == 6
    steps.passing = frozenset()
    assert steps.least([(0,), (1,)]) is None and steps.least([]) is None
    steps.passing, steps.good_from = frozenset({5, 9}), 5
    assert steps.least([(k,) for k in range(12)]) == (9,)  # the middle of the rest does not pass


def test_so_many_runs_and_no_more_are_taken(cut, lay, trial):
    made = trial(lay(cut((-50, 0), (50, 0), depth=8), loaf=BALL), 500)
    assert [made.enough(()) for _ in range(9)] == [True] * 8 + [False]


def test_a_little_more_room_than_is_wanted_has_to_be_there(cut, lay, monkeypatch):
    monkeypatch.setattr(cures, "predict", lambda *_, panel_mm: SimpleNamespace(work_taken=0.14))
    layout = lay(cut((-50, 0), (50, 0), depth=8), loaf=BALL)
    assert [Trial(layout, Skin(), wanted).enough(()) for wanted in (0.129, 0.131)] == [True, False]


def test_panels_are_coarse_but_no_coarser_than_many_cuts_ask_for(cut, lay, monkeypatch):
    seen = []
    monkeypatch.setattr(
        cures, "predict",
        lambda *_, panel_mm: seen.append(panel_mm) or SimpleNamespace(work_taken=1.0),
    )  # fmt: skip
    few = [cut((-50, 0), (50, 0), depth=8)]
    many = [cut((-50, y), (50, y), depth=2) for y in np.linspace(-50, 50, 110)]
    for each in (few, many):
        Trial(lay(*each, loaf=BALL), Skin(), 0.1).enough(())
    assert seen[0] == 4.0 and seen[1] == pytest.approx(11_000 / 1_100, rel=0.25)


def test_a_slash_is_cut_deeper_by_steps_of_a_hand_until_there_is_room(cut, lay, trial):
    layout = lay(cut((-50, 0), (50, 0), depth=6.2), cut((0, 50), (9, 50), depth=2), loaf=BALL)
    long = layout.lengths_mm[0]
    ((said, (change,)),) = told(cures.deeper, trial(layout, long * 8.3))
    assert said == "cut the slash 8.5 mm deep" and (change.cuts, change.mm) == ((0,), 8.5)
    ((_, (change,)),) = told(cures.deeper, trial(layout, long * 6.1))
    assert change.mm == 6.5
    ((_, (change,)),) = told(cures.deeper, trial(layout, long * 12.9))
    assert change.mm == 13.0  # as deep as is usual, and no deeper
    assert told(cures.deeper, trial(layout, long * 13.1)) == []
    low = lay(cut((-50, 0), (50, 0), depth=5), loaf=LOW)
    ((_, (change,)),) = told(cures.deeper, trial(low, low.lengths_mm[0] * 7.4))
    assert change.mm == 7.5  # a quarter of 30 mm
    assert told(cures.deeper, trial(low, low.lengths_mm[0] * 7.6)) == []


def test_the_deepest_are_cut_deeper_alone_if_that_is_enough_else_all(cut, lay, trial):
    layout = lay(
        cut((-50, 40), (50, 40), depth=6), cut((-50, 0), (50, 0), depth=8),
        cut((-50, -40), (50, -40), depth=7), loaf=BALL,
    )  # fmt: skip
    sides, middle = layout.lengths_mm[[0, 2]], layout.lengths_mm[1]
    ((said, (change,)),) = told(
        cures.deeper, trial(layout, 6 * sides[0] + 7 * sides[1] + 10.9 * middle)
    )
    assert said == "cut the slash 11 mm deep" and (change.cuts, change.mm) == ((1,), 11.0)
    ((said, (change,)),) = told(cures.deeper, trial(layout, 11.9 * layout.lengths_mm.sum()))
    assert said == "cut the slashes 12 mm deep" and change.cuts == (0, 1, 2)
    ((_, (change,)),) = told(
        cures.deeper, trial(lay(*layout.cuts[::2], loaf=BALL), 7 * sides.sum() - 1)
    )
    assert (change.cuts, change.mm) == ((1,), 8.0)  # the other one, of 6 mm, stays
    assert told(cures.deeper, trial(lay(cut((0, 0), (40, 0)), loaf=BALL), 1)) == []


def test_single_strokes_are_made_longer_by_steps_no_more_than_themselves(cut, lay, trial):
    layout = lay(cut((-20, 0), (20, 0), depth=10), loaf=BALL)
    ((said, (change,)),) = told(cures.longer, trial(layout, 580))
    assert said == "make the slash 20 mm longer, 10 mm at each end"
    assert (change.kind, change.cuts, change.mm) == ("longer", (0,), 10.0)
    ((_, (change,)),) = told(cures.longer, trial(layout, 1050))
    assert change.mm == 35.0  # 110 mm on the dough
    assert told(cures.longer, trial(layout, 1250)) == []
    leaf = {"word": "leaf", "part": "midrib", "depth": 10}
    star = {"word": "star", "part": "star", "depth": 10}
    path = {"word": "path", "part": "outline", "depth": 10}
    closed = cut((0, 0), (40, 0), (40, 30), (0, 9), depth=10)
    for each, grows in (
        (cut((-20, 0), (20, 0), **leaf), False),
        (cut((-20, 0), (20, 0), **star), True),
        (cut((-20, 0), (20, 0), **path), True),
        (closed, False),
        (cut((0, 0), (40, 0), (40, 30), (0, 11), depth=10), True),
    ):
        about, ways = cures._may_grow(lay(each, loaf=BALL))
        assert bool(about) is grows is bool(ways)


def test_cuts_of_unlike_lengths_grow_by_no_more_than_the_shortest(cut, lay):
    layout = lay(
        cut((-20, 0), (20, 0), depth=9), cut((-11, 40), (11, 40), depth=9),
        cut((0, -40), (9, -40), depth=2), loaf=BALL,
    )  # fmt: skip
    assert cures._may_grow(layout) == ([0, 1], [5.0, 10.0, 15.0, 20.0])


def test_where_it_takes_both_they_are_made_longer_and_deeper(cut, lay, trial):
    layout = lay(cut((-20, 0), (20, 0), depth=6), loaf=BALL)
    ((said, (longer, deeper)),) = told(cures.longer_and_deeper, trial(layout, 670))
    assert said == "make the slash 30 mm longer, 15 mm at each end, and 10 mm deep"
    assert (longer.kind, longer.mm) == ("longer", 15.0)
    assert (deeper.kind, deeper.mm, deeper.cuts) == ("deeper", 10.0, (0,))
    deep = lay(cut((-20, 0), (20, 0), depth=10), loaf=BALL)
    assert told(cures.longer_and_deeper, trial(deep, 670)) == []


def test_depths_that_are_advised_go_by_the_dough_and_the_height(lay):
    assert cures._cure_depth(lay(loaf=BALL)) == 10.0
    assert cures._cure_depth(lay(loaf=make_loaf("round", 200, None, 31))) == 7.5


def test_a_bare_loaf_is_told_a_slanted_cut_square_to_the_way_with_least_room(lay, trial):
    ((said, (change,)),) = told(
        cures.another, trial(lay(loaf=BALL), 1300), room_of(math.radians(60))
    )
    assert said == (
        "add an expansion cut through the crown from 4 to 10 o'clock (120° on the turntable), "
        "173 mm long and 10 mm deep"
    )
    assert change.mm == 10.0 and math.degrees(change.rad) == pytest.approx(40)
    (line,) = np.array(change.lines)
    assert np.hypot(*(line[1] - line[0])) == pytest.approx(0.55 * 100 * math.pi, abs=0.01)
    way = math.degrees(math.atan2(*(line[1] - line[0])[::-1])) % 180
    assert way == pytest.approx(150)


def test_lines_that_cross_are_cut_with_an_upright_blade(lay, trial, monkeypatch):
    cross = (np.array([[-50.0, 0.0], [50.0, 0.0]]), np.array([[0.0, -50.0], [0.0, 50.0]]))
    monkeypatch.setattr(cures, "places", lambda *_: iter([cross]))
    ((said, (change,)),) = told(cures.another, trial(lay(loaf=BALL), 500))
    assert said == (
        "add 2 expansion cuts through the crown from 3 to 9 o'clock (90° on the turntable) and "
        "from 12 to 6 o'clock (0° on the turntable), 100 mm long and 10 mm deep, with the blade "
        "upright"
    )
    assert math.degrees(change.rad) == pytest.approx(90)


def test_where_a_slanted_cut_does_not_pass_an_upright_one_is_tried(lay, trial, monkeypatch):
    pair = tuple(np.array([[-50.0, y], [50.0, y]]) for y in (40.0, -40.0))
    monkeypatch.setattr(cures, "places", lambda *_: iter([pair]))
    slanted = math.radians(40)
    monkeypatch.setattr(Trial, "passes", lambda self, changes: changes[0].rad > slanted + 0.1)
    ((said, _),) = told(cures.another, trial(lay(loaf=BALL), 500))
    assert said == (
        "add two expansion cuts from 3 to 9 o'clock (90° on the turntable), one on each side of "
        "the crown 40 mm from it, 100 mm long and 10 mm deep, with the blade upright"
    )
    monkeypatch.setattr(Trial, "passes", lambda self, changes: False)
    assert told(cures.another, trial(lay(loaf=BALL), 500)) == []


def test_a_place_whose_cuts_are_not_enough_is_left_for_the_next(lay, trial, monkeypatch):
    short, long = ((np.array([[-x, 0.0], [x, 0.0]]),) for x in (10.0, 60.0))
    monkeypatch.setattr(cures, "places", lambda *_: iter([short, long]))
    tried = trial(lay(loaf=BALL), 900)
    ((_, (change,)),) = told(cures.another, tried)
    assert change.lines[0][1][0] == 60.0 and tried.runs == cures.MOST_RUNS - 2


def test_round_cuts_are_told_by_the_first_of_them_on_the_turntable(lay):
    """Three arcs of 60 mm about the crown: at 90, 210 and 330 degrees, 0 on the turntable."""
    lines = []
    for middle in (210, 330, 85):
        turn = np.radians(np.linspace(middle - 20, middle + 20, 25))
        lines.append(60 * np.column_stack([np.cos(turn), np.sin(turn)]))
    assert cures._told(tuple(lines), 9.5, False) == (
        "add 3 curved expansion cuts around the crown, evenly spaced from 5° on the turntable, "
        "60 mm from the crown, 42 mm long and 9.5 mm deep"
    )


def test_through_a_texture_the_light_cuts_in_the_way_are_left_out(cut, lay, trial):
    hatch = [cut((x, -60), (x, 60), depth=2, word="fill", part="hatch", figure=5)
             for x in np.arange(-60, 61, 12.0)]  # fmt: skip
    tried = trial(lay(*hatch, loaf=BALL), 1300)
    ((said, (gone, added)),) = told(cures.instead_of_light, tried, room_of(0.0))
    assert gone.kind == "remove" and [hatch[i].line[0, 0] for i in gone.cuts] == [0.0]
    assert "and leave out the light cuts in its way (1)" in said
    assert "through the crown from 12 to 6 o'clock" in said and "with the blade upright" in said
    assert added.lines[0][1][1] == pytest.approx(0.55 * 50 * math.pi)
    assert math.degrees(added.rad) == pytest.approx(90) and added.mm == 10.0
    for wanted, share in ((1800, 0.7), (2300, 0.8)):
        cure = told(cures.instead_of_light, trial(tried.layout, wanted), room_of(0.0))[0][1]
        assert cure[1].lines[0][1][1] == pytest.approx(share * 50 * math.pi)
    across = told(cures.instead_of_light, trial(tried.layout, 1300), room_of(math.pi / 2))
    assert across == []  # all of them would have to go
    figure = [cut((0, -9), (0, 9), depth=2), *hatch[:3]]
    assert told(cures.instead_of_light, trial(lay(*figure, loaf=BALL), 1), room_of(0.0)) == []
    assert told(cures.instead_of_light, trial(lay(loaf=BALL), 1), room_of(0.0)) == []


def test_two_cures_are_told_and_the_last_resorts_only_for_want_of_others(lay, monkeypatch):
    monkeypatch.setattr(cures, "Trial", lambda *_: None)
    ways = ("deeper", "longer", "longer_and_deeper", "another", "instead_of_light")

    def told_of(*giving):
        for way in ways:
            gives = (way,) if way in giving else ()
            monkeypatch.setattr(cures, way, lambda *_, gives=gives: gives)
        return room_cures(lay(), room_of(), Skin())

    assert told_of("deeper", "longer", "longer_and_deeper", "another") == ("deeper", "longer")
    assert told_of("deeper", "longer_and_deeper", "another") == ("deeper", "another")
    assert told_of("longer_and_deeper", "another", "instead_of_light") == (
        "longer_and_deeper",
        "another",
    )
    assert told_of("instead_of_light") == ("instead_of_light",)
    assert told_of() == ()


@pytest.mark.parametrize(
    ("turn", "said"),
    [(0, "from 3 to 9 o'clock (90°"), (90, "from 12 to 6 o'clock (0°"),
     (300, "from 5 to 11 o'clock (150°"), (179.8, "from 3 to 9 o'clock (90°")],
)  # fmt: skip
def test_straight_cuts_are_told_by_the_clock_and_the_turntable(turn, said):
    way = np.array([math.cos(math.radians(turn)), math.sin(math.radians(turn))])
    assert span(np.array([-way, way])) == f"{said} on the turntable)"


def test_nothing_is_made_longer_and_deeper_where_one_is_deep_already_or_has_a_wish(cut, lay, trial):
    light, deep = (cut((-20, y), (20, y), depth=d) for y, d in ((0, 6), (40, 10)))
    wish, other = (replace(deep, depth_mm=6, opens_mm=each) for each in (9.0, None))
    for beside, count in ((deep, 0), (wish, 0), (other, 1)):
        found = told(cures.longer_and_deeper, trial(lay(light, beside, loaf=BALL), 900))
        assert len(found) == count


def test_lighter_cuts_are_deepened_even_where_the_deepest_stays(cut, lay, trial):
    """A short cut 8 mm deep does not help by itself; the long ones of 6 mm do at 7 mm."""
    layout = lay(
        cut((-50, 40), (50, 40), depth=6), cut((-5, 0), (5, 0), depth=8),
        cut((-50, -40), (50, -40), depth=6), loaf=BALL,
    )  # fmt: skip
    long, short = layout.lengths_mm[[0, 2]].sum(), layout.lengths_mm[1]
    ((said, (change,)),) = told(cures.deeper, trial(layout, 6.9 * long + 8 * short))
    assert said == "cut the slashes 7 mm deep" and change.cuts == (0, 2)
