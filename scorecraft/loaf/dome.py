"""The dome of a proofed loaf: heights, true lengths on the dough, and the dough sheet.

The sheet is the skin laid flat: origin at the crown, every point in its true direction at its
true distance along the dough. On a half sphere sheet and plan are the azimuthal equidistant and
the orthographic projection (Snyder, Map Projections, 1987, chapters 25 and 20).
"""

import math
from collections.abc import Sequence
from functools import cached_property

import numpy as np
from numpy.typing import ArrayLike

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.limits import (
    LARGEST_LOAF_MM,
    LEAST_HEIGHT_MM,
    LEAST_PROFILE,
    MOST_PROFILE,
    SMALLEST_LOAF_MM,
)
from scorecraft.loaf import telling as say
from scorecraft.loaf.crest import Crest
from scorecraft.loaf.forms import called, form_of
from scorecraft.loaf.outline import Outline, inner_outline, outline_of, tapered
from scorecraft.loaf.pieces import distance as measured
from scorecraft.loaf.pieces import gauss, halved, ratio
from scorecraft.loaf.rays import Meridian, RayTable, ray_table
from scorecraft.loaf.tin import Tin, filled_tin
from scorecraft.practice import RIM_POWER

RAYS = 720
"""Rays over which areas are summed."""
LEAST_RING_MM = 15.0
"""The dough between the two rims of a ring is at least so wide."""


