"""The rim of a loaf seen from above: one radius in every direction about the crown."""

import importlib
import math
from collections.abc import Sequence
from functools import cached_property

import numpy as np
import shapely
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass, replace
from scorecraft.loaf import telling as say
from scorecraft.loaf.forms import Form
from scorecraft.units import turntable_degrees

TRACED_SAMPLES = 1440
"""Directions in which a traced rim is sampled: every quarter of a degree."""


TAPER_POINTS = 2880
"""Corners by which a tapered rim is drawn."""


@dataclass(frozen=True)
class Outline:
    """A rim that is star-shaped about the origin, in plan mm.

    A superellipse |x/a|^n + |y/b|^n = 1 of half width `a_mm`, half length `b_mm` and power
    `power`; or, where `samples` is given, the radii (mm) at equal angles from +x
    counter-clockwise, with straight lines in angle between them.
    """

    shape: str
    a_mm: float
    b_mm: float
    power: float = 2.0
    samples: tuple[float, ...] = ()

    def radius(self, theta: ArrayLike) -> Floats:
        """Distance (mm) from the crown to the rim in the directions `theta` (radians)."""
        angle = np.asarray(theta, dtype=np.float64)
        if self.samples:
            return self._sampled(angle)
        if self.a_mm == self.b_mm and self.power == 2.0:
            return np.full(angle.shape, self.a_mm)
        across = np.abs(np.cos(angle) / self.a_mm) ** self.power
        along = np.abs(np.sin(angle) / self.b_mm) ** self.power
        return np.asarray((across + along) ** (-1.0 / self.power))

    def turning(self, theta: ArrayLike) -> Floats:
        """Slope dR/dtheta of the rim's radius, mm a radian, by a central difference."""
        angle = np.asarray(theta, dtype=np.float64)
        step = 1e-5
        change = self.radius(angle + step) - self.radius(angle - step)
        return np.asarray(change / (2 * step))

    def directions(self, n: int = 360) -> Floats:
        """Angles (n,) of rim points, closer together where the rim is far away."""
        phase = np.arange(n) * (math.tau / n)
        return np.asarray(np.arctan2(self.b_mm * np.sin(phase), self.a_mm * np.cos(phase)))

    def points(self, n: int = 360) -> Floats:
        """Rim points (n, 2) in plan mm, counter-clockwise from +x; the first is not repeated."""
        theta = self.directions(n)
        rays = np.column_stack([np.cos(theta), np.sin(theta)])
        return np.asarray(self.radius(theta)[:, None] * rays)

    def scaled(self, by: float) -> "Outline":
        """Give the same rim so many times as large."""
        samples = tuple(by * radius for radius in self.samples)
        return Outline(self.shape, by * self.a_mm, by * self.b_mm, self.power, samples)

    @property
    def width_mm(self) -> float:
        """Widest measure along x."""
        return 2 * self.a_mm

    @property
    def length_mm(self) -> float:
        """Widest measure along y."""
        return 2 * self.b_mm

    @cached_property
    def extremes(self) -> tuple[float, float]:
        """Least and greatest radius, mm."""
        radii = self.radius(np.linspace(0, math.tau, 1441))
        return float(radii.min()), float(radii.max())

    @cached_property
    def _table(self) -> Floats:
        return np.array([*self.samples, self.samples[0]])

    def _sampled(self, angle: Floats) -> Floats:
        count = len(self.samples)
        place = np.mod(angle, math.tau) * (count / math.tau)
        at = np.minimum(place.astype(np.intp), count - 1)
        here = self._table[at]
        return np.asarray(here + (place - at) * (self._table[at + 1] - here))


def outline_of(form: Form, width_mm: float, length_mm: float) -> Outline:
    """Make the rim of a form: width along x, length along y, mm.

    >>> from scorecraft.loaf.forms import FORMS
    >>> outline_of(FORMS["oval"], 160, 240).radius([0, math.pi / 2]).round(6).tolist()
    [80.0, 120.0]
    """
    if form.power is not None:
        return Outline(form.name, width_mm / 2, length_mm / 2, form.power)
    drawn: Floats = getattr(
        importlib.import_module(f"scorecraft.loaf.rims.{form.name}"), form.name
    )()
    scale = np.array([width_mm, length_mm]) / np.ptp(drawn, axis=0)
    return replace(traced_outline(drawn * scale), shape=form.name)


