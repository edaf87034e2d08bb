"""True length along the rays of a dome, from the crown to the rim, tabulated both ways.

Along a ray with the rim at R the dome is z = H (1 - t^p)^(1/q) at t R from the crown, so the
length is s = integral of sqrt(R^2 + z'^2) dt. The steep rim is taken out by t = 1 - (1 - u)^q.
"""

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.loaf.pieces import bilinear

STEPS = 512
"""Steps of the tables along a ray."""
RADIUS_STEP_MM = 1.5
"""Rays whose rims are this far apart have rows of their own; between rows it is a straight line."""


@dataclass(frozen=True, slots=True)
class Meridian:
    """A dome's profile z = H (1 - t^p)^(1/q): height H in mm and the powers p and q."""

    height_mm: float
    p: float
    q: float

    def plan(self, u: Floats) -> Floats:
        """Share t of the way to the rim in plan, of any shape."""
        return np.asarray(1.0 - (1.0 - u) ** self.q)

    def parameter(self, t: Floats) -> Floats:
        """Parameter u of a share t in [0, 1] of the way to the rim, of any shape."""
        return np.asarray(1.0 - (1.0 - t) ** (1.0 / self.q))

    def height(self, t: Floats) -> Floats:
        """Height (mm) at shares t in [0, 1] of the way to the rim."""
        return np.asarray(self.height_mm * (1.0 - t**self.p) ** (1.0 / self.q))

    def steepness(self, t: Floats) -> tuple[Floats, Floats]:
        """Outward and upward part of the normal at shares t, both freed of the rim's pole."""
        inside = np.minimum(t, 1.0)
        upright = (1.0 - inside**self.p) ** (1.0 - 1.0 / self.q)
        out = self.height_mm * self.p / self.q * inside ** (self.p - 1.0)
        beyond = t > 1.0 + 1e-9
        return np.where(beyond, 0.0, out), np.where(beyond, 1.0, upright)

    def rates(self, u: Floats) -> tuple[Floats, Floats]:
        """Rates dt/du and dz/du (mm), finite on the whole way, for u in [0, 1)."""
        rest = (1.0 - u) ** self.q
        t = 1.0 - rest
        power = (self.q - 1.0) / self.q
        steep = (rest / (1.0 - t**self.p)) ** power if self.q > 1.0 else 1.0
        return self.q * rest**power, -self.height_mm * self.p * t ** (self.p - 1.0) * steep


@dataclass(frozen=True, eq=False, slots=True)
class RayTable:
    """Lengths along rays, in rows by rim radius.

    `lengths` holds s / u by u, and `inverse` u over the share of the whole length by that share:
    dividing by the argument keeps the tables right in proportion down to the crown.
    """

    low: float
    step: float
    lengths: Floats
    inverse: Floats

    def total(self, radius: Floats) -> Floats:
        """Length (mm) from crown to rim of rays with rims at `radius` (mm)."""
        return self._between(self.lengths[:, -1], radius)

    def length(self, radius: Floats, u: Floats) -> Floats:
        """Length (mm) from the crown to the parameter u in [0, 1]."""
        return u * bilinear(self.lengths, self._row(radius), u * STEPS)

    def parameter(self, radius: Floats, share: Floats) -> Floats:
        """Parameter u at a share in [0, 1] of the whole length of a ray."""
        return share * bilinear(self.inverse, self._row(radius), share * STEPS)

    def _row(self, radius: Floats) -> Floats:
        return np.asarray(np.clip((radius - self.low) / self.step, 0.0, len(self.lengths) - 1.0))

    def _between(self, column: Floats, radius: Floats) -> Floats:
        row = self._row(radius)
        at = np.minimum(row.astype(np.intp), len(column) - 2)
        return np.asarray(column[at] + (row - at) * (column[at + 1] - column[at]))


def ray_table(meridian: Meridian, nearest: float, furthest: float) -> RayTable:
    """Tabulate the rays of a dome whose rim is between two radii (mm) from its crown."""
    rows = 2 + int((furthest - nearest) / RADIUS_STEP_MM)
    radii = np.linspace(nearest * (1 - 1e-9), furthest * (1 + 1e-9), rows)
    speeds = _speeds(meridian, radii, np.zeros(1))
    lengths = _lengths(meridian, radii)
    grid = np.arange(1, STEPS + 1) / STEPS
    inverse = _inverse(lengths, speeds, grid)
    return RayTable(
        float(radii[0]),
        float(radii[1] - radii[0]),
        np.hstack([speeds, lengths / grid]),
        np.hstack([lengths[:, -1:] / speeds, inverse / grid]),
    )


def _speeds(meridian: Meridian, radii: Floats, u: Floats) -> Floats:
    """Length a parameter, ds/du (mm), for every radius (rows) and u (columns)."""
    sideways, upward = meridian.rates(u)
    return np.asarray(np.sqrt((radii[:, None] * sideways) ** 2 + upward**2))


def _lengths(meridian: Meridian, radii: Floats) -> Floats:
    """Lengths (mm) up to the end of every step, by two-point Gauss quadrature in each."""
    middle = (np.arange(STEPS) + 0.5) / STEPS
    off = 0.5 / (STEPS * np.sqrt(3.0))
    steps = _speeds(meridian, radii, middle - off) + _speeds(meridian, radii, middle + off)
    return np.cumsum(steps * (0.5 / STEPS), axis=1)


def _inverse(lengths: Floats, speeds: Floats, shares: Floats) -> Floats:
    """Parameters u at shares of the whole length, row by row."""
    u = np.arange(STEPS + 1) / STEPS
    known = np.hstack([np.zeros_like(speeds), lengths])
    return np.array([np.interp(shares * row[-1], row, u) for row in known])
