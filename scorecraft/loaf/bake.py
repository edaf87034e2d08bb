"""Oven spring: how much the skin of a loaf has to grow, and how much it gives by itself.

The loaf grows by one ratio sideways and another upward, its base staying on the stone. Along a
ray the skin then grows by ds1/ds0, around the crown by rho1/rho0; both follow from carrying the
skin along with the loaf. Less what the skin follows before it sets, this is the mismatch strain
that opens the cuts.
"""

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats
from scorecraft.limits import MOST_SPRING
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.telling import out_of_range
from scorecraft.practice import OVEN_SPRING, SKIN_GIVES_DRY, SKIN_GIVES_WITH_STEAM, SPREAD

RAYS = 90
"""Rays over which the mean strain is taken."""
STATIONS = 24
"""Points on each of these rays."""


@dataclass(frozen=True, slots=True)
class Bake:
    """How a loaf grows in the oven.

    `spring` is baked over proofed volume; `spread` the share of its logarithm that goes sideways
    (2/3 is the same growth in every direction); with `steam` the skin gives more before it sets.
    Raises UsageError outside 1..3 and 0..1.

    >>> bake = Bake(spring=1.8, spread=2 / 3)  # as much upward as sideways
    >>> round(bake.sideways, 4), round(bake.upward, 4)
    (1.2164, 1.2164)
    """

    spring: float = OVEN_SPRING.value
    spread: float = SPREAD.value
    steam: bool = True

    def __post_init__(self) -> None:
        if not 1.0 <= self.spring <= MOST_SPRING:
            hint = f"use 1 to {MOST_SPRING:g}: the baked volume over the proofed volume"
            raise out_of_range(f"an oven spring of {self.spring:g}", hint)
        if not 0.0 <= self.spread <= 1.0:
            hint = "use 0% (all upward) to 100% (all sideways)"
            raise out_of_range(f"a sideways spread of {100 * self.spread:g}%", hint)

    @property
    def sideways(self) -> float:
        """Growth of every level length: spring ^ (spread / 2)."""
        return float(self.spring ** (self.spread / 2))

    @property
    def upward(self) -> float:
        """Growth of every height: spring ^ (1 - spread)."""
        return float(self.spring ** (1 - self.spread))

    @property
    def left(self) -> float:
        """Share of the growth that the skin does not follow."""
        return 1.0 - (SKIN_GIVES_WITH_STEAM if self.steam else SKIN_GIVES_DRY).value


@dataclass(frozen=True)
class Growth:
    """Mismatch strain of a loaf's skin in sheet axes (x right, y away from the baker)."""

    loaf: Loaf
    bake: Bake

    def at(self, points: ArrayLike) -> Floats:
        """Strains (N, 3) as exx, eyy, exy (tensor) at sheet points (N, 2)."""
        sheet = np.asarray(points, dtype=np.float64)
        theta = np.arctan2(sheet[:, 1], sheet[:, 0])
        along, around, shear = self.along_rays(sheet)
        cos, sin = np.cos(theta), np.sin(theta)
        mixed = 2 * shear * cos * sin
        exx = along * cos**2 + around * sin**2 - mixed
        eyy = along * sin**2 + around * cos**2 + mixed
        exy = (along - around) * cos * sin + shear * (cos**2 - sin**2)
        return np.column_stack([exx, eyy, exy])

    def along_rays(self, points: ArrayLike) -> tuple[Floats, Floats, Floats]:
        """Strain along the ray, around the crown, and their shear at sheet points (N, 2).

        U - 1, with U the square root of the skin's right Cauchy-Green tensor C.
        """
        c11, c22, c12 = self._cauchy_green(np.asarray(points, dtype=np.float64))
        area = np.sqrt(c11 * c22 - c12**2)
        trace = np.sqrt(c11 + c22 + 2 * area)
        left = self.bake.left
        along = left * ((c11 + area) / trace - 1)
        around = left * ((c22 + area) / trace - 1)
        return along, around, left * c12 / trace

    @property
    def exx(self) -> float:
        """Mean strain along x, weighted by sheet area."""
        return self.mean[0]

    @property
    def eyy(self) -> float:
        """Mean strain along y, weighted by sheet area."""
        return self.mean[1]

    @property
    def exy(self) -> float:
        """Mean shear strain (tensor), weighted by sheet area."""
        return self.mean[2]

    @cached_property
    def mean(self) -> tuple[float, float, float]:
        """Mean (exx, eyy, exy) over the sheet, weighted by area."""
        theta = (np.arange(RAYS) + 0.5) * (math.tau / RAYS)
        share = (np.arange(STATIONS) + 0.5) / STATIONS
        distance = self.loaf.reach(theta)[:, None] * share
        rays = np.column_stack([np.cos(theta), np.sin(theta)])
        points = (distance[..., None] * rays[:, None, :]).reshape(-1, 2)
        weight = (self.loaf.reach(theta)[:, None] * distance).reshape(-1)
        exx, eyy, exy = np.average(self.at(points), axis=0, weights=weight)
        return float(exx), float(eyy), float(exy)

    def _cauchy_green(self, sheet: Floats) -> tuple[Floats, Floats, Floats]:
        """Components of C along the ray, around the crown and mixed, in the skin's own plane."""
        plan = self.loaf.sheet_to_plan(sheet)
        normal = self.loaf.normal(plan)
        theta = np.arctan2(sheet[:, 1], sheet[:, 0])
        sideways = np.column_stack([-np.sin(theta), np.cos(theta), np.zeros(len(theta))])
        ray = np.cross(sideways, normal)
        ray /= np.linalg.norm(ray, axis=1, keepdims=True)
        around = np.cross(normal, ray)
        grows = np.array([self.bake.sideways, self.bake.sideways, self.bake.upward])
        ray, around = ray * grows, around * grows
        return (ray**2).sum(axis=1), (around**2).sum(axis=1), (ray * around).sum(axis=1)


def growth(loaf: Loaf, bake: Bake) -> Growth:
    """Find how much the skin of a loaf is stretched by a bake."""
    return Growth(loaf, bake)
