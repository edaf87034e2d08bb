"""How a stroke is told: its depth where it starts, in its middle and where it ends."""

import pytest
from support.bench_layouts import cut, layout

from scorecraft.bench import work_of
from scorecraft.bench.telling import ends_words, handlings


@pytest.mark.parametrize(
    "line", [[[0, 50], [0, -50]], [[0, -50], [0, 50]]], ids=["as drawn", "against"]
)
def test_a_deep_stroke_starts_deeper_than_it_ends_whichever_way_it_is_drawn(line):
    made = layout([cut(line, depth=10)], order="file")
    (run,) = work_of(made).runs
    (handling,) = handlings(made, run, {0: 1})
    assert handling.depths_mm == (6.0, 10.0, 5.0)
    assert ends_words(handling) == "start 6 mm, finish 5 mm deep"


def test_an_even_stroke_says_nothing_of_its_ends():
    made = layout([cut([[0, 50], [0, -50]], depth=3)])
    (run,) = work_of(made).runs
    (handling,) = handlings(made, run, {0: 1})
    assert ends_words(handling) == ""
