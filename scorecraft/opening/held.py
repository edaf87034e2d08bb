"""Panels held by springs and by the rest of the sheet: solved by conjugate gradients.

The matrix is symmetric and positive, so conjugate gradients find its answer from nothing but its
product with one vector after another (Hestenes & Stiefel, J. Res. Nat. Bur. Stand. 49 (1952)
409-436; recalled). Windows of panels that follow one another, each solved by itself, are near
enough to the whole that ten to twenty products do. Pieces of skin that are cut free all around,
with nothing to hold them, move for next to no work: to tell where they stay the matrix is written
down, while it is small enough.
"""

from collections.abc import Iterator
from itertools import repeat

import numpy as np

from scorecraft.arrays import Flags, Floats, Ints
from scorecraft.errors import ScorecraftError
from scorecraft.frozen import dataclass
from scorecraft.opening.elastic import Elastic
from scorecraft.opening.ligament import Springs

OPENING_PRECISE = 5e-6
"""Jumps are as good as this share of the greatest, or some times worse: 2e-5 on the shelf."""
OPENING_MOST_PRODUCTS = 600
"""The most products one answer may take."""
OPENING_ROUGH = 1e-3
"""After so many it is taken if it is as good as this: what is left are pieces that move freely."""
OPENING_LOOSE = 1e-6
"""Softer springs (E per mm) hold no piece in its place."""
OPENING_MOST_WHOLE = 1_000
"""The most panels whose matrix is written down."""
Nearer = tuple[Floats, Floats, float]
"""Jumps (2M,), the forces (2M,) they leave, and by what share of the greatest jump a round more
would change one at most. The next round changes both arrays."""


@dataclass(frozen=True, slots=True, eq=False)
class Rest:
    """How the rest of a sheet pulls back where its mean growth is given.

    `unit` (2M, 3) are the forces of unit tensions, `stiffness` (3, 3) the sheet's, over its area.
    """

    unit: Floats
    stiffness: Floats

    def times(self, jumps: Floats) -> Floats:
        """Tension (3,) that jumps (2M,) take from the sheet."""
        tension: Floats = self.stiffness @ (self.unit.T @ jumps)
        return tension


@dataclass(frozen=True, slots=True, eq=False)
class Held:
    """The stiffness of panels, of their springs (2M,), and of the rest of the sheet.

    `inverses` (W, 2m, 2m) are those of the windows `own` (W, 2m) with their springs, `weight` (2M,)
    is the root of each jump's share in them, `diagonal` (2M,) that of the matrix; `whole` is the
    matrix itself (2M, 2M) where it is written down.
    """

    elastic: Elastic
    stiff: Floats
    rest: Rest | None
    own: Ints
    inverses: Floats
    weight: Floats
    diagonal: Floats
    whole: Floats | None = None

    def times(self, jumps: Floats) -> Floats:
        """Give the forces (2M,) that jumps (2M,) take."""
        if self.whole is not None:
            return np.asarray(self.whole @ jumps)
        force = self.elastic.times(jumps)
        force += self.stiff * jumps
        if self.rest is not None:
            force += self.rest.unit @ self.rest.times(jumps)
        return force

    def nearly(self, force: Floats) -> Floats:
        """Give about the jumps (2M,) under forces (2M,): the mean of windows by themselves."""
        parts = self.inverses @ (force * self.weight)[self.own][:, :, None]
        return self.weight * np.bincount(self.own.ravel(), parts.ravel(), len(force))

    def solve(
        self,
        force: Floats,
        closed: Ints | None = None,
        start: Floats | None = None,
        precise: float = OPENING_PRECISE,
    ) -> Floats:
        """Give the jumps (2M,) under forces (2M,), none where `closed`; looked for from `start`.

        The rounds end where the next would change no jump by more than the share `precise` of the
        greatest. Raises as `nearer` does.
        """
        return reached(self.nearer(force, closed, start), precise)[0]

    def nearer(
        self, force: Floats, closed: Ints | None = None, start: Floats | None = None
    ) -> Iterator[Nearer]:
        """Give jumps under forces (2M,) nearer and nearer, round by round; as in `solve`.

        Raises ScorecraftError where the matrix is not positive: cuts without anything between.
        """
        free = np.ones(len(force), dtype=bool)
        if closed is not None:
            free[closed] = False
        jumps, left = np.zeros_like(force), force.copy()
        if self.whole is not None:
            jumps[free] = np.linalg.solve(self.whole[np.ix_(free, free)], force[free])
            return repeat((jumps, force - self.times(jumps), 0.0))
        if start is not None:
            jumps = np.where(free, start, 0.0)
            left -= self.times(jumps)
        return _rounds(self, jumps, left, free)

    def each(self, forces: Floats, precise: float) -> Floats:
        """Give the jumps (2M, k) under each of some forces (2M, k), as precise as in `solve`.

        One at a time by its rounds, or all at once by the matrix itself while that is small.
        """
        if len(self.elastic.panels) <= OPENING_MOST_WHOLE:
            whole = written_down(self.elastic, self.stiff, self.rest)
            return np.asarray(np.linalg.solve(whole, forces))
        return np.stack([self.solve(force, precise=precise) for force in forces.T], axis=1)


