"""The order of settings: against every order there is, a known best one, and its bound."""

import math
from itertools import pairwise, permutations, product

import numpy as np
import pytest

from scorecraft.bench import order
from scorecraft.bench.beam import beam
from scorecraft.bench.bound import lower_bound
from scorecraft.bench.order import best_route, given_route
from scorecraft.bench.settings import Setting
from scorecraft.bench.steering import TURN_BACK_COST, crossing
from scorecraft.practice import CHANGE_DEPTH_S, NEXT_FIGURE_S, TURN_DEG_PER_S, TURN_TABLE_S

LIGHT, DEEP = (3.0, math.pi / 2), (8.0, math.radians(40))


def setting(angles, extra=(0.0, 0.0), family=0, first=LIGHT, last=LIGHT, spin=0.0):
    return Setting(
        (0,), frozenset([family]), np.radians(angles), np.array(extra), first, last,
        math.radians(spin),
    )  # fmt: skip


def cost_of_turn(from_deg, to_deg, way):
    """Written down from the rules once more, not taken from the code under test."""
    ahead = (way * (to_deg - from_deg)) % 360
    if min(ahead, 360 - ahead) < 1e-4:
        return 0.0
    degrees = min(ahead, TURN_BACK_COST * (360 - ahead))
    return TURN_TABLE_S.value + degrees / TURN_DEG_PER_S.value


def cost_of_row(row, way):
    """Cost of (setting, choice) pairs done one after the other from a table at 0."""
    at, total, before = 0.0, 0.0, None
    for each, choice in row:
        angle = math.degrees(each.choices[choice])
        total += cost_of_turn(at, angle, way) + each.extra[choice]
        if before is not None:
            total += NEXT_FIGURE_S.value * (not before.families & each.families)
            total += CHANGE_DEPTH_S.value * (before.last != each.first)
        at, before = angle + math.degrees(each.spin_rad), each
    return total


def brute_force(passes, way):
    return min(
        cost_of_row(list(zip(sum(orders, ()), choices, strict=True)), way)
        for orders in product(*(permutations(settings) for settings in passes))
        for choices in product((0, 1), repeat=sum(map(len, passes)))
    )


def random_settings(random, count):
    return [
        setting(
            random.uniform(0, 360, 2), (0.0, random.uniform(0, 3)), int(random.integers(0, 2)),
            *([LIGHT, DEEP][int(k)] for k in random.integers(0, 2, 2)),
            spin=float(random.choice([0, 0, 0, 100])),
        )
        for _ in range(count)
    ]  # fmt: skip


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize("sizes", [(4,), (3, 2), (1, 3)])
def test_a_small_order_is_the_best_of_all_there_are(seed, sizes):
    random = np.random.default_rng(seed)
    way = 1 if seed % 2 else -1
    passes = [random_settings(random, size) for size in sizes]
    route = best_route(passes, way)
    assert route.proven
    assert route.cost_s == pytest.approx(brute_force(passes, way), abs=1e-9)
    row = [(p[k], choice) for p, states in zip(passes, route.passes, strict=True)
           for k, choice in states]  # fmt: skip
    assert cost_of_row(row, way) == pytest.approx(route.cost_s, abs=1e-9)


@pytest.mark.parametrize("count", [5, 8, 12, 16, 40])
@pytest.mark.parametrize("way", [1, -1])
def test_a_ring_is_gone_round_once_in_even_turns(count, way):
    """Known best: n - 1 even turns the usual way, whatever order the file has."""
    angles = np.random.default_rng(count).permutation(count) * 360 / count
    ring = [setting((angle, (angle + 180) % 360), (0.0, 50.0)) for angle in angles]
    route = best_route([ring], way)
    best = (count - 1) * (TURN_TABLE_S.value + 360 / count / TURN_DEG_PER_S.value)
    assert route.cost_s == pytest.approx(best)
    gone = np.array([angles[k] for k, _ in route.passes[0]])
    np.testing.assert_allclose((way * np.diff(gone)) % 360, 360 / count)


@pytest.mark.parametrize("seed", range(6))
def test_the_bound_is_below_the_best_and_the_search_above_it(seed, monkeypatch):
    """Settings few enough to prove are searched as if they were many."""
    random = np.random.default_rng(100 + seed)
    passes = [random_settings(random, 9), random_settings(random, 5)]
    best = best_route(passes, 1)
    assert best.proven
    monkeypatch.setattr(order, "EXACT_ORDER_SETTINGS", 2)
    searched = best_route(passes, 1)
    assert searched.bound_s <= best.cost_s + 1e-9
    assert best.cost_s <= searched.cost_s + 1e-9 <= 1.05 * best.cost_s + 1e-9
    assert searched.bound_s >= 0.75 * best.cost_s


@pytest.mark.parametrize("seed", range(20))
def test_the_bound_is_below_every_order_of_any_costs(seed):
    """Costs of all sorts, also such that one setting is the best to come from for many."""
    random = np.random.default_rng(seed)
    count = 6
    between = random.uniform(0, 10, (count, count)) + random.uniform(0, 10, (count, 1)) ** 2
    start = random.uniform(0, 30, count)
    best = min(
        start[order[0]] + sum(between[a, b] for a, b in pairwise(order))
        for order in permutations(range(count))
    )
    bound = lower_bound(start, between, count, best * 1.05)
    assert 0.85 * best <= bound <= best + 1e-9


