"""The order of the settings: a shortest path through all of them, pass by pass.

Each setting offers a few angles of the table; going from one to the next costs the turn, a change
of depth, and a look at the card where another figure comes. Up to a number of settings a pass the
best order is proven by dynamic programming over subsets (Held & Karp, J. SIAM 10 (1962) 196-210;
recalled, page not checked); beyond, a beam search is used and a lower bound says how far off the
best it can be.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from scorecraft.bench.beam import beam
from scorecraft.bench.bound import lower_bound
from scorecraft.bench.settings import Setting
from scorecraft.bench.steering import crossing, entering
from scorecraft.practice import EXACT_ORDER_SETTINGS

Array = NDArray[np.float64]
States = list[tuple[int, int]]
"""(setting, choice) in order."""


@dataclass(frozen=True, slots=True)
class Route:
    """Settings in order, pass by pass: (setting, choice) each; what they cost beyond cutting (s).

    No order can cost less than `bound_s`; the order is the best where `proven`.
    """

    passes: tuple[tuple[tuple[int, int], ...], ...]
    cost_s: float
    bound_s: float
    proven: bool


def best_route(passes: Sequence[Sequence[Setting]], way: int) -> Route:
    """Order the settings of each pass; every pass is finished before the next begins."""
    if max((len(settings) for settings in passes), default=0) <= EXACT_ORDER_SETTINGS.value:
        states, cost = _exact(passes, way)
        return Route(_as_tuples(states), cost, cost, True)
    orders = [_searched(settings, way) for settings in passes]
    states, cost = _chained(passes, orders, way)
    bound = _bounded(passes, way, cost)
    return Route(_as_tuples(states), cost, bound, cost <= bound + 1e-9)


def given_route(passes: Sequence[Sequence[Setting]], way: int) -> Route:
    """Keep the settings in the order they come, and choose their angles as well as can be."""
    states, cost = _chained(passes, [[list(range(len(each)))] for each in passes], way)
    return Route(_as_tuples(states), cost, 0.0, False)


def _as_tuples(states: Sequence[States]) -> tuple[tuple[tuple[int, int], ...], ...]:
    return tuple(tuple(each) for each in states)


def _exact(passes: Sequence[Sequence[Setting]], way: int) -> tuple[list[States], float]:
    """Find the best order of all passes together."""
    tables: list[_Subsets | None] = []
    begins: Array | None = None
    before: Sequence[Setting] = ()
    for settings in passes:
        if not settings:
            tables.append(None)
            continue
        if begins is None:
            start = entering(settings, 0.0, way)
        else:
            start = (begins[:, None] + crossing(before, settings, way)).min(axis=0)
        table = _Subsets(crossing(settings, settings, way), start, len(settings))
        tables.append(table)
        begins, before = table.ends, settings
    return _traced(passes, tables, way)


def _traced(
    passes: Sequence[Sequence[Setting]], tables: "Sequence[_Subsets | None]", way: int
) -> tuple[list[States], float]:
    """Walk back through the passes from the cheapest end."""
    out: list[States] = [[] for _ in passes]
    total: float | None = None
    after: tuple[Sequence[Setting], int] | None = None
    for number in reversed(range(len(passes))):
        table, settings = tables[number], passes[number]
        if table is None:
            continue
        ends = table.ends
        if after is not None:
            ends = ends + crossing(settings, after[0], way)[:, after[1]]
        last = int(np.argmin(ends))
        total = float(ends[last]) if total is None else total
        flat = table.path(last)
        width = len(settings[0].choices)
        out[number] = [divmod(state, width) for state in flat]
        after = (settings, flat[0])
    return out, total or 0.0


class _Subsets:
    """Held and Karp's table: the least cost of every set of settings done and last state."""

    def __init__(self, between: Array, start: Array, count: int) -> None:
        self.count = count
        self.width = len(start) // count
        self.cost = np.full((1 << count, len(start)), np.inf)
        self.parent = np.full((1 << count, len(start)), -1, dtype=np.intp)
        for j in range(count):
            own = slice(j * self.width, (j + 1) * self.width)
            self.cost[1 << j, own] = start[own]
        masks = np.arange(1 << count)
        done = np.bitwise_count(masks) if hasattr(np, "bitwise_count") else _bits(masks)
        for size in range(1, count):
            layer = masks[done == size]
            for j in range(count):
                self._extend(layer[(layer >> j) & 1 == 0], j, between)

    def _extend(self, masks: NDArray[np.intp], j: int, between: Array) -> None:
        own = slice(j * self.width, (j + 1) * self.width)
        reached = self.cost[masks][:, :, None] + between[:, own]
        self.parent[masks | (1 << j), own] = reached.argmin(axis=1)
        self.cost[masks | (1 << j), own] = reached.min(axis=1)

    @property
    def ends(self) -> Array:
        """Least cost of doing all settings and ending in each state."""
        return np.asarray(self.cost[-1])

    def path(self, last: int) -> list[int]:
        """List the states of the best order that ends in one."""
        mask, state, out = (1 << self.count) - 1, last, []
        while state >= 0:
            out.append(state)
            before = int(self.parent[mask, state])
            mask &= ~(1 << (state // self.width))
            state = before
        return out[::-1]


def _bits(masks: NDArray[np.intp]) -> NDArray[np.intp]:
    """Count the ones of each number; numpy 1 has no function for it."""
    return np.array([int(mask).bit_count() for mask in masks], dtype=np.intp)


def _chained(
    passes: Sequence[Sequence[Setting]], orders: Sequence[Sequence[Sequence[int]]], way: int
) -> tuple[list[States], float]:
    """Take the cheapest of the orders of each pass, one pass after the other."""
    out: list[States] = []
    total = 0.0
    before: tuple[Sequence[Setting], int] | None = None
    for settings, tried in zip(passes, orders, strict=True):
        if not settings:
            out.append([])
            continue
        start = _begin(before, settings, way)
        states, cost = min(
            (_in_order(settings, start, way, order) for order in tried), key=lambda each: each[1]
        )
        out.append(states)
        total += cost
        setting, choice = states[-1]
        before = (settings, setting * len(settings[0].choices) + choice)
    return out, total


def _begin(
    before: tuple[Sequence[Setting], int] | None, settings: Sequence[Setting], way: int
) -> Array:
    """Cost of beginning a pass in each of its states, after the last state of the one before."""
    if before is None:
        return entering(settings, 0.0, way)
    return np.asarray(crossing(before[0], settings, way)[before[1]])


def _searched(settings: Sequence[Setting], way: int) -> list[list[int]]:
    """Try orders of one pass: the best of a beam search, a sweep, and the file's own."""
    if not settings:
        return [[]]
    start = entering(settings, 0.0, way)
    found = beam(start, crossing(settings, settings, way), len(settings))
    sweep = sorted(
        range(len(settings)), key=lambda k: float((way * settings[k].choices[0]) % (2 * np.pi))
    )
    return [found, sweep, list(range(len(settings)))]


def _bounded(passes: Sequence[Sequence[Setting]], way: int, known: float) -> float:
    """Bound the cost of all passes: each may begin wherever it likes in the one before.

    The care of an angle is charged half on coming and half on going, which makes it harder for the
    relaxed problem to come at one angle and go at another.
    """
    total = 0.0
    before: Sequence[Setting] = ()
    for settings in passes:
        if not settings:
            continue
        start = entering(settings, 0.0, way)
        if before:
            start = crossing(before, settings, way).min(axis=0)
        half = np.concatenate([each.extra for each in settings]) / 2
        between = crossing(settings, settings, way) - half + half[:, None]
        total += lower_bound(start - half, between, len(settings), known - total)
        before = settings
    return min(total, known)


def _in_order(
    settings: Sequence[Setting], start: Array, way: int, order: Sequence[int]
) -> tuple[States, float]:
    """Choose the angles of settings in a given order so that they cost least."""
    count, width = len(settings), len(settings[0].choices)
    between = crossing(settings, settings, way).reshape(count, width, count, width)
    cost = start.reshape(count, width)[order[0]]
    parents = []
    for before, after in pairwise(order):
        reached = cost[:, None] + between[before, :, after]
        parents.append(reached.argmin(axis=0))
        cost = reached.min(axis=0)
    choice = int(np.argmin(cost))
    total = float(cost[choice])
    chosen = [choice]
    for parent in reversed(parents):
        chosen.append(int(parent[chosen[-1]]))
    return list(zip(order, chosen[::-1], strict=True)), total
