"""Depths for wished openings: what is found, solved again, opens as wished."""

from types import SimpleNamespace

import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.opening import depth as room
from scorecraft.opening import solve
from scorecraft.opening.depth import depths_for, to_hand

AREA = np.pi * 150**2
GROWTH = {"strain": (0.1, 0.1, 0.0), "area_mm2": AREA, "panel_mm": 3.0}
SLASH = np.array([[-60.0, 0], [60, 0]])
STACK = [SLASH + np.array([0, 12.0 * k]) for k in range(4)]
NONE = np.nan


def opened(lines, depth):
    return solve(lines, depth, **GROWTH).widest_mm


@pytest.mark.parametrize("wish", [0.5, 3.0, 8.0, 20.0, 30.0])
def test_one_cut_opens_as_wished(wish):
    found = depths_for([SLASH], [wish], [0.0], **GROWTH)
    assert found.reachable.all()
    assert opened([SLASH], found.depth_mm)[0] == pytest.approx(wish, rel=6e-3)
    assert found.reached_mm[0] == pytest.approx(wish, rel=6e-3)
    assert found.most_mm[0] == pytest.approx(opened([SLASH], [12.0])[0], rel=5e-3)


def test_wider_wish_cuts_deeper():
    depths = [depths_for([SLASH], [wish], [0.0], **GROWTH).depth_mm[0] for wish in (2, 5, 12, 25)]
    assert (np.diff(depths) > 0).all()


def test_wishes_that_shield_each_other_are_met_together():
    found = depths_for(STACK, [6.0] * 4, [0.0] * 4, **GROWTH)
    assert found.reachable.all()
    np.testing.assert_allclose(opened(STACK, found.depth_mm), 6.0, rtol=6e-3)
    alone = depths_for([SLASH], [6.0], [0.0], **GROWTH)
    assert found.depth_mm.min() > alone.depth_mm[0]


def test_lines_without_a_wish_keep_their_depth():
    found = depths_for(STACK, [15.0, NONE, 5.0, NONE], [1.0, 4.0, 0.0, 2.5], **GROWTH)
    np.testing.assert_array_equal(found.depth_mm[[1, 3]], [4.0, 2.5])
    again = opened(STACK, found.depth_mm)
    np.testing.assert_allclose(again, found.reached_mm, rtol=1e-3)
    np.testing.assert_allclose(again[[0, 2]], [15.0, 5.0], rtol=6e-3)


def test_wish_out_of_reach_gives_the_whole_skin():
    found = depths_for([SLASH], [60.0], [0.0], **GROWTH)
    assert not found.reachable[0]
    assert found.depth_mm[0] == 12.0
    assert found.reached_mm[0] == found.most_mm[0] < 60


def test_no_wish_goes_deeper_than_it_may():
    found = depths_for([SLASH], [20.0], [0.0], deepest_mm=3.0, **GROWTH)
    assert found.depth_mm[0] == 3.0 and not found.reachable[0]


def test_a_wish_that_takes_a_cut_into_the_soft_inside():
    """Under the skin a cut goes on opening, up to twice the skin's depth."""
    soft = {**GROWTH, "skin_mm": 4.0, "inside": 0.05}
    found = depths_for([SLASH], [22.0], [0.0], **soft)
    assert found.reachable[0]
    assert 4.5 < found.depth_mm[0] < 8.0
    again = solve([SLASH], found.depth_mm, **{"panel_mm": 2.0, **soft}).widest_mm
    assert again == pytest.approx(22.0, rel=0.01)
    far = depths_for([SLASH], [60.0], [0.0], **soft)
    assert not far.reachable[0]
    assert far.depth_mm[0] == 8.0


def test_wishes_that_together_are_out_of_reach():
    """The strip between two cuts has only so much to give: the inner cuts stay behind."""
    found = depths_for(STACK, [14.0] * 4, [0.0] * 4, **GROWTH)
    assert found.reachable.tolist() == [True, False, False, True]
    np.testing.assert_allclose(found.reached_mm[[0, 3]], 14.0, rtol=6e-3)
    np.testing.assert_array_equal(found.depth_mm[[1, 2]], 12.0)


