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


TORUS = make_loaf("ring", 280, None, 45, (2.0, 2.0), hole_mm=100)  # half of one: 95 and 45 mm
BALL = make_loaf("round", 200, None, 100)
LONG_RING = make_loaf("ring", 240, 320, 50, hole_mm=80)
DEGREES = np.array([-85.0, -40.0, -3.0, 20.0, 88.0])  # from the crest, below 0 toward the hole


def test_the_sheet_of_half_a_torus_unrolls_its_section():
    """From the crest an angle w is 45 w on the sheet and 45 sin w on the plan, whatever the way."""
    w = np.radians(DEGREES)
    for theta in (0.3, 2.2, 5.0):
        ray = np.array([math.cos(theta), math.sin(theta)])
        sheet = (50 + 45 * (math.pi / 2 + w))[:, None] * ray
        plan = (95 + 45 * np.sin(w))[:, None] * ray
        assert TORUS.sheet_to_plan(sheet) == pytest.approx(plan, abs=0.01)
        assert TORUS.plan_to_sheet(plan) == pytest.approx(sheet, abs=0.01)
        assert TORUS.share(sheet) == pytest.approx(w / (math.pi / 2), abs=1e-4)
        turned = np.full(5, theta)
        assert TORUS.at_share(turned, w / (math.pi / 2)) == pytest.approx(sheet, abs=1e-3)
        assert TORUS.height_at(plan) == pytest.approx(45 * np.cos(w))
        assert TORUS.surface(plan)[:, 2] == pytest.approx(45 * np.cos(w))
        normal = np.column_stack([np.outer(np.sin(w), ray), np.cos(w)])
        assert TORUS.normal(plan) == pytest.approx(normal, abs=1e-6)
        for point, there in ((20.0, 20.0), (50 + 45 * math.pi + 7, 147.0)):  # hole, and beyond
            assert TORUS.sheet_to_plan([point * ray])[0] == pytest.approx(there * ray, abs=0.01)
            assert TORUS.plan_to_sheet([there * ray])[0] == pytest.approx(point * ray, abs=0.01)


def test_shares_on_half_a_ball_are_angles():
    w = np.radians([10.0, 45.0, 90.0])
    sheet = 100 * w[:, None] * np.array([-0.6, -0.8])
    assert BALL.share(sheet) == pytest.approx(w / (math.pi / 2), abs=1e-4)
    assert BALL.at_share(np.full(3, math.atan2(-0.8, -0.6)), w / (math.pi / 2)) == pytest.approx(
        sheet, abs=1e-3
    )
    assert BALL.sheet_crest([1.0, 2.0]).tolist() == [0.0, 0.0]


def test_normals_on_a_long_ring_are_square_to_its_surface():
    theta, share = np.array([0.3, 0.9, 2.0, 4.4, 5.9]), np.array([-0.7, -0.2, 0.2, 0.5, 0.9])
    plan = LONG_RING.sheet_to_plan(LONG_RING.at_share(theta, share))
    for step in ([1e-4, 0], [0, 1e-4]):
        side = LONG_RING.surface(plan + step) - LONG_RING.surface(plan - np.array(step))
        side /= np.linalg.norm(side, axis=1, keepdims=True)
        assert np.abs((side * LONG_RING.normal(plan)).sum(axis=1)).max() < 1e-5


def test_patches_of_a_part_of_half_a_ball_are_a_zone():
    """A zone's area is 2 pi R times its height (Archimedes); the patches lie within it."""
    inner, outer = 0.25, 0.7
    sheet, areas = BALL.patches(9, 7, inner, outer)
    high = math.cos(inner * math.pi / 2) - math.cos(outer * math.pi / 2)
    assert sheet.shape == (9, 7, 2) and areas.sum() == pytest.approx(math.tau * 100**2 * high)
    share = BALL.share(sheet)
    assert inner < share.min() < inner + 0.03 and outer - 0.03 < share.max() < outer
    assert np.arctan2(*sheet[:, 3, ::-1].T) % math.tau == pytest.approx(
        (np.arange(9) + 0.5) * math.tau / 9
    )


