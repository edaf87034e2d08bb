"""How many settings of the table a set of cuts is worth, and which cuts go to which.

Every further setting must save more care than a turn and a look at the card cost. Evenly spaced
settings are told more easily than others, and are taken unless others are clearly better.
"""

import numpy as np

from scorecraft.arrays import Floats, Ints
from scorecraft.bench.clock import turn_seconds
from scorecraft.practice import NEXT_FIGURE_S

MOST_SETTINGS = 24
CLEARLY = 0.9
"""Settings that are not evenly spaced must come to less than this share of the even ones."""
ROUND_PARTS = 24
"""Round angles are whole parts of the turn: 15 degrees, and their multiples."""
ALMOST = 1.03
GLANCE = 0.25
"""A glance at the card as a part of a look at a new figure."""
SPANS = (1.0, 0.5)
"""Even settings are spread over the whole turn, or over half of it: lines have two ends."""


def split(
    weights: Floats, angles: Floats, *, copies: bool = False, rounded: bool = True
) -> list[tuple[Ints, int]]:
    """Part rows of care (R, A) over the angles (A,) by setting: rows, and index of the angle.

    Where the rows are copies of one figure the next setting needs only a glance at the card. Round
    angles are preferred with `rounded`.
    """
    look = NEXT_FIGURE_S.value * (GLANCE if copies else 1.0)
    even, even_cost = _even(weights, look, ROUND_PARTS if rounded else weights.shape[1])
    free = _added(weights, angles, look)
    chosen = free if _cost(weights, free, look) < CLEARLY * even_cost else even
    owner = np.argmin(weights[:, chosen], axis=1)
    parts = [(np.flatnonzero(owner == k), angle) for k, angle in enumerate(chosen)]
    return [(part, angle) for part, angle in parts if len(part)]


def _cost(weights: Floats, chosen: list[int], look: float) -> float:
    """Care at the chosen angles, with the turns between them taken as an even round."""
    return float(weights[:, chosen].min(axis=1).sum()) + _turning(len(chosen), look)


def _turning(count: int, look: float) -> float:
    return (count - 1) * (float(turn_seconds(np.array(2 * np.pi / count))) + look)


def _even(weights: Floats, look: float, parts: int) -> tuple[list[int], float]:
    """Find the best evenly spaced settings, and what they come to."""
    size, least = weights.shape[1], float(weights.min(axis=1).sum())
    best: tuple[float, list[int]] = (np.inf, [0])
    for span in SPANS:
        for count in range(1, min(MOST_SETTINGS, len(weights)) + 1):
            turning = _turning(count, look)
            if least + turning >= best[0]:
                break  # more settings turn more: none comes to less
            offsets = np.round(np.arange(count) * size * span / count).astype(int)
            turns = max(1, int(np.ceil(size * span / count)))
            sets = (np.arange(turns)[:, None] + offsets) % size
            care = weights[:, sets].min(axis=2).sum(axis=0)
            at = _round(care, max(1, size // parts))
            cost = float(care[at]) + turning
            if cost < best[0] - 1e-9:
                best = (cost, sets[at].tolist())
    return best[1], best[0]


def _round(care: Floats, step: int) -> int:
    """Find the least care, at a multiple of `step` if that is almost as good."""
    best, rounded = int(np.argmin(care)), step * int(np.argmin(care[::step]))
    return rounded if care[rounded] <= ALMOST * care[best] else best


def _added(weights: Floats, angles: Floats, look: float) -> list[int]:
    """Add one angle after the other while each saves more than it costs."""
    chosen = [int(np.argmin(weights.sum(axis=0)))]
    while len(chosen) < min(MOST_SETTINGS, len(weights)):
        now = weights[:, chosen].min(axis=1)
        saved = np.maximum(now[:, None] - weights, 0.0).sum(axis=0)
        turns = turn_seconds(apart(angles[:, None], angles[chosen]).min(axis=1))
        gain = saved - turns - look
        best = int(np.argmax(gain))
        if gain[best] <= 0:
            break
        chosen = _settled(weights, [*chosen, best])
    return chosen


def _settled(weights: Floats, chosen: list[int]) -> list[int]:
    """Move each angle to the best place for the rows that go to it, until nothing moves."""
    for _ in range(20):
        owner = np.argmin(weights[:, chosen], axis=1)
        moved = [
            int(np.argmin(weights[owner == k].sum(axis=0))) if np.any(owner == k) else old
            for k, old in enumerate(chosen)
        ]
        if moved == chosen:
            break
        chosen = moved
    return list(dict.fromkeys(chosen))


def apart(a: Floats, b: Floats) -> Floats:
    """Smallest angle between directions (radians); any shapes that go together."""
    return np.asarray(np.abs((a - b + np.pi) % (2 * np.pi) - np.pi))
