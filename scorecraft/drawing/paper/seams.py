"""What a seam between two sheets would run through: how much ink, and whether the crown."""

from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats, Ints, Line
from scorecraft.frozen import dataclass

TILE_OVERLAP_MM = 12.0
"""Neighbouring sheets of one drawing share this much."""
Crown = tuple[float, float]

NEAR_MM = 1.5
"""Ink this close to a seam is counted: a line across it a little, one along it much."""
CLEAR_MM = 8.0
"""The strip that two sheets share keeps so far from the crown, if it can."""


@dataclass(frozen=True)
class Ground:
    """A drawing's ink, points (N, 2; mm) one mm apart, and its crown, if it has one.

    Rows of sheets are laid over it from top to bottom; `turned`, they are columns.
    """

    ink: Line
    crown: Crown | None

    @property
    def turned(self) -> "Ground":
        """The same drawing with x and y exchanged."""
        crown = self.crown and (self.crown[1], self.crown[0])
        return Ground(self.ink[:, ::-1], crown)

    def ends(self, low: float, high: float) -> tuple[float, float] | None:
        """Give the least and greatest x of the ink between two y (mm), to a mm more."""
        first, last = (int(np.floor(y - self._corner[1])) for y in (low, high))
        rows = slice(max(first, 0), max(last + 1, 0))
        left, right = self._rows[0][rows], self._rows[1][rows]
        if not len(left) or not np.isfinite(left).any():
            return None
        return float(left.min()), float(right.max())

    def upright(self, x: ArrayLike, low: float, high: float) -> tuple[Floats, Floats]:
        """Price seams at each x between two y: how near the crown is (0 to 1), and the ink.

        All lengths are mm; both answers are (N,).
        """
        at = np.asarray(x, dtype=np.float64)
        return self._near_crown(at, 0, low, high), self._sum(at, low, high)

    def level(self, y: ArrayLike) -> tuple[Floats, Floats]:
        """Price seams at each y across the whole drawing, as `upright`; mm, (N,)."""
        at = np.asarray(y, dtype=np.float64)
        return self._near_crown(at, 1, -np.inf, np.inf), self._sum_level(at)

    def _near_crown(self, at: Floats, axis: int, low: float, high: float) -> Floats:
        """Tell 1 where the strip that starts at a seam holds the crown, 0 where it keeps clear."""
        if self.crown is None or not low <= self.crown[1 - axis] <= high:
            return np.zeros(at.shape)
        middle = at + TILE_OVERLAP_MM / 2
        off = np.abs(self.crown[axis] - middle) - TILE_OVERLAP_MM / 2
        return np.asarray(np.clip(1.0 - off / CLEAR_MM, 0.0, 1.0))

    def _sum(self, x: Floats, low: float, high: float) -> Floats:
        left, right = self._cell(x - NEAR_MM, 0), self._cell(x + NEAR_MM, 0)
        top, bottom = (self._cell(np.array(y), 1) for y in (low, high))
        sums = self._sums
        found = sums[right, bottom] - sums[left, bottom] - sums[right, top] + sums[left, top]
        return np.asarray(found)

    def _sum_level(self, y: Floats) -> Floats:
        column = self._sums[-1]
        ends = self._cell(y + NEAR_MM, 1), self._cell(y - NEAR_MM, 1)
        return np.asarray(column[ends[0]] - column[ends[1]])

    def _cell(self, at: Floats, axis: int) -> Ints:
        found = np.rint(at - self._corner[axis])
        return np.asarray(np.clip(found, 0, self._sums.shape[axis] - 1), dtype=np.intp)

    @cached_property
    def _corner(self) -> Floats:
        return np.asarray(np.floor(self.ink.min(axis=0)))

    @cached_property
    def _cells(self) -> Ints:
        return np.asarray(np.floor(self.ink - self._corner), dtype=np.intp)

    @cached_property
    def _sums(self) -> Floats:
        """Count the points left of and above each corner of a grid of 1 mm."""
        counts = np.zeros(self._cells.max(axis=0) + 2)
        np.add.at(counts, (self._cells[:, 0] + 1, self._cells[:, 1] + 1), 1.0)
        return np.asarray(counts.cumsum(axis=0).cumsum(axis=1))

    @cached_property
    def _rows(self) -> tuple[Floats, Floats]:
        """Find the ends of the ink in each mm of y."""
        rows = self._cells[:, 1]
        left, right = np.full(rows.max() + 1, np.inf), np.full(rows.max() + 1, -np.inf)
        np.minimum.at(left, rows, self.ink[:, 0])
        np.maximum.at(right, rows, self.ink[:, 0])
        return left, right
