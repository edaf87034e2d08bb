"""Rows of the card: a repeat is exact, at every setting of every pattern, and its turns add up."""

import math
from fractions import Fraction

import numpy as np
import pytest
import shapely
from support.bench_layouts import cut, layout, rays, sprigs, turned
from support.shelf_designs import some

from scorecraft.bench import work_of
from scorecraft.bench.copies import Copies
from scorecraft.bench.runs import FEW, MOST_TOGETHER, runs
from scorecraft.bench.steps import Pull, Step
from scorecraft.bench.telling import turn_each
from scorecraft.designing import make
from scorecraft.drawing.plan import cut_plans
from scorecraft.loaf.dome import make_loaf

LOOSE_MM = 0.6


def at_ends(name):
    """A shipped pattern as it is, and with all its knobs at their least and their most."""
    usual = make(name)
    yield usual.layout
    for end in ("low", "high"):
        turned = {knob.name: f"{getattr(knob, end):g}{knob.unit}" for knob in usual.layout.knobs}
        if turned:
            yield make(name, knobs=turned).layout


def told(made_layout, step):
    """What is cut in a step: statement, part, depth and blade of every cut."""
    cuts = [made_layout.cuts[pull.cut] for pull in step.pulls]
    return sorted((cut.family, cut.name, round(cut.depth_mm, 1), cut.blade_rad) for cut in cuts)


def seen(plans, step):
    """The cuts of a step as they lie before the cutter."""
    c, s = math.cos(step.table_rad), math.sin(step.table_rad)
    turn = np.array([[c, -s], [s, c]])
    return shapely.MultiLineString([plans[pull.cut] @ turn for pull in step.pulls])


@pytest.mark.parametrize("name", some(0))
def test_a_row_is_an_exact_repeat_or_shows_every_setting(name):
    for made_layout in at_ends(name):
        plans = cut_plans(made_layout)
        for run in work_of(made_layout).runs:
            if not run.copies:
                assert 1 < len(run.steps) <= MOST_TOGETHER
                continue
            first = seen(plans, run.first)
            for step in run.steps[1:]:
                assert told(made_layout, step) == told(made_layout, run.first)
                assert shapely.hausdorff_distance(first, seen(plans, step)) < LOOSE_MM


@pytest.mark.parametrize("name", some(1))
def test_the_told_turns_of_a_round_come_to_360_degrees(name):
    """They do exactly, or the row goes by the marks, which cannot add up."""
    for made_layout in at_ends(name):
        for run in work_of(made_layout).runs:
            if run.times < 2 or run.turn_each_rad is None:
                continue
            each = turn_each(run)
            whole = abs(abs(run.turn_each_rad) * run.times - math.tau) < math.radians(1)
            if each is not None and whole:
                assert abs(each) * run.times == 360
            if each is not None:
                assert abs(math.degrees(run.turn_each_rad) - each) * run.times < 0.25


@pytest.mark.parametrize(
    ("count", "each"),
    [(16, Fraction(45, 2)), (9, Fraction(40)), (12, Fraction(30)), (14, None), (13, None)],
)
def test_turns_are_exact_fractions_or_none(count, each):
    (run,) = work_of(layout(sprigs(count))).runs
    assert run.times == count
    assert turn_each(run) == each
    marks = np.degrees([step.table_rad for step in run.steps])
    np.testing.assert_allclose(np.diff(marks) % 360, 360 / count, atol=1e-6)


def test_one_stroke_more_is_no_repeat():
    """Six sprigs, one with a vein more: five are told as one row and the sixth by itself."""
    extra = cut(turned([[0, 45], [6, 58]], 120), "sprig", "vein", 102, 1, 2.0)
    runs = work_of(layout([*sprigs(6), extra])).runs
    assert sum(len(run.steps) for run in runs) == 6
    assert all(len({len(step.pulls) for step in run.steps}) == 1 for run in runs if run.copies)


def unequal(count):
    """Sprigs about the crown, each with a stem of its own length: nothing repeats."""
    return [
        cut(turned(line, 360 * k / count), "sprig", part, k, 0, 3.0)
        for k in range(count)
        for part, line in (("stem", [[0, 25], [0, 45 + 4 * k]]), ("vein", [[0, 35], [8, 45]]))
    ]


def test_settings_alike_are_told_together_with_a_step_each():
    (run,) = work_of(layout(unequal(5))).runs
    assert not run.copies and len(run.steps) == 5 and run.times == 1
    assert run.turn_each_rad is None


def test_many_settings_alike_are_shared_out_evenly():
    runs = work_of(layout(unequal(8))).runs
    assert [(len(run.steps), run.copies) for run in runs] == [(4, False), (4, False)]


def test_a_few_repeats_are_a_row_of_their_own():
    (run,) = work_of(layout(sprigs(FEW))).runs
    assert run.copies and run.times == FEW


def test_copies_of_another_depth_are_no_repeat():
    strokes = [*rays(3, depth=8.0), *rays(3, depth=9.0, first=60)]
    for run in work_of(layout(strokes)).runs:
        depths = {strokes[pull.cut].depth_mm for pull in run.first.pulls}
        for step in run.steps:
            assert {strokes[pull.cut].depth_mm for pull in step.pulls} == depths or not run.copies


