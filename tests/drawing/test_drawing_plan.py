"""The plan: against the hemisphere, whose plan radius is R sin(s / R) (Snyder 1987, ch. 20, 25)."""

import numpy as np
import pytest
from support.drawing_layouts import cut, make_layout, turned

from scorecraft.curves import length
from scorecraft.drawing.plan import (
    along,
    cut_plans,
    mark_plans,
    on_paper,
    plan_lines,
    rim_plan,
)
from scorecraft.loaf.dome import make_loaf

R = 100.0
HEMISPHERE = make_loaf("round", 2 * R, None, R, profile=(2.0, 2.0))


def ortho(points):
    s = np.hypot(*points.T)[:, None]
    return points / s * R * np.sin(s / R)


def test_a_straight_sheet_line_bends_over_the_hemisphere():
    (plan,) = plan_lines(HEMISPHERE, [np.array([[-60.0, 50.0], [60.0, 50.0]])])
    t = np.linspace(-60, 60, 241)
    expected = ortho(np.column_stack([t, np.full_like(t, 50.0)]))
    gaps = np.hypot(*(expected[:, None] - plan[None]).transpose(2, 0, 1)).min(axis=1)
    assert len(plan) > 10
    assert gaps.max() < 12, "points lie along the whole line"
    ends = np.array([[-60.0, 50.0], [60.0, 50.0]])
    assert plan[[0, -1]] == pytest.approx(ortho(ends), abs=0.02)
    on_curve = np.interp(plan[:, 0], expected[:, 0], expected[:, 1])
    assert np.abs(on_curve - plan[:, 1]).max() < 0.02


def test_order_and_direction_of_cuts_are_kept():
    layout = make_layout([cut([[0, 50], [0, 10]]), cut([[5, 0], [40, 0]])], HEMISPHERE)
    first, second = cut_plans(layout)
    assert first[0, 1] > first[-1, 1]
    assert second[-1, 0] > second[0, 0]
    assert plan_lines(HEMISPHERE, []) == []


def test_string_marks_end_at_the_rim():
    layout = make_layout([], HEMISPHERE, marks=[turned([[0, 0], [0, 300]], 30)])
    (mark,) = mark_plans(layout)
    assert np.hypot(*mark.T).max() == pytest.approx(R, abs=0.01)
    assert mark_plans(make_layout([], HEMISPHERE)) == []


@pytest.mark.parametrize("shape", ["oval", "long", "square"])
def test_the_rim_keeps_its_size(shape):
    rim = rim_plan(make_loaf(shape, 130.0, 300.0, 80.0))
    assert rim.max(axis=0) - rim.min(axis=0) == pytest.approx((130, 300), abs=0.02)


def test_paper_has_y_down_and_the_crown_at_the_centre():
    laid = on_paper(np.array([[1.0, 2.0]]), (100.0, 50.0), 2.0)
    assert laid.tolist() == [[102.0, 46.0]]


def test_along_finds_point_and_direction():
    corner = np.array([[0.0, 0.0], [10.0, 0.0], [10.0, 10.0]])
    assert length(corner) == 20
    point, angle = along(corner, 0.75)
    assert point.tolist() == [10, 5]
    assert angle == pytest.approx(np.pi / 2)
    assert along(corner, 1.0)[0].tolist() == [10, 10]
    assert along(corner, 0.0)[0].tolist() == [0, 0]
