"""Rows of the card: a repeat is exact, at every setting of every pattern, and its turns add up."""

import math
from fractions import Fraction

import numpy as np
import pytest
import shapely
from support.bench_layouts import cut, layout, rays, sprigs, turned
from support.shelf_designs import some

from scorecraft.bench import work_of
from scorecraft.bench.runs import FEW, MOST_TOGETHER
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