def test_on_an_oval_a_quarter_turn_is_no_repeat_where_the_handle_leans_otherwise():
    loaf = make_loaf("oval", 150.0, 260.0, 85.0)
    for run in work_of(layout(rays(4, depth=8.0, start=40, end=70), loaf=loaf)).runs:
        if run.copies:
            tilts = [step.pulls[0].tilt_rad for step in run.steps]
            assert max(tilts) - min(tilts) < math.radians(5)


def step(cut_index, turn_deg=0.0, table_deg=0.0, *, tilt=0.0, lean=0.0, stage="deep", spin=0.0):
    """One cut at one setting, as a plan would give it."""
    pull = Pull(
        cut_index, False, (3.0, 3.0, 3.0), math.radians(tilt), math.radians(lean), 1.0
    )  # fmt: skip
    return Step(
        1, stage, (pull,), frozenset([cut_index]), (cut_index,),
        math.radians(table_deg), math.radians(turn_deg), spin, 2.0,
    )  # fmt: skip


def rows(cuts, *steps):
    made = layout(cuts)
    found = runs(made, Copies(made), steps)
    numbers = [step.number for run in found for step in run.steps]
    assert numbers == list(range(1, len(numbers) + 1))
    assert [run.number for run in found] == list(range(1, len(found) + 1))
    return [(len(run.steps), run.copies) for run in found]


@pytest.mark.parametrize(
    ("tilts", "leans", "repeats"),
    [
        ((30, 34.9), (0, 0), True),
        ((30, 35.1), (0, 0), False),
        ((35.1, 30), (0, 0), False),
        ((30, 30), (178, -178), True),  # four degrees apart
        ((30, 30), (178, -176), False),
        ((7.9, 7.9), (0, 180), True),  # upright leans nowhere
        ((8.1, 8.1), (0, 180), False),
    ],
)
def test_a_repeat_is_held_alike(tilts, leans, repeats):
    """Four rays, turned exactly: the handle may differ by five degrees."""
    steps = [
        step(k, -90, -90 * k, tilt=tilts[k % 2], lean=leans[k % 2]) for k in range(4)
    ]  # fmt: skip
    assert rows(rays(4), *steps) == ([(4, True)] if repeats else [(4, False)])


@pytest.mark.parametrize("more", [{"spin": 6.0}, {"stage": "light"}])
def test_another_pass_or_a_table_that_turns_is_no_repeat(more):
    first, second = step(0), step(1, -90, -90)
    changed = step(1, -90, -90, **more)
    assert rows(rays(4), first, second) == [(2, True)]
    assert rows(rays(4), first, changed) == [(1, True), (1, True)]
    assert rows(rays(4), changed, step(2, -90, 180)) == [(1, True), (1, True)]


def test_steps_without_a_turn_are_one_up_to_three_kinds_of_cuts():
    """Their cuts, figures and times go together; not those of two passes."""
    lines = [cut([[2 * k, 0], [2 * k, 30]], f"line{k}", figure=k, family=k) for k in range(4)]
    made = layout(lines)
    first, second = runs(made, Copies(made), [step(k, 30.0 * (k == 0)) for k in range(4)])
    (joined,), (alone,) = first.steps, second.steps
    assert [pull.cut for pull in joined.pulls] == [0, 1, 2] and alone.pulls[0].cut == 3
    assert (joined.figures, joined.families) == ((0, 1, 2), {0, 1, 2})
    assert joined.seconds == 6.0 and joined.turn_rad == math.radians(30)
    assert rows(lines, step(0), step(1, stage="light")) == [(1, True), (1, True)]
    assert rows(lines, step(0), step(1, spin=6.0)) == [(1, True), (1, True)]
    assert rows(lines, step(0), step(1, 1e-3)) == [(1, True), (1, True)]


def test_other_sorts_of_cuts_are_rows_of_their_own():
    """Alike is the name, the depth to a tenth and the blade to a degree."""

    def two(**other):
        lines = [cut([[0, 20], [0, 50]]), cut([[0, 25], [0, 40]], family=1, **other)]
        return rows(lines, step(0), step(1, 90, 90))

    assert two() == two(depth=3.04) == two(blade=89.7) == [(2, False)]
    apart = [(1, True), (1, True)]
    assert two(depth=3.1) == two(blade=89) == two(word="line") == apart


@pytest.mark.parametrize(
    ("count", "shared"),
    [(6, [6]), (7, [4, 3]), (12, [6, 6]), (13, [4, 5, 4]), (19, [5, 5, 4, 5])],
)
def test_settings_alike_are_shared_out_in_even_rows(count, shared):
    lines = [cut([[0, 20], [0, 40 + k]]) for k in range(count)]
    steps = [step(k, 10, 10 * k) for k in range(count)]
    assert rows(lines, *steps) == [(each, False) for each in shared]


def test_three_repeats_are_not_told_together_with_others():
    """Two are few; what is left over from a longer row is another row."""
    lines = [*rays(4), cut([[0, 25], [0, 60]], "ray", depth=8.0)]
    turns = [step(k, -90, -90 * k) for k in range(4)]
    assert rows(lines, *turns[:2], step(4, 10, 10)) == [(3, False)]
    assert rows(lines, *turns[:3], step(4, 10, 10)) == [(3, True), (1, True)]
    assert rows(lines, step(4, 10, 10), *turns[:3]) == [(1, True), (3, True)]
