"""A cost that no order can go below, for patterns with too many settings to prove the best."""

import numpy as np

from scorecraft.arrays import Floats

ROUNDS = 150
SHRINK = 0.97


def lower_bound(start: Floats, between: Floats, count: int, known: float) -> float:
    """Bound from below what it costs to visit `count` settings, knowing a way that costs `known`.

    `start` (S,) and `between` (S, S) are the costs between states, equally many a setting. Every
    setting is entered once, from the start or from a setting that is left at most once: prices
    on leaving are raised where one is left too often (Lagrangian relaxation of the assignment
    problem; Fisher, Management Science 27 (1981) 1-18; recalled).
    """
    arcs = _between_settings(start, between, count)
    price = np.zeros(count + 1)
    best, step = 0.0, 1.0
    for _ in range(ROUNDS):
        reached = arcs + price[:, None]
        chosen = np.argmin(reached, axis=0)
        value = float(reached[chosen, np.arange(count)].sum() - price.sum())
        best = max(best, value)
        excess = np.bincount(chosen, minlength=count + 1) - 1.0
        size = float(excess @ excess)
        if size == 0:
            break
        price = np.maximum(0.0, price + step * max(known - value, 0.0) / size * excess)
        step *= SHRINK
    return min(best, known)


def _between_settings(start: Floats, between: Floats, count: int) -> Floats:
    """Least cost from the start (first row) and from each setting to each other one."""
    width = len(start) // count
    cells = between.reshape(count, width, count, width).min(axis=(1, 3))
    np.fill_diagonal(cells, np.inf)
    return np.vstack([start.reshape(count, width).min(axis=1), cells])
