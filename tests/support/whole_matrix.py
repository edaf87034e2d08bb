"""The whole matrix of the opening model, written down, and its answers: what others are held to."""

import numpy as np

from scorecraft.opening.contact import OPENING_MOST_ROUNDS
from scorecraft.opening.kernel import UNSTRETCHED, ends_of, stiffness
from scorecraft.opening.load import forces, uncut_forces

ROWS = 64


def whole(parts, stretch=UNSTRETCHED):
    """Stiffness (2M, 2M) of all panels against all."""
    count, ends = len(parts), ends_of(parts)
    matrix = np.empty((2 * count, 2 * count))
    for low in range(0, count, ROWS):
        some = np.arange(low, min(low + ROWS, count))
        opening, sliding = np.split(stiffness(parts, ends, some, np.arange(count), stretch), 2)
        matrix[some], matrix[some + count] = opening, sliding
    return matrix


def answers(parts, springs, load, area_mm2=None):
    """Jumps (2M,) by LAPACK, and which panels are pressed shut."""
    count = len(parts)
    stiff = np.concatenate([springs.normal, springs.sliding]) * np.tile(parts.length, 2)
    matrix = whole(parts, load.stretch)
    matrix[np.diag_indices(2 * count)] += stiff
    if area_mm2 is not None:
        unit = forces(parts)
        matrix += unit @ np.linalg.inv(load.compliance) @ unit.T / area_mm2
    side = uncut_forces(parts, load)
    closed = np.zeros(2 * count, dtype=bool)
    for _ in range(OPENING_MOST_ROUNDS):
        free = ~closed
        jumps = np.zeros(2 * count)
        jumps[free] = np.linalg.solve(matrix[np.ix_(free, free)], side[free])
        pulled = closed & (side - matrix @ jumps > 0)
        shut = np.append(jumps[:count] < 0, np.zeros(count, dtype=bool))
        if not (pulled | shut).any():
            return jumps, np.flatnonzero(closed)
        closed ^= pulled | shut
    raise AssertionError("contact did not settle")
