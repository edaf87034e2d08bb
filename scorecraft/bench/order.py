"""The order of the settings: a shortest path through all of them, pass by pass.

Each setting offers a few angles of the table; going from one to the next costs the turn, a change
of depth, and a look at the card where another figure comes. Up to a number of settings a pass the
best order is proven; beyond, a beam search and sweeps are tried and a lower bound says how far off
the best the found order can be.
"""

from collections.abc import Callable, Sequence
from functools import cached_property, partial
from itertools import pairwise, permutations, product

import numpy as np

from scorecraft.arrays import Floats, Ints
from scorecraft.bench.beam import beam
from scorecraft.bench.bound import lower_bound
from scorecraft.bench.settings import Setting
from scorecraft.bench.steering import crossing, entering
from scorecraft.bench.subsets import Subsets
from scorecraft.frozen import dataclass

EXACT_ORDER_SETTINGS = 12
"""Up to so many settings of the table a pass, the best order is proven."""
States = tuple[tuple[int, int], ...]
"""(setting, choice) in order."""

MOST_BLOCKS = 4
"""Sweeps figure by figure are tried in every order of so many kinds of figures."""


@dataclass(frozen=True, eq=False)
class Route:
    """Settings in order, pass by pass: (setting, choice) each; what they cost beyond cutting (s).

    `least` works out what no order can cost less than (s): as much work as to find the order.
    """

    passes: tuple[States, ...]
    cost_s: float
    least: Callable[[], float]

    @cached_property
    def bound_s(self) -> float:
        """No order can cost less than so many seconds."""
        return self.least()

    @property
    def proven(self) -> bool:
        """Whether the order is the best there is."""
        return self.cost_s <= self.bound_s + 1e-9


@dataclass(frozen=True, slots=True)
class _Leg:
    """One pass: its settings, and the cost (S, S) between their states."""

    settings: Sequence[Setting]
    between: Floats

    @property
    def count(self) -> int:
        return len(self.settings)

    @property
    def width(self) -> int:
        return len(self.settings[0].choices)


def best_route(passes: Sequence[Sequence[Setting]], way: int) -> Route:
    """Order the settings of each pass; every pass is finished before the next begins.

    `way` is the table's usual turn, 1 clockwise. Passes hold at least one setting each.
    """
    legs = _legs(passes, way)
    if max(leg.count for leg in legs) <= EXACT_ORDER_SETTINGS:
        states, cost = _exact(legs, way)
        return Route(states, cost, lambda: cost)
    states, cost = _cheapest(legs, [_tried(leg, way) for leg in legs], way)
    return Route(states, cost, partial(_bounded, legs, way, cost))


def given_route(passes: Sequence[Sequence[Setting]], way: int) -> Route:
    """Keep the settings in the order they come, angles as well as can be; that has no bound: 0."""
    legs = _legs(passes, way)
    states, cost = _cheapest(legs, [[list(range(leg.count))] for leg in legs], way)
    return Route(states, cost, float)


def _legs(passes: Sequence[Sequence[Setting]], way: int) -> list[_Leg]:
    return [_Leg(settings, crossing(settings, settings, way)) for settings in passes]


def _exact(legs: Sequence[_Leg], way: int) -> tuple[tuple[States, ...], float]:
    """Find the best order of all passes together."""
    tables = [Subsets(legs[0].between, entering(legs[0].settings, 0.0, way), legs[0].count)]
    joints = [crossing(a.settings, b.settings, way) for a, b in pairwise(legs)]
    for leg, joint in zip(legs[1:], joints, strict=True):
        start = (tables[-1].ends[:, None] + joint).min(axis=0)
        tables.append(Subsets(leg.between, start, leg.count))
    last = int(np.argmin(tables[-1].ends))
    cost = float(tables[-1].ends[last])
    paths = [tables[-1].path(last)]
    for table, joint in zip(reversed(tables[:-1]), reversed(joints), strict=True):
        last = int(np.argmin(table.ends + joint[:, paths[0][0]]))
        paths.insert(0, table.path(last))
    both = zip(paths, legs, strict=True)
    return tuple(tuple(divmod(state, leg.width) for state in path) for path, leg in both), cost