def test_patches_of_a_part_of_a_ring_lie_on_both_sides_of_its_crest():
    """Between two angles from the crest a torus has 2 pi r (R w +- r (cos w0 - cos w))."""
    inner, outer = 0.2, 0.9
    sheet, areas = TORUS.patches(8, 12, inner, outer)
    share = TORUS.share(sheet)
    low, high = inner * math.pi / 2, outer * math.pi / 2
    for sign in (-1, 1):
        side = sign * share > 0
        assert side.sum() == 8 * 12
        assert inner < np.abs(share[side]).min() < np.abs(share[side]).max() < outer
        more = sign * 45 * (math.cos(low) - math.cos(high))
        exact = math.tau * 45 * (95 * (high - low) + more)
        assert areas[side].sum() == pytest.approx(exact, rel=1e-6)


def test_patches_of_a_long_ring_add_up_to_the_area_of_its_facets():
    """Small triangles of the surface over a fine grid in angle and share, summed."""
    theta = np.linspace(0, math.tau, 721)
    share = np.sin(np.linspace(-math.pi / 2, math.pi / 2, 241))
    middle, half = ((LONG_RING.outline.radius(theta) + s * LONG_RING.hole.radius(theta)) / 2
                    for s in (1, -1))  # fmt: skip
    across = middle[:, None] + half[:, None] * share
    places = LONG_RING.surface(
        across[..., None] * np.stack([np.cos(theta), np.sin(theta)], axis=-1)[:, None]
    )
    one, other = places[1:, 1:] - places[:-1, :-1], places[1:, :-1] - places[:-1, 1:]
    area = np.linalg.norm(np.cross(one, other), axis=-1).sum() / 2
    assert LONG_RING.patches(180, 24)[1].sum() == pytest.approx(area, rel=2e-4)


def test_lengths_belong_to_their_own_lines():
    lines = [
        np.array([[-40.0, 0.0], [40.0, 0.0]]),
        np.array([[0.0, 0.0], [0.0, 90.0], [0.0, 60.0]]),
    ]
    assert BALL.lengths_on_dough(lines) == pytest.approx([80, 120], abs=0.01)


def test_the_usual_measures_of_a_loaf_that_is_only_named():
    ring = make_loaf("ring", 200, None, 40)
    assert (ring.length_mm, ring.hole.width_mm) == pytest.approx((200, 68))
    assert make_loaf("oval", 160, 240, 80).profile == (2.3, 2.0)
    assert make_loaf("oval", 160, 240, 80, (3.0, 1.0)).profile == (3.0, 1.0)
    tin = make_loaf("tin", 100, 200, 90)
    assert (tin.held.length_mm, tin.wall_mm, tin.crown_mm) == pytest.approx((200, 72, 18))
    assert make_loaf("tin", 100, 200, 30).wall_mm == pytest.approx(15)
    assert make_loaf("oval", 160, 240, 80).crown_mm == 80


def test_the_least_and_the_greatest_sizes_and_powers_are_taken():
    for size in ((20.0, 8.0), (1500.0, 1500.0)):
        assert make_loaf("round", size[0], None, size[1], (1.0, 12.0)).height_mm == size[1]
    for width, height in ((19.9, 8.0), (20.0, 7.9), (1501.0, 90.0), (200.0, 1501.0)):
        with pytest.raises(UsageError, match="out of range"):
            make_loaf("round", width, None, height)
    for power in (0.99, 12.01):
        with pytest.raises(UsageError, match="profile"):
            make_loaf("round", 200, None, 80, (2.0, power))
    assert make_loaf("ring", 280, None, 50, hole_mm=250).hole.width_mm == 250
    with pytest.raises(UsageError, match="narrower than 15 mm"):
        make_loaf("ring", 280, None, 50, hole_mm=251)
