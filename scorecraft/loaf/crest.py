"""Where the dough is highest between its rims, by direction: the crown, or the crest of a ring."""

import math
from collections.abc import Callable

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.loaf.outline import Outline

TURNS = 720
"""Directions over which areas are summed."""


@dataclass(frozen=True, slots=True)
class Crest:
    """The crest between an outer rim and the rim of a hole; without one it is the middle."""

    outer: Outline
    hole: Outline | None

    def on_plan(self, theta: Floats) -> tuple[Floats, Floats]:
        """Plan distance (mm) from the middle to the crest, and from the crest to the rim."""
        return self._between(self.outer.radius(theta), lambda hole: hole.radius(theta))

    def turning(self, theta: Floats) -> tuple[Floats, Floats]:
        """Rates (mm a radian) at which the two distances of `on_plan` change."""
        return self._between(self.outer.turning(theta), lambda hole: hole.turning(theta))

    def _between(self, outer: Floats, of: Callable[[Outline], Floats]) -> tuple[Floats, Floats]:
        if self.hole is None:
            return np.zeros_like(outer), outer
        inner = of(self.hole)
        return (outer + inner) / 2, (outer - inner) / 2

    def around(self, theta: Floats, across: Floats) -> Floats:
        """Slope around the middle over that along the ray, at plan distances `across` (mm)."""
        middle, half = self.on_plan(theta)
        swing, spread = self.turning(theta)
        if self.hole is None:
            return np.asarray(spread / half)
        return np.asarray((swing + (across - middle) / half * spread) / np.maximum(across, 1e-9))

    @property
    def hole_mm2(self) -> float:
        """Area of the hole seen from above; 0 without one."""
        if self.hole is None:
            return 0.0
        turn = np.linspace(0, math.tau, TURNS, endpoint=False)
        return float(np.mean(self.hole.radius(turn) ** 2) * math.pi)

    @property
    def extremes(self) -> tuple[float, float]:
        """Least and greatest distance (mm) from the crest to the rim."""
        half = self.on_plan(np.linspace(0, math.tau, 1441))[1]
        return float(half.min()), float(half.max())
