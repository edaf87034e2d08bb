"""What an experienced scorer knows of hands, times and batches; common practice, no source.

Each row is such a case beside what scorecraft says of it.
"""

import math

import numpy as np
import pytest
from support.bench_layouts import cut, layout, rays

from scorecraft.bench import work_of
from scorecraft.bench.batch import batch_of
from scorecraft.bench.clock import aim_seconds, stroke_seconds, turn_seconds
from scorecraft.bench.pace import between, time_words
from scorecraft.bench.telling import batch_words
from scorecraft.check_data import as_data
from scorecraft.designing import make
from scorecraft.errors import ScorecraftError
from scorecraft.report import report

LIGHT, DEEP = (np.array([kind]) for kind in (False, True))
COMMON = "common practice, no source"


def stroke(length_mm, kind):
    return float(stroke_seconds(np.array([length_mm]), kind)[0])


def turn_and_aim(degrees):
    return float(turn_seconds(np.array([math.radians(degrees)]))[0]) + aim_seconds(1)


@pytest.mark.parametrize(
    ("what", "takes", "least", "most", "source"),
    [
        ("a light vein of 2 cm", stroke(20, LIGHT), 0.9, 1.1, COMMON),
        ("a slash of 10 cm", stroke(100, DEEP), 2.0, 3.0, COMMON),
        ("a small turn, and aim", turn_and_aim(15), 3.0, 5.0, COMMON),
        ("half a turn, and aim", turn_and_aim(180), 3.0, 5.0, COMMON),
    ],
)
def test_a_steady_hand_takes(what, takes, least, most, source):
    assert least <= takes <= most, (what, source)


def veins(count, **bench):
    """So many light veins of 2 cm, side by side."""
    lines = [
        [[x, y], [x, y + 20]] for x in np.linspace(-50, 50, count // 4) for y in (-48, -22, 4, 30)
    ]
    return work_of(layout([cut(line, "vein", depth=2) for line in lines], **bench))


@pytest.mark.parametrize(
    ("skill", "says", "source"),
    [("steady", "10–12 min", COMMON), ("new", "15–24 min", COMMON), ("quick", "6–8 min", COMMON)],
)
def test_two_hundred_light_cuts_take(skill, says, source):
    made = veins(200, skill=skill)
    assert time_words(made.effort.seconds, skill) == says, source


def test_the_hand_makes_a_plan_slower_or_quicker_and_no_other():
    """Common practice, no source."""
    new, steady, quick = (veins(40, skill=skill) for skill in ("new", "steady", "quick"))
    assert new.order == steady.order == quick.order
    for made in (new, steady, quick):
        least, most = between(made.effort.seconds, made.bench.skill)
        assert least < made.effort.seconds < most
        assert sum(run.seconds for run in made.runs) <= made.effort.seconds + 1e-6
    assert new.effort.seconds > steady.effort.seconds > quick.effort.seconds


def test_two_hundred_light_cuts_want_a_cold_loaf():
    """Common practice, no source."""
    warm, cold = veins(200), veins(200, temperature_c=5.0)
    assert warm.effort.seconds > warm.allowed_s
    assert cold.effort.seconds < cold.allowed_s


@pytest.mark.parametrize(
    ("cuts", "bench", "boards", "says", "source"),
    [
        (rays(1), {"loaves": 12}, (12,), "One board", COMMON),
        (rays(4), {"loaves": 40, "temperature_c": 5.0}, (20, 20), "from the cold", COMMON),
        (rays(8), {"loaves": 13}, (5, 4, 4), "boards of up to 5 loaves: bring the next", COMMON),
        (rays(24), {"loaves": 3, "skill": "new"}, (1,) * 3, "One loaf at a time", COMMON),
        (rays(24), {"loaves": 3, "temperature_c": 40.0}, (1,) * 3, "may spread before", COMMON),
    ],
)
def test_equal_loaves_go_on_boards_that_are_cut_in_time(cuts, bench, boards, says, source):
    made = work_of(layout(cuts, **bench))
    found = batch_of(made)
    assert found.boards == boards and found.loaves == bench["loaves"], source
    assert says in batch_words(found)[1]
    slowest = found.boards[0] * found.loaf_s[1]
    change = found.loaf_s[1] - between(made.effort.seconds, made.bench.skill)[1]
    assert found.in_time == (slowest - change <= made.allowed_s)


def test_a_batch_tells_the_time_for_all_and_two_people_halve_it():
    """Common practice, no source."""
    found = batch_of(work_of(layout(rays(8), loaves=12)))
    assert np.divide(found.all_s, found.shared_s).tolist() == [2, 2]
    assert found.all_s[0] == pytest.approx(12 * found.loaf_s[0])
    assert batch_words(found)[0] == "12 loaves take 9–11 min, two people 4½–5½ min."


def test_a_single_loaf_is_no_batch_and_a_bench_has_at_least_one():
    assert batch_of(work_of(layout(rays(8)))) is None
    text = "loaf round width 220mm height 95mm\nbench loaves 12 skill quick\nslash 120mm depth 8mm"
    made = make(text)
    assert (made.layout.bench.loaves, made.layout.bench.skill) == (12, "quick")
    assert make(text, loaves=3).layout.bench.loaves == 3
    for count in (0, 10_000):
        with pytest.raises(ScorecraftError, match="in a row"):
            make(text, loaves=count)


@pytest.mark.parametrize(
    ("pattern", "opens", "source"),
    [
        ("slash 120mm depth 10mm blade 90deg", "25–35 mm", COMMON),
        ("slash 120mm depth 6mm blade 90deg", "9–15 mm", COMMON),
    ],
)
def test_an_opening_is_a_range_for_people_and_has_its_middle_for_machines(pattern, opens, source):
    made = make(f"loaf round width 220mm height 95mm\n{pattern}\n")
    assert opens in report(made), source
    (told,) = as_data(made)["opening"]
    least, most = told["widest_range_mm"]
    assert least < told["widest_mm"] < most
    room = as_data(made)["room"]
    assert room["taken_range"][0] < room["taken"] < room["taken_range"][1]


def test_the_report_says_upright_as_the_guide_does():
    said = report(make("loaf round width 220mm height 95mm\nslash 120mm depth 8mm blade 90deg\n"))
    assert "upright" in said and "90°" not in said
