"""The pace of a hand: usual times and the range they lie in."""

import pytest
from support.bench_layouts import layout, rays, sprigs

from scorecraft.bench import work_of
from scorecraft.bench.pace import between, pace, time_words


def test_a_new_hand_takes_1_8_times_as_long_and_from_1_4_to_2_2():
    assert pace("new") == pytest.approx(1.8)
    assert between(180.0, "new") == pytest.approx((140, 220))
    assert time_words(600.0, "steady") == "9–11 min"


def test_all_times_of_a_plan_are_those_of_the_hand_and_its_order_is_not():
    cuts = [*rays(5), *sprigs(3), *rays(14, first=3, family=9)]
    steady, new = (work_of(layout(cuts, skill=skill)) for skill in ("steady", "new"))

    def times(work):
        steps = list(work.steps)
        return [
            work.effort.seconds, work.in_file_order.seconds, work.gap_s,
            *(step.seconds for step in steps),
            *(pull.seconds for step in steps for pull in step.pulls),
        ]  # fmt: skip

    assert times(new) == pytest.approx([1.8 * each for each in times(steady)])
    assert new.gap_s == pytest.approx(1.8 * steady.gap_s) and steady.gap_s > 0
    assert (new.order, new.allowed_s) == (steady.order, steady.allowed_s)
    assert new.effort.turned_rad == steady.effort.turned_rad