@pytest.mark.parametrize("seed", range(5))
def test_any_set_of_wishes_comes_to_an_end(seed):
    random = np.random.default_rng(seed)
    lines, count = [], 5
    for angle in random.uniform(0, np.pi, count):
        step = random.uniform(10, 60) * np.array([np.cos(angle), np.sin(angle)])
        middle = random.uniform(-60, 60, 2)
        lines.append(np.array([middle - step, middle + step]))
    wishes = random.uniform(1, 25, count)
    found = depths_for(lines, wishes, np.zeros(count), **GROWTH)
    np.testing.assert_allclose(opened(lines, found.depth_mm), found.reached_mm, rtol=1e-3)
    met = found.reachable & (found.depth_mm > 0.1)
    np.testing.assert_allclose(found.reached_mm[met], wishes[met], rtol=6e-3)
    assert (found.reached_mm[~found.reachable] < wishes[~found.reachable]).all()
    np.testing.assert_array_equal(found.depth_mm[~found.reachable], 12.0)


def test_copies_of_a_figure_get_the_same_depth():
    lines = []
    for k in range(6):
        c, s = np.cos(k * np.pi / 3), np.sin(k * np.pi / 3)
        lines += [line @ np.array([[c, s], [-s, c]]) for line in (
            np.array([[0.0, 25], [0, 80]]), np.array([[0.0, 50], [12, 70]]))]  # fmt: skip
    found = depths_for(lines, [9.0, NONE] * 6, [0.0, 3.0] * 6, **GROWTH)
    np.testing.assert_allclose(found.depth_mm[::2], found.depth_mm[0], rtol=1e-4)
    np.testing.assert_allclose(opened(lines, found.depth_mm)[::2], 9.0, rtol=6e-3)


def test_nothing_wished_nothing_changed():
    found = depths_for([SLASH], [NONE], [5.0], **GROWTH)
    assert found.depth_mm[0] == 5.0
    assert found.reached_mm[0] == pytest.approx(opened([SLASH], [5.0])[0])


def test_slopes_are_those_of_small_changes(monkeypatch):
    """Newton's slopes against differences of two solves."""
    seen = {}
    whole = room._slopes

    def spy(search, opening, solver, depth):
        seen.setdefault("slopes", whole(search, opening, solver, depth))
        return whole(search, opening, solver, depth)

    monkeypatch.setattr(room, "_slopes", spy)
    depths_for(STACK, [6.0] * 4, [0.0] * 4, **GROWTH)
    start = np.full(4, 4.0)
    before = np.array([solve(STACK, start, **GROWTH).mouth_mm.reshape(4, -1).max(axis=1)])
    for k in range(4):
        after = solve(STACK, start + 1e-4 * np.eye(4)[k], **GROWTH).mouth_mm
        slope = np.log(after.reshape(4, -1).max(axis=1) / before[0]) / 1e-4
        np.testing.assert_allclose(seen["slopes"][:, k], slope, rtol=2e-2, atol=2e-3)


def test_slopes_are_carried_on_by_the_least_change_that_tells_the_last_step():
    """Broyden's: right along the step, and as before square to it."""
    slopes, step = np.array([[0.3, 0.1], [-0.2, 0.4]]), np.array([2.0, 1.0])
    change, square = np.array([0.5, 0.9]), np.array([-1.0, 2.0])
    carried = room._carried_on(slopes, step, change)
    np.testing.assert_allclose(carried @ step, change)
    np.testing.assert_allclose(carried @ square, slopes @ square)


def test_slopes_are_worked_out_anew_where_a_search_is_stuck_and_they_told_too_little():
    """Stuck is not halved in two rounds, after the third; astray by more than three tenths."""
    told = np.array([1.0, -1.0])
    assert not room._astray(told, np.array([1.2, -1.3]))
    assert room._astray(told, np.array([1.4, -1.3])) and room._astray(told, np.array([0.6, -0.7]))

    def tried(*missing):
        return [(each, told, told) for each in missing]

    assert room._stuck(tried(9.0, 8.0, 5.0, 4.1)) and not room._stuck(tried(9.0, 8.0, 5.0, 3.9))
    assert not room._stuck(tried(8.0, 8.0, 8.0))