def tapered(outline: Outline, taper: float) -> Outline:
    """Make a rim narrower toward 12 o'clock, as wide and as long as before, about its own middle.

    Its width changes in a straight line along it: by the share `taper` from the middle to either
    end, less at the far one and more at the near one.
    """
    points = outline.points(TAPER_POINTS)
    points[:, 0] *= 1.0 - taper * points[:, 1] / outline.b_mm
    points[:, 0] *= outline.width_mm / np.ptp(points[:, 0])
    return replace(traced_outline(points), shape=outline.shape)


def inner_outline(outer: Outline, hole_mm: float) -> Outline:
    """Make the inner rim of a ring: `hole_mm` wide, everywhere as far from the outer rim."""
    less = outer.a_mm - hole_mm / 2
    return Outline("hole", outer.a_mm - less, outer.b_mm - less, outer.power)


def traced_outline(points: ArrayLike) -> Outline:
    """Make a rim of a polygon, (N, 2) plan mm, moved to have its centre of area at the crown.

    Raises UsageError for fewer than three points, points that are not finite, a rim that crosses
    itself, and a rim that some direction from its centre meets twice.

    >>> traced_outline([(0, 0), (100, 0), (100, 60), (0, 60)]).width_mm
    100.0
    """
    return traced_outlines([points])[0]


def traced_outlines(rims: Sequence[ArrayLike]) -> list[Outline]:
    """Make the rim of a polygon, (N, 2) plan mm, and that of a hole in it where there is one.

    The rim's centre of area is moved to the crown; raises UsageError as `traced_outline` does, and
    for a hole that does not lie around that centre.
    """
    first = _ring(np.asarray(rims[0], dtype=np.float64))
    middle = shapely.get_coordinates(shapely.Polygon(first).centroid)
    found = [_traced("traced", first - middle)]
    for hole in rims[1:]:
        ring = _ring(np.asarray(hole, dtype=np.float64)) - middle
        if not shapely.contains_xy(shapely.Polygon(ring), 0.0, 0.0):
            raise say.HOLE_OFF_CENTRE.usage()
        found.append(_traced("hole", ring))
    return found


def _traced(shape: str, ring: Floats) -> Outline:
    radii = _radii(ring, _unrolled(ring))
    a_mm, b_mm = (np.ptp(ring, axis=0) / 2).tolist()
    return Outline(shape, a_mm, b_mm, samples=tuple(radii.tolist()))


def _ring(points: Floats) -> Floats:
    """Give the corners counter-clockwise, none repeated."""
    if points.ndim != 2 or points.shape[1:] != (2,) or not np.isfinite(points).all():
        raise UsageError("a traced rim is a list of points, each x and y in mm")
    kept = np.any(points != np.roll(points, 1, axis=0), axis=1)
    points = points[kept]
    if len(points) < 3:
        raise UsageError("a traced rim needs three points or more")
    shape = shapely.Polygon(points)
    if not shape.is_valid or shape.area <= 0:
        raise UsageError("the traced rim crosses itself", None, "draw it as one simple closed line")
    return points if shape.exterior.is_ccw else points[::-1]


def _unrolled(ring: Floats) -> Floats:
    """Angles of the corners, rising, the first repeated a turn later; raises UsageError if not."""
    closed = np.vstack([ring, ring[:1]])
    angles = np.unwrap(np.arctan2(closed[:, 1], closed[:, 0]))
    back = np.flatnonzero(np.diff(angles) <= 0)
    if len(back) or abs(angles[-1] - angles[0] - math.tau) > 1e-6:
        where = turntable_degrees(float(angles[back[0]])) if len(back) else 0.0
        raise UsageError(
            f"the rim turns back on itself at {where:.0f}° on the turntable",
            None,
            "every direction from the loaf's centre must meet the rim once",
        )
    return np.asarray(angles)


def _radii(ring: Floats, angles: Floats) -> Floats:
    """Radii at equal angles from +x: where each ray meets the rim's straight edges."""
    theta = np.arange(TRACED_SAMPLES) * (math.tau / TRACED_SAMPLES)
    turned = angles[0] + np.mod(theta - angles[0], math.tau)
    edge = np.clip(np.searchsorted(angles, turned, side="right") - 1, 0, len(ring) - 1)
    start, end = ring[edge], np.roll(ring, -1, axis=0)[edge]
    side = end - start
    normal = np.column_stack([side[:, 1], -side[:, 0]])
    ray = np.column_stack([np.cos(theta), np.sin(theta)])
    return np.asarray((start * normal).sum(axis=1) / (ray * normal).sum(axis=1))