def _tried(leg: _Leg, way: int) -> list[list[int]]:
    """List orders of one pass worth trying: a beam search, sweeps, and the file's own."""
    ahead = [float((way * each.choices[0]) % (2 * np.pi)) for each in leg.settings]
    sweep = sorted(range(leg.count), key=lambda k: ahead[k])
    found = beam(entering(leg.settings, 0.0, way), leg.between, leg.count)
    kinds = list(dict.fromkeys(each.families for each in leg.settings))
    orders = [found, sweep, list(range(leg.count))]
    if len(kinds) <= MOST_BLOCKS:
        for blocks in permutations(kinds):
            orders.append(_block_sweeps(leg, blocks, ahead))
    return orders


def _block_sweeps(leg: _Leg, blocks: Sequence[frozenset[int]], ahead: Sequence[float]) -> list[int]:
    """Sweep round once for each kind of figure, each from where the last one ended."""
    out: list[int] = []
    at = 0.0
    for kind in blocks:
        own = [k for k in range(leg.count) if leg.settings[k].families == kind]
        own.sort(key=lambda k: (ahead[k] - at + 1e-9) % (2 * np.pi))
        at = ahead[own[-1]]
        out += own
    return out


def _cheapest(
    legs: Sequence[_Leg], orders: Sequence[Sequence[Sequence[int]]], way: int
) -> tuple[tuple[States, ...], float]:
    """Take the cheapest row of orders, one for each pass."""
    joints = [crossing(a.settings, b.settings, way) for a, b in pairwise(legs)]
    start = entering(legs[0].settings, 0.0, way)
    best: tuple[tuple[States, ...], float] = ((), np.inf)
    for tried in product(*orders):
        states, cost = _in_order(legs, joints, start, tried)
        if cost < best[1] - 1e-9:
            best = (states, cost)
    return best


def _in_order(
    legs: Sequence[_Leg], joints: Sequence[Floats], start: Floats, orders: Sequence[Sequence[int]]
) -> tuple[tuple[States, ...], float]:
    """Choose the angles of settings in a given order so that they cost least."""
    cost = start.reshape(-1, legs[0].width)[orders[0][0]]
    parents: list[Ints] = []
    for number, (leg, order) in enumerate(zip(legs, orders, strict=True)):
        if number:
            entry = joints[number - 1]
            entry = entry.reshape(-1, legs[number - 1].width, leg.count, leg.width)
            cost = _step(cost, entry[orders[number - 1][-1], :, order[0]], parents)
        between = leg.between.reshape(leg.count, leg.width, leg.count, leg.width)
        for before, after in pairwise(order):
            cost = _step(cost, between[before, :, after], parents)
    chosen = [int(np.argmin(cost))]
    for parent in reversed(parents):
        chosen.append(int(parent[chosen[-1]]))
    choices = iter(reversed(chosen))
    states = tuple(tuple((k, next(choices)) for k in order) for order in orders)
    return states, float(cost.min())


def _step(cost: Floats, arcs: Floats, parents: list[Ints]) -> Floats:
    reached = cost[:, None] + arcs
    parents.append(reached.argmin(axis=0))
    return np.asarray(reached.min(axis=0))


def _bounded(legs: Sequence[_Leg], way: int, known: float) -> float:
    """Bound the cost of all passes: each may begin wherever it likes in the one before.

    The care of an angle is charged half on coming and half on going, which makes it harder for the
    relaxed problem to come at one angle and go at another.
    """
    total = 0.0
    start = entering(legs[0].settings, 0.0, way)
    for number, leg in enumerate(legs):
        if number:
            start = crossing(legs[number - 1].settings, leg.settings, way).min(axis=0)
        half = np.concatenate([each.extra for each in leg.settings]) / 2
        between = leg.between - half + half[:, None]
        total += lower_bound(start - half, between, leg.count, known - total)
    return min(total, known)
