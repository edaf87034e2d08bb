"""The plan of the bench: every cut once, in passes, pulled toward the cutter."""

import math
from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from support.bench_layouts import cut, layout, rays, sprigs, turned
from support.shelf_designs import some

from scorecraft.bench import work_of
from scorecraft.bench.clock import stroke_seconds
from scorecraft.designing import make
from scorecraft.errors import UsageError
from scorecraft.loaf.dome import make_loaf
from scorecraft.practice import (
    AIM_S,
    CHANGE_DEPTH_S,
    NEXT_FIGURE_S,
    SAME_BLADE_DEG,
    SAME_DEPTH_MM,
    SPIN_DEG_PER_S,
    STRING_MARK_S,
    TURN_DEG_PER_S,
    TURN_TABLE_S,
)

LOW = make_loaf("round", 220.0, None, 60.0)


def pulls(made):
    return [pull for step in made.steps for pull in step.pulls]


def seen(made_layout, made):
    """Each pull's way as the cutter sees it: unit vectors from the plan's ends."""
    out = []
    for step in made.steps:
        for pull in step.pulls:
            ends = made_layout.loaf.sheet_to_plan(made_layout.cuts[pull.cut].line[[0, -1]])
            way = (ends[1] - ends[0]) * (-1 if pull.backward else 1)
            c, s = math.cos(-step.table_rad), math.sin(-step.table_rad)
            out.append(np.array([[c, -s], [s, c]]) @ way / max(np.linalg.norm(way), 1e-9))
    return np.array(out)


@pytest.mark.parametrize("name", some(0, 2))
def test_a_shipped_pattern_is_never_slower_than_in_its_own_order(name):
    design = make(name)
    made = work_of(design.layout)
    assert sorted(pull.cut for pull in pulls(made)) == list(range(len(design.cuts)))
    kinds = [design.cuts[pull.cut].kind for pull in pulls(made)]
    assert kinds == sorted(kinds)  # decorative before expansion
    assert made.order == tuple(pull.cut for pull in pulls(made))
    assert made.against == {pull.cut for pull in pulls(made) if pull.backward}
    assert made.effort.seconds <= made.in_file_order.seconds + 1e-6
    kept = made.effort == made.in_file_order
    assert kept or made.gap_s <= 0.1 * made.effort.seconds
    assert all(pull.tilt_rad < math.radians(89) for pull in pulls(made))
    steps = list(made.steps)
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))


def test_the_shelf_as_a_whole_is_cut_in_fewer_turns():
    """What is not quicker is one or two settings, where there is nothing to gain."""
    both = [work_of(make(name).layout) for name in some(1, 2)]
    ours = sum(made.effort.turned_rad for made in both)
    theirs = sum(made.in_file_order.turned_rad for made in both)
    assert ours < 0.85 * theirs
    assert sum(made.saved_s for made in both) > 30
    assert all(made.saved_s > 0.1 or len(list(made.steps)) < 8 for made in both)


def test_eight_rays_are_one_run_of_eighth_turns():
    made = work_of(layout(rays(8)))
    (run,) = made.runs
    assert run.times == 8
    assert math.degrees(run.turn_each_rad) == pytest.approx(45)
    assert made.effort.turned_rad <= math.radians(7 * 45 + 180) + 1e-9


def test_copies_of_light_sprigs_are_one_run_and_come_before_the_deep_rays():
    made = work_of(layout([*rays(6), *sprigs(6)]))
    assert [run.times for run in made.runs] == [6, 6]
    assert [run.first.stage for run in made.runs] == ["light", "deep"]
    assert {len(step.pulls) for step in made.runs[0].steps} == {5}


def test_deep_strokes_are_pulled_toward_the_cutter():
    cuts = rays(7)
    made_layout = layout(cuts)
    ways = seen(made_layout, work_of(made_layout))
    assert (ways[:, 1] < -0.97).all()


def test_no_stroke_of_a_real_pattern_is_pushed_away():
    for name in ("leaf-crown", "hemp-leaf-dome", "herringbone-batard"):
        made_layout = make(name).layout
        made = work_of(made_layout)
        ways = seen(made_layout, made)
        own = [made_layout.cuts[pull.cut].line for pull in pulls(made)]
        straight = [np.linalg.norm(line[-1] - line[0]) > 10 for line in own]
        assert (ways[straight][:, 1] < 0.3).all(), name


def mirrored(made_layout):
    flip = np.array([-1.0, 1.0])
    cuts = tuple(replace(each, line=each.line * flip) for each in made_layout.cuts)
    return replace(made_layout, cuts=cuts)


