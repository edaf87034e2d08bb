"""Exact angles for copies: the table turns by what the pattern turns, not by what was tried."""

import math
from collections.abc import Iterator, Sequence

import numpy as np

from scorecraft.bench.copies import Copies

ROUND_RAD = math.radians(7.5)
"""A row of copies begins at a whole part of the turn where that is near: 22.5 degrees."""


def evened(
    copies: Copies,
    stops: Sequence[Sequence[int]],
    tables: Sequence[float],
    spins: Sequence[float],
    reach_rad: float,
) -> list[float]:
    """Move table angles (radians) of copies that follow each other to exact ones.

    `stops` are the cuts of each setting and `spins` how far the table turns under the blade
    there; no angle is moved by more than about `reach_rad`, by which the angles that were tried
    lie apart. A single stop before a row that would be turned by no more goes with its first copy.
    """
    out, done = list(tables), 0
    for first, turns in _rows(copies, stops, tables, reach_rad):
        base = _base(tables[first : first + len(turns)], turns)
        stands = out[first - 1] + spins[first - 1] if first else 0.0
        for wished in (round(base / ROUND_RAD) * ROUND_RAD, stands):
            if abs(_wrapped(wished - base)) <= reach_rad + 1e-9:
                base = wished
                break
        out[first : first + len(turns)] = [(base + turn) % math.tau for turn in turns]
        alone = first > done and not spins[first - 1]
        if alone and abs(_wrapped(out[first - 1] - out[first])) <= reach_rad + 1e-9:
            out[first - 1] = out[first]
        done = first + len(turns)
    return out


def _rows(
    copies: Copies, stops: Sequence[Sequence[int]], tables: Sequence[float], reach_rad: float
) -> Iterator[tuple[int, list[float]]]:
    """List rows of two copies and more: the first stop, and how far each is turned from it."""
    turns = [0.0]
    for k in range(1, len(stops) + 1):
        turn = None
        if k < len(stops):
            ahead = tables[k] - tables[k - 1]
            before, after = ([(cut, False) for cut in stop] for stop in stops[k - 1 : k + 1])
            turn = copies.turn(before, after, ahead, 2 * reach_rad)
        if turn is not None:
            turns.append(turns[-1] + turn)
            continue
        if len(turns) > 1:
            yield k - len(turns), turns
        turns = [0.0]


def _base(tables: Sequence[float], turns: Sequence[float]) -> float:
    """Find where a row of copies begins, as near as can be to the angles that were tried."""
    off = [_wrapped(at - turn - tables[0]) for at, turn in zip(tables, turns, strict=True)]
    return float(tables[0] + np.mean(off))


def _wrapped(angle: float) -> float:
    return (angle + math.pi) % math.tau - math.pi
