"""Loaves in a row: how many go on a board, and how long a board and all of them take."""

from dataclasses import replace

import pytest
from support.bench_layouts import layout, rays

from scorecraft.bench import work_of
from scorecraft.bench.batch import Batch, batch_of
from scorecraft.bench.steps import Effort
from scorecraft.practice import COLD_C


def batch(loaves, allowed_s, skill="steady", temperature_c=20.0):
    """Loaves of 80 s each for the hand, the change of 10 s of a steady one not counted."""
    made = layout(rays(1), loaves=loaves, skill=skill, temperature_c=temperature_c)
    return batch_of(replace(work_of(made), effort=Effort(80.0, 0.0), allowed_s=allowed_s))


def test_one_loaf_is_no_batch():
    assert batch(1, 300.0) is None


@pytest.mark.parametrize(
    ("loaves", "allowed_s", "boards", "in_time"),
    [
        (7, 290.0, (3, 2, 2), True),  # 3 x 99 s, without the last change of 11 s
        (7, 280.0, (2, 2, 2, 1), True),
        (6, 290.0, (3, 3), True),
        (2, 90.0, (1, 1), True),
        (2, 80.0, (1, 1), False),
        (2, 1200.0, (2,), True),
    ],
)
def test_loaves_are_shared_out_evenly_over_boards_that_keep(loaves, allowed_s, boards, in_time):
    made = batch(loaves, allowed_s)
    assert (made.boards, made.in_time) == (boards, in_time)
    assert made.loaf_s == pytest.approx((81, 99))


def test_a_new_hand_changes_loaves_as_slowly_as_it_cuts():
    """Its usual time is 1.8 times a steady one's, 1.4 to 2.2 times: 98 s a loaf with its change."""
    assert batch(2, 300.0, "new").loaf_s == pytest.approx((98 * 1.4 / 1.8, 98 * 2.2 / 1.8))


def test_loaves_are_cold_up_to_a_limit():
    assert batch(2, 300.0, temperature_c=COLD_C.value).cold
    assert not batch(2, 300.0, temperature_c=COLD_C.value + 0.5).cold


def test_the_times_of_boards_and_batch():
    made = Batch((3, 2, 2), (80.0, 100.0), True, True)
    assert made.loaves == 7
    assert (made.board_s, made.all_s, made.shared_s) == ((240, 300), (560, 700), (280, 350))
