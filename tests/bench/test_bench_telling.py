"""How the work is told: strokes, handle and blade, turns of the table, boards of loaves."""

import math
from dataclasses import replace
from fractions import Fraction

import pytest
from support.bench_layouts import cut, layout, rays

from scorecraft.bench import telling as say
from scorecraft.bench import work_of
from scorecraft.bench.batch import Batch
from scorecraft.bench.steps import Pull, Step

LINE = [[0, 50], [0, -50]]


def handling_of(*cuts, **bench):
    """What is told of the first row of a card."""
    made = layout(cuts, **bench)
    (told,) = say.handlings(made, work_of(made).runs[0], {k: k + 1 for k in range(len(cuts))})
    return told


@pytest.mark.parametrize("line", [LINE, LINE[::-1]], ids=["as drawn", "against"])
def test_a_deep_stroke_starts_deeper_than_it_ends_whichever_way_it_is_drawn(line):
    told = handling_of(cut(line, depth=10), order="file")
    assert told.depths_mm == (6.0, 10.0, 5.0)
    assert say.ends_words(told) == "start 6 mm, finish 5 mm deep"


@pytest.mark.parametrize(
    ("depths", "words"),
    [
        ((3.05, 3.0, 2.95), ""),
        ((3.12, 3.0, 3.0), "start 3 mm, finish 3 mm deep"),
        ((3.0, 3.0, 2.88), "start 3 mm, finish 3 mm deep"),
        ((3.0, 3.0, 2.0), "start 3 mm, finish 2 mm deep"),
    ],
)
def test_an_even_stroke_says_nothing_of_its_ends(depths, words):
    assert say.ends_words(replace(handling_of(cut(LINE)), depths_mm=depths)) == words


def test_an_upright_cut_in_words():
    told = handling_of(cut(LINE, depth=3.5))
    assert told.names == ("1 slash, no. 1",)
    assert say.depth_words(told) == "3.5 mm"
    assert say.depth_words(replace(told, depths_mm=(2.0, 4.0, 2.0))) == "4 mm"
    assert say.blade_words(told) == "blade upright"
    assert (told.held_upright, told.lean, say.handle_words(told)) == (True, "", "handle upright")
    leaning = replace(told, tilt_rad=math.radians(8))
    assert not leaning.held_upright
    assert say.handle_words(leaning) == "handle square to the dough"


def test_a_slanted_cut_in_words():
    told = handling_of(cut(LINE, depth=8, blade=35))
    assert say.blade_words(told) == "curved blade at 35°"
    told = replace(told, tilt_rad=math.radians(52))
    assert say.handle_words(replace(told, lean="left")) == "tilt the handle 50° to the left"
    assert say.handle_words(replace(told, lean="away")) == "tilt the handle 50° away"
    assert say.handle_words(replace(told, lean="")) == ""


def test_cuts_that_part_the_dough_in_words():
    snip = replace(cut(LINE, blade=40), hinge_mm=6.25, laid=-1)
    told = handling_of(snip)
    assert say.depth_words(told) == told.severed == "leave 6.25 mm"
    assert say.deep_word(told) == "uncut"
    assert say.handle_words(replace(told, lean="")) == "scissors at 40° to the dough"
    left = "scissors at 40° to the dough, handles to the left"
    assert say.handle_words(replace(told, lean="left")) == left
    assert say.blade_words(told) == ""
    assert told.aside == "lay each piece aside at once: left"
    both = [snip, replace(snip, laid=1)]
    assert say.aside_words(both[1:]) == "lay each piece aside at once: right"
    assert say.aside_words(both) == "lay each piece aside at once: left, right …"
    four = "lay each piece aside at once: left, right, left …"
    assert say.aside_words([*both, *both]) == four
    assert say.aside_words([snip, snip]) == "lay each piece aside at once: left"
    through = replace(cut(LINE), through=True)
    pressed = handling_of(through)
    assert (say.depth_words(pressed), say.deep_word(pressed)) == ("right through", "")
    assert say.handle_words(replace(pressed, tilt_rad=0.0)) == "press down, do not drag"
    assert say.blade_words(pressed) == ""
    assert say.severed_words(through) == "right through" and say.aside_words([through]) == ""
    assert say.severed_words(cut(LINE)) == ""
    assert (
        say.aside_words([replace(through, pulled_mm=29.6)]) == "pull open to 30 mm once all is cut"
    )


def pulls(*leans_deg, tilt_deg=40.0):
    angles = (math.radians(each) for each in leans_deg)
    return [Pull(0, False, (3.0, 3.0, 3.0), math.radians(tilt_deg), at, 1.0) for at in angles]


