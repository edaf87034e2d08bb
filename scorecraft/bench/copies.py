"""Whether what is cut at one setting is what was cut at another, turned about the crown."""

import math
from collections.abc import Sequence

import numpy as np
import shapely
from numpy.typing import NDArray

from scorecraft.arrays import Floats, Ints
from scorecraft.cuts import Layout
from scorecraft.frozen import dataclass

Pulled = tuple[int, bool]
"""A cut's index, and whether it is pulled against its drawing."""
Lines = NDArray[np.complex128]

SAME_MM = 0.5
"""Copies lie on one another within this once they are turned."""
POINTS = 9
"""A cut is compared at so many points, evenly spaced from its start to its end."""


class Copies:
    """All cuts of a layout in plan, ready to be compared."""

    def __init__(self, layout: Layout) -> None:
        sheet = np.concatenate([cut.line for cut in layout.cuts])
        owner = np.repeat(np.arange(len(layout.cuts)), [len(cut.line) for cut in layout.cuts])
        lines = shapely.linestrings(layout.loaf.sheet_to_plan(sheet), indices=owner)
        shares = np.linspace(0.0, 1.0, POINTS)
        points = shapely.line_interpolate_point(lines[:, None], shares, normalized=True)
        self.lines: Lines = shapely.get_x(points) + 1j * shapely.get_y(points)
        kinds: dict[tuple[int, str, float, float], int] = {}
        self.kinds = np.array([
            kinds.setdefault(
                (cut.family, cut.name, round(cut.depth_mm, 1), round(cut.blade_rad, 2)), len(kinds)
            )
            for cut in layout.cuts
        ])  # fmt: skip

    def turn(
        self, one: Sequence[Pulled], other: Sequence[Pulled], near_rad: float, within_rad: float
    ) -> float | None:
        """Find how far the table turns, clockwise, to bring other cuts exactly to where these lie.

        It is `near_rad`, or off by at most `within_rad`. None where they are no copies.
        """
        a, b = self._pulled(one), self._pulled(other)
        if sorted(a.kinds.tolist()) != sorted(b.kinds.tolist()):
            return None
        if np.abs(a.far - b.far).max() > SAME_MM:
            return None
        counts = np.bincount(a.kinds)
        there = np.flatnonzero(counts)
        rarest = there[np.argmin(counts[there])]
        first, ends = a.lines[a.kinds == rarest][0], b.lines[b.kinds == rarest]
        turns = np.angle((first.conj() * ends).sum(axis=1))
        off = (turns - near_rad + math.pi) % math.tau - math.pi
        for each in sorted(off[np.abs(off) <= within_rad].tolist(), key=abs):
            found = _fitted(a, b, near_rad + each)
            if found is not None:
                return found
        return None

    def _pulled(self, pulls: Sequence[Pulled]) -> "_Set":
        rows = np.array([cut for cut, _ in pulls])
        against = np.array([backward for _, backward in pulls])
        lines = self.lines[rows]
        return _Set(np.where(against[:, None], lines[:, ::-1], lines), self.kinds[rows])


@dataclass(frozen=True, slots=True)
class _Set:
    """Cuts as they are pulled (N, POINTS), and their kinds (N,)."""

    lines: Lines
    kinds: Ints

    @property
    def far(self) -> Floats:
        """How far from the crown the cuts' middles lie (mm), rising: turning keeps that."""
        return np.sort(np.abs(self.lines[:, POINTS // 2]))


def _fitted(a: _Set, b: _Set, turn: float) -> float | None:
    """Better a turn by all cuts together; None where they do not fall on one another."""
    turned = a.lines * np.exp(1j * turn)
    apart = turned[:, None, POINTS // 2] - b.lines[:, POINTS // 2]
    mine, theirs = np.nonzero((np.abs(apart) <= SAME_MM) & (a.kinds[:, None] == b.kinds))
    same = np.abs(turned[mine] - b.lines[theirs]).max(axis=1, initial=0.0) <= SAME_MM
    mine, theirs = mine[same], theirs[same]
    if len(set(mine.tolist())) < len(a.kinds) or len(set(theirs.tolist())) < len(b.kinds):
        return None
    return turn + float(np.angle((turned[mine].conj() * b.lines[theirs]).sum()))
