"""The bar beside a slanted cut stands on the side of the handle."""

import numpy as np
import pytest
import shapely
from support.drawing_layouts import cut, make_layout

from scorecraft.drawing.lean import BAR_MM, bar, lean_bars
from scorecraft.drawing.plan import on_paper
from scorecraft.opening.lip import rising_side

UP = np.array([[0.0, 40.0], [0.0, 0.0]])
"""A stroke away from the baker: on paper y runs down."""


@pytest.mark.parametrize("side", [1, -1])
def test_left_of_a_stroke_away_from_the_baker_is_left_on_paper(side):
    foot, end = bar(UP, side)
    assert foot == pytest.approx([0, 20])
    assert end == pytest.approx([-side * BAR_MM, 20])


def test_a_bar_keeps_off_what_it_may_not_cross():
    foot, _ = bar(UP, 1, shapely.Point(-2.0, 20.0).buffer(1))
    assert foot[1] != pytest.approx(20)


def test_only_slanted_cuts_have_one_and_it_lies_away_from_the_lip_that_rises():
    lines = [[[-30, -60], [-30, 60]], [[30, -60], [30, 60]], [[0, 60], [0, 20]]]
    layout = make_layout([cut(line, blade=b) for line, b in zip(lines, (40, 40, 90), strict=True)])
    drawn = lean_bars(layout, [on_paper(each.line, (0, 0)) for each in layout.cuts])
    assert [each.data["cut"] for each in drawn] == ["0", "1"]
    ends = [shape.lines[0][1, 0] for shape in drawn]
    assert ends == pytest.approx([-30 - BAR_MM, 30 + BAR_MM])
    assert [rising_side(each) for each in layout.cuts] == [-1, 1, 0]
