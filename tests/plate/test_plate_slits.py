import numpy as np
import pytest
from support.plate_layouts import circle, cut, layout

from scorecraft.errors import UsageError
from scorecraft.plate.slits import chosen, slits, slot_width


def test_slots_lie_on_the_plan():
    made = layout(cut([[0, -60], [0, 60]]))
    (slit,) = slits(made, slot_mm=3.0)
    ends = made.loaf.sheet_to_plan(np.array([[0.0, -60.0], [0.0, 60.0]]))
    assert np.asarray(slit.line.coords)[[0, -1]] == pytest.approx(ends, abs=1e-6)
    assert slit.line.length < 120


def test_deeper_cuts_have_wider_slots():
    widths = [slot_width(depth, 3.0) for depth in (1.0, 3.0, 5.0, 8.0, 12.0)]
    assert widths[0] == widths[1] == 3.0
    assert 3.0 < widths[2] < widths[3] == widths[4] == pytest.approx(4.2)


def test_cuts_are_chosen_by_figure_part_both_or_kind():
    cuts = [
        cut([[0, 0], [0, 9]], "leaf", "midrib", kind="expansion"),
        cut([[0, 0], [0, 9]], "leaf", "vein"),
        cut([[0, 0], [0, 9]], "star", "ray"),
    ]
    assert chosen(cuts, []) == [0, 1, 2]
    assert chosen(cuts, ["leaf"]) == [0, 1]
    assert chosen(cuts, ["vein"]) == [1]
    assert chosen(cuts, ["star ray", "leaf vein"]) == [1, 2]
    assert chosen(cuts, ["expansion"]) == [0]


def test_an_unknown_name_is_refused_with_the_nearest():
    with pytest.raises(UsageError) as error:
        slits(layout(circle(40)), slot_mm=3.0, only=["rnig"])
    assert '"ring"' in error.value.hint


def test_what_misses_the_loaf_is_not_on_the_plate():
    made = layout(cut([[0, 0], [0, 200]]))
    (slit,) = slits(made, slot_mm=3.0)
    assert np.asarray(slit.line.coords)[:, 1].max() == pytest.approx(100, abs=0.1)


def test_the_deeper_cut_weighs_more_then_the_longer_one():
    deep_short = cut([[0, 0], [0, 9]], depth=6.1)
    long, short = cut([[0, 0], [0, 60]], depth=6.0), cut([[0, 0], [0, 30]], depth=6.0)
    ranks = [each.rank for each in slits(layout(deep_short, long, short), slot_mm=3.0)]
    assert ranks[0] > ranks[1] > ranks[2]
    turned = cut([[0, 0], [60.01, 0]], depth=6.001)
    same = [each.rank for each in slits(layout(long, turned), slot_mm=3.0)]
    assert same[0] == same[1]


def test_names_are_asked_for_even_where_there_are_no_cuts():
    assert chosen([], ["leaf"]) == []