def test_a_left_hand_works_as_in_a_mirror():
    cuts = [
        *rays(5, first=10),
        *sprigs(3, first=20),
        cut([[-30, 10], [35, 14]], family=3, figure=9),
    ]
    right = work_of(layout(cuts), "right")
    left = work_of(mirrored(layout(cuts)), "left")
    assert left.effort.seconds == pytest.approx(right.effort.seconds)
    for a, b in zip(right.steps, left.steps, strict=True):
        assert a.turn_rad == pytest.approx(-b.turn_rad, abs=1e-9)
        assert [pull.cut for pull in a.pulls] == [pull.cut for pull in b.pulls]
        for mine, other in zip(a.pulls, b.pulls, strict=True):
            assert mine.backward == other.backward
            assert mine.tilt_rad == pytest.approx(other.tilt_rad)
            assert math.cos(mine.lean_rad) == pytest.approx(-math.cos(other.lean_rad), abs=1e-9)


@pytest.mark.parametrize(("hand", "to_hand"), [("right", 1), ("left", -1)])
def test_a_crosswise_stroke_goes_to_the_side_of_the_hand(hand, to_hand):
    made_layout = layout([cut([[-30, -2], [30, -2]]), cut([[0, -30], [0, 30]], depth=8)])
    made = work_of(made_layout, hand)
    cross = seen(made_layout, made)
    assert abs(cross[0, 1]) > 0.9 or np.sign(cross[0, 0]) == to_hand


def test_a_ring_about_the_crown_is_cut_by_turning_the_table_once_round():
    angles = np.linspace(0, 2 * np.pi, 121)
    ring = 50 * np.column_stack([np.sin(angles), np.cos(angles)])
    made = work_of(layout([cut(ring, "ring")]))
    (step,) = made.steps
    assert math.degrees(step.spin_rad) == pytest.approx(360)
    assert step.pulls[0].backward  # drawn clockwise: the table turns the dough to the blade


def test_a_pattern_may_keep_its_own_order():
    cuts = [*rays(3, family=0), *sprigs(3, family=1)]
    made = work_of(layout(cuts, order="file"))
    figures = [figure for step in made.steps for figure in step.figures]
    assert figures == list(dict.fromkeys(cut.figure for cut in cuts))
    assert {step.stage for step in made.steps} == {"all"}


def test_the_hand_of_the_command_line_wins_and_must_be_a_hand():
    made_layout = layout(rays(3), hand="left")
    assert work_of(made_layout).bench.hand == "left"
    assert work_of(made_layout, "right").bench.hand == "right"
    with pytest.raises(UsageError, match="right or left"):
        work_of(made_layout, "both")


def test_a_loaf_without_cuts_needs_no_work():
    made = work_of(layout([], marks=[np.array([[0.0, 0.0], [0.0, 50.0]])]))
    assert made.runs == () and made.marks == 1
    assert made.effort.seconds == STRING_MARK_S.value


def test_light_parallel_lines_take_one_setting_and_crossed_ones_two_or_more():
    hatch = [cut([[x, -40], [x, 40]], "hatch") for x in range(-30, 31, 6)]
    crossed = [cut([[-40, y], [40, y]], "hatch") for y in range(-30, 31, 6)]
    assert len(list(work_of(layout(hatch)).steps)) == 1
    assert len(list(work_of(layout([*hatch, *crossed])).steps)) >= 2


def test_like_cuts_go_from_the_far_side_of_the_hand_to_its_own():
    hatch = [cut([[x, -40], [x, 40]], "hatch") for x in (18, -12, 6, -24, 0)]
    made_layout = layout(hatch, loaf=make_loaf("round", 220.0, None, 60.0))
    for hand, sign in (("right", 1), ("left", -1)):
        (step,) = work_of(made_layout, hand).steps
        c, s = math.cos(-step.table_rad), math.sin(-step.table_rad)
        middles = [made_layout.cuts[pull.cut].line.mean(axis=0) for pull in step.pulls]
        x = [c * point[0] - s * point[1] for point in middles]
        assert np.all(sign * np.diff(x) > 0)


def changed(made_layout, before, after):
    """Whether depth or blade are set anew between two pulls."""
    a, b = (made_layout.cuts[pull.cut] for pull in (before, after))
    blades = abs(a.blade_rad - b.blade_rad) > math.radians(SAME_BLADE_DEG.value)
    return blades or abs(a.depth_mm - b.depth_mm) > SAME_DEPTH_MM.value