def test_many_settings_end_near_the_bound():
    random = np.random.default_rng(7)
    many = [setting((angle, angle + 180), (0.0, 9.0)) for angle in random.uniform(0, 360, 60)]
    route = best_route([many], 1)
    assert sorted(k for k, _ in route.passes[0]) == list(range(60))
    assert route.bound_s <= route.cost_s <= 1.05 * route.bound_s


def test_an_order_that_is_given_is_kept():
    ring = [setting((angle, angle + 180), (0.0, 1.0)) for angle in (90, 0, 270, 180)]
    route = given_route([ring], 1)
    assert [k for k, _ in route.passes[0]] == [0, 1, 2, 3]
    best = min(
        cost_of_row(list(zip(ring, choices, strict=True)), 1)
        for choices in product((0, 1), repeat=4)
    )
    assert route.cost_s == pytest.approx(best)


@pytest.mark.parametrize("way", [1, -1])
def test_angles_of_a_given_order_are_the_best_over_all_passes(way):
    random = np.random.default_rng(11)
    passes = [random_settings(random, size) for size in (2, 3, 2)]
    route = given_route(passes, way)
    row = [each for settings in passes for each in settings]
    best = min(
        cost_of_row(list(zip(row, choices, strict=True)), way)
        for choices in product((0, 1), repeat=7)
    )
    assert route.cost_s == pytest.approx(best)
    chosen = [choice for states in route.passes for _, choice in states]
    assert cost_of_row(list(zip(row, chosen, strict=True)), way) == pytest.approx(best)
    assert [[k for k, _ in states] for states in route.passes] == [[0, 1], [0, 1, 2], [0, 1]]


def test_figures_of_a_kind_are_finished_together():
    """Going back and forth between two kinds of figures costs looks at the card."""
    mixed = [setting((angle, angle), family=k % 2) for k, angle in enumerate(range(0, 120, 20))]
    kinds = [mixed[k].families for k, _ in best_route([mixed], 1).passes[0]]
    assert sum(a != b for a, b in pairwise(kinds)) == 1


def ring(count, family=0, care=0.0, handling=LIGHT):
    """Settings evenly about the crown, in any order, best at their own angle."""
    angles = np.random.default_rng(count + family).permutation(count) * 360 / count
    return [
        setting((angle, (angle + 180) % 360), (care, care + 50.0), family, handling, handling)
        for angle in angles
    ]


@pytest.mark.parametrize("way", [1, -1])
def test_sweeps_alone_go_round_once_for_each_kind_of_figure(way, monkeypatch):
    """Two rings in one pass: round with the first, one look, and on from there with the other."""
    monkeypatch.setattr(order, "beam", lambda start, between, count: list(range(count)))
    route = best_route([[*ring(16), *ring(16, family=1)]], way)
    turn = TURN_TABLE_S.value + 22.5 / TURN_DEG_PER_S.value
    assert route.cost_s == pytest.approx(30 * turn + NEXT_FIGURE_S.value)


@pytest.mark.parametrize("way", [1, -1])
def test_the_bound_of_rings_is_what_their_least_turns_come_to(way):
    """A single ring is proven; of a second pass the relaxed problem goes round without end."""
    turn = TURN_TABLE_S.value + 22.5 / TURN_DEG_PER_S.value
    once = best_route([ring(16)], way)
    assert once.proven and once.bound_s == pytest.approx(15 * turn)
    both = best_route([ring(16), ring(16, family=1, care=2.0, handling=DEEP)], way)
    assert both.bound_s == pytest.approx(15 * turn + 16 * (turn + 2.0))
    between = NEXT_FIGURE_S.value + CHANGE_DEPTH_S.value
    assert not both.proven and both.cost_s == pytest.approx(31 * turn + between + 16 * 2.0)


@pytest.mark.parametrize("seed", range(4))
def test_the_beam_is_exact_where_it_is_wide_enough(seed):
    """Five settings of two states each: every way there is is fewer than the beam keeps."""
    random = np.random.default_rng(seed)
    start, between = random.uniform(0, 20, 10), random.uniform(0, 20, (10, 10))

    def cost(states):
        return start[states[0]] + sum(between[a, b] for a, b in pairwise(states))

    best = min(
        (
            [2 * k + choice for k, choice in zip(settings, choices, strict=True)]
            for settings in permutations(range(5))
            for choices in product((0, 1), repeat=5)
        ),
        key=cost,
    )
    assert beam(start, between, 5) == [state // 2 for state in best]


def test_the_beam_tells_states_apart_by_their_whole_number(monkeypatch):
    """From 0 and 256, both done, only the dearer one has a cheap way on to the rest."""
    monkeypatch.setattr("scorecraft.bench.beam.WIDEST", 8)
    start, between = np.full(260, 1e3), np.ones((260, 260))
    start[[0, 256]] = 0.0
    between[0], between[256], between[:, [0, 256]] = 5.0, 1e3, 1e3
    between[256, 0], between[0, 256] = 0.5, 0.0
    assert beam(start, between, 260)[:2] == [256, 0]


@pytest.mark.parametrize(
    ("other", "change"), [(LIGHT, 0), ((3.8, LIGHT[1]), 1), ((3.0, math.radians(82)), 1)]
)
def test_a_change_of_depth_or_of_blade_costs_the_same(other, change):
    (cost,) = crossing([setting((0, 0))], [setting((0, 0), first=other)], 1)[0, :1]
    assert cost == change * CHANGE_DEPTH_S.value
