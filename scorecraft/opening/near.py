"""Pairs of ends that are near to one another: what they do to each other, pair by pair."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from scorecraft.arrays import Complexes, Floats, Ints
from scorecraft.opening.kernel import Ends

BLOCK = 1 << 14
"""Pairs worked on at a time: a dozen such arrays stay in the cache of one core."""


@dataclass(frozen=True, slots=True)
class Near:
    """What near ends do to one another, as `kernel.between` tells it.

    Pairs are in the order of the end that is acted on: those of end k from `start[k]` (K + 1,) to
    the next; `other` (P,) is the end that acts.
    """

    start: Ints
    other: Ints
    alike: Complexes
    mirrored: Complexes

    def times(self, jumps: Complexes) -> Complexes:
        """Give the forces (K,) on all ends from the jumps (K,) at near ones."""
        total = np.empty_like(jumps)
        for low, high in batches(np.diff(self.start)):
            some = slice(self.start[low], self.start[high])
            acting = jumps[self.other[some]]
            force = self.alike[some] * acting
            np.conjugate(acting, out=acting)
            acting *= self.mirrored[some]
            force += acting
            np.add.reduceat(force, self.start[low:high] - self.start[low], out=total[low:high])
        return total


def pairs(ends: Ends, reach_mm: float) -> tuple[Ints, Ints]:
    """List all pairs of ends (P,), (P,) nearer than `reach_mm`, each both ways, and with itself."""
    cell = np.floor((ends.at - ends.at.min(axis=0)) / reach_mm).astype(np.int64)
    row = cell[:, 1].max() + 3
    key = cell[:, 0] * row + cell[:, 1]
    order = np.argsort(key, kind="stable")
    key, at = key[order], ends.at[order]
    found = [_within(at, reach_mm, *_rows(key, step * row)) for step in (-1, 0, 1)]
    one, other = (order[np.concatenate(each)] for each in zip(*found, strict=True))
    order = np.argsort(one, kind="stable")
    return one[order], other[order]


def _rows(key: Ints, step: int) -> tuple[Ints, Ints]:
    """Where among the sorted cells the three beside one another begin and end, for every end."""
    low = np.searchsorted(key, key + (step - 1))
    return low, np.searchsorted(key, key + (step + 1), side="right")


def _within(at: Floats, reach_mm: float, low: Ints, high: Ints) -> tuple[Ints, Ints]:
    """Keep of ends k and low[k] to high[k] the pairs that are near."""
    count = high - low
    found = []
    for first, last in batches(count):
        many = count[first:last]
        one = np.repeat(np.arange(first, last), many)
        skipped = np.cumsum(many) - many
        other = np.arange(len(one)) + np.repeat(low[first:last] - skipped, many)
        apart = at[one] - at[other]
        kept = np.einsum("ij,ij->i", apart, apart) < reach_mm**2
        found.append((one[kept], other[kept]))
    one, other = (np.concatenate(each) for each in zip(*found, strict=True))
    return one, other


def batches(count: Ints) -> Iterator[tuple[int, int]]:
    """Cut ends with so many pairs each into batches of about `BLOCK` pairs."""
    total = np.cumsum(count)
    low = 0
    while low < len(count):
        before = total[low - 1] if low else 0
        high = max(low + 1, int(np.searchsorted(total, before + BLOCK)))
        yield low, high
        low = high
