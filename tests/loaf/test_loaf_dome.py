import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.domes import dome_area, length_on_dough

from scorecraft.errors import UsageError
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.outline import Outline, traced_outline

ROUND = make_loaf("round", 220, None, 95)
LONG = make_loaf("long", 120, 320, 70)

points = st.lists(st.tuples(st.floats(-200, 200), st.floats(-200, 200)), min_size=1, max_size=20)


@settings(max_examples=40)
@given(points, st.sampled_from(["round", "oval", "long", "square"]))
def test_there_and_back(sheet, shape):
    loaf = make_loaf(shape, 180, 180 if shape == "round" else 240, 80)
    back = loaf.plan_to_sheet(loaf.sheet_to_plan(sheet))
    assert np.abs(back - np.array(sheet)).max() < 0.01


def test_beyond_the_rim_a_sheet_mm_is_a_plan_mm():
    reach = float(LONG.reach(0.3))
    ray = np.array([math.cos(0.3), math.sin(0.3)])
    plan = LONG.sheet_to_plan([(reach + 10) * ray])
    assert plan[0] == pytest.approx((float(LONG.outline.radius(0.3)) + 10) * ray, abs=1e-6)
    assert LONG.height_at(plan)[0] == 0
    assert LONG.normal(plan)[0] == pytest.approx([0, 0, 1])


def test_crown():
    assert ROUND.sheet_to_plan([[0, 0]])[0] == pytest.approx([0, 0])
    assert ROUND.height_at([[0, 0]])[0] == 95
    assert ROUND.normal([[0, 0]])[0] == pytest.approx([0, 0, 1])
    along, across = ROUND.stretch([[0.0, 0.0]])
    assert (along[0], across[0]) == pytest.approx((1, 1), abs=1e-5)


@pytest.mark.parametrize("shape", ["round", "oval", "long", "square"])
@pytest.mark.parametrize("profile", [None, (1.0, 1.0), (4.0, 3.0), (1.5, 1.0)])
def test_everything_is_finite_up_to_the_rim(shape, profile):
    loaf = make_loaf(shape, 200, 200 if shape == "round" else 260, 90, profile)
    plan = np.vstack([loaf.outline.points(80), loaf.outline.points(80) * 0.5, [[0, 0]]])
    assert np.isfinite(loaf.normal(plan)).all()
    assert np.linalg.norm(loaf.normal(plan), axis=1) == pytest.approx(np.ones(len(plan)))
    assert np.isfinite(loaf.plan_to_sheet(plan)).all()
    assert dome_area(loaf) > loaf.plan_area_mm2


def test_dome_meets_the_bench_upright():
    assert LONG.normal(LONG.outline.points(40))[:, 2] == pytest.approx(np.zeros(40), abs=1e-9)


def test_normals_are_square_to_the_surface():
    rng = np.random.default_rng(3)
    plan = LONG.outline.points(50) * rng.uniform(0.1, 0.95, (50, 1))
    for step in ([1e-4, 0], [0, 1e-4]):
        side = LONG.surface(plan + step) - LONG.surface(plan - np.array(step))
        side /= np.linalg.norm(side, axis=1, keepdims=True)
        assert np.abs((side * LONG.normal(plan)).sum(axis=1)).max() < 1e-5


def test_circle_about_the_crown_has_the_length_of_its_plan_circle():
    turn = np.linspace(0, math.tau, 721)
    ring = 90 * np.column_stack([np.cos(turn), np.sin(turn)])
    radius = float(np.linalg.norm(ROUND.sheet_to_plan(ring[:1])))
    assert length_on_dough(ROUND, ring) == pytest.approx(math.tau * radius, abs=0.01)
    _, across = ROUND.stretch(ring[:1])
    assert across[0] == pytest.approx(radius / 90, abs=1e-4)


def test_many_lengths_in_one_pass_are_the_single_ones():
    rng = np.random.default_rng(0)
    lines = [rng.uniform(-100, 100, (n, 2)) for n in (2, 5, 3, 2)]
    assert ROUND.lengths_on_dough(lines) == pytest.approx(
        [length_on_dough(ROUND, line) for line in lines]
    )
    assert ROUND.lengths_on_dough([]).shape == (0,)


def test_patches_share_out_the_skin():
    sheet, areas = LONG.patches(90, 16)
    assert areas.sum() == pytest.approx(dome_area(LONG), rel=1e-3)
    assert np.abs(LONG.plan_to_sheet(LONG.sheet_to_plan(sheet)) - sheet).max() < 0.01


def test_sheet_rim_is_the_reach():
    rim = LONG.sheet_rim(50)
    reach = LONG.reach(np.arctan2(rim[:, 1], rim[:, 0]))
    assert np.hypot(*rim.T) == pytest.approx(reach)


def test_traced_loaf_is_like_the_drawn_one():
    drawn = make_loaf("oval", 160, 240, 80)
    traced = Loaf(traced_outline(drawn.outline.points(720)), 80.0, drawn.profile)
    sheet = drawn.sheet_rim(60) * 0.7
    assert np.abs(traced.sheet_to_plan(sheet) - drawn.sheet_to_plan(sheet)).max() < 0.02


@pytest.mark.parametrize("width", [0.0, -5.0, math.nan, math.inf, 1e9])
def test_absurd_sizes_are_refused(width):
    with pytest.raises(UsageError, match=r"a width of .* out of range"):
        make_loaf("round", width, None, 90)
    with pytest.raises(UsageError, match=r"a height of .* out of range"):
        make_loaf("round", 200, None, width)
    with pytest.raises(UsageError, match=r"a length of .* out of range"):
        make_loaf("oval", 200, width, 90)


def test_unknown_shapes_and_profiles_are_refused():
    with pytest.raises(UsageError, match="cushion"):
        make_loaf("cushion", 200, None, 90)
    with pytest.raises(UsageError, match="profile"):
        make_loaf("round", 200, None, 90, (0.5, 2.0))
    with pytest.raises(UsageError, match="profile"):
        Loaf(Outline("round", 100, 100), 90, (2.0, math.nan))
