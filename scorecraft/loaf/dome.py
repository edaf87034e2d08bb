"""The dome of a proofed loaf: heights, true lengths on the dough, and the dough sheet.

The sheet is the skin laid flat: origin at the crown, every point in its true direction at its
true distance along the dough. On a half sphere sheet and plan are the azimuthal equidistant and
the orthographic projection (Snyder, Map Projections, 1987, chapters 25 and 20).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats, Ints
from scorecraft.errors import UsageError
from scorecraft.limits import LARGEST_LOAF_MM, LEAST_PROFILE, MOST_PROFILE, SMALLEST_LOAF_MM
from scorecraft.loaf.outline import (
    Outline,
    long_outline,
    oval_outline,
    round_outline,
    square_outline,
)
from scorecraft.loaf.rays import Meridian, RayTable, ray_table
from scorecraft.loaf.telling import out_of_range
from scorecraft.practice import FLATNESS, RIM_POWER

RAYS = 720
"""Rays over which areas are summed."""
PIECE_MM = 6.0
"""A line on the dough is measured in pieces no longer than this, each twice."""


@dataclass(frozen=True)
class Loaf:
    """A proofed loaf: its rim, its height (mm) and the powers (p, q) of its profile.

    The height at the share t of the way from crown to rim is z = H (1 - t^p)^(1/q). Points are
    (N, 2) arrays in mm. Raises UsageError for sizes or powers no loaf has.
    """

    outline: Outline
    height_mm: float
    profile: tuple[float, float]

    def __post_init__(self) -> None:
        for name in ("width_mm", "length_mm", "height_mm"):
            _check_size(name.removesuffix("_mm"), getattr(self, name))
        for power in self.profile:
            if not LEAST_PROFILE <= power <= MOST_PROFILE:
                hint = f"use {LEAST_PROFILE:g} (a cone) to {MOST_PROFILE:g} (a box)"
                raise out_of_range(f"a profile of {power:g}", hint)

    @property
    def shape(self) -> str:
        """Name of the rim's shape."""
        return self.outline.shape

    @property
    def width_mm(self) -> float:
        """Widest measure along x."""
        return self.outline.width_mm

    @property
    def length_mm(self) -> float:
        """Widest measure along y."""
        return self.outline.length_mm

    def reach(self, theta: ArrayLike) -> Floats:
        """Distance (mm) along the dough from crown to rim in the directions theta (radians)."""
        return self._rays.total(self.outline.radius(theta))

    def sheet_to_plan(self, points: ArrayLike) -> Floats:
        """Carry sheet points to the plan; beyond the rim straight outward, mm for mm; (N, 2) mm."""
        sheet = np.asarray(points, dtype=np.float64)
        distance, radius, whole = self._polar(sheet)
        inside = np.minimum(distance / whole, 1.0)
        u = self._rays.parameter(radius, inside)
        across = radius * self._shape.plan(u) + np.maximum(distance - whole, 0.0)
        return np.asarray(sheet * _ratio(across, distance)[..., None])

    def plan_to_sheet(self, points: ArrayLike) -> Floats:
        """Carry plan points to the sheet: the way back of `sheet_to_plan`; (N, 2) mm."""
        plan = np.asarray(points, dtype=np.float64)
        across, radius, whole = self._polar(plan)
        u = self._shape.parameter(np.minimum(across / radius, 1.0))
        beyond = np.maximum(across - radius, 0.0)
        distance = np.where(beyond > 0, whole, self._rays.length(radius, u)) + beyond
        return np.asarray(plan * _ratio(distance, across)[..., None])

    def height_at(self, points: ArrayLike) -> Floats:
        """Height (mm) of the dough over plan points; 0 beyond the rim; (N, 2) to (N,)."""
        across, radius, _ = self._polar(np.asarray(points, dtype=np.float64))
        return self._shape.height(np.minimum(across / radius, 1.0))

    def surface(self, points: ArrayLike) -> Floats:
        """Points (N, 3) of the dough's surface over plan points, mm."""
        plan = np.asarray(points, dtype=np.float64)
        return np.concatenate([plan, self.height_at(plan)[..., None]], axis=-1)

    def normal(self, points: ArrayLike) -> Floats:
        """Give unit normals (N, 3) at plan points: level at the rim, straight up beyond it."""
        plan = np.asarray(points, dtype=np.float64)
        theta = np.arctan2(plan[..., 1], plan[..., 0])
        radius = self.outline.radius(theta)
        t = np.hypot(plan[..., 0], plan[..., 1]) / radius
        out, upright = self._steepness(t)
        around = -out * self.outline.turning(theta) / radius**2
        outward = out / radius
        cos, sin = np.cos(theta), np.sin(theta)
        level = [outward * cos - around * sin, outward * sin + around * cos]
        normals = np.stack([*level, upright], axis=-1)
        return np.asarray(normals / np.linalg.norm(normals, axis=-1, keepdims=True))

    def slope(self, points: ArrayLike) -> Floats:
        """Steepness of the dough at plan points, radians from level: pi/2 at the rim.

        Points are (N, 2) mm, the answer is (N,).
        """
        normals = self.normal(points)
        return np.asarray(np.arctan2(np.hypot(normals[..., 0], normals[..., 1]), normals[..., 2]))

    def lengths_on_dough(self, lines: Sequence[Floats]) -> Floats:
        """Measure the true lengths (mm) on the dough of sheet lines, each (N, 2).

        Chords of the surface over pieces and over half pieces are extrapolated to none at all
        (Richardson), which leaves less than 0.01 mm on a line as long as the loaf.
        """
        if not lines:
            return np.zeros(0)
        points = np.concatenate(lines)
        owner = np.repeat(np.arange(len(lines)), [len(line) for line in lines])
        here = np.flatnonzero(owner[1:] == owner[:-1])
        nodes, first, piece_of = _halved(points[here], points[here + 1])
        surface = self.surface(self.sheet_to_plan(nodes))
        fine = _distance(surface[first], surface[first + 1])
        fine += _distance(surface[first + 1], surface[first + 2])
        coarse = _distance(surface[first], surface[first + 2])
        exact = (4.0 * fine - coarse) / 3.0
        sums = np.bincount(owner[here][piece_of], weights=exact, minlength=len(lines))
        return sums.astype(np.float64)

    def stretch(self, points: ArrayLike) -> tuple[Floats, Floats]:
        """Give true length per sheet length at sheet points: along the ray, around the crown.

        Points are (N, 2) mm, both answers (N,).
        """
        sheet = np.asarray(points, dtype=np.float64)
        distance = np.maximum(np.hypot(sheet[..., 0], sheet[..., 1]), 1e-3)
        theta = np.arctan2(sheet[..., 1], sheet[..., 0])
        turn = 1e-4
        sides = []
        for angle in (theta - turn, theta + turn):
            at = distance[..., None] * np.stack([np.cos(angle), np.sin(angle)], axis=-1)
            sides.append(self.surface(self.sheet_to_plan(at)))
        across = _distance(sides[0], sides[1]) / (2 * turn * distance)
        return np.ones_like(across), across

    def sheet_rim(self, n: int = 360) -> Floats:
        """Rim points (n, 2) on the sheet, counter-clockwise from +x; the first is not repeated."""
        theta = self.outline.directions(n)
        rays = np.column_stack([np.cos(theta), np.sin(theta)])
        return np.asarray(self.reach(theta)[:, None] * rays)

    @cached_property
    def sheet_area_mm2(self) -> float:
        """Area of the dough sheet."""
        return float(np.mean(self.reach(self._directions) ** 2) * math.pi)

    @cached_property
    def plan_area_mm2(self) -> float:
        """Area of the loaf seen from above."""
        return float(np.mean(self.outline.radius(self._directions) ** 2) * math.pi)

    def patches(
        self, rays: int, steps: int, inner: float = 0.0, outer: float = 1.0
    ) -> tuple[Floats, Floats]:
        """Share the skin out: sheet points (rays, steps, 2) and the area (mm2) each stands for.

        Only what lies between two shares of the reach. Rays are at equal angles from +x, half a
        step on; along a ray stand Gauss points, so that sums over few patches are integrals.
        """
        theta = np.asarray((np.arange(rays) + 0.5) * (math.tau / rays))
        radius = self.outline.radius(theta)[:, None]
        nodes, weights = _gauss(steps)
        ends = [self._rays.parameter(radius, np.full_like(radius, end)) for end in (inner, outer)]
        u = ends[0] + (ends[1] - ends[0]) * nodes
        distance = self._rays.length(np.broadcast_to(radius, u.shape), u)
        points = distance[..., None] * np.column_stack([np.cos(theta), np.sin(theta)])[:, None]
        return points, self._patches(theta, u, weights * (ends[1] - ends[0]))

    def _patches(self, theta: Floats, u: Floats, weights: Floats) -> Floats:
        """Areas (mm2) by ray and u: |r_u x r_theta| times the share of the whole turn."""
        sideways, upward = self._shape.rates(u)
        radius = self.outline.radius(theta)[:, None]
        lean = 1 + (self.outline.turning(theta)[:, None] / radius) ** 2
        slant = np.sqrt((radius * sideways) ** 2 + upward**2 * lean)
        return np.asarray(radius * self._shape.plan(u) * slant * weights * (math.tau / len(theta)))

    @cached_property
    def volume_mm3(self) -> float:
        """Volume under the dome: plan area x 2 integral of z t dt, a beta function of p and q."""
        p, q = self.profile
        share = 2 / p * math.gamma(2 / p) * math.gamma(1 / q + 1) / math.gamma(2 / p + 1 / q + 1)
        return self.plan_area_mm2 * self.height_mm * share

    @cached_property
    def _shape(self) -> Meridian:
        return Meridian(self.height_mm, *self.profile)

    @cached_property
    def _rays(self) -> RayTable:
        return ray_table(self._shape, *self.outline.extremes)

    @cached_property
    def _directions(self) -> Floats:
        return np.linspace(0.0, math.tau, RAYS, endpoint=False)

    def _polar(self, points: Floats) -> tuple[Floats, Floats, Floats]:
        """Distance from the crown, and the rim's plan radius and reach in that direction."""
        radius = self.outline.radius(np.arctan2(points[..., 1], points[..., 0]))
        distance = np.asarray(np.hypot(points[..., 0], points[..., 1]))
        whole = self._rays.total(radius)
        return distance, radius, whole

    def _steepness(self, t: Floats) -> tuple[Floats, Floats]:
        """Outward and upward part of the normal at shares t, both freed of the rim's pole."""
        p, q = self.profile
        inside = np.minimum(t, 1.0)
        upright = (1.0 - inside**p) ** (1.0 - 1.0 / q)
        out = self.height_mm * p / q * inside ** (p - 1.0)
        beyond = t > 1.0 + 1e-9
        return np.where(beyond, 0.0, out), np.where(beyond, 1.0, upright)