def test_times_add_up():
    """Counted once more from the rules: strings, aims, strokes, turns, changes, looks, the spin."""
    angles = np.linspace(0, 2 * np.pi, 121)
    ring = cut(15 * np.column_stack([np.sin(angles), np.cos(angles)]), "ring", family=7, depth=2)
    marks = [np.array([[0.0, 0.0], [0.0, 80.0]])] * 3
    made_layout = layout([*rays(5), *sprigs(4), ring], marks=marks)
    made = work_of(made_layout)
    total, at, turned_rad = STRING_MARK_S.value * made.marks, 0.0, 0.0
    assert made.marks == 3
    for step in made.steps:
        turn = math.degrees(abs(step.turn_rad))
        seconds = sum(pull.seconds + AIM_S.value for pull in step.pulls)
        seconds += (TURN_TABLE_S.value + turn / TURN_DEG_PER_S.value) * (turn > 0)
        seconds += math.degrees(abs(step.spin_rad)) / SPIN_DEG_PER_S.value
        pairs = pairwise(step.pulls)
        seconds += CHANGE_DEPTH_S.value * sum(changed(made_layout, *pair) for pair in pairs)
        assert step.seconds == pytest.approx(seconds)
        assert math.cos(at + step.turn_rad - step.table_rad) == pytest.approx(1)
        at = step.table_rad + step.spin_rad
        total, turned_rad = total + seconds, turned_rad + abs(step.turn_rad)
    for before, after in pairwise(made.steps):
        total += CHANGE_DEPTH_S.value * changed(made_layout, before.pulls[-1], after.pulls[0])
        total += NEXT_FIGURE_S.value * (before.families != after.families)
    assert made.effort.seconds == pytest.approx(total)
    assert made.effort.turned_rad == pytest.approx(turned_rad)
    assert any(step.spin_rad for step in made.steps)
    strokes = stroke_seconds(made_layout.lengths_mm, made_layout.depths_mm >= 5)
    assert {pull.cut: pull.seconds for pull in pulls(made)} == pytest.approx(
        dict(enumerate(strokes.tolist()))
    )


def test_a_turned_sprig_is_met_at_its_own_angle():
    late = cut(turned([[0, 30], [0, 70]], 120), family=5, depth=8)
    made = work_of(layout([*sprigs(1), late]))
    light, deep = made.steps
    assert math.degrees(light.table_rad) == pytest.approx(180, abs=2)
    assert math.degrees(deep.table_rad) == pytest.approx(60, abs=2)


def test_figures_that_need_no_turn_between_them_are_one_step():
    """Up to three kinds of cuts are told in one step."""
    lines = [cut([[x, -30], [x, 30]], word, figure=k, family=k)
             for k, (x, word) in enumerate([(-6, "stem"), (6, "blade")])]  # fmt: skip
    (run,) = work_of(layout(lines)).runs
    assert len(run.first.pulls) == 2 and run.first.families == {0, 1}
    many = [cut([[2 * k, -30], [2 * k, 30]], f"line{k}", figure=k, family=k) for k in range(5)]
    assert [len(run.first.pulls) for run in work_of(layout(many)).runs] == [3, 2]


ANGLES = np.linspace(0, 2.5 * np.pi, 160)
SPIRAL = np.linspace(20, 60, 160)[:, None] * np.column_stack([np.sin(ANGLES), np.cos(ANGLES)])


@pytest.mark.parametrize(("off", "told"), [(-3, 0), (3, 0), (6, 6)])
def test_a_small_turn_is_left_out_from_where_a_spiral_leaves_the_table(off, told):
    (alone,) = work_of(layout([cut(SPIRAL, "spiral")])).steps
    rests = math.degrees(alone.table_rad + alone.spin_rad)
    ray = cut(turned([[0, 20], [0, 70]], 180 - rests - off), family=1, depth=8)
    _, second = work_of(layout([cut(SPIRAL, "spiral"), ray])).steps
    assert math.degrees(second.turn_rad) == pytest.approx(told, abs=1.01)


def test_a_ring_and_a_line_of_one_statement_are_made_by_themselves():
    """At the same angle: the table turns under the blade for the ring alone."""
    angles = np.linspace(0, 2 * np.pi, 121)
    ring = cut(50 * np.column_stack([np.sin(angles), np.cos(angles)]))
    made = work_of(layout([ring, cut([[0, 20], [0, -20]])]))
    assert sorted(step.spin_rad for step in made.steps) == pytest.approx([0, math.tau])


def test_an_order_as_quick_as_the_file_s_own_is_the_proven_one():
    made = work_of(layout(rays(1)))
    assert made.route.proven and made.gap_s == made.saved_s == 0


def test_a_spiral_leaves_the_table_where_it_ends():
    """It winds once and a quarter: the next turn is counted from there."""
    made = work_of(layout([cut(SPIRAL, "spiral"), *rays(3, family=4)]))
    first, *rest = made.steps
    assert math.degrees(first.spin_rad) == pytest.approx(450, abs=3)
    at = first.table_rad + first.spin_rad
    for step in rest:
        assert math.cos(at + step.turn_rad - step.table_rad) == pytest.approx(1)
        at = step.table_rad + step.spin_rad


