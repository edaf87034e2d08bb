"""Oven spring: how much the skin of a loaf has to grow, and how much it gives by itself.

The loaf grows by one ratio sideways and another upward, its base staying on the stone. The skin
slides over the dough and so evens itself out along the rays: a point keeps its share of the way
from crown to rim. Along the ray the skin then grows by L1/L0, L the reach in that direction, and
around the crown by rho1/rho0, rho the distance from the loaf's axis. (Carried straight up and out
with the dough it would be stretched twice as much along the ray at the rim as at the crown.) Less
what the skin follows before it sets, this is the mismatch strain that opens the cuts. Against
finite elements of a sheet that slides over the grown dome: tests/published. In a tin, which holds
sides and ends, the skin evens out in straight sections instead.
"""

from functools import cached_property
from math import log

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats
from scorecraft.baking import (
    OVEN_SPRINGS,
    SETS_DRY_AT,
    SKIN_GIVES_DRY,
    SKIN_GIVES_WITH_STEAM,
    SPREAD,
)
from scorecraft.frozen import dataclass
from scorecraft.limits import MOST_SPRING
from scorecraft.loaf import telling as say
from scorecraft.loaf.dome import Loaf
from scorecraft.loaf.grown import grown
from scorecraft.loaf.sections import Sections

RAYS = 90
"""Rays over which the mean strain is taken."""
STATIONS = 24
"""Points on each of these rays."""
USUAL_LEFT = 1.0 - SKIN_GIVES_WITH_STEAM.value
"""Share of the growth that the skin does not follow in an oven with steam."""


@dataclass(frozen=True, slots=True)
class Bake:
    """How a loaf grows in the oven.

    `spring` is baked over proofed volume; `spread` the share of its logarithm that goes sideways
    (2/3 is the same growth in every direction). With `steam` the skin gives more before it sets;
    without, it sets while the loaf still grows.
    Raises UsageError outside 1..3 and 0..1.

    >>> bake = Bake(spring=1.8, spread=2 / 3)  # as much upward as sideways
    >>> round(bake.sideways, 4), round(bake.upward, 4)
    (1.2164, 1.2164)
    """

    spring: float = OVEN_SPRINGS["ready"].value
    spread: float = SPREAD.value
    steam: bool = True

    def __post_init__(self) -> None:
        if not 1.0 <= self.spring <= MOST_SPRING:
            hint = f"use 1 to {MOST_SPRING:g}: the baked volume over the proofed volume"
            raise say.OUT_OF_RANGE(what=f"an oven spring of {self.spring:g}", hint=hint).usage()
        if not 0.0 <= self.spread <= 1.0:
            hint = "use 0% (all upward) to 100% (all sideways)"
            what = f"a sideways spread of {100 * self.spread:g}%"
            raise say.OUT_OF_RANGE(what=what, hint=hint).usage()

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
        return USUAL_LEFT if self.steam else 1.0 - SKIN_GIVES_DRY.value

    @property
    def soft(self) -> float:
        """Share of the growth during which the skin is soft and cuts open; the rest is left."""
        return 1.0 if self.steam else SETS_DRY_AT.value

    @property
    def strength(self) -> float:
        """How much this bake stretches the skin, over the usual bake (logarithms of the spring)."""
        return log(self.spring) * self.left / (log(OVEN_SPRINGS["ready"].value) * USUAL_LEFT)


@dataclass(frozen=True)
class Growth:
    """Mismatch strain of a loaf's skin in sheet axes (x right, y away from the baker)."""

    loaf: Loaf
    bake: Bake

    def at(self, points: ArrayLike) -> Floats:
        """Strains (N, 3) as exx, eyy, exy (tensor) at sheet points (N, 2)."""
        sheet = np.asarray(points, dtype=np.float64)
        if self.loaf.held is not None:
            return self._in_tin(sheet)
        theta = np.arctan2(sheet[:, 1], sheet[:, 0])
        along, around = self.along_rays(sheet)
        cos, sin = np.cos(theta), np.sin(theta)
        exx = along * cos**2 + around * sin**2
        eyy = along * sin**2 + around * cos**2
        return np.column_stack([exx, eyy, (along - around) * cos * sin])

    def along_rays(self, points: ArrayLike) -> tuple[Floats, Floats]:
        """Strain along the ray and around the crown at sheet points (N, 2)."""
        sheet = np.asarray(points, dtype=np.float64)
        theta = np.arctan2(sheet[:, 1], sheet[:, 0])
        longer = self._whole(self._grown, theta) / self._whole(self.loaf, theta)
        share = np.maximum(self.loaf.share(sheet), -1.0)  # no further than the rim of the hole
        here, there = (each.at_share(theta, share) for each in (self.loaf, self._grown))
        wider = self._across(self._grown, there) / self._across(self.loaf, here)
        left = self.bake.left
        return left * (longer - 1), left * (np.where(np.isfinite(wider), wider, longer) - 1)

    def _in_tin(self, sheet: Floats) -> Floats:
        """Strains (N, 3) in a tin: the skin evens out from side to side and from end to end."""
        plan = self.loaf.sheet_to_plan(sheet)
        before, after = self._sections
        across = after.across(plan[:, 1]) / before.across(plan[:, 1])
        along = after.along(plan[:, 0]) / before.along(plan[:, 0])
        left = self.bake.left
        return np.column_stack([left * (across - 1), left * (along - 1), np.zeros(len(plan))])

    @cached_property
    def _sections(self) -> tuple[Sections, Sections]:
        return Sections(self.loaf), Sections(self._grown)

    @cached_property
    def mean(self) -> tuple[float, float, float]:
        """Mean (exx, eyy, exy) over the skin, weighted by its area on the dome."""
        points, areas = self.patches
        exx, eyy, exy = np.average(self.at(points), axis=0, weights=areas)
        return float(exx), float(eyy), float(exy)

    @cached_property
    def patches(self) -> tuple[Floats, Floats]:
        """Places (N, 2) on the sheet all over the skin, and the area (mm2) each stands for."""
        points, areas = self.loaf.patches(RAYS, STATIONS)
        return points.reshape(-1, 2), areas.reshape(-1)

    @cached_property
    def _grown(self) -> Loaf:
        """The loaf after the bake."""
        return grown(self.loaf, self.bake.sideways, self.bake.upward)

    @staticmethod
    def _whole(loaf: Loaf, theta: Floats) -> Floats:
        """Way (N,) over the dough from its crown or crest to the rim, mm."""
        return np.asarray(loaf.reach(theta) - loaf.sheet_crest(theta))

    @staticmethod
    def _across(loaf: Loaf, sheet: Floats) -> Floats:
        """Distance (N,) from the crown's axis of sheet points (N, 2), mm; nan at the crown."""
        plan = loaf.sheet_to_plan(sheet)
        across = np.hypot(plan[:, 0], plan[:, 1])
        return np.where(across > 0, across, np.nan)
