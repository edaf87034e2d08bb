"""The equations of a set of cuts: worked out once, then solved for any depths."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import isqrt
from typing import Protocol

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats, Line
from scorecraft.errors import UsageError
from scorecraft.opening.circulant import Turn, blocks_of, turn_of, turned
from scorecraft.opening.factor import factors
from scorecraft.opening.kernel import stiffness, strips
from scorecraft.opening.ligament import Springs
from scorecraft.opening.load import Strain, load_on
from scorecraft.opening.panels import Panels, panels

OPENING_MOST_PANELS = 3_000.0
"""The most panels without a turn: 576 MB with their factors."""


class Solver(Protocol):
    """Anything that answers right-hand sides (2M, k) with jumps (2M, k)."""

    def solve(self, sides: Floats) -> Floats:
        """Return the answers to the sides; both (2M, k), in mm."""


@dataclass(frozen=True, slots=True)
class System:
    """Panels and their stiffness without springs.

    `matrix` is (2M, 2M), or (n, 2m, 2m), the first part of a turn against every turn of it.
    """

    panels: Panels
    turn: Turn | None
    matrix: Floats

    def depths(self, depth_mm: Floats) -> Floats:
        """Depth of each panel (M,) from the depth of each line: the deepest cut that runs there."""
        return panel_depths(self.panels, depth_mm)


def system(
    lines: Sequence[Line],
    depth_mm: Floats,
    panel_mm: float,
    turn: int | None = None,
    *,
    held: ArrayLike = 0.0,
    strain: Strain = (0.0, 0.0, 0.0),
    most_panels: float = OPENING_MOST_PANELS,
) -> System:
    """Set up the equations of cuts along lines (N, 2); depths only matter for finding a turn.

    `held` is about how stiff the springs of each line will be (E per mm), see `panels`; under a
    `strain` the sheet is stretched and its stiffness another.
    Takes 32 M^2 / n bytes for M panels with an n-fold turn, and the factors as much again. Raises
    UsageError where that is more than `most_panels` without a turn stand for, and where the
    pattern has not the turn asked for.
    """
    parts = panels(lines, panel_mm, held)
    found = turn_of(parts, panel_depths(parts, depth_mm), turn)
    if turn not in (None, 1) and found is None:
        raise UsageError(f"the pattern does not come back to itself after 1/{turn} of a turn")
    count = found.count if found else 1
    most = isqrt(int(most_panels) ** 2 * count)
    if len(parts) > most:
        coarser = panel_mm * len(parts) / most
        raise UsageError(
            f"{len(parts)} panels are more than the opening model takes ({most})",
            hint=f"use panels of {coarser:.1f} mm or longer, or fewer or shorter cuts",
        )
    if not len(parts):
        return System(parts, None, np.zeros((0, 0)))
    stretch = load_on(parts, strain).stretch
    if found is None:
        return System(parts, None, stiffness(parts, stretch=stretch))
    return System(parts, found, blocks_of(found, strips(parts, found.own, stretch)))


def panel_depths(parts: Panels, depth_mm: Floats) -> Floats:
    """Depth of each panel (M,) from the depth of each line: the deepest cut that runs there."""
    depth = np.zeros(len(parts))
    for own, line_depth in zip(parts.of_line, depth_mm, strict=True):
        np.maximum.at(depth, own, line_depth)
    return depth


def held(equations: System, springs: Springs, *, keep: bool = True) -> Solver:
    """Add springs to the equations and factor them; `keep` leaves the equations usable again."""
    stiff = np.concatenate([springs.normal, springs.sliding])
    stiff = stiff * np.tile(equations.panels.length, 2)
    if equations.turn is not None:
        return turned(equations.turn, equations.matrix, stiff)
    matrix = equations.matrix.copy() if keep else equations.matrix
    matrix[np.diag_indices(len(matrix))] += stiff
    return factors(matrix)