@dataclass(frozen=True)
class Loaf:
    """A proofed loaf: its rim, its height (mm) and the powers (p, q) of its profile.

    The height at the share t of the way from crown to rim is z = H (1 - t^p)^(1/q). A ring has a
    `hole` as well, and rises from both its rims to a crest halfway between them; on its sheet the
    way across the hole is flat. What stands in a tin (`held`) has straight sides under its dome,
    and its sheet is the top alone. Points are (N, 2) arrays in mm. Raises UsageError for sizes or
    powers no loaf has.
    """

    outline: Outline
    height_mm: float
    profile: tuple[float, float]
    hole: Outline | None = None
    held: Tin | None = None

    def __post_init__(self) -> None:
        for name in ("width_mm", "length_mm", "height_mm"):
            check_size(name.removesuffix("_mm"), getattr(self, name))
        if self.hole and 2 * self._crest.extremes[0] < LEAST_RING_MM:
            raise say.HOLE_TOO_LARGE(least_mm=LEAST_RING_MM).usage()
        for power in self.profile:
            if not LEAST_PROFILE <= power <= MOST_PROFILE:
                hint = f"use {LEAST_PROFILE:g} (a cone) to {MOST_PROFILE:g} (a box)"
                raise say.OUT_OF_RANGE(what=f"a profile of {power:g}", hint=hint).usage()

    @property
    def shape(self) -> str:
        """Name of the rim's shape."""
        return self.outline.shape

    @property
    def called(self) -> str:
        """What a baker calls it: a ring loaf, a baguette."""
        return called(self.outline.shape)

    @property
    def width_mm(self) -> float:
        """Widest measure along x."""
        return self.outline.width_mm

    @property
    def length_mm(self) -> float:
        """Widest measure along y."""
        return self.outline.length_mm

    @property
    def wall_mm(self) -> float:
        """Height of the straight sides under the dome: those of dough in a tin, otherwise 0."""
        return self.held.wall_mm if self.held else 0.0

    @property
    def crown_mm(self) -> float:
        """Height of the dome above its rim."""
        return self.height_mm - self.wall_mm

    @cached_property
    def curve(self) -> float:
        """Mean curvature (per mm) of its crown: of its height over the squares of its ways there.

        Of those across and along the crest of a ring, the latter is none.
        """
        half = self._crest.on_plan(np.linspace(0.0, math.tau, RAYS, endpoint=False))[1]
        across = self.crown_mm * float(np.mean(half**-2.0))
        return across if self.hole is None else across / 2

    def reach(self, theta: ArrayLike) -> Floats:
        """Distance (mm) on the sheet from its middle to the rim in the directions theta (rad)."""
        angle = np.asarray(theta, dtype=np.float64)
        return self.sheet_crest(angle) + self._rays.total(self._crest.on_plan(angle)[1])

    def sheet_crest(self, theta: ArrayLike) -> Floats:
        """Distance (mm) on the sheet from its middle to the crest: 0 but on a ring."""
        angle = np.asarray(theta, dtype=np.float64)
        if self.hole is None:
            return np.zeros(angle.shape)
        return np.asarray(self.hole.radius(angle) + self._rays.total(self._crest.on_plan(angle)[1]))

    def share(self, points: ArrayLike) -> Floats:
        """Share of the way from crown to rim of sheet points: (N, 2) mm to (N,).

        On a ring from the crest, and below 0 on its inner side; -1 is the rim of the hole.
        """
        sheet = np.asarray(points, dtype=np.float64)
        theta = np.arctan2(sheet[..., 1], sheet[..., 0])
        crest = self.sheet_crest(theta)
        away = np.hypot(sheet[..., 0], sheet[..., 1]) - crest
        return np.asarray(away / (self.reach(theta) - crest))

    def at_share(self, theta: Floats, share: Floats) -> Floats:
        """Sheet points (N, 2) mm at directions (radians) and shares of the way to the rim."""
        crest = self.sheet_crest(theta)
        distance = crest + share * (self.reach(theta) - crest)
        return np.asarray(distance[..., None] * np.stack([np.cos(theta), np.sin(theta)], axis=-1))

    def sheet_to_plan(self, points: ArrayLike) -> Floats:
        """Carry sheet points to the plan; beyond the rim straight outward, mm for mm; (N, 2) mm."""
        sheet = np.asarray(points, dtype=np.float64)
        distance, middle, half, crest = self._polar(sheet)
        away, whole = np.abs(distance - crest), self._rays.total(half)
        u = self._rays.parameter(half, np.minimum(away / whole, 1.0))
        off = half * self._shape.plan(u) + np.maximum(away - whole, 0.0)
        across = middle + np.where(distance < crest, -off, off)
        return np.asarray(sheet * ratio(across, distance)[..., None])

    def plan_to_sheet(self, points: ArrayLike) -> Floats:
        """Carry plan points to the sheet: the way back of `sheet_to_plan`; (N, 2) mm."""
        plan = np.asarray(points, dtype=np.float64)
        across, middle, half, crest = self._polar(plan)
        away = np.abs(across - middle)
        u = self._shape.parameter(np.minimum(away / half, 1.0))
        beyond = np.maximum(away - half, 0.0)
        off = np.where(beyond > 0, self._rays.total(half), self._rays.length(half, u)) + beyond
        distance = crest + np.where(across < middle, -off, off)
        return np.asarray(plan * ratio(distance, across)[..., None])

    def height_at(self, points: ArrayLike) -> Floats:
        """Height (mm) of the dough over plan points; 0 where there is none; (N, 2) to (N,)."""
        t = self._plan_share(np.asarray(points, dtype=np.float64))
        return np.where(t > 1.0 + 1e-9, 0.0, self._rise(t))

    def surface(self, points: ArrayLike) -> Floats:
        """Points (N, 3) of the dough's surface over plan points, mm; level beyond the rim."""
        plan = np.asarray(points, dtype=np.float64)
        return np.concatenate([plan, self._rise(self._plan_share(plan))[..., None]], axis=-1)

    def normal(self, points: ArrayLike) -> Floats:
        """Give unit normals (N, 3) at plan points: level at the rim, straight up beyond it."""
        plan = np.asarray(points, dtype=np.float64)
        theta = np.arctan2(plan[..., 1], plan[..., 0])
        across, middle, half, _ = self._polar(plan)
        t = np.abs(across - middle) / half
        out, upright = self._shape.steepness(t)
        out = np.where(across < middle, -out, out) / half
        around = -out * self._crest.around(theta, across)
        cos, sin = np.cos(theta), np.sin(theta)
        level = [out * cos - around * sin, out * sin + around * cos]
        normals = np.stack([*level, upright], axis=-1)
        return np.asarray(normals / np.linalg.norm(normals, axis=-1, keepdims=True))

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
        nodes, first, piece_of = halved(points[here], points[here + 1])
        surface = self.surface(self.sheet_to_plan(nodes))
        fine = measured(surface[first], surface[first + 1])
        fine += measured(surface[first + 1], surface[first + 2])
        coarse = measured(surface[first], surface[first + 2])
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
        across = measured(sides[0], sides[1]) / (2 * turn * distance)
        return np.ones_like(across), across

    def sheet_rim(self, n: int = 360) -> Floats:
        """Rim points (n, 2) on the sheet, counter-clockwise from +x; the first is not repeated."""
        theta = self.outline.directions(n)
        rays = np.column_stack([np.cos(theta), np.sin(theta)])
        return np.asarray(self.reach(theta)[:, None] * rays)

    def sheet_hole(self, n: int = 360) -> Floats | None:
        """Rim of the hole (n, 2) on the sheet, where it is as on the plan; None without one."""
        return None if self.hole is None else self.hole.points(n)

    @cached_property
    def plan_area_mm2(self) -> float:
        """Area of the loaf seen from above."""
        directions = np.linspace(0.0, math.tau, RAYS, endpoint=False)
        whole = float(np.mean(self.outline.radius(directions) ** 2) * math.pi)
        return whole - self._crest.hole_mm2

    def patches(
        self, rays: int, steps: int, inner: float = 0.0, outer: float = 1.0
    ) -> tuple[Floats, Floats]:
        """Share the skin out: sheet points (rays, steps, 2) and the area (mm2) each stands for.

        Only what lies between two shares of the way from crown to rim; on a ring on both sides of
        its crest, so that there are twice as many steps. Rays are at equal angles from +x, half a
        step on; along a ray stand Gauss points, so that sums over few patches are integrals.
        """
        theta = np.asarray((np.arange(rays) + 0.5) * (math.tau / rays))
        half = self._crest.on_plan(theta)[1][:, None]
        nodes, weights = gauss(steps)
        ends = [self._rays.parameter(half, np.full_like(half, end)) for end in (inner, outer)]
        u = ends[0] + (ends[1] - ends[0]) * nodes
        off = self._rays.length(np.broadcast_to(half, u.shape), u)
        crest = self.sheet_crest(theta)[:, None]
        ray = np.column_stack([np.cos(theta), np.sin(theta)])
        sides = (1.0,) if self.hole is None else (-1.0, 1.0)
        points = [(crest + side * off)[..., None] * ray[:, None] for side in sides]
        share = weights * (ends[1] - ends[0])
        areas = [self._patches(theta, u, share, side) for side in sides]
        return np.concatenate(points, axis=1), np.concatenate(areas, axis=1)

    def _patches(self, theta: Floats, u: Floats, weights: Floats, side: float) -> Floats:
        """Areas (mm2) by ray and u: |r_u x r_theta| times the share of the whole turn."""
        sideways, upward = self._shape.rates(u)
        t = self._shape.plan(u)
        middle, half = (each[:, None] for each in self._crest.on_plan(theta))
        swing, spread = (each[:, None] for each in self._crest.turning(theta))
        across = middle + side * half * t
        slant = np.hypot(across, swing + side * spread * t)
        areas = np.hypot(across * half * sideways, upward * slant)
        return np.asarray(areas * weights * (math.tau / len(theta)))

    @cached_property
    def volume_mm3(self) -> float:
        """Volume of the dough: straight sides, and the dome by beta functions of p and q.

        Under a dome plan area x 2 integral of z t dt; under a ring plan area x integral of z dt, as
        the two sides of the crest make up for one another (Pappus).
        """
        p, q = self.profile
        n = 2.0 if self.hole is None else 1.0
        share = math.gamma(n / p + 1) * math.gamma(1 / q + 1) / math.gamma(n / p + 1 / q + 1)
        return self.plan_area_mm2 * (self.wall_mm + self.crown_mm * share)

    @cached_property
    def _shape(self) -> Meridian:
        return Meridian(self.crown_mm, *self.profile)

    @cached_property
    def _rays(self) -> RayTable:
        return ray_table(self._shape, *self._crest.extremes)

    @cached_property
    def _crest(self) -> Crest:
        return Crest(self.outline, self.hole)

    def _polar(self, points: Floats) -> tuple[Floats, Floats, Floats, Floats]:
        """Distance from the middle; that of the crest on the plan, on to the rim, on the sheet."""
        theta = np.arctan2(points[..., 1], points[..., 0])
        distance = np.asarray(np.hypot(points[..., 0], points[..., 1]))
        return distance, *self._crest.on_plan(theta), self.sheet_crest(theta)

    def _plan_share(self, plan: Floats) -> Floats:
        middle, half = self._crest.on_plan(np.arctan2(plan[..., 1], plan[..., 0]))
        return np.asarray(np.abs(np.hypot(plan[..., 0], plan[..., 1]) - middle) / half)

    def _rise(self, t: Floats) -> Floats:
        return np.asarray(self.wall_mm + self._shape.height(np.minimum(t, 1.0)))