@pytest.mark.parametrize(
    ("slopes", "depth", "missing", "step"),
    [
        ([[0.1, 0.0], [0.0, 0.2]], [4, 4], [0.1, -0.1], [1, -0.5]),
        ([[0.1, -0.02], [-0.02, 0.1]], [4, 4], [0.1, 0.1], [1.25, 1.25]),
        ([[0.1, 0.0], [0.0, 0.001]], [4, 4], [0.1, 0.1], [1, 5]),  # at least 0.2 a skin
        ([[0.1, 0.2], [0.2, 0.1]], [4, 4], [0.1, 0.02], [1, 0.6]),  # jointly -0.2 and 0.6
        ([[0.1, 0.2], [0.2, 0.1]], [4, 4], [0.1, 0.01], [1, 0.1]),  # 0.63 is too far ahead
        ([[0.1, -0.02], [-0.02, 0.1]], [4, 12], [0.1, 0.1], [1, 1]),  # as deep as may be
        ([[0.1, -0.02], [-0.02, 0.1]], [4, 12], [0.1, -0.1], [0.0008 / 0.00096, -0.0008 / 0.00096]),
        ([[0.1, -0.02], [-0.02, 0.1]], [4, 0.1], [0.1, -0.1], [1, -1]),
    ],
)
def test_a_step_is_newton_s_where_a_line_alone_would_go_that_way_too(slopes, depth, missing, step):
    search = SimpleNamespace(deepest_mm=12.0, skin_mm=10.0)
    given = (np.array(each, dtype=float) for each in (slopes, depth, missing))
    np.testing.assert_allclose(room._step(search, *given), step)


def test_a_search_that_does_not_settle_gives_what_came_nearest(monkeypatch):
    steps = iter([0.5, 0.5, -1.0] + [0.0] * 200)
    monkeypatch.setattr(room, "_step", lambda *args: np.full(1, next(steps)))
    monkeypatch.setattr(room, "COARSER", 1.0)
    found = depths_for([SLASH], [9.0], [0.0], **GROWTH)
    assert not found.settled and found.reachable.all()
    assert opened([SLASH], found.depth_mm)[0] == pytest.approx(found.reached_mm[0], rel=1e-3)
    start = opened([SLASH], [4.0])[0]
    assert start < found.reached_mm[0] < 9.0


def counted(monkeypatch):
    """The panels of every solve."""
    sizes = []
    whole = room._opening

    def spy(search, *others):
        sizes.append(len(search.equations.panels))
        return whole(search, *others)

    monkeypatch.setattr(room, "_opening", spy)
    return sizes


def test_a_search_ends_after_the_work_allowed(monkeypatch):
    """Work is counted in panels and solves, never by a clock."""
    sizes = counted(monkeypatch)
    monkeypatch.setattr(room, "_step", lambda search, slopes, *others: np.zeros(len(slopes)))
    monkeypatch.setattr(room, "OPENING_WISH_WORK", 4.0)
    lines = [SLASH + np.array([0, 5.0 * k]) for k in range(4)]
    found = depths_for(lines, [40.0] * 2 + [1.0] * 2, [0.0] * 4, **GROWTH | {"panel_mm": 1.5})
    assert not found.settled
    assert 0.8 * 4 < sum(sizes) / 1000 < 1.2 * 4


def test_more_wishes_than_are_searched_are_refused_before_any_is_solved(monkeypatch):
    sizes = counted(monkeypatch)
    monkeypatch.setattr(room, "OPENING_WISH_MOST", 3e4)
    lines = [SLASH + np.array([0.1 * k, 5.0 * k]) for k in range(30)]
    with pytest.raises(UsageError, match="too many cuts ask for an opening"):
        depths_for(lines, [3.0] * 30, [0.0] * 30, **GROWTH)
    assert not sizes


@pytest.mark.parametrize("wishes", [[0.0], [-2.0], [np.inf], [1.0, 2.0]])
def test_wishes_that_make_no_sense_are_refused(wishes):
    with pytest.raises(UsageError):
        depths_for([SLASH], wishes, [4.0], **GROWTH)


def test_depths_for_a_hand():
    np.testing.assert_array_equal(to_hand([0.1, 3.26, 3.2, 12.0]), [0.5, 3.5, 3.0, 12.0])