@pytest.mark.parametrize(
    ("leans", "side"),
    [
        ((10, -20), "to the right"),
        ((80, 120), "away"),
        ((170, -170), "to the left"),
        ((-90,), "toward you"),
    ],
)
def test_handles_that_agree_lean_to_a_side_as_the_cutter_sees_it(leans, side):
    assert say.lean_words(pulls(*leans)) == f"tilt the handle 40° {side}"


def test_handles_that_differ_or_stand_up_lean_to_no_side():
    assert say.lean_words(pulls(0, 90)) == say.lean_words(pulls(0, tilt_deg=7)) == ""
    assert say.lean_words(pulls(0, 66)) == "tilt the handle 40° to the right"  # the mean of them


@pytest.mark.parametrize(
    ("degrees", "words"),
    [
        (0, "0°"), (0.5, "½°"), (22.5, "22½°"), (33.337, "33⅓°"), (66.6667, "66⅔°"),
        (11.25, "11¼°"), (78.75, "78¾°"), (45.004, "45°"), (22.507, "23°"), (51.43, "51°"),
        (360, "0°"), (400, "40°"),
    ],
)  # fmt: skip
def test_an_angle_is_told_exactly_where_it_can_be(degrees, words):
    assert say.angle_words(math.radians(degrees)) == words


def test_turns_and_marks():
    turns = [say.turn_words(math.radians(each)) for each in (0.4, -0.4, 0.6, -45)]
    assert turns == ["do not turn", "do not turn", "turn 1° ↻", "turn 45° ↺"]
    step = Step(1, "all", (), frozenset(), (), math.radians(-90), 0.0, 0.0, 1.0)
    assert say.mark_words(step) == "270°"


def test_what_is_cut_is_counted_by_sorts():
    """Each copy by itself; where steps are no copies, all of them together."""
    cuts = [cut([[x, 20], [x, 60]]) for x in (-15, 0, 15)]
    cuts += [cut([[-30, -40], [30, -40]], word="wave")]
    made = layout(cuts, order="file")
    told = [
        name
        for run in work_of(made).runs
        for each in say.handlings(made, run, {0: 1, 1: 1, 2: 1, 3: 2})
        for name in each.names
    ]
    assert told == ["3 slashes, no. 1", "1 wave, no. 2"]
    made = layout(rays(4))
    (run,) = work_of(made).runs
    (each,) = say.handlings(made, run, dict.fromkeys(range(4), 1))
    assert run.times == 4 and each.names == ("1 ray, no. 1",)
    assert say.exact_degrees(math.radians(7.5)) == Fraction(15, 2)
    assert say.exact_degrees(math.radians(51.43)) is None


def test_cuts_of_another_depth_or_blade_are_told_apart():
    """To a tenth of a millimetre and a degree; depth and tilt are those in the middle."""
    depths = [3.0, 3.04, 3.1, 3.0]
    cuts = [cut([[x, 20], [x, 40]], depth=depth) for x, depth in enumerate(depths)]
    cuts[3] = replace(cuts[3], blade_rad=math.radians(88))
    made = layout(cuts, order="file")
    drawn = [
        replace(pull, cut=k, depths_mm=(1.0, depths[k], 2.0), tilt_rad=math.radians(10 * k))
        for k, pull in enumerate(pulls(0, 0, 0, 0))
    ]
    (run,) = work_of(made).runs
    run = replace(run, steps=(replace(run.first, pulls=tuple(drawn)),))
    told = say.handlings(made, run, {0: 1, 1: 1, 2: 2, 3: 3})
    assert [each.cuts for each in told] == [(0, 1), (2,), (3,)]
    assert told[0].depths_mm == (1.0, pytest.approx(3.02), 2.0)
    assert math.degrees(told[0].tilt_rad) == pytest.approx(5)
    assert [say.depth_words(each) for each in told] == ["3 mm", "3.1 mm", "3 mm"]
    assert [say.deep_word(each) for each in told] == ["deep"] * 3
    assert told[1].names == ("1 slash, no. 2",)


@pytest.mark.parametrize(
    ("boards", "in_time", "cold", "words"),
    [
        ((4,), True, True, "One board: all of them are cut before the dough spreads."),
        ((1, 1), True, True, "One loaf at a time: take the next from the cold once it is cut, "),
        ((3, 3), True, False, "2 boards of 3 loaves: bring the next once a board is cut, "),
        ((3, 2), True, True, "2 boards of up to 3 loaves: take the next from the cold once a "),
        ((1, 1), False, False, "The dough may spread before a loaf is cut: bring the next once "),
    ],
)
def test_boards_in_words(boards, in_time, cold, words):
    batch = Batch(boards, (60.0, 90.0), in_time, cold)
    times, told = say.batch_words(batch)
    assert told.startswith(words)
    assert times.startswith(f"{sum(boards)} loaves take ") and ", two people " in times
