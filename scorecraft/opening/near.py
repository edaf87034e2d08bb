"""Pairs of ends that are near to one another: what they do to each other, pair by pair."""

from collections.abc import Iterator
from typing import Self

import numpy as np

from scorecraft.arrays import Complexes, Ints
from scorecraft.frozen import dataclass

BLOCK = 1 << 14
"""Pairs worked on at a time: a dozen such arrays stay in the cache of one core."""


@dataclass(frozen=True, slots=True, eq=False)
class Near:
    """What near ends do to one another, as `kernel.between` tells it.

    Pairs are in the order of the end that is acted on: those of end k from `start[k]` (K + 1,) to
    the next; `other` (P,) is the end that acts.
    """

    start: Ints
    other: Ints
    alike: Complexes
    mirrored: Complexes

    @classmethod
    def both_ways(cls, one: Ints, other: Ints, alike: Complexes, mirrored: Complexes) -> Self:
        """Make it of pairs (P,), each once: what `other` does to `one` tells the way back too."""
        back = np.flatnonzero(one != other)
        acted = np.concatenate([one, other[back]])
        count = np.bincount(acted)
        short = np.min_scalar_type(len(count))  # numbers of few bits are sorted in no time
        order = np.argsort(acted.astype(short), kind="stable")
        pair = np.concatenate([np.arange(len(one)), back])[order]
        both = alike[pair]
        np.conjugate(both, out=both, where=order >= len(one))
        acting = np.concatenate([other, one[back]])[order]
        return cls(np.append(0, np.cumsum(count)), acting, both, mirrored[pair])

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


def pairs(place: Complexes, reach_mm: float) -> tuple[Ints, Ints]:
    """List pairs of places nearer than `reach_mm`, (P,) and (P,): each once, each with itself."""
    order, rows = _cells(place, reach_mm)
    (_, same), *later = rows[len(rows) // 2 :]
    onward = [(np.arange(len(place)), same), *later]
    found = [_within(place[order], reach_mm, *row) for row in onward]
    one, other = (order[np.concatenate(each)] for each in zip(*found, strict=True))
    return one, other


def count(place: Complexes, reach_mm: float) -> int:
    """Count the pairs of places that `pairs` would look at, about twice those that it lists."""
    return sum(int((high - low).sum()) for low, high in _cells(place, reach_mm)[1])


def _cells(place: Complexes, reach_mm: float) -> tuple[Ints, list[tuple[Ints, Ints]]]:
    """Sort places into cells of half the reach; tell where in that order those near each may be.

    Of each of the five rows of cells about a place those that may hold a near one follow one
    another, from a first (P,) to a last (P,).
    """
    x, y = (np.floor((part - part.min()) / (reach_mm / 2)) for part in (place.real, place.imag))
    row = y.max() + 5
    key = x * row + y
    order = np.argsort(key, kind="stable")
    key = key[order]
    rows = [
        (
            np.searchsorted(key, key + (step * row - 2)),
            np.searchsorted(key, key + (step * row + 2), "right"),
        )
        for step in range(-2, 3)
    ]
    return order, rows


def _within(place: Complexes, reach_mm: float, low: Ints, high: Ints) -> tuple[Ints, Ints]:
    """Keep of places k and low[k] to high[k] the pairs that are near."""
    count = high - low
    found = []
    for first, last in batches(count):
        many = count[first:last]
        one = np.repeat(np.arange(first, last), many)
        skipped = np.cumsum(many) - many
        other = np.arange(len(one)) + np.repeat(low[first:last] - skipped, many)
        apart = place[one] - place[other]
        kept = apart.real**2 + apart.imag**2 < reach_mm**2
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
