"""Beam search: many half-made orders are kept side by side, the cheapest go on."""

import numpy as np

from scorecraft.arrays import Flags, Floats, Ints

WIDEST, NARROWEST = 160, 4
WORK = 4e7
"""The beam is as wide as this many steps allow."""


def beam(start: Floats, between: Floats, count: int) -> list[int]:
    """Order `count` settings of equally many states each by their costs; give the settings.

    `start` (S,) is the cost of beginning in a state, `between` (S, S) of going on to another.
    """
    states = len(start)
    width = states // count
    owner = np.arange(states) // width
    keep = int(np.clip(WORK / (states * count), NARROWEST, WIDEST))
    last = np.argsort(start, kind="stable")[:keep]
    cost = start[last]
    done = owner[last][:, None] == np.arange(count)
    history: list[tuple[Ints, Ints]] = []
    for _ in range(count - 1):
        reached = np.where(done[:, owner], np.inf, cost[:, None] + between[last])
        flat = _cheapest(reached, done, owner, keep)
        parent, last = np.divmod(flat, states)
        history.append((parent, last))
        cost = reached[parent, last]
        done = done[parent]
        done[np.arange(len(last)), owner[last]] = True
    return _order(start, history, owner, int(np.argmin(cost)), keep)


def _cheapest(reached: Floats, done: Flags, owner: Ints, keep: int) -> Ints:
    """Pick the cheapest ways on, only one for the same settings done and the same last state."""
    count = min(4 * keep, int(np.isfinite(reached).sum()))
    flat = np.argpartition(reached, count - 1, axis=None)[:count]
    flat = flat[np.argsort(reached.ravel()[flat], kind="stable")]
    rows, ends = np.divmod(flat, reached.shape[1])
    key = done[rows]
    key[np.arange(len(rows)), owner[ends]] = True
    seen = np.column_stack([np.packbits(key, axis=1), ends])
    first: dict[bytes, int] = {}
    for number, row in enumerate(seen):
        first.setdefault(row.tobytes(), number)
    return np.asarray(flat[list(first.values())[:keep]])


def _order(
    start: Floats,
    history: list[tuple[Ints, Ints]],
    owner: Ints,
    best: int,
    keep: int,
) -> list[int]:
    out = []
    row = best
    for parent, last in reversed(history):
        out.append(int(owner[last[row]]))
        row = int(parent[row])
    first = np.argsort(start, kind="stable")[:keep]
    return [*reversed([*out, int(owner[first[row]])])]
