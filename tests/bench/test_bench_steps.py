"""Steps and rows as data: letters of rows, turns between copies, what is saved."""

import math
from dataclasses import replace

import pytest
from support.bench_layouts import layout

from scorecraft.bench import work_of
from scorecraft.bench.order import Route
from scorecraft.bench.steps import Effort, Run, Step


def row(turns_deg, copies=True):
    """A row of steps of 10 s with these turns to each, the first from where the table stood."""
    steps = [
        Step(k, "all", (), frozenset(), (), 0.0, math.radians(turn), 0.0, 10.0)
        for k, turn in enumerate(turns_deg, start=1)
    ]
    return Run(1, tuple(steps), copies)


@pytest.mark.parametrize(
    ("number", "letter"),
    [(1, "A"), (26, "Z"), (27, "AA"), (52, "AZ"), (53, "BA"), (702, "ZZ"), (703, "AAA")],
)
def test_rows_have_letters_as_columns_of_a_table_do(number, letter):
    assert replace(row([0]), number=number).letter == letter


def test_the_turn_between_copies_is_told_where_it_is_one_and_the_same():
    even = row([10, 45.04, 44.98, 44.98])
    assert math.degrees(even.turn_each_rad) == pytest.approx(45)
    assert even.times == 4 and even.seconds == 40 and even.first is even.steps[0]
    assert row([10, 45, 45.2]).turn_each_rad is None
    assert row([10]).turn_each_rad is None
    other = row([10, 45, 45], copies=False)
    assert other.turn_each_rad is None and other.times == 1


def test_what_an_order_saves_and_may_still_be_off():
    work = replace(
        work_of(layout([])),
        effort=Effort(70.0, 0.0), in_file_order=Effort(100.0, 0.0),
        route=Route((), 12.0, lambda: 7.0), times=1.5,
    )  # fmt: skip
    assert (work.saved_s, work.gap_s) == (30, 7.5)
