"""Cuts cannot close onto themselves: panels that would are pressed together instead.

A closed panel has no gap and carries pressure, without friction. Which panels are closed is
found by the primal-dual active set method (Hintermueller, Ito & Kunisch, SIAM J. Optim. 13 (2003)
865-888; recalled): let go where there is tension, close where there is overlap.
The matrix is positive definite, so there is one answer; should the rounds come back to where they
have been, one panel at a time is changed, the last in number first, which always ends (Murty,
Linear Algebra Appl. 7 (1974) 65-108; recalled).
"""

import numpy as np

from scorecraft.arrays import Floats, Ints
from scorecraft.errors import ScorecraftError
from scorecraft.frozen import dataclass
from scorecraft.opening.held import OPENING_PRECISE, Held, reached

OPENING_MOST_ROUNDS = 60
"""Contact rounds before the opening model gives up, and one a panel."""
ROUGHLY = 3e-4
"""Jumps are as good as this, see `Held.solve`, until what is closed is nearly known."""
OVERLAP = 1e-5
"""Overlaps below this share of the widest jump are rounding."""


@dataclass(frozen=True, slots=True, eq=False)
class Settled:
    """Jumps (2M,), gaps then slides in mm, and the panels that are pressed shut."""

    jumps: Floats
    closed: Ints


def settle(
    matrix: Held, force: Floats, start: Floats | None = None, precise: float = OPENING_PRECISE
) -> Settled:
    """Find jumps without overlap under forces (2M,), looked for from `start`.

    They are as precise as in `Held.solve`. Raises ScorecraftError where the rounds do not end.
    """
    half = len(force) // 2
    closed = np.flatnonzero(start[:half] <= 0) if start is not None else np.zeros(0, dtype=np.int64)
    rough = max(precise, ROUGHLY)
    stages = [(rough, rough), (precise, OVERLAP)][: 1 + (precise < rough)]
    near = start
    seen: set[bytes] = set()
    cautious = False
    for _ in range(OPENING_MOST_ROUNDS + len(force)):
        rounds = matrix.nearer(force, closed, near)
        for aim, overlap in stages:
            jumps, left = reached(rounds, aim)
            wrong = _wrong(matrix, left, jumps, closed, overlap)
            if len(wrong):
                break
        else:
            jumps[:half].clip(min=0, out=jumps[:half])
            return Settled(jumps, closed)
        near = jumps
        seen.add(closed.tobytes())
        closed = np.setxor1d(closed, wrong[-1:] if cautious else wrong, assume_unique=True)
        cautious = cautious or closed.tobytes() in seen
    raise ScorecraftError(
        "the opening model cannot decide which cuts are pressed shut",
        hint="use another panel size, or remove cuts that run over each other",
    )


def _wrong(matrix: Held, left: Floats, jumps: Floats, closed: Ints, overlap: float) -> Ints:
    """Panels (in order) that overlap though free, or pull though closed, by more than a share.

    `left` (2M,) are the forces that jumps (2M,) do not take up.
    """
    least = overlap * max(float(np.abs(jumps).max()), 1e-300)
    overlapping = np.flatnonzero(jumps[: len(jumps) // 2] < -least)
    pulled = closed[left[closed] > least * matrix.diagonal[closed]]
    return np.sort(np.concatenate([overlapping, pulled]))