@pytest.mark.parametrize(("turn", "told"), [(3, 0), (5, 5), (-3, 0), (-5, -5)])
def test_a_small_turn_of_the_table_is_left_out(turn, told):
    """The second stroke lies a little further round than the first."""
    lines = [
        cut(turned([[0, 20], [0, 70]], -turn * k), word, depth=8, figure=k, family=k)
        for k, word in enumerate(("line", "slash"))
    ]
    first, *rest = work_of(layout(lines, order="file")).steps
    assert [math.degrees(step.turn_rad) for step in rest] == pytest.approx([told] if told else [])
    assert first.pulls[0].cut == 0


def test_like_cuts_at_one_distance_go_from_the_far_one_to_the_near_one():
    """Cuts of another depth or part come after them, and those that part the dough are alike."""
    down = [[-0.03, -20], [0.03, 35], [0, 5]]  # to a tenth of a millimetre they are in line
    lines = [cut([[x, y + 9], [x, y - 9]], "dash") for x, y in down]
    (step,) = work_of(layout(lines, loaf=LOW)).steps
    ends = [lines[pull.cut].line.mean(axis=0) for pull in step.pulls]
    c, s = math.cos(-step.table_rad), math.sin(-step.table_rad)
    assert np.all(np.diff([s * x + c * y for x, y in ends]) < 0)
    deeper = [*lines, cut([[-3, 9], [-3, -9]], "dash", depth=4.0)]
    (step,) = work_of(layout(deeper, loaf=LOW)).steps
    assert step.pulls[-1].cut == 3
    through = [replace(each, through=True, depth_mm=30.0 + k) for k, each in enumerate(lines)]
    (step,) = work_of(layout(through, loaf=LOW)).steps
    ends = [through[pull.cut].line.mean(axis=0) for pull in step.pulls]
    c, s = math.cos(-step.table_rad), math.sin(-step.table_rad)
    assert np.all(np.diff([s * x + c * y for x, y in ends]) < 0)


@pytest.mark.parametrize(("hand", "lean"), [("right", 0), ("left", math.pi)])
def test_the_handle_of_a_slanted_cut_over_the_top_leans_to_the_hand(hand, lean):
    """Pulled toward the cutter along the top of the loaf, whichever way it is drawn."""
    for line in ([[0, 40], [0, -40]], [[0, -40], [0, 40]]):
        made = work_of(layout([cut(line, depth=8, blade=40)], loaf=LOW), hand)
        (pull,) = pulls(made)
        assert math.degrees(pull.tilt_rad) == pytest.approx(50, abs=2)
        assert math.cos(pull.lean_rad - lean) > 0.9


def test_the_handle_leans_away_from_the_side_that_rises():
    """To the right of the pull where the left is said to rise, and the other way round."""
    for rises in (1, -1):
        made_layout = layout([replace(cut([[0, 40], [0, -40]], depth=8, blade=40), rises=rises)],
                             loaf=LOW)  # fmt: skip
        (pull,) = pulls(work_of(made_layout))
        ((x, y),) = seen(made_layout, work_of(made_layout)) * (-1 if pull.backward else 1)
        lean = np.array([math.cos(pull.lean_rad), math.sin(pull.lean_rad)])
        assert rises * float(lean @ [-y, x]) < -0.9


def test_a_ring_drawn_with_the_table_is_not_pulled_backward():
    angles = np.linspace(0, 2 * np.pi, 121)
    ring = 50 * np.column_stack([np.sin(angles), np.cos(angles)])
    for line, hand, against in [
        (ring, "right", True), (ring[::-1], "right", False),
        (ring, "left", False), (ring[::-1], "left", True),
    ]:  # fmt: skip
        (step,) = work_of(layout([cut(line, "ring")]), hand).steps
        assert step.pulls[0].backward == against
        assert step.spin_rad == pytest.approx(math.tau if hand == "right" else -math.tau)


@pytest.mark.parametrize(
    ("families", "depths"), [((0, 0), [2.0] * 8 + [3.0] * 2), ((0, 1), ([2.0] * 4 + [3.0]) * 2)]
)
def test_figures_of_one_statement_at_one_angle_are_cut_together(families, depths):
    """From light to deep over both; those of two statements one after the other."""
    cuts = [
        replace(each, line=each.line + np.array([x, 0.0]), figure=k, family=family)
        for k, (x, family) in enumerate(zip((-9.0, 9.0), families, strict=True))
        for each in sprigs(1)
    ]
    made = work_of(layout(cuts, loaf=LOW))
    assert [cuts[index].depth_mm for index in made.order] == depths
    assert all(step.turn_rad == 0 for step in list(made.steps)[1:])