def held(elastic: Elastic, springs: Springs, rest: Rest | None) -> Held:
    """Add springs, and the rest of a sheet, to the stiffness of panels."""
    count = len(elastic.panels)
    stiff = np.concatenate([springs.normal, springs.sliding]) * np.tile(elastic.panels.length, 2)
    own = np.concatenate([elastic.windows, elastic.windows + count], axis=1)
    at = np.arange(own.shape[1])
    diagonal = stiff.copy()
    diagonal[own] += elastic.blocks[:, at, at]
    weight = 1 / np.sqrt(np.bincount(own.ravel()))
    whole, blocks = None, elastic.blocks.copy()
    blocks[:, at, at] += stiff[own]
    if count <= OPENING_MOST_WHOLE and springs.normal.min() < OPENING_LOOSE:
        whole = written_down(elastic, stiff, rest)
    inverses = blocks if whole is not None else np.asarray(np.linalg.inv(blocks), dtype=float)
    return Held(elastic, stiff, rest, own, inverses, weight, diagonal, whole)


def written_down(elastic: Elastic, stiff: Floats, rest: Rest | None) -> Floats:
    """Write the whole matrix (2M, 2M) down."""
    whole = elastic.whole.copy()
    whole[np.diag_indices(len(stiff))] += stiff
    if rest is not None:
        whole += rest.unit @ rest.stiffness @ rest.unit.T
    return whole


def reached(rounds: Iterator[Nearer], precise: float) -> tuple[Floats, Floats]:
    """Take the first jumps (2M,) that are so precise, and the forces (2M,) that they leave."""
    return next((jumps, left) for jumps, left, error in rounds if error <= precise)


def _rounds(matrix: Held, jumps: Floats, left: Floats, free: Flags) -> Iterator[Nearer]:
    """Go on from jumps (2M,) that leave forces (2M,), changing those that are free."""
    way = np.zeros_like(jumps)
    before, error = 1.0, np.inf
    for _ in range(OPENING_MOST_PRODUCTS):
        change = np.where(free, matrix.nearly(np.where(free, left, 0.0)), 0.0)
        most = float(np.abs(change).max())
        error = most / max(float(np.abs(jumps).max()), 1e-300) if most else 0.0
        yield jumps, left, error
        now = float(left @ change)
        way = change + now / before * way
        force = matrix.times(way)
        work = float(way @ force)
        if work <= 0:  # so it is not positive
            break
        jumps += now / work * way
        left -= now / work * force
        before = now
    if error > OPENING_ROUGH:
        raise ScorecraftError(
            "some cuts lie so close together that their openings cannot be told apart",
            hint="remove cuts drawn twice, or use longer panels",
        )
    yield from repeat((jumps, left, 0.0))