def make_loaf(
    shape: str,
    width_mm: float,
    length_mm: float | None,
    height_mm: float,
    profile: tuple[float, float] | None = None,
) -> Loaf:
    """Make a round, oval, long or square loaf; a round one takes its width alone (mm).

    Raises UsageError for an unknown shape and for sizes or powers no loaf has.

    >>> loaf = make_loaf("round", 200, None, 80)
    >>> loaf.height_at([[0, 0], [100, 0]]).tolist()  # over the crown and at the rim
    [80.0, 0.0]
    >>> round(float(loaf.reach(0.0)), 1)  # from crown to rim along the dough
    141.8
    """
    if shape not in ("round", "oval", "long", "square"):
        raise UsageError(f'"{shape}" is not a loaf form', None, "use round, oval, long or square")
    length = width_mm if length_mm is None else length_mm
    for name, size in (("width", width_mm), ("length", length)):
        _check_size(name, size)
    powers = profile or (FLATNESS[shape].value, RIM_POWER.value)
    if shape == "round":
        return Loaf(round_outline(width_mm), height_mm, powers)
    maker = {"oval": oval_outline, "long": long_outline, "square": square_outline}[shape]
    return Loaf(maker(width_mm, length), height_mm, powers)


def _check_size(name: str, size_mm: float) -> None:
    low, high = SMALLEST_LOAF_MM, LARGEST_LOAF_MM
    if not low <= size_mm <= high:
        hint = f"use {low:g} mm to {high:g} mm"
        raise out_of_range(f"a {name} of {size_mm:g} mm", hint)


