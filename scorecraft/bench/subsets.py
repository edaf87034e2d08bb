"""The best order of a few settings, proven: dynamic programming over subsets.

Held & Karp, A dynamic programming approach to sequencing problems, J. SIAM 10 (1962) 196-210;
recalled.
"""

import numpy as np

from scorecraft.arrays import Floats, Ints


class Subsets:
    """The least cost of every set of settings done and last state, flattened (setting, choice)."""

    def __init__(self, between: Floats, start: Floats, count: int) -> None:
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

    def _extend(self, masks: Ints, j: int, between: Floats) -> None:
        own = slice(j * self.width, (j + 1) * self.width)
        reached = self.cost[masks][:, :, None] + between[:, own]
        self.parent[masks | (1 << j), own] = reached.argmin(axis=1)
        self.cost[masks | (1 << j), own] = reached.min(axis=1)

    @property
    def ends(self) -> Floats:
        """Least cost of doing all settings and ending in each state; in seconds."""
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


def _bits(masks: Ints) -> Ints:
    """Count the ones of each number; numpy 1 has no function for it."""
    return np.array([int(mask).bit_count() for mask in masks], dtype=np.intp)
