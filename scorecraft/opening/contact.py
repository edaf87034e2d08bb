"""Cuts cannot close onto themselves: panels that would are pressed together instead.

A closed panel has no gap and carries pressure, without friction. Which panels are closed is
found by the primal-dual active set method (Hintermueller, Ito & Kunisch, SIAM J. Optim. 13 (2003)
865-888; recalled): let go where there is tension, close where there is overlap.
The matrix is positive definite, so there is one answer; should the rounds come back to where they
have been, one panel at a time is changed, the last in number first, which always ends (Murty,
Linear Algebra Appl. 7 (1974) 65-108; recalled).
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from scorecraft.arrays import Floats, Ints
from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.opening.system import Solver

OPENING_MOST_PRESSED_MB = 200.0
"""The most that panels pressed shut may take, beside the equations."""
OPENING_MOST_ROUNDS = 60
"""Contact rounds before the opening model gives up, and one a panel."""
OVERLAP = 1e-9
"""Overlaps below this share of the widest gap are rounding."""

AT_ONCE = 128
"""So many panels' unit forces are solved together: solving holds several times as much."""

BYTES = 24
"""Held for each jump and each closed panel: its column, a choice of the columns, and a matrix."""

Blend = Callable[[Floats], Floats]
"""From the jumps of every load case (2M, k) to how much of each case acts (k,)."""


@dataclass(frozen=True, slots=True)
class Settled:
    """Jumps (2M,), gaps then slides in mm, and how much of each load case acts (k,)."""

    jumps: Floats
    blend: Floats
    closed: Ints


class _Closable:
    """Jumps of the load cases with any panels closed, without solving the whole again."""

    def __init__(self, solver: Solver, sides: Floats) -> None:
        self.solver = solver
        self.free = solver.solve(sides)
        self.known: Ints = np.zeros(0, dtype=np.int64)
        self.columns: Floats = np.zeros((len(sides), 0))

    def with_closed(self, closed: Ints) -> tuple[Floats, Floats]:
        """Jumps (2M, k) and pressing forces (len(closed), k) per load case."""
        if not len(closed):
            return self.free, np.zeros((0, self.free.shape[1]))
        self._learn(np.setdiff1d(closed, self.known))
        columns = self.columns
        if len(closed) < len(self.known):
            columns = columns[:, np.searchsorted(self.known, closed)]
        force = np.asarray(np.linalg.solve(columns[closed], -self.free[closed]), dtype=np.float64)
        pressed: Floats = self.free + columns @ force
        return pressed, force

    def _learn(self, fresh: Ints) -> None:
        """Work out the jumps that a unit force on each of some panels makes."""
        if not len(fresh):
            return
        known = np.union1d(self.known, fresh)
        if BYTES * len(self.free) * len(known) > 1e6 * OPENING_MOST_PRESSED_MB:
            hint = "use longer panels, or fewer cuts across the growth"
            raise UsageError("too many cuts are pressed shut for the opening model", None, hint)
        columns = np.empty((len(self.free), len(known)))
        columns[:, np.searchsorted(known, self.known)] = self.columns
        for low in range(0, len(fresh), AT_ONCE):
            some = fresh[low : low + AT_ONCE]
            unit = np.zeros((len(self.free), len(some)))
            unit[some, np.arange(len(some))] = 1
            columns[:, np.searchsorted(known, some)] = self.solver.solve(unit)
        self.known, self.columns = known, columns


def settle(solver: Solver, sides: Floats, blend: Blend) -> Settled:
    """Find jumps without overlap under load cases (2M, k), blended as their own jumps decide.

    Raises ScorecraftError where the rounds do not end, UsageError where more is pressed shut than
    there is room for.
    """
    state = _Closable(solver, sides)
    closed: Ints = np.zeros(0, dtype=np.int64)
    seen: set[bytes] = set()
    cautious = False
    for _ in range(OPENING_MOST_ROUNDS + len(sides)):
        cases, force = state.with_closed(closed)
        weights = blend(cases)
        jumps = cases @ weights
        wrong = _wrong(jumps, closed, force @ weights)
        if not len(wrong):
            jumps[closed] = 0
            jumps[: len(jumps) // 2].clip(min=0, out=jumps[: len(jumps) // 2])
            return Settled(jumps, weights, closed)
        seen.add(closed.tobytes())
        closed = np.setxor1d(closed, wrong[-1:] if cautious else wrong)
        cautious = cautious or closed.tobytes() in seen
    raise ScorecraftError(
        "the opening model cannot decide which cuts are pressed shut",
        hint="use another panel size, or remove cuts that run over each other",
    )


def _wrong(jumps: Floats, closed: Ints, force: Floats) -> Ints:
    """Panels (in order) that overlap though free, or pull though closed."""
    gaps = jumps[: len(jumps) // 2].copy()
    gaps[closed] = 0
    overlapping = np.flatnonzero(gaps < -OVERLAP * max(float(np.abs(jumps).max()), 1e-300))
    pulling = closed[force < 0]
    return np.union1d(overlapping, pulling)