def _gauss(count: int) -> tuple[Floats, Floats]:
    """Gauss-Legendre points and weights on [0, 1]."""
    nodes, weights = np.polynomial.legendre.leggauss(count)
    return np.asarray((nodes + 1) / 2), np.asarray(weights / 2)


def _ratio(new: Floats, old: Floats) -> Floats:
    """Divide lengths, 1 where the old one is nothing (at the crown)."""
    small = old < 1e-9
    return np.asarray(np.where(small, 1.0, new / np.where(small, 1.0, old)))


def _distance(a: Floats, b: Floats) -> Floats:
    return np.asarray(np.sqrt(((a - b) ** 2).sum(axis=-1)))


def _halved(start: Floats, end: Floats) -> tuple[Floats, Ints, Ints]:
    """Cut segments into pieces and halve them: nodes, first node and segment of each piece."""
    side = end - start
    pieces = np.maximum(1, np.ceil(np.hypot(*side.T) / PIECE_MM)).astype(np.intp)
    counts = 2 * pieces + 1
    segment = np.repeat(np.arange(len(start)), counts)
    begin = np.cumsum(counts) - counts
    number = np.arange(len(segment)) - begin[segment]
    nodes = start[segment] + (number / (2.0 * pieces[segment]))[:, None] * side[segment]
    first = np.flatnonzero((number % 2 == 0) & (number < counts[segment] - 1))
    return nodes, first, segment[first]