def make_loaf(
    shape: str,
    width_mm: float,
    length_mm: float | None,
    height_mm: float,
    profile: tuple[float, float] | None = None,
    *,
    hole_mm: float | None = None,
    tin: Tin | None = None,
    taper: float = 0.0,
) -> Loaf:
    """Make a loaf of a form by its name; where there is no length it is as long as wide (mm).

    A ring without a hole of its own has the usual one; what stands in no known tin fills its own
    to the rim. `taper` makes it narrower toward 12 o'clock (see `tapered`). Raises UsageError for
    an unknown form and for sizes or powers no loaf has.

    >>> loaf = make_loaf("round", 200, None, 80)
    >>> loaf.height_at([[0, 0], [100, 0]]).tolist()  # over the crown and at the rim
    [80.0, 0.0]
    >>> round(float(loaf.reach(0.0)), 1)  # from crown to rim along the dough
    141.8
    """
    form = form_of(shape)
    length = width_mm if length_mm is None else length_mm
    for name, size in (("width", width_mm), ("length", length)):
        check_size(name, size)
    powers = profile or (form.flat, RIM_POWER.value)
    outline = outline_of(form, width_mm, length)
    if taper:
        outline = tapered(outline, taper)
    hole = None
    if form.hole:
        hole = inner_outline(outline, form.hole * width_mm if hole_mm is None else hole_mm)
    held = (tin or filled_tin(width_mm, length, height_mm)) if form.held else None
    return Loaf(outline, height_mm, powers, hole, held)


def check_size(name: str, size_mm: float) -> None:
    """Refuse a measure (mm) that no loaf has; raises UsageError."""
    low = LEAST_HEIGHT_MM if name == "height" else SMALLEST_LOAF_MM
    high = LARGEST_LOAF_MM
    if not low <= size_mm <= high:
        what, hint = f"a {name} of {size_mm:g} mm", f"use {low:g} mm to {high:g} mm"
        raise say.OUT_OF_RANGE(what=what, hint=hint).usage()
